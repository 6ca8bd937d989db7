"""Every worked example in tests/published: what a printed source gives for printed inputs.

One file, one example. It names what it tests: `equation:` (an id of generator.turf.equations) or `function:` (a key of
FUNCTIONS below). A new kind of subject is one more entry in RUNNERS.
"""

from collections.abc import Callable
from math import radians
from pathlib import Path

import pytest
import yaml

from generator.turf.equations import EQUATIONS
from generator.turf.water import sun
from generator.units import from_si, read_quantity, to_si, unit

FOLDER = Path(__file__).parent / "published"
FILES = sorted(FOLDER.glob("*.yml"))

# Worked through more than one equation, as the book does it.
FUNCTIONS: dict[str, tuple[dict[str, str], Callable[..., float]]] = {
    "extraterrestrial-radiation-of-day": (
        {"latitude": "deg", "day_of_year": "1"},
        lambda latitude, day_of_year: to_si(
            sun(latitude / radians(1)).extraterrestrial_radiation_mj[round(day_of_year) - 1], unit("MJ/m2/day")
        ),
    ),
    "daylight-of-day": (
        {"latitude": "deg", "day_of_year": "1"},
        lambda latitude, day_of_year: to_si(sun(latitude / radians(1)).daylight_h[round(day_of_year) - 1], unit("h")),
    ),
}


def read(inputs: dict[str, str], units: dict[str, str]) -> dict[str, float]:
    assert inputs.keys() == units.keys()
    return {name: read_quantity(text, unit(units[name])) for name, text in inputs.items()}


def run_equation(name: str, inputs: dict[str, str]) -> float:
    return EQUATIONS[name].evaluate(**read(inputs, EQUATIONS[name].inputs))


def run_function(name: str, inputs: dict[str, str]) -> float:
    units, function = FUNCTIONS[name]
    return function(**read(inputs, units))


RUNNERS: dict[str, Callable[[str, dict[str, str]], float]] = {"equation": run_equation, "function": run_function}


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_published_example(path):
    example = yaml.safe_load(path.read_text(encoding="utf-8"))
    assert example["source"]["author"] and example["source"]["where"], "an example names who published it and where"
    (kind,) = RUNNERS.keys() & example.keys()
    expected = example["expected"]
    found = from_si(RUNNERS[kind](example[kind], example["inputs"]), unit(expected["unit"]))
    assert abs(found - expected["value"]) <= expected["within"], (
        f"{example['source']['where']} prints {expected['value']} {expected['unit']}; this gives {found:.5g}"
    )


def test_every_file_is_an_example(request, capsys):
    """Counts what pytest collected, so that an example cannot drop out unseen."""
    ran = sum(1 for item in request.session.items if item.name.startswith("test_published_example["))
    with capsys.disabled():
        print(f" {ran} published examples ", end="")
    assert ran >= len(list(FOLDER.iterdir()))
