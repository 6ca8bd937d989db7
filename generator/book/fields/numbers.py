"""Kinds of number that a record may hold where no unit stands beside it: each has a lowest, a highest and a finest.

What a figure with a unit may be follows from its kind of quantity (`units/bounds.py`).
"""

from dataclasses import dataclass
from typing import Annotated

from pydantic import AfterValidator, ConfigDict, Field
from pydantic_core import PydanticCustomError

FINEST = 1e-6  # Nothing that a practice counts, pays or measures is finer, save for nothing at all.
TOO_FINE = "too_fine"


def _no_finer(value: float) -> float:
    if 0 < abs(value) < FINEST:
        raise PydanticCustomError(TOO_FINE, "finer than {finest}", {"finest": FINEST})
    return value


# Beside the limits of a number that has no unit: it is 0 or at least a millionth.
NO_FINER = AfterValidator(_no_finer)
Percent = Annotated[float, Field(ge=0, le=100), NO_FINER]
Money = Annotated[float, Field(ge=0, le=1_000_000), NO_FINER]

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
