"""The contract with the browser: what Python and the page's scripts must both know, written once in its own room and collected here.

`asset_files` puts it at the head of the script that every page loads, as `Swardbook.contract`; what only the script of one part needs
stands at the head of that part's script, under the part's name. A sentence is a template with named places, "'{text}' divides by
zero.", filled by `str.format` here and by `Swardbook.filled` there. What still has to run on both sides is listed in
`generator/twins.yml`.
"""

import json
from collections.abc import Callable
from typing import Any

from generator.calculators.calculator_sentences import calculator_table
from generator.findings import LEAST_ALIKE, LONGEST_MISSPELT
from generator.formula.functions import SNAP, WIDEST_SNAP
from generator.formula.nodes import SENTENCES as FORMULA_SENTENCES
from generator.season.calendar_days import DAYS, MONTHS, MONTH_STARTS
from generator.units import unit_table
from generator.units.typed_text import reading_table


def of_every_page() -> dict[str, Any]:
    """JSON-able; found in a script as `Swardbook.contract`."""
    return {
        "units": unit_table(), "reading": reading_table(), "near": {"least_alike": LEAST_ALIKE, "longest": LONGEST_MISSPELT},
        "formula": {"sentences": FORMULA_SENTENCES, "snap": SNAP, "widest_snap": WIDEST_SNAP},
        "year": {"months": MONTHS, "starts": MONTH_STARTS, "days": DAYS},
    }


# Part -> what only its own script needs.
OF_A_PART: dict[str, Callable[[], dict[str, Any]]] = {"calculator": calculator_table}


def contract_script() -> str:
    """Sets `Swardbook.contract`, and stands before every other script."""
    return f"window.Swardbook = window.Swardbook || {{}};\nSwardbook.contract = {_text(of_every_page())};\n"


def part_script(name: str) -> str:
    """Sets what the script of this part needs, `Swardbook.contract['hold-or-go']`; empty for a part that needs nothing of its own."""
    return f"Swardbook.contract[{_text(name)}] = {_text(OF_A_PART[name]())};\n" if name in OF_A_PART else ""


def _text(value: Any) -> str:
    return json.dumps(value, ensure_ascii=True, separators=(",", ":"))
