"""What a person put into a site is in the next one, as it was; and nothing of an earlier book stays with it."""

import json
import os
import subprocess
from pathlib import Path

import pytest

from generator.building.exchange import exchange
from generator.building.failed import BuildFailed
from generator.building.swap import replace_site
from generator.building.target import Target
from tests.building.small_sites import edition, everything, no_exchange, told, write

BOTH_WAYS = pytest.mark.parametrize("exchanged", [exchange, no_exchange], ids=["one step", "two renames"])


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """The first edition, with a page that the next has no more."""
    folder = tmp_path / "site"
    replace_site(Target(folder), edition(1, {"grasses/gone.html": "<p>Edition 1</p></html>"}))
    return folder


def put_in(site: Path) -> list[str]:
    """What people put into a site: paths of everything, folders too."""
    write(site / "CNAME", "lawn.example\n")
    write(site / ".nojekyll", "")
    (site / "photographs" / "2026").mkdir(parents=True)
    (site / "photographs/2026/lawn.jpg").write_bytes(bytes(range(256)))
    (site / "photographs/2026/lawn.jpg").chmod(0o640)
    os.utime(site / "photographs/2026/lawn.jpg", (1_000_000_000, 1_000_000_001))
    write(site / "grasses/notes.txt", "kept beside a page of the book")
    (site / "empty").mkdir(mode=0o700)
    (site / "latest").symlink_to("photographs/2026")
    (site / "broken").symlink_to("../not there")
    write(site / "closed/inside.txt", "closed")
    (site / "closed").chmod(0o555)
    names = ("CNAME", ".nojekyll", "photographs", "photographs/2026", "photographs/2026/lawn.jpg", "grasses/notes.txt", "empty", "latest", "broken", "closed", "closed/inside.txt")
    return list(names)


@BOTH_WAYS
def test_what_a_person_put_in_is_kept_as_it_was_from_build_to_build(site: Path, exchanged) -> None:
    own = put_in(site)
    before = {path: told(site / path) for path in own}
    for number in (2, 3, 4):
        replace_site(Target(site), edition(number), exchanged)
        assert {path: told(site / path) for path in own} == before
        assert "Edition" in (site / "index.html").read_text() and not (site / "grasses/gone.html").exists()
    assert [each.name for each in site.parent.iterdir()] == ["site"]


@BOTH_WAYS
def test_a_repository_in_the_site_stays_whole(site: Path, exchanged) -> None:
    def git(*words: str) -> str:
        author = ("-c", "user.name=A", "-c", "user.email=a@lawn.example")
        return subprocess.run(["git", "-C", site, *author, *words], check=True, capture_output=True, text=True).stdout

    git("init", "-q")
    git("add", "-A")
    git("commit", "-q", "-m", "The first edition")
    replace_site(Target(site), edition(2), exchanged)
    assert "missing" not in git("fsck", "--full") and git("log", "--format=%s") == "The first edition\n"
    assert git("status", "--short").splitlines() == [" M about.html", " M book/book.json", " M book/files.json", " M book/practice.json", " D grasses/gone.html", " M index.html"]


def test_a_failed_build_leaves_a_persons_own_where_it_was(site: Path) -> None:
    put_in(site)
    before = everything(site)
    with pytest.raises(BuildFailed):
        replace_site(Target(site), lambda folder: (folder / "no folder" / "page.html").touch())
    assert everything(site) == before


def test_a_build_that_needs_the_place_of_a_persons_own_stops_and_names_each(site: Path) -> None:
    put_in(site)
    write(site / "plans", "a file where the book will have a folder")
    write(site / "extra.html", "mine")
    before = everything(site)
    new = edition(2, {"CNAME": "other.example\n", "photographs": "a page's picture", "plans/mow.html": "mow", "extra.html": "the book's", "latest/x.html": "x"})
    target = Target(site)
    with pytest.raises(BuildFailed) as raised:
        replace_site(target, new)
    lines = str(raised.value).split("\n")
    assert [line.split(":")[0] for line in lines] == [str(site / name) for name in ("CNAME", "extra.html", "latest", "photographs", "plans")]
    assert all(line.endswith(": was put into the site by hand, and the book makes a file or folder of that name; move yours out of the site, or rename the book's") for line in lines)
    assert everything(site) == before and target.stands() == "Nothing was built; the earlier site is as it was."
    assert [each.name for each in site.parent.iterdir()] == ["site"]


def test_a_folder_of_both_holds_what_both_put_in(site: Path) -> None:
    write(site / "photographs/mine.jpg", "mine")
    replace_site(Target(site), edition(2, {"photographs/books.jpg": "the book's"}))
    assert {each.name for each in (site / "photographs").iterdir()} == {"mine.jpg", "books.jpg"}
    replace_site(Target(site), edition(3))
    assert {each.name for each in (site / "photographs").iterdir()} == {"mine.jpg"}


def test_a_file_that_the_book_makes_just_the_same_is_in_nobodys_way(site: Path) -> None:
    write(site / "CNAME", "lawn.example\n")
    replace_site(Target(site), edition(2, {"CNAME": "lawn.example\n"}))
    replace_site(Target(site), edition(3))
    assert not (site / "CNAME").exists(), "since edition 2 it is the book's"


def test_a_page_of_the_book_that_was_changed_by_hand_is_made_afresh(site: Path) -> None:
    write(site / "about.html", "changed by hand")
    replace_site(Target(site), edition(2))
    assert "Edition 2" in (site / "about.html").read_text()


def test_what_is_put_in_while_the_new_site_moves_in_is_kept(site: Path) -> None:
    def in_that_moment(new: Path, target: Path) -> bool:
        write(target / "late.txt", "just in time")
        return exchange(new, target)

    replace_site(Target(site), edition(2), in_that_moment)
    assert (site / "late.txt").read_text() == "just in time"


def test_the_list_names_what_the_build_made_and_is_the_same_for_the_same_book(site: Path) -> None:
    put_in(site)
    replace_site(Target(site), edition(2))
    files = json.loads((site / "book/files.json").read_text())["files"]
    assert files == ["about.html", "book/book.json", "book/files.json", "book/practice.json", "index.html"]
    other = site.parent / "other"
    replace_site(Target(other), edition(2))
    assert (other / "book/files.json").read_bytes() == (site / "book/files.json").read_bytes()


@pytest.mark.parametrize("damage", [None, "", "[", "{}", '{"files": "index.html"}', '{"files": [1]}', "[" * 5000, "\udcff"])
def test_a_site_without_a_sound_list_keeps_all_that_is_not_plainly_the_books(site: Path, damage: str | None) -> None:
    """As sites of earlier editions are: the pages of grasses and scripts that went are the book's, and a person's things are not."""
    listed = site / "book/files.json"
    listed.unlink()
    if damage is not None:
        listed.write_bytes(damage.encode("utf-8", "surrogateescape"))
    write(site / "grasses/gone.html", '<link href="../assets/swardbook.css"></html>')
    for gone in ("assets/jobs/gone.js", "book/gone.json", "calendars/flatfield/gone.ics"):
        write(site / gone, "of a grass that went")
    own = put_in(site)
    write(site / "assets/logo.png", "mine")
    write(site / "mine.html", "<p>mine</p>")
    write(site / "data.json", "mine")
    own += ["assets/logo.png", "mine.html", "data.json"]
    before = {path: told(site / path) for path in own}
    replace_site(Target(site), edition(2))
    assert {path: told(site / path) for path in own} == before
    gone = ("grasses/gone.html", "assets/jobs", "book/gone.json", "calendars")
    assert [path for path in gone if (site / path).exists()] == []


def test_something_in_the_site_that_is_no_file_is_carried_or_told(site: Path) -> None:
    os.mkfifo(site / "pipe")
    replace_site(Target(site), edition(2))
    assert (site / "pipe").is_fifo()
