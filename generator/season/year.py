"""One grass at one place and site through a year: the engine's answer, by day and by week."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from generator.season.calendar_days import DAYS, WEEKS, month_and_day, week_days, weekly_means, weekly_sums
from generator.season.climate.climate import Climate, Daily, DailyClimate, Site
from generator.season.climate.degree_days import degree_days_since
from generator.season.engine_rules import GrassSeason, WindowRules
from generator.season.growth import Growth, yearly_growth
from generator.season.inputs import EngineRules
from generator.season.reasons import Reason
from generator.season.water.need import water_need
from generator.season.weather import WeatherYear, weather
from generator.season.windows.every_kind import ByKind, WindowKind
from generator.season.windows.limits import Year, slack_season, wet_season
from generator.season.windows.main_windows import Windows, runs_of

WeekClass = Literal["dormant", "slow", "growing", "peak"]


@dataclass(frozen=True)
class Week:
    """One of 52 weeks, numbered from 1; week 1 begins on 1 January, the last has eight days.

    Temperatures [°C] and shares (0 to 1) are means over the week; water is a sum [mm a week]. `frosty` marks a week in
    which a frost night is likelier than not, `frost_possible` another with a chance above a tenth; `wet` one mostly in the wet season.
    """

    week: int
    starts: str
    mean_temperature_c: float
    maximum_temperature_c: float
    minimum_temperature_c: float
    soil_temperature_c: float
    growth_potential: float
    growth_share: float
    frost_probability: float
    ground_frost_probability: float
    daylight_h: float
    rain_mm: float
    reference_evapotranspiration_mm: float
    water_need_mm: float
    growth_class: WeekClass
    frosty: bool
    frost_possible: bool
    wet: bool
    in_windows: tuple[WindowKind, ...]


@dataclass(frozen=True)
class SeasonYear:
    """The computed year. Daily series are 365 values from 1 January; day numbers count from 0."""

    grass: GrassSeason
    rules: WindowRules
    weather: WeatherYear
    growth: Growth
    view: Year
    windows: ByKind
    transition_night_c: float
    largest_share_removed: float | None

    @property
    def climate(self) -> DailyClimate:
        """Temperatures and rain by the day."""
        return self.weather.days

    @property
    def whole_degrees(self) -> bool:
        """Whether the normals are printed in whole degrees, so that a decimal would claim what was not measured."""
        return self.weather.temperature_step_c >= 1

    @cached_property
    def water_need_mm(self) -> Daily:
        """What the grass needs beside rain [mm/day]."""
        return water_need(self.weather.reference_evapotranspiration_mm, self.weather.effective_rain_mm, self.grass.crop_coefficient)

    @property
    def renovation(self) -> Windows:
        return self.windows["renovation"]

    @property
    def overseeding(self) -> Windows:
        return self.windows["overseeding"]

    @property
    def light_renovation(self) -> Windows:
        return self.windows["light_renovation"]

    @property
    def oversowing(self) -> Windows:
        return self.windows["oversowing"]

    @property
    def pre_emergent(self) -> Windows:
        return self.windows["pre_emergent"]

    @cached_property
    def degree_days(self) -> Daily:
        """Growing degree days over the grass's base, counted from the coldest day of the year [°C day]."""
        climate = self.climate
        return degree_days_since(climate.maximum_c, climate.minimum_c, self.grass.growth_base_c, climate.coldest_day)

    @cached_property
    def slack(self) -> tuple[bool, ...]:
        """Days on which growth is too slow to close an opened surface."""
        return slack_season(self.view, self.rules)

    @cached_property
    def wet(self) -> tuple[bool, ...]:
        return wet_season(self.view, self.rules)

    @cached_property
    def classes(self) -> tuple[WeekClass, ...]:
        """The growth class of each day, as the season strip draws it."""
        return tuple(self._class(day) for day in range(DAYS))

    def _class(self, day: int) -> WeekClass:
        if self.climate.soil_c[day] <= self.rules.dormant_soil_c:
            return "dormant"
        share = self.growth.share[day]
        if share >= self.rules.peak_share:
            return "peak"
        return "growing" if share >= self.rules.start_share else "slow"

    @cached_property
    def green_up_day(self) -> int | None:
        """First day after the coldest on which the soil reaches the green-up temperature; None where it never is colder."""
        mark = self.rules.green_up_soil_c
        if mark is None or min(self.climate.soil_c) >= mark:
            return None
        return self._first_after(self.climate.coldest_day, lambda day: self.climate.soil_c[day] >= mark)

    @cached_property
    def transition_day(self) -> int | None:
        """First day after the coldest on which nights reach the temperature at which warm-season turf takes over; None if never."""
        mark = self.transition_night_c
        if self.grass.group == "cool" or min(self.climate.minimum_c) >= mark:
            return None
        return self._first_after(self.climate.coldest_day, lambda day: self.climate.minimum_c[day] >= mark)

    @cached_property
    def peak(self) -> tuple[int, int] | None:
        """First and last day of the longest stretch at its best, or None."""
        return self._longest("peak")

    @cached_property
    def slow_down_day(self) -> int | None:
        """First day after the hottest on which growth no longer closes an opened surface; None where it always does."""
        if not any(self.slack):
            return None
        return self._first_after(self.climate.hottest_day, lambda day: self.slack[day])

    @cached_property
    def dormancy(self) -> tuple[int, int] | None:
        """First and last day of the longest dormant stretch, or None."""
        return self._longest("dormant")

    def _longest(self, growth_class: WeekClass) -> tuple[int, int] | None:
        stretches = runs_of([name == growth_class for name in self.classes])
        return max(stretches, key=lambda stretch: (stretch[1] - stretch[0]) % DAYS, default=None)

    def _first_after(self, day: int, holds: Callable[[int], bool]) -> int | None:
        return next(((day + ahead) % DAYS for ahead in range(DAYS) if holds((day + ahead) % DAYS)), None)

    @cached_property
    def weeks(self) -> tuple[Week, ...]:
        potential, share, need = weekly_means(self.growth.potential), weekly_means(self.growth.share), weekly_sums(self.water_need_mm)
        return tuple(self._week(number, potential[number], share[number], need[number]) for number in range(WEEKS))

    def _week(self, number: int, potential: float, share: float, need_mm: float) -> Week:
        days, weather = week_days(number), self.weather.weeks
        middle = days[len(days) // 2]
        return Week(
            week=number + 1, starts=month_and_day(days[0]),
            mean_temperature_c=weather.mean_c[number], maximum_temperature_c=weather.maximum_c[number],
            minimum_temperature_c=weather.minimum_c[number], soil_temperature_c=weather.soil_c[number],
            growth_potential=potential, growth_share=share,
            frost_probability=weather.frost[number], ground_frost_probability=weather.ground_frost[number],
            daylight_h=weather.daylight_h[number], rain_mm=weather.rain_mm[number],
            reference_evapotranspiration_mm=weather.reference_evapotranspiration_mm[number], water_need_mm=need_mm,
            growth_class=self.classes[middle], frosty=weather.frosty[number], frost_possible=weather.frost_possible[number], wet=self.wet[middle],
            in_windows=tuple(kind for kind, found in self.windows.items() if any(window.holds(middle) for window in found.windows)),
        )


def year(climate: Climate, grass: GrassSeason, site: Site, rules: EngineRules, not_advised: Mapping[WindowKind, Reason] | None = None) -> SeasonYear:
    """The computed year of a grass at a site, in the weather of a usual year there. not_advised: why a kind of work is not done in its country."""
    here = weather(climate, site, rules.soil, rules.frost)
    return year_in(here, yearly_growth(here.days.mean_c, grass.growth_key), grass, rules, not_advised)


def year_in(
    here: WeatherYear, growth: Growth, grass: GrassSeason, rules: EngineRules, not_advised: Mapping[WindowKind, Reason] | None = None,
) -> SeasonYear:
    """The computed year of a grass in a year's weather, usual or partly measured, and with what that lets it grow."""
    of_group = rules.windows[grass.group]
    view = Year(here, growth, here.frost(ground=grass.surface_running), grass.surface_running, grass.optimum_c)
    return SeasonYear(
        grass=grass, rules=of_group, weather=here, growth=growth, view=view,
        windows=ByKind(view, grass, of_group, rules.oversowing, rules.pre_emergent, not_advised or {}),
        transition_night_c=rules.oversowing.transition_night_c, largest_share_removed=rules.largest_share_removed,
    )
