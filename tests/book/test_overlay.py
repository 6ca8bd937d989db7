"""A book over shared knowledge: what it says of its own, and what stays as it was. The shared knowledge here is the small whole book."""

import shutil
from pathlib import Path

import pytest

from generator.book.book import Book
from generator.book.loading.whole_book import read_book
from generator.book.overlay.upstream import STATE_FILE, changes_since, state_text, told
from generator.checks import CHECKS
from tests.book_folders import WHOLE, edit

PRACTICE = """\
name: Heron Lawns
invented: false
shared_knowledge: true
about: Somebody else.
home_place: flatfield
home_grass: plaingrass
feed: own-feed
products:
  own-feed: {name: Own feed, nitrogen_percent: 10}
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A book of one's own that says nothing yet but who it is."""
    (tmp_path / "data").mkdir()
    (tmp_path / "content").mkdir()
    (tmp_path / "mkdocs.yml").write_text((WHOLE / "mkdocs.yml").read_text().replace("Whole Lawns", "Heron Lawns"))
    (tmp_path / "data" / "practice.yml").write_text(PRACTICE)
    return tmp_path


def write(folder: Path, path: str, text: str) -> None:
    file = folder / "data" / path
    file.parent.mkdir(exist_ok=True)
    file.write_text(text)


def findings(folder: Path, knowledge: Path = WHOLE) -> list[str]:
    book, found = read_book(folder, knowledge=knowledge)
    return [str(each) for each in sorted({*found, *(finding for check in CHECKS for finding in check.check(book))})]


def read(folder: Path, knowledge: Path = WHOLE) -> Book:
    book, found = read_book(folder, knowledge=knowledge)
    assert not found, found
    return book.whole()


def test_everything_shared_is_in_a_book_that_says_nothing(folder: Path) -> None:
    shared = read_book(WHOLE)[0]
    book = read(folder)
    assert dict(book.tasks) == dict(shared.tasks)
    assert book.sources == shared.sources
    assert book.glossary == shared.glossary
    assert book.practice.name == "Heron Lawns", "the practice of the shared knowledge is nobody's"
    assert "plain-sand" not in book.practice.products
    assert findings(folder) == []


def test_a_changed_field_is_changed_and_all_else_follows_the_shared_record(folder: Path) -> None:
    write(folder, "grasses/plaingrass.yml", "extends: plaingrass\nmowing_height: {low: 30, high: 40, use: 35, source: ours}\n")
    grass, shared = read(folder).grasses["plaingrass"], read_book(WHOLE)[0].grasses["plaingrass"]
    assert (grass.mowing_height.low, grass.mowing_height.use, grass.mowing_height.unit, grass.mowing_height.sources) == (30, 35, "mm", ("ours",))
    assert grass.model_copy(update={"mowing_height": shared.mowing_height}) == shared


def test_an_empty_value_takes_a_field_out(folder: Path) -> None:
    write(folder, "tasks/sweep.yml", "extends: sweep\nnames:\n")
    assert read(folder).tasks["sweep"].names == {}


def test_a_list_is_added_to_cut_or_changed_item_by_item(folder: Path) -> None:
    write(folder, "tasks/sweep.yml", "extends: sweep\ngear: {add: [bucket]}\n")
    write(folder, "renovations/plain-renovation.yml", "extends: plain-renovation\nsteps:\n  without: [water-it]\n  change:\n    look: {day: -3, source: ours}\n")
    book = read(folder)
    assert book.tasks["sweep"].gear == ("broom", "bucket")
    steps = book.renovations["plain-renovation"].steps
    assert [(step.id, step.day) for step in steps] == [("look", -3), ("sweep-it", 0)]
    assert steps[0].title == "Look at it"


def test_a_whole_record_takes_the_place_of_a_shared_one_and_another_name_stands_beside_it(folder: Path) -> None:
    write(folder, "experts/sweeper.yml", (WHOLE / "data/experts/sweeper.yml").read_text().replace("name: ", "name: My ", 1))
    write(folder, "grasses/other.yml", "extends: plaingrass\nname: Other grass\n")
    book = read(folder)
    assert book.experts["sweeper"].name.startswith("My ")
    assert sorted(book.grasses) == ["cooler", "other", "plaingrass"]
    assert book.grasses["other"].summary == book.grasses["plaingrass"].summary


def test_files_that_a_book_has_once_lie_over_the_shared_ones(folder: Path) -> None:
    write(folder, "countries.yml", "FR: {name: France}\n")
    write(folder, "sources.yml", "my-notes:\n  title: My own notes\n  organisation: Heron Lawns\n  year: 2025\n  no_address: Kept at home.\n  read: whole\n")
    book = read(folder)
    assert book.countries["FR"].name == "France"
    assert {*book.countries} > {"FR", "AU"}
    assert {*book.sources} > {"my-notes", "almanac"}


@pytest.mark.parametrize(("file", "text", "line"), [
    ("grasses/plaingrass.yml", "extends: plaingras\nname: X\n",
     "data/grasses/plaingrass.yml:1:10: 'plaingras' is not in the shared grasses; did you mean 'plaingrass'?"),
    ("grasses/plaingrass.yml", "extends: plaingrass\nmowing_height: {use: 35}\n",
     "data/grasses/plaingrass.yml:2:17: 'use' is changed, and its source would still be 'almanac'; write a 'source' beside it: 'ours', 'common practice', or the id of yours"),
    ("tasks/sweep.yml", "extends: sweep\ngear: {ad: [bucket]}\n", "data/tasks/sweep.yml:2:8: 'ad' does nothing to a list; did you mean 'add'?"),
    ("tasks/sweep.yml", "extends: sweep\ngear: {without: [brom]}\n", "data/tasks/sweep.yml:2:18: 'brom' is not in this list; look at the shared record, or leave it out here"),
    ("renovations/plain-renovation.yml", "extends: plain-renovation\nsteps: {change: {lok: {day: 1, source: ours}}}\n",
     "data/renovations/plain-renovation.yml:2:18: no item of this list has the id 'lok'; did you mean 'look'?"),
    ("tasks/sweep.yml", "extends: sweep\nsumary: Short.\n", "data/tasks/sweep.yml:2:1: unknown key 'sumary'; did you mean 'summary'?"),
])
def test_what_is_wrong_in_a_change_is_told_at_its_place(folder: Path, file: str, text: str, line: str) -> None:
    write(folder, file, text)
    told_of = [finding for finding in findings(folder) if finding.startswith("data/")]
    assert line in told_of, told_of


@pytest.mark.parametrize(("file", "text"), [
    ("tasks/sweep.yml", "extends: sweep\ncautions: []\n"),
    ("tasks/sweep.yml", "extends: sweep\ncautions:\n"),
    ("tasks/sweep.yml", "extends: sweep\ncautions: {without: [sore-back]}\n"),
    ("renovations/plain-renovation.yml", "extends: plain-renovation\nsteps: {change: {sweep-it: {cautions: []}}}\n"),
    ("cautions/sore-back.yml", "extends: sore-back\nsummary: Nothing to fear.\n"),
    ("cautions/sore-back.yml", "extends: sore-back\nwhat_to_do: []\n"),
    ("cautions/sore-back.yml", "extends: sore-back\nhazard:\n"),
])
def test_no_caution_can_be_taken_away(folder: Path, file: str, text: str) -> None:
    write(folder, file, text)
    assert [line for line in findings(folder) if line.startswith(f"data/{file}:2:") and "caution" in line], findings(folder)


def test_a_record_in_place_of_a_shared_one_shows_its_cautions(folder: Path) -> None:
    for file in ("tasks/sweep.yml", "cautions/sore-back.yml"):
        text = (WHOLE / "data" / file).read_text()
        write(folder, file, text.replace("cautions: [sore-back]\n", ""))
    told_of = findings(folder)
    assert any(line.startswith("data/tasks/sweep.yml:1:1: the shared record shows the cautions sore-back, and this one does not") for line in told_of)
    assert any(line.startswith("data/cautions/sore-back.yml:1:1: this would take the place of a caution") for line in told_of)


def test_a_caution_can_be_added_to(folder: Path) -> None:
    write(folder, "cautions/sore-back.yml", "extends: sore-back\nwhat_to_do:\n  add:\n    - {text: Sit down., source: ours}\n")
    assert [each.text for each in read(folder).cautions["sore-back"].what_to_do] == ["Take a longer broom.", "Sit down."]


def test_a_book_that_stands_alone_extends_nothing(folder: Path) -> None:
    shutil.copytree(WHOLE / "data", folder / "data", dirs_exist_ok=True)
    write(folder, "grasses/plaingrass.yml", "extends: plaingrass\nname: X\n")
    assert any("data/grasses/plaingrass.yml:1:1: 'extends' changes a record of the shared knowledge" in line for line in findings(folder))


def test_a_new_version_of_the_shared_knowledge_loses_nothing_and_says_what_to_look_at(folder: Path, tmp_path: Path) -> None:
    write(folder, "grasses/plaingrass.yml", "extends: plaingrass\nmowing_height: {low: 30, high: 40, use: 35, source: ours}\n")
    (folder / STATE_FILE).write_text(state_text(folder, WHOLE))
    assert changes_since(folder, WHOLE) == []
    newer = tmp_path / "newer"
    shutil.copytree(WHOLE, newer)
    edit(newer / "data/grasses/plaingrass.yml", {"low: 20, high: 30, use: 25": "low: 15, high: 25, use: 20", "use: 10, unit: g/m2": "use: 12, unit: g/m2"})
    edit(newer / "data/tasks/look.yml", {"name: Look": "name: Look round"})
    grass = read(folder, newer).grasses["plaingrass"]
    assert (grass.mowing_height.use, grass.nitrogen_per_year.use) == (35, 12), "mine stays, and what I said nothing of is the new one"
    found = changes_since(folder, newer)
    assert found is not None
    assert [told(change) for change in found] == [
        "data/grasses/plaingrass.yml:1:1: mowing_height.high, mowing_height.low, mowing_height.use of the shared grasses/plaingrass changed, "
        "and this file says it too; yours stays, see whether it should",
        "tasks/look: name changed",
    ]
