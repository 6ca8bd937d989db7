"""Task rules: what they may name, when they fall due, and what a slip in one says."""

import pytest

from generator.book.records.task import Due
from generator.formula import FormulaError
from generator.season.task_schedule import RULE_QUANTITIES, due_weeks, parse_rule, weekly_quantities
from tests.season.shipped import COUCH, FESCUE, season


def due(rule, every=1, group=None, **more):
    return Due(do_when=rule, every_weeks=every, season_group=group, say="Do it.", because="It is time.", source="assumption", **more)


def weeks(rule, grass=COUCH, place="sydney", every=1, group=None, **more):
    return [found.week for found in due_weeks(due(rule, every, group, **more), weekly_quantities(season(grass, place)))]


def test_a_window_rule_falls_due_when_the_window_opens():
    # Couch in Sydney opens in the second half of August, a week or two before its clubs and councils begin: week 34 or 35.
    (week,) = weeks("renovation_window", every=40)
    assert week in (34, 35)
    # A week is in the window when its middle is: the week of the opening itself, or the next.
    (opens,) = weeks("weeks_since_window_start == 0")
    assert week - opens in (0, 1)
    assert weeks("weeks_to_window_start > 0 and weeks_to_window_start <= 1") == [opens - 1]


def test_a_yes_or_no_may_stand_alone_or_be_denied():
    inside, outside = weeks("renovation_window"), weeks("not renovation_window")
    assert sorted(inside + outside) == list(range(1, 53))
    assert weeks("renovation_window > 0") == inside


def test_of_two_windows_the_main_one_keeps_its_task():
    # London is sown in late August or September first, in spring second.
    (week,) = weeks("overseeding_window", FESCUE, "london-heathrow", every=40)
    assert week >= 33


@pytest.mark.parametrize(("rule", "every"), [("growth_share > 0.3", 6), ("growth_share >= 0", 5), ("growth_share >= 0", 7), ("growth_share >= 0", 9)])
def test_an_interval_is_kept_over_new_year(rule, every):
    """No count of weeks here goes into 52, so what is due all year would come once too often at its turn."""
    found = weeks(rule, every=every)
    gaps = [(b - a) % 52 for a, b in zip(found, found[1:] + found[:1])]
    assert len(found) > 2 and min(gaps) >= every


def test_a_rule_of_one_group_is_silent_for_the_other():
    assert weeks("growth_share > 0", FESCUE, "london-heathrow", group="warm") == []


def test_what_not_when_says_wins():
    held = weeks("growth_share > 0.5")
    outside = weeks("growth_share > 0.5", not_when="renovation_window")
    assert outside and set(outside) == set(held) - set(weeks("renovation_window"))


def test_at_most_so_many_times_a_year_keeps_the_main_window_first():
    # London has two overseeding windows; the autumn one, in late August or September, is the main one.
    (week,) = weeks("overseeding_window", FESCUE, "london-heathrow", at_most=1)
    assert week >= 33
    found = weeks("growth_share > 0.3", every=4, at_most=3)
    assert len(found) == 3
    gaps = [(b - a) % 52 for a, b in zip(found, found[1:] + found[:1])]
    assert min(gaps) >= 4


def test_a_rule_may_ask_for_degree_days_cuts_and_frost():
    # Degree days are counted up from the coldest week: once passed, a mark stays passed until the next winter.
    passed = weeks("degree_days > 500", COUCH, "canberra")
    assert passed and len(weeks("degree_days > 500 and degree_days <= 500", COUCH, "canberra")) == 0
    # NC State mows couch weekly in summer; nothing is cut in a Canberra July.
    assert set(range(27, 31)).isdisjoint(weeks("mowing_interval <= 30", COUCH, "canberra"))
    assert weeks("weeks_to_last_frost == 0", COUCH, "canberra")[0] > 35
    assert weeks("weeks_to_last_frost >= 0", COUCH, "darwin") == []
    assert weeks("nitrogen_need > 0", COUCH, "sydney") == list(range(1, 53))


def test_without_a_window_no_count_of_weeks_holds():
    for rule in ("weeks_to_window_start <= 52 and weeks_to_window_start > 0", "weeks_since_window_start >= 0"):
        assert weeks(rule, FESCUE, "darwin") == []


def test_growth_that_never_slows_is_a_year_away_from_slowing():
    assert weeks("weeks_to_slow_down >= 52", COUCH, "darwin") == list(range(1, 53))


def test_what_the_rule_read_comes_with_the_week():
    (found,) = due_weeks(due("soil_temperature > 14 and growth_change > 0", 40), weekly_quantities(season(COUCH, "canberra")))
    assert found.read["soil_temperature"] > 14 and set(found.read) == {"soil_temperature", "growth_change"}


@pytest.mark.parametrize(
    ("rule", "offset", "says"),
    [
        ("growth_shar > 0.5", 0, "did you mean 'growth_share'?"),
        ("not renovation_window and groth_share > 1", 26, "did you mean 'growth_share'?"),
        ("growth_share", 0, "compare it with something"),
        ("month == 9", 0, "unknown name 'month'"),
    ],
)
def test_a_slip_is_told_where_it_stands(rule, offset, says):
    with pytest.raises(FormulaError) as problem:
        parse_rule(rule)
    assert problem.value.offset == offset and says in str(problem.value)


def test_every_quantity_is_described_and_given_for_every_week():
    for values in weekly_quantities(season(FESCUE, "auckland")):
        assert values.keys() == RULE_QUANTITIES.keys()
    assert all(quantity.unit and quantity.meaning for quantity in RULE_QUANTITIES.values())
    assert not any("month" in name for name in RULE_QUANTITIES)
