"""From the book's records to what the engine takes. The only place in `turf` that knows the record classes."""

from collections.abc import Mapping
from dataclasses import dataclass

from generator.model.grass import Grass
from generator.model.place import Place
from generator.model.practice import SeasonGroups
from generator.turf.climate import Climate, Site, Soil
from generator.turf.frost import FrostRules
from generator.turf.rules import GrassSeason, Group, WindowRules

MILLIMETRES_A_METRE = 1000.0
OPEN_SITE = "open"
OFFSETS = ("maximum_offset", "minimum_offset", "evaporation_share")
RULE_NAMES = (
    "warm_start_share", "warm_best_share", "warm_slow_share", "cool_start_share", "cool_slow_share", "near_best", "peak_share",
    "no_slack_share", "little_growth", "little_growth_stretch", "least_growth", "shortest_weeks", "overseeding_weeks",
    "air_frost_c", "ground_frost_c", "warm_frost_risk", "warm_frost_risk_surface_running", "frost_weeks",
    "minimum_spread_base",     "minimum_spread_per_range", "night_to_night", "counting_step", "warm_heat_limit", "cool_heat_limit", "summer_turn",
    "wet_rain", "wet_ratio", "soil_depth", "soil_diffusivity", "warm_dormant_soil", "cool_dormant_soil", "warm_green_up_soil",
)


@dataclass(frozen=True)
class EngineRules:
    """Everything the engine takes from data/season-groups.yml."""

    windows: Mapping[Group, WindowRules]
    frost: FrostRules
    soil: Soil
    sites: Mapping[str, Site]


def climate_of(place: Place) -> Climate:
    """The climate of a place record. Raises ValueError, one sentence per fault, for a climate that cannot be."""
    normals = place.normals
    return Climate(
        latitude_deg=place.latitude_deg,
        elevation_m=place.elevation_m,
        mean_maximum_c=normals.mean_maximum_c,
        mean_minimum_c=normals.mean_minimum_c,
        rain_mm=normals.rain_mm,
        frost_days=normals.frost_days,
        cold_days_at_or_below_2c=normals.cold_days_at_or_below_2c,
        minimum_standard_deviation_c=normals.minimum_standard_deviation_c,
        temperature_step_c=normals.temperature_step_c,
        sunshine_h_per_day=normals.sunshine_h_per_day,
        relative_humidity_3pm_percent=normals.relative_humidity_3pm_percent,
    )


def grass_season_of(identifier: str, grass: Grass, groups: SeasonGroups) -> GrassSeason:
    """A grass as the engine sees it: its own figures where it has them, its group's otherwise."""
    group = groups.warm if grass.season_group == "warm" else groups.cool
    return GrassSeason(
        id=identifier,
        group=grass.season_group,
        optimum_c=(grass.season.optimum or group.growth_optimum).default,
        spread_k=group.growth_spread.default,
        full_growth_above_optimum=group.full_growth_above_optimum,
        recovery_weeks=grass.recovery.default,
        establishment_weeks=groups.rules["overseeding_weeks"].default,
        surface_running=grass.habit == "above ground",
        crop_coefficient=group.crop_coefficient.default,
    )


def missing_rules(groups: SeasonGroups) -> list[tuple[str, ...]]:
    """Where season-groups.yml lacks what the engine needs, as key paths: ("rules", "wet_rain"), ("sites", "open")."""
    missing: list[tuple[str, ...]] = [("rules", name) for name in RULE_NAMES if name not in groups.rules]
    if OPEN_SITE not in groups.sites:
        missing.append(("sites", OPEN_SITE))
    missing += [
        ("sites", site, offset) for site, offsets in groups.sites.items() for offset in OFFSETS if offset not in offsets
    ]
    return missing


def engine_rules_of(groups: SeasonGroups) -> EngineRules:
    """The engine's rules from the season-groups record. Raises KeyError for a rule the file lacks; see `missing_rules`."""

    def rule(name: str) -> float:
        return groups.rules[name].default

    def window_rules(group: Group) -> WindowRules:
        warm = group == "warm"
        return WindowRules(
            group=group,
            start_share=rule(f"{group}_start_share"),
            best_share=rule("warm_best_share"),
            near_best=rule("near_best"),
            slow_share=rule(f"{group}_slow_share"),
            peak_share=rule("peak_share"),
            no_slack_share=rule("no_slack_share"),
            heat_limit_c=rule(f"{group}_heat_limit"),
            turn_k=rule("summer_turn"),
            frost_risk=rule("warm_frost_risk") if warm else None,
            frost_risk_surface_running=rule("warm_frost_risk_surface_running") if warm else None,
            frost_weeks=rule("frost_weeks"),
            wet_rain_mm_per_day=rule("wet_rain"),
            wet_ratio=rule("wet_ratio"),
            little_growth=rule("little_growth"),
            little_growth_stretch=rule("little_growth_stretch"),
            least_growth=rule("least_growth"),
            shortest_weeks=rule("shortest_weeks"),
            dormant_soil_c=rule(f"{group}_dormant_soil"),
            green_up_soil_c=rule("warm_green_up_soil") if warm else None,
        )

    return EngineRules(
        windows={"warm": window_rules("warm"), "cool": window_rules("cool")},
        frost=FrostRules(
            air_frost_c=rule("air_frost_c"),
            ground_frost_c=rule("ground_frost_c"),
            spread_base_k=rule("minimum_spread_base"),
            spread_per_range=rule("minimum_spread_per_range"),
            night_to_night=rule("night_to_night"),
            counting_step_k=rule("counting_step"),
        ),
        soil=Soil(rule("soil_depth") / MILLIMETRES_A_METRE, rule("soil_diffusivity")),
        sites={
            name: Site(name, *(offsets[offset].default for offset in OFFSETS))
            for name, offsets in groups.sites.items()
        },
    )
