"""From the book's records to what the engine takes. The only file of the season that knows the record classes of grasses and places."""

from collections.abc import Mapping
from dataclasses import dataclass

from generator.book.fields.sourced import Amounts
from generator.book.records.grass import Grass
from generator.book.records.place import Place
from generator.book.records.practice import SeasonGroups
from generator.book.records.season_rules import SeasonRules, SiteOffsets
from generator.book.records.task import Task
from generator.season.climate.climate import Climate, Site, Soil
from generator.season.climate.coldest_night import zone_middle_c
from generator.season.climate.frost_margin import FrostRules
from generator.season.engine_rules import FeedRules, GrassSeason, Group, OversowingRules, PreEmergentRules, SeenRules, SoilWater, WindowRules
from generator.season.task_figures import FEED_CEILING, LARGEST_SHARE_REMOVED, LIGHT_DRESSING, PRE_EMERGENT_SOIL, SLOW_RELEASE_SHARE, SOLUBLE_FEED_CEILING, TASK_FIGURES

MILLIMETRES_A_METRE = 1000.0
SECONDS_AN_HOUR = 3600.0
PERCENT = 100.0


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
    seen: SeenRules


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
        coldest_night_c=zone_middle_c(place.hardiness.zone) if place.hardiness else None,
        night_to_night=normals.night_to_night_correlation,
        mean_spread_between_years_c=normals.mean_spread_between_years_c,
    )


def grass_season_of(identifier: str, grass: Grass, groups: SeasonGroups) -> GrassSeason:
    """A grass as the engine sees it: its own figures where it has them, its group's otherwise."""
    group, rules = groups.warm if grass.season_group == "warm" else groups.cool, groups.rules
    recovery_weeks = grass.recovery.measured_in("week").default
    return GrassSeason(
        id=identifier,
        group=grass.season_group,
        optimum_c=(grass.season.optimum or group.growth_optimum).measured_in("°C").default,
        spread_k=group.growth_spread.measured_in("K").default,
        full_growth_above_optimum=group.full_growth_above_optimum,
        recovery_weeks=recovery_weeks,
        surface_running=grass.habit == "above ground",
        crop_coefficient=group.crop_coefficient.measured_in("1").default,
        light_recovery_weeks=recovery_weeks * rules.light_recovery_share.measured_in("1").default,
        germination_days=grass.germination.measured_in("day").default if grass.germination else 0.0,
        oversown="overseed" in grass.operations and grass.operations["overseed"].level != "none",
        growth_base_c=(grass.season.base or group.growth_base).measured_in("°C").default,
        mowing_height_mm=grass.mowing_height.measured_in("mm").default,
        leaf_growth_mm_per_day=group.leaf_growth.measured_in("mm/day").default,
        allowable_depletion=group.allowable_depletion.measured_in("1").default,
        nitrogen_g_per_m2=grass.nitrogen_per_year.measured_in("g/m2"),
        winter_kill_c=_winter_kill(grass),
    )


def _winter_kill(grass: Grass) -> tuple[float, float] | None:
    if grass.winter_kill is None:
        return None
    least, _, most = grass.winter_kill.measured_in("°C")
    return least, most


def engine_rules_of(groups: SeasonGroups, tasks: Mapping[str, Task] | None = None) -> EngineRules:
    """The engine's rules from the season-groups record, and from the tasks the figures that stand there.

    tasks: by id; a book without a task has none of what its figures decide.
    """

    def shared(place: tuple[str, str]) -> Amounts | None:
        task, name = place
        figure = tasks[task].figures.get(name) if tasks and task in tasks else None
        return figure.measured_in(TASK_FIGURES[place].unit) if figure else None

    rules, cool = groups.rules, _window_rules(groups.rules, "cool")
    return EngineRules(
        windows={"warm": _window_rules(rules, "warm"), "cool": cool},
        frost=_frost_rules(rules),
        soil=Soil(
            rules.soil_depth.measured_in("mm").default / MILLIMETRES_A_METRE, rules.soil_diffusivity.measured_in("m2/h").default / SECONDS_AN_HOUR,
        ),
        sites={name: _site(name, offsets) for name, offsets in groups.sites.items()},
        oversowing=OversowingRules(
            night_c=rules.ryegrass_night.measured_in("°C").default,
            rise=rules.ryegrass_rise.measured_in("1").default,
            transition_night_c=rules.warm_transition_night.measured_in("°C").default,
            ryegrass=(
                groups.cool.growth_optimum.measured_in("°C").default, groups.cool.growth_spread.measured_in("K").default,
                groups.cool.full_growth_above_optimum,
            ),
            ryegrass_rules=cool,
        ),
        pre_emergent=_pre_emergent(tasks or {}, rules.seed_soil.measured_in("°C").default),
        soils={
            name: SoilWater(
                name, kind.name, kind.available_water.measured_in("1").default, kind.infiltration.measured_in("mm/h").default,
                kind.root_depth.measured_in("mm").default, rules.ponding.measured_in("mm").default, rules.spells_a_morning.measured_in("1").default,
                kind.light_dressings, kind.first,
            )
            for name, kind in groups.soils.items()
        },
        feed=FeedRules(
            ceiling=_default(shared(FEED_CEILING)),
            soluble_ceiling=_default(shared(SOLUBLE_FEED_CEILING)),
            slow_release_share=_share(shared(SLOW_RELEASE_SHARE)),
            light_dressing=_default(shared(LIGHT_DRESSING)),
            last_feed_weeks=rules.last_feed_weeks.measured_in("week").default,
            cool_autumn_share=rules.cool_autumn_share.measured_in("1").default,
        ),
        largest_share_removed=_share(shared(LARGEST_SHARE_REMOVED)),
        seen=SeenRules(
            rules.seen_most_days.measured_in("day").default, rules.seen_fade.measured_in("day").default, rules.seen_least_change.measured_in("K").default,
        ),
    )


def _window_rules(rules: SeasonRules, group: Group) -> WindowRules:
    warm, seed = group == "warm", rules.overseeding_weeks.measured_in("week")
    return WindowRules(
        group=group,
        start_share=(rules.warm_start_share if warm else rules.cool_start_share).measured_in("1").default,
        slow_share=(rules.warm_slow_share if warm else rules.cool_slow_share).measured_in("1").default,
        open_share=rules.cool_open_share.measured_in("1").default,
        open_rise=rules.warm_open_rise.measured_in("1").default,
        preferred_rise=rules.warm_preferred_rise.measured_in("1").default,
        preferred_rise_dormant=rules.warm_preferred_rise_dormant.measured_in("1").default,
        long_dormancy_days=rules.long_dormancy.measured_in("day").default,
        moist_summer=rules.moist_summer.measured_in("1").default,
        full_recovery_potential=rules.full_recovery_potential.measured_in("1").default,
        longest_stretch=rules.longest_stretch.measured_in("1").default,
        preferred_weeks=rules.preferred_weeks.measured_in("week").default,
        preferred_share=rules.cool_preferred_share.measured_in("1").default,
        seedling_weeks=(rules.seedling_weeks.measured_in("week").default, seed.lowest, seed.highest),
        seed_soil_c=rules.seed_soil.measured_in("°C").default,
        peak_share=rules.peak_share.measured_in("1").default,
        no_slack_share=rules.no_slack_share.measured_in("1").default,
        heat_limit_c=(rules.warm_heat_limit if warm else rules.cool_heat_limit).measured_in("°C").default,
        turn_k=rules.summer_turn.measured_in("K").default,
        frost_risk=rules.warm_frost_risk.measured_in("1").default if warm else None,
        frost_risk_surface_running=rules.warm_frost_risk_surface_running.measured_in("1").default if warm else None,
        frost_weeks=rules.frost_weeks.measured_in("week").default,
        wet_rain_mm_per_day=rules.wet_rain.measured_in("mm/day").default,
        wet_ratio=rules.wet_ratio.measured_in("1").default,
        little_growth=rules.little_growth.measured_in("1").default,
        least_growth=rules.least_growth.measured_in("1").default,
        shortest_weeks=rules.shortest_weeks.measured_in("week").default,
        dormant_soil_c=(rules.warm_dormant_soil if warm else rules.cool_dormant_soil).measured_in("°C").default,
        green_up_soil_c=rules.warm_green_up_soil.measured_in("°C").default if warm else None,
    )


def _frost_rules(rules: SeasonRules) -> FrostRules:
    return FrostRules(
        air_frost_c=rules.air_frost_c.measured_in("°C").default,
        ground_frost_c=rules.ground_frost_c.measured_in("°C").default,
        spread_base_k=rules.minimum_spread_base.measured_in("K").default,
        spread_per_range=rules.minimum_spread_per_range.measured_in("1").default,
        night_to_night=rules.night_to_night.measured_in("1").default,
        counting_step_k=rules.counting_step.measured_in("K").default,
        year_to_year_k=rules.year_to_year_spread.measured_in("K").default,
    )


def _site(name: str, offsets: SiteOffsets) -> Site:
    return Site(
        name, offsets.maximum_offset.measured_in("K").default, offsets.minimum_offset.measured_in("K").default,
        offsets.evaporation_share.measured_in("1").default,
    )


def _default(amounts: Amounts | None) -> float | None:
    return None if amounts is None else amounts.default


def _share(percent: Amounts | None) -> float | None:
    return None if percent is None else percent.default / PERCENT


def _pre_emergent(tasks: Mapping[str, Task], open_soil_c: float) -> PreEmergentRules | None:
    """Up to the latest that any of the sources gives, about the one that the task calls usual."""
    task, name = PRE_EMERGENT_SOIL
    figure = tasks[task].figures.get(name) if task in tasks else None
    if figure is None:
        return None
    claims = [each.measured_in(TASK_FIGURES[PRE_EMERGENT_SOIL].unit) for each in (figure, *figure.others)]
    return PreEmergentRules(open_soil_c, claims[0].default, max(each.highest for each in claims))
