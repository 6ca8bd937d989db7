"""Whatever lies in a book's folders, checking it ends at once, in one line about each thing that is no file of the book."""

import os
import shutil
import socket
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.checks import check_book
from generator.cli import main
from tests.book_folders import WHOLE, edit
from tests.fuzz.through import in_time

NOBODY = 65534


@pytest.fixture
def book(tmp_path: Path) -> Path:
    return Path(shutil.copytree(WHOLE, tmp_path / "book"))


def lines(book: Path) -> list[str]:
    with in_time(10):
        return [str(finding) for finding in check_book(book).findings]


def pipe(place: Path) -> None:
    os.mkfifo(place)


def loop(place: Path) -> None:
    place.symlink_to(place.name)


def endless(place: Path) -> None:
    place.symlink_to("/dev/zero")


def outside(place: Path) -> None:
    place.symlink_to("/etc/passwd")


def listening(place: Path) -> None:
    here = os.getcwd()
    os.chdir(place.parent)  # A socket's address may not be long.
    try:
        socket.socket(socket.AF_UNIX).bind(place.name)
    finally:
        os.chdir(here)


def folder(place: Path) -> None:
    place.mkdir()


SAID = {
    pipe: "is a pipe and no file; take it away", listening: "is a socket and no file; take it away",
    loop: "is a link that leads nowhere; take it away",
    endless: "is a link that leads out of the book; put the file itself here, or take the link away",
    outside: "is a link that leads out of the book; put the file itself here, or take the link away",
}  # fmt: skip


@pytest.mark.parametrize("put", SAID, ids=lambda put: put.__name__)
@pytest.mark.parametrize("place", ["data/grasses/odd.yml", "data/odd.yml", "content/odd.md", "content/deep/odd.png", "content/odd"])
def test_what_is_no_file_is_one_line_where_it_lies(book: Path, place: str, put: object) -> None:
    (book / place).parent.mkdir(exist_ok=True)
    put(book / place)
    name = place.rpartition("/")[2]
    assert lines(book) == [f"{place}:1:1: '{name}' {SAID[put]}"]


@pytest.mark.parametrize("put", SAID, ids=lambda put: put.__name__)
@pytest.mark.parametrize("place", ["data/practice.yml", "data/sources.yml", "mkdocs.yml"])
def test_so_is_one_that_every_book_needs(book: Path, place: str, put: object) -> None:
    (book / place).unlink()
    put(book / place)
    name = place.rpartition("/")[2]
    assert lines(book) == [f"{place}:1:1: '{name}' {SAID[put]}"]


def test_a_link_to_a_folder_is_not_followed(book: Path) -> None:
    for place, target in (("content/up", ".."), ("content/here", "."), ("content/system", "/etc"), ("data/grasses/up", ".."), ("data/up", "../..")):
        (book / place).symlink_to(target)
    assert [line.partition(";")[0] for line in lines(book)] == [
        "content/here:1:1: 'here' is a link to a folder", "content/system:1:1: 'system' is a link that leads out of the book",
        "content/up:1:1: 'up' is a link that leads out of the book", "data/grasses/up:1:1: 'up' is a link to a folder",
        "data/up:1:1: 'up' is a link that leads out of the book",
    ]


def test_the_folders_themselves_are_looked_at(book: Path) -> None:
    shutil.move(book / "content", book.parent / "elsewhere")
    (book / "content").symlink_to("../elsewhere")
    assert [line.partition(";")[0] for line in lines(book)] == ["content:1:1: 'content' is a link that leads out of the book"]
    shutil.move(book / "data", book.parent / "data")
    (book / "data").symlink_to("../data")
    assert "data:1:1: 'data' is a link that leads out of the book; put the file itself here, or take the link away" in lines(book)


def test_a_link_inside_the_book_is_read(book: Path) -> None:
    (book / "content" / "again.md").symlink_to("about.md")
    (book / "data" / "grasses" / "twin.yml").symlink_to("cooler.yml")
    assert not [line for line in lines(book) if "link" in line]


def test_a_folder_of_a_files_name_is_said_to_be_one(book: Path) -> None:
    (book / "data" / "practice.yml").unlink()
    folder(book / "data" / "practice.yml")
    folder(book / "data" / "grasses" / "odd.yml")
    assert [line.partition(";")[0] for line in lines(book)] == [
        "data/grasses/odd.yml:1:1: a folder 'odd.yml' is inside data/grasses", "data/practice.yml:1:1: 'practice.yml' is a folder",
    ]


@pytest.fixture
def anyones_book() -> Iterator[Path]:
    """A book where a person without rights may look: the tests may run as one who has them all."""
    with tempfile.TemporaryDirectory() as made:
        Path(made).chmod(0o755)
        yield Path(shutil.copytree(WHOLE, Path(made) / "book"))


@pytest.mark.parametrize("place", ["data/grasses", "data", "content/deep", "data/tasks/look.yml", "content/about.md", "mkdocs.yml"])
def test_what_may_not_be_read_is_said_to_be_so(anyones_book: Path, place: str) -> None:
    (anyones_book / "content" / "deep").mkdir()
    (anyones_book / place).chmod(0)
    whoever = os.geteuid()
    if whoever == 0:
        os.seteuid(NOBODY)
    try:
        said = lines(anyones_book)
    finally:
        os.seteuid(whoever)
        (anyones_book / place).chmod(0o755)
    assert f"{place}:1:1: '{place.rpartition('/')[2]}' cannot be read; check its permissions" in said
    assert not [line for line in said if "Errno" in line or "Traceback" in line]


def test_a_build_takes_nothing_from_outside(book: Path) -> None:
    outside(book / "content" / "secret.txt")
    pipe(book / "content" / "pipe.md")
    with in_time(60):
        run = CliRunner().invoke(main, ["build", "--book", str(book), "--to", str(book.parent / "site")])
    assert run.exit_code == 1
    assert "content/secret.txt:1:1: 'secret.txt' is a link that leads out of the book" in run.stdout
    assert "content/pipe.md:1:1: 'pipe.md' is a pipe" in run.stdout
    assert not (book.parent / "site").exists()


def test_pages_may_lie_in_another_folder_of_the_book(book: Path) -> None:
    shutil.move(book / "content", book / "pages")
    edit(book / "mkdocs.yml", {"docs_dir: content": "docs_dir: pages"})
    assert lines(book) == []
    outside(book / "pages" / "secret.txt")
    assert [line.partition(";")[0] for line in lines(book)] == ["pages/secret.txt:1:1: 'secret.txt' is a link that leads out of the book"]
