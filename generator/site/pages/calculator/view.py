"""A calculator on a page: its form with the usual start, the answers to that start, the working and the examples."""

import json
import re
from collections.abc import Iterator, Mapping
from math import floor, log10
from typing import Any

from markupsafe import Markup

from generator.book.book import Book
from generator.book.fields.sourced import UNPUBLISHED, Sourced
from generator.book.records.calculator import Calculator, Constant, Example, Input
from generator.calculators.bindings import practice_filled
from generator.calculators.calculate import Amount, Calculation, calculate, default_si, figures, unit_after
from generator.calculators.prepared import prepared
from generator.calculators.single_value import Value, single
from generator.formula import to_mathml
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.calculator.calculator_index import calculator_index
from generator.site.pages.calculator.calculator_script import calculator_files
from generator.site.shared.fill_in import COUNTS_FILE, FILE, counts_script, fill_in_script, fill_in_view
from generator.site.shared.fill_in import SCRIPT as FILL_IN_SCRIPT
from generator.site.shared.lawn_pieces import calculator_scripts, lawn_pieces_view, of_the_lawn
from generator.units import Unit, from_si, to_si, unit, units

# Kinds that are read one way in this trade; a list of their units would only be in the way.
ONE_UNIT = ("a share", "an angle", "a plain number", "a count")
UNTIL_TYPED = {
    "label": "Type the rate from the label to get the product.",
    "report": "Type the levels from your report, or choose published ones. Each answer comes as soon as its level stands there.",
}
BASIS = {
    "printed": "The source prints this answer.",
    "recomputed": "The source prints another answer, but its own inputs give this one.",
    "arithmetic": "Not published: this is our own arithmetic, to check by hand.",
}
SECTIONS = (Section("check-it-yourself", "Check it yourself"), Section("method", "Method"), Section("published", "Published figures"), Section("figures", "Figures used"))

Filled = Mapping[str, tuple[float, str, str]]


def calculator_page(book: Book, id: str, here: PageContext) -> Page:
    """The page of one calculator, started with the practice's own feed where it asks for one."""
    calculator = book.calculators[id]
    view, fill_in = calculator_view(book, id, here, filled=practice_filled(book.practice, calculator)), fill_in_view(book, id, here)
    context = {
        "title": calculator.name, "calculator": view, "fill_in": fill_in, "summary": calculator.summary, "method": calculator.method,
        "examples": [_example(example, calculator, here) for example in calculator.examples],
        "constants": [_constant(each, here) for each in calculator.constants.values()],
        "published": [
            {"name": each.name, "note": each.note, "marks": here.sourcing.marks(each), "fills": [
                {"label": calculator.inputs[name].question, "text": pretty(text)} for name, text in each.fills.items()
            ]}
            for each in calculator.published
        ],
        "warnings": [
            {"text": each.say, "note": each.note, "marks": here.sourcing.marks(each)} for each in calculator.warnings
        ],
        "equations": _equations(calculator, here),
        "cautions": here.cautions(calculator.cautions), "tasks": [here.task_link(task) for task in calculator.tasks],
        "scripts": [*calculator_scripts(book, [view], here), *([here.links.file(FILL_IN_SCRIPT)] if fill_in else [])],
        "lawn": lawn_pieces_view(book, id, here),
    }
    return Page(
        f"calculators/{id}", calculator.name, "calculator", context, calculator.summary,
        words=calculator.misspellings, sections=SECTIONS,
    )


def calculator_view(book: Book, id: str, here: PageContext, filled: Filled | None = None, place: str = "") -> dict[str, Any]:
    """The calculator component's dict.

    filled: input name to (value, unit, where it comes from in words), as a guide binds them; the rest starts as usual.
    place: makes the ids unique where several stand on one page; a view with a place links to the calculator's own page.
    """
    calculator, key = book.calculators[id], f"calc-{id}{'-' + place if place else ''}"
    starts = {name: _start(asked, (filled or {}).get(name)) for name, asked in calculator.inputs.items()}
    run = calculate(calculator, {name: si for name, (si, _) in starts.items() if si is not None})
    fields = [_field(name, calculator, key, *starts[name]) for name in calculator.inputs]
    return {
        "id": key, "calculator": id, "script": here.links.file(f"assets/calculators/{id}.js"),
        "title": calculator.name, "summary": calculator.summary, "url": here.links.calculator(id) if place else None,
        "fields": [field for field in fields if not field["optional"] or field["from_words"]],
        "more": [field for field in fields if field["optional"] and not field["from_words"]],
        "results": _results(calculator, run, key), "working": _working(calculator, run),
        "said": [{"text": said.sentence, "weight": said.weight} for said in run.warnings if said.about is None],
        "address": _address(book, id) if here.edition.has("calculators") else None, "turn": _turn(calculator),
        "until_typed": _until_typed(calculator), "published": _offered(calculator),
    }


def _until_typed(calculator: Calculator) -> str | None:
    """What to do first where the form starts with an empty field."""
    printed_on = {asked.printed_on for asked in calculator.inputs.values() if asked.label_only}
    return next((sentence for place, sentence in UNTIL_TYPED.items() if place in printed_on), None)


def _offered(calculator: Calculator) -> list[dict[str, Any]]:
    """Published figures that the form fills in by name: each input to its number as typed and its unit."""
    return [
        {"name": each.name, "fills": json.dumps({name: _as_typed(text) for name, text in each.fills.items()}, separators=(",", ":"))}
        for each in calculator.published
    ]


def _as_typed(text: str) -> tuple[str, str | None]:
    """'36 ppm' -> ('36', 'ppm')."""
    number, _, spelling = text.partition(" ")
    return number, spelling or None


def _address(book: Book, id: str) -> str | None:
    """Where a link to the calculator leads: the book's public address, never the folder somebody happens to read it in."""
    public = book.practice.public_address if book.practice else None
    return f"{public}calculators/{id}.html" if public else None


def _turn(calculator: Calculator) -> dict[str, Any] | None:
    """What the calculator can be turned round with: the answers it shows, and the inputs an answer can give back."""
    inputs = [
        {"name": name, "label": asked.question} for name, asked in calculator.inputs.items() if not asked.many and not asked.label_only
    ]
    shown = sorted((item for item in calculator.results.items() if not item[1].working), key=lambda item: not item[1].main)
    results = [{"name": name, "label": result.label} for name, result in shown]
    return {"inputs": inputs, "results": results} if inputs and results else None


def _start(asked: Input, given: tuple[float, str, str] | None) -> tuple[Value | None, str | None]:
    """What a field starts with [SI] and where that comes from; None for a figure only the label can give."""
    if given is not None and unit(given[1]).dimension == unit(asked.unit).dimension:
        return to_si(given[0], unit(given[1])), given[2]
    return (None if asked.label_only else default_si(asked)), None


def _field(name: str, calculator: Calculator, key: str, si: Value | None, from_words: str | None) -> dict[str, Any]:
    asked = calculator.inputs[name]
    metric, us = unit(asked.unit), unit(asked.us_unit or asked.unit)
    us_text = _typed(si, us)
    if from_words is None and asked.us_default is not None:
        us_text = _listed(asked.us_default)
    choices = _choices(metric) + (_choices(unit(calculator.weighed[name].unit)) if name in calculator.weighed else [])
    return {
        "id": f"{key}-{name}", "name": name, "question": asked.question, "help": asked.help, "many": asked.many,
        "value": _typed(si, metric), "us_value": us_text, "unit": metric.spelling, "us_unit": us.spelling,
        "unit_words": pretty(unit_after("2", metric)), "choices": choices, "from_words": from_words,
        "optional": asked.optional, "label_only": asked.label_only, "lawn": of_the_lawn(name, asked),
    }


def _typed(si: Value | None, shown: Unit) -> str:
    """A start as a person would type it into the field, in that unit."""
    if si is None:
        return ""
    each = si if isinstance(si, tuple) else (si,)
    return ", ".join(figures(float(f"{from_si(value, shown):.12g}"), 2) for value in each)


def _listed(values: float | tuple[float, ...]) -> str:
    return ", ".join(f"{value:g}" for value in (values if isinstance(values, tuple) else (values,)))


def _choices(start: Unit) -> list[dict[str, str]]:
    """The units a reader may switch a field to; fewer than two leave the unit as plain words."""
    if start.kind in ONE_UNIT:
        return []
    kind = [each for each in units().values() if each.kind == start.kind and each.dimension == start.dimension]
    return [{"unit": each.spelling, "words": pretty(each.spelling)} for each in kind]


def pretty(spelling: str) -> str:
    """'kg/100 m2' -> 'kg/100 m²'."""
    return re.sub(r"(?<=[a-z])([23])\b", lambda found: "²³"[int(found[1]) - 2], spelling)


def amount_words(amount: Amount, shown: Unit) -> str:
    """'1.5 kg', to what can be measured out."""
    number = figures(single(amount.value(shown)), amount.decimals)
    return f"{number} {pretty(unit_after(number, shown))}".strip()


def _both(amount: Amount | None) -> dict[str, str]:
    if amount is None:
        return {"metric": "", "us": ""}
    metric, us = amount_words(amount, amount.unit), amount_words(amount, amount.us_unit)
    return {"metric": metric, "us": "" if us == metric else us}


def _results(calculator: Calculator, run: Calculation, key: str) -> list[dict[str, Any]]:
    return [
        {"id": f"{key}-{name}-result", "name": name, "label": result.label, "main": result.main, "note": result.note,
         **_both(run.results.get(name))}
        for name, result in calculator.results.items() if not result.working
    ]


def _working(calculator: Calculator, run: Calculation) -> list[dict[str, Any]]:
    ready = prepared(calculator)
    labels = {name: each.question for name, each in calculator.inputs.items()}
    labels |= {name: each.label for name, each in calculator.results.items()}
    steps = []
    for name, result in calculator.results.items():
        amount = run.results.get(name)
        exact = _exact(amount) if amount else ""
        steps.append({
            "name": name, "label": result.label, "exact": exact,
            "formula": Markup(to_mathml(ready.rules[name].formula, labels, result.label)),
        })
    return steps


def _exact(amount: Amount) -> str:
    number = f"{amount.value():.12g}"
    return f"{number} {pretty(unit_after(number, amount.unit))}".strip()


def _example(example: Example, calculator: Calculator, here: PageContext) -> dict[str, Any]:
    run = calculate(calculator, dict(example.inputs))
    results = []
    for name, expected in example.results.items():
        wanted = unit(expected.unit)
        # One digit beyond what the source printed, so that a reader sees how near it is.
        places = max(0, 1 - floor(log10(expected.within)))
        ours = figures(single(run.results[name].value(wanted)), places) if name in run.results else ""
        results.append({
            "label": calculator.results[name].label, "ours": f"{ours} {pretty(unit_after(ours, wanted))}".strip(),
            "theirs": f"{expected.value:g} {pretty(unit_after(f'{expected.value:g}', wanted))}".strip(),
        })
    # Arithmetic rests on nobody's practice.
    by_hand = example.basis == "arithmetic" and set(example.sources) <= set(UNPUBLISHED)
    return {
        "title": example.title, "where": example.where, "basis": BASIS[example.basis], "note": example.note,
        "published": example.basis != "arithmetic", "marks": {"marks": []} if by_hand else here.sourcing.marks(example), "results": results,
        "inputs": [{"label": calculator.inputs[name].question, "text": pretty(text)} for name, text in example.inputs.items()],
    }


def _constant(constant: Constant, here: PageContext) -> dict[str, Any]:
    value = f"{constant.value:g} {pretty(unit_after('2', unit(constant.unit)))}".strip()
    return {"value": value, "meaning": constant.meaning, "note": constant.note, "marks": here.sourcing.marks(constant)}


def _equations(calculator: Calculator, here: PageContext) -> list[dict[str, Any]]:
    """The published equations behind the results, each with its constants, its source and its limits."""
    rules = prepared(calculator).rules.values()
    return [
        {
            "title": equation.title, "where": equation.where, "limits": equation.limits,
            "constants": [f"{each.meaning}: {each.value:g} {pretty(each.unit)}" for each in equation.constants.values()],
            "marks": here.sourcing.marks(Sourced(source=equation.source)),
        }
        for equation in {rule.equation.id: rule.equation for rule in rules if rule.equation is not None}.values()
    ]


def pages(making: Making) -> Iterator[Page]:
    book = making.book
    yield calculator_index(book, making.here("calculators/index"))
    yield from (calculator_page(book, id, making.here(f"calculators/{id}")) for id in book.calculators)


def files(making: Making) -> dict[str, str]:
    return {**calculator_files(making.book.calculators), FILE: fill_in_script(making.seasons), COUNTS_FILE: counts_script(making.seasons)}
