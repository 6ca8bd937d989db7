"""Reference evapotranspiration by FAO Penman-Monteith from monthly normals, with FAO-56's procedures for what is missing."""

from generator.turf.calendar_days import monthly_means
from generator.turf.climate import Climate, Twelve
from generator.turf.equations import EQUATIONS
from generator.turf.sun import sun
from generator.units import from_si, to_si, unit

# FAO-56 chapter 4: the mean of over 2000 stations, for use where wind is not measured.
ASSUMED_WIND_M_PER_S = 2.0
SEA_LEVEL_M = 0.0


def monthly_penman_monteith(climate: Climate) -> Twelve:
    """Reference evapotranspiration of each month [mm/day], 12 means, January first; never negative.

    climate: must carry hours of sunshine; humidity at 15:00 and elevation where known.
    Raises ValueError for a climate without sunshine.

    Source: FAO-56 equation 6 in its monthly form (example 17): radiation from sunshine (35), net radiation (37 to 40), soil
    heat from the neighbouring months (43), wind of 2 m/s. Sun above the air and day length are means over the month's days,
    where the paper takes its 15th.
    """
    if climate.sunshine_h_per_day is None:
        raise ValueError("this climate has no hours of sunshine; use the Hargreaves equation")
    light = sun(climate.latitude_deg)
    above = monthly_means(light.extraterrestrial_radiation_mj)
    daylight = monthly_means(light.daylight_h)
    return tuple(max(0.0, _month(climate, month, above[month], daylight[month])) for month in range(12))


def _month(climate: Climate, month: int, above_mj: float, daylight_h: float) -> float:
    mean = climate.mean_c
    radiation = unit("MJ/m2/day")
    above = to_si(above_mj, radiation)
    low, high, middle = (
        to_si(value, unit("°C")) for value in (climate.mean_minimum_c[month], climate.mean_maximum_c[month], mean[month])
    )
    at_low, at_high, at_middle = (_by("saturation-vapour-pressure", temperature=each) for each in (low, high, middle))
    vapour = _vapour(climate, month, at_low, at_high)
    elevation = SEA_LEVEL_M if climate.elevation_m is None else climate.elevation_m
    ground = _by(
        "solar-radiation-from-sunshine",
        # In polar night there is neither sun nor day to share it over.
        sunshine=to_si(climate.sunshine_h_per_day[month] if daylight_h else 0.0, unit("h")), daylight=to_si(daylight_h or 1.0, unit("h")),
        extraterrestrial_radiation=above,
    )
    clear = _by("clear-sky-radiation", elevation=elevation, extraterrestrial_radiation=above)
    longwave = _by(
        "net-longwave-radiation", minimum_temperature=low, maximum_temperature=high, actual_vapour_pressure=vapour,
        solar_radiation=ground if clear else 1.0, clear_sky_radiation=clear or 1.0,
    )
    answer = _by(
        "penman-monteith",
        mean_temperature=middle,
        net_radiation=_by("net-radiation", solar_radiation=ground, net_longwave_radiation=longwave),
        soil_heat_flux=_by(
            "soil-heat-flux-of-month",
            temperature_of_month_before=to_si(mean[month - 1], unit("°C")),
            temperature_of_next_month=to_si(mean[(month + 1) % 12], unit("°C")),
        ),
        wind_speed=ASSUMED_WIND_M_PER_S,
        saturation_vapour_pressure=(at_low + at_high) / 2,
        actual_vapour_pressure=vapour,
        vapour_pressure_slope=_by("vapour-pressure-slope", temperature=middle, saturation_vapour_pressure=at_middle),
        psychrometric_constant=_by(
            "psychrometric-constant", atmospheric_pressure=_by("atmospheric-pressure", elevation=elevation)
        ),
    )
    return from_si(answer, unit("mm/day"))


def _vapour(climate: Climate, month: int, at_low: float, at_high: float) -> float:
    """Vapour in the air: from the afternoon's humidity, or as much as saturates the air at the minimum (equation 48)."""
    humidity = climate.relative_humidity_3pm_percent
    if humidity is None:
        return at_low
    return _by("actual-vapour-pressure", relative_humidity=to_si(humidity[month], unit("%")), saturation_vapour_pressure=at_high)


def _by(equation: str, **inputs_si: float) -> float:
    return EQUATIONS[equation].evaluate(**inputs_si)
