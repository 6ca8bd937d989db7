"""What a reader is asked before a step goes ahead: a short forecast, the state of the lawn, and the limits on the label.

Each question stands here once, with the names that it gives to rules. The book has no answer of its own to any of them: what
is not answered is not known, and what only a label can say is asked of the label. Twin: hold or go.
"""

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from types import MappingProxyType

from generator.findings import nearest
from generator.units import QuantityError, Unit, read_quantity, unit

NONE = "none"
UNKNOWN = "unknown"
DAY_S = 86_400
# In words, how many nights ago something was seen at daybreak; more of them in figures.
NIGHTS = ("this morning", "one night ago", *(f"{word} nights ago" for word in ("two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")))
MORE_NIGHTS = "{nights} nights ago"
_ISO = re.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}")
# Of two questions, the first may not be above the second.
PAIRS = (("low", "high"), ("label_low", "label_high"))
SENTENCES = {
    "not-asked": "Nothing asks for this; it asks for {listed}.",
    "not-asked-slip": "Nothing asks for this; did you mean '{near}'?",
    "no-choice": "'{text}' does not answer this; write {listed}.",
    "no-choice-slip": "'{text}' does not answer this; did you mean '{near}'?",
    "too-little": "{asks} cannot be less than {least}; {text} was given.",
    "or-none": "{why} Or type '{none}': {means}.",
    "upside-down": "The lowest is above the highest; swap them.",
    "to-come": "{text} is still to come; write a day that is over, or how many days ago it was.",
    "presumed": "Taken for granted: {none}. If it was otherwise, say so.",
}


@dataclass(frozen=True)
class DayQuestion:
    """One thing asked, under the name by which it is answered.

    name: short, for a form and a list. asks: in plain words. unit: of an answer that is measured; rules know it by the question's
    own id. choices: for any other answer, each word with the yes-or-no names that rules know, 1 or 0. none: what the word 'none'
    means, where there may be no such thing. us_unit: where it differs. least: the smallest answer that can be, in SI units.
    label: only a product's label can say. lately: of something seen some days ago, what a reason says of it while nobody has
    named the day. Such a question takes a date too, and 'unknown' where nobody has looked; not answered at all it reads as
    'none', and the answer says so.
    """

    name: str
    asks: str
    unit: str | None = None
    us_unit: str | None = None
    choices: Mapping[str, Mapping[str, float]] = field(default_factory=dict)
    none: str | None = None
    least: float | None = None
    label: bool = False
    lately: str | None = None

    @property
    def words(self) -> tuple[str, ...]:
        """The words that answer it, besides a quantity."""
        return (*self.choices, *([NONE] if self.none else ()), *([UNKNOWN] if self.lately else ()))


def _yes_or_no(name: str, asks: str, rule_name: str) -> DayQuestion:
    return DayQuestion(name, asks, choices={"yes": {rule_name: 1}, "no": {rule_name: 0}})


_NO_LIMIT = "the label sets no such limit"

QUESTIONS: Mapping[str, DayQuestion] = MappingProxyType({
    "low": DayQuestion("Lowest temperature", "Lowest air temperature, from now until tomorrow morning", "°C", "°F"),
    "high": DayQuestion("Highest temperature", "Highest air temperature, from now until tomorrow morning", "°C", "°F"),
    "rain_to_come": DayQuestion("Rain to come", "Rain forecast for the next 24 hours", "mm", "in", least=0),
    "hours_to_rain": DayQuestion("Hours until rain", "Hours until rain is forecast", "h", none="no rain in the forecast", least=0),
    "rain_fallen": DayQuestion("Rain fallen", "Rain in the last 24 hours", "mm", "in", least=0),
    "wind": DayQuestion("Wind", "Wind while the work is done", "km/h", "mph", least=0),
    "leaf": DayQuestion("Leaf", "The leaf, felt with the hand: dry, wet with dew or rain, or white with frost", choices={
        "dry": {"leaf_wet": 0, "leaf_frosted": 0}, "wet": {"leaf_wet": 1, "leaf_frosted": 0},
        "frosted": {"leaf_wet": 1, "leaf_frosted": 1},
    }),
    "soil": DayQuestion("Soil", "The soil under the turf: dry and hard, moist, wet enough to smear or squelch, or frozen", choices={
        "dry": {"soil_dry": 1, "soil_wet": 0, "soil_frozen": 0}, "moist": {"soil_dry": 0, "soil_wet": 0, "soil_frozen": 0},
        "wet": {"soil_dry": 0, "soil_wet": 1, "soil_frozen": 0}, "frozen": {"soil_dry": 0, "soil_wet": 0, "soil_frozen": 1},
    }),
    "sand": DayQuestion("Sand or compost", "The sand or compost to be spread: dry enough to run through the fingers, or damp", choices={
        "dry": {"sand_damp": 0}, "damp": {"sand_damp": 1},
    }),
    "watering_day": _yes_or_no("Watering allowed today", "Whether this lawn may be watered today under the local rules", "water_allowed"),
    "depth_due": DayQuestion("Water due today", "Depth of water due today", "mm", "in", least=0),
    "days_since_cut_down": DayQuestion("Days since cut down", "Days since the grass was cut down", "day", none="it was not cut down", least=0),
    "frost_seen": DayQuestion(
        "Days since frost was seen", "Days since frost was last seen on the lawn, or the date of that morning", "day",
        none="no frost has been seen on the lawn", least=0, lately="a few nights ago",
    ),
    "cool_season": _yes_or_no("Cool-season grass", "Whether the grass is a cool-season grass", "cool_season"),
    "surface_running": _yes_or_no("Runs above ground only", "Whether the grass runs above ground only", "surface_running"),
    "label_wind": DayQuestion("Label's highest wind", "The label's highest wind", "km/h", "mph", none=_NO_LIMIT, least=0, label=True),
    "label_low": DayQuestion("Label's lowest temperature", "The label's lowest temperature", "°C", "°F", none=_NO_LIMIT, label=True),
    "label_high": DayQuestion("Label's highest temperature", "The label's highest temperature", "°C", "°F", none=_NO_LIMIT, label=True),
    "label_rain_free_hours": DayQuestion("Label's hours without rain", "Hours without rain that the label asks for", "h", none=_NO_LIMIT, least=0, label=True),
})

# Name in a rule -> the question that answers it.
ANSWERED_BY: Mapping[str, str] = MappingProxyType({
    name: id for id, question in QUESTIONS.items()
    for name in ([id] if question.unit else sorted({name for names in question.choices.values() for name in names}))
})
FLAGS = frozenset(name for name, id in ANSWERED_BY.items() if QUESTIONS[id].choices)
RULE_UNITS: Mapping[str, Unit] = MappingProxyType(
    {name: unit("1" if name in FLAGS else QUESTIONS[id].unit) for name, id in ANSWERED_BY.items()}
)


@dataclass(frozen=True)
class Forecast:
    """What is known of the day: values by the name that rules use, in SI units, 1 and 0 for yes and no.

    absent: names of what there is none of; nothing compares with it. unlooked: of what 'unknown' was said; nothing is presumed of
    it. answers: as they were given, by question.
    """

    known: Mapping[str, float] = field(default_factory=dict)
    absent: frozenset[str] = frozenset()
    unlooked: frozenset[str] = frozenset()
    answers: Mapping[str, str] = field(default_factory=dict)

    def of_grass(self, cool_season: bool, surface_running: bool) -> "Forecast":
        """The same with what the grass's own file says, unless it was answered otherwise."""
        facts = {"cool_season": float(cool_season), "surface_running": float(surface_running)}
        return replace(self, known={**facts, **self.known})

    def presumed(self) -> "Forecast":
        """The same with 'none' for each question that reads so while nobody has answered it."""
        silent = {id for id, question in QUESTIONS.items() if question.lately and id not in self.known} - self.unlooked
        return replace(self, absent=self.absent | silent)


@dataclass(frozen=True)
class Unreadable:
    """An answer that is none. question: as it was named; sentence: for people, who see the question beside it."""

    question: str
    sentence: str


def read_forecast(answers: Mapping[str, str], day: date | None = None) -> tuple[Forecast, list[Unreadable]]:
    """What was answered, by question, as typed ('2 °C', '12 km/h', 'wet', 'none'), and what could not be read.

    A plain number is in the question's unit; known values come out in SI units. A blank answer is no answer. day: the day that
    is asked about, from which the days since a date are counted; without it, a date cannot be read.
    """
    known: dict[str, float] = {}
    absent: set[str] = set()
    unlooked: set[str] = set()
    troubles = []
    given = {id: text.strip() for id, text in answers.items() if text.strip()}
    for id, text in given.items():
        try:
            if text.lower() == UNKNOWN and id in QUESTIONS and QUESTIONS[id].lately:
                unlooked.add(id)
            else:
                _read(id, text, known, absent, day)
        except ValueError as error:
            troubles.append(Unreadable(id, str(error)))
    for low, high in PAIRS:
        if low in known and high in known and known[low] > known[high]:
            troubles.append(Unreadable(low, SENTENCES["upside-down"]))
    return Forecast(known, frozenset(absent), frozenset(unlooked), given), troubles


def _read(id: str, text: str, known: dict[str, float], absent: set[str], day: date | None) -> None:
    """Adds one answer; raises ValueError whose text is the sentence for people."""
    question = QUESTIONS.get(id)
    if question is None:
        raise ValueError(_or_a_slip("not-asked", id, ", ".join(QUESTIONS), nearest(id, QUESTIONS)))
    word = text.lower()
    if word in question.choices:
        known.update(question.choices[word])
    elif question.none and word == NONE:
        absent.add(id)
    elif question.choices:
        raise ValueError(_or_a_slip("no-choice", text, " or ".join(question.choices), nearest(word, question.choices)))
    else:
        past = _past(text) if question.lately and day is not None else None
        known[id] = _measured(question, text) if past is None or day is None else _days_since(past, day, text) * DAY_S


def _past(text: str) -> date | None:
    """The date that a text names as 2026-11-28; None when it names none."""
    try:
        return date.fromisoformat(text) if _ISO.fullmatch(text) else None
    except ValueError:
        return None


def _days_since(past: date, day: date, text: str) -> int:
    if past > day:
        raise ValueError(SENTENCES["to-come"].format(text=text))
    return (day - past).days


def ago(si: float) -> str:
    """'this morning', 'two nights ago', '12 nights ago', from a time in SI seconds: how long ago something was seen at daybreak."""
    nights = math.floor(si / DAY_S + 0.5)
    return NIGHTS[nights] if nights < len(NIGHTS) else MORE_NIGHTS.format(nights=nights)


def _or_a_slip(name: str, text: str, listed: str, near: str | None) -> str:
    return SENTENCES[f"{name}-slip"].format(text=text, near=near) if near else SENTENCES[name].format(text=text, listed=listed)


def _measured(question: DayQuestion, text: str) -> float:
    try:
        value = read_quantity(text, unit(question.unit))
    except QuantityError as error:
        told = SENTENCES["or-none"].format(why=error.sentence, none=NONE, means=question.none) if question.none else error.sentence
        raise ValueError(told) from error
    if question.least is not None and value < question.least:
        raise ValueError(SENTENCES["too-little"].format(asks=question.asks, least=f"{question.least:g}", text=text))
    return value
