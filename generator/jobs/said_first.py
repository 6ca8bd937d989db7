"""What is said of a job before all else: that the law is against the grass there, that winter kills it, that it is very hot then. Twin: job work."""

from datetime import date
from math import fsum

from generator.book.book import Book
from generator.book.records.grass import WeedStatus
from generator.jobs.dates import LAID_BARE_DAYS, day_of_year
from generator.season.calendar_days import DAYS
from generator.season.reasons import NumberSaid, Reason, because, limit_degrees
from generator.season.winter import killed_by_winter, risked_in_winter
from generator.season.year import SeasonYear


def law_against(book: Book, grass: str, place: str) -> tuple[Reason, ...]:
    """Of each law or regulation of the place's country or region against the grass, what it says and whom to ask."""
    country, region = book.places[place].country, book.places[place].region
    return tuple(
        law_said(book, each) for each in book.grasses[grass].weed_status
        if each.declared and each.country == country and (not each.regions or region in each.regions)
    )


def law_said(book: Book, status: WeedStatus) -> Reason:
    """One law or regulation: where, what it says, whom to ask."""
    country = book.countries[status.country]
    asked = status.ask or (book.key.weed_authorities.get(status.country, "") if book.key else "")
    where = ", ".join(status.regions) or country.in_a_sentence or country.name
    return because("weed-by-law", where=where, text=status.text, ask=because("ask-first", who=asked) if asked else because("nothing"))


def winter_said(season: SeasonYear) -> tuple[Reason, ...]:
    """That a usual winter kills the grass here, or some of it."""
    found = killed_by_winter(season.weather, season.grass) or risked_in_winter(season.weather, season.grass)
    return (because("winter-first", why=found),) if found else ()


def hot_afternoons(season: SeasonYear, from_c: float | None) -> tuple[NumberSaid | None, ...]:
    """For each day of the year, the mean of the daily maximum in the four weeks from it, in whole degrees, where it is `from_c` or more [°C]."""
    if from_c is None:
        return (None,) * DAYS
    maximum = season.climate.maximum_c
    means = (fsum(maximum[(day + ahead) % DAYS] for ahead in range(LAID_BARE_DAYS)) / LAID_BARE_DAYS for day in range(DAYS))
    return tuple(limit_degrees(round(mean)) if mean >= from_c else None for mean in means)


def heat_said(season: SeasonYear, from_c: float | None, on: date) -> tuple[Reason, ...]:
    """How hot the afternoons are in the four weeks from a day, where they are `from_c` or more [°C]."""
    found = hot_afternoons(season, from_c)[day_of_year(on)]
    return (hot_reason(found),) if found else ()


def hot_reason(afternoons: NumberSaid) -> Reason:
    """How hot the afternoons then are [°C]."""
    return because("hot-then", maximum=afternoons)
