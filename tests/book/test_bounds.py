"""No text of any record is endless, no number is without a lowest and a highest, and what a figure may be follows from its quantity."""

import json
import math
from collections.abc import Iterator
from pathlib import Path
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

import annotated_types
import pytest
from pydantic import BaseModel, StringConstraints, TypeAdapter, ValidationError

from generator.book.fields.characters import UNSEEN
from generator.book.fields.numbers import BESIDE_UNIT, BesideUnit, OfKind
from generator.book.fields.sourced import Figure
from generator.book.json_schema import schemas
from generator.book.loading.folders import SINGLES
from generator.book.records import KINDS
from generator.book.records.calculator import Constant, Expected, Input
from generator.book.records.inspection import InspectionQuestion
from generator.book.records.practice import Product
from generator.units import bounds_of, unit, units
from generator.units.bounds import LINES
from generator.units.unit_list import KINDS as QUANTITIES


def records() -> list[type[BaseModel]]:
    """Every record there is, from the files down."""
    found: dict[type[BaseModel], None] = {}

    def look(hint: Any) -> None:
        if isinstance(hint, type) and issubclass(hint, BaseModel) and hint not in found:
            found[hint] = None
            for field in hint.model_fields.values():
                look(field.annotation)
        for inner in get_args(hint):
            look(inner)

    for hint in (*KINDS.values(), *SINGLES.values()):
        look(hint)
    return list(found)


def leaves(hint: Any, marks: tuple = ()) -> Iterator[tuple[Any, tuple]]:
    """The plain types a hint is made of, each with what is said of it."""
    origin = get_origin(hint)
    if origin is Annotated:
        inner, *more = get_args(hint)
        yield from leaves(inner, (*marks, *more))
    elif origin in (Union, UnionType):
        for member in get_args(hint):
            yield from leaves(member, marks)
    elif origin in (tuple, dict):
        for member in get_args(hint):
            if member is not Ellipsis:
                yield from leaves(member)
    elif origin is not Literal:
        yield hint, marks


def flat(marks: tuple) -> Iterator[Any]:
    for mark in marks:
        yield mark
        if hasattr(mark, "metadata"):
            yield from flat(tuple(mark.metadata))


RECORDS = records()
FIELDS = [
    (record, name, leaf, tuple(flat((*field.metadata, *marks))))
    for record in RECORDS for name, field in record.model_fields.items() for leaf, marks in leaves(field.annotation)
]


def test_every_text_has_a_longest() -> None:
    texts = [each for each in FIELDS if each[2] is str]
    assert len(texts) > 200
    for record, name, _, marks in texts:
        longest = [m.max_length for m in marks if isinstance(m, StringConstraints | annotated_types.MaxLen) and m.max_length]
        assert longest and min(longest) <= 1200, f"{record.__name__}.{name} may be as long as it likes"


def test_every_number_has_a_lowest_and_a_highest() -> None:
    numbers = [each for each in FIELDS if each[2] in (int, float)]
    assert len(numbers) > 60
    for record, name, _, marks in numbers:
        if any(isinstance(mark, BesideUnit) for mark in marks):
            continue
        if row := next((mark.row for mark in marks if isinstance(mark, OfKind)), None):
            assert math.isfinite(row.lowest) and math.isfinite(row.highest), f"{record.__name__}.{name}"
            continue
        assert [m for m in marks if isinstance(m, annotated_types.Ge | annotated_types.Gt)], f"{record.__name__}.{name} has no lowest"
        assert [m for m in marks if isinstance(m, annotated_types.Le | annotated_types.Lt)], f"{record.__name__}.{name} has no highest"


def test_a_number_beside_its_unit_is_held_to_it() -> None:
    beside = {(record, name) for record, name, _, marks in FIELDS if any(isinstance(mark, BesideUnit) for mark in marks)}
    assert {name for _, name in beside} == {*BESIDE_UNIT, "us_default"}
    assert all("unit" in record.model_fields for record, _ in beside)


SOUND: dict[type[BaseModel], dict[str, Any]] = {
    Figure: {"use": 1.0, "unit": "mm", "source": "assumption"}, Constant: {"value": 1.0, "unit": "mm", "meaning": "x", "source": "assumption"},
    Input: {"question": "x", "unit": "mm", "default": 1.0}, Expected: {"value": 1.0, "unit": "mm", "within": 1.0},
    InspectionQuestion: {"id": "x", "ask": "x", "how": "x", "unit": "mm"},
}  # fmt: skip


@pytest.mark.parametrize("record", SOUND, ids=lambda record: record.__name__)
@pytest.mark.parametrize("value", [1e308, -1e308, 1e-300, -1e-300, 1e15])
def test_no_such_number_is_any_length(record: type[BaseModel], value: float) -> None:
    TypeAdapter(record).validate_python(SOUND[record])
    for name in (*BESIDE_UNIT, "us_default"):
        if name in record.model_fields:
            with pytest.raises(ValidationError):
                TypeAdapter(record).validate_python({**SOUND[record], name: value})


def test_a_figure_of_the_trade_is_not_less_than_nothing_and_a_limit_may_be() -> None:
    with pytest.raises(ValidationError, match="-1 mm is not a sensible length; give 0 to 100000 m"):
        Figure.model_validate({"use": -1, "unit": "mm", "source": "assumption"})
    assert Input.model_validate({"question": "Elevation", "unit": "m", "default": 0, "at_least": -400}).at_least == -400
    assert Figure.model_validate({"use": -3, "unit": "K", "source": "assumption"}).use == -3


def test_a_price_is_a_price() -> None:
    price = Product.model_validate({"name": "Sand", "price": 0})
    assert price.price == 0
    for wrong in (-1.0, 1e-300, 1e9, 1e308):
        with pytest.raises(ValidationError):
            Product.model_validate({"name": "Sand", "price": wrong})


def test_each_kind_of_quantity_has_one_line_of_bounds() -> None:
    assert set(LINES) == {*QUANTITIES, "a count"}
    for known in units().values():
        line, sized = LINES[known.kind], bounds_of(known)
        assert unit(line.unit).kind == known.kind
        assert sized.lowest <= sized.highest and sized.finest < 1
        assert sized.fault(1e308) and sized.fault(math.inf) and sized.fault(math.nan) and sized.fault(5e-324)


def test_the_same_bounds_hold_in_every_unit() -> None:
    """100 km is 62.1371 mi, and 100 °C is 212 °F: both are let in, a hundredth more is not."""
    for spelling, last in (("km", 100), ("mi", 62.1371), ("°F", 212), ("°C", 100), ("%", 100_000), ("ppm", 1e9)):
        assert bounds_of(unit(spelling)).fault(last) is None
        assert bounds_of(unit(spelling)).fault(last * 1.01)


def test_an_editor_is_told_the_bounds_too() -> None:
    told = json.loads(schemas()["quantity.schema.json"])["$defs"]
    for part, lowest in (("figure", 0), ("signed", -1e8)):
        lines = {line["if"]["properties"]["unit"]["const"]: line["then"]["patternProperties"] for line in told[part]["allOf"]}
        assert set(lines) == set(units())
        (number,) = lines["mm"].values()
        assert number["minimum"] == pytest.approx(lowest) and number["maximum"] == pytest.approx(1e8)
    assert json.loads(schemas()["grass.schema.json"])["$defs"]["Figure"]["$ref"] == "quantity.schema.json#/$defs/figure"
    assert json.loads(schemas()["calculator.schema.json"])["$defs"]["Input"]["$ref"] == "quantity.schema.json#/$defs/signed"


UNSEEN_SIGNS = [
    *range(0x09), 0x0B, 0x0C, *range(0x0E, 0x20), 0x7F, *range(0x80, 0xA0), 0xAD, 0x061C, 0x180E, *range(0x200B, 0x2010), 0x2028, 0x2029,
    *range(0x202A, 0x202F), *range(0x2060, 0x2065), *range(0x2066, 0x2070), 0xFEFF, *range(0xFFF9, 0xFFFC), 0xE0001, 0xE0041,
]


def test_each_sign_that_nobody_sees_is_refused_and_no_other() -> None:
    for number in UNSEEN_SIGNS:
        assert UNSEEN.search(f"a{chr(number)}b"), f"U+{number:04X}"
    assert not UNSEEN.search("Grün, naïve, 日本語, Ελληνικά, 20 °C, m², “quoted”, it’s, – — … é\u0301 😀 👍🏽 \t\n\xa0")


def test_the_shipped_book_holds_to_the_longest_with_room_to_spare() -> None:
    """The largest of our own files is far from any limit of reading: the limits are for what is no record."""
    files = list((Path(__file__).parents[2] / "data").rglob("*.yml"))
    assert max(file.stat().st_size for file in files) < 300_000
