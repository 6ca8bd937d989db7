"""`swardbook pack`: one zip, the same for the same book, and never over or inside what it is made from."""

import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.cli import main
from tests.book_folders import SMALLEST, edit

COMMAND = Path(sys.executable).with_name("swardbook")


@pytest.fixture
def book(tmp_path: Path) -> Path:
    copy = tmp_path / "book"
    shutil.copytree(SMALLEST, copy)
    edit(copy / "mkdocs.yml", {"  - swardbook\n": '  - swardbook:\n      today: "2026-11-02"\n'})
    return copy


def pack(book: Path, *more: str | Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run([COMMAND, "pack", "--book", book, *more], capture_output=True, text=True, encoding="utf-8", cwd=book.parent)


def test_a_pack_holds_what_the_book_made_and_is_the_same_for_the_same_book(book: Path, tmp_path: Path) -> None:
    run = pack(book, "book.zip")
    assert (run.returncode, run.stdout) == (0, "Packed book.zip: unpack it and open book/index.html\n"), run.stdout + run.stderr
    first = (tmp_path / "book.zip").read_bytes()
    (book / "site/.git").mkdir()
    (book / "site/.git/config").write_text("a person's own", encoding="utf-8")
    again = CliRunner().invoke(main, ["pack", "--book", str(book), "--safe", str(tmp_path / "book.zip")])
    assert again.exit_code == 0, again.output
    assert (tmp_path / "book.zip").read_bytes() == first
    with zipfile.ZipFile(tmp_path / "book.zip") as archive:
        assert archive.testzip() is None
        packed = {entry.filename for entry in archive.infolist()}
    assert {f"book/{path.relative_to(book / 'site').as_posix()}" for path in (book / "site").rglob("*") if path.is_file()} - packed == {"book/.git/config"}
    assert {each.name for each in tmp_path.iterdir()} == {"book", "book.zip"}


REFUSED = {
    "book/data/practice.yml": "is inside the book, which would be packed with it or overwritten; write it elsewhere, such as ../book.zip",
    "book/site/book.zip": "is inside the site, which would be packed with it or overwritten; write it elsewhere, such as ../book.zip",
    "book/book.zip": "is inside the book, which would be packed with it or overwritten; write it elsewhere, such as ../book.zip",
    "link.zip": "is inside the book, which would be packed with it or overwritten; write it elsewhere, such as ../book.zip",
    "www/book.zip": "is inside the site, which would be packed with it or overwritten; write it elsewhere, such as ../book.zip",
    "book.tar": "does not end in .zip; name it, such as ../book.zip",
    "folder.zip": "is not a file; name another",
    "/dev/stdout": "does not end in .zip; name it, such as ../book.zip",
}


@pytest.mark.parametrize("file", REFUSED)
def test_a_place_where_no_pack_may_go_is_told_before_anything_is_built(book: Path, tmp_path: Path, file: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "www").mkdir()
    (tmp_path / "folder.zip").mkdir()
    (book / "site").symlink_to("../www")
    (tmp_path / "link.zip").symlink_to("book/data/practice.yml")
    before = (book / "data/practice.yml").read_bytes()
    run = CliRunner().invoke(main, ["pack", "--book", str(book), file])
    assert (run.exit_code, run.stdout, run.stderr) == (1, f"{file}: {REFUSED[file]}\n", "")
    assert (book / "data/practice.yml").read_bytes() == before and not any((tmp_path / "www").iterdir())


def test_a_folder_that_is_not_there_is_told(book: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    run = CliRunner().invoke(main, ["pack", "--book", str(book), "no folder/book.zip"])
    assert (run.exit_code, run.stdout) == (1, f"no folder/book.zip: there is no folder {tmp_path}/no folder; make it, or name another\n")
