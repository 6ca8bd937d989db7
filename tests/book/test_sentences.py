"""A record that cannot be read: each kind of mistake is one plain sentence at its place."""

from pathlib import Path
from typing import Literal

import pytest
from pydantic import Field

from generator.book.fields.sourced import Figure, Record, RecordProblem
from generator.book.fields.texts import CURRENCY, Identifier, Sentence, Word
from generator.book.loading.load import load_record


class Inner(Record):
    name: Word = Field(description="Its name.")
    size: int = Field(default=1, ge=1, le=9)


class Sample(Record):
    title: Sentence
    kind: Literal["warm", "cool"] = "warm"
    share: float = Field(default=0.5, gt=0, lt=1)
    count: int = 1
    sure: bool = False
    words: tuple[Word, ...] = ()
    pair: tuple[float, ...] = Field(default=(), max_length=2)
    inner: Inner | None = None
    by_id: dict[Identifier, Inner] = {}
    one_or_more: str | tuple[str, ...] = "x"
    number_or_list: float | tuple[float, ...] = 1
    figure: Figure | None = None
    currency: str = Field(default="AUD", pattern=CURRENCY)
    id: Identifier = "a"


def told(tmp_path: Path, text: str) -> list[str]:
    file = tmp_path / "f.yml"
    file.write_text(text, encoding="utf-8")
    return [str(finding) for finding in sorted(load_record(file, "f.yml", Sample)[2])]


@pytest.mark.parametrize(("text", "line"), [
    ("kind: warm", "1:1: the key 'title' is missing; add 'title'"),
    ("inner: {size: 2}", "1:9: the key 'name' is missing under 'inner'; add 'name': its name"),
    ("inner: {}", "1:8: the key 'name' is missing under 'inner'; add 'name': its name"),
    ("kinds: warm", "1:1: unknown key 'kinds'; did you mean 'kind'?"),
    ("inner: {name: x, colour: y}", "1:18: unknown key 'colour'; the keys still free here are: size"),
    ("inner: {name: x, size: 1, colour: y}", "1:27: unknown key 'colour'; take it out"),
    ("kind: wram", "1:7: 'kind' cannot be 'wram'; did you mean 'warm'?"),
    ("kind: hot!", "1:7: 'kind' cannot be 'hot!'; write 'warm' or 'cool'"),
    ("kind: 3", "1:7: 'kind' must be a word from a list, found the number 3; write 'warm' or 'cool'"),
    ("kind:", "1:6: 'kind' is empty; write 'warm' or 'cool'"),
    ("share: 1", "1:8: 'share' is 1; it must be less than 1"),
    ("share: 0", "1:8: 'share' is 0; it must be more than 0"),
    ("share: half", "1:8: 'share' must be a number, found the text 'half'; write the number alone, such as 25 or 0.5"),
    ("share: '0.5'", "1:9: 'share' must be a number, found the text '0.5'; write it without quotes or leading zeros: 0.5"),
    ("share: true", "1:8: 'share' must be a number, found true; write a number"),
    ("share: [1]", "1:8: 'share' must be a number, found a list; write a number"),
    ("share:", "1:1: 'share' is empty; write a number, or leave the key out"),
    ("count: 1.5", "1:8: 'count' must be a whole number, found the number 1.5; write a whole number"),
    ("count: 007", "1:8: 'count' must be a whole number, found the text '007'; write it without quotes or leading zeros: 7"),
    ("sure: no", "1:7: 'sure' must be true or false, found the text 'no'; write false"),
    ("sure: Yes", "1:7: 'sure' must be true or false, found the text 'Yes'; write true"),
    ("sure: 1", "1:7: 'sure' must be true or false, found the number 1; write true or false"),
    ("words: one", "1:8: 'words' must be a list, found the text 'one'; "
                   "write one item to a line, each after '- ', or all of them between [ and ]"),
    ("words: [a, 2]", "1:12: item 2 must be text, found the number 2; put it in quotes: '2'"),
    ("words: [a, ' ']", "1:13: item 2 is empty; write text"),
    ("pair: [1, 2, 3]", "1:7: 'pair' has 3 items; it takes at most 2 items"),
    ("inner: x", "1:8: 'inner' must be a map of keys, found the text 'x'; write one 'key: value' to a line"),
    ("inner: {name: x, size: 12}", "1:24: 'size' is 12; it must be at most 9"),
    ("inner: {name: x, size: 0}", "1:24: 'size' is 0; it must be at least 1"),
    ("by_id: [x]", "1:8: 'by_id' must be a map of keys, found a list; write one 'key: value' to a line"),
    ("by_id: {Big One: {name: x}}", "1:9: 'Big One' is not an id; use small letters, digits and single hyphens, such as 'big-one'"),
    ("id: ''", "1:6: 'id' is empty; write it, or leave the key out"),
    ("currency: dollars", "1:11: 'dollars' is not a currency; write its three capital letters, such as AUD"),
    ("one_or_more: 3", "1:14: 'one_or_more' must be text or a list, found the number 3; put it in quotes: '3'"),
    ("one_or_more: [a, 3]", "1:18: item 2 must be text, found the number 3; put it in quotes: '3'"),
    ("number_or_list: x", "1:17: 'number_or_list' must be a number or a list, found the text 'x'; "
                          "write the number alone, such as 25 or 0.5"),
    ("number_or_list: [1, x]", "1:21: item 2 must be a number, found the text 'x'; write the number alone, such as 25 or 0.5"),
    ("figure: {unit: mm, source: x}", "1:10: this figure has no number; give 'use', or 'low' and 'high', or all three"),
    ("figure: {low: 3, high: 2, unit: mm, source: x}", "1:15: low 3 is above high 2; swap them"),
])  # fmt: skip
def test_each_kind_of_mistake_has_its_sentence(tmp_path: Path, text: str, line: str) -> None:
    whole = text if line.endswith("add 'title'") else f"{text}\ntitle: x"
    assert told(tmp_path, whole) == [f"f.yml:{line}"]


def test_text_that_is_too_long_is_counted(tmp_path: Path) -> None:
    assert told(tmp_path, f"title: {'x' * 1201}") == [
        "f.yml:1:8: 'title' is longer than 1200 characters; shorten it, or split it"
    ]


def test_a_misspelt_key_is_told_once_and_not_missed_as_well(tmp_path: Path) -> None:
    assert told(tmp_path, "titel: x") == ["f.yml:1:1: unknown key 'titel'; did you mean 'title'?"]


def test_values_already_refused_are_not_told_again(tmp_path: Path) -> None:
    assert [line.split("; ")[0] for line in told(tmp_path, "title: !!str x\nshare: .nan")] == [
        "f.yml:1:8: the YAML tag '!!str' is not read",
        "f.yml:2:8: '.nan' is not a number one can calculate with",
    ]


def test_what_an_author_wrote_is_shown_short_and_on_one_line(tmp_path: Path) -> None:
    long = told(tmp_path, f"title: x\nkind: {'w' * 500}")[0]
    assert len(long) < 200
    broken = told(tmp_path, 'title: x\nkind: "a\\nb"')[0]
    assert "\n" not in broken and "a\\nb" in broken


def test_a_record_may_point_at_the_key_that_is_wrong() -> None:
    problem = RecordProblem("low is above high", "swap them", "low")
    assert str(problem) == "low is above high; swap them"
