"""The hidden folder beside a site in which the next one is made; what a killed build left in it is found and swept."""

import errno
import os
import re
import shutil
import time
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from generator.building.exchange import undisturbed
from generator.building.failed import BuildFailed
from generator.files.json_book import MARKER
from generator.files.locked import TRIES, Busy, create_locked, hidden_beside
from generator.findings import one_line

LOCK, NEW, OLD = "lock", "site", "old"
HOUR_S = 3600


class Aside:
    """`with Aside(target) as aside:` make a site in `aside.new`, then `aside.move_in(exchange)`; at the end nothing of it is left.

    Raises BuildFailed where another build of the same target lives, or where something else lies under the hidden name.
    """

    def __init__(self, target: Path) -> None:
        self.target = target
        self.folder = hidden_beside(target, "building")
        self.new, self.old = self.folder / NEW, self.folder / OLD
        self._made: list[Path] = []
        self._lock = -1

    def __enter__(self) -> "Aside":
        missing = [parent for parent in self.target.parents if not os.path.lexists(parent)]
        try:
            for parent in reversed(missing):
                parent.mkdir()
                self._made.append(parent)
            self._claim()
        except BaseException:
            self.__exit__()
            raise
        return self

    def __exit__(self, *_: object) -> None:
        with undisturbed():
            if self._lock >= 0:
                self._finish()
            with suppress(OSError):  # Another build's is not empty.
                self.folder.rmdir()
            if not os.path.lexists(self.target):  # Folders made on the way to a site that now stands nowhere go again.
                for parent in reversed(self._made):
                    with suppress(OSError):
                        parent.rmdir()

    def move_in(self, exchange: Callable[[Path, Path], bool]) -> Path | None:
        """Give the new site the target's name. Returns where the earlier site lies now, None where there was none.

        exchange: two folders' names, in one step; False where that cannot be done. Then two renames do it, and the target is
        missing between them; whoever ends this command there, the next build puts the earlier site back.
        """
        if not self.target.exists():
            self.new.rename(self.target)
            return None
        shutil.copymode(self.target, self.new)
        if not any(self.target.iterdir()):
            if os.name == "nt":  # where no folder takes another's place
                self.target.rmdir()
            self.new.rename(self.target)
            return None
        if exchange(self.new, self.target):
            return self.new
        self.target.rename(self.old)
        try:
            self.new.rename(self.target)
        except BaseException:
            self._put_back(self.old)
            raise
        return self.old

    def _claim(self) -> None:
        """Make the folder and lock it; then finish or sweep what dead builds left."""
        for _ in range(TRIES):
            with suppress(FileExistsError):
                self.folder.mkdir(mode=0o700)
            self._must_be_ours()
            try:
                self._lock = create_locked(self.folder / LOCK)
                break
            except FileNotFoundError:  # The build before took its folder away in this moment.
                continue
            except Busy:
                raise BuildFailed(f"{one_line(self.target)}: another build of this site is running; wait until it has ended") from None
        else:
            raise FileNotFoundError(errno.ENOENT, os.strerror(errno.ENOENT), str(self.folder))
        self._put_back(self.old)
        self._sweep()
        self._sweep_older_editions()

    def _must_be_ours(self) -> None:
        try:
            names = set(os.listdir(self.folder))
        except FileNotFoundError:
            return
        except NotADirectoryError:
            names = {""}
        if self.folder.is_symlink() or names - {LOCK, NEW, OLD} or (names and LOCK not in names):
            raise BuildFailed(f"{one_line(self.folder)}: is where the site is made, and no build made it; move it away")

    def _finish(self) -> None:
        self._put_back(self.old)
        if self._sweep():
            with suppress(OSError):
                (self.folder / LOCK).unlink()
        os.close(self._lock)
        self._lock = -1

    def _put_back(self, old: Path) -> None:
        """An earlier site that lies aside while nothing stands in its place goes back."""
        if old.is_dir() and not os.path.lexists(self.target):
            with suppress(OSError):
                old.rename(self.target)

    def _sweep(self) -> bool:
        """Take away what lies aside, but never the old site before the new one stands. True when nothing is left."""
        remove(self.new)
        if os.path.lexists(self.target):
            remove(self.old)
        return not (self.new.exists() or self.old.exists())

    def _sweep_older_editions(self) -> None:
        """Earlier editions built in `.site-` and eight signs: theirs holds nothing but `site` and a site in `old`."""
        older = re.compile(re.escape(f".{self.target.name}-") + r"[a-z0-9_]{8}")
        for entry in list(os.scandir(self.target.parent)):
            folder = Path(entry.path)
            if not older.fullmatch(entry.name) or not entry.is_dir(follow_symlinks=False) or {*os.listdir(folder)} - {NEW, OLD}:
                continue
            old = folder / OLD
            if old.is_dir() and not (old / MARKER).is_file():
                continue
            self._put_back(old)
            if time.time() - max(each.stat().st_mtime for each in (folder, *folder.iterdir())) > HOUR_S or not any(folder.iterdir()):
                remove(folder)


def remove(folder: Path) -> None:
    """Take a folder away, whatever its permissions; what cannot be taken now is tried again by the next build."""
    shutil.rmtree(folder, ignore_errors=True)
    if folder.is_dir():
        for each, _, _ in os.walk(folder):  # Folders only: a file may be a link to one that a person keeps.
            with suppress(OSError):
                os.chmod(each, 0o700)
        shutil.rmtree(folder, ignore_errors=True)
