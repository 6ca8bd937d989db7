"""This year of a grass at a place: what was measured, the usual weather after it, and how far other years would lead."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date

from generator.book.daily.daily_record import DailyRecord
from generator.season.calendar_days import DAYS
from generator.season.climate.climate import Climate, Site
from generator.season.engine_rules import GrassSeason
from generator.season.growth import yearly_growth
from generator.season.inputs import EngineRules
from generator.season.observed.departures import Circle
from generator.season.observed.measured_weather import MeasuredGrowth, MeasuredWeather, measured_weather
from generator.season.reasons import Day, Reason, because, count
from generator.season.windows.every_kind import ByKind, WindowKind
from generator.season.windows.main_windows import Window, Windows
from generator.season.year import SeasonYear, year, year_in

# An edge of a window and the usual one are the same edge up to so many days apart.
LARGEST_MOVE_DAYS = 90
# More than any recovery that is waited for.
LOOKED_AHEAD_DAYS = 120
# How far the days ahead may lie from the usual in two years of three: one standard deviation either way.
USUAL_SPREAD = 1.0


@dataclass(frozen=True)
class ThisYear:
    """season: measured, then usual; usual: the usual year. cooler, warmer: the same with the days ahead a standard deviation of years below and above
    the usual; None where the place does not say how its years differ."""

    circle: Circle
    season: SeasonYear
    usual: SeasonYear
    cooler: SeasonYear | None
    warmer: SeasonYear | None

    @property
    def until(self) -> date:
        """The last measured day."""
        return self.circle.until


class MeasuredWindows(ByKind):
    """The windows of a year that is partly measured; each says so, and how far it moved."""

    def compared_with(self, usual: Mapping[WindowKind, Windows], circle: Circle) -> "MeasuredWindows":
        self._usual, self._circle = usual, circle
        return self

    def _with_doubt(self, kind: WindowKind, found: Windows) -> Windows:
        found, usual = super()._with_doubt(kind, found), self._usual[kind].windows
        kept = [window for window in found.windows if not self._was_luck(window)] or found.windows
        return replace(found, windows=tuple(self._next_year(window, usual) or self._said(window, usual) for window in kept))

    def _was_luck(self, window: Window) -> bool:
        """Whether a window is over because frost is still to be feared: that none came in its days was not known in them."""
        return "frost" in window.limited_by[1] and self._circle.is_measured(window.last)

    def _next_year(self, window: Window, usual: tuple[Window, ...]) -> Window | None:
        """The usual window in place of one so far ahead that its rules look round the year, at what was measured in this one; None for one of this year."""
        left = DAYS - self._circle.measured_days - self._circle.offset(window.last)
        if self._circle.offset(window.first) <= 0 or self._circle.offset(window.last) <= 0 or left > LOOKED_AHEAD_DAYS:
            return None
        same = min(usual, key=lambda each: abs(move(window.first, (each.first,)) or 0) if move(window.first, (each.first,)) is not None else DAYS, default=None)
        return replace(same, is_main=window.is_main) if same and move(window.first, (same.first,)) is not None else None

    def _said(self, window: Window, usual: tuple[Window, ...]) -> Window:
        notes = [because("measured-then-usual", until=Day(self._circle.today))]
        if opens := move(window.first, tuple(each.first for each in usual)):
            notes.append(because("opens-later" if opens > 0 else "opens-earlier", days=_days(abs(opens))))
        if closes := move(window.last, tuple(each.last for each in usual)):
            notes.append(because("closes-later" if closes > 0 else "closes-earlier", days=_days(abs(closes))))
        # What was measured is not undecided, however the normals were printed.
        first, last = (None if self._circle.is_measured(day) else doubt for day, doubt in (
            (window.first, window.undecided_first), (window.last, window.undecided_last),
        ))
        return replace(window, notes=(*window.notes, *notes), undecided_first=first, undecided_last=last)


def _days(number: int) -> Reason:
    return because("one-day") if number == 1 else because("several-days", days=count(number))


def move(day: int, usual: tuple[int, ...]) -> int | None:
    """How many days later than the nearest usual one a day of the year falls [days], negative where earlier; None where none is near."""
    ways = [(day - each + DAYS // 2) % DAYS - DAYS // 2 for each in usual]
    nearest = min(ways, key=abs, default=None)
    return nearest if nearest is not None and abs(nearest) <= LARGEST_MOVE_DAYS else None


def this_year(
    climate: Climate, grass: GrassSeason, site: Site, rules: EngineRules, record: DailyRecord, not_advised: Mapping[WindowKind, Reason] | None = None,
) -> ThisYear:
    """The year about the record's last day. Raises ValueError for a record without a day that has a maximum and a minimum.

    Source of each part: `measured_weather`. That the days ahead are the usual ones is our choice: no forecast is used.
    """
    usual = year(climate, grass, site, rules, not_advised)

    def ahead(spreads: float) -> SeasonYear:
        here = measured_weather(climate, site, rules, record, spreads)
        growth = MeasuredGrowth(yearly_growth(here.days.mean_c, grass.growth_key).potential, usual.growth)
        found = year_in(here, growth, grass, rules, not_advised)
        of = found.view
        windows = MeasuredWindows(of, grass, rules.windows[grass.group], rules.oversowing, rules.pre_emergent, not_advised or {})
        return replace(found, windows=windows.compared_with(usual.windows, here.circle))

    season = ahead(0.0)
    assert isinstance(season.weather, MeasuredWeather)
    known = climate.mean_spread_between_years_c is not None
    cooler, warmer = (ahead(-USUAL_SPREAD), ahead(USUAL_SPREAD)) if known else (None, None)
    return ThisYear(season.weather.circle, season, usual, cooler, warmer)
