"""`swardbook new` teaches a record: what it writes passes the check as it is, in every kind of book, and says of each key what it is for."""

import re
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.book.loading.load import load_record
from generator.book.loading.whole_book import read_book
from generator.book.records import KINDS
from generator.checks import check_book
from generator.cli import main
from generator.commands.own_book.new import KIND_OF
from generator.commands.own_book.new_values import NewBook, extending_text, new_text
from tests.book_folders import BOOKS, SMALLEST

ROOT = Path(__file__).parents[2]
ID = "sweet-smother"


def run(*words: str) -> tuple[int, str]:
    done = CliRunner().invoke(main, ["new", *words])
    return done.exit_code, done.output


def own_book(folder: Path) -> Path:
    """A book over the shared knowledge, as an owner makes it."""
    made = CliRunner().invoke(main, ["init", str(folder), "--name", "Kestrel Flat Lawns", "--place", "canberra", "--grasses", "couch,tall-fescue"])
    assert made.exit_code == 0, made.output
    return folder


def demo(folder: Path) -> Path:
    for name in ("data", "content"):
        shutil.copytree(ROOT / name, folder / name)
    shutil.copy(ROOT / "mkdocs.yml", folder)
    return folder


@pytest.fixture(scope="module", params=["smallest", "whole", "demo", "own"])
def book(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp(request.param) / "book"
    if request.param in ("smallest", "whole"):
        return Path(shutil.copytree(BOOKS / request.param, folder))
    return demo(folder) if request.param == "demo" else own_book(folder)


def choose(book: Path, id: str) -> None:
    """Name a grass and a place where the book chooses them."""
    practice = book / "data/practice.yml"
    practice.write_text(re.sub(r"^(grasses|places): \[(.*)\]", rf"\1: [\2, {id}]", practice.read_text(encoding="utf-8"), flags=re.MULTILINE), encoding="utf-8")


def test_two_records_of_every_kind_pass_the_check_together(book: Path) -> None:
    """Two of each: what is written must not be the twin of what was written before. The book is read once for all; the command reads it each time."""
    for name in (ID, "second-thoughts"):
        into = NewBook.of(read_book(book)[0])
        assert into is not None
        for kind, folder in KIND_OF.items():
            file = book / "data" / folder / f"{name}.yml"
            file.parent.mkdir(exist_ok=True)
            file.write_text(new_text(kind, name, into), encoding="utf-8")
    choose(book, ID)
    found = check_book(book)
    assert [str(finding) for finding in found.findings] == []
    assert found.book is not None and [kind for kind in KINDS if ID not in found.book.of(kind)] == []


@pytest.mark.parametrize("kind", KIND_OF)
def test_every_key_of_the_record_is_there_or_shown(kind: str, tmp_path: Path) -> None:
    book = Path(shutil.copytree(BOOKS / "whole", tmp_path / "book"))
    run(kind, ID, "--book", str(book))
    file = book / "data" / KIND_OF[kind] / f"{ID}.yml"
    text = file.read_text(encoding="utf-8")
    missing = [key for key in KINDS[KIND_OF[kind]].model_fields if not re.search(rf"^[ #]*(- )?{key}:|\b{key}\b", text, re.MULTILINE)]
    assert missing == []
    bare = [line for line in text.splitlines() if re.match(r"(# )?\w+:", line) and "# " not in line.removeprefix("# ") and not re.search(r"assumption\}?$|summary: ", line)]
    assert bare == [], "a key that says nothing to its author"
    _, _, findings = load_record(file, file.name, KINDS[KIND_OF[kind]])
    assert findings == []


def test_records_over_shared_ones_pass_the_check_and_change_what_is_uncommented(tmp_path: Path) -> None:
    """Under the same name nothing changes until somebody uncomments; under another it is a record of its own."""
    book = own_book(tmp_path / "book")
    code, said = run("grass", "couch", "--like", "couch", "--book", str(book))
    assert code == 0, said
    couch = book / "data/grasses/couch.yml"
    assert "\nextends: couch\n" in couch.read_text(encoding="utf-8") and "\n# mowing_height:" in couch.read_text(encoding="utf-8")
    couch.write_text(couch.read_text(encoding="utf-8").replace("# name: ", "name: My ", 1), encoding="utf-8")
    for folder in KIND_OF.values():
        shared = ROOT / "data" / folder
        like = {"grasses": "tall-fescue", "places": "canberra"}.get(folder) or sorted(file.stem for file in shared.glob("*.yml"))[0]
        (book / "data" / folder).mkdir(exist_ok=True)
        (book / "data" / folder / f"{ID}.yml").write_text(extending_text(folder, ID, shared / f"{like}.yml"), encoding="utf-8")
    choose(book, ID)
    found = check_book(book)
    assert [str(finding) for finding in found.findings] == []
    assert found.book is not None and found.book.grasses["couch"].name.startswith("My ")
    assert found.book.grasses[ID].mowing_height == found.book.grasses["tall-fescue"].mowing_height


@pytest.fixture
def small(tmp_path: Path) -> Path:
    return Path(shutil.copytree(SMALLEST, tmp_path / "book"))


def test_a_name_that_is_no_id_gets_the_right_one(small: Path) -> None:
    code, said = run("grass", "Sweet Smother grass", "--book", str(small))
    assert code == 2 and "swardbook new grass sweet-smother-grass" in said
    assert not (small / "data/grasses/Sweet Smother grass.yml").exists()


def test_nothing_is_written_over(small: Path) -> None:
    file = small / "data/grasses/plaingrass.yml"
    before = file.read_bytes()
    code, said = run("grass", "plaingrass", "--book", str(small))
    assert code == 2 and "is there already" in said and file.read_bytes() == before


def test_a_retired_id_is_not_used_again(small: Path) -> None:
    (small / "data/retired.yml").write_text("grasses:\n  old-grass: {name: Old grass, instead: plaingrass, why: It was one and the same.}\n", encoding="utf-8")
    code, said = run("grass", "old-grass", "--book", str(small))
    assert code == 2 and "'plaingrass' took its place" in said


def test_a_kind_and_a_shared_record_are_suggested(small: Path, tmp_path: Path) -> None:
    code, said = run("gras", "plain", "--book", str(small))
    assert code == 2 and "did you mean 'grass'" in said
    code, said = run("grass", "plain", "--like", "couch", "--book", str(small))
    assert code == 2 and "does not lie over it" in said


def test_it_lists_its_kinds() -> None:
    code, said = run("--list")
    assert code == 0 and {line.split()[0] for line in said.splitlines()} == set(KIND_OF)
