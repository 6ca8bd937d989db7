"""The page and the command line work a job out alike: `swardbook plan --json` against the browser, for random jobs."""

import json
import random
from datetime import date, timedelta

import pytest

from generator.field.inspection_plan import adjusted_by, inspection_values
from generator.field.inspection_result import findings_of
from generator.files.job_values import job_values
from generator.jobs.job import Request
from generator.jobs.plans_for_grass import NOT_NEEDED, AskedJob, job_of, plans_for
from generator.jobs.window_answer import next_day, stretches
from generator.site.frame.contract import part_script
from generator.site.frame.render import COMPONENTS
from generator.site.pages.job.job_scripts import sites_of
from generator.words.reason_text import text
from tests.asking import ask
from tests.components.calculators import BOOK, page_with
from tests.our_book import seasons

ALMANAC = seasons()
EPOCH = date(1970, 1, 1)
NINE_DIGITS = 1e-9

ASK = """(jobs) => jobs.map((job) => {
  const data = Swardbook.jobs.held(job.plan, job.grass, job.place, job.site);
  const seen = Swardbook.jobInspection.read(job.inspection);
  const without = Object.fromEntries(job.without.map((id) => [id, job.why]));
  const out = Swardbook.jobWork.workOut(data, { ...job.request, adjusted: { ...seen.adjusted, without, chosen: job.chosen.concat(seen.adjusted.chosen) } });
  // The page lays its reason out in both systems; JSON has the metric one as a line.
  const line = (text) => typeof text === 'string' ? text : text.map((piece) => typeof piece === 'string' ? piece : piece[0]).join('');
  return { ...out, first: out.first.map(line), inspection: seen.values, window: { ...out.window, why: line(out.window.why), exactly: line(out.window.exactly) } };
})"""


def random_job(seed: int) -> dict:
    """One job: any grass, a plan it may follow, any place and site, any day of forty years, some steps late, wet or not needed."""
    draw = random.Random(seed)
    grass = draw.choice(sorted(BOOK.grasses))
    plan = draw.choice(plans_for(BOOK, BOOK.grasses[grass]))
    place = draw.choice(sorted(BOOK.offered_places))
    on = date(2010, 1, 1) + timedelta(draw.randrange(40 * 365))
    steps = BOOK.renovations[plan].steps
    on_need = [step.id for step in steps if step.only_where]
    late = draw.sample(steps, k=min(len(steps), draw.choice((0, 1, 2))))
    return {
        "grass": grass, "plan": plan, "place": place, "site": draw.choice(sites_of(ALMANAC, place)), "on": on,
        "area": draw.choice((0.5, 12.3, 100.0, 240.0, 1234.56, 20000.0)),
        "done": {step.id: on + timedelta(step.day + draw.randrange(-5, 20)) for step in late},
        "without": [step.id for step in draw.sample(steps, k=draw.choice((0, 0, 1, 3)))],
        "rain": {on + timedelta(ahead): draw.choice((0.5, 4.0, 30.0)) for ahead in draw.sample(range(30), k=4)},
        "chosen": draw.sample(on_need, k=draw.randrange(len(on_need) + 1)),
        "inspection": {each.id: answer(each, draw) for each in draw.sample(BOOK.inspection.questions, k=draw.choice((0, 0, 3, 8)))},
        "people": draw.choice((None, 1, 2, 5)),
    }


def answer(question, draw: random.Random) -> str:
    """Any of its choices, or a measure that may be one."""
    if question.choices:
        return draw.choice(list(question.choices))
    least, most = (0 if question.at_least is None else question.at_least), (80 if question.at_most is None else question.at_most)
    return f"{draw.uniform(least, most):.3g} {'' if question.unit == '1' else question.unit}".strip()


def on_the_command_line(given: dict) -> dict:
    seen = findings_of(BOOK.inspection, given["inspection"])
    request = Request(given["area"], given["on"], given["done"], given["rain"], adjusted_by(BOOK, seen, dict.fromkeys(given["without"], NOT_NEEDED), given["chosen"]), given["people"])
    asked = AskedJob(given["plan"], given["grass"], given["place"], request, given["site"])
    job = job_of(BOOK, ALMANAC, asked)
    values = job_values(job)
    # A file says the reason with its numbers, the page as people do, and with its numbers where these say more.
    exact, rough = text(job.verdict.why), text(job.verdict.why, exactly=False)
    values["window"] |= {"why": rough, "exactly": exact if exact != rough else ""}
    return json.loads(json.dumps({**values, "inspection": inspection_values(BOOK, seen)}))


def for_the_browser(job: dict) -> dict:
    def number(day: date) -> int:
        return (day - EPOCH).days

    return {**{name: job[name] for name in ("grass", "plan", "place", "site", "without", "chosen", "inspection")}, "why": NOT_NEEDED, "request": {
        "area": job["area"], "people": job["people"], "on": number(job["on"]),
        "done": {step: number(day) for step, day in job["done"].items()}, "rain": {number(day): mm for day, mm in job["rain"].items()},
    }}


def differences(ours, theirs, path="job"):
    """Where two plain values differ, numbers by more than the ninth digit."""
    if isinstance(ours, dict) and isinstance(theirs, dict):
        yield from (f"{path}: only one side has {key}" for key in ours.keys() ^ theirs.keys())
        for key in ours.keys() & theirs.keys():
            yield from differences(ours[key], theirs[key], f"{path}.{key}")
    elif isinstance(ours, list) and isinstance(theirs, list) and len(ours) == len(theirs):
        for number, pair in enumerate(zip(ours, theirs)):
            yield from differences(*pair, f"{path}[{number}]")
    elif isinstance(ours, float | int) and isinstance(theirs, float | int) and not isinstance(ours, bool):
        if ours != pytest.approx(theirs, rel=NINE_DIGITS, abs=1e-12):
            yield f"{path}: {ours} or {theirs}"
    elif ours != theirs:
        yield f"{path}: {ours!r} or {theirs!r}"


NEXT = """(asked) => asked.map(([plan, grass, place, site, ready]) => {
  const held = Swardbook.jobs.held(plan, grass, place, site);
  return Swardbook.dates.iso(Swardbook.jobDates.next(held.site.windows[held.plan.window].stretches, Swardbook.dates.fromIso(ready)));
})"""


def next_days(jobs: list[dict]) -> list[tuple[list[str], str]]:
    """What is asked of the next good day, with the answer of this side: any day, and the leap year's February in between."""
    asked = []
    for job in jobs:
        season = ALMANAC.season(job["grass"], job["place"], job["site"])
        found, _ = stretches(season, BOOK.renovations[job["plan"]].window)
        for ready in (job["on"], date(2028, 2, 20)):
            asked.append(([job["plan"], job["grass"], job["place"], job["site"], ready.isoformat()], next_day(found, ready).isoformat()))
    return asked


@pytest.mark.parametrize("count", [40, pytest.param(400, marks=pytest.mark.soak)])
def test_random_jobs_are_the_same_on_both_sides(page, tmp_path, site, count):
    jobs = [random_job(seed) for seed in range(count)]
    calculators = sorted({"operation-price", "machine-hours", "estimate", "spoil-loads"} | {
        quantity.calculator for plan in BOOK.renovations.values() for step in plan.steps for quantity in step.quantities
    })
    page.goto(page_with(tmp_path, [], calculators))
    wanted = {f"assets/jobs/{job['plan']}--{job['grass']}.js" for job in jobs}
    wanted |= {f"assets/jobs/places/{job['place']}--{job['grass']}.js" for job in jobs} | {"assets/jobs/practice.js", "assets/jobs/inspection.js", "assets/inspection.js"}
    page.add_script_tag(content=part_script("job-planner"))
    for name in ("job-planner/job-data", "job-planner/job-dates", "job-planner/job-plan", "job-planner/job-inspection", "job-planner/job-work", "inspection-sheet/inspection-findings"):
        page.add_script_tag(path=COMPONENTS / f"{name}.js")
    for path in sorted(wanted):
        page.add_script_tag(path=site / path)
    days = next_days(jobs)
    assert ask(page, NEXT, [asked for asked, _ in days]) == [day for _, day in days]
    found = ask(page, ASK, [for_the_browser(job) for job in jobs])
    for job, theirs in zip(jobs, found, strict=True):
        assert not list(differences(on_the_command_line(job), theirs))[:5], job
