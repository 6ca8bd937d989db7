"""Many lawns at once, from jobs made up here: what is bought together, who has which machine when, and how long a day is."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from generator.calculators.calculate import Amount
from generator.jobs.amounts import Purchased, Spoil
from generator.jobs.dates import DatedStep
from generator.jobs.job import Job, JobStep, NeededGear, Request
from generator.jobs.lawn_round import Clash, LawnJob, SharedGear, WorkDay, round_of
from generator.jobs.plan_steps import StepFor
from generator.jobs.window_answer import Verdict
from generator.season.reasons import because
from generator.units import unit
from tests.jobs.made_up import a_step

DAY = date(2026, 10, 12)
VERDICT = Verdict("renovation", True, None, 0, None, because("nothing"), 0.0)


def a_line(name, kilograms, product="granule", pack_si=20.0, price=25.5, note=None):
    kilogram = unit("kg")
    return Purchased(name, product, Amount(kilograms, kilogram, unit("lb"), 1), 99, price, ("feed",), pack_si, note)


def gear(name, ahead=0, machine=None, from_where="own", book=None, more=()):
    needed = DAY + timedelta(ahead)
    days = tuple(DAY + timedelta(each) for each in (ahead, *more))
    return NeededGear(name, machine, days, from_where, needed, book and needed - timedelta(book), needed - timedelta(1), None, ("core",))


def work(ahead, minutes, who="hands"):
    on = DAY + timedelta(ahead)
    dated = DatedStep(StepFor(a_step(who=who), "day", None, ()), on, on, None)
    return JobStep(dated, (), (), 1, minutes, "growing", 0.0, 20.0)


def lawn(client, on=0, area_m2=100.0, shopping=(), things=(), steps=(), **named):
    request = Request(area_m2, DAY + timedelta(on))
    return LawnJob(client, named, Job(request, (), VERDICT, (), tuple(steps), (), tuple(shopping), tuple(things), Spoil(0, None, None), (), None))


def test_jobs_stand_by_day_then_client_then_lawn_then_area():
    jobs = [
        lawn("TL-2", grass="couch"), lawn("TL-1", on=3, grass="couch"), lawn("TL-1", grass="kikuyu"), lawn("TL-1", grass="couch", area_m2=90),
        lawn("TL-1", grass="couch", area_m2=20),
    ]
    for order in (jobs, jobs[::-1]):
        found = [(each.job.request.on - DAY, each.client, each.lawn["grass"], each.job.request.area_m2) for each in round_of(order).jobs]
        assert [(on.days, *more) for on, *more in found] == [
            (0, "TL-1", "couch", 20), (0, "TL-1", "couch", 90), (0, "TL-1", "kikuyu", 100), (0, "TL-2", "couch", 100), (3, "TL-1", "couch", 100),
        ]


def test_three_half_bags_are_two_bags():
    (line,) = round_of([lawn(f"TL-{number}", shopping=[a_line("Granule", 10.0)]) for number in range(3)]).shopping
    assert (line.amount.si, line.packs, line.cost, line.name, line.product, line.price_each) == (30, 2, 51, "Granule", "granule", 25.5)
    assert (line.amount.unit, line.amount.us_unit, line.amount.decimals) == (unit("kg"), unit("lb"), 1)
    assert (line.pack_si, line.note, line.steps) == (20, None, ("feed",))


def test_full_bags_stay_full_and_a_little_more_is_one_more():
    packs = [round_of([lawn("TL-1", shopping=[a_line("Granule", kilograms)])]).shopping[0].packs for kilograms in (60.0, 60 + 1e-10, 60.01)]
    assert packs == [3, 3, 4]


def test_each_thing_bought_is_its_own_line_in_one_order():
    """What has no product is told apart by its name and by why it has none."""
    seed, lime = ({"product": None, "pack_si": None, "price": None, "note": note} for note in ("No product for Couch.", "No product."))
    lines = [a_line("Sow", 2.0, **seed), a_line("Lime", 3.0, **lime), a_line("Sow", 4.0, **lime), a_line("Sand", 5.0, "sand")]
    first, second = lawn("TL-1", shopping=lines), lawn("TL-2", shopping=lines[:1])
    found = round_of([first, second]).shopping
    assert sorted((line.name, line.amount.si, line.packs, line.note) for line in found) == [
        ("Lime", 3, None, "No product."), ("Sand", 5, 1, None), ("Sow", 4, None, "No product for Couch."), ("Sow", 4, None, "No product."),
    ]
    backwards = lawn("TL-1", shopping=lines[::-1])
    assert round_of([backwards, second]).shopping == found


def test_gear_of_several_lawns_is_booked_for_the_first_that_needs_it():
    jobs = [
        lawn("TL-2", on=4, things=[gear("Corer", 4, "corer", "hire", book=14, more=(6,)), gear("Rake", 4)]),
        lawn("TL-1", things=[gear("Corer", 0, "corer", "hire", book=3)]),
    ]
    # Booked three days before the 12th is the 9th, fourteen before the 16th is the 2nd.
    assert {each.name: each for each in round_of(jobs).gear} == {
        "Corer": SharedGear(
            "Corer", "corer", "hire", date(2026, 10, 2), ((DAY, "TL-1"), (DAY + timedelta(4), "TL-2"), (DAY + timedelta(6), "TL-2")),
        ),
        "Rake": SharedGear("Rake", None, "own", None, ((DAY + timedelta(4), "TL-2"),)),
    }


def test_one_machine_under_two_names_is_one_and_things_without_one_are_told_by_name():
    jobs = [lawn("TL-1", things=[gear("Corer", 0, "corer"), gear("Rake")]), lawn("TL-2", things=[gear("Hollow corer", 1, "corer"), gear("Broom")])]
    assert [(each.name, len(each.uses)) for each in round_of(jobs).gear] == [("Broom", 1), ("Rake", 1), ("Corer", 2)]


def test_a_machine_that_two_lawns_want_on_a_day_clashes_and_a_rake_does_not():
    jobs = [
        lawn("TL-2", things=[gear("Roller", 5, "roller", "borrow"), gear("Corer", 5, "corer", "hire"), gear("Mower", 0, "mower"), gear("Rake")]),
        lawn("TL-1", things=[gear("Roller", 5, "roller", "borrow"), gear("Corer", 5, "corer", "hire"), gear("Mower", 2, "mower"), gear("Rake")]),
        lawn("TL-3", things=[gear("Corer", 1, "corer", "hire", more=(5,)), gear("Mower", 2, "mower")]),
    ]
    second, fifth = DAY + timedelta(2), DAY + timedelta(5)
    assert round_of(jobs).clashes == (
        Clash("Mower", "own", second, ("TL-1", "TL-3")), Clash("Corer", "hire", fifth, ("TL-1", "TL-2", "TL-3")),
        Clash("Roller", "borrow", fifth, ("TL-1", "TL-2")),
    )


def test_one_lawn_twice_on_a_day_does_not_clash_with_itself():
    twice = lawn("TL-1", things=[gear("Corer", 0, "corer", more=(0,))])
    assert round_of([twice]).clashes == ()


def test_a_day_holds_the_work_of_all_its_lawns():
    jobs = [
        lawn("TL-2", steps=[work(0, 30.0), work(0, 12.5), work(3, None)]),
        lawn("TL-1", steps=[work(0, 20.0), work(1, 45.0, who="client"), work(1, 10.0, who="office"), work(-2, 5.0)]),
    ]
    assert round_of(jobs).days == (
        WorkDay(DAY - timedelta(2), ("TL-1",), 5), WorkDay(DAY, ("TL-1", "TL-2"), pytest.approx(62.5)), WorkDay(DAY + timedelta(3), ("TL-2",), 0),
    )


def test_work_falls_on_the_day_it_is_done_rather_than_on_the_planned_one():
    late = work(2, 30.0)
    moved = replace(late, dated=replace(late.dated, planned=DAY))
    assert [day.day for day in round_of([lawn("TL-1", steps=[moved])]).days] == [DAY + timedelta(2)]
