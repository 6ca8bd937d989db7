"""Kinds of number that a record may hold where no unit stands beside it: what each may be stands in `plausible.py`, by its kind.

What a figure with a unit may be at all follows from its kind of quantity (`units/bounds.py`).
"""

from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import AfterValidator, ConfigDict, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import PydanticCustomError, core_schema

from generator.book.fields.plausible import PLAUSIBLE, Plausible

FINEST = 1e-6  # Nothing that a practice counts, pays or measures is finer, save for nothing at all.
TOO_FINE = "too_fine"


def _no_finer(value: float) -> float:
    if 0 < abs(value) < FINEST:
        raise PydanticCustomError(TOO_FINE, "finer than {finest}", {"finest": FINEST})
    return value


# Beside the limits of a number that has no unit: it is 0 or at least a millionth.
NO_FINER = AfterValidator(_no_finer)
IMPOSSIBLE = "impossible"
WHY = "$why"  # Of a schema under way: the limits and their reason, which go into the description of its key.


@dataclass(frozen=True)
class OfKind:
    """Marks a number without a unit beside it with what it means: a row of `plausible.py`, which it is held to as it is read."""

    kind: str

    @property
    def row(self) -> Plausible:
        return PLAUSIBLE[self.kind]

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> core_schema.CoreSchema:
        return core_schema.no_info_after_validator_function(self._held, handler(source))

    def __get_pydantic_json_schema__(self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        return {**handler(schema), "minimum": self.row.lowest, "maximum": self.row.highest, WHY: self.row.told}

    def _held(self, value: float) -> float:
        if not self.row.allows(value):
            raise PydanticCustomError(IMPOSSIBLE, "not of this kind: {kind}", {"kind": self.kind})
        return value


@dataclass(frozen=True)
class BesideUnit:
    """Marks a number whose unit stands beside it in the record, which holds it to what its kind of quantity may be."""


InUnit = Annotated[float, BesideUnit()]
# Every key under which such a number stands in its record, `unit` beside it; us_default has a unit of its own.
BESIDE_UNIT = ("low", "high", "use", "value", "within", "default", "above", "at_least", "at_most", "usual_low", "usual_high")
# The schema that says what each of them may be by its unit, and its two parts.
QUANTITY, FIGURE, SIGNED = "quantity.schema.json", "figure", "signed"
REFERS = "$part of quantity"  # In place of a reference to another file, which pydantic would look for in its own.


def by_unit(part: str) -> ConfigDict:
    """For a record whose numbers have their unit beside them: its schema refers to what each unit allows."""
    return ConfigDict(json_schema_extra={REFERS: part})
