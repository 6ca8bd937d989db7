"""A year of visits for one lawn: which works each visit does, near which week, and what needs a visit of its own. Twin: visit day."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from generator.book.book import Book
from generator.jobs.programme_works import Work, YearOfWork
from generator.jobs.visit_grouping import best_visits, nearest
from generator.season.calendar_days import DAYS, month_and_day, week_days

MOST_VISITS = 12
USUAL_VISITS = 6
MOW = "mow"
SATURDAY = 5


@dataclass(frozen=True)
class Placed:
    """A work at a visit. moved_weeks: from the week it falls due, below 0 for earlier."""

    work: Work
    moved_weeks: int


@dataclass(frozen=True)
class Visit:
    """One visit. week: 0 for the first of the year. placed: in the order in which they fall due."""

    week: int
    placed: tuple[Placed, ...]

    @property
    def tasks(self) -> tuple[str, ...]:
        """Each task once, however many of its rules bring it here."""
        return tuple(dict.fromkeys(each.work.task for each in self.placed))


@dataclass(frozen=True)
class Programme:
    """The visits of a year, in the order of its weeks. own: works that no visit may take without harm; each wants a visit of its own."""

    visits: tuple[Visit, ...]
    own: tuple[Work, ...]


def programme(works: Iterable[Work], visits: int) -> Programme:
    """The best programme of at most so many visits: see `visit_grouping` for what best means. Visits that would serve no better are not made."""
    works = tuple(works)
    weeks = best_visits([work.at for work in works], visits)[-1]
    at: dict[int, list[Placed]] = {}
    own = []
    for work in works:
        found = nearest(work.at, weeks)
        if found is None:
            own.append(work)
        else:
            at.setdefault(found[0], []).append(Placed(work, found[1]))
    return Programme(tuple(Visit(week, tuple(at[week])) for week in sorted(at)), tuple(own))


def only_where(book: Book, task: str) -> str | None:
    """What must be so on a lawn before a task is in its programme, unless somebody chooses it; None for what every lawn gets."""
    step = book.tasks[task].on_a_visit
    return book.steps[step].only_where if step else None


def chosen_works(book: Book, year: YearOfWork, chosen: Collection[str] = (), without: Collection[str] = ()) -> tuple[Work, ...]:
    """The works that are in a programme: what every lawn gets and what is chosen for this one, less what it does without."""
    return tuple(work for work in year.works if work.task not in without and (work.task in chosen or only_where(book, work.task) is None))


def visit_day(week: int, start: date) -> date:
    """The day of a week (0 for the first) in the year that begins with `start`; a weekend's falls on the Monday after it."""
    first, last = week_days(week)[0], week_days(week)[-1]
    year = start.year if day_of(start.year, last) >= start else start.year + 1
    day = max(day_of(year, first), start)
    return day + timedelta(max(0, 7 - day.weekday()) if day.weekday() >= SATURDAY else 0)


def day_of(year: int, number: int) -> date:
    """A day of the engine's year (0 for 1 January, no 29 February) in a year of the calendar."""
    month, day = month_and_day(number % DAYS).split("-")
    return date(year, int(month), int(day))


def cuts(year: YearOfWork) -> tuple[int, ...]:
    """The weeks (0 for the first) in which the mowing interval asks for a cut; a week that two of its rhythms name counts once."""
    return tuple(sorted({week for each in year.routine if each.task == MOW for week in each.weeks}))
