"""The layouts of daily records that are known, read from their table."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, Literal

import yaml

Role = Literal["maximum", "minimum", "rain"]
ROLES: tuple[Role, ...] = ("maximum", "minimum", "rain")
TABLE = Path(__file__).parent / "daily_layouts.yml"


@dataclass(frozen=True)
class DailyLayout:
    """How one service lays out a file; `daily_layouts.yml` says what each key means."""

    name: str
    service: str
    what: str
    address: str
    form: Literal["columns", "elements", "fixed"]
    known_by: tuple[str, ...] = ()
    columns: Mapping[str, tuple[str, ...]] | None = None
    units: Mapping[str, str] | None = None
    order: tuple[str, ...] = ()
    elements: Mapping[str, Role] | None = None
    fixed: Mapping[str, Any] | None = None
    refused_by: str | None = None
    worst_first: bool = False
    ends_with: str | None = None


@dataclass(frozen=True)
class LayoutTable:
    layouts: Mapping[str, DailyLayout]
    guessed: Mapping[str, tuple[str, ...]]
    unit_names: Mapping[str, str]
    missing: frozenset[str]
    no_rain: frozenset[str]
    preamble_lines: int


@cache
def layout_table() -> LayoutTable:
    """The whole table."""
    raw = yaml.safe_load(TABLE.read_text(encoding="utf-8"))
    everywhere = raw["everywhere"]
    return LayoutTable(
        layouts={name: DailyLayout(name, **entry) for name, entry in raw["layouts"].items()},
        guessed={role: tuple(names) for role, names in raw["guessed"].items()},
        unit_names={spelling: ours for ours, spellings in raw["unit_names"].items() for spelling in (bare(ours), *spellings)},
        missing=frozenset(everywhere["missing"]), no_rain=frozenset(everywhere["no_rain"]), preamble_lines=everywhere["preamble_lines"],
    )


def bare(name: str) -> str:
    """A name in small letters without blanks and signs, as the table of guesses has it: 'Max. Temp (°C)' is 'maxtemp°c'."""
    return "".join(sign for sign in name.lower() if sign.isalnum() or sign == "°")
