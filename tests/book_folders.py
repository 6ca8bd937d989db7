"""Books for tests: the smallest and the whole one, and broken ones made from them.

A folder in tests/books/broken/ holds what differs from a sound book:
    edits.yml     files to change: path -> {text that stands there once: what stands there instead}
    delete.txt    files and folders to leave out, one a line
    base.txt      'whole' when the mistake needs more than the smallest book
    expected.txt  the exact lines that `swardbook check` prints
and any other file, put in its place as it is.
"""

import shutil
from pathlib import Path

from generator.book.loading.whole_book import Loaded, read_book
from tests.yaml_files import read_yaml

BOOKS = Path(__file__).parent / "books"
SMALLEST = BOOKS / "smallest"
WHOLE = BOOKS / "whole"
BROKEN = BOOKS / "broken"
_ABOUT = ("edits.yml", "delete.txt", "base.txt", "expected.txt")


def load_book(root: Path) -> Loaded:
    """The book in a folder, or everything that is wrong with its files and references; no check is asked."""
    book, findings = read_book(root)
    return Loaded(None if findings else book.whole(), findings)


def broken_books() -> list[str]:
    """Names of the broken books, by name."""
    return sorted(folder.name for folder in BROKEN.iterdir() if folder.is_dir())


def broken_book(name: str, to: Path) -> Path:
    """The broken book of that name, made in the folder `to`."""
    folder = BROKEN / name
    base = folder / "base.txt"
    book = to / "book"
    shutil.copytree(WHOLE if base.exists() and base.read_text().strip() == "whole" else SMALLEST, book)
    for file in sorted(folder.rglob("*")):
        if file.is_file() and file.name not in _ABOUT:
            (book / file.relative_to(folder)).parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(file, book / file.relative_to(folder))
    if (folder / "edits.yml").exists():
        for path, edits in read_yaml(folder / "edits.yml").items():
            edit(book / path, edits)
    if (folder / "delete.txt").exists():
        for line in (folder / "delete.txt").read_text().split():
            target = book / line
            shutil.rmtree(target) if target.is_dir() else target.unlink()
    return book


def edit(file: Path, edits: dict[str, str]) -> None:
    """Change a file; each text must stand in it exactly once, so that a fixture cannot go stale unseen."""
    text = file.read_text(encoding="utf-8")
    for old, new in edits.items():
        assert text.count(old) == 1, f"{file.name} holds {old!r} {text.count(old)} times"
        text = text.replace(old, new)
    file.write_text(text, encoding="utf-8")


def expected_lines(name: str) -> list[str]:
    """What `swardbook check` must print for a broken book, line by line."""
    return (BROKEN / name / "expected.txt").read_text(encoding="utf-8").splitlines()
