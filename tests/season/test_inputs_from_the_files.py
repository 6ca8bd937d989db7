"""Each figure that the engine takes is the one that stands in the file, read here as plain YAML."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from generator.season.climate.climate import Site, Soil
from generator.season.engine_rules import SoilWater
from generator.season.inputs import climate_of, engine_rules_of, grass_season_of
from tests.our_book import book
from tests.season.shipped import groups, places

DATA = Path(__file__).parents[2] / "data"
FILE: dict[str, Any] = yaml.safe_load((DATA / "season-groups.yml").read_text(encoding="utf-8"))
RULES = FILE["rules"]


def use(figure: dict[str, Any]) -> float:
    """The number to calculate with: the one that is used, or the middle of its range."""
    return figure["use"] if "use" in figure else (figure["low"] + figure["high"]) / 2


# Field of the engine's window rules -> figure of the file for warm-season and for cool-season grass; None where it sets none.
BOTH = ("full_recovery_potential", "longest_stretch", "moist_summer", "preferred_weeks", "peak_share", "no_slack_share", "frost_weeks", "wet_ratio", "little_growth", "least_growth", "shortest_weeks")
WINDOWS = {name: (name, name) for name in BOTH} | {
    "start_share": ("warm_start_share", "cool_start_share"), "open_share": ("cool_open_share",) * 2, "open_rise": ("warm_open_rise",) * 2,
    "preferred_rise": ("warm_preferred_rise",) * 2, "preferred_rise_dormant": ("warm_preferred_rise_dormant",) * 2,
    "long_dormancy_days": ("long_dormancy",) * 2, "preferred_share": ("cool_preferred_share",) * 2, "seed_soil_c": ("seed_soil",) * 2,
    "slow_share": ("warm_slow_share", "cool_slow_share"), "heat_limit_c": ("warm_heat_limit", "cool_heat_limit"),
    "turn_k": ("summer_turn", "summer_turn"), "frost_risk": ("warm_frost_risk", None),
    "frost_risk_surface_running": ("warm_frost_risk_surface_running", None), "wet_rain_mm_per_day": ("wet_rain", "wet_rain"),
    "dormant_soil_c": ("warm_dormant_soil", "cool_dormant_soil"), "green_up_soil_c": ("warm_green_up_soil", None),
}


SEEDLING_WEEKS = (use(RULES["seedling_weeks"]), RULES["overseeding_weeks"]["low"], RULES["overseeding_weeks"]["high"])


@pytest.mark.parametrize(("group", "place"), [("warm", 0), ("cool", 1)])
def test_every_threshold_of_the_windows(group, place):
    found = engine_rules_of(groups(), book().tasks).windows[group]
    assert vars(found) == {"group": group, "seedling_weeks": SEEDLING_WEEKS} | {field: figure[place] and use(RULES[figure[place]]) for field, figure in WINDOWS.items()}


def test_the_numbers_of_the_frost_model_and_of_the_soil():
    found = engine_rules_of(groups(), book().tasks)
    names = {
        "air_frost_c": "air_frost_c", "ground_frost_c": "ground_frost_c", "spread_base_k": "minimum_spread_base",
        "spread_per_range": "minimum_spread_per_range", "night_to_night": "night_to_night", "counting_step_k": "counting_step",
        "year_to_year_k": "year_to_year_spread",
    }
    assert vars(found.frost) == {field: use(RULES[name]) for field, name in names.items()}
    # Millimetres are thousandths of a metre, and the diffusivity is given by the hour.
    assert found.soil == Soil(pytest.approx(use(RULES["soil_depth"]) / 1000), pytest.approx(use(RULES["soil_diffusivity"]) / 3600))


def test_every_site_and_every_soil():
    found = engine_rules_of(groups(), book().tasks)
    assert found.sites == {
        name: Site(name, use(each["maximum_offset"]), use(each["minimum_offset"]), use(each["evaporation_share"])) for name, each in FILE["sites"].items()
    }
    ponding, spells = use(RULES["ponding"]), use(RULES["spells_a_morning"])
    assert found.soils == {
        id: SoilWater(
            id, each["name"], use(each["available_water"]), use(each["infiltration"]), use(each["root_depth"]), ponding, spells, each["light_dressings"],
            each.get("first") and " ".join(each["first"].split()),
        )
        for id, each in FILE["soils"].items()
    }


def task_figure(task: str, name: str) -> dict[str, Any]:
    return yaml.safe_load((DATA / "tasks" / f"{task}.yml").read_text(encoding="utf-8"))["figures"][name]


def test_what_stands_in_the_tasks_is_read_there():
    """Degrees of soil, grams to a square metre of a dressing, and shares as parts of one."""
    found = engine_rules_of(groups(), book().tasks)
    feed = {name: use(task_figure("feed", name)) for name in (
        "nitrogen-one-dressing-ceiling", "soluble-nitrogen-one-dressing-ceiling", "slow-release-share", "light-dressing-on-sand",
    )}
    assert vars(found.feed) == {
        "ceiling": feed["nitrogen-one-dressing-ceiling"], "soluble_ceiling": feed["soluble-nitrogen-one-dressing-ceiling"],
        "slow_release_share": pytest.approx(feed["slow-release-share"] / 100), "light_dressing": feed["light-dressing-on-sand"],
        "last_feed_weeks": use(RULES["last_feed_weeks"]), "cool_autumn_share": use(RULES["cool_autumn_share"]),
    }
    assert found.largest_share_removed == pytest.approx(use(task_figure("mow", "largest-share-removed")) / 100)
    cool = FILE["cool"]
    assert vars(found.oversowing) == {
        "night_c": use(RULES["ryegrass_night"]), "rise": use(RULES["ryegrass_rise"]), "transition_night_c": use(RULES["warm_transition_night"]),
        "ryegrass": (use(cool["growth_optimum"]), use(cool["growth_spread"]), False),
        "ryegrass_rules": found.windows["cool"],
    }
    soil = task_figure("pre-emergent", "soil-temperature-at-application")
    ends = [each[end] for each in (soil, *soil.get("others", ())) for end in ("low", "use", "high") if end in each]
    assert (found.pre_emergent.earliest_soil_c, found.pre_emergent.usual_soil_c, found.pre_emergent.latest_soil_c) == (use(RULES["seed_soil"]), use(soil), max(ends))


def test_a_book_whose_tasks_give_no_figures_has_none_of_them():
    """One without tasks, one without these, and one whose tasks give other figures only."""
    bare = {id: task.model_copy(update={"figures": {}}) for id, task in book().tasks.items()}
    for tasks in (None, {}, {"mow": bare["mow"]}, bare):
        found = engine_rules_of(groups(), tasks)
        feed = found.feed
        assert (found.pre_emergent, found.largest_share_removed) == (None, None)
        assert (feed.ceiling, feed.soluble_ceiling, feed.slow_release_share, feed.light_dressing) == (None,) * 4
        assert feed.last_feed_weeks == use(RULES["last_feed_weeks"])


@pytest.mark.parametrize("id", sorted(book().grasses))
def test_a_grass_is_its_own_figures_and_its_group_s_otherwise(id):
    file: dict[str, Any] = yaml.safe_load((DATA / "grasses" / f"{id}.yml").read_text(encoding="utf-8"))
    found, group, season = grass_season_of(id, book().grasses[id], groups()), FILE[file["season_group"]], file.get("season", {})
    recovery, nitrogen = use(file["recovery"]), file["nitrogen_per_year"]
    assert vars(found) == {
        "id": id, "group": file["season_group"], "optimum_c": use(season.get("optimum", group["growth_optimum"])), "spread_k": use(group["growth_spread"]),
        "full_growth_above_optimum": group["full_growth_above_optimum"], "recovery_weeks": recovery,
        "germination_days": use(file["germination"]) if "germination" in file else 0, "surface_running": file["habit"] == "above ground",
        "crop_coefficient": use(group["crop_coefficient"]), "light_recovery_weeks": pytest.approx(recovery * use(RULES["light_recovery_share"])),
        "oversown": file["operations"].get("overseed", {"level": "none"})["level"] != "none", "growth_base_c": use(season.get("base", group["growth_base"])),
        "mowing_height_mm": use(file["mowing_height"]), "leaf_growth_mm_per_day": use(group["leaf_growth"]),
        "allowable_depletion": use(group["allowable_depletion"]),
        "nitrogen_g_per_m2": (nitrogen.get("low", use(nitrogen)), use(nitrogen), nitrogen.get("high", use(nitrogen))),
        "winter_kill_c": tuple(kill.get(end, kill.get("use")) for end in ("low", "high")) if (kill := file.get("winter_kill")) else None,
    }


@pytest.mark.parametrize("id", sorted(places()))
def test_a_place_s_climate_is_what_its_file_prints(id):
    file: dict[str, Any] = yaml.safe_load((DATA / "places" / f"{id}.yml").read_text(encoding="utf-8"))
    normals = file["normals"]
    series = ("mean_maximum_c", "mean_minimum_c", "rain_mm", "frost_days", "cold_days_at_or_below_2c", "minimum_standard_deviation_c",
              "sunshine_h_per_day", "relative_humidity_3pm_percent", "mean_spread_between_years_c")
    # The middle of its zone, of 10 °F from −60 °F up, in two halves.
    zone = file.get("hardiness", {}).get("zone")
    fahrenheit = zone and -60 + 10 * (int(zone[:-1]) - 1) + (2.5 if zone[-1] == "a" else 7.5)
    assert vars(climate_of(places()[id])) == {
        "coldest_night_c": zone and pytest.approx((fahrenheit - 32) / 1.8),
        "latitude_deg": file["latitude_deg"], "elevation_m": file.get("elevation_m"), "temperature_step_c": normals.get("temperature_step_c", 0.1),
        "night_to_night": normals.get("night_to_night_correlation"),
    } | {name: tuple(normals[name]) if name in normals else None for name in series}
