"""Every worked example in tests/published: what a printed source gives for printed inputs.

One file, one example. It names what it tests: `equation:` (an id of generator.season.equations.every_equation) or `function:` (a key of
FUNCTIONS below). A new kind of subject is one more entry in RUNNERS.
"""

from collections.abc import Callable
from math import radians
from pathlib import Path

import pytest

from generator.season.climate.sun import sun
from generator.season.equations.every_equation import EQUATIONS
from generator.season.water.penman import Weather, clear_sky, penman_monteith, saturation_kpa, sun_from_sunshine
from generator.units import from_si, read_quantity, to_si, unit
from tests.yaml_files import read_yaml

ROOT = Path(__file__).parents[1]
FOLDER = ROOT / "tests" / "published"
NOT_EXPRESSED = FOLDER / "not-expressed.yml"
# Windows are scored by tests/season/test_published_windows.py.
FILES = sorted(set(FOLDER.glob("*.yml")) - {NOT_EXPRESSED, FOLDER / "windows.yml"})

def penman_monteith_of_day(
    latitude, elevation, day_of_year, minimum_temperature, maximum_temperature, wind_speed, actual_vapour_pressure=None,
    sunshine=None, solar_radiation=None, soil_heat_flux=0.0,
):
    """In SI, as the examples are read; without vapour pressure it is taken at the minimum (equation 48)."""
    light, day = sun(latitude / radians(1)), round(day_of_year) - 1
    above, low, high = light.extraterrestrial_radiation_mj[day], minimum_temperature - 273.15, maximum_temperature - 273.15
    if solar_radiation is None:
        at_ground = sun_from_sunshine(sunshine / 3600, light.daylight_h[day], above)
    else:
        at_ground = from_si(solar_radiation, unit("MJ/m2/day"))
    vapour = saturation_kpa(low) if actual_vapour_pressure is None else actual_vapour_pressure / 1000
    weather = Weather(
        low, high, vapour, at_ground, clear_sky(elevation, above), elevation, from_si(soil_heat_flux, unit("MJ/m2/day")), wind_speed,
    )
    return to_si(penman_monteith(weather), unit("mm/day"))


DAY_OF_WEATHER = {
    "latitude": "deg", "elevation": "m", "day_of_year": "1", "minimum_temperature": "°C", "maximum_temperature": "°C",
    "wind_speed": "m/s",
}
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
    "penman-monteith-of-day": (
        {**DAY_OF_WEATHER, "actual_vapour_pressure": "kPa", "sunshine": "h", "soil_heat_flux": "MJ/m2/day"}, penman_monteith_of_day,
    ),
    "penman-monteith-of-day-by-radiation": ({**DAY_OF_WEATHER, "solar_radiation": "MJ/m2/day"}, penman_monteith_of_day),
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
    example = read_yaml(path)
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
    assert ran >= len(FILES)


def test_what_no_calculator_gives_says_why_and_what_holds_it():
    sources = read_yaml(ROOT / "data" / "sources.yml").keys() | {"common practice"}
    for record in read_yaml(NOT_EXPRESSED):
        assert record.keys() - {"held_by"} == {"source", "where", "what", "why"} and all(record.values()), record
        assert record["source"] in sources, record
        path, _, name = record.get("held_by", "tests/test_published.py").partition("::")
        assert name in (ROOT / path).read_text(encoding="utf-8"), record
