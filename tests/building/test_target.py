"""Where a site may go, and the one line for where it may not; all of it is told before a page is built."""

import os
import shutil
from pathlib import Path

import pytest

from generator.building.failed import BuildFailed
from generator.building.swap import replace_site
from generator.building.target import Target
from tests.building.small_sites import edition, everything, one_reason, write


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """A book's folders."""
    for name in ("content/about.md", "data/practice.yml", "mkdocs.yml"):
        write(tmp_path / "book" / name, "")
    return tmp_path / "book"


def refused(target: Path, book: Path) -> str:
    with pytest.raises(BuildFailed) as raised:
        Target(target).must_take_a_site(book)
    return one_reason(raised)


@pytest.mark.parametrize("path", ["data", "data/site", "content/deep/site", "content", ".", "..", "via/site"])
def test_a_site_may_not_lie_where_the_book_is_read_from_nor_hold_it(book: Path, path: str) -> None:
    (book / "via").symlink_to("data")
    before = everything(book)
    assert refused(book / path, book).startswith(f"{(book / path).absolute()}: ")
    assert everything(book) == before


def test_nor_where_a_link_of_the_book_leads(book: Path) -> None:
    (book / "content").rename(book.parent / "pages")
    (book / "content").symlink_to("../pages")
    assert refused(book.parent / "pages/site", book) == f"{book.parent}/pages/site: and content/, which the book is read from, lie one inside the other; name a folder outside it"


def test_a_link_that_leads_nowhere_is_told(book: Path) -> None:
    (book / "site").symlink_to("../www")
    assert refused(book / "site", book) == f"{book}/site: is a link that leads nowhere; make the folder that it names, or name another with --to"
    (book / "ring").symlink_to("ring")
    assert refused(book / "ring", book).startswith(f"{book}/ring: is a link that leads nowhere;")


def test_a_file_is_told(book: Path) -> None:
    write(book / "site", "mine")
    assert refused(book / "site", book) == f"{book}/site: is a file; name a folder"


def test_where_a_disk_is_mounted_is_told(book: Path) -> None:
    assert refused(Path("/proc"), book) == "/proc: is where a disk is mounted, so no new site can take its place; name a folder inside it"


def test_a_line_break_in_a_name_does_not_break_the_line(book: Path) -> None:
    write(book / "two\nlines", "mine")
    assert refused(book / "two\nlines", book) == f"{book}/two\\nlines: is a file; name a folder"


@pytest.mark.parametrize("name", ["s" * 256, "s" * 5000])
def test_a_name_that_no_disk_takes_is_told_and_leaves_nothing(book: Path, name: str) -> None:
    target = Target(book.parent / "new" / name)
    target.must_take_a_site(book)
    with pytest.raises(BuildFailed) as raised:
        replace_site(target, edition(1))
    assert "(File name too long); name another folder with --to" in one_reason(raised)
    assert [each.name for each in book.parent.iterdir()] == ["book"]


def test_another_disk_than_the_books_is_as_good(book: Path) -> None:
    other = Path("/dev/shm") / f"site-of-{os.getpid()}"
    try:
        for number in (1, 2):
            replace_site(Target(other / "site"), edition(number))
        assert other.stat().st_dev != book.stat().st_dev, "both stand on one disk here: this test says nothing"
        assert "Edition 2" in (other / "site/index.html").read_text() and len(list(other.iterdir())) == 1
    finally:
        shutil.rmtree(other, ignore_errors=True)
