"""What a job costs, by the practice's own prices. The arithmetic is the calculators'. Twin: job work."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from math import floor

from generator.book.records.calculator import Calculator
from generator.book.records.practice import Practice, PricedOperation
from generator.book.records.step import Step
from generator.book.records.task import Task
from generator.calculators.calculate import calculate
from generator.calculators.single_value import single
from generator.formula import plain_sum
from generator.jobs.amounts import Purchased

# The calculators that do the sums; a book without them has jobs without prices.
OPERATION_PRICE, ESTIMATE = "operation-price", "estimate"
CENTS = 100
SPOIL_NAME = "Spoil carried away"
HAIR = 1e-6  # Half a cent counts upwards even where a computer holds it a hair too low.


@dataclass(frozen=True)
class Done:
    """A step that counts: on which day it is done, and how often the machine goes over the lawn. added: by an inspection."""

    step: Step
    day: date
    passes: int
    added: bool = False


@dataclass(frozen=True)
class CostLine:
    """One line of an estimate, in the practice's currency. kind: work, product or spoil; times: how often work is done, each pass of a machine for itself."""

    kind: str
    name: str
    times: int
    amount: float


@dataclass(frozen=True)
class Cost:
    """A job's price in the practice's currency: its lines, and what they come to with the least charge and the tax.

    included: names of tasks that the practice does not charge apart, with how often they are done.
    """

    currency: str
    lines: tuple[CostLine, ...]
    before_tax: float
    tax: float
    total: float
    deposit: float | None
    included: tuple[tuple[str, int], ...] = ()


def cost(
    done: Iterable[Done], bought: tuple[Purchased, ...], spoil_m3: float, practice: Practice, tasks: Mapping[str, Task],
    calculators: Mapping[str, Calculator], area_m2: float,
) -> Cost | None:
    """What the job comes to; None where the practice has no prices, or the book no calculator for them.

    done: what counts of the job; what an inspection adds is charged once with the rest of its task that day. spoil_m3: to carry away [m3]; area_m2: of grass [m2].
    """
    if ESTIMATE not in calculators or OPERATION_PRICE not in calculators:
        return None
    often: dict[str, Counter[date]] = {}
    work = [each for each in done if each.step.who == "hands" and each.step.task in practice.operations]
    planned = {(each.step.task, each.day) for each in work if not each.added}
    for each in work:
        days = often.setdefault(each.step.task or "", Counter())
        if not each.added:
            days[each.day] += each.passes
        elif (each.step.task, each.day) not in planned:
            days[each.day] = max(days[each.day], each.passes)
    charged = {task: days for task, days in often.items() if practice.operations[task].charged_in_jobs}
    lines = [_work(task, days, practice.operations[task], tasks, calculators, area_m2) for task, days in charged.items()]
    lines += [CostLine("product", each.name, each.packs or 0, each.cost) for each in bought if each.cost is not None]
    if practice.spoil_price_per_m3 and spoil_m3:
        lines.append(CostLine("spoil", SPOIL_NAME, 1, in_cents(spoil_m3 * practice.spoil_price_per_m3)))
    known = tuple(line for line in lines if line is not None)
    included = tuple((tasks[task].name, days.total()) for task, days in often.items() if task not in charged)
    return _estimate(known, included, practice, calculators[ESTIMATE]) if known else None


def _work(
    task: str, days: Counter[date], operation: PricedOperation, tasks: Mapping[str, Task], calculators: Mapping[str, Calculator], area_m2: float
) -> CostLine | None:
    """A task on all its days; the least price is for a day, however often the machine goes over the lawn then."""
    if operation.price_per_100_m2:
        given = {"area": area_m2, "price_per_100_m2": operation.price_per_100_m2, "minimum_price": operation.minimum_price or 0.0}
        amount = plain_sum(
            single(calculate(calculators[OPERATION_PRICE], {**given, "times_over": float(passes)}).results["price"].si) for passes in days.values()
        )
    elif operation.minimum_price is not None:
        amount = operation.minimum_price * len(days)
    else:
        return None
    return CostLine("work", tasks[task].name, days.total(), in_cents(amount))


def in_cents(amount: float) -> float:
    """An amount to a hundredth of the currency, halves up; a line of an estimate is what it says [currency]."""
    return floor(amount * CENTS + 0.5 + HAIR) / CENTS


def _estimate(lines: tuple[CostLine, ...], included: tuple[tuple[str, int], ...], practice: Practice, calculator: Calculator) -> Cost:
    given: dict[str, float | tuple[float, ...]] = {
        "lines": tuple(line.amount for line in lines), "minimum_charge": practice.minimum_charge or 0.0,
        "tax": (practice.tax_percent or 0.0) / 100, "tax_inside": float(practice.prices_include_tax),
        "deposit_share": (practice.deposit_percent or 0.0) / 100,
    }
    results = {name: single(amount.si) for name, amount in calculate(calculator, given).results.items()}
    deposit = results["deposit"] if practice.deposit_percent else None
    return Cost(practice.currency, lines, results["before_tax"], results["tax_amount"], results["total"], deposit, included)
