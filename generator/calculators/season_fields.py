"""Fields of a place, of a week of its season and of a run of its days, that fill in a calculator's input."""

from collections.abc import Callable
from math import fsum
from typing import NamedTuple

from generator.book.records.place import Place
from generator.calculators.chosen import Chosen
from generator.calculators.filled_value import FALL_BACK, UNIT_OF_FIELD, BindError, Bound, Missing, Unchosen, words_of
from generator.findings import suggestion
from generator.season.calendar_days import DAYS, WEEK_OF_DAY, day_words, week_days
from generator.season.year import SeasonYear, Week

# Fields of a place that are quantities, by their name without its unit: latitude, elevation.
_OF_PLACE = {
    name.removesuffix(end): (name, spelling)
    for name in Place.model_fields for end, spelling in UNIT_OF_FIELD.items() if end.startswith("_") and name.endswith(end)
}


def of_place(part: str, names: list[str], context: Chosen) -> Bound:
    """A field of the place that is chosen: 'place.latitude'. Raises BindError, Missing, Unchosen."""
    name = ".".join(names)
    if name not in _OF_PLACE:
        raise BindError(f"'{part}' names no field of a place", suggestion(name, _OF_PLACE, "write 'place.latitude'"))
    field, spelling = _OF_PLACE[name]
    if context.place is None:
        raise Unchosen(f"'{part}' needs a place", "choose a place", spelling)
    value = getattr(context.place, field)
    if value is None:
        raise Missing(f"'{part}' is not given", FALL_BACK, spelling)
    return Bound(value, spelling, f"from {context.place.name}, {words_of(field)}")


class OfWeek(NamedTuple):
    """A quantity of a week: its unit, how it is read from the season, and whether it is another for another grass."""

    unit: str
    of: Callable[[SeasonYear, Week], float]
    of_grass: bool = False


def _days(week: Week) -> int:
    return len(week_days(week.week - 1))


def _rain_share(year: SeasonYear, week: Week) -> float:
    used = fsum(year.weather.effective_rain_mm[day] for day in week_days(week.week - 1))
    return 100 * used / week.rain_mm if week.rain_mm else 100.0


# What 'week.' may be followed by: of open ground or whichever site the season was asked for. Sums are over the week's days.
WEEK: dict[str, OfWeek] = {
    "mean_temperature": OfWeek("°C", lambda year, week: week.mean_temperature_c),
    "minimum_temperature": OfWeek("°C", lambda year, week: week.minimum_temperature_c),
    "maximum_temperature": OfWeek("°C", lambda year, week: week.maximum_temperature_c),
    "soil_temperature": OfWeek("°C", lambda year, week: week.soil_temperature_c),
    "growth_potential": OfWeek("1", lambda year, week: week.growth_potential, True),
    "leaf_growth": OfWeek("mm/day", lambda year, week: year.grass.leaf_growth_mm_per_day * week.growth_potential, True),
    "reference_evapotranspiration": OfWeek("mm/day", lambda year, week: week.reference_evapotranspiration_mm / _days(week)),
    "rain": OfWeek("mm", lambda year, week: week.rain_mm),
    "rain_share": OfWeek("%", _rain_share),
    "water_need": OfWeek("mm", lambda year, week: week.water_need_mm, True),
    "days": OfWeek("day", lambda year, week: _days(week)),
}
DAY_OF_YEAR = "day_of_year"
# Where a value of the season comes from; the page's script says it in the same words.
WEEK_WORDS = "from {place}, week of {day}"
COUNT_WORDS = "from {place}, usual count over {base} to {day}"
YEAR_WORDS = "from {place}, usual count over {base} in a year"
SPAN_WORDS = "from the two dates"
DATE_WORDS = "from the date, {day}"


def of_week(part: str, names: list[str], context: Chosen) -> Bound:
    """A figure of the week of the chosen day, see `WEEK`. Raises BindError, Unchosen."""
    name, day = ".".join(names), context.day
    if name not in WEEK and name != DAY_OF_YEAR:
        known = (*WEEK, DAY_OF_YEAR)
        raise BindError(f"'{part}' is not a figure of a week", suggestion(name, known, f"a week has {', '.join(known)}"))
    if name == DAY_OF_YEAR:
        if day is None:
            raise Unchosen(f"'{part}' needs a date", "choose a date", "1")
        return Bound(day % DAYS + 1, "1", DATE_WORDS.format(day=day_words(day)))
    asked = WEEK[name]
    if asked.of_grass and context.grass is None:
        raise Unchosen(f"'{part}' needs a grass", "choose a grass", asked.unit)
    if context.year is None or context.place is None or day is None:
        raise Unchosen(f"'{part}' needs a place and a date", "choose both", asked.unit)
    week = context.year.weeks[WEEK_OF_DAY[day % DAYS]]
    return Bound(asked.of(context.year, week), asked.unit, WEEK_WORDS.format(place=context.place.name, day=day_words(day)))


# What 'span.' may be followed by: degree days of a usual year, counted up to either date, and the days between them.
SPAN = {"degree_days_at_first": "°C day", "degree_days_at_last": "°C day", "degree_days_of_year": "°C day", "days": "day"}


def of_span(part: str, names: list[str], context: Chosen) -> Bound:
    """A figure of the days between two chosen dates, see `SPAN`. Raises BindError, Unchosen."""
    name, first, last = ".".join(names), context.day, context.until
    if name not in SPAN:
        raise BindError(f"'{part}' is not a figure of a run of days", suggestion(name, SPAN, f"it has {', '.join(SPAN)}"))
    if name == "days":
        if first is None or last is None:
            raise Unchosen(f"'{part}' needs two dates", "choose both", SPAN[name])
        return Bound((last - first) % DAYS, SPAN[name], SPAN_WORDS)
    day = {"degree_days_at_first": first, "degree_days_at_last": last}.get(name, DAYS)
    if context.grass is None or context.year is None or context.place is None or day is None:
        raise Unchosen(f"'{part}' needs a grass, a place and two dates", "choose them", SPAN[name])
    year, place, base = context.year, context.place.name, f"{context.year.grass.growth_base_c:g} °C"
    if name == "degree_days_of_year":
        return Bound(max(year.degree_days), SPAN[name], YEAR_WORDS.format(place=place, base=base))
    return Bound(year.degree_days[day % DAYS], SPAN[name], COUNT_WORDS.format(place=place, base=base, day=day_words(day)))
