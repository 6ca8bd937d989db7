"""What runs on both sides stands in one list, generator/twins.yml, and each file of it says which row it is in."""

import re
from functools import cache
from pathlib import Path

import pytest

from generator.site.frame.contract import contract_script, of_every_page, part_script
from tests.yaml_files import read_yaml

ROOT = Path(__file__).parents[1]
ROWS = {row["name"]: row for row in read_yaml(ROOT / "generator/twins.yml")}
_SAYS = re.compile(r"\bTwins?: ([a-z][a-z ,-]*)\.")


@cache
def scripts() -> dict[str, str]:
    return {
        path.relative_to(ROOT).as_posix(): path.read_text(encoding="utf-8")
        for path in sorted((ROOT / "generator").rglob("*.js")) if "vendor" not in path.parts
    }


def said(text: str) -> set[str]:
    """The rows that a file says it is in."""
    return {name for found in _SAYS.findall(text) for name in found.split(", ")}


@pytest.mark.parametrize("name", ROWS)
def test_a_row_names_files_that_say_so_and_a_test(name: str) -> None:
    row = ROWS[name]
    assert set(row) == {"name", "python", "script", "test", "why"} and row["why"].endswith(".")
    assert row["python"] and row["script"] and (ROOT / row["test"]).is_file()
    for path in (*row["python"], *row["script"]):
        assert name in said((ROOT / path).read_text(encoding="utf-8")), f"{path} does not say 'Twin: {name}.'"


def test_no_row_stands_twice() -> None:
    assert len(ROWS) == len(read_yaml(ROOT / "generator/twins.yml"))


def test_what_says_twin_is_in_its_row() -> None:
    others = [path for ending in ("*.py", "*.j2") for path in sorted((ROOT / "generator").rglob(ending))]
    texts = scripts() | {path.relative_to(ROOT).as_posix(): path.read_text(encoding="utf-8") for path in others}
    listed = {name: {*row["python"], *row["script"]} for name, row in ROWS.items()}
    for path, text in texts.items():
        for name in said(text):
            assert path in listed.get(name, ()), f"{path} says that it is in a row '{name}'"
    in_a_row = {path for paths in listed.values() for path in paths}
    assert {path for path, text in scripts().items() if re.search(r"\btwin\b", text, re.IGNORECASE)} <= in_a_row


def test_a_slip_in_a_comment_would_be_seen() -> None:
    assert said("/* Dates. Twins: job dates, days of the year. */") == {"job dates", "days of the year"}
    assert said('"""A twin of nothing: quantity."""') == set()


def sentences(value: object) -> set[str]:
    if isinstance(value, dict):
        return {found for each in value.values() for found in sentences(each)}
    return {value} if isinstance(value, str) else set()


def test_a_sentence_of_the_contract_stands_in_no_script() -> None:
    contract = of_every_page()
    templates = sentences(contract["reading"]["sentences"]) | sentences(contract["formula"]["sentences"])
    pieces = {piece for template in templates for piece in re.split(r"\{[a-z_]+\}", template) if len(piece) > 12}
    assert len(pieces) > 20
    written = "\n".join(scripts().values())
    assert {piece for piece in pieces if piece in written} == set()


def test_the_contract_is_plain_data_that_a_script_can_hold() -> None:
    assert contract_script().isascii() and part_script("calculator").startswith('Swardbook.contract["calculator"] = {')
    assert part_script("paste") == ""
    for pattern in of_every_page()["reading"]["patterns"].values():
        assert re.compile(pattern) and "(?P" not in pattern and "(?<" not in pattern and r"\s" not in pattern.replace(r"[\s\S]", "") and r"\d" not in pattern
