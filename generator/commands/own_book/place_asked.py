"""What somebody said of a place by options, and what is asked for on a terminal."""

import re
import sys
from collections.abc import Mapping, Sequence
from typing import Any

import click

from generator.commands.common import typed_values
from generator.findings import shown, suggestion

_NO_ID = re.compile(r"[^a-z0-9]+")
_NUMBER = re.compile(r"[-+]?\d+(?:\.\d+)?")
_YEARS = re.compile(r"(\d{4})\s*(?:-|–|to)\s*(\d{4})")
QUESTIONS = {
    "country": "Country, by its two capitals", "region": "State, county or province", "station_name": "The station's own name",
    "service": "Who measured: the weather service", "address": "The service's own page of the record, or 'none'", "terms": "Under which terms it is given",
}
OF_SOURCE = ("service", "address", "terms")


class PlaceAsked:
    """given: the options by name, as the command has them."""

    def __init__(self, given: Mapping[str, Any]) -> None:
        self.given = given

    @property
    def near(self) -> bool:
        return self.given["near"] is not None or None not in (self.given["latitude"], self.given["longitude"])

    @property
    def typed(self) -> bool:
        return any(self.given[option] is not None for option in ("maximum", "minimum", "mean", "rain"))

    def title(self, name: str) -> str:
        """As pages print it: what was said, a name that has capitals of its own, or the id's words with capitals."""
        said = self.given["title"] or name
        return said if said != said.lower() else " ".join(word.capitalize() for word in said.replace("-", " ").split())

    def coordinates(self) -> tuple[float, float]:
        """Latitude and longitude [°]. Ends the command where they are missing, or are none."""
        if self.given["near"] is None:
            latitude, longitude = self.given["latitude"], self.given["longitude"]
        else:
            found = _NUMBER.findall(self.given["near"])
            if len(found) != 2 or _NUMBER.sub("", self.given["near"]).strip(" ,;°") != "":
                raise click.UsageError(f"--near: '{shown(self.given['near'])}' is not a latitude and a longitude; write --near=-35.30,149.20")
            latitude, longitude = map(float, found)
        if latitude is None or longitude is None:
            raise click.UsageError("say where it lies: --near LAT,LON, or --latitude and --longitude")
        if not (-90 <= latitude <= 90 and -180 <= longitude <= 180):
            raise click.UsageError(f"{latitude:g}, {longitude:g} is no place on earth; latitude is -90 to 90 and longitude -180 to 180")
        return latitude, longitude

    def years(self) -> tuple[int, int]:
        found = _YEARS.fullmatch((self.given["years"] or "").strip())
        if not found or int(found[1]) > int(found[2]):
            raise click.UsageError("say which years the figures are the mean of: --years 1991-2020")
        return int(found[1]), int(found[2])

    def pairs(self, option: str, known: Sequence[str]) -> dict[str, str]:
        """'maximum=TX' of an option that may be given again, by what it is of."""
        said = typed_values(self.given[option], f"WHAT=NAME for --{option}", f"--{option} maximum=...")
        for name in said:
            if name not in known:
                told = suggestion(name, known, f"there are {', '.join(known)}")
                raise click.UsageError(f"--{option}: no '{shown(name)}'; {told}")
        return said

    def complete(self, of_source: bool, service: str | None) -> dict[str, str]:
        """Every answer that the record needs. What is missing is asked for on a terminal; elsewhere it is told, all at once, and the command ends."""
        self.coordinates()
        wanted = [name for name in QUESTIONS if of_source or name not in OF_SOURCE]
        answers = {name: self.given[name] for name in wanted if self.given[name]}
        if service and of_source:
            answers.setdefault("service", service)
        missing = [name for name in wanted if name not in answers]
        if missing and not (sys.stdin.isatty() and sys.stdout.isatty()):
            raise click.UsageError(f"also say {', '.join('--' + name.replace('_', '-') for name in missing)}")
        return answers | {name: click.prompt(QUESTIONS[name]).strip() for name in missing}


def identifier(name: str) -> str:
    """The id of a place by its name: 'Port Chalmers' is port-chalmers."""
    id = _NO_ID.sub("-", name.lower()).strip("-")
    if not id or len(id) > 60:
        raise click.UsageError(f"'{shown(name)}' makes no name of a file; use letters and digits")
    return id


def twelve(text: str | None, option: str) -> tuple[float, ...] | None:
    """Twelve typed figures, parted by blanks, commas or semicolons; None where nothing was typed."""
    if text is None:
        return None
    words = [word for word in re.split(r"[\s,;]+", text.strip()) if word]
    wrong = [word for word in words if not _NUMBER.fullmatch(word)]
    if wrong or len(words) != 12:
        what = f"'{shown(wrong[0])}' is not a number" if wrong else f"{len(words)} figures where a year has 12 months"
        raise click.UsageError(f"--{option}: {what}; write January to December, such as '27.1 26.8 ...'")
    return tuple(map(float, words))
