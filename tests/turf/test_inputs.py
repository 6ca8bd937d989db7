"""The shipped rules, places and grasses are all the engine needs, and what is missing is named."""

import pytest

from generator.model.practice import SeasonGroups
from generator.turf.engine_figures import RULES
from generator.turf.inputs import climate_of, engine_rules_of, missing_rules
from tests.turf.shipped import groups, places


def test_the_shipped_rules_are_complete_and_all_used():
    assert missing_rules(groups()) == []
    assert set(groups().rules) == set(RULES)


def test_five_sites_are_named():
    assert set(engine_rules_of(groups()).sites) == {"open", "wall", "hollow", "shade", "exposed"}


def test_what_is_missing_is_named():
    data = groups().model_dump()
    del data["rules"]["wet_rain"], data["sites"]["open"], data["sites"]["shade"]["evaporation_share"]
    assert missing_rules(SeasonGroups.model_validate(data)) == [
        ("rules", "wet_rain"), ("sites", "open"), ("sites", "shade", "evaporation_share"),
    ]


@pytest.mark.parametrize("name", places())
def test_every_shipped_place_has_a_climate(name):
    climate = climate_of(places()[name])
    assert climate.latitude_deg * (1 if places()[name].country in ("US", "GB") else -1) > 0
    # Summer is warmer than winter, on its own side of the equator.
    january, july = climate.mean_c[0], climate.mean_c[6]
    assert (january < july) == (climate.latitude_deg > 0)


def test_the_shipped_places_span_the_kinds_of_climate():
    assert len(places()) >= 12
    assert {place.country for place in places().values()} == {"AU", "NZ", "ZA", "US", "GB"}
