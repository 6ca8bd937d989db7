"""Evaporation from temperature against an independent library, and water need by hand."""

from datetime import date, timedelta
from math import radians

import pandas
import pyet
import pytest

from generator.season.calendar_days import DAYS, monthly_means
from generator.season.climate.climate import OPEN
from generator.season.climate.sun import sun
from generator.season.equations.every_equation import EQUATIONS
from generator.season.water.need import effective_rain, reference_evapotranspiration, water_need
from generator.units import from_si, unit
from tests.season.seattle import SEATTLE_LATITUDE, seattle_days
from tests.season.shipped import climates, rules

# A year without a leap day, so that day numbers agree.
DATES = pandas.DatetimeIndex([date(2023, 1, 1) + timedelta(days=day) for day in range(DAYS)])


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


def test_hargreaves_on_a_real_series_agrees_with_pyet_to_one_per_cent(capsys):
    # Seattle, 2012 to 2015. pyet divides by latent heat at the day's temperature, the paper by 2.45 MJ/kg: a cold day differs
    # by up to 2 % for that alone, so days are compared with pyet's latent heat taken out, and the four years as they come.
    days = [each for each in seattle_days() if each[0].timetuple().tm_yday <= 365 and each[1] < each[2]]
    index = pandas.DatetimeIndex([when for when, _, _ in days])
    low, high = (pandas.Series([each[k] for each in days], index=index) for k in (1, 2))
    theirs = pyet.hargreaves((low + high) / 2, high, low, radians(SEATTLE_LATITUDE), method=0)
    above = sun(SEATTLE_LATITUDE).extraterrestrial_radiation_mj
    ours = pandas.Series(
        [
            from_si(EQUATIONS["hargreaves"].evaluate(
                minimum_temperature=low + 273.15, maximum_temperature=high + 273.15,
                extraterrestrial_radiation=above[when.timetuple().tm_yday - 1] * unit("MJ/m2/day").factor,
            ), unit("mm/day"))
            for when, low, high in days
        ], index=index,
    )  # fmt: skip
    same_heat = theirs * pyet.calc_lambda((low + high) / 2) / 2.45
    with capsys.disabled():
        print(
            f" Hargreaves, Seattle 2012-2015: this {ours.sum():.0f} mm, pyet {theirs.sum():.0f} mm; days with the same latent heat "
            f"at most {(ours / same_heat - 1).abs().max():.2%} apart ", end="",
        )
    assert ours.sum() == pytest.approx(theirs.sum(), rel=0.01)
    assert list(ours) == pytest.approx(list(same_heat), rel=0.01)


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
    from tests.season.shipped import COUCH, season

    summer = slice(0, 8)
    need = {name: sum(week.water_need_mm for week in season(COUCH, name).weeks[summer]) for name in ("perth", "brisbane")}
    assert need["perth"] > 2 * need["brisbane"]
