"""The renovation guide of a grass: the day's work in a screen, then when, why, the weeks before, the day in order, the weeks after."""

from collections.abc import Iterator
from typing import Any

from generator.book.book import Book
from generator.book.records.grass import Grass
from generator.book.records.renovation import Renovation
from generator.book.records.step import Step
from generator.calculators.chosen import Chosen
from generator.jobs.job_sentences import WHO
from generator.jobs.plan_steps import Stage, StepFor, steps_for
from generator.season.season_cache import SeasonCache
from generator.season.windows.every_kind import WindowKind
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext, all_names
from generator.site.pages.grass.view import GROUP_WORDS, HABIT_WORDS
from generator.site.shared.embedded import embedded_calculator
from generator.site.shared.lawn_pieces import calculator_scripts
from generator.site.shared.laws import laws_said
from generator.site.year.home_years import card_strip, page_strip, window_at_home
from generator.site.year.strips import when_row
from generator.site.year.year_address import year_address

STAGES: tuple[tuple[Stage, str], ...] = (("before", "The weeks before"), ("day", "The day, in order"), ("after", "The weeks after"))
LEVEL_WORDS = {
    "none": "not on this grass", "light": "light on this grass", "moderate": "moderate on this grass", "hard": "hard on this grass",
}
# Lines of the day that a telephone shows at once, with the window above and what to have below; fewer than so many more are not worth a fold.
MOST_SHOWN, FEWEST_FOLDED = 10, 3
SECTIONS = (
    Section("work", "The work of the day"), Section("when", "When"), Section("never", "Never"), Section("why", "Why"), Section("before", "The weeks before"),
    Section("day", "The day, in order"), Section("after", "The weeks after"), Section("left-out", "Left out, and why"),
    Section("gear", "Gear"),
)


def guide_page(book: Book, id: str, here: PageContext, when: dict[str, Any]) -> Page:
    """when: strip of the home place, and a row per place, from the calendar view."""
    grass, sourcing = book.grasses[id], here.sourcing
    renovation = book.renovations[grass.renovation]
    plan = steps_for(renovation, grass)
    stages: list[dict[str, Any]] = [
        {"id": stage, "title": title, "steps": [_step(book, grass, renovation, kept, here) for kept in plan.stage(stage)]}
        for stage, title in STAGES
    ]
    steps = [step for stage in stages for step in stage["steps"]]
    for number, step in enumerate(steps, start=1):
        step["number"] = number
    work = _work(next(stage["steps"] for stage in stages if stage["id"] == "day"), grass, here)
    _say_once(steps, grass.cautions)
    context: dict[str, Any] = {
        "title": f"{grass.name}: renovation guide", "grass": grass.name, "grass_url": here.links.grass(id),
        "kind": f"{GROUP_WORDS[grass.season_group]}. {HABIT_WORDS[grass.habit]}", "summary": renovation.summary, "work": work,
        "plan_name": renovation.name, "why": sourcing.statements((*grass.renovation_why, *renovation.why)),
        "wait_for": sourcing.statements(grass.wait_for), "never": sourcing.statements(grass.never), "when": when,
        "stages": stages, "gear": _gear(steps),
        "left_out": [
            {
                "title": left.step.title, "reason": left.reason,
                "marks": sourcing.marks(left.operation) if left.operation else {"marks": []},
                "others": sourcing.statements(left.operation.others) if left.operation else [],
            }
            for left in plan.left_out
        ] + [
            {
                "title": book.tasks[task].name, "reason": operation.how, "marks": sourcing.marks(operation),
                "others": sourcing.statements(operation.others),
            }
            for task, operation in plan.not_taken.items()
        ],
        "cautions": here.cautions(grass.cautions), "laws": laws_said(book, grass),
        "law_in": [book.countries[each.country].name for each in grass.weed_status if each.declared],
        "recovery": sourcing.figure("Growing weather to full cover", grass.recovery),
        "aftercare": _aftercare(book, renovation, here),
        "scripts": calculator_scripts(book, (each for step in steps for each in step["calculators"]), here),
    }
    words = tuple(f"renovate {name}" for name in all_names(book, grass.names))
    description = f"{grass.name}: when to renovate it, how hard, in which order, with the quantities worked out."
    return Page(
        f"renovate/{id}", context["title"], "guide", context, description, words, sections=SECTIONS,
        about=(f"grasses/{id}", "renovate/index"),
    )


def _step(book: Book, grass: Grass, renovation: Renovation, kept: StepFor, here: PageContext) -> dict[str, Any]:
    step, operation, sourcing = kept.step, kept.operation, here.sourcing
    context = Chosen(grass, book.practice, renovation, book.season_groups, steps=book.steps)
    return {
        "id": f"step-{step.id}", "number": 0, "day_label": day_label(step.day, step.until_day), "title": step.title,
        "level": operation.level if operation else None,
        "level_words": LEVEL_WORDS[operation.level] if operation else None,
        "say": step.say, "how": operation.how if operation else None, "why": step.why, "wait_for": step.wait_for,
        "marks": sourcing.marks(step), "how_marks": sourcing.marks(operation) if operation else None,
        "notes": step_notes(step), "only_where": step.only_where, "cautions": here.cautions(step.cautions), "reminders": [],
        "calculators": [
            embedded_calculator(book, quantity, context, here, f"{step.id}-{index}") for index, quantity in enumerate(step.quantities)
        ],
        "gear": [{"name": gear.name, "check": gear.check, "book": booking_words(gear)} for gear in step.gear],
        "task_url": here.links.task(step.task) if step.task else None,
        "task_name": book.tasks[step.task].name if step.task else None,
    }


def _work(day: list[dict[str, Any]], grass: Grass, here: PageContext) -> dict[str, Any]:
    """The day on one screen. day: its steps, with cautions not yet said once; each leads to its own place below."""
    minded = dict.fromkeys((*grass.cautions, *(caution["id"] for step in day for caution in step["cautions"])))
    steps = [{"number": step["number"], "title": step["title"], "level": step["level"], "only_where": bool(step["only_where"])} for step in day]
    shown = MOST_SHOWN if len(steps) > MOST_SHOWN + FEWEST_FOLDED else len(steps)
    return {
        "steps": steps[:shown], "rest": steps[shown:],
        "gear": list(dict.fromkeys(gear["name"] for step in day for gear in step["gear"])),
        "cautions": here.cautions(tuple(minded)),
    }


def step_notes(step: Step) -> list[str]:
    """Where a step is not done on every lawn, who does it, and a limit to it."""
    return [note for note in (step.only_where, WHO[step.who], step.note) if note]


def day_label(day: int, until: int | None = None) -> str:
    """'14 days before', 'The day', 'Day 7', 'Days 7 to 28'."""
    if until is not None and until != day:
        if day < 0 <= until:
            return f"{-day} days before to day {until}"
        return f"{-day} to {-until} days before" if until < 0 else f"Days {day} to {until}"
    if day < 0:
        return "The day before" if day == -1 else f"{-day} days before"
    return "The day" if day == 0 else f"Day {day}"


def booking_words(gear: Any) -> str | None:
    ways = {"own": None, "hire": "hire", "borrow": "borrow", "buy": "buy"}
    way = ways[gear.from_where]
    if way is None:
        return None
    return f"{way}; arrange {gear.book_days_ahead} days ahead" if gear.book_days_ahead else way


def _say_once(steps: list[dict[str, Any]], at_the_top: tuple[str, ...]) -> None:
    """A caution is told whole where it first bites; later steps name it, so that a page of work is not a wall of warnings.

    at_the_top: cautions of the grass itself, told whole before the first step.
    """
    told = set(at_the_top)
    for step in steps:
        step["reminders"] = [each for each in step["cautions"] if each["id"] in told]
        step["cautions"] = [each for each in step["cautions"] if each["id"] not in told]
        told |= {each["id"] for each in step["cautions"]}


def _gear(steps: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Each thing once, with the first check that is given for it."""
    things: dict[str, dict[str, Any]] = {}
    for step in steps:
        for gear in step["gear"]:
            known = things.setdefault(gear["name"], dict(gear))
            known["check"] = known["check"] or gear["check"]
            known["book"] = known["book"] or gear["book"]
    return list(things.values())


def _aftercare(book: Book, renovation: Renovation, here: PageContext) -> dict[str, str] | None:
    if renovation.aftercare is None:
        return None
    sheet = book.aftercare[renovation.aftercare]
    return {"title": sheet.name, "url": here.links.aftercare(renovation.aftercare), "text": sheet.summary}


def guide_index(book: Book, here: PageContext, strips: dict[str, dict[str, Any]], windows: dict[str, str]) -> Page:
    """One guide per grass, in the order of the plans they follow. strips, windows: by grass, its year and when its plan is done."""
    plans = {"title": "Plans", "url": here.links.to("plans/index"), "text": "Every whole job in the book, from a tidy to a new lawn.", "strip": None}
    groups = [
        {"title": renovation.name, "cards": [
            {"title": grass.name, "url": here.links.guide(id), "text": windows[id], "strip": strips[id]}
            for id, grass in book.grasses.items() if grass.renovation == plan_id
        ]}
        for plan_id, renovation in book.renovations.items()
    ]
    sheets = [{"title": book.inspection.title, "url": here.links.to("inspection"), "text": book.inspection.summary, "strip": None}] if book.inspection else []
    groups.insert(0, {"title": "Before any guide", "cards": [*sheets, plans]})
    lead = "How hard, when and in which order, for each grass. Grass that runs above ground only is never cut to the soil."
    context = {"title": "Renovation guides", "lead": lead, "groups": [group for group in groups if group["cards"]]}
    return Page("renovate/index", "Renovation guides", "index", context, lead, _what_is_done(book))


def _what_is_done(book: Book) -> tuple[str, ...]:
    """What a guide is asked for, beside its grass: each task that a grass may take or must not."""
    tasks = dict.fromkeys(task for grass in book.grasses.values() for task in grass.operations)
    names = (name for task in tasks for name in (book.tasks[task].name, *all_names(book, book.tasks[task].names), *book.tasks[task].misspellings))
    return tuple(dict.fromkeys(("renovate", "renovation", "reno", *names)))


def pages(making: Making) -> Iterator[Page]:
    book, seasons = making.book, making.seasons
    strips = {id: card_strip(seasons, id) for id in book.grasses}
    yield guide_index(book, making.here("renovate/index"), strips, {id: window_at_home(seasons, id) for id in book.grasses})
    for id in book.grasses:
        here = making.here(f"renovate/{id}")
        yield guide_page(book, id, here, _when(seasons, id, here))


def _when(seasons: SeasonCache, grass: str, here: PageContext) -> dict[str, Any]:
    book = seasons.book
    record = book.grasses[grass]
    kind: WindowKind = book.renovations[record.renovation].window  # type: ignore[assignment]  # A check holds it to a window.
    rows = [
        when_row(seasons.season(grass, place), kind, place, each.name, year_address(seasons, here.links, grass, place))
        for place, each in book.offered_places.items()
    ]
    home = next((row for row in rows if row["place_id"] == book.practice.home_place), None)
    return {"strip": page_strip(seasons, grass), "rows": rows, "home": home, "label": f"When to renovate {record.name}, by place"}
