"""The static script of one calculator: its inputs, limits and formulas as the browser needs them. Nothing is compiled there."""

import json
from typing import Any

from generator.formula import to_javascript
from generator.model.calculator import Calculator, Input, Result
from generator.turf.prepared import Prepared, Rule, prepared
from generator.turf.quantities import limit_si

LIMITS = ("above", "at_least", "at_most", "usual_low", "usual_high")


def calculator_script(id: str, calculator: Calculator) -> str:
    """A classic script that sets `Swardbook.calculators[id]`; it may run before or after the shared scripts."""
    ready = prepared(calculator)
    inputs = [_input(name, each, calculator) for name, each in calculator.inputs.items()]
    results = [_result(name, each, ready) for name, each in calculator.results.items()]
    warnings = [
        f'{{"say": {_text(warning.say)}, "weight": {_text(warning.weight)}, '
        f"\"when\": function (F, v) {{ return {to_javascript(condition)}; }}}}"
        for warning, condition in zip(calculator.warnings, ready.conditions, strict=True)
    ]
    return "\n".join([
        "window.Swardbook = window.Swardbook || {};",
        "Swardbook.calculators = Swardbook.calculators || {};",
        f"Swardbook.calculators[{_text(id)}] = {{",
        f'"inputs": {_text(inputs)},',
        f'"constants": {_text(ready.constants_si)},',
        '"results": [\n' + ",\n".join(results) + "\n],",
        '"warnings": [\n' + ",\n".join(warnings) + "\n]",
        "};\n",
    ])


def _text(value: Any) -> str:
    return json.dumps(value, ensure_ascii=True, separators=(",", ":"))


def _input(name: str, asked: Input, calculator: Calculator) -> dict[str, Any]:
    limits = {limit: limit_si(asked, limit) for limit in LIMITS}
    spec: dict[str, Any] = {"name": name, "question": asked.question, "unit": asked.unit, "us": asked.us_unit or asked.unit}
    spec |= {limit: value for limit, value in limits.items() if value is not None}
    spec |= {flag: True for flag in ("many", "whole") if getattr(asked, flag)}
    if name in calculator.weighed:
        spec["weighed"] = calculator.weighed[name].unit
    return spec


def _result(name: str, result: Result, ready: Prepared) -> str:
    spec: dict[str, Any] = {
        "name": name, "label": result.label, "unit": result.unit, "us": result.us_unit or result.unit, "decimals": result.decimals,
    }
    weighed = ready.calculator.weighed.get(name)
    if weighed:
        spec["weighed"] = [weighed.unit, weighed.us_unit or weighed.unit]
    return f'{_text(spec)[:-1]}, "work": {_function(ready.rules[name])}}}'


def _function(rule: Rule) -> str:
    own = f"v = Object.assign({{}}, v, {_text(dict(rule.constants_si))}); " if rule.constants_si else ""
    return f"function (F, v) {{ {own}return {to_javascript(rule.formula)}; }}"
