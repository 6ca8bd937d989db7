"""Sites of a few files, made in no time, for whatever does not depend on what a site holds."""

import os
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest


def edition(number: int, more: dict[str, str] | None = None) -> Callable[[Path], None]:
    """Makes a site whose every file says which edition it is of."""

    def make(site: Path) -> None:
        for name in ("index.html", "about.html"):
            write(site / name, f'<link href="assets/swardbook.css"><p>Edition {number}</p></html>')
        for name in ("book/book.json", "book/practice.json"):
            write(site / name, f'{{"practice": "Edition {number}"}}')
        for path, text in (more or {}).items():
            write(site / path, text)

    return make


def write(file: Path, text: str) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(text, encoding="utf-8")


def no_exchange(one: Path, other: Path) -> bool:
    """A system that has no step in which two folders exchange their names."""
    return False


def everything(folder: Path) -> dict[str, tuple]:
    """All that lies in a folder: path to kind, permissions, time of change, and content or where a link leads."""
    return {str(path.relative_to(folder)): told(path) for path in _below(folder)}


def told(path: Path) -> tuple:
    about = path.lstat()
    if path.is_symlink():
        return "link", os.readlink(path)
    return ("folder", oct(about.st_mode), "") if path.is_dir() else ("file", oct(about.st_mode), about.st_mtime_ns, path.read_bytes())


def _below(folder: Path) -> Iterator[Path]:
    for path in sorted(folder.iterdir()):
        yield path
        if path.is_dir() and not path.is_symlink():
            yield from _below(path)


def one_reason(raised: pytest.ExceptionInfo) -> str:
    """The one line that an author is told."""
    (line,) = str(raised.value).split("\n")
    return line
