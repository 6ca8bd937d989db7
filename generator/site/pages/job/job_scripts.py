"""What the job page needs to work a plan out in the browser, as scripts: a folder on a disk has no other way to load data.

One script for each plan and grass, one for each grass and place, and one for the practice. Texts and figures are those that
`swardbook plan` gives; the page adds dates and the calculators' answers (parts/job).
"""

import json
from collections.abc import Iterable
from itertools import groupby
from typing import Any

from generator.book.book import Book
from generator.book.records.calculator import Calculator
from generator.book.records.inspection import InspectionQuestion
from generator.book.records.practice import OPEN_SITE
from generator.book.records.renovation import Renovation
from generator.book.records.step import Quantity, Step
from generator.calculators.bindings import asked_of_inspection, bindings, bound_value, filled_in
from generator.calculators.calculate import default_si
from generator.calculators.chosen import Chosen
from generator.field.inspection_plan import added_step
from generator.field.inspection_result import Found
from generator.field.inspection_words import figure_words
from generator.field.inspection_words import filled as filled_words
from generator.field.wet_holds import wet_holds
from generator.files.calendar_file import calendar_domain
from generator.jobs.amounts import AREA, LAWN, SPOIL_COUNTS, SPOIL_LOADS, Stock, line_key, no_product, pack_si, product_of, spoil_holds, takes_the_lawn
from generator.jobs.job import gear_of, outside_of, settling_days
from generator.jobs.job_watering import RUN_TIME
from generator.jobs.plan_steps import not_for_habit, stage_of
from generator.jobs.plans_for_grass import NOT_NEEDED, plans_for, records_of
from generator.jobs.price import ESTIMATE, OPERATION_PRICE
from generator.jobs.said_first import hot_afternoons, hot_reason, law_against, winter_said
from generator.jobs.step_time import MACHINE_HOURS, people_of, time_of
from generator.jobs.window_answer import frost_ahead, stretches
from generator.season.season_cache import SeasonCache
from generator.site.pages.job.window_data import window_data
from generator.site.year.site_years import site_words
from generator.units import to_si, unit
from generator.words.reason_text import said, sentence

PLACES = "assets/jobs/places"
BOOK_SCRIPT, INSPECTION_SCRIPT = "assets/jobs/book.js", "assets/jobs/inspection.js"


def job_scripts(seasons: SeasonCache) -> dict[str, str]:
    """Path in the site to script text."""
    book = seasons.book
    files = {"assets/jobs/practice.js": job_script("practice", _practice(seasons)), BOOK_SCRIPT: job_script("book", _book(seasons))}
    if book.inspection:
        files[INSPECTION_SCRIPT] = job_script("inspection", _inspection(book))
    for grass, record in book.grasses.items():
        for plan in plans_for(book, record):
            files[plan_path(plan, grass)] = job_script("plan", _plan(seasons, plan, grass), plan, grass)
        for place in book.offered_places:
            files[place_path(grass, place)] = job_script("place", _place(seasons, grass, place), grass, place)
    return files


def plan_path(plan: str, grass: str) -> str:
    return f"assets/jobs/{plan}--{grass}.js"


def place_path(grass: str, place: str) -> str:
    return f"{PLACES}/{place}--{grass}.js"


def main_results(calculator: Calculator) -> tuple[str, ...]:
    """The results that a step shows where nothing is bought by one of them: the main ones, else the first."""
    main = tuple(name for name, each in calculator.results.items() if each.main)
    return main or tuple(calculator.results)[:1]


def sites_of(seasons: SeasonCache, place: str) -> tuple[str, ...]:
    """The sites that the page can switch to: all of them where the place has calendars, open ground elsewhere."""
    return seasons.sites if place in seasons.calendar_places else (OPEN_SITE,)


def job_script(kind: str, value: Any, *keys: str) -> str:
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"))
    return f"Swardbook.jobs.{kind}({','.join([*map(json.dumps, keys), text])});\n"


def _book(seasons: SeasonCache) -> dict[str, Any]:
    """Names, and what goes with what: enough to fill in the form and to say what is linked."""
    book = seasons.book
    used = {quantity.calculator for plan in book.renovations.values() for step in plan.steps for quantity in step.quantities}
    sums = {OPERATION_PRICE, MACHINE_HOURS, ESTIMATE, SPOIL_LOADS, RUN_TIME} & set(book.calculators)
    return {
        "grasses": {id: {"name": each.name, "plans": list(plans_for(book, each))} for id, each in book.grasses.items()},
        "plans": {id: _named_plan(book, each) for id, each in book.renovations.items()},
        "places": {id: {"name": each.name, "sites": list(sites_of(seasons, id))} for id, each in book.offered_places.items()},
        "sites": {id: site_words(id) for id in seasons.sites},
        "cautions": {id: each.name for id, each in book.cautions.items()},
        "calculators": {id: {"name": book.calculators[id].name, "main": list(main_results(book.calculators[id]))} for id in sorted(used)},
        "sums": sorted(sums), "tax": book.practice.tax_name or "Tax", "domain": calendar_domain(book.practice.calendar_name),
        "not_needed": NOT_NEEDED, "steps_now": {id: gone.instead for id, gone in book.retired_of("steps").items() if gone.instead},
        "holds": sorted({task for hold in book.holds.values() for task in hold.tasks}), "wet": wet_holds(book.holds),
        "record": dict(book.record.tasks) if book.record else {},
    }


def _named_plan(book: Book, plan: Renovation) -> dict[str, Any]:
    sheet = {"id": plan.aftercare, "name": book.aftercare[plan.aftercare].name} if plan.aftercare else None
    return {"name": plan.name, "choose": [each.text for each in plan.choose_when], "aftercare": sheet}


def _practice(seasons: SeasonCache) -> dict[str, Any]:
    book, practice, heat = seasons.book, seasons.book.practice, seasons.book.season_groups.great_heat
    return {
        "heat_costs": [each.text for each in heat.cost] if heat else [],
        "people": people_of(practice), "currency": practice.currency, "estimate": _starts(book, ESTIMATE), "price_starts": _starts(book, OPERATION_PRICE),
        "priced": ESTIMATE in book.calculators and OPERATION_PRICE in book.calculators,
        "run_time": _run_time(book), "minimum_charge": practice.minimum_charge or 0, "tax": (practice.tax_percent or 0) / 100,
        "tax_inside": float(practice.prices_include_tax), "deposit": (practice.deposit_percent or 0) / 100,
        "spoil_price": practice.spoil_price_per_m3 or 0, "spoil": {
            "starts": _starts(book, SPOIL_LOADS), "holds": spoil_holds(practice), "counts": SPOIL_COUNTS,
        }, "operations": {
            task: {"name": book.tasks[task].name, "price": each.price_per_100_m2 or 0, "minimum": each.minimum_price, "charged": each.charged_in_jobs}
            for task, each in practice.operations.items()
        },
    }


def _plan(seasons: SeasonCache, plan: str, grass: str) -> dict[str, Any]:
    book, renovation, record = seasons.book, seasons.book.renovations[plan], seasons.book.grasses[grass]
    outside = outside_of(book.season_groups, plan, record.season_group)
    added = {outcome.add.task for question in book.inspection.questions for outcome in question.outcomes if outcome.add} if book.inspection else set()
    return {
        "window": renovation.window, "grass": record.name,
        "steps": [_taken(book, step, renovation, grass) for step in renovation.steps],
        "takes": {task: {"level": each.level, "how": each.how} for task, each in record.operations.items() if task in added},
        "outside": {side: [each.text for each in getattr(outside, side)] if outside else [] for side in ("early", "late", "gone_wrong")},
    }


def _taken(book: Book, step: Step, renovation: Renovation, grass_id: str) -> dict[str, Any]:
    """A step as one grass takes it; of one that it never takes, only why and what it stood between."""
    grass = book.grasses[grass_id]
    operation = grass.operations.get(step.task) if step.task else None
    never = not_for_habit(step, grass) or (operation.how if operation and operation.level == "none" else None)
    if never:
        return {
            "id": step.id, "day": step.day, "task": step.task, "title": step.title, "after": list(step.after), "gaps": dict(step.gaps), "only_where": step.only_where,
            "never": never,
        }
    chosen = Chosen(grass, book.practice, renovation, book.season_groups, sheet=book.inspection)
    return {
        **step_data(book, step), "level": operation.level if operation else None, "how": operation.how if operation else None,
        "only_levels": list(step.only_levels), "watering": _watering(step, chosen),
        "quantities": [quantity_data(book, each, step, chosen, Stock(book.practice, grass_id, grass.name)) for each in step.quantities],
    }


def _inspection(book: Book) -> dict[str, Any]:
    """What the inspection's outcomes say and add, by question and position; their conditions stand in the inspection's own script."""
    words = figure_words(book)

    def outcome(question: InspectionQuestion, position: int) -> dict[str, Any]:
        found = Found(question.id, position, question.outcomes[position])
        step = added_step(book, found, words) if found.outcome.add else None
        empty: dict[str, Any] = {"level": None, "how": None, "only_levels": [], "watering": None, "quantities": []}
        return {
            "say": filled_words(found.outcome.say, words), "because": filled_words(found.outcome.because, words),
            "add": {**step_data(book, step), **empty, "added": True, "before": list(step.before), "part_of": list(step.part_of)} if step else None,
        }

    questions = book.inspection.questions if book.inspection else ()
    return {
        "tasks": {id: task.name for id, task in book.tasks.items()},
        "asks": {each.id: each.ask for each in questions},
        "outcomes": {each.id: [outcome(each, position) for position in range(len(each.outcomes))] for each in questions},
    }


def step_data(book: Book, step: Step) -> dict[str, Any]:
    """What of a step is the same for every grass."""
    gear = [(each, gear_of(each, book.practice)) for each in step.gear]
    return {
        "id": step.id, "day": step.day, "until_day": step.until_day, "task": step.task, "title": step.title, "who": step.who,
        "stage": stage_of(step.day), "after": list(step.after), "gaps": dict(step.gaps), "settles": step.settles, "say": step.say, "why": step.why,
        "only_where": step.only_where, "wait_for": step.wait_for, "cautions": list(step.cautions),
        "gear": [
            {"key": own.machine or own.name, "name": own.name, "from": ours.from_where, "days": ours.book_days_ahead, "check": ours.check} for own, ours in gear
        ],
        "minutes": _minutes(book, step), "passes": step.passes, "event": step.event_id, "books": step.books_gear,
    }


def quantity_data(book: Book, quantity: Quantity, step: Step, chosen: Chosen, stock: Stock) -> dict[str, Any]:
    """values: every input in SI units, the lawn's area left out where it is the lawn's; missing: a label has to give it."""
    calculator = book.calculators[quantity.calculator]
    found = filled_in(quantity, chosen, calculator)
    lawn = takes_the_lawn(quantity, calculator)
    values = {
        name: to_si(found[name].value, unit(found[name].unit)) if name in found else default_si(asked)
        for name, asked in calculator.inputs.items() if not (lawn and name == AREA) and (name in found or not asked.label_only)
    }
    where_from = {name: each.where_from for name, each in found.items()} | ({AREA: LAWN} if lawn else {})
    return {
        "calculator": quantity.calculator, "values": values, "lawn": lawn, "filled": where_from,
        "missing": [name for name, asked in calculator.inputs.items() if asked.label_only and name not in found],
        "on_lawn": _measured_on_lawn(quantity, calculator), "settings": list(quantity.settings), "answers": list(quantity.answers),
        "buy": _purchase(book, quantity, step, stock), "spoil": quantity.spoil, "measured": quantity.measured,
    }


def _measured_on_lawn(quantity: Quantity, calculator: Calculator) -> dict[str, str]:
    """Input to the question of the inspection whose measure takes the place of what else fills it in."""
    expressions = {**bindings(calculator), **quantity.fill}
    return {name: question for name, each in expressions.items() if (question := asked_of_inspection(each))}


def _purchase(book: Book, quantity: Quantity, step: Step, stock: Stock) -> dict[str, Any] | None:
    if quantity.buy is None:
        return None
    id = product_of(quantity.buy, step, stock)
    product = book.practice.products[id] if id else None
    wanted = unit(book.calculators[quantity.calculator].results[quantity.buy.result].unit)
    bought_for = quantity.buy.task or step.task
    return {
        "result": quantity.buy.result, "key": line_key(quantity.buy, step, stock, wanted.kind), "product": id, "own": step.task == bought_for,
        "name": product.name if product else step.title, "pack": pack_si(product, wanted) if product else None,
        "price": product.price if product else None, "note": None if id else no_product(quantity.buy, step, stock),
    }


def _watering(step: Step, chosen: Chosen) -> dict[str, Any] | None:
    if step.watering is None:
        return None
    depth = bound_value(step.watering.depth, chosen)
    return {
        "depth_m": to_si(depth.value, unit(depth.unit)) * step.watering.times_a_day, "times": step.watering.times_a_day,
        "every": step.watering.every_days,
    }


def _minutes(book: Book, step: Step) -> dict[str, Any] | None:
    """What its time is made of, without what is nothing; None where the practice says nothing of it."""
    time = time_of(step, book.practice, book.calculators)
    if time is None:
        return None
    machine = {"machine": {**_starts(book, MACHINE_HOURS), **time.machine}, "pace": time.pace} if time.machine else {}
    by_hand = {name: value for name in ("setup", "fixed", "per_m2", "per_m3", "trip", "shared") if (value := getattr(time, name))}
    return by_hand | machine


def _run_time(book: Book) -> dict[str, Any] | None:
    """What the litres of a watering are worked out from; None in a book without that calculator, where every drop is taken to count."""
    calculator = book.calculators.get(RUN_TIME)
    return {"starts": _starts(book, RUN_TIME), "on_lawn": _measured_on_lawn(Quantity(calculator=RUN_TIME), calculator)} if calculator else None


def _starts(book: Book, calculator: str) -> dict[str, Any]:
    """What a calculator's inputs start with, in SI units, all but the area; nothing for one that is not in the book."""
    record = book.calculators.get(calculator)
    return {name: default_si(asked) for name, asked in record.inputs.items() if name != AREA} if record else {}


def _place(seasons: SeasonCache, grass: str, place: str) -> dict[str, Any]:
    return {site: _site(seasons, grass, place, site) for site in sites_of(seasons, place)}


def _site(seasons: SeasonCache, grass: str, place: str, site: str) -> dict[str, Any]:
    """windows by kind; daily series from 1 January, as runs of [value, days]: frost chances in thousandths, temperature in tenths."""
    season, records = seasons.season(grass, place, site), records_of(seasons)
    kinds = sorted({plan.window for plan in seasons.book.renovations.values()})
    figures = sorted({step.settles for plan in seasons.book.renovations.values() for step in plan.steps if step.settles})
    frost, heat = season.view.frost, seasons.book.season_groups.great_heat
    hot = hot_afternoons(season, heat.afternoons.measured_in("°C").default if heat else None)
    return {
        "first": [sentence(said(each)) for each in (*law_against(seasons.book, grass, place), *winter_said(season))],
        "hot": runs_of([each.value if each else None for each in hot]),
        "hot_said": {f"{each.value:g}": sentence(said(hot_reason(each))) for each in sorted(set(filter(None, hot)), key=lambda each: each.value)},
        "windows": {kind: window_data(*stretches(season, kind)) for kind in kinds},
        "frost_ahead": runs_of([round(chance * 1000) for chance in frost_ahead(frost)]),
        "frost": runs_of([round(chance * 1000) for chance in frost.chance]),
        "mean": runs_of([round(mean * 10) for mean in season.climate.mean_c]),
        "growth": runs_of(list(season.classes)),
        "settles": {figure: runs_of(list(settling_days(figure, records.tasks, season, records.cool_growth))) for figure in figures},
    }


def runs_of(values: Iterable[Any]) -> list[list[Any]]:
    """[[value, how many times one after another]]."""
    return [[value, len(list(several))] for value, several in groupby(values)]
