"""How long a programme's visits take, and what they and the year come to, by the same arithmetic as a job. Twin: visit price."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from math import floor

from generator.book.book import Book
from generator.book.records.step import Gear, Step
from generator.calculators.chosen import Chosen
from generator.calculators.single_value import single
from generator.formula import plain_sum
from generator.jobs.amounts import Purchased, Spoil, Stock, Worked, line_key, passes, shopping, spoil, worked
from generator.jobs.job import gear_of
from generator.jobs.price import CENTS, HAIR, CostLine, Done, cost
from generator.jobs.programme import MOW
from generator.jobs.step_time import minutes_of, people_of, time_of

# A price counts how often a task is done in a day, never which day that is.
ANY_DAY = date(2000, 1, 1)


@dataclass(frozen=True)
class VisitPrice:
    """One visit. minutes: of our own work [min]; None where the practice says nothing of any of it. Amounts in whole hundredths of the
    currency; lines as an estimate has them [currency]."""

    minutes: float | None
    lines: tuple[CostLine, ...]
    before_tax: int
    tax: int
    total: int


@dataclass(frozen=True)
class YearPrice:
    """A year's visits, and the cuts beside them, each a trip of its own. The year's sums are those of its visits and cuts, to the cent."""

    currency: str
    visits: tuple[VisitPrice, ...]
    cut: VisitPrice | None
    cuts: int
    shopping: tuple[Purchased, ...]

    @property
    def before_tax(self) -> int:
        return self._of("before_tax")

    @property
    def tax(self) -> int:
        return self._of("tax")

    @property
    def total(self) -> int:
        return self._of("total")

    def _of(self, name: str) -> int:
        parts = [int(getattr(each, name)) for each in self.visits]
        return plain_int(parts) + (int(getattr(self.cut, name)) * self.cuts if self.cut else 0)


def plain_int(parts: Iterable[int]) -> int:
    """Whole cents added up."""
    total = 0
    for each in parts:
        total += each
    return total


@dataclass(frozen=True)
class _Priced:
    step: Step
    worked: tuple[Worked, ...]


def step_of(book: Book, task: str) -> Step:
    """The step by which a visit does a task: the shared one that the task names, else the task alone."""
    record = book.tasks[task]
    if record.on_a_visit:
        return Step(id=record.on_a_visit, use=record.on_a_visit, day=0).with_shared(book.steps)
    return Step(id=task, task=task, day=0, title=record.name, say=record.summary, source="ours")


def chosen_for(book: Book, grass: str, task: str) -> Chosen:
    """What fills in the calculators of a task's step: the grass, its own plan, the practice, and the figures of the task."""
    record = book.grasses[grass]
    return Chosen(record, book.practice, book.renovations[record.renovation], book.season_groups, task=book.tasks[task], sheet=book.inspection)


def visit_gear(book: Book, tasks: Iterable[str]) -> tuple[Gear, ...]:
    """What a visit needs: the gear of its steps, and the machine that the practice does a task with where the step names none."""
    found: dict[str, Gear] = {}
    for task in tasks:
        step, operation = step_of(book, task), book.practice.operations.get(task)
        own = [gear_of(each, book.practice) for each in step.gear]
        if not any(each.machine for each in own) and operation and operation.machine:
            own.append(gear_of(Gear(name=book.practice.machines[operation.machine].name, machine=operation.machine), book.practice))
        for each in own:
            found.setdefault(each.machine or each.name, each)
    return tuple(found.values())


def visit_minutes(book: Book, grass: str, tasks: Sequence[str], area_m2: float, people: int | None = None) -> float | None:
    """How long a visit of these tasks takes [min]; None where the practice gives no time for any of them. area_m2: of grass [m2]."""
    visit = [_Priced(step := step_of(book, task), worked(step, chosen_for(book, grass, task), book.calculators, area_m2)) for task in tasks]
    away = spoil([(each.step, each.worked) for each in visit], book.practice, book.calculators)
    return _minutes(book, [Done(each.step, ANY_DAY, passes(each.step, each.worked)) for each in visit], away, area_m2, people)


def year_price(book: Book, grass: str, visits: Sequence[Sequence[str]], cuts: int, area_m2: float, people: int | None = None) -> YearPrice | None:
    """What a year's visits come to; None where the practice has no prices.

    grass: its id. visits: the tasks of each. cuts: how many mowings beside them. area_m2: of grass [m2]. A product is bought once for the
    year, its packs rounded up once, and each visit has the share of what it uses.
    """
    every = [[_Priced(step := step_of(book, task), worked(step, chosen_for(book, grass, task), book.calculators, area_m2)) for task in tasks] for tasks in visits]
    stock = Stock(book.practice, grass, book.grasses[grass].name)
    bought = shopping([(each.step, each.worked) for visit in every for each in visit], stock)
    shares = _shares(every, bought, stock)
    priced = [_visit(book, visit, share, area_m2, people) for visit, share in zip(every, shares, strict=True)]
    cut = _visit(book, [_Priced(step_of(book, MOW), ())], (), area_m2, people) if cuts and MOW in book.tasks else None
    if all(each is None for each in (*priced, cut)):
        return None
    return YearPrice(book.practice.currency, tuple(each or NOTHING for each in priced), cut, cuts if cut else 0, bought)


NOTHING = VisitPrice(None, (), 0, 0, 0)


def _shares(every: Sequence[Sequence[_Priced]], bought: Iterable[Purchased], stock: Stock) -> list[tuple[Purchased, ...]]:
    """For each visit, of each product its share of the year's packs, by what it uses; cents that do not divide go where they arise."""
    shares: list[list[Purchased]] = [[] for _ in every]
    for product in bought:
        if product.cost is None:
            continue
        used = [_used(visit, product, stock) for visit in every]
        total, before, upto = plain_sum(used), 0, 0.0
        for at, amount in enumerate(used):
            upto = plain_sum((upto, amount))
            cents = in_whole_cents(product.cost * (upto / total)) if total else 0
            if amount:
                shares[at].append(replace(product, packs=1, price_each=(cents - before) / CENTS))
            before = cents
    return [tuple(each) for each in shares]


def _used(visit: Sequence[_Priced], product: Purchased, stock: Stock) -> float:
    """How much of a product a visit uses, in the product's SI unit."""
    return plain_sum(
        single(amount.si) for each in visit for one in each.worked
        if (buy := one.quantity.buy) and (amount := one.run.results.get(buy.result))
        and line_key(buy, each.step, stock, amount.unit.kind) == product.product
    )


def _visit(book: Book, visit: Sequence[_Priced], bought: tuple[Purchased, ...], area_m2: float, people: int | None) -> VisitPrice | None:
    practice, calculators = book.practice, book.calculators
    away = spoil([(each.step, each.worked) for each in visit], practice, calculators)
    done = [Done(each.step, ANY_DAY, passes(each.step, each.worked)) for each in visit]
    found = cost(done, bought, away.volume_m3, practice, book.tasks, calculators, area_m2)
    minutes = _minutes(book, done, away, area_m2, people)
    if found is None:
        return None if minutes is None else replace(NOTHING, minutes=minutes)
    return VisitPrice(minutes, found.lines, *(in_whole_cents(each) for each in (found.before_tax, found.tax, found.total)))


def _minutes(book: Book, done: Iterable[Done], away: Spoil, area_m2: float, people: int | None) -> float | None:
    """Of our own work [min]; what the practice gives no time for is not in it."""
    found = []
    for each in done:
        time = time_of(each.step, book.practice, book.calculators)
        minutes = minutes_of(time, book.calculators, area_m2, each.passes, people_of(book.practice, people), away) if time else None
        found += [] if minutes is None else [minutes]
    return plain_sum(found) if found else None


def in_whole_cents(amount: float) -> int:
    """Halves up [hundredths of the currency]."""
    return floor(amount * CENTS + 0.5 + HAIR)


