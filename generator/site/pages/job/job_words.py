"""A dated job in words for its page. Twin: job words."""

from dataclasses import replace
from datetime import date
from math import floor
from typing import Any

from generator.book.book import Book
from generator.book.records.calculator import Calculator
from generator.calculators.calculate import Amount
from generator.jobs.amounts import Purchased, Spoil, Worked
from generator.jobs.job import JobStep, Settling
from generator.jobs.job_sentences import LONGEST_IN_MINUTES, SENTENCES, SETTING_DECIMALS, WEEKDAYS
from generator.jobs.price import Cost
from generator.jobs.window_answer import Verdict
from generator.season.calendar_days import MONTHS
from generator.site.pages.calculator.view import amount_words
from generator.units import to_si, unit

MINUTES_AN_HOUR = 60
LITRES_A_CUBIC_METRE = 1000


def day(value: date) -> str:
    """'Mon 12 Oct 2026'."""
    return f"{WEEKDAYS[value.weekday()]} {value.day} {MONTHS[value.month - 1][:3]} {value.year:04d}"


def month_day(text: str | None) -> str:
    """'11 November' for '11-11'."""
    return f"{int(text[3:])} {MONTHS[int(text[:2]) - 1]}" if text else ""


def count(number: int, one: str) -> str:
    """'1 day', '2 days'."""
    return f"{number} {one}{'' if number == 1 else 's'}"


def people(number: int) -> str:
    """'1 person', '2 people'."""
    return SENTENCES["person"] if number == 1 else SENTENCES["persons"].format(people=number)


def listed(numbers: list[int]) -> str:
    """'2', '2 or 3', '2, 3 or 9'."""
    *some, last = map(str, numbers)
    return SENTENCES["listed"].format(list=", ".join(some), last=last) if some else last


def percent(share: float) -> str:
    return f"{floor(share * 100 + 0.5)} %"


def money(value: float) -> str:
    """Two decimals, a half upwards."""
    return f"{floor(value * 100 + 0.5) / 100:.2f}"


def spent(minutes: float | None) -> str:
    """'45 min', '1 h 40 min'; nothing where the practice does not say."""
    if minutes is None:
        return ""
    whole = floor(minutes + 0.5)
    if whole <= LONGEST_IN_MINUTES:
        return f"{whole} min"
    return f"{whole // MINUTES_AN_HOUR} h {whole % MINUTES_AN_HOUR} min"


def day_time(each: JobStep) -> str:
    """A step's time on the sheet for the day: said too where nobody set one, for then the sum lacks it."""
    if not each.counted:
        return SENTENCES["if_needed"]
    return spent(each.minutes) or SENTENCES["not_set"]


def both(amount: Amount) -> dict[str, str]:
    """The quantity component's dict."""
    metric, us = amount_words(amount, amount.unit), amount_words(amount, amount.us_unit)
    return {"metric": metric, "us": "" if us == metric else us}


def litres(value: float) -> dict[str, str]:
    return both(Amount(value / LITRES_A_CUBIC_METRE, unit("L"), unit("US gal"), 0))


def depth(mm: float) -> dict[str, str]:
    return both(Amount(mm / 1000, unit("mm"), unit("in"), 1))


def area(m2: float) -> dict[str, str]:
    return both(Amount(m2, unit("m2"), unit("ft2"), 1))


def headline(found: Verdict) -> str:
    if found.inside:
        return SENTENCES["inside"]
    if found.stretch is None:
        return SENTENCES["no_window"]
    return SENTENCES["too_early" if found.side == "before" else "too_late"].format(days=count(found.days_outside, "day"))


def edges(window: dict[str, Any]) -> str:
    """window: as in `job_values`."""
    if not window["from"]:
        return ""
    if window["from"] == "01-01" and window["to"] == "12-31":
        return SENTENCES["open_all_year"]
    best = SENTENCES["best"].format(day=month_day(window["best"])) if window["best"] else ""
    return SENTENCES["window"].format(first=month_day(window["from"]), last=month_day(window["to"]), best=best)


def settles(each: Settling, title: str) -> str:
    return SENTENCES["settles"].format(title=title, done=day(each.done_on), days=count(each.days, "day"), first=day(each.first_day))


def moved(each: JobStep, titles: dict[str, str]) -> str:
    """By how much a step has moved, and why; nothing for one that stands."""
    days = each.dated.moved_days
    if not days:
        return ""
    by = SENTENCES["later" if days > 0 else "earlier"].format(days=count(abs(days), "day"))
    if each.dated.moved_by:
        return SENTENCES["moved_by"].format(by=by, title=titles[each.dated.moved_by])
    return SENTENCES["settles_in_time"].format(by=by)


def usual(each: JobStep) -> list[Any]:
    """The words component's text: what the season usually is like on the step's date."""
    mean_c = round(each.mean_temperature_c * 10) / 10
    pair = both(Amount(to_si(mean_c, unit("°C")), unit("°C"), unit("°F"), 1))
    frost = percent(round(each.frost_chance * 1000) / 1000)
    return [SENTENCES["usual"], [pair["metric"], pair["us"]], SENTENCES["usual_growth"].format(growth=each.growth_class, frost=frost)]


def answers(each: Worked, main: tuple[str, ...]) -> list[dict[str, Any]]:
    """What a calculator answers at a step: what is bought, else its main results; each {name, metric, us}."""
    bought = each.quantity.buy
    wanted = (bought.result,) if bought else each.quantity.answers or main
    return [{"name": name, **both(amount)} for name, amount in each.run.results.items() if name in wanted]


def bought(each: Purchased) -> str:
    """A line's name, and why it has no product."""
    return f"{each.name}. {each.note}" if each.note else each.name


def included(cost: Cost) -> str:
    """'Included in the price: Scout the lawn, 4 times.'; nothing where every task is charged."""
    done = [SENTENCES["times"].format(name=name, times=times) if times > 1 else name for name, times in cost.included]
    return SENTENCES["included"].format(list="; ".join(done)) if done else ""


def spoil(away: Spoil) -> list[Any]:
    """The words component's text; nothing where nothing is carried away."""
    if not away.volume_m3:
        return []
    pair = both(Amount(away.volume_m3, unit("m3"), unit("yd3"), 1))
    counts = [count(number, one) for number, one in ((away.bags, "bag"), (away.trailer_loads, "trailer load")) if number]
    return [SENTENCES["spoil"], [pair["metric"], pair["us"]], SENTENCES["spoil_counts"].format(counts=" or ".join(counts)) if counts else "."]


def settings(book: Book, step: JobStep) -> list[Any]:
    """The words component's text: what machines are set to at a step; nothing where nothing is set."""
    parts: list[Any] = []
    for each in step.worked:
        record = book.calculators[each.quantity.calculator]
        for name in each.quantity.settings if not ask(each) else ():
            found = each.run.inputs.get(name) or each.run.results.get(name)
            if found is None:
                continue
            label = _short(record, name)
            pair = both(replace(found, decimals=SETTING_DECIMALS))
            parts += [f"{', ' if parts else SENTENCES['settings']}{label} ", [pair["metric"], pair["us"]]]
    return [*parts, "."] if parts else []


def _short(calculator: Calculator, name: str) -> str:
    asked, result = calculator.inputs.get(name), calculator.results.get(name)
    return asked.short or asked.question if asked else result.short or result.label if result else name


def ask(each: Worked) -> str:
    """What has to be typed in before a calculator at a step has an answer; nothing where it has one."""
    if each.needs_label:
        return SENTENCES["from_label"]
    return SENTENCES["measured"] if each.quantity.measured else ""


def packs(each: Purchased) -> str:
    return "" if each.packs is None else f"{count(each.packs, 'pack')}"


def clock(minutes: float) -> str:
    """'07:30' for minutes since midnight of the first day, 'day 2, 05:40' after the next midnight."""
    days, whole = divmod(floor(minutes + 0.5), 24 * MINUTES_AN_HOUR)
    told = f"{whole // MINUTES_AN_HOUR:02d}:{whole % MINUTES_AN_HOUR:02d}"
    return SENTENCES["day_clock"].format(day=days + 1, clock=told) if days else told
