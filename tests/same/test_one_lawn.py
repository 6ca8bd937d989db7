"""One lawn, one number: what the job, its lists, its price, its text, the guide and the calculators say of random lawns.

The sums of the second half are geometry and arithmetic by hand, from what was measured and what stands in the practice's file.
"""

import json
import random
from collections import Counter, defaultdict
from dataclasses import replace
from datetime import date, timedelta
from math import ceil, pi

import pytest

from generator.book.records.renovation import Renovation
from generator.calculators.bindings import bound_value
from generator.calculators.calculate import calculate
from generator.calculators.chosen import Chosen
from generator.field.inspection_plan import adjusted_by
from generator.field.inspection_result import findings_of
from generator.files.job_text import amount_words, job_csv, job_text
from generator.files.job_values import job_values
from generator.jobs.job import Job, Request, work_out
from generator.jobs.plans_for_grass import plans_for, records_of
from generator.site.page_context import PageContext
from generator.site.pages.calculator.view import amount_words as page_words
from generator.site.pages.guide.view import guide_page
from generator.units import from_si, to_si, unit
from tests.our_book import book, seasons

LAWNS = 200
PLACES = ("canberra", "perth", "darwin", "atlanta", "sheffield")  # What a lawn takes hangs on no place; its dates do.
MEASURES = {"thatch-depth": (1, 60, "mm"), "sprinkler-rate": (3, 60, "mm/h"), "sprinkler-evenness": (20, 95, "%")}


class Lawn:
    """A lawn by chance: any grass and plan, place, area, machine, soil, thatch and sprinklers, measured or not."""

    def __init__(self, seed: int) -> None:
        draw = random.Random(seed)
        self.grass = draw.choice(sorted(book().grasses))
        self.plan = book().renovations[draw.choice(plans_for(book(), book().grasses[self.grass]))]
        self.area_m2 = round(draw.uniform(8, 3000), 1)
        answers = {name: f"{draw.uniform(low, high):.1f} {of}" for name, (low, high, of) in MEASURES.items() if draw.random() < 0.7}
        answers["soil-type"] = draw.choice(("sand", "loam", "clay"))
        self.found = findings_of(book().inspection, answers)
        on_need = [step.id for step in self.plan.steps if step.only_where]
        chosen = draw.sample(on_need, k=draw.randrange(len(on_need) + 1))
        practice = book().practice
        machines = {
            **practice.machines,
            "corer": practice.machines["corer"].model_copy(update={
                "tine_diameter_mm": draw.choice((9.5, 13, 19)), "hole_spacing_along_mm": draw.randrange(50, 180), "hole_depth_mm": draw.randrange(40, 90),
            }),
        }
        self.practice = practice.model_copy(update={"machines": machines})
        request = Request(self.area_m2, date(2027, 1, 1) + timedelta(draw.randrange(365)), adjusted=adjusted_by(book(), self.found, {}, chosen))
        season = seasons().season(self.grass, draw.choice(PLACES))
        self.job: Job = work_out(request, self.plan, self.grass, book().grasses[self.grass], season, replace(records_of(seasons()), practice=self.practice))
        self.values = json.loads(json.dumps(job_values(self.job)))

    def measured(self, question: str, wanted: str, otherwise: float) -> float:
        found = self.found.measured.get(question)
        return otherwise if found is None else from_si(found, unit(wanted))

    def counted(self) -> list[dict]:
        return [step for step in self.values["steps"] if step["counted"]]


@pytest.fixture(scope="module")
def lawns() -> list[Lawn]:
    return [Lawn(seed) for seed in range(LAWNS)]


def si(amount: dict) -> float:
    return to_si(amount["value"], unit(amount["unit"]))


def close(value: float):
    return pytest.approx(value, rel=1e-9, abs=1e-12)


def test_a_step_says_what_its_calculator_says_of_the_same_figures(lawns):
    """Typed into the calculator as a reader would, with their units, the step's figures give the step's answers."""
    for lawn in lawns:
        for step in lawn.values["steps"]:
            for each in step["quantities"]:
                typed = {name: f"{amount['value']} {amount['unit']}" for name, amount in each["inputs"].items() if not isinstance(amount["value"], list)}
                again = calculate(book().calculators[each["calculator"]], typed).results
                for name, amount in each["results"].items():
                    assert again[name].si == close(si(amount)), (step["id"], each["calculator"], name)


def test_lists_and_price_hold_what_the_steps_that_count_hold_and_no_more(lawns):
    left_open = 0
    for lawn in lawns:
        kept = {step.id: step for step in lawn.plan.steps}
        bought, away = defaultdict(float), 0.0
        for step in lawn.counted():
            for quantity, each in zip(kept[step["id"]].quantities if step["id"] in kept else (), step["quantities"], strict=False):
                if quantity.buy and quantity.buy.result in each["results"]:
                    bought[step["id"]] += si(each["results"][quantity.buy.result])
                if quantity.spoil and quantity.spoil in each["results"]:
                    away += si(each["results"][quantity.spoil])
        for line in lawn.values["shopping"]:
            steps = set(line["steps"])
            assert steps <= {step["id"] for step in lawn.counted()}
            if not any(len([q for q in kept[id].quantities if q.buy]) > 1 for id in steps):
                assert si(line["amount"]) == close(sum(bought[id] for id in steps))
        assert lawn.values["spoil_m3"] == close(away)
        spoil_line = [line["amount"] for line in (lawn.values["cost"] or {"lines": ()})["lines"] if line["kind"] == "spoil"]
        assert spoil_line == ([pytest.approx(away * lawn.practice.spoil_price_per_m3, abs=0.006)] if away else [])
        left_open += sum(not step["counted"] for step in lawn.values["steps"])
    assert left_open > LAWNS, "no lawn had a step left open"


def test_cores_sand_and_spoil_are_those_of_the_holes_that_the_machine_makes(lawns):
    """Holes by their spacing and passes; a cylinder each; sand at 1600 kg/m3; cores half as loose again as they lay (the calculator's own start)."""
    cored = 0
    for lawn in lawns:
        corer = lawn.practice.machines["corer"]
        for step in lawn.values["steps"]:
            for each in step["quantities"]:
                if each["calculator"] not in ("coring", "core-removal"):
                    continue
                wanted = each["inputs"]["target_holes"]["value"]
                in_one_pass = 1e6 / (corer.hole_spacing_along_mm * corer.hole_spacing_across_mm)
                passes = max(1, ceil(wanted / in_one_pass - 1e-9))
                if each["calculator"] == "coring":
                    assert step["passes"] == passes and each["results"]["passes_for_holes"]["value"] == passes
                    continue
                holes_m3 = lawn.area_m2 * in_one_pass * passes * pi * corer.tine_diameter_mm**2 / 4 * corer.hole_depth_mm / 1e9
                assert si(each["results"]["sand_mass"]) == close(holes_m3 * 1600)
                assert si(each["results"]["loose_volume"]) == close(holes_m3 * 1.5)
                cored += 1
    assert cored > 20


def test_water_is_what_sprinklers_as_uneven_as_these_take_wherever_it_is_said(lawns):
    """Depth on the driest quarter over the evenness is the mean depth; a millimetre on a square metre is a litre."""
    watered = 0
    for lawn in lawns:
        even, rate = lawn.measured("sprinkler-evenness", "%", 70) / 100, lawn.measured("sprinkler-rate", "mm/h", 15)
        total = 0.0
        for step in lawn.values["steps"]:
            for day in step["watering"]:
                assert day["litres"] == close(day["depth_mm"] / even * lawn.area_m2)
                total += day["litres"]
                watered += 1
            for each in step["quantities"]:
                if each["calculator"] == "irrigation-run-time":
                    depth = each["inputs"]["depth"]["value"]
                    assert each["results"]["run_time"]["value"] == close(depth / rate / even * 60)
                    assert each["results"]["water"]["value"] == close(depth / even * lawn.area_m2)
        assert lawn.values["water"]["litres"] == pytest.approx(total, rel=1e-9)
        typed = {"area": f"{lawn.area_m2} m2", "depth": "10 mm", "uniformity": f"{even * 100!r} %"}
        plain = calculate(book().calculators["water-for-depth"], typed).results["water"].si
        assert calculate(book().calculators["watering-cost"], typed).results["water"].si == close(plain)
        assert calculate(book().calculators["tank-days"], typed).results["water"].si == close(plain)
        run_time = calculate(book().calculators["irrigation-run-time"], typed).results
        assert run_time["water"].si == close(plain) and run_time["even_water"].si == close(plain * even)
    assert watered > LAWNS


def test_thatch_that_was_measured_is_the_thatch_that_is_raked_up(lawns):
    """Area times depth times the share of blades is what is cut out; five times that lies on the lawn (the calculator's own start).

    Blades reach 25 mm (University of California); what lies deeper stays.
    """
    measured = 0
    for lawn in lawns:
        for step in lawn.values["steps"]:
            for each in step["quantities"]:
                if each["calculator"] != "scarifying-passes" or (step["id"] == "thin" and step["task"] == "vertical-mow"):
                    continue
                thatch_mm = each["inputs"]["thatch_depth"]["value"]
                if "thatch-depth" in lawn.found.measured:
                    assert thatch_mm == close(lawn.measured("thatch-depth", "mm", 0))
                    measured += 1
                share = 1 - (1 - each["inputs"]["blade_width"]["value"] / each["inputs"]["blade_spacing"]["value"]) ** step["passes"]
                assert si(each["results"]["loose_volume"]) == close(lawn.area_m2 * min(thatch_mm, 25) / 1000 * share * 5)
    assert measured > 5


def test_time_and_price_follow_the_passes(lawns):
    """Width less overlap, speed and the share of the time spent working; the list's price for each pass, with the least price for a day.

    The practice sends two people: what they share at the pace of two takes what it says, and at the pace of one half of it.
    """
    for lawn in lawns:
        often: dict[str, Counter] = defaultdict(Counter)
        for step in lawn.values["steps"]:
            operation = lawn.practice.operations.get(step["task"] or "")
            if step["counted"] and step["who"] == "hands" and operation and operation.charged_in_jobs:
                often[step["task"]][step["date"]] += step["passes"]
            machine = lawn.practice.machines.get(operation.machine) if operation and operation.machine else None
            if step["id"] not in lawn.practice.hand_work and machine and machine.working_width_m and machine.speed_km_per_h:
                per_hour = machine.working_width_m * (1 - (machine.overlap_percent or 0) / 100) * machine.speed_km_per_h * 1000 * (machine.efficiency_percent or 70) / 100
                working = lawn.area_m2 * step["passes"] / per_hour * 60
                shared = working * machine.pace_of_people / 2 if operation.hands == "shared" else working
                assert step["minutes"] == close(shared + (operation.setup_minutes or 0)), step["id"]
        lines = {line["name"]: line for line in (lawn.values["cost"] or {"lines": ()})["lines"] if line["kind"] == "work"}
        for task, days in often.items():
            operation = lawn.practice.operations[task]
            asked = sum(max((operation.price_per_100_m2 or 0) / 100 * lawn.area_m2 * passes, operation.minimum_price or 0) for passes in days.values())
            line = lines.pop(book().tasks[task].name)
            assert (line["times"], line["amount"]) == (sum(days.values()), pytest.approx(asked, abs=0.006)), task
        assert not lines


def test_text_and_table_say_the_same_amounts(lawns):
    for lawn in lawns[:40]:
        text = " ".join(job_text(lawn.job, "Plan", "Grass", "Place").split())
        table = " ".join(job_csv(lawn.job).split())
        for line in lawn.job.shopping:
            assert f"{line.name}: {amount_words(line.amount)}" in text
        for step in lawn.job.steps:
            for each in step.worked:
                if each.quantity.buy and each.quantity.buy.result in each.results:
                    said = amount_words(each.results[each.quantity.buy.result])
                    assert said in text and said in table, (step.id, said)


def test_a_guide_says_what_a_job_of_its_grass_says():
    """A guide has no lawn: it shows the calculator's own area of 100 m2, as a job on 100 m2 does."""
    compared = 0
    for grass, record in book().grasses.items():
        context = guide_page(book(), grass, PageContext(book(), f"renovate/{grass}", date(2027, 1, 1)), {}).context
        request, season = Request(100.0, date(2027, 1, 1)), seasons().season(grass, "sydney")
        job = work_out(request, book().renovations[record.renovation], grass, record, season, records_of(seasons()))
        shown = [each for stage in context["stages"] for step in stage["steps"] for each in step["calculators"]]
        worked = [quantity for each in job.steps for quantity in each.worked]
        assert sorted(each["calculator"] for each in shown) == sorted(each.quantity.calculator for each in worked)
        of_job = {(each.quantity.calculator, name): set() for each in worked for name in each.results}
        for each in worked:
            for name, amount in each.results.items():
                of_job[each.quantity.calculator, name].add(page_words(amount, amount.unit))
        for each in shown:
            area = next((field["value"] for field in (*each["fields"], *each["more"]) if field["name"] == "area"), "100")
            if area != "100":
                continue
            for result in each["results"]:
                said = of_job.get((each["calculator"], result["name"]))
                if said and result["metric"]:
                    assert result["metric"] in said, (grass, each["calculator"], result["name"])
                    compared += 1
    assert compared > 500


def test_a_clients_sheet_waters_as_deep_as_the_job_it_follows():
    """On each day of a stretch that tells a depth, the plan's own watering is among the depths told."""
    def depth_mm(expression: str, plan: Renovation | None = None) -> float:
        found = bound_value(expression, Chosen(practice=book().practice, groups=book().season_groups, steps=book().steps, renovation=plan))
        return from_si(to_si(found.value, unit(found.unit)), unit("mm"))

    compared = 0
    for id, plan in book().renovations.items():
        for days in book().aftercare[plan.aftercare].days if plan.aftercare else ():
            told = [pytest.approx(depth_mm(each.fill["depth"])) for each in days.quantities if "depth" in each.fill]
            for step in plan.steps if told else ():
                if step.watering and step.day <= days.to_day and (step.until_day or step.day) >= days.from_day:
                    assert depth_mm(step.watering.depth, plan) in told, (id, step.id, days.title)
                    compared += 1
    assert compared > 20
