"""The weather of a usual year at one site of a place: one record, made once from its normals and handed on to whatever reads it."""

from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

from generator.season.calendar_days import WEEKS, week_days, weekly_means, weekly_sums
from generator.season.climate.climate import Climate, Daily, DailyClimate, Site, Soil, daily_climate
from generator.season.climate.climate_faults import COLDEST_C, HOTTEST_C
from generator.season.climate.coldest_night import coldest_night_c
from generator.season.climate.frost import Frost, frost
from generator.season.climate.frost_margin import FrostRules
from generator.season.climate.sun import sun
from generator.season.water.need import Method, effective_rain, evapotranspiration_method, reference_evapotranspiration

# A week in which a frost night is likelier than not is called frosty; one with a chance above the other may have frost.
FROSTY, FROST_POSSIBLE = 0.5, 0.1


@dataclass(frozen=True)
class WeeklyWeather:
    """52 means or sums of a year: temperatures [°C], chances 0 to 1 of a frost night [1], daylight [h], water [mm a week]."""

    mean_c: Daily
    maximum_c: Daily
    minimum_c: Daily
    soil_c: Daily
    frost: Daily
    ground_frost: Daily
    daylight_h: Daily
    rain_mm: Daily
    reference_evapotranspiration_mm: Daily
    frosty: tuple[bool, ...]
    frost_possible: tuple[bool, ...]


@dataclass(frozen=True)
class WeatherYear:
    """normals, site, soil, frost_rules: what it is made from. days: temperatures and rain. Daily series are 365 values from 1 January.

    air_frost, ground_frost: frosts of the screen and of the grass itself. daylight_h: from sunrise to sunset [h]. effective_rain_mm: the
    part of the rain that grass can use [mm/day].
    """

    normals: Climate
    site: Site
    soil: Soil
    frost_rules: FrostRules
    days: DailyClimate
    air_frost: Frost
    ground_frost: Frost
    daylight_h: Daily
    reference_evapotranspiration_mm: Daily
    evapotranspiration_method: Method
    effective_rain_mm: Daily

    @property
    def temperature_step_c(self) -> float:
        """How finely the normals are printed [K]."""
        return self.normals.temperature_step_c

    @cached_property
    def coldest_night_c(self) -> float:
        """The screen minimum that half of all years fall below [°C]."""
        return coldest_night_c(self.normals, self.soil, self.frost_rules) + self.site.minimum_offset_k

    def frost(self, ground: bool) -> Frost:
        return self.ground_frost if ground else self.air_frost

    def last_frost_day(self, risk: float, ground: bool = False) -> int | None:
        """Last day that still carries more than `risk` of any frost before summer; None where it never does."""
        return self._told("last", risk, ground)

    def first_frost_day(self, risk: float, ground: bool = False) -> int | None:
        """Day by which, after summer, any frost has become likelier than `risk`; None where it never does."""
        return self._told("first", risk, ground)

    def _told(self, which: str, risk: float, ground: bool) -> int | None:
        key = which, risk, ground
        if key not in self._frost_days:
            found = self.frost(ground)
            ask = found.last_day if which == "last" else found.first_day
            self._frost_days[key] = ask(risk, self.days.hottest_day)
        return self._frost_days[key]

    @cached_property
    def _frost_days(self) -> dict[tuple[str, float, bool], int | None]:
        return {}

    @cached_property
    def weeks(self) -> WeeklyWeather:
        days = self.days
        chances = tuple(self.air_frost.chance_of_any(span[0], len(span)) for span in map(week_days, range(WEEKS)))
        return WeeklyWeather(
            mean_c=weekly_means(days.mean_c), maximum_c=weekly_means(days.maximum_c), minimum_c=weekly_means(days.minimum_c),
            soil_c=weekly_means(days.soil_c), frost=weekly_means(self.air_frost.chance), ground_frost=weekly_means(self.ground_frost.chance),
            daylight_h=weekly_means(self.daylight_h), rain_mm=weekly_sums(days.rain_mm),
            reference_evapotranspiration_mm=weekly_sums(self.reference_evapotranspiration_mm),
            frosty=tuple(chance > FROSTY for chance in chances),
            frost_possible=tuple(FROST_POSSIBLE < chance <= FROSTY for chance in chances),
        )

    def moved(self, shift_k: float) -> "WeatherYear":
        """The same with all temperatures moved [K], within what can be; frost and water are left as they stand."""

        def shifted(monthly: tuple[float, ...]) -> tuple[float, ...]:
            return tuple(min(max(value + shift_k, COLDEST_C), HOTTEST_C) for value in monthly)

        normals = replace(
            self.normals, mean_maximum_c=shifted(self.normals.mean_maximum_c), mean_minimum_c=shifted(self.normals.mean_minimum_c)
        )
        return replace(self, normals=normals, days=daily_climate(normals, self.site, self.soil))


# The same for every grass of a place.
@lru_cache(maxsize=1024)
def weather(normals: Climate, site: Site, soil: Soil, frost_rules: FrostRules) -> WeatherYear:
    """The weather at a site of a place; each series says its own source."""
    air, ground = (frost(normals, site, soil, frost_rules, ground=flag) for flag in (False, True))
    return WeatherYear(
        normals=normals, site=site, soil=soil, frost_rules=frost_rules, days=daily_climate(normals, site, soil), air_frost=air, ground_frost=ground,
        daylight_h=sun(normals.latitude_deg).day_length_h,
        reference_evapotranspiration_mm=reference_evapotranspiration(normals, site, soil),
        evapotranspiration_method=evapotranspiration_method(normals), effective_rain_mm=effective_rain(normals.rain_mm),
    )
