"""The shipped rules, places and grasses are all the engine needs."""

from dataclasses import asdict
from typing import Any

import pytest

from generator.book.fields.sourced import Claim
from generator.season.inputs import EngineRules, climate_of, engine_rules_of
from generator.season.task_figures import TASK_FIGURES
from generator.units import Unit, from_si, to_si, unit
from generator.units.known_units import like
from tests.our_book import book
from tests.season.shipped import groups, places


def test_five_sites_are_named():
    assert set(engine_rules_of(groups()).sites) == {"open", "wall", "hollow", "shade", "exposed"}


@pytest.mark.parametrize("name", book().places)
def test_every_shipped_place_has_a_climate(name):
    place = book().places[name]
    climate = climate_of(place)
    assert climate.latitude_deg * (1 if place.country in ("US", "GB", "IE") else -1) > 0
    # Summer is warmer than winter, on its own side of the equator.
    january, july = climate.mean_c[0], climate.mean_c[6]
    assert (january < july) == (climate.latitude_deg > 0)


def test_the_shipped_places_span_the_kinds_of_climate():
    assert len(places()) >= 12
    assert {place.country for place in places().values()} == {"AU", "NZ", "ZA", "US", "GB"}


@pytest.mark.parametrize(("task", "name"), TASK_FIGURES)
def test_a_figure_of_a_task_means_the_same_in_any_unit(task: str, name: str) -> None:
    """A ceiling of 49 kg/ha is one of 4.9 g/m2, and soil at 55 °F is soil at 12.8 °C."""
    tasks = book().tasks
    figure = tasks[task].figures[name]
    usual, given = engine_rules_of(groups(), tasks), unit(figure.unit)
    for other in like(given.dimension):
        def converted(claim: Claim, wanted: Unit = other) -> dict[str, Any]:
            return {"unit": wanted.spelling} | {
                key: from_si(to_si(getattr(claim, key), unit(claim.unit)), wanted) for key in ("low", "use", "high") if getattr(claim, key) is not None
            }

        rewritten = figure.model_copy(update={**converted(figure), "others": tuple(each.model_copy(update=converted(each)) for each in figure.others)})
        changed = {**tasks, task: tasks[task].model_copy(update={"figures": {**tasks[task].figures, name: rewritten}})}
        assert flat(engine_rules_of(groups(), changed)) == pytest.approx(flat(usual), rel=1e-12), other


def flat(rules: EngineRules) -> dict[str, float]:
    """What tasks' figures decide."""
    feed, seldom = asdict(rules.feed), asdict(rules.pre_emergent)
    return {**feed, **seldom, "removed": rules.largest_share_removed, "ryegrass": rules.oversowing.night_c}


def test_a_unit_of_another_kind_is_no_amount() -> None:
    with pytest.raises(ValueError, match="g/m2 is a mass per area, not a length"):
        book().grasses["couch"].nitrogen_per_year.measured_in("mm")
