"""The nitrogen that each lawn had in a year, added up from the feeds put down for it. Twin: nitrogen of a record."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from generator.book.records.calculator import Calculator
from generator.calculators.calculate import calculate
from generator.calculators.single_value import single

# Column -> why a feed cannot be counted without it.
NOT_WRITTEN = {
    "area": "its area is not written down", "amount": "the product used is not written down",
    "nitrogen_percent": "the nitrogen on the bag is not written down",
}


@dataclass(frozen=True)
class LawnYear:
    """One lawn in one calendar year.

    nitrogen_kg_per_m2: the sum over its feeds, each on the ground that it fed; feeds: how many were counted; left_out: numbers of
    the entries that could not be, with the reason; grass: the last one named.
    """

    lawn: str
    year: int
    nitrogen_kg_per_m2: float
    feeds: int
    left_out: tuple[tuple[int, str], ...] = ()
    grass: str | None = None


def nitrogen_of(calculator: Calculator, entry: Mapping[str, str]) -> tuple[float | None, str]:
    """Nitrogen of one feed [kg/m2], or None and why it cannot be counted.

    entry: what was written, by column: area, amount (a mass) and nitrogen_percent.
    """
    for column, why in NOT_WRITTEN.items():
        if not entry.get(column):
            return None, why
    run = calculate(calculator, {"product": entry["amount"], "area": entry["area"], "nitrogen_percent": entry["nitrogen_percent"]})
    wrong = [problem.sentence for problem in run.problems if problem.about in ("product", "area", "nitrogen_percent", "nitrogen_rate")]
    if wrong or "nitrogen_rate" not in run.results:
        return None, wrong[0] if wrong else "there is no answer for it"
    return single(run.results["nitrogen_rate"].si), ""


def nitrogen_by_lawn(calculator: Calculator, entries: Iterable[Mapping[str, str]]) -> list[LawnYear]:
    """Every lawn and calendar year with a feed, by lawn and year [kg/m2].

    entries: what was written, by column, as nitrogen_of reads it; sprays are passed over.
    """
    found: dict[tuple[str, int], LawnYear] = {}
    for number, entry in enumerate(entries):
        if entry.get("work") != "feed":
            continue
        key = entry["lawn"], int(entry["date"][:4])
        before = found.get(key, LawnYear(*key, 0.0, 0))
        nitrogen, why = nitrogen_of(calculator, entry)
        left_out = before.left_out if nitrogen is not None else (*before.left_out, (number, why))
        found[key] = LawnYear(
            *key, before.nitrogen_kg_per_m2 + (nitrogen or 0.0), before.feeds + (nitrogen is not None), left_out,
            entry.get("grass") or before.grass,
        )
    return [found[key] for key in sorted(found)]
