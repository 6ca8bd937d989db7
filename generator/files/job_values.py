"""A dated job as plain values, for JSON and for the other files made of it."""

from typing import Any

from generator.calculators.calculate import Amount
from generator.formula import plain_sum
from generator.jobs.amounts import Purchased, Worked
from generator.jobs.job import Job, JobStep, NeededGear, Settling
from generator.jobs.job_watering import WateringDay
from generator.jobs.price import Cost
from generator.jobs.window_answer import Verdict
from generator.season.calendar_days import month_and_day
from generator.words.reason_text import plain, said, sentence, text


def job_values(job: Job) -> dict[str, Any]:
    """{"on", "people", "area_m2", "first", "window", "steps", "left_out", "shopping", "gear", "cost",
    "spoil_m3", "spoil_bags", "spoil_trailer_loads", "water", "first_possible"}; dates are ISO 8601.

    steps: by date, each {date, day, task, id, title, ...}; quantities are those of `swardbook calc`.
    """
    return {
        "on": job.request.on.isoformat(), "people": job.people,
        "area_m2": job.request.area_m2,
        "first": [plain(sentence(said(each))) for each in job.first],
        "window": {**_window(job.verdict), "what_then": [each.text for each in job.what_then]},
        "steps": [_step(each) for each in job.steps],
        "left_out": [{"id": each.step.id, "task": each.step.task, "title": each.step.title, "why": each.reason} for each in job.left_out],
        "shopping": [bought_values(each) for each in job.shopping],
        "gear": [_gear(each) for each in job.gear],
        "cost": _cost(job.cost),
        "spoil_m3": _tidy(job.spoil.volume_m3), "spoil_bags": job.spoil.bags, "spoil_trailer_loads": job.spoil.trailer_loads,
        "water": {
            "litres": _tidy(plain_sum(day.litres for each in job.steps for day in each.watering if day.rain_mm is None)),
            "spared_litres": _tidy(plain_sum(day.litres for each in job.steps for day in each.watering if day.rain_mm is not None)),
        },
        "first_possible": [_settling(each) for each in job.settling],
    }


def _window(found: Verdict) -> dict[str, Any]:
    stretch = found.stretch
    return {
        "kind": found.kind, "inside": found.inside, "side": found.side, "days_outside": found.days_outside,
        "from": month_and_day(stretch.first) if stretch else None,
        "best": month_and_day(stretch.best) if stretch and stretch.best is not None else None,
        "to": month_and_day(stretch.last) if stretch else None,
        "why": text(found.why), "frost_chance_four_weeks": _to(found.frost_chance, 1000),
    }


def _step(each: JobStep) -> dict[str, Any]:
    dated, step, operation = each.dated, each.dated.step.step, each.dated.step.operation
    return {
        "date": dated.date.isoformat(), "day": step.day, "task": step.task, "id": step.id, "title": step.title,
        "until": dated.until.isoformat() if dated.until else None, "who": step.who, "stage": dated.step.stage,
        "after": list(dated.step.after), "planned": dated.planned.isoformat(), "moved_days": dated.moved_days, "moved_by": dated.moved_by,
        "level": operation.level if operation else None, "how": operation.how if operation else None,
        "counted": each.counted, "added": dated.step.added, "passes": each.passes,
        "minutes": None if each.minutes is None else _tidy(each.minutes),
        "say": step.say, "why": step.why, "only_where": step.only_where, "wait_for": step.wait_for, "cautions": list(step.cautions),
        "gear": [gear.name for gear in step.gear],
        "quantities": [_worked(quantity) for quantity in each.worked],
        "watering": [_watering(day) for day in each.watering],
        "usual": {
            "growth": each.growth_class, "mean_temperature_c": _to(each.mean_temperature_c, 10),
            "frost_probability": _to(each.frost_chance, 1000),
        },
    }


def _worked(each: Worked) -> dict[str, Any]:
    return {
        "calculator": each.quantity.calculator, "needs_label": each.needs_label, "measured": each.quantity.measured, "filled": dict(each.filled),
        "inputs": {name: amount_value(amount) for name, amount in each.run.inputs.items()},
        "results": {name: amount_value(amount) for name, amount in each.results.items()}, "settings": list(each.quantity.settings),
        "warnings": each.said,
    }


def _watering(day: WateringDay) -> dict[str, Any]:
    return {
        "date": day.day.isoformat(), "depth_mm": _tidy(day.depth_mm), "times": day.times, "litres": _tidy(day.litres),
        "rain_mm": day.rain_mm,
    }


def bought_values(each: Purchased) -> dict[str, Any]:
    """One line of a shopping list."""
    return {
        "name": each.name, "product": each.product, "amount": amount_value(each.amount), "packs": each.packs,
        "price_each": each.price_each, "cost": None if each.cost is None else _tidy(each.cost), "steps": list(each.steps), "note": each.note,
    }


def _gear(each: NeededGear) -> dict[str, Any]:
    return {
        "name": each.name, "from": each.from_where, "needed": each.needed.isoformat(),
        "book_by": each.book_by.isoformat() if each.book_by else None, "check_by": each.check_by.isoformat(), "check": each.check,
        "steps": list(each.steps),
    }


def _settling(each: Settling) -> dict[str, Any]:
    return {"step": each.step, "done_on": each.done_on.isoformat(), "days": each.days, "first_day": each.first_day.isoformat()}


def _cost(found: Cost | None) -> dict[str, Any] | None:
    if found is None:
        return None
    return {
        "currency": found.currency, "before_tax": _tidy(found.before_tax), "tax": _tidy(found.tax), "total": _tidy(found.total),
        "deposit": None if found.deposit is None else _tidy(found.deposit),
        "lines": [{"kind": line.kind, "name": line.name, "times": line.times, "amount": _tidy(line.amount)} for line in found.lines],
        "included": [{"name": name, "times": times} for name, times in found.included],
    }


def amount_value(amount: Amount) -> dict[str, Any]:
    """{"value", "unit"} in the metric unit it is usually given in; a list for readings."""
    value = amount.value()
    return {"value": list(value) if isinstance(value, tuple) else value, "unit": amount.unit.spelling}


def _to(value: float, parts: int) -> float:
    """To tenths or thousandths, as the page's data has it in whole numbers."""
    return round(value * parts) / parts


def _tidy(value: float) -> float:
    return float(f"{value:.12g}")
