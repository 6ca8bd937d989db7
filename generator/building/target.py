"""Where a site goes: whether one may stand there, and what stands there now."""

import os
import re
from pathlib import Path

from generator.building.failed import BuildFailed
from generator.files.json_book import MARKER
from generator.findings import one_line

MOUNTS = Path("/proc/self/mountinfo")


class Target:
    """A folder for a site, as it was named. `real`: where it lies when links are followed, as a site may be reached by one."""

    def __init__(self, path: Path) -> None:
        self.path = path.absolute()
        self.real = Path(os.path.realpath(path))
        self._earlier = self._site_there(self.real)
        self._new: tuple[int, int] | None = None

    def must_take_a_site(self, root: Path) -> None:
        """Raises BuildFailed where no site may stand. root: the folder of the book."""
        book = Path(os.path.realpath(root))
        if os.path.islink(self.path) and not os.path.exists(self.path):
            raise self._refused("is a link that leads nowhere", "make the folder that it names, or name another with --to")
        if book.is_relative_to(self.real):
            raise self._refused("holds the book itself", "name a folder of its own for the site")
        for folder in (book / "data", book / "content"):
            self.must_lie_outside(folder)
        mounted = _mounted_in(self.real)
        if os.path.ismount(self.real) or self.real in mounted:
            raise self._refused("is where a disk is mounted, so no new site can take its place", "name a folder inside it")
        for folder in mounted:
            raise mounted_inside(folder)
        if not os.path.exists(self.path):  # Unlike Path's own, it takes a name that is too long for one that is not there.
            return
        if not self.path.is_dir():
            raise self._refused("is a file", "name a folder")
        if not os.access(self.real, os.R_OK | os.W_OK | os.X_OK):
            raise self._refused("may not be changed by you", "give yourself its permissions, or name another folder with --to")
        if any(self.real.iterdir()) and not (self.real / MARKER).is_file():
            raise self._refused("holds files that no build of a book made", "name an empty folder or a new one")

    def must_lie_outside(self, folder: Path) -> None:
        """Raises BuildFailed where the site would lie in a folder that the book is read from, or that folder in the site."""
        real = Path(os.path.realpath(folder))
        if self.real.is_relative_to(real) or real.is_relative_to(self.real):
            raise self._refused(f"and {one_line(folder.name)}/, which the book is read from, lie one inside the other", "name a folder outside it")

    def unwritable(self, error: OSError) -> BuildFailed:
        return self._refused(f"no site can be written here ({error.strerror or error})", "name another folder with --to")

    def expect(self, new: Path) -> None:
        """Told before a new site is moved in, so that it is known again wherever this ends."""
        self._new = self._site_there(new)

    def stands(self) -> str:
        """What stands there now, as a sentence for who asked for a build."""
        now = self._site_there(self.real)
        if now is None and self._earlier is not None:
            return f"There is nothing at {one_line(self.path)} now; the earlier site is beside it, and the next build puts it back."
        if now is None:
            return "Nothing was built."
        return "The new site is in place." if now == self._new else "Nothing was built; the earlier site is as it was."

    def _site_there(self, folder: Path) -> tuple[int, int] | None:
        """Which folder it is, when it holds a site: two builds are two folders."""
        try:
            if not (folder / MARKER).is_file():
                return None
            found = folder.stat()
        except OSError:
            return None
        return found.st_dev, found.st_ino

    def _refused(self, what: str, instead: str) -> BuildFailed:
        return BuildFailed(f"{one_line(self.path)}: {what}; {instead}")


def mounted_inside(folder: Path) -> BuildFailed:
    """Why a site is not replaced in which a disk or another folder is mounted: with the old site, what is mounted would be emptied."""
    return BuildFailed(f"{one_line(folder)}: is another disk or folder, mounted inside the site; mount it elsewhere, or name another folder with --to")


def _mounted_in(folder: Path) -> list[Path]:
    """Where something is mounted in a folder, or at it. Of a folder that is mounted from the same disk, only Linux's own list tells."""
    if not MOUNTS.exists():
        return []
    points = [line.split()[4] for line in MOUNTS.read_text(errors="surrogateescape").splitlines()]
    return sorted(point for point in map(_as_it_is_spelt, points) if point.is_relative_to(folder))


def _as_it_is_spelt(point: str) -> Path:
    """Blanks and the like stand in the list as the octal number of their byte."""
    raw = re.sub(rb"\\([0-7]{3})", lambda octal: bytes([int(octal[1], 8)]), os.fsencode(point))
    return Path(os.fsdecode(raw))
