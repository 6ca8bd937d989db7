"""Penman-Monteith against an independent library, and against the water that stood in pans."""

from dataclasses import replace
from datetime import date
from math import log, radians, sqrt
from statistics import fmean

import pandas
import pyet
import pytest

from generator.season.calendar_days import monthly_means
from generator.season.climate.climate import OPEN
from generator.season.climate.sun import sun
from generator.season.equations.every_equation import EQUATIONS
from generator.season.water.need import evapotranspiration_method, reference_evapotranspiration
from generator.season.water.penman import Weather, clear_sky, monthly_penman_monteith, penman_monteith, saturation_kpa, sun_from_sunshine
from generator.units import from_si, to_si, unit
from tests.season.seattle import SEATTLE_LATITUDE, seattle_days
from tests.season.shipped import climates, made_up, places, rules

SUNNY = sorted(name for name, climate in climates().items() if climate.sunshine_h_per_day is not None)
PANS = sorted(name for name in SUNNY if places()[name].normals.pan_evaporation_mm_per_day is not None)


@pytest.mark.parametrize(
    ("latitude", "elevation", "day", "low", "high", "wind", "damp", "dry", "solar"),
    # Weather chosen for this test: a mild June day in England, a hot August day on the plains, a cold one on high ground.
    [
        (51.5, 25, 166, 11.0, 20.5, 2.5, 88, 52, 18.9),
        (39.0, 300, 227, 18.0, 31.5, 2.0, 90, 45, 21.5),
        (-30.5, 987, 196, 0.0, 13.0, 2.0, 85, 50, 13.0),
    ],
)
def test_single_days_agree_with_pyet(latitude, elevation, day, low, high, wind, damp, dry, solar):
    when = pandas.DatetimeIndex([date(2023, 1, 1) + pandas.Timedelta(days=day - 1)])
    vapour = (saturation_kpa(low) * damp + saturation_kpa(high) * dry) / 200
    theirs = pyet.pm_fao56(
        *(pandas.Series([value], index=when) for value in ((low + high) / 2, wind)), rs=pandas.Series([solar], index=when),
        tmax=pandas.Series([high], index=when), tmin=pandas.Series([low], index=when), elevation=elevation, lat=radians(latitude),
        ea=pandas.Series([vapour], index=when),
    ).iloc[0]
    above = sun(latitude).extraterrestrial_radiation_mj[day - 1]
    ours = penman_monteith(Weather(low, high, vapour, solar, clear_sky(elevation, above), elevation, 0.0, wind))
    # pyet lets latent heat vary with temperature; the paper holds it at 2.45 MJ/kg.
    assert ours == pytest.approx(theirs, rel=0.015)


def test_a_real_series_agrees_with_pyet_to_one_per_cent(capsys):
    # Temperatures of Seattle, 2012 to 2015; humidity from the minimum and sun from the daily range, as FAO-56 does without
    # records of them (equations 48 and 50), the same on both sides.
    days = [each for each in seattle_days() if each[0].timetuple().tm_yday <= 365 and each[1] < each[2]]
    index = pandas.DatetimeIndex([when for when, _, _ in days])
    low, high = (pandas.Series([each[k] for each in days], index=index) for k in (1, 2))
    of_day = sun(SEATTLE_LATITUDE).extraterrestrial_radiation_mj
    above = pandas.Series([of_day[when.timetuple().tm_yday - 1] for when, _, _ in days], index=index)
    solar = above * [0.16 * sqrt(high - low) for _, low, high in days]
    vapour = low.map(saturation_kpa)
    theirs = pyet.pm_fao56(
        (low + high) / 2, pandas.Series(2.0, index=index), rs=solar, tmax=high, tmin=low, ea=vapour, elevation=113,
        lat=radians(SEATTLE_LATITUDE),
    )
    ours = [
        penman_monteith(Weather(low[when], high[when], vapour[when], solar[when], clear_sky(113, above[when]), 113))
        for when in index
    ]
    with capsys.disabled():
        print(f" Penman-Monteith, Seattle 2012-2015: this {sum(ours):.0f} mm, pyet {theirs.sum():.0f} mm ", end="")
    assert sum(ours) == pytest.approx(theirs.sum(), rel=0.01)
    assert len(ours) > 1400


def test_no_daylight_brings_no_sun_and_no_trouble():
    assert sun_from_sunshine(0.0, 0.0, 0.0) == 0.0
    polar = made_up(-10, -20, latitude=80, sunshine_h_per_day=(0.0,) * 2 + (4.0,) + (6.0,) * 6 + (1.0,) + (0.0,) * 2)
    assert all(value >= 0 for value in monthly_penman_monteith(polar))


def test_without_sunshine_it_refuses_in_words():
    with pytest.raises(ValueError, match="no hours of sunshine; use the Hargreaves"):
        monthly_penman_monteith(made_up(25, 12))


@pytest.mark.parametrize("name", SUNNY)
def test_the_days_of_a_month_keep_its_mean(name):
    daily = reference_evapotranspiration(climates()[name], OPEN, rules().soil)
    assert monthly_means(daily) == pytest.approx(monthly_penman_monteith(climates()[name]), abs=1e-6)


def test_the_season_says_by_which_method():
    method = {name: evapotranspiration_method(climate) for name, climate in climates().items()}
    assert method["sydney"].id == "penman-monteith" and any("2 m/s" in each for each in method["sydney"].assumed)
    assert any("15:00" in each for each in method["sydney"].assumed)
    assert any("dew point" in each for each in method["london-heathrow"].assumed)
    assert any("sea level" in each for each in method["adelaide"].assumed)
    assert not any("sea level" in each for each in method["sydney"].assumed)
    # Nine of twelve months of sunshine are no year of it.
    assert method["canberra"].id == method["chicago"].id == "hargreaves-samani"


def kp_green(wind_m_per_s: float, humidity_percent: float, fetch_m: float) -> float:
    """Pan coefficient of a Class A pan among short green crop: FAO-56 table 7, as written in CRAN package FAO56 1.0."""
    return (
        0.108 - 0.0286 * wind_m_per_s + 0.0422 * log(fetch_m) + 0.1434 * log(humidity_percent)
        - 0.000631 * log(fetch_m) ** 2 * log(humidity_percent)
    )


def test_water_in_pans_against_the_reference(capsys):
    # FAO-56 chapter 4: reference = pan coefficient x pan evaporation. The pan is warmed through its walls and stands in drier
    # air than the grass, so it gives off more. Its coefficient in the table's own range of humidity (30 to 84 %) and fetch
    # (1 to 1000 m), at the wind of 2 m/s that is assumed here: from 0.54 to 0.84.
    lowest, highest = kp_green(2, 30, 1), kp_green(2, 84, 1000)
    assert (lowest, highest) == (pytest.approx(0.54, abs=0.005), pytest.approx(0.84, abs=0.005))
    ratio, months = {}, []
    for name in PANS:
        pan = places()[name].normals.pan_evaporation_mm_per_day
        reference = monthly_penman_monteith(climates()[name])
        ratio[name] = sum(reference) / sum(pan)
        months += [one / other for one, other in zip(reference, pan)]
    inside = fmean(lowest <= value <= highest for value in months)
    with capsys.disabled():
        print(
            f" reference / pan evaporation, year: {', '.join(f'{name} {value:.2f}' for name, value in ratio.items())}; "
            f"{inside:.0%} of {len(months)} months within the pan coefficient's {lowest:.2f} to {highest:.2f} ", end="",
        )
    assert len(ratio) >= 9
    assert all(lowest <= value <= highest for value in ratio.values())
    assert inside >= 0.9


def test_pans_follow_the_reference_through_the_year_better_than_its_mean(capsys):
    # A reference that only knew the place's yearly mean would miss a pan's months by their spread.
    for name in PANS:
        pan = places()[name].normals.pan_evaporation_mm_per_day
        reference = monthly_penman_monteith(climates()[name])
        scale = sum(pan) / sum(reference)
        missed = fmean(abs(scale * one - other) for one, other in zip(reference, pan))
        assert missed < 0.5 * fmean(abs(fmean(pan) - other) for other in pan), name


def test_dry_air_takes_more_water():
    damp = climates()["sydney"]
    dry = replace(damp, relative_humidity_3pm_percent=tuple(value - 20 for value in damp.relative_humidity_3pm_percent))
    assert all(one < other for one, other in zip(monthly_penman_monteith(damp), monthly_penman_monteith(dry)))


@pytest.mark.parametrize(
    ("low", "high", "damp", "dry", "printed", "above"),
    # FAO-56 examples 5 and 18: both humidities of the day, and the vapour pressure the paper finds from them.
    [(18.0, 25.0, 82, 54, 1.70, 0.01), (12.3, 21.5, 84, 63, 1.409, 0.15)],
)
def test_what_the_afternoon_alone_says_of_the_water_in_the_air(low, high, damp, dry, printed, above):
    # The paper means dawn and afternoon; without dawn, the afternoon stands for both, and these are its errors there.
    both = (saturation_kpa(low) * damp + saturation_kpa(high) * dry) / 200
    assert both == pytest.approx(printed, abs=0.005)
    alone = from_si(
        EQUATIONS["actual-vapour-pressure"].evaluate(
            relative_humidity=dry / 100, saturation_vapour_pressure=to_si(saturation_kpa(high), unit("kPa"))
        ), unit("kPa"),
    )
    assert alone / both - 1 == pytest.approx(above, abs=0.005)
