"""Which tasks fall due in which month, for tasks made up here: by weeks of the year, whose middle days are counted by hand."""

from dataclasses import replace

import pytest

from generator.book.records.task import Task
from generator.season.due_months import due_by_month
from generator.season.season_cache import SeasonCache
from tests.jobs.test_plan import PRACTICE, a_grass, a_plan, operation
from tests.our_book import book, seasons
from tests.season.shipped import COUCH, season

# Couch in Canberra: soil at or below so much, from its own year; every rule here is a plain comparison with a quantity of one week.
YEAR = season(COUCH, "canberra")


def a_task(name, *due):
    return Task.model_validate({
        "name": name, "summary": "Made up.", "steps": [{"text": "Do.", "source": PRACTICE}],
        "due": [{"say": "Do it.", "because": "It is time.", "source": PRACTICE, **each} for each in due],
    })


def rule(first, last):
    """True in the weeks from one to another, 1 to 52, told by the degree days that have been counted at their ends."""
    counted = [YEAR.degree_days[min(7 * week + 6, 364) if week < 51 else 364] for week in range(52)]
    return f"degree_days >= {counted[first - 1]!r} and degree_days <= {counted[last - 1]!r}"


def due(tasks, grass=None, plan=None):
    changed = replace(book(), tasks=tasks, renovations={"example": plan or a_plan({"id": "a", "day": 0})})
    return due_by_month(changed, grass or a_grass(), YEAR)


def told(months):
    return {month: [(each.name, each.when) for each in entries] for month, entries in enumerate(months, 1) if entries}


@pytest.mark.parametrize(("week", "month", "when"), [
    # Week 44 begins on 29 October, day number 301; week 45 on 5 November, 46 on the 12th, 48 on the 26th. Thirds of November end on the 10th and the 20th.
    (45, 11, "early in the month"), (46, 11, "mid month"), (47, 11, "mid month"), (48, 11, "late in the month"), (44, 10, "late in the month"),
])
def test_what_is_done_once_is_told_by_the_part_of_its_month(week, month, when):
    assert told(due({"core": a_task("Core", {"do_when": rule(week, week), "at_most": 1})})) == {month: [("Core", when)]}


@pytest.mark.parametrize(("first", "last", "every", "month", "when"), [
    # Five weeks begin in January, on the 1st, 8th, 15th, 22nd and 29th, and weeks 45 to 48 in November.
    (1, 5, 1, 1, "every week"), (1, 5, 2, 1, "every two weeks"), (1, 5, 3, 1, "2 times this month"), (1, 5, 4, 1, "2 times this month"),
    (45, 48, 1, 11, "every week"), (45, 48, 2, 11, "2 times this month"), (45, 48, 4, 11, "early in the month"), (46, 47, 1, 11, "2 times this month"),
])
def test_what_comes_again_is_told_by_how_often(first, last, every, month, when):
    assert told(due({"mow": a_task("Mow", {"do_when": rule(first, last), "every_weeks": every})})) == {month: [("Mow", when)]}


def test_a_task_the_grass_does_not_take_is_left_out():
    tasks = {"core": a_task("Core", {"do_when": rule(45, 45), "at_most": 1}), "mow": a_task("Mow", {"do_when": rule(46, 46), "at_most": 1})}
    for level, names in (("none", ["Mow"]), ("light", ["Core", "Mow"])):
        months = due(tasks, a_grass(operations={"core": operation(level)}))
        assert [each.name for each in months[10]] == names and not any(months[:10]) and not months[11]
        assert [each.task_id for each in months[10]] == [name.lower() for name in names]


def test_a_month_is_in_the_order_of_its_days_then_of_the_plan_then_of_names():
    same = {"do_when": rule(46, 46), "at_most": 1}
    tasks = {"z": a_task("Zed", same), "b": a_task("Brush", same), "a": a_task("Also", same), "core": a_task("Core", same),
             "early": a_task("Early", {"do_when": rule(45, 45), "at_most": 1})}
    plan = a_plan({"id": "one", "day": 0, "task": "core"}, {"id": "two", "day": 1, "task": "z"}, {"id": "three", "day": 2})
    assert [each.name for each in due(tasks, plan=plan)[10]] == ["Early", "Core", "Zed", "Also", "Brush"]


def test_of_two_rhythms_in_a_month_the_one_that_fills_more_of_it_stands():
    """Every week for three weeks are three weeks; every two weeks, twice, are four."""
    weekly, fortnightly = {"do_when": rule(45, 47), "say": "Weekly."}, {"do_when": rule(45, 48), "every_weeks": 2, "say": "Every other week."}
    for order in ([weekly, fortnightly], [fortnightly, weekly]):
        (found,) = due({"mow": a_task("Mow", *order)})[10]
        assert (found.due.say, found.when) == ("Every other week.", "2 times this month")
    # As long as each other: the first that the task names.
    four = {"do_when": rule(45, 48), "say": "Weekly."}
    for order in ([four, fortnightly], [fortnightly, four]):
        assert due({"mow": a_task("Mow", *order)})[10][0].due.say == order[0]["say"]


def test_what_is_no_rhythm_stands_beside_the_rhythm():
    once, weekly = {"do_when": rule(46, 46), "at_most": 1, "say": "Once."}, {"do_when": rule(45, 48), "say": "Weekly."}
    found = due({"mow": a_task("Mow", weekly, once)})[10]
    assert sorted((each.due.say, each.when) for each in found) == [("Once.", "mid month"), ("Weekly.", "every week")]


def test_the_book_s_own_months_are_worked_out_once():
    cache = SeasonCache(book())
    found = cache.due("couch", "canberra")
    assert found is cache.due("couch", "canberra") and len(found) == 12
    assert found == due_by_month(book(), book().grasses["couch"], seasons().season("couch", "canberra"))
    assert cache.due("couch", "darwin") != found and cache.due("kikuyu", "canberra") != found
    # Couch is mown in summer and not in a Canberra July (common practice).
    assert "mow" in [each.task_id for each in found[0]] and "mow" not in [each.task_id for each in found[6]]


def test_the_sites_begin_with_the_open_station_and_places_keep_their_order():
    cache = SeasonCache(book())
    assert cache.sites[0] == "open" and set(cache.sites) == set(cache.rules.sites)
    assert list(cache.sites[1:]) == [name for name in cache.rules.sites if name != "open"]
    wanted = book().practice.calendar_places
    assert cache.calendar_places == tuple(id for id in book().places if id in wanted) and len(cache.calendar_places) == len(wanted)
    every = SeasonCache(replace(book(), practice=book().practice.model_copy(update={"calendar_places": None})))
    assert every.calendar_places == tuple(book().offered_places)
    assert cache.season("couch", "canberra").weather.site.id == "open" and cache.season("couch", "canberra", "hollow").weather.site.id == "hollow"
    assert cache.season("couch", "canberra").grass.id == "couch"
    with pytest.raises(KeyError):
        cache.season("couch", "nowhere")
