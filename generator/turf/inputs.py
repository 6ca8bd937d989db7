"""From the book's records to what the engine takes. The only place in `turf` that knows the record classes."""

from collections.abc import Mapping
from dataclasses import dataclass

from generator.model.grass import Grass
from generator.model.place import Place
from generator.model.practice import SeasonGroups
from generator.model.record import Figure
from generator.model.task import Task
from generator.turf.climate import Climate, Site, Soil
from generator.turf.engine_figures import OFFSETS, RULES
from generator.turf.frost import FrostRules
from generator.turf.rules import FeedRules, GrassSeason, Group, OversowingRules, PreEmergentRules, SoilWater, WindowRules
from generator.units import from_si, to_si, unit

MILLIMETRES_A_METRE = 1000.0
OPEN_SITE = "open"


@dataclass(frozen=True)
class EngineRules:
    """Everything the engine takes from data/season-groups.yml, and the figures it shares with the tasks.

    pre_emergent: None in a book whose tasks give no soil temperature for it. largest_share_removed: of the height at a cut,
    0 to 1; None likewise. soils: by id, the first one taken where nothing is said.
    """

    windows: Mapping[Group, WindowRules]
    frost: FrostRules
    soil: Soil
    sites: Mapping[str, Site]
    oversowing: OversowingRules
    pre_emergent: PreEmergentRules | None
    soils: Mapping[str, SoilWater]
    feed: FeedRules
    largest_share_removed: float | None


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
        optimum_c=_in(grass.season.optimum or group.growth_optimum, "°C"),
        spread_k=_in(group.growth_spread, "K"),
        full_growth_above_optimum=group.full_growth_above_optimum,
        recovery_weeks=_in(grass.recovery, "week"),
        establishment_weeks=_in(groups.rules["overseeding_weeks"], "week"),
        surface_running=grass.habit == "above ground",
        crop_coefficient=_in(group.crop_coefficient, "1"),
        light_recovery_weeks=_in(grass.recovery, "week") * _in(groups.rules["light_recovery_share"], "1"),
        oversown="overseed" in grass.operations and grass.operations["overseed"].level != "none",
        growth_base_c=_in(grass.season.base or group.growth_base, "°C"),
        mowing_height_mm=_in(grass.mowing_height, "mm"),
        leaf_growth_mm_per_day=_in(group.leaf_growth, "mm/day"),
        allowable_depletion=_in(group.allowable_depletion, "1"),
        nitrogen_g_per_m2=_nitrogen(grass.nitrogen_per_year),
    )


def _in(figure: Figure, wanted: str) -> float:
    """The figure's default in the unit that the engine takes."""
    given, taken = unit(figure.unit), unit(wanted)
    return figure.default if given == taken else from_si(to_si(figure.default, given), taken)


def _nitrogen(figure: Figure) -> tuple[float, float, float]:
    scale = unit(figure.unit).factor / unit("g/m2").factor
    return figure.lowest * scale, figure.default * scale, figure.highest * scale


def missing_rules(groups: SeasonGroups) -> list[tuple[str, ...]]:
    """Where season-groups.yml lacks what the engine needs, as key paths: ("rules", "wet_rain"), ("sites", "open")."""
    missing: list[tuple[str, ...]] = [("rules", name) for name in RULES if name not in groups.rules]
    if OPEN_SITE not in groups.sites:
        missing.append(("sites", OPEN_SITE))
    missing += [
        ("sites", site, offset) for site, offsets in groups.sites.items() for offset in OFFSETS if offset not in offsets
    ]
    return missing


def engine_rules_of(groups: SeasonGroups, tasks: Mapping[str, Task] | None = None) -> EngineRules:
    """The engine's rules from the season-groups record, and from the tasks the figures that stand there.

    tasks: by id; a book without a task has none of what its figures decide. Raises KeyError for a rule the file lacks; see
    `missing_rules`.
    """

    def rule(name: str) -> float:
        return _in(groups.rules[name], RULES[name].unit)

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

    def shared(task: str, name: str) -> Figure | None:
        return tasks[task].figures.get(name) if tasks and task in tasks else None

    cool = window_rules("cool")
    return EngineRules(
        windows={"warm": window_rules("warm"), "cool": cool},
        frost=FrostRules(
            air_frost_c=rule("air_frost_c"),
            ground_frost_c=rule("ground_frost_c"),
            spread_base_k=rule("minimum_spread_base"),
            spread_per_range=rule("minimum_spread_per_range"),
            night_to_night=rule("night_to_night"),
            counting_step_k=rule("counting_step"),
            year_to_year_k=rule("year_to_year_spread"),
        ),
        soil=Soil(rule("soil_depth") / MILLIMETRES_A_METRE, rule("soil_diffusivity")),
        sites={
            name: Site(name, *(_in(offsets[offset], each.unit) for offset, each in OFFSETS.items()))
            for name, offsets in groups.sites.items()
        },
        oversowing=OversowingRules(
            soil_c=_default(shared("overseed", "ryegrass-into-couch-soil")),
            transition_night_c=rule("warm_transition_night"),
            ryegrass=(_in(groups.cool.growth_optimum, "°C"), _in(groups.cool.growth_spread, "K"), groups.cool.full_growth_above_optimum),
            establishment_weeks=rule("overseeding_weeks"),
            ryegrass_rules=cool,
        ),
        pre_emergent=_pre_emergent(shared("pre-emergent", "soil-temperature-at-application")),
        soils={
            name: SoilWater(
                name, kind.name, _in(kind.available_water, "1"), _in(kind.infiltration, "mm/h"), _in(kind.root_depth, "mm"),
                rule("ponding"), rule("spells_a_morning"), kind.light_dressings, kind.first,
            )
            for name, kind in groups.soils.items()
        },
        feed=FeedRules(
            ceiling=_default(shared("feed", "nitrogen-one-dressing-ceiling")),
            soluble_ceiling=_default(shared("feed", "soluble-nitrogen-one-dressing-ceiling")),
            slow_release_share=_percent(shared("feed", "slow-release-share")),
            light_dressing=_default(shared("feed", "light-dressing-on-sand")),
            last_feed_weeks=rule("last_feed_weeks"),
            cool_autumn_share=rule("cool_autumn_share"),
        ),
        largest_share_removed=_percent(shared("mow", "largest-share-removed")),
    )


def _default(figure: Figure | None) -> float | None:
    return None if figure is None else figure.default


def _percent(figure: Figure | None) -> float | None:
    return None if figure is None else to_si(figure.default, unit(figure.unit))


def _pre_emergent(figure: Figure | None) -> PreEmergentRules | None:
    """From the earliest to the latest that any of the sources gives, about the one that the task calls usual."""
    if figure is None:
        return None
    claims = (figure, *figure.others)
    return PreEmergentRules(min(c.lowest for c in claims), figure.default, max(c.highest for c in claims))

