"""A plan's own page: what the job is, when to choose it, its steps for any grass, and which grasses may follow it."""

from typing import Any

from generator.model.book import Book
from generator.model.renovation import Renovation
from generator.model.step import Step
from generator.pages.desk import Desk
from generator.pages.guide import STAGES, booking_words, day_label, step_notes
from generator.pages.job import has_jobs
from generator.pages.jobs import plans_for
from generator.pages.page import Page, Section
from generator.turf.plan import stage_of

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


def plan_page(book: Book, id: str, desk: Desk) -> Page:
    plan, sourcing = book.renovations[id], desk.sourcing
    steps = [_step(book, number, step, desk) for number, step in enumerate(sorted(plan.steps, key=lambda step: step.day), start=1)]
    context = {
        "title": plan.name, "summary": plan.summary, "kind": f"{GROUPS[plan.season_group]}. {WINDOW_WORDS[plan.window]}",
        "choose": sourcing.statements(plan.choose_when), "why": sourcing.statements(plan.why),
        "grasses": [
            {"name": grass.name, "guide": desk.links.guide(each) if grass.renovation == id else None, "url": desk.links.grass(each)}
            for each, grass in book.grasses.items() if id in plans_for(book, grass)
        ],
        "stages": [
            {"id": stage, "title": title, "steps": [step for step in steps if step["stage"] == stage]} for stage, title in STAGES
        ],
        "figures": [sourcing.figure(name.replace("-", " ").capitalize(), figure) for name, figure in plan.figures.items()],
        "aftercare": {"title": book.aftercare[plan.aftercare].name, "url": desk.links.aftercare(plan.aftercare),
                      "text": book.aftercare[plan.aftercare].summary} if plan.aftercare else None,
        "planner": desk.links.to("jobs/index", f"v=1&plan={id}") if has_jobs(book) else None,
    }
    return Page(f"plans/{id}", plan.name, "plan", context, plan.summary, plan.misspellings, sections=SECTIONS)


def _step(book: Book, number: int, step: Step, desk: Desk) -> dict[str, Any]:
    """A step as any grass has it; how hard it goes on one grass stands in that grass's guide."""
    return {
        "id": f"step-{step.id}", "number": number, "stage": stage_of(step.day), "day_label": day_label(step.day, step.until_day),
        "title": step.title, "level": None, "level_words": None, "say": step.say, "marks": desk.sourcing.marks(step), "how": None, "how_marks": None,
        "why": step.why, "wait_for": step.wait_for, "gear": [
            {"name": gear.name, "check": gear.check, "book": booking_words(gear)} for gear in step.gear
        ],
        "cautions": [], "reminders": [], "minds": [{"name": each["name"], "url": each["url"]} for each in desk.cautions(step.cautions)],
        "calculators": [], "task_url": desk.links.task(step.task) if step.task else None,
        "task_name": book.tasks[step.task].name if step.task else None,
        "notes": [*_only(step), *step_notes(step)],
        "work": [{"name": book.calculators[each].name, "url": desk.links.calculator(each)}
                 for each in dict.fromkeys(quantity.calculator for quantity in step.quantities)],
    }


def _only(step: Step) -> list[str]:
    """Which grasses keep a step."""
    kept = [f"Only for grass that grows {' or '.join(step.only_habits)}."] if step.only_habits else []
    return [*kept, f"Only for grass that takes it {' or '.join(step.only_levels)}."] if step.only_levels else kept


def plan_index(book: Book, desk: Desk) -> Page:
    """Every plan, those for one season group together."""
    lead = "Whole jobs from the first look to the last check. Each plan has its steps in order, and what each one waits for."
    groups = [
        {"title": title, "cards": [_card(id, plan, desk) for id, plan in book.renovations.items() if plan.season_group == group]}
        for group, title in GROUPS.items()
    ]
    context = {"title": "Plans", "lead": lead, "groups": [group for group in groups if group["cards"]]}
    return Page("plans/index", "Plans", "index", context, lead, ("plan", "job plan", "which renovation"))


def _card(id: str, plan: Renovation, desk: Desk) -> dict[str, Any]:
    return {"title": plan.name, "url": desk.links.to(f"plans/{id}"), "text": plan.summary}
