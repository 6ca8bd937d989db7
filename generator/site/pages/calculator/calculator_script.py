"""The static script of one calculator: its inputs, limits and formulas as the browser needs them. Nothing is compiled there.

A page loads one for each calculator it holds, so what is at its usual setting is left out: a US unit that is the metric one,
the weight `care` of a warning.
"""

import json
from collections.abc import Iterable, Mapping
from typing import Any

from generator.book.records.calculator import Calculator, Input, Result
from generator.calculators.prepared import Prepared, limit_si, prepared
from generator.formula import to_javascript

LIMITS = ("above", "at_least", "at_most", "usual_low", "usual_high")
USUAL_WEIGHT = "care"
NAMESPACE = "((window.Swardbook||={}).calculators||={})"  # It may run before or after the shared scripts.


def calculator_files(calculators: Mapping[str, Calculator]) -> dict[str, str]:
    """Path in the site to script, for each of these calculators."""
    return {f"assets/calculators/{id}.js": calculator_script(id, calculator) for id, calculator in calculators.items()}


def calculator_script(id: str, calculator: Calculator) -> str:
    """A classic script that sets `Swardbook.calculators[id]`: {inputs, results, warnings}."""
    ready = prepared(calculator)
    inputs = [_written(_input(name, each, calculator)) for name, each in calculator.inputs.items()]
    results = [_result(name, each, ready) for name, each in calculator.results.items()]
    warnings = [
        _written({"say": warning.say, "weight": _unless(warning.weight, USUAL_WEIGHT)}, when=to_javascript(condition, ready.constants_si))
        for warning, condition in zip(calculator.warnings, ready.conditions, strict=True)
    ]
    return f"{NAMESPACE}[{_text(id)}]={{inputs:{_list(inputs)},results:{_list(results)},warnings:{_list(warnings)}}};\n"


def _list(items: Iterable[str]) -> str:
    return f"[{','.join(f'{chr(10)}{item}' for item in items)}]"


def _written(spec: dict[str, Any], **functions: str) -> str:
    """An object of JavaScript; a value of None is left out."""
    parts = [f"{key}:{_text(value)}" for key, value in spec.items() if value is not None]
    return f"{{{','.join([*parts, *(f'{key}:{text}' for key, text in functions.items())])}}}"


def _text(value: Any) -> str:
    if isinstance(value, float) and value.is_integer():
        value = int(value)
    return json.dumps(value, ensure_ascii=True, separators=(",", ":"))


def _unless(value: str | None, usual: str) -> str | None:
    return None if value == usual else value


def _input(name: str, asked: Input, calculator: Calculator) -> dict[str, Any]:
    weighed = calculator.weighed.get(name)
    return {
        "name": name, "question": asked.question, "short": asked.short, "unit": asked.unit, "us": _unless(asked.us_unit, asked.unit) if asked.short else None,
        **{limit: limit_si(asked, limit) for limit in LIMITS},
        **{flag: getattr(asked, flag) or None for flag in ("many", "whole")},
        "weighed": weighed.unit if weighed else None,
    }  # fmt: skip


def _result(name: str, result: Result, ready: Prepared) -> str:
    weighed = ready.calculator.weighed.get(name)
    spec = {
        "name": name, "label": result.label, "short": result.short, "unit": result.unit, "us": _unless(result.us_unit, result.unit),
        "weighed": [weighed.unit, weighed.us_unit or weighed.unit] if weighed else None,
    }  # fmt: skip
    rule = ready.rules[name]
    return _written(spec, decimals=_text(result.decimals), work=to_javascript(rule.formula, {**ready.constants_si, **rule.constants_si}))
