"""A year of visits from a day on: a programme with its dates and its price, for one lawn."""

from dataclasses import dataclass
from datetime import date

from generator.book.records.practice import OPEN_SITE
from generator.jobs.dates import day_of_year
from generator.jobs.programme import Placed, Programme, chosen_works, cuts, day_of, programme, visit_day
from generator.jobs.programme_works import YearOfWork, year_of_work
from generator.jobs.visit_price import VisitPrice, YearPrice, year_price
from generator.season.calendar_days import MONTH_OF_DAY, WEEK_OF_DAY, week_days
from generator.season.season_cache import SeasonCache
from generator.season.year import SeasonYear
from generator.words.programme_words import season_name


@dataclass(frozen=True)
class AskedYear:
    """What a year of visits is asked for: ids of the book, the area of grass [m2], at most how many visits, and the day it begins.

    chosen: tasks done only where needed that this lawn needs; without: tasks that it does without. mowing: with the cuts between.
    """

    grass: str
    place: str
    area_m2: float
    visits: int
    start: date
    site: str = OPEN_SITE
    chosen: tuple[str, ...] = ()
    without: tuple[str, ...] = ()
    mowing: bool = False
    people: int | None = None


@dataclass(frozen=True)
class PlannedVisit:
    """One visit with its day. season: what that time of the year is called there. price: None where the practice has no prices."""

    day: date
    week: int
    season: str
    placed: tuple[Placed, ...]
    tasks: tuple[str, ...]
    price: VisitPrice | None


@dataclass(frozen=True)
class PlannedYear:
    """A year of visits, by day from its beginning on. renovation_day: of the renovation, which is a job of its own; None where there is no window."""

    asked: AskedYear
    work: YearOfWork
    programme: Programme
    visits: tuple[PlannedVisit, ...]
    renovation_day: date | None
    cuts: int
    price: YearPrice | None


def planned_year(seasons: SeasonCache, asked: AskedYear) -> PlannedYear:
    """The year that is asked for. Raises KeyError for an id that is not in the book."""
    book, season = seasons.book, seasons.season(asked.grass, asked.place, asked.site)
    work = year_of_work(book, book.grasses[asked.grass], season)
    found = programme(chosen_works(book, work, asked.chosen, asked.without), asked.visits)
    days = {each.week: visit_day(each.week, asked.start) for each in found.visits}
    ordered = sorted(found.visits, key=lambda each: days[each.week])
    mown = len(cuts(work)) if asked.mowing else 0
    price = year_price(book, asked.grass, [each.tasks for each in ordered], mown, asked.area_m2, asked.people)
    latitude = book.places[asked.place].latitude_deg
    visits = tuple(
        PlannedVisit(
            days[each.week], each.week, season_of(WEEK_OF_DAY[day_of_year(days[each.week])], latitude, season), each.placed, each.tasks,
            price.visits[at] if price else None,
        )
        for at, each in enumerate(ordered)
    )
    return PlannedYear(asked, work, found, visits, _renovation_day(seasons, asked, work), mown, price)


def season_of(week: int, latitude_deg: float, season: SeasonYear) -> str:
    """What a week (0 for the first) is called there, by its middle. latitude_deg: south is negative [°]."""
    return season_name(MONTH_OF_DAY[week_days(week)[3]] + 1, latitude_deg, season.weeks[week].wet)


def _renovation_day(seasons: SeasonCache, asked: AskedYear, work: YearOfWork) -> date | None:
    """The best day of the main window itself, in the year from the beginning on."""
    found = seasons.season(asked.grass, asked.place, asked.site).renovation.windows
    if work.renovation_week is None or not found:
        return None
    first = day_of(asked.start.year, found[0].best)
    return first if first >= asked.start else day_of(asked.start.year + 1, found[0].best)
