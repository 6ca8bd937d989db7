"""The whole book: records by id, where each value stands, and what refers to nothing."""

import shutil
from pathlib import Path

import pytest

from generator.book.loading.load import LARGEST_FILE_BYTES
from generator.book.loading.whole_book import read_book
from tests.book_folders import SMALLEST, WHOLE, broken_book, edit, load_book


@pytest.fixture
def smallest(tmp_path: Path) -> Path:
    return Path(shutil.copytree(SMALLEST, tmp_path / "book"))


def test_records_are_found_by_id_in_the_order_of_file_names() -> None:
    book, findings = load_book(WHOLE)
    assert not findings
    assert list(book.grasses) == ["cooler", "plaingrass"]
    assert list(book.tasks) == ["look", "sweep"]
    assert list(book.sources) == ["almanac", "hearsay"]
    assert book.practice.home_grass == "plaingrass"
    assert book.season_groups.warm.growth_optimum.default == 31
    assert book.of("products")["plain-feed"].nitrogen_percent == 20


def test_every_kind_has_a_record_in_the_whole_book() -> None:
    book, _ = load_book(WHOLE)
    kinds = {kind for kind, _, _ in book.records()}
    assert kinds == {"grasses", "tasks", "cautions", "places", "calculators", "holds", "renovations", "aftercare", "problems", "experts", "answers",
                     "practice", "season-groups", "inspection", "retired", "glossary", "services"}  # fmt: skip


def test_where_a_value_stands() -> None:
    book, _ = load_book(WHOLE)
    lines = (WHOLE / "data/calculators/sweeping.yml").read_text().splitlines()
    line = next(n for n, text in enumerate(lines, 1) if "formula:" in text)
    column = lines[line - 1].index("area / speed") + 1
    path = ("calculators", "sweeping", "results", "time", "formula")
    assert str(book.where(*path)) == f"data/calculators/sweeping.yml:{line}:{column}"
    assert str(book.character(7, *path)) == f"data/calculators/sweeping.yml:{line}:{column + 7}"
    assert str(book.where("calculators", "sweeping", "results", "time", "[key]")).endswith(":3")
    assert str(book.where("sources", "hearsay", "read")) == "data/sources.yml:10:9"
    assert str(book.where("practice", "practice", "feed")) == "data/practice.yml:6:7"


def test_a_value_that_is_not_in_the_file_points_at_what_would_hold_it() -> None:
    book, _ = load_book(SMALLEST)
    assert str(book.where("grasses", "plaingrass", "seed_rate")) == "data/grasses/plaingrass.yml:1:1"


def test_a_place_inside_quotes_is_the_first_character_of_the_text(smallest: Path) -> None:
    edit(smallest / "data/grasses/plaingrass.yml", {"summary: An invented grass.": "summary: 'An invented grass.'"})
    book, _ = load_book(smallest)
    assert str(book.where("grasses", "plaingrass", "summary")) == "data/grasses/plaingrass.yml:7:11"


def test_a_book_with_a_finding_is_no_book_but_can_be_read_in_part(tmp_path: Path) -> None:
    folder = broken_book("word-not-listed", tmp_path)
    assert load_book(folder).book is None
    part, findings = read_book(folder)
    assert findings
    assert not part.grasses and list(part.places) == ["flatfield"]


def test_what_refers_to_a_broken_file_stays_silent(tmp_path: Path) -> None:
    """practice.yml and the plan name the grass; only the grass's own mistakes are told."""
    _, findings = read_book(broken_book("word-not-listed", tmp_path))
    assert {finding.where.path for finding in findings} == {"data/grasses/plaingrass.yml"}


@pytest.mark.parametrize("text", [b"", b"a: [", b"\xff\xfe", b"- x\n", b"almanac: [\n"])
def test_when_the_sources_cannot_be_read_nothing_else_is_said(smallest: Path, text: bytes) -> None:
    (smallest / "data/sources.yml").write_bytes(text)
    _, findings = read_book(smallest)
    assert [finding.where.path for finding in findings] == ["data/sources.yml"]


def test_one_broken_source_does_not_hide_or_break_the_others(smallest: Path) -> None:
    edit(smallest / "data/sources.yml", {"read: whole": "read: perhaps"})
    edit(smallest / "data/grasses/plaingrass.yml", {"source: common practice": "source: almanack"})
    assert [str(finding) for finding in read_book(smallest)[1]] == [
        "data/grasses/plaingrass.yml:9:50: source 'almanack' is not in data/sources.yml; did you mean 'almanac'?",
        "data/sources.yml:5:9: 'read' cannot be 'perhaps'; write 'whole', 'part' or 'quoted'",
    ]


def test_a_file_may_begin_with_the_mark_that_some_editors_write(smallest: Path) -> None:
    file = smallest / "data/practice.yml"
    file.write_bytes(b"\xef\xbb\xbf" + file.read_bytes())
    assert not load_book(smallest).findings


def test_hidden_files_are_left_alone(smallest: Path) -> None:
    (smallest / "data/.DS_Store").write_bytes(b"\0")
    (smallest / "data/grasses/.plaingrass.yml.swp").write_bytes(b"\0")
    assert not load_book(smallest).findings


def test_a_huge_file_is_not_read(smallest: Path) -> None:
    (smallest / "data/grasses/plaingrass.yml").write_bytes(b"#" * (LARGEST_FILE_BYTES + 1))
    assert [str(finding) for finding in read_book(smallest)[1]] == [
        "data/grasses/plaingrass.yml:1:1: the file is larger than 1000 kB; "
        "keep one record to a file; pictures and tables of readings go elsewhere"
    ]


def test_a_link_to_nowhere_is_a_finding(smallest: Path) -> None:
    (smallest / "data/grasses/gone.yml").symlink_to("nowhere.yml")
    found = [str(finding) for finding in read_book(smallest)[1]]
    assert found == ["data/grasses/gone.yml:1:1: 'gone.yml' is a link to nothing; take it away"]


def test_many_records_load_quickly_enough_to_notice_nothing(smallest: Path) -> None:
    """An alias bomb of nine levels, which would be 9**9 values if it were unfolded, is refused at once."""
    levels = "\n".join(f"  - &{b} [{', '.join([f'*{a}'] * 9)}]" for a, b in zip("abcdefgh", "bcdefghi", strict=True))
    (smallest / "data/sources.yml").write_text(f"x:\n  - &a [1]\n{levels}\n")
    assert len(read_book(smallest)[1]) >= 9


def test_a_loaded_book_does_not_change() -> None:
    book, _ = load_book(SMALLEST)
    with pytest.raises(TypeError):
        book.grasses["other"] = None
    with pytest.raises(Exception, match="frozen"):
        book.grasses["plaingrass"].name = "Other"
