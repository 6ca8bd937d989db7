"""Sun and evaporation against an independent library, and water need by hand."""

from datetime import date, timedelta
from math import radians

import pandas
import pyet
import pytest

from generator.turf.calendar_days import DAYS, monthly_means
from generator.turf.climate import OPEN
from generator.turf.equations import EQUATIONS
from generator.turf.water import effective_rain, reference_evapotranspiration, sun, water_need
from generator.units import from_si, unit
from tests.turf.shipped import climates, rules

# A year without a leap day, so that day numbers agree.
DATES = pandas.DatetimeIndex([date(2023, 1, 1) + timedelta(days=day) for day in range(DAYS)])


@pytest.mark.parametrize("latitude", [-54, -37.8, -20, -12.4, 0, 13.7, 33.6, 51.5, 60, 64])
def test_radiation_and_daylight_agree_with_pyet(latitude):
    # pyet's solar constant is FAO-56's 0.0820; both sides write out equation 21.
    theirs = pyet.extraterrestrial_r(DATES, radians(latitude))
    assert sun(latitude).extraterrestrial_radiation_mj == pytest.approx(list(theirs), rel=0.005, abs=0.02)
    assert sun(latitude).daylight_h == pytest.approx(list(pyet.daylight_hours(DATES, radians(latitude))), abs=0.05)


@pytest.mark.parametrize(
    ("latitude", "day", "printed"),
    # FAO-56 table 2.6 style values by equation 21, computed with pyet 1.5.0.
    [(50, 196, 40.21), (50, 15, 8.89), (30, 105, 36.84), (0, 74, 37.91), (-20, 288, 38.59), (-40, 15, 43.35), (54, 349, 5.22)],
)
def test_radiation_of_single_days(latitude, day, printed):
    assert sun(latitude).extraterrestrial_radiation_mj[day - 1] == pytest.approx(printed, abs=0.06)


def test_polar_night_and_midnight_sun_have_an_answer():
    north = sun(75)
    assert min(north.extraterrestrial_radiation_mj) == 0
    assert (min(north.daylight_h), max(north.daylight_h)) == (0, 24)


@pytest.mark.parametrize(
    ("latitude", "low", "high", "day"), [(45.72, 14.8, 26.6, 196), (-35.3, 0.3, 12.4, 196), (-12.4, 25.3, 34.0, 288), (60, 5, 14, 120)]
)
def test_hargreaves_agrees_with_pyet(latitude, low, high, day):
    # method=0 is FAO-56 equation 52; pyet computes latent heat by temperature, within 1.5 % of the paper's 2.45 MJ/kg.
    series = [pandas.Series([value], index=DATES[day - 1 : day]) for value in ((low + high) / 2, high, low)]
    theirs = float(pyet.hargreaves(*series, radians(latitude), method=0).iloc[0])
    found = EQUATIONS["hargreaves"].evaluate(
        minimum_temperature=low + 273.15, maximum_temperature=high + 273.15,
        extraterrestrial_radiation=sun(latitude).extraterrestrial_radiation_mj[day - 1] * unit("MJ/m2/day").factor,
    )
    assert from_si(found, unit("mm/day")) == pytest.approx(theirs, rel=0.015)


def test_a_shaded_lawn_evaporates_its_share():
    climate, soil = climates()["melbourne"], rules().soil
    shade = rules().sites["shade"]
    opened = reference_evapotranspiration(climate, OPEN, soil)
    assert reference_evapotranspiration(climate, shade, soil) == pytest.approx([v * shade.evaporation_share for v in opened])


def test_effective_rain_by_hand():
    # 100 mm: 100 (125 - 20) / 125 = 84. 300 mm: 125 + 30 = 155. 0 mm: 0.
    months = (100.0, 300.0) + (0.0,) * 10
    means = monthly_means(effective_rain(months))
    assert (means[0] * 31, means[1] * 28, means[5]) == pytest.approx((84, 155, 0))


def test_effective_rain_meets_itself_where_its_two_parts_join():
    below, above = (EQUATIONS["effective-rain"].evaluate(rain=mm / 1000) for mm in (249.999, 250.001))
    assert below == pytest.approx(above, abs=1e-5)


def test_water_need_by_hand():
    # 0.6 x 5 - 1 = 2 mm; 0.6 x 1 - 2 is below nothing.
    assert water_need((5.0, 1.0), (1.0, 2.0), 0.6) == (2.0, 0.0)


def test_dry_summers_need_more_water_than_wet_ones():
    from tests.turf.shipped import COUCH, season

    summer = slice(0, 8)
    need = {name: sum(week.water_need_mm for week in season(COUCH, name).weeks[summer]) for name in ("perth", "brisbane")}
    assert need["perth"] > 2 * need["brisbane"]
