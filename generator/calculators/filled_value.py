"""A value that fills in a calculator's input, read from a record's field by name: its unit, its words, and what is wrong when it is not there."""

from typing import Any, NamedTuple

from generator.book.fields.sourced import Claim, Record
from generator.findings import suggestion

# What the end of a field's name says its plain number is counted in, longest first. Ends that begin with '_' are no part of
# its words; a price is a plain number in the practice's currency.
UNIT_OF_FIELD = {
    "_kg_per_100_m2": "kg/100 m2", "_kg_per_m3": "kg/m3", "_km_per_h": "km/h", "_l_per_min": "L/min", "_mm_per_h": "mm/h",
    "price_per_100_m2": "1", "price_per_hour": "1", "price_per_day": "1", "price_per_m3": "1", "_percent": "%", "_minutes": "min",
    "_hours": "h", "_days": "day", "charge": "1", "price": "1", "_deg": "deg", "_mm": "mm", "_kg": "kg", "_m2": "m2",
    "_l": "L", "_m": "m", "_h": "h",
}
FALL_BACK = "give it, or add a value to fall back on, such as 'grass.seed_rate or 20 g/m2'"


class BindError(ValueError):
    """A `fill` or `binds` that names nothing that can be filled in: what is wrong, and what would be right."""

    def __init__(self, what: str, instead: str) -> None:
        super().__init__(f"{what}; {instead}")
        self.what = what
        self.instead = instead


class Missing(BindError):
    """The field exists, but this grass or this product leaves it out; another may well have it. unit: of the field, where known."""

    def __init__(self, what: str, instead: str, unit: str | None = None) -> None:
        super().__init__(what, instead)
        self.unit = unit


class Unchosen(Missing):
    """The field exists, but nothing was chosen that has it: no place, no day, no product."""


class Bound(NamedTuple):
    """A filled-in value: the number in `unit`, and where it comes from in words for the page."""

    value: float
    unit: str
    where_from: str

    @property
    def typed(self) -> str:
        """As a reader would type it into the calculator: '6 mm'."""
        return f"{self.value:.10g}" if self.unit == "1" else f"{self.value:.10g} {self.unit}"


def check_named(part: str, kind: type[Record], name: str) -> None:
    """Raises BindError, with the nearest name, when records of a kind have no such field. part: the expression, for the message."""
    if name not in kind.model_fields:
        raise BindError(f"'{part}' names no field", suggestion(name, kind.model_fields, "see the fields of its kind in data/schema"))


def field_of(part: str, record: Record, names: list[str]) -> Any:
    """The value under a path of names. Raises BindError for a name that is no field, Missing where the field is left out."""
    value: Any = record
    for name in names:
        if not isinstance(value, Record):
            raise BindError(f"'{part}' names no field", "see the fields of its kind in data/schema")
        check_named(part, type(value), name)
        value = getattr(value, name)
        if value is None:
            raise Missing(f"'{part}' is not given", FALL_BACK, unit_of_field(name))
    return value


def as_bound(part: str, value: Any, field: str, whose: str) -> Bound:
    """A figure, or a plain number whose unit the field's name tells. Raises BindError for anything else."""
    if isinstance(value, Claim):
        return Bound(value.default, value.unit, f"from {whose}")
    spelling = unit_of_field(field)
    if spelling is None or isinstance(value, bool) or not isinstance(value, int | float):
        raise BindError(f"'{part}' is not a quantity", "name a field that holds a figure, such as 'grass.seed_rate'")
    return Bound(float(value), spelling, f"from {whose}")


def unit_of_field(field: str) -> str | None:
    """The unit that the end of a field's name says, if it says one."""
    return next((spelling for end, spelling in UNIT_OF_FIELD.items() if field.endswith(end)), None)


def words_of(field: str) -> str:
    """'full_rate_kg_per_100_m2' -> 'full rate': the field's name without its unit. 'price_per_100_m2' stays whole, as what it is for is no unit."""
    end = next((end for end in UNIT_OF_FIELD if field.endswith(end)), "")
    return (field.removesuffix(end) if end.startswith("_") else field).replace("_", " ")
