"""What of a book its clients are told only where the practice says so, and the words by which it says so."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal, get_args

from pydantic.fields import FieldInfo

Opened = Literal["prices", "times", "machines", "calculators", "plans", "jobs", "record", "inspection", "holds", "links"]
OPENS: dict[Opened, str] = {
    "prices": "what the practice charges and pays, its tax, and the terms of its quotes and invoices",
    "times": "how long its work takes, and how many people do it",
    "machines": "its machines, and which does what",
    "calculators": "the calculators, with its machines",
    "plans": "the pages of plans",
    "jobs": "the job planner and the page of lawns, with calculators, machines, times and links",
    "record": "the work record",
    "inspection": "the inspection sheet",
    "holds": "hold or go on the page of a task",
    "links": "the maker of links for clients, and what sends an answer",
}
# What one word opens beside itself, because it cannot do without.
ALSO: dict[Opened, tuple[Opened, ...]] = {"calculators": ("machines",), "jobs": ("calculators", "machines", "times", "links")}


@dataclass(frozen=True)
class Private:
    """Marks the type of a field: clients see its value only where the practice opens it. The field has a default, which stands there instead."""

    opened_by: Opened


PRICE, TIME, MACHINE = Private("prices"), Private("times"), Private("machines")


def opened_by(field: FieldInfo) -> Opened | None:
    """The word that opens a field of a record; None for what anybody may see."""
    return next((each.opened_by for each in (*field.metadata, *_marks(field.annotation)) if isinstance(each, Private)), None)


def _marks(hint: Any) -> Iterator[Any]:
    for part in get_args(hint):
        yield part
        yield from _marks(part)
