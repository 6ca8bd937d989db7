"""`swardbook build`: what stands afterwards, and what an author is told when nothing was built."""

import hashlib
import re
import resource
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from generator.cli import main
from tests.book_folders import SMALLEST, edit

COMMAND = Path(sys.executable).with_name("swardbook")
FINDING = re.compile(r"^data/[\w./-]+:\d+:\d+: .+; .+$")


def build(book: Path, *more: str | Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run([COMMAND, "build", "--book", book, *more], capture_output=True, text=True, encoding="utf-8")


def built_here(book: Path, *more: str | Path) -> Result:
    """The same in this process, which has loaded everything already."""
    return CliRunner().invoke(main, ["build", "--book", str(book), *map(str, more)])


def contents(folder: Path) -> dict[str, str]:
    """Every file of a folder with the digest of its bytes."""
    return {
        file.relative_to(folder).as_posix(): hashlib.sha256(file.read_bytes()).hexdigest()
        for file in sorted(folder.rglob("*")) if file.is_file()
    }


def of_one_day(book: Path) -> Path:
    """A copy of the smallest book that is built as if it were always the same day."""
    shutil.copytree(SMALLEST, book)
    edit(book / "mkdocs.yml", {"  - swardbook\n": '  - swardbook:\n      today: "2026-11-02"\n'})
    return book


@pytest.fixture
def book(tmp_path: Path) -> Path:
    return of_one_day(tmp_path / "book")


@pytest.fixture(scope="module")
def first_build(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, subprocess.CompletedProcess[str]]:
    """A book with its site, which no test may change, and what its build said."""
    book = of_one_day(tmp_path_factory.mktemp("first") / "book")
    return book, build(book)


@pytest.fixture
def built(first_build: tuple[Path, subprocess.CompletedProcess[str]], tmp_path: Path) -> Path:
    """A copy of that book, to be changed and built again."""
    return Path(shutil.copytree(first_build[0], tmp_path / "built"))


def test_a_sound_book_builds_without_a_warning(first_build: tuple[Path, subprocess.CompletedProcess[str]]) -> None:
    book, run = first_build
    assert run.returncode == 0, run.stdout + run.stderr
    assert run.stdout == f"Built {book / 'site' / 'index.html'}\n"
    assert run.stderr == ""
    assert "Plaingrass" in (book / "site/index.html").read_text(encoding="utf-8")


def test_the_same_book_makes_the_same_site_also_where_nothing_of_it_may_run(built: Path, tmp_path: Path) -> None:
    assert build(built, "--safe", "--to", tmp_path / "two").returncode == 0
    one, two = contents(built / "site"), contents(tmp_path / "two")
    assert len(one) > 30
    assert {path for path in one if one[path] != two.get(path)} | (set(two) - set(one)) == set()


def test_a_book_with_a_mistake_leaves_the_earlier_site_as_it_was(built: Path) -> None:
    book = built
    before = contents(book / "site")
    edit(book / "data/grasses/plaingrass.yml", {"season_group: warm": "season_group: wram"})
    run = built_here(book)
    assert run.exit_code == 1
    lines = run.stdout.splitlines()
    assert lines and all(FINDING.match(line) for line in lines), run.stdout
    assert lines[0].startswith("data/grasses/plaingrass.yml:5:")
    assert "'warm'" in lines[0] or "warm" in lines[0].split(";")[1]
    assert run.stderr == "Nothing was built; the earlier site is as it was.\n"
    assert contents(book / "site") == before
    assert {path.name for path in book.iterdir()} == {"content", "data", "mkdocs.yml", "site"}, "a failed build leaves nothing behind"


def test_broken_yaml_is_told_at_its_line(book: Path) -> None:
    edit(book / "data/places/flatfield.yml", {"region: Invented": "region: [Invented"})
    run = built_here(book)
    assert run.exit_code == 1
    assert FINDING.match(run.stdout.splitlines()[0]), run.stdout
    assert run.stdout.startswith("data/places/flatfield.yml:")
    assert "Traceback" not in run.stdout + run.stderr
    assert not (book / "site").exists()


def test_a_dead_link_in_a_written_page_fails_the_build_and_leaves_the_site(built: Path) -> None:
    book = built
    before = contents(book / "site")
    with (book / "content/about.md").open("a", encoding="utf-8") as page:
        page.write("\nSee [another page](nowhere.md).\n")
    run = built_here(book)
    assert run.exit_code == 1
    assert "nowhere.md" in run.stdout + run.stderr
    assert "Traceback" not in run.stdout + run.stderr
    assert contents(book / "site") == before


def test_settings_that_cannot_be_read_are_told_without_a_traceback(book: Path) -> None:
    (book / "mkdocs.yml").write_text("site_name: [broken\n", encoding="utf-8")
    run = built_here(book)
    assert run.exit_code == 1
    assert "mkdocs.yml" in run.stdout
    assert "Traceback" not in run.stdout + run.stderr


def test_a_folder_of_other_files_is_never_replaced(book: Path, tmp_path: Path) -> None:
    photos = tmp_path / "photos"
    photos.mkdir()
    (photos / "lawn.jpg").write_bytes(b"a lawn")
    run = built_here(book, "--to", photos)
    assert run.exit_code == 1
    assert run.stdout == f"{photos}: holds files that no build of a book made; name an empty folder or a new one\n"
    assert contents(photos) == {"lawn.jpg": hashlib.sha256(b"a lawn").hexdigest()}


def test_a_place_where_nothing_can_be_written_is_told(book: Path, tmp_path: Path) -> None:
    (tmp_path / "note").write_text("a file, not a folder", encoding="utf-8")
    run = built_here(book, "--to", tmp_path / "note" / "site")
    assert run.exit_code == 1
    assert run.stdout == f"{tmp_path / 'note' / 'site'}: no site can be written here (Not a directory); name another folder with --to\n"


def test_a_folder_without_a_book_is_told_so(tmp_path: Path) -> None:
    run = built_here(tmp_path)
    assert run.exit_code == 1
    assert run.stdout == f"{tmp_path}: no mkdocs.yml here; go to the folder of a book or name it with --book\n"


def test_a_removed_page_is_gone_from_the_next_build_and_what_a_person_put_in_is_not(book: Path) -> None:
    (book / "content/extra.md").write_text("# An extra page\n", encoding="utf-8")
    assert built_here(book).exit_code == 0
    assert (book / "site/extra.html").exists()
    (book / "content/extra.md").unlink()
    (book / "site/CNAME").write_text("lawn.example", encoding="utf-8")
    assert built_here(book).exit_code == 0
    assert not (book / "site/extra.html").exists()
    assert (book / "site/CNAME").read_text(encoding="utf-8") == "lawn.example"


def test_a_disk_that_is_full_while_pages_are_written_is_one_line(book: Path) -> None:
    """A limit on the size of a file stands for it: both are told to the writer in the middle of a page."""
    def limit() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, 20_000))

    run = subprocess.run([COMMAND, "build", "--book", book], capture_output=True, text=True, encoding="utf-8", preexec_fn=limit)
    assert run.returncode == 1
    assert run.stdout == f"{book / 'site'}: no site can be written here (File too large); name another folder with --to\n"
    assert run.stderr == "Nothing was built.\n"
    assert {path.name for path in book.iterdir()} == {"content", "data", "mkdocs.yml"}


def test_a_page_that_is_no_text_is_one_line(book: Path) -> None:
    (book / "content/odd.md").write_bytes(b"# A title\n\xff\xfe\n")
    run = built_here(book)
    assert run.exit_code == 1
    assert run.stdout == "content/odd.md:2:1: the byte 0xff is not UTF-8 text; save the file as UTF-8\n"
    assert run.stderr == "Nothing was built.\n"
