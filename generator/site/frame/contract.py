"""The contract with the browser: what Python and the page's scripts must both know, written once in its own room and collected here.

`asset_files` puts it at the head of the script that every page loads, as `Swardbook.contract`; what only the script of one part needs
stands at the head of that part's script, under the part's name. A sentence is a template with named places, "'{text}' divides by
zero.", filled by `str.format` here and by `Swardbook.filled` there. What still has to run on both sides is listed in
`generator/twins.yml`.
"""

import json
from collections.abc import Callable
from typing import Any

from generator.book.book import Book
from generator.book.lists.for_a_job import FIRST_YEAR, LARGEST_LAWN_M2, LAST_YEAR, MOST_CENTS, MOST_PEOPLE, MOST_RAIN_MM
from generator.book.lists.lawn_code import LAWN_CODE
from generator.book.lists.lawn_file import DAYS_OF_A_YEAR, MOST_VISITS_KEPT
from generator.book.lists.shielding import RUN
from generator.book.records.grass import LEVELS
from generator.calculators.bindings import MEASURED_HERE
from generator.calculators.calculator_sentences import SLACK, calculator_table
from generator.field.nitrogen_record import NOT_WRITTEN
from generator.files.calendar_file import ALARM_HOUR, FIRST_MINUTE, PRODUCT
from generator.files.nitrogen_text import RANGE_WORDS
from generator.findings import LEAST_ALIKE, LONGEST_MISSPELT
from generator.formula.functions import SNAP, WIDEST_SNAP
from generator.formula.nodes import SENTENCES as FORMULA_SENTENCES
from generator.jobs.amounts import SNAP as PACK_SNAP
from generator.jobs.dates import EARLIEST_DAYS_BACK
from generator.jobs.job_sentences import LONGEST_DAY_MINUTES, LONGEST_IN_MINUTES, NOT_FOR_GRASS, SETTING_DECIMALS, WEEKDAYS, WHO
from generator.jobs.job_sentences import SENTENCES as JOB_SENTENCES
from generator.jobs.job_watering import LITRES_A_CUBIC_METRE
from generator.jobs.price import CENTS, HAIR, SPOIL_NAME
from generator.jobs.step_time import MINUTE
from generator.season.calendar_days import DAYS, MONTH_STARTS, MONTHS, WEEKS
from generator.site.shared.kept_limits import LONGEST
from generator.site.shared.strip_drawing import STRIP
from generator.units import unit_table
from generator.units.typed_text import reading_table
from generator.words.local_words import DATE, NO_WORD, SOMEBODY, local_words
from generator.words.programme_words import SENTENCES as VISIT_SENTENCES
from generator.words.typed_figures import table as typed_figures


def of_every_page(book: Book | None = None) -> dict[str, Any]:
    """JSON-able; found in a script as `Swardbook.contract`. book: whose places and names people of a country see; None for none."""
    return {
        "countries": _countries(book) if book else {}, "opens_in": opening_units(book) if book else "metric",
        "units": unit_table(), "reading": reading_table(), "near": {"least_alike": LEAST_ALIKE, "longest": LONGEST_MISSPELT},
        "formula": {"sentences": FORMULA_SENTENCES, "snap": SNAP, "widest_snap": WIDEST_SNAP},
        "year": {"months": MONTHS, "starts": MONTH_STARTS, "days": DAYS, "weeks": WEEKS}, "strip": STRIP,
        "calendar": {"product": PRODUCT, "first_minute": FIRST_MINUTE.timestamp() // 60, "alarm_hour": ALARM_HOUR},
        "kept": {
            "first_year": FIRST_YEAR, "last_year": LAST_YEAR, "largest_lawn_m2": LARGEST_LAWN_M2, "most_rain_mm": MOST_RAIN_MM, "most_people": MOST_PEOPLE,
            "lawn": LAWN_CODE.pattern, "most_cents": MOST_CENTS, "longest": LONGEST, "most_visits": MOST_VISITS_KEPT, "most_cuts": DAYS_OF_A_YEAR,
        },
    }


# Part -> what only its own script needs.
OF_A_PART: dict[str, Callable[[], dict[str, Any]]] = {
    "calculator": calculator_table,
    "job-planner": lambda: {
        "levels": LEVELS, "only_levels": NOT_FOR_GRASS["step-level"], "earliest_days_back": EARLIEST_DAYS_BACK, "snap": PACK_SNAP, "minute": MINUTE, "cents": CENTS,
        "hair": HAIR, "litres": LITRES_A_CUBIC_METRE, "spoil": SPOIL_NAME,
        "sentences": JOB_SENTENCES, "measured_here": MEASURED_HERE, "setting_decimals": SETTING_DECIMALS,
        "who": WHO, "weekdays": WEEKDAYS, "longest_in_minutes": LONGEST_IN_MINUTES, "longest_day": LONGEST_DAY_MINUTES,
    },
    "programme": lambda: {"sentences": VISIT_SENTENCES, "cents": CENTS},
    "work-record": lambda: {"run": RUN, "not_written": NOT_WRITTEN, "range": RANGE_WORDS, "slack": SLACK},
}


def contract_script(book: Book | None = None) -> str:
    """Sets `Swardbook.contract`, and stands before every other script."""
    return f"window.Swardbook = window.Swardbook || {{}};\nSwardbook.contract = {_text(of_every_page(book))};\n"


def opening_units(book: Book) -> str:
    """The units of a page until its reader has chosen: as the practice says, or as people count at its home place."""
    return book.practice.units or ("us" if book.countries[book.places[book.practice.home_place].country].us_units else "metric")


def _countries(book: Book) -> dict[str, Any]:
    """By country: its places that a reader can choose, and what people there count in."""
    return {
        code: {
            "in": country.in_a_sentence or country.name, "us": country.us_units, "month_first": country.month_first,
            "places": [id for id, place in book.offered_places.items() if place.country == code],
        }
        for code, country in book.countries.items()
    }


def local_script(book: Book | None = None) -> str:
    """Sets what the words of the reader's country need, for whom alone it is loaded: what people there say where the texts say otherwise."""
    spoken = {code: local_words(book, code) for code in book.countries} if book else {}
    parts = {
        "said": {"date": DATE, "no_word": NO_WORD, "somebody": SOMEBODY}, "typed_figures": typed_figures(),
        "spoken": {code: {"pattern": each.pattern, "said": each.said} for code, each in spoken.items()},
    }
    return f"Object.assign(Swardbook.contract, {_text(parts)});\n"


def part_script(name: str) -> str:
    """Sets what the script of this part needs, `Swardbook.contract['hold-or-go']`; empty for a part that needs nothing of its own."""
    return f"Swardbook.contract[{_text(name)}] = {_text(OF_A_PART[name]())};\n" if name in OF_A_PART else ""


def _text(value: Any) -> str:
    return json.dumps(value, ensure_ascii=True, separators=(",", ":"))
