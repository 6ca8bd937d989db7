"""One grass at one place and site through a year: the engine's answer, by day and by week."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Literal

from generator.season.calendar_days import DAYS, WEEKS, month_and_day, week_days, weekly_means, weekly_sums
from generator.season.climate.climate import Climate, Daily, DailyClimate, Site, daily_climate
from generator.season.climate.degree_days import degree_days_since
from generator.season.climate.frost import Frost, frost
from generator.season.growth import Growth, yearly_growth
from generator.season.inputs import EngineRules
from generator.season.windows.every_kind import ByKind, WindowKind, windows_by_kind, with_doubts
from generator.season.windows.limits import Year, slack_season, wet_season
from generator.season.engine_rules import GrassSeason, OversowingRules, PreEmergentRules, WindowRules
from generator.season.climate.sun import sun
from generator.season.water.need import Method, effective_rain, evapotranspiration_method, reference_evapotranspiration, water_need
from generator.season.windows.main_windows import Windows, runs_of

WeekClass = Literal["dormant", "slow", "growing", "peak"]


@dataclass(frozen=True)
class Week:
    """One of 52 weeks, numbered from 1; week 1 begins on 1 January, the last has eight days.

    Temperatures [°C] and shares (0 to 1) are means over the week; water is a sum [mm a week]. `frosty` marks a week in
    which a frost night is likelier than not; `wet` one mostly in the wet season.
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
    wet: bool
    in_windows: tuple[WindowKind, ...]


@dataclass(frozen=True)
class SeasonYear:
    """The computed year. Daily series are 365 values from 1 January; day numbers count from 0."""

    grass: GrassSeason
    site: Site
    rules: WindowRules
    climate: DailyClimate
    growth: Growth
    air_frost: Frost
    ground_frost: Frost
    daylight_h: Daily
    extraterrestrial_radiation_mj: Daily
    reference_evapotranspiration_mm: Daily
    reference_evapotranspiration_method: Method
    effective_rain_mm: Daily
    water_need_mm: Daily
    temperature_step_c: float
    view: Year
    windows: ByKind
    transition_night_c: float
    largest_share_removed: float | None

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

    def last_frost_day(self, risk: float, ground: bool = False) -> int | None:
        """Last day that still carries more than `risk` of any frost before summer; None where it never does."""
        return _last_frost_day(self.ground_frost if ground else self.air_frost, risk, self.climate.hottest_day)

    def first_frost_day(self, risk: float, ground: bool = False) -> int | None:
        """Day by which, after summer, any frost has become likelier than `risk`; None where it never does."""
        return _first_frost_day(self.ground_frost if ground else self.air_frost, risk, self.climate.hottest_day)

    @cached_property
    def weeks(self) -> tuple[Week, ...]:
        means = {
            name: _weekly_means(series)
            for name, series in {
                "mean": self.climate.mean_c, "maximum": self.climate.maximum_c, "minimum": self.climate.minimum_c,
                "soil": self.climate.soil_c, "potential": self.growth.potential, "share": self.growth.share,
                "air": self.air_frost.chance, "ground": self.ground_frost.chance, "daylight": self.daylight_h,
            }.items()
        }
        sums = {
            "rain": _weekly_sums(self.climate.rain_mm),
            "reference": _weekly_sums(self.reference_evapotranspiration_mm),
            "need": weekly_sums(self.water_need_mm),
        }
        frosty = _frosty_weeks(self.air_frost)
        return tuple(self._week(number, means, sums, frosty[number]) for number in range(WEEKS))

    def _week(self, number: int, means: dict[str, Daily], sums: dict[str, Daily], frosty: bool) -> Week:
        days = week_days(number)
        middle = days[len(days) // 2]
        return Week(
            week=number + 1,
            starts=month_and_day(days[0]),
            mean_temperature_c=means["mean"][number],
            maximum_temperature_c=means["maximum"][number],
            minimum_temperature_c=means["minimum"][number],
            soil_temperature_c=means["soil"][number],
            growth_potential=means["potential"][number],
            growth_share=means["share"][number],
            frost_probability=means["air"][number],
            ground_frost_probability=means["ground"][number],
            daylight_h=means["daylight"][number],
            rain_mm=sums["rain"][number],
            reference_evapotranspiration_mm=sums["reference"][number],
            water_need_mm=sums["need"][number],
            growth_class=self.classes[middle],
            frosty=frosty,
            wet=self.wet[middle],
            in_windows=tuple(
                kind for kind, found in self.windows.items() if any(window.holds(middle) for window in found.windows)
            ),
        )


# The same for every grass of a place, and asked for each.
@lru_cache(maxsize=1024)
def _last_frost_day(frost_of_place: Frost, risk: float, warmest_day: int) -> int | None:
    return frost_of_place.last_day(risk, warmest_day)


@lru_cache(maxsize=1024)
def _first_frost_day(frost_of_place: Frost, risk: float, warmest_day: int) -> int | None:
    return frost_of_place.first_day(risk, warmest_day)


_weekly_means = lru_cache(maxsize=1024)(weekly_means)
_weekly_sums = lru_cache(maxsize=512)(weekly_sums)


@lru_cache(maxsize=256)
def _frosty_weeks(frost_of_place: Frost) -> tuple[bool, ...]:
    """The weeks in which a frost night is likelier than not."""
    spans = (week_days(week) for week in range(WEEKS))
    return tuple(frost_of_place.chance_of_any(days[0], len(days)) > 0.5 for days in spans)


@lru_cache(maxsize=4096)
def _year(
    climate: Climate, grass: GrassSeason, site: Site, rules: WindowRules, frost_rules: object, soil: object,
    sowing: OversowingRules, before_weeds: PreEmergentRules | None, largest_share_removed: float | None,
) -> SeasonYear:
    days = daily_climate(climate, site, soil)
    growth = yearly_growth(days.mean_c, grass.growth_key)
    air, ground = (frost(climate, site, soil, frost_rules, ground=flag) for flag in (False, True))
    reference = reference_evapotranspiration(climate, site, soil)
    rain = effective_rain(climate.rain_mm)
    view = Year(
        climate=days, growth=growth, frost=ground if grass.surface_running else air,
        reference_evapotranspiration_mm=reference, temperature_step_c=climate.temperature_step_c,
        surface_running=grass.surface_running, optimum_c=grass.optimum_c,
    )
    light = sun(climate.latitude_deg)

    def again(other: Year) -> ByKind:
        return windows_by_kind(other, grass, rules, sowing, before_weeds)

    found = with_doubts(again(view), view, climate, lambda moved: daily_climate(moved, site, soil), grass, again)
    return SeasonYear(
        grass=grass, site=site, rules=rules, climate=days, growth=growth, air_frost=air, ground_frost=ground,
        daylight_h=light.day_length_h, extraterrestrial_radiation_mj=light.extraterrestrial_radiation_mj,
        reference_evapotranspiration_mm=reference, reference_evapotranspiration_method=evapotranspiration_method(climate),
        effective_rain_mm=rain,
        water_need_mm=water_need(reference, rain, grass.crop_coefficient),
        temperature_step_c=climate.temperature_step_c, view=view,
        windows=found,
        transition_night_c=sowing.transition_night_c, largest_share_removed=largest_share_removed,
    )


def year(climate: Climate, grass: GrassSeason, site: Site, rules: EngineRules) -> SeasonYear:
    """The computed year of a grass at a site.

    Cached: the same question twice costs nothing.
    """
    return _year(
        climate, grass, site, rules.windows[grass.group], rules.frost, rules.soil, rules.oversowing, rules.pre_emergent,
        rules.largest_share_removed,
    )
