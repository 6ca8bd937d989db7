"""What a person put into a site stays there: each site lists what its build made, and everything else is carried into the next.

A file of the list that was changed by hand is the book's all the same, and is made afresh. A site of an earlier edition has no list:
there the book's is what the new build makes as well, each page that carries our stylesheet, and data and scripts in the folders of
both; whatever else lies there is kept.
"""

import filecmp
import json
import os
import shutil
import stat
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from generator.building.failed import BuildFailed, failed
from generator.building.target import mounted_inside
from generator.findings import one_line
from generator.site.frame.render import STYLE

LIST = "book/files.json"
FOLDERS_OF_EARLIER_EDITIONS = ("assets", "book", "calendars", "search")
ENDINGS_OF_EARLIER_EDITIONS = {".js", ".css", ".map", ".json", ".svg", ".ics", ".csv"}


@dataclass(frozen=True)
class ListedFile:
    """Something in a site: its path from there, and whether it is a folder."""

    path: str
    is_folder: bool


def write_list(site: Path) -> None:
    """Write into a site that was just built which files the build made."""
    files = sorted({each.path for each in _entries(site) if not each.is_folder} | {LIST})
    (site / LIST).write_text(json.dumps({"files": files}, indent=0) + "\n", encoding="utf-8")


def read_list(site: Path) -> frozenset[str] | None:
    """What a site's build made, or None where the list is missing or was damaged."""
    try:
        files = json.loads((site / LIST).read_text(encoding="utf-8"))["files"]
        return frozenset(files) if isinstance(files, list) and all(isinstance(each, str) for each in files) else None
    except (OSError, ValueError, TypeError, KeyError, RecursionError):
        return None


def carry_over(old: Path, new: Path, shown: Path) -> None:
    """Put what a person put into the old site into the new one as well; the old one is left as it is.

    shown: how messages name the site. Raises BuildFailed with a line for each thing of theirs whose place the new build takes,
    and for a disk that is mounted in the site.
    """
    own = persons_own(old, new)
    clashes: list[str] = []
    for entry in own:
        if not any(PurePosixPath(entry.path).is_relative_to(told) for told in clashes) and _place_is_taken(entry, old, new):
            clashes.append(entry.path)
    if clashes:
        raise failed(
            f"{one_line(shown / each)}: was put into the site by hand, and the book makes a file or folder of that name; move yours out of the site, or rename the book's"
            for each in clashes
        )
    _bring(own, old, new)


def bring_newcomers(old: Path, new: Path) -> None:
    """What a person put into the old site while the new one was moved in; what cannot be brought is left."""
    with suppress(OSError, BuildFailed):
        _bring([each for each in persons_own(old, new) if not _place_is_taken(each, old, new)], old, new)


def persons_own(old: Path, new: Path) -> list[ListedFile]:
    """What of an old site no build made, folders before what lies in them."""
    is_books = _of_the_list(old) or _of_an_earlier_edition(old, new)
    entries = list(_entries(old))
    books = {each.path for each in entries if not each.is_folder and is_books(each.path)}
    folders = {str(parent) for path in books for parent in PurePosixPath(path).parents}
    return [each for each in entries if each.path not in (folders if each.is_folder else books)]


def _of_the_list(old: Path) -> Callable[[str], bool] | None:
    files = read_list(old)
    return None if files is None else files.__contains__


def _of_an_earlier_edition(old: Path, new: Path) -> Callable[[str], bool]:
    def is_books(path: str) -> bool:
        if os.path.lexists(new / path):
            return True
        file = old / path
        if file.is_symlink() or not file.is_file():
            return False
        if file.suffix == ".html":
            return STYLE.encode() in file.read_bytes()
        return path.split("/")[0] in FOLDERS_OF_EARLIER_EDITIONS and "/" in path and file.suffix in ENDINGS_OF_EARLIER_EDITIONS

    return is_books


def _entries(site: Path) -> Iterator[ListedFile]:
    """Everything in a site, links not followed, folders before what lies in them. Raises BuildFailed for a disk mounted in it."""
    device = site.stat().st_dev

    def below(folder: Path, before: str) -> Iterator[ListedFile]:
        for each in sorted(os.scandir(folder), key=lambda each: each.name):
            is_folder = each.is_dir(follow_symlinks=False)
            if is_folder and each.stat(follow_symlinks=False).st_dev != device:
                raise mounted_inside(Path(each.path))
            yield ListedFile(before + each.name, is_folder)
            if is_folder:
                yield from below(Path(each.path), f"{before}{each.name}/")

    yield from below(site, "")


def _place_is_taken(entry: ListedFile, old: Path, new: Path) -> bool:
    """Whether the new build makes something where a person's own lies; two folders share their place, and so do equal files."""
    there = new / entry.path
    above = [new / parent for parent in PurePosixPath(entry.path).parents if str(parent) != "."]
    if any(os.path.lexists(each) and not _is_folder(each) for each in above):
        return True
    if not os.path.lexists(there):
        return False
    if entry.is_folder:
        return not _is_folder(there)
    here = old / entry.path
    return here.is_symlink() or not here.is_file() or not there.is_file() or not filecmp.cmp(here, there, shallow=False)


def _is_folder(path: Path) -> bool:
    return path.is_dir() and not path.is_symlink()


def _bring(entries: list[ListedFile], old: Path, new: Path) -> None:
    for entry in entries:
        here, there = old / entry.path, new / entry.path
        there.parent.mkdir(parents=True, exist_ok=True)
        if entry.is_folder:
            there.mkdir(exist_ok=True)
        elif not os.path.lexists(there):
            _bring_file(here, there)
    for entry in reversed(entries):
        if entry.is_folder:
            shutil.copystat(old / entry.path, new / entry.path)


def _bring_file(here: Path, there: Path) -> None:
    """The same file under a second name, which takes no room and no time; a copy where the disk has no such names."""
    if here.is_symlink():
        there.symlink_to(os.readlink(here))
        shutil.copystat(here, there, follow_symlinks=False)
        return
    try:
        os.link(here, there)
    except OSError:
        if not stat.S_ISREG(here.stat().st_mode):
            raise
        shutil.copy2(here, there)
