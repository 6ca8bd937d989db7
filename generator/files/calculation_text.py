"""What the command line says of calculators: as text for people, as plain values for programs."""

from collections.abc import Mapping
from textwrap import fill
from typing import Any

from generator.book.records.calculator import Calculator
from generator.calculators.calculate import Amount, Calculation, figures, unit_after

WIDTH = 100


def calculation_values(run: Calculation, us: bool = False, solved: str | None = None) -> dict[str, Any]:
    """{"inputs": {name: {"value", "unit"}}, "results": {name: {"value", "unit"}}, "warnings": [sentence]}, unrounded.

    us: results in US units; inputs keep the unit that a plain number is read in, all but the one that was `solved` for.
    """
    return {
        "inputs": {name: _value(amount, us and name == solved) for name, amount in run.inputs.items()},
        "results": {name: _value(amount, us) for name, amount in run.results.items()},
        "warnings": [said.sentence for said in run.warnings],
    }


def _value(amount: Amount, us: bool) -> dict[str, Any]:
    shown = amount.us_unit if us else amount.unit
    value = amount.value(shown)
    return {"value": list(value) if isinstance(value, tuple) else value, "unit": shown.spelling}


def listing_values(calculators: Mapping[str, Calculator]) -> dict[str, Any]:
    """Every calculator with its inputs, results and units, by id."""
    return {id: _listed(calculator) for id, calculator in calculators.items()}


def _listed(calculator: Calculator) -> dict[str, Any]:
    inputs = {}
    for name, asked in calculator.inputs.items():
        default = None if asked.label_only else list(asked.default) if isinstance(asked.default, tuple) else asked.default
        inputs[name] = {
            "question": asked.question, "unit": asked.unit, "us_unit": asked.us_unit or asked.unit, "default": default,
            "optional": asked.optional, "many": asked.many,
        }
    return {
        "name": calculator.name, "summary": calculator.summary, "inputs": inputs,
        "results": {
            name: {"label": result.label, "unit": result.unit, "us_unit": result.us_unit or result.unit}
            for name, result in calculator.results.items()
        },
    }


def calculation_text(
    calculator: Calculator, run: Calculation, us: bool = False, where_from: Mapping[str, str] | None = None, solved: str | None = None
) -> str:
    """The run for reading: what was given, the answers, what to mind, how it was worked out.

    where_from: input to the words for where its value was filled in from.
    """
    told = {name: f" ({words})" for name, words in (where_from or {}).items()}
    given = [
        (name, _words(amount, us and name == solved), f"{calculator.inputs[name].question}{told.get(name, '')}")
        for name, amount in run.inputs.items()
    ]
    answers = [(name, _words(amount, us), calculator.results[name].label) for name, amount in run.results.items()]
    width = max(len(name) for name, _, _ in (*given, *answers))
    lines = [calculator.name, "", "Given", *_rows(given, width), "", "Answers", *_rows(answers, width)]
    if run.warnings:
        lines += ["", "Mind"]
        lines += [fill(said.sentence, WIDTH, initial_indent="  - ", subsequent_indent="    ") for said in run.warnings]
    return "\n".join([*lines, "", fill(f"Method: {calculator.method}", WIDTH)])


def _rows(rows: list[tuple[str, str, str]], width: int) -> list[str]:
    across = max((len(words) for _, words, _ in rows if len(words) <= 24), default=0)
    return [f"  {name:<{width}}  {words:<{across}}  {label}" for name, words, label in rows]


def _words(amount: Amount, us: bool) -> str:
    shown = amount.us_unit if us else amount.unit
    value = amount.value(shown)
    numbers = [figures(each, 4 if amount.decimals is None else amount.decimals) for each in (value if isinstance(value, tuple) else (value,))]
    return f"{', '.join(numbers)} {unit_after(numbers[-1], shown)}".strip()


def listing_text(calculators: Mapping[str, Calculator]) -> str:
    """Every calculator in a few lines: what it answers, what it takes and gives, with the unit of a plain number."""
    blocks = []
    for id, calculator in calculators.items():
        takes = ", ".join(f"{name} [{each.unit}]{'?' if each.optional else ''}" for name, each in calculator.inputs.items())
        gives = ", ".join(f"{name} [{each.unit}]" for name, each in calculator.results.items())
        blocks.append("\n".join([
            f"{id}: {calculator.summary}",
            fill(f"takes {takes}", WIDTH, initial_indent="  ", subsequent_indent="    "),
            fill(f"gives {gives}", WIDTH, initial_indent="  ", subsequent_indent="    "),
        ]))
    note = "A plain number is taken in the unit in brackets; you may type another unit: area='2600 ft2'. '?' may be left out."
    return "\n\n".join([*blocks, note])
