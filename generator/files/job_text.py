"""A dated job as text for a terminal, and as comma-separated values for a spreadsheet."""

from dataclasses import replace
from datetime import date
from textwrap import fill

from generator.calculators.calculate import Amount, figures, unit_after
from generator.calculators.single_value import single
from generator.files.csv_file import csv_text
from generator.formula import plain_sum
from generator.jobs.amounts import Purchased, Spoil, Worked
from generator.jobs.job import Job, JobStep, NeededGear
from generator.jobs.job_sentences import SENTENCES, SETTING_DECIMALS
from generator.jobs.price import Cost
from generator.words.reason_text import plain, said, sentence, text

WIDTH = 100


def job_text(job: Job, plan: str, grass: str, place: str, us: bool = False) -> str:
    """The job for reading: the window, the steps by date, what to buy, what to book, what is left out and why. us: the window's reason in US units."""
    lines = [f"{plan}: {grass}, {place}, {figures(job.request.area_m2, 1)} m2", ""]
    first = [plain(sentence(said(each)), us) for each in job.first]
    for said_first in first:
        lines += [_wrapped(said_first), ""]
    lines += [_wrapped(f"{'In' if job.verdict.inside else 'Outside'} the window. {text(job.verdict.why, us)}"), ""]
    if job.what_then and (job.first or not job.verdict.inside):
        lines += [*(fill(each.text, WIDTH, initial_indent="  - ", subsequent_indent="    ") for each in job.what_then), ""]
    lines += [f"Any frost in the four weeks from {day(job.request.on)}: {round(job.verdict.frost_chance * 100)} %.", ""]
    for wait in job.settling:
        lines += [_wrapped(f"{wait.step} on {day(wait.done_on)} needs {wait.days} days here: the first possible day is {day(wait.first_day)}."), ""]
    lines.append("Steps")
    for each in job.steps:
        lines += _step(each)
    lines += _section("To buy", [*first, *(purchase_words(each) for each in job.shopping)])
    lines += _section("To carry away", _spoil(job.spoil))
    lines += _section("Gear", [_gear(each) for each in job.gear])
    lines += _section("Water", _water(job))
    lines += _section("Price", [*_priced(job.cost), *left_open(job)]) if job.cost else []
    lines += _section("Left out", [f"{each.step.title}: {each.reason}" for each in job.left_out])
    return "\n".join(lines)


def _step(each: JobStep) -> list[str]:
    dated, step = each.dated, each.dated.step.step
    until = f" to {day(dated.until)}" if dated.until else ""
    moved = ""
    if dated.moved_days:
        count = abs(dated.moved_days)
        moved = f"  [{count} {'day' if count == 1 else 'days'} {'later' if dated.moved_days > 0 else 'earlier'} than planned"
        moved += f", after {dated.moved_by}]" if dated.moved_by else "]"
    lines = [f"  {day(dated.date)}{until}  {step.title}{moved}"]
    lines += [f"      {quantity_words(quantity)}" for quantity in each.worked if quantity_words(quantity)]
    lines += [f"      {settings}" for quantity in each.worked if (settings := settings_words(quantity))]
    if not each.counted:
        lines.append(fill(f"Only where: {step.only_where} {SENTENCES['open']}", WIDTH, initial_indent="      ", subsequent_indent="      "))
    if step.wait_for:
        lines.append(fill(f"Wait for: {step.wait_for}", WIDTH, initial_indent="      ", subsequent_indent="      "))
    return lines


def quantity_words(quantity: Worked) -> str:
    """The answers of a calculator at a step: what is bought, else its first two."""
    if quantity.needs_label:
        return f"{quantity.quantity.calculator}: type in the rate from the label"
    if quantity.quantity.measured:
        return f"{quantity.quantity.calculator}: measure it on the day and type it in"
    bought = quantity.quantity.buy
    shown = {bought.result} if bought else set(quantity.quantity.answers) or set(list(quantity.run.results)[:2])
    return f"{quantity.quantity.calculator}: " + ", ".join(
        f"{name.replace('_', ' ')} {amount_words(amount)}" for name, amount in quantity.run.results.items() if name in shown
    )


def settings_words(quantity: Worked) -> str:
    """What the machine is set to: 'set: tine diameter 13 mm, depth 75 mm'; nothing where nothing is set, or all is measured first."""
    if quantity.needs_label or quantity.quantity.measured:
        return ""
    known = {**quantity.run.inputs, **quantity.run.results}
    said = [f"{name.replace('_', ' ')} {amount_words(replace(known[name], decimals=SETTING_DECIMALS))}" for name in quantity.quantity.settings if name in known]
    return f"set: {', '.join(said)}" if said else ""


def purchase_words(each: Purchased) -> str:
    """'Sand: 2.3 t, 3 packs, 285.00'."""
    packs = "" if each.packs is None else f", {each.packs} {'pack' if each.packs == 1 else 'packs'}"
    cost = "" if each.cost is None else f", {each.cost:.2f}"
    return f"{each.name}: {amount_words(each.amount)}{packs}{cost}{f'. {each.note}' if each.note else ''}"


def _gear(each: NeededGear) -> str:
    book = f", {each.from_where} by {day(each.book_by)}" if each.book_by else ""
    return f"{each.name}: needed {day(each.needed)}{book}"


def _spoil(away: Spoil) -> list[str]:
    if not away.volume_m3:
        return []
    counts = [f"{number} {one}{'' if number == 1 else 's'}" for number, one in ((away.bags, "bag"), (away.trailer_loads, "trailer load")) if number]
    return [f"{figures(away.volume_m3, 1)} m3 loose" + (f", which is {' or '.join(counts)}" if counts else "")]


def _water(job: Job) -> list[str]:
    """What the waterings of the job come to, and what rain spares."""
    days = [each for step in job.steps for each in step.watering]
    spared = [each for each in days if each.rain_mm is not None]
    if not days:
        return []
    rows = [f"{plain_sum(each.litres for each in days if each.rain_mm is None):.0f} L on {len(days) - len(spared)} days"]
    return rows + ([f"Rain covers {len(spared)} more: {plain_sum(each.litres for each in spared):.0f} L less to give"] if spared else [])


def left_open(job: Job) -> list[str]:
    """What is done only where needed, and not counted so far."""
    titles = [each.dated.step.step.title or each.id for each in job.steps if not each.counted]
    return [SENTENCES["left_open"].format(list="; ".join(titles))] if titles else []


def _priced(found: Cost) -> list[str]:
    rows = [f"{line.name}{f', {line.times} times' if line.times > 1 else ''}: {line.amount:.2f}" for line in found.lines]
    rows += [f"Included in the price: {name}{f', {times} times' if times > 1 else ''}" for name, times in found.included]
    return [*rows, f"Before tax: {found.before_tax:.2f}", f"Tax: {found.tax:.2f}", f"To pay: {found.total:.2f} {found.currency}"]


def _section(title: str, rows: list[str]) -> list[str]:
    return ["", title, *(fill(row, WIDTH, initial_indent="  ", subsequent_indent="    ") for row in rows)] if rows else []


def _wrapped(text: str) -> str:
    return fill(text, WIDTH)


def day(value: date) -> str:
    """'Mon 12 Oct 2026'."""
    return f"{value:%a} {value.day} {value:%b %Y}"


def amount_words(amount: Amount) -> str:
    """'4.8 kg', to what can be measured out."""
    number = figures(single(amount.value()), amount.decimals)
    return f"{number} {unit_after(number, amount.unit)}".strip()


COLUMNS = ("date", "until", "day", "step", "task", "title", "who", "quantities", "wait_for", "cautions")


def job_csv(job: Job) -> str:
    """A row a step under a row of names (RFC 4180)."""
    rows: list[tuple[object, ...]] = [COLUMNS]
    for each in job.steps:
        dated, step = each.dated, each.dated.step.step
        rows.append((
            dated.date.isoformat(), dated.until.isoformat() if dated.until else "", step.day, step.id, step.task or "", step.title, step.who,
            "; ".join(filter(None, map(quantity_words, each.worked))), step.wait_for or "", " ".join(step.cautions),
        ))
    return csv_text(rows)
