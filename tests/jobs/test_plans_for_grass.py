"""Which plans a grass may follow, and in which words it is told why not. Plans and grasses here are made up."""

from dataclasses import replace
from datetime import date

import pytest

from generator.jobs.job import Request, work_out
from generator.jobs.plans_for_grass import NOT_NEEDED, AskedJob, job_of, plans_for, records_of, why_not
from tests.jobs.made_up import some_tasks
from tests.jobs.test_plan import PRACTICE, a_grass, a_plan, operation
from tests.our_book import book, seasons

BOOK = replace(book(), tasks={**some_tasks("core"), "cut-down": some_tasks("cut-down")["cut-down"].model_copy(update={"name": "Cutting Down"})})


def reason(plan=None, **grass):
    return why_not(BOOK, a_plan({"id": "a", "day": 0}, **(plan or {})), a_grass(**grass))


SEED_RATE = {"use": 30, "unit": "g/m2", "source": PRACTICE}


@pytest.mark.parametrize(("plan", "grass", "said"), [
    ({}, {}, None), ({"season_group": "warm"}, {}, None),
    ({"season_group": "cool"}, {}, "Example plan is for cool-season grass; Example grass is warm-season."),
    ({"habits": ["above ground", "bunch"]}, {}, None),
    ({"habits": ["below ground", "bunch"]}, {}, "Example plan is for grass that grows below ground or bunch; Example grass grows above ground."),
    ({"needs": {"cut-down": ["hard", "moderate"]}}, {"operations": {"cut-down": operation("none", "It never comes back.")}},
     "Example plan needs a grass that takes cutting down; It never comes back."),
    ({"needs": {"cut-down": ["hard", "moderate"]}}, {"operations": {"cut-down": operation("hard")}}, None),
    # A grass whose file says nothing of the task may follow it.
    ({"needs": {"cut-down": ["hard"]}}, {}, None),
    ({"takes": ["seed_rate"]}, {}, "Example plan needs a seed rate for a new lawn; the book has none for Example grass."),
    ({"takes": ["overseed_rate"]}, {}, "Example plan needs a seed rate over a living lawn; the book has none for Example grass."),
    ({"takes": ["seed_rate"]}, {"seed_rate": SEED_RATE}, None),
    ({"takes": ["seed_rate", "overseed_rate"]}, {"seed_rate": SEED_RATE}, "Example plan needs a seed rate over a living lawn; the book has none for Example grass."),
    # Of several reasons the first is told: the season before the way of growing.
    ({"season_group": "cool", "habits": ["bunch"]}, {}, "Example plan is for cool-season grass; Example grass is warm-season."),
])
def test_why_a_grass_may_not_follow_a_plan(plan, grass, said):
    assert reason(plan, **grass) == said


def test_a_grass_s_own_plan_stands_first_and_the_rest_in_the_book_s_order():
    plans = {id: a_plan({"id": "a", "day": 0}, **more) for id, more in {
        "first": {}, "cool": {"season_group": "cool"}, "example": {}, "last": {},
    }.items()}
    assert plans_for(replace(BOOK, renovations=plans), a_grass()) == ("example", "first", "last")


def test_a_job_asked_for_by_ids_is_that_of_the_book_s_records():
    request = Request(240.0, date(2026, 10, 12))
    for site in ("open", "hollow"):
        asked = AskedJob("warm-below-ground", "couch", "canberra", request, site)
        season = seasons().season("couch", "canberra", site)
        expected = work_out(request, book().renovations["warm-below-ground"], "couch", book().grasses["couch"], season, records_of(seasons()), (), book().season_groups.outside["warm"])
        assert job_of(book(), seasons(), asked) == expected
    assert AskedJob("warm-below-ground", "couch", "canberra", request).site == "open"
    assert job_of(book(), seasons(), AskedJob("warm-below-ground", "couch", "canberra", request)).verdict.frost_chance < expected.verdict.frost_chance
    with pytest.raises(KeyError):
        job_of(book(), seasons(), AskedJob("no-plan", "couch", "canberra", request))


def test_what_a_job_takes_of_the_book():
    records = records_of(seasons())
    assert (records.practice, records.groups, records.tasks, records.calculators) == (
        book().practice, book().season_groups, book().tasks, book().calculators,
    )
    cool = book().season_groups.cool
    assert records.cool_growth == (cool.growth_optimum.default, cool.growth_spread.default, False)
    assert NOT_NEEDED == "Not needed on this lawn."
