"""Frost nights against the record, and what the chance of any frost means."""

from dataclasses import replace
from datetime import date
from itertools import pairwise
from statistics import fmean, median, pstdev, stdev

import pytest

from generator.season.calendar_days import DAYS, day_words
from generator.season.climate.climate import OPEN
from generator.season.climate.daily_curve import daily_curve
from generator.season.climate.frost import Frost, KindOfYear, frost
from generator.season.climate.frost_margin import night_to_night
from tests.season.frost_stations import halves, stations, yearly_range
from tests.season.seattle import seattle_days
from tests.season.shipped import COUCH, climates, made_up, rules, season


def test_the_spread_rule_is_the_least_squares_line_of_the_fitted_half():
    # Ordinary least squares of standard deviation on yearly range, months with a mean minimum up to 12 °C.
    points = [
        (yearly_range(stations()[name]), deviation)
        for name in halves()[0] for low, deviation, *_ in stations()[name] if low <= 12
    ]
    x, y = fmean(p[0] for p in points), fmean(p[1] for p in points)
    slope = sum((a - x) * (b - y) for a, b in points) / sum((a - x) ** 2 for a, _ in points)
    assert rules().frost.spread_per_range == pytest.approx(slope, abs=0.0005)
    assert rules().frost.spread_base_k == pytest.approx(y - slope * x, abs=0.005)


@pytest.mark.parametrize(("ground", "threshold"), [(False, "0 °C"), (True, "2 °C")])
def test_frost_nights_on_stations_not_fitted(ground, threshold, capsys):
    # Months with at least one frost night on record. Against it: this, always none, and the usual number of the fitted stations.
    column = 3 if ground else 2
    fitted, held = halves()
    usual = [fmean(stations()[name][month][column] for name in fitted) for month in range(12)]
    errors, none, by_usual = [], [], []
    for name in held:
        months = stations()[name]
        climate = made_up([month[0] + 12 for month in months], [month[0] for month in months])
        nights = frost(climate, OPEN, rules().soil, rules().frost, ground).nights_per_month()
        for month, figures in enumerate(months):
            if (seen := figures[column]) > 0:
                errors.append(abs(nights[month] - seen))
                none.append(seen)
                by_usual.append(abs(usual[month] - seen))
    with capsys.disabled():
        print(
            f" nights at or below {threshold} a month, {len(errors)} months of {len(held)} stations not fitted: mean absolute error "
            f"{fmean(errors):.2f}, always zero {fmean(none):.2f}, mean of the fitted stations {fmean(by_usual):.2f} ", end="",
        )
    assert fmean(errors) <= 1.5
    assert fmean(errors) < 0.5 * fmean(none)
    assert fmean(errors) < 0.5 * fmean(by_usual)


def test_frost_nights_far_from_where_the_rule_was_fitted(capsys):
    # Three English stations of the Met Office, 1991-2020, whose own counts are withheld; the rule knows Australian nights only.
    errors, none = [], []
    for name in ("london-heathrow", "oxford", "sheffield"):
        climate = climates()[name]
        nights = frost(replace(climate, frost_days=None), OPEN, rules().soil, rules().frost).nights_per_month()
        pairs = [(found, seen) for found, seen in zip(nights, climate.frost_days) if seen > 0]
        errors += [abs(found - seen) for found, seen in pairs]
        none += [seen for _, seen in pairs]
    with capsys.disabled():
        print(
            f" frost nights a month in England, {len(errors)} months: mean absolute error {fmean(errors):.2f}, "
            f"always zero {fmean(none):.2f} ", end="",
        )
    assert fmean(errors) <= 1.5 and fmean(errors) < 0.5 * fmean(none)


@pytest.mark.parametrize("name", [name for name, climate in climates().items() if climate.frost_days is not None])
def test_published_frost_nights_are_matched(name):
    # Printed to 0.1, so a printed 0.0 is anything under 0.05.
    nights = frost(climates()[name], OPEN, rules().soil, rules().frost).nights_per_month()
    assert nights == pytest.approx(climates()[name].frost_days, abs=0.06)


def test_ground_frost_is_never_rarer_than_air_frost():
    for name, climate in climates().items():
        air, ground = (frost(climate, OPEN, rules().soil, rules().frost, ground=flag) for flag in (False, True))
        assert all(g >= a - 1e-9 for a, g in zip(air.nights_per_month(), ground.nights_per_month())), name


def test_a_hollow_has_more_frost_and_a_wall_less():
    nights = {site: sum(season(COUCH, "canberra", site).weather.air_frost.nights_per_month()) for site in ("hollow", "open", "wall")}
    assert nights["hollow"] > nights["open"] > nights["wall"]


def test_no_frost_in_the_tropics():
    year = season(COUCH, "darwin")
    assert max(year.weather.air_frost.chance) < 1e-6
    assert year.weather.last_frost_day(0.1) is None and year.weather.first_frost_day(0.1) is None


def every_day_alike(*years: tuple[float, float, float]) -> Frost:
    return Frost(tuple(KindOfYear(share, (chance,) * DAYS, (onset,) * DAYS) for share, chance, onset in years))


def test_chance_of_any_frost_by_hand():
    # Two nights at 0.2, runs beginning with 0.1 each: 1 - exp(-(0.2 + 0.1)) = 0.2592.
    one = every_day_alike((1.0, 0.2, 0.1))
    assert one.chance_of_any(364, 2) == pytest.approx(0.2592, abs=0.0001)
    assert one.chance_of_any(10, 0) == 0
    # Half of the years like that, half without frost: half the chance.
    both = every_day_alike((0.5, 0.2, 0.1), (0.5, 0.0, 0.0))
    assert both.chance_of_any(364, 2) == pytest.approx(0.1296, abs=0.0001)
    assert both.chance[0] == pytest.approx(0.1)
    # From 1 January to a warmest day of 3 January; and from 3 January to 4 January.
    assert both.chance_after(0, 2) == pytest.approx(both.chance_of_any(0, 2))
    assert both.chance_before(3, 2) == pytest.approx(both.chance_of_any(2, 2))


def test_frost_in_runs_is_likelier_to_be_missed_than_independent_nights():
    # With correlation 0 every night begins its own run as often as chance has it: onset = p (1 - p).
    climate = climates()["canberra"]
    free = frost(climate, OPEN, rules().soil, replace(rules().frost, night_to_night=0.0, year_to_year_k=0.0))
    assert free.onset == pytest.approx([p * (1 - p) for p in free.chance], abs=0.002)
    tied = frost(climate, OPEN, rules().soil, rules().frost)
    assert all(a <= b + 1e-9 for a, b in zip(tied.onset, free.onset))


def seattle_by_month():
    return [[low for when, low, _ in seattle_days() if when.month == month] for month in range(1, 13)]


def seattle(counted: bool):
    """Seattle's four years as monthly normals, with or without its counts of frost nights."""
    months = seattle_by_month()
    highs = [fmean(high for when, _, high in seattle_days() if when.month == month) for month in range(1, 13)]
    counts = {
        "frost_days": tuple(sum(low <= 0 for low in month) / 4 for month in months),
        "cold_days_at_or_below_2c": tuple(sum(low <= 2 for low in month) / 4 for month in months),
    }
    return made_up(highs, [fmean(month) for month in months], latitude=47.45, **counts if counted else {})


def departures():
    """Each night's departure from the smooth curve of mean minima, in that month's standard deviations, and in kelvin."""
    curve = daily_curve([fmean(month) for month in seattle_by_month()])
    apart = [(when, low - curve[min(when.timetuple().tm_yday, DAYS) - 1]) for when, low, _ in seattle_days()]
    spread = [pstdev(value for when, value in apart if when.month == month) for month in range(1, 13)]
    return [(when, value, value / spread[when.month - 1]) for when, value in apart]


def tied_in_seattle() -> float:
    """Correlation of a night with the next, from the daily record."""
    return fmean(a * b for a, b in pairwise(value for _, _, value in departures()))


def test_the_ties_of_nights_and_years_are_those_of_the_daily_record():
    r = tied_in_seattle()
    assert night_to_night(seattle(counted=True), rules().frost) == pytest.approx(r, abs=0.03)
    # What seasons of three or four months differ by from year to year, beyond what tied nights alone would make of their mean:
    # variance of a mean of n nights tied by r is about s2 / n x (1 + r) / (1 - r).
    square = fmean(value * value for _, value, _ in departures())
    beyond = []
    for months in ((2, 3, 4, 5), (9, 10, 11), (12, 1, 2)):
        seasons = [[value for when, value, _ in departures() if when.month in months and when.year == year] for year in range(2012, 2016)]
        tied = square / len(seasons[0]) * (1 + r) / (1 - r)
        beyond.append(stdev(map(fmean, seasons)) ** 2 - tied)
    assert fmean(beyond) ** 0.5 == pytest.approx(rules().frost.year_to_year_k, abs=0.1)


def test_runs_of_frost_err_towards_caution(capsys):
    nights = [low <= 0 for _, low, _ in seattle_days()]
    recorded = sum(now and not before for before, now in zip([False, *nights], nights)) / 4
    found = frost(seattle(counted=True), OPEN, rules().soil, rules().frost)
    runs, independent = sum(found.onset), sum(p * (1 - p) for p in found.chance)
    with capsys.disabled():
        print(f" frost runs a year, Seattle: record {recorded:.1f}, this {runs:.1f}, independent nights {independent:.1f} ", end="")
    assert sum(found.nights_per_month()) == pytest.approx(sum(nights) / 4, abs=0.5)
    # Fewer runs than the record would call a late frost rarer than it is; as many as independent nights, far likelier.
    assert recorded <= runs < (recorded + independent) / 2


@pytest.mark.parametrize("counted", [True, False], ids=["with counts of frost nights", "from mean minima alone"])
def test_last_frosts_against_the_daily_record_of_seattle(counted, capsys):
    """A usual year's date lies among the four recorded (three weeks beside them where no count of frost nights is known), a careful one past them."""
    beside = 0 if counted else 21
    summer = date(2015, 7, 24).timetuple().tm_yday - 1
    for ground, mark in ((False, 0), (True, 2)):
        spring, autumn = [], []
        for year in range(2012, 2016):
            nights = [
                when.replace(year=2015) for when, low, _ in seattle_days()
                if when.year == year and low <= mark and (when.month, when.day) != (2, 29)
            ]  # fmt: skip
            cold = [when.timetuple().tm_yday - 1 for when in nights]
            spring.append(max(day for day in cold if day < summer))
            autumn.append(min(day for day in cold if day > summer))
        found = frost(seattle(counted), OPEN, rules().soil, rules().frost, ground)
        last, first = ([ask(risk, summer) for risk in (0.5, 0.1)] for ask in (found.last_day, found.first_day))
        with capsys.disabled():
            print(
                f" Seattle, last night at or below {mark} °C: recorded {', '.join(map(day_words, sorted(spring)))} "
                f"(middle {day_words(round(median(spring)))}); this {day_words(last[0])} at 50 %, {day_words(last[1])} at 10 %. "
                f"First: recorded {', '.join(map(day_words, sorted(autumn)))}; this {day_words(first[0])} at 50 %, "
                f"{day_words(first[1])} at 10 %. ", end="",
            )
        assert last[0] < last[1] < summer < first[1] < first[0]
        assert min(spring) - beside <= last[0] <= max(spring) + beside and min(autumn) - beside <= first[0] <= max(autumn) + beside
        assert last[1] >= max(spring) and first[1] <= min(autumn)


@pytest.mark.parametrize("name", ["canberra", "oxford", "chicago"])
def test_counting_nights_as_independent_would_move_the_dates(name, capsys):
    # It does make a difference, so nights are not taken as independent: the even date by days, the careful one by less.
    climate, soil, known = climates()[name], rules().soil, rules().frost
    summer = season(COUCH, name).climate.hottest_day
    ours = frost(climate, OPEN, soil, known)
    free = frost(climate, OPEN, soil, replace(known, night_to_night=0.0, year_to_year_k=0.0))
    later = {risk: (free.last_day(risk, summer) - ours.last_day(risk, summer)) % DAYS for risk in (0.5, 0.1)}
    with capsys.disabled():
        print(f" {name}: independent nights would put the last frost {later[0.5]} days later at 50 %, {later[0.1]} at 10 % ", end="")
    assert 1 <= later[0.5] < DAYS // 2
    assert 0 <= later[0.1] < DAYS // 2


def test_years_that_differ_spread_the_dates():
    climate, soil = climates()["canberra"], rules().soil
    summer = season(COUCH, "canberra").climate.hottest_day

    def spread(year_to_year_k):
        found = frost(climate, OPEN, soil, replace(rules().frost, year_to_year_k=year_to_year_k))
        return (found.last_day(0.1, summer) - found.last_day(0.9, summer)) % DAYS

    assert spread(2.0) > spread(0.7) > spread(0.0)


def test_a_cold_year_has_more_frost_than_a_usual_and_a_warm_one():
    years = sorted(frost(climates()["canberra"], OPEN, rules().soil, rules().frost).years, key=lambda year: sum(year.chance))
    assert [round(year.share, 3) for year in years] == [0.167, 0.667, 0.167]
    assert sum(years[0].chance) < sum(years[1].chance) < sum(years[2].chance)


def test_chances_of_any_frost_rise_and_fall_through_the_year():
    year = season(COUCH, "canberra")
    summer = year.climate.hottest_day
    after = [year.weather.air_frost.chance_after((summer - before) % DAYS, summer) for before in range(1, 180)]
    before = [year.weather.air_frost.chance_before((summer + ahead) % DAYS, summer) for ahead in range(180)]
    assert all(one <= other + 1e-9 for one, other in pairwise(after))
    assert all(one <= other + 1e-9 for one, other in pairwise(before))
    assert after[0] < 0.01 and after[-1] > 0.99 and before[-1] > 0.99


def test_last_and_first_frost_bracket_the_summer():
    year = season(COUCH, "canberra")
    summer = year.climate.hottest_day
    last, first = year.weather.last_frost_day(0.1), year.weather.first_frost_day(0.1)
    assert (summer - last) % DAYS < DAYS // 2 and (first - summer) % DAYS < DAYS // 2
    # A smaller risk is passed later in spring and met earlier in autumn.
    assert (summer - year.weather.last_frost_day(0.5)) % DAYS > (summer - last) % DAYS
    assert (year.weather.first_frost_day(0.5) - summer) % DAYS > (first - summer) % DAYS


def one_night(night: int) -> Frost:
    """A place that freezes every year on one night, and on no other."""
    nights = tuple(float(day == night) for day in range(DAYS))
    return Frost((KindOfYear(1.0, nights, nights),))


@pytest.mark.parametrize("night", [0, 59, 212, DAYS - 1])
def test_a_frost_of_one_night_is_the_last_and_the_first_and_no_other_night_is(night: int) -> None:
    """A date that is a night out is one lawn lost: what goes down the day after is safe, the day before is not."""
    found, summer, risk = one_night(night), (night + 150) % DAYS, 0.5
    assert found.last_day(risk, summer) == night
    assert one_night(night).first_day(risk, (night - 150) % DAYS) == night
    assert found.chance_of_any(night, 1) > risk and found.chance_of_any((night - 6) % DAYS, 7) > risk
    assert found.chance_of_any((night + 1) % DAYS, DAYS - 2) == found.chance_of_any((night - 7) % DAYS, 7) == 0
