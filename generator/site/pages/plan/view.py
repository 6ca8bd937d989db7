"""A plan's own page: what the job is, when to choose it, its steps for any grass, and which grasses may follow it."""

from collections.abc import Iterator
from typing import Any

from generator.book.book import Book
from generator.book.records.renovation import Renovation
from generator.book.records.step import Step
from generator.jobs.plan_steps import stage_of
from generator.jobs.plans_for_grass import plans_for
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.guide.view import STAGES, booking_words, day_label, step_notes
from generator.site.pages.job.view import has_jobs

GROUPS = {"warm": "Warm-season grass", "cool": "Cool-season grass", None: "Any grass"}
WINDOW_WORDS = {
    "renovation": "Its day belongs in the renovation window.", "light_renovation": "Its day belongs in the window for light work.",
    "overseeding": "Its day belongs in the sowing window.", "oversowing": "Its day belongs in the window for winter ryegrass.",
    "growing": "Its day belongs in weeks when the grass grows strongly.",
}
SECTIONS = (
    Section("choose", "When to choose it"), Section("why", "Why"), Section("grasses", "Grasses it suits"),
    Section("before", "The weeks before"), Section("day", "The day, in order"), Section("after", "The weeks after"),
    Section("figures", "Figures used"),
)


def plan_page(book: Book, id: str, here: PageContext) -> Page:
    plan, sourcing = book.renovations[id], here.sourcing
    steps = [_step(book, number, step, here) for number, step in enumerate(sorted(plan.steps, key=lambda step: step.day), start=1)]
    context = {
        "title": plan.name, "summary": plan.summary, "kind": f"{GROUPS[plan.season_group]}. {WINDOW_WORDS[plan.window]}",
        "choose": sourcing.statements(plan.choose_when), "why": sourcing.statements(plan.why),
        "grasses": [
            {"name": grass.name, "guide": here.links.guide(each) if grass.renovation == id else None, "url": here.links.grass(each)}
            for each, grass in book.grasses.items() if id in plans_for(book, grass)
        ],
        "stages": [
            {"id": stage, "title": title, "steps": [step for step in steps if step["stage"] == stage]} for stage, title in STAGES
        ],
        "figures": [sourcing.figure(name.replace("-", " ").capitalize(), figure) for name, figure in plan.figures.items()],
        "aftercare": {"title": book.aftercare[plan.aftercare].name, "url": here.links.aftercare(plan.aftercare),
                      "text": book.aftercare[plan.aftercare].summary} if plan.aftercare else None,
        "planner": here.links.to("jobs/index", f"v=1&plan={id}") if has_jobs(book) else None,
    }
    return Page(f"plans/{id}", plan.name, "plan", context, plan.summary, plan.misspellings, sections=SECTIONS)


def _step(book: Book, number: int, step: Step, here: PageContext) -> dict[str, Any]:
    """A step as any grass has it; how hard it goes on one grass stands in that grass's guide."""
    return {
        "id": f"step-{step.id}", "number": number, "stage": stage_of(step.day), "day_label": day_label(step.day, step.until_day),
        "title": step.title, "level": None, "level_words": None, "say": step.say, "marks": here.sourcing.marks(step), "how": None, "how_marks": None,
        "why": step.why, "wait_for": step.wait_for, "gear": [
            {"name": gear.name, "check": gear.check, "book": booking_words(gear)} for gear in step.gear
        ],
        "cautions": [], "reminders": [], "minds": [{"name": each["name"], "url": each["url"]} for each in here.cautions(step.cautions)],
        "calculators": [], "task_url": here.links.task(step.task) if step.task else None,
        "task_name": book.tasks[step.task].name if step.task else None,
        "notes": [*_only(step), *step_notes(step)],
        "work": [{"name": book.calculators[each].name, "url": here.links.calculator(each)}
                 for each in dict.fromkeys(quantity.calculator for quantity in step.quantities)],
    }


def _only(step: Step) -> list[str]:
    """Which grasses keep a step."""
    kept = [f"Only for grass that grows {' or '.join(step.only_habits)}."] if step.only_habits else []
    return [*kept, f"Only for grass that takes it {' or '.join(step.only_levels)}."] if step.only_levels else kept


def plan_index(book: Book, here: PageContext) -> Page:
    """Every plan, those for one season group together."""
    lead = "Whole jobs from the first look to the last check. Each plan has its steps in order, and what each one waits for."
    groups = [
        {"title": title, "cards": [_card(id, plan, here) for id, plan in book.renovations.items() if plan.season_group == group]}
        for group, title in GROUPS.items()
    ]
    context = {"title": "Plans", "lead": lead, "groups": [group for group in groups if group["cards"]]}
    return Page("plans/index", "Plans", "index", context, lead, ("plan", "job plan", "which renovation"))


def _card(id: str, plan: Renovation, here: PageContext) -> dict[str, Any]:
    return {"title": plan.name, "url": here.links.to(f"plans/{id}"), "text": plan.summary}


def pages(making: Making) -> Iterator[Page]:
    book = making.book
    yield plan_index(book, making.here("plans/index"))
    yield from (plan_page(book, id, making.here(f"plans/{id}")) for id in book.renovations)
