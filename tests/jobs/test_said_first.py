"""What stands before all else of a job: laws, winters, great heat; and advice for the plan's own work."""

from datetime import date

import pytest

from generator.files.job_text import job_text
from generator.files.job_values import job_values
from generator.jobs.job import Job, Request
from generator.jobs.plans_for_grass import AskedJob, job_of, plans_for
from generator.jobs.said_first import law_against
from generator.words.reason_text import text
from tests.our_book import book, seasons


def job(plan: str, grass: str, place: str, on: date) -> Job:
    return job_of(book(), seasons(), AskedJob(plan, grass, place, Request(100.0, on)))


# 7 CFR 360.200 lists Pennisetum clandestinum; Utah's rule R68-9 lists Cynodon dactylon.
@pytest.mark.parametrize(("grass", "place", "law"), [
    ("kikuyu", "atlanta", "the United States"), ("kikuyu", "san-diego", "the United States"), ("kikuyu", "sydney", None), ("kikuyu", "cape-town", "South Africa"),
    ("couch", "logan-ut", "Utah"), ("couch", "atlanta", None), ("zoysia", "atlanta", None),
])  # fmt: skip
def test_a_law_against_the_grass_is_said_with_whom_to_ask(grass: str, place: str, law: str | None) -> None:
    said = [text(each) for each in law_against(book(), grass, place)]
    assert len(said) == bool(law)
    for each in said:
        assert each.startswith(f"By law, in {law}: ") and " Ask first: " in each


def test_law_and_winter_stand_before_the_window_and_before_the_shopping_list() -> None:
    found = job("new-lawn-sprigs", "kikuyu", "atlanta", date(2027, 6, 15))
    values = job_values(found)
    assert values["first"][0].startswith("By law, in the United States: A federal noxious weed")
    assert values["first"][1].startswith("Winter kills it here") and not values["window"]["inside"]
    lines = job_text(found, "New lawn from runners", "Kikuyu", "Atlanta").splitlines()
    law = [at for at, line in enumerate(lines) if "By law, in the United States" in line]
    assert len(law) == 2 and law[0] < lines.index("Steps") and law[1] == lines.index("To buy") + 1


def test_great_heat_inside_the_window_says_what_it_means() -> None:
    """The record of Alice Springs: mean maxima of January and February 36.5 and 35.2 °C (Bureau of Meteorology)."""
    hot, mild = (job("light-renovation", "couch", "alice-springs", day) for day in (date(2027, 1, 15), date(2027, 9, 15)))
    assert hot.verdict.inside and mild.verdict.inside
    assert any("the afternoons reach 36 °C" in each for each in job_values(hot)["first"])
    advice = " ".join(job_values(hot)["window"]["what_then"])
    assert "water" in advice and "first light" in advice
    assert job_values(mild)["first"] == [] and "first light" not in " ".join(job_values(mild)["window"]["what_then"])


def test_no_plan_that_sows_or_cores_speaks_of_a_scalp_and_no_other_of_seed() -> None:
    """Advice outside a window is of the plan's own work."""
    for id, plan in book().renovations.items():
        for grass, record in book().grasses.items():
            if id not in plans_for(book(), record):
                continue
            told = " ".join(each.text for day in (date(2027, 1, 10), date(2027, 7, 10)) for each in job(id, grass, "melbourne", day).what_then).lower()
            if plan.window != "renovation" or plan.takes:
                assert "cut down" not in told and "cutting down" not in told, (id, grass)
            if not plan.takes and plan.window == "growing":
                assert "seed" not in told, (id, grass)
            break
