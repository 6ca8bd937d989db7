"""Reference evapotranspiration by FAO Penman-Monteith from monthly normals, with FAO-56's procedures for what is missing."""

from dataclasses import dataclass

from generator.season.calendar_days import monthly_means
from generator.season.climate.climate import Climate, Twelve
from generator.season.climate.sun import sun
from generator.season.equations.every_equation import EQUATIONS
from generator.units import from_si, to_si, unit

# FAO-56 chapter 4: the mean of over 2000 stations, for use where wind is not measured.
ASSUMED_WIND_M_PER_S = 2.0
SEA_LEVEL_M = 0.0


@dataclass(frozen=True)
class Weather:
    """Mean weather of a day or a month, as the equation takes it.

    minimum_c, maximum_c [°C]; vapour_kpa: vapour in the air [kPa]; sun_mj, clear_sky_mj: radiation at the ground, and under a
    clear sky [MJ/m²/day]; soil_heat_mj: into the soil [MJ/m²/day]; wind_m_per_s at 2 m; elevation_m.
    """

    minimum_c: float
    maximum_c: float
    vapour_kpa: float
    sun_mj: float
    clear_sky_mj: float
    elevation_m: float = SEA_LEVEL_M
    soil_heat_mj: float = 0.0
    wind_m_per_s: float = ASSUMED_WIND_M_PER_S


def penman_monteith(weather: Weather) -> float:
    """Reference evapotranspiration [mm/day] of a day or a month; may fall below zero in the dark of a cold winter.

    Source: FAO-56 equation 6 with 7, 8, 11 to 13 and 38 to 40; see the equations of those names. Worked examples 17, 18, 20.
    """
    mean_c = (weather.minimum_c + weather.maximum_c) / 2
    at_low, at_high, at_mean = (saturation_kpa(each) for each in (weather.minimum_c, weather.maximum_c, mean_c))
    longwave = _by(
        "net-longwave-radiation", minimum_temperature=weather.minimum_c, maximum_temperature=weather.maximum_c,
        actual_vapour_pressure=weather.vapour_kpa, solar_radiation=weather.sun_mj, clear_sky_radiation=weather.clear_sky_mj,
    ) if weather.clear_sky_mj else 0.0
    return _by(
        "penman-monteith",
        mean_temperature=mean_c,
        net_radiation=_by("net-radiation", solar_radiation=weather.sun_mj, net_longwave_radiation=longwave),
        soil_heat_flux=weather.soil_heat_mj,
        wind_speed=weather.wind_m_per_s,
        saturation_vapour_pressure=(at_low + at_high) / 2,
        actual_vapour_pressure=weather.vapour_kpa,
        vapour_pressure_slope=_by("vapour-pressure-slope", temperature=mean_c, saturation_vapour_pressure=at_mean),
        psychrometric_constant=_by(
            "psychrometric-constant", atmospheric_pressure=_by("atmospheric-pressure", elevation=weather.elevation_m)
        ),
    )


def saturation_kpa(temperature_c: float) -> float:
    """Saturation vapour pressure [kPa] at a temperature [°C]. Source: FAO-56 equation 11."""
    return _by("saturation-vapour-pressure", temperature=temperature_c)


def sun_from_sunshine(sunshine_h: float, daylight_h: float, above_mj: float) -> float:
    """Radiation at the ground [MJ/m²/day] from hours of sunshine, of daylight, and the sun above the air [MJ/m²/day].

    No daylight gives none. Source: FAO-56 equation 35.
    """
    if not daylight_h:
        return 0.0
    return _by("solar-radiation-from-sunshine", sunshine=sunshine_h, daylight=daylight_h, extraterrestrial_radiation=above_mj)


def clear_sky(elevation_m: float, above_mj: float) -> float:
    """Radiation at the ground under a clear sky [MJ/m²/day], from the sun above the air [MJ/m²/day]. Source: FAO-56 equation 37."""
    return _by("clear-sky-radiation", elevation=elevation_m, extraterrestrial_radiation=above_mj)


def monthly_penman_monteith(climate: Climate) -> Twelve:
    """Reference evapotranspiration of each month [mm/day], 12 means, January first; never negative.

    climate: must carry hours of sunshine; humidity at 15:00 and elevation where known.
    Raises ValueError for a climate without sunshine.

    Source: FAO-56 equation 6 in its monthly form (example 17): radiation from sunshine (35), net radiation (37 to 40), soil
    heat from the neighbouring months (43), wind of 2 m/s. Sun above the air and day length are means over the month's days,
    where the paper takes its 15th.
    """
    sunshine = climate.sunshine_h_per_day
    if sunshine is None:
        raise ValueError("this climate has no hours of sunshine; use the Hargreaves equation")
    light = sun(climate.latitude_deg)
    above = monthly_means(light.extraterrestrial_radiation_mj)
    daylight = monthly_means(light.daylight_h)
    return tuple(max(0.0, penman_monteith(_of_month(climate, month, sunshine[month], above[month], daylight[month]))) for month in range(12))


def _of_month(climate: Climate, month: int, sunshine_h: float, above_mj: float, daylight_h: float) -> Weather:
    mean = climate.mean_c
    elevation = SEA_LEVEL_M if climate.elevation_m is None else climate.elevation_m
    return Weather(
        minimum_c=climate.mean_minimum_c[month],
        maximum_c=climate.mean_maximum_c[month],
        vapour_kpa=_vapour_kpa(climate, month),
        sun_mj=sun_from_sunshine(sunshine_h, daylight_h, above_mj),
        clear_sky_mj=clear_sky(elevation, above_mj),
        elevation_m=elevation,
        soil_heat_mj=_by(
            "soil-heat-flux-of-month",
            temperature_of_month_before=mean[month - 1], temperature_of_next_month=mean[(month + 1) % 12],
        ),
    )


def _vapour_kpa(climate: Climate, month: int) -> float:
    """From the afternoon's humidity; without it, as much as saturates the air at the minimum (equation 48)."""
    if climate.relative_humidity_3pm_percent is None:
        return saturation_kpa(climate.mean_minimum_c[month])
    return _by(
        "actual-vapour-pressure", relative_humidity=climate.relative_humidity_3pm_percent[month],
        saturation_vapour_pressure=saturation_kpa(climate.mean_maximum_c[month]),
    )


def _by(name: str, **inputs: float) -> float:
    """The answer of an equation, inputs and answer in the units that the equation names."""
    equation = EQUATIONS[name]
    answer = equation.evaluate(**{key: to_si(value, unit(equation.inputs[key])) for key, value in inputs.items()})
    return from_si(answer, unit(equation.result_unit))
