"""What the window rules need to know: one dataclass for the rules of a season group, one for a grass.

Every number lives in data/season-groups.yml with its source; `inputs.py` reads them from there.
"""

from dataclasses import dataclass
from typing import Literal

Group = Literal["warm", "cool"]


@dataclass(frozen=True)
class GrassSeason:
    """What the engine knows of a grass.

    optimum_c: mean air temperature of strongest growth [°C]; spread_k: how far growth reaches to either side [K].
    full_growth_above_optimum: True where heat alone never slows it (the warm-season form of the model).
    recovery_weeks: growing weather it needs to close over after renovation [weeks]; light_recovery_weeks: the same after a light job;
    germination_days: until its seed is up, 0 where it is not sown [days]. surface_running: it has no stems below ground to come
    back from, so ground frost counts. crop_coefficient: share of reference evapotranspiration it uses [1]. oversown: winter
    ryegrass may be sown into it. growth_base_c: base of its growing degree days [°C]. mowing_height_mm: as kept at home [mm].
    leaf_growth_mm_per_day: height it gains in a day of full growth [mm/day]. allowable_depletion: share of the soil's water it
    may use before it is watered [1]. nitrogen_g_per_m2: in a year, the least, the usual and the most [g/m²]. winter_kill_c: nights below
    which it does not last, and below which winter begins to kill some of it [°C]; None where nothing is known, or nothing here is as cold.
    """

    id: str
    group: Group
    optimum_c: float
    spread_k: float
    full_growth_above_optimum: bool
    recovery_weeks: float
    surface_running: bool
    crop_coefficient: float
    light_recovery_weeks: float
    germination_days: float
    oversown: bool
    growth_base_c: float
    mowing_height_mm: float
    leaf_growth_mm_per_day: float
    allowable_depletion: float
    nitrogen_g_per_m2: tuple[float, float, float]
    winter_kill_c: tuple[float, float] | None = None

    @property
    def growth_key(self) -> tuple[float, float, bool]:
        return self.optimum_c, self.spread_k, self.full_growth_above_optimum


@dataclass(frozen=True)
class WindowRules:
    """Thresholds for one season group. Shares are of the growth the place itself reaches, 0 to 1.

    start_share: growth, from its yearly low towards its yearly best, from which the season strip draws it as growing, and feeds may
    begin. slow_share: below it, growth is slowing; recovery must be done by then.
    open_share: growth at which work on cool-season grass may begin in spring. open_rise: part of the way that the daily mean must have
    come from the year's lowest to its highest before work on warm-season grass may begin; preferred_rise: before it had best begin,
    where winter does not send it dormant; preferred_rise_dormant: the same after `long_dormancy_days` or more of dormancy [days], if summer rain reaches
    `moist_summer` of what evaporates.
    full_recovery_potential: growth potential from which a day of recovery counts as a whole one; longest_stretch: a recovery may take
    at most so many times the weeks of the grass's renovation. preferred_weeks: length of the preferred span [weeks]; preferred_share: growth that sowing in
    autumn should still find. seedling_weeks: least weeks before extreme heat or high summer for seed sown in spring, and the least and
    most of growing weather that seed sown in autumn had best have before the soil falls below seed_soil_c [weeks], [°C].
    peak_share: growth drawn as the peak on the season strip. no_slack_share: where growth never falls below this share of
    its best, temperature closes no window. heat_limit_c: daily mean temperature above which cool-season turf is not opened up, and opened warm-season turf suffers [°C].
    turn_k: days within this of the year's highest (or lowest) mean count as high summer (or deep winter) [K].
    frost_risk: largest chance of a frost night in the first `frost_weeks` after the work; None where frost sets no limit.
    wet_rain_mm_per_day and wet_ratio: a day belongs to the wet season when rain passes both [mm/day], [x evapotranspiration].
    little_growth: best growth potential of the year below which the place is called cool for this grass. least_growth: below this
    there is no window at all.
    shortest_weeks: a window shorter than this is not offered [weeks].
    dormant_soil_c: soil temperature at or below which the grass is not growing [°C]. green_up_soil_c: at which it greens [°C].
    """

    group: Group
    start_share: float
    slow_share: float
    open_share: float
    open_rise: float
    preferred_rise: float
    preferred_rise_dormant: float
    long_dormancy_days: float
    moist_summer: float
    full_recovery_potential: float
    longest_stretch: float
    preferred_weeks: float
    preferred_share: float
    seedling_weeks: tuple[float, float, float]
    seed_soil_c: float
    peak_share: float
    no_slack_share: float
    heat_limit_c: float
    turn_k: float
    frost_risk: float | None
    frost_risk_surface_running: float | None
    frost_weeks: float
    wet_rain_mm_per_day: float
    wet_ratio: float
    little_growth: float
    least_growth: float
    shortest_weeks: float
    dormant_soil_c: float
    green_up_soil_c: float | None


@dataclass(frozen=True)
class PreEmergentRules:
    """Soil temperatures between which a pre-emergent against summer grass goes on [°C]: earliest, the usual advice, latest."""

    earliest_soil_c: float
    usual_soil_c: float
    latest_soil_c: float


@dataclass(frozen=True)
class OversowingRules:
    """Winter ryegrass into warm-season turf, and its going.

    night_c: mean minimum at or below which it is sown [°C]. rise: and the daily mean is no further than this part of the way up from the
    year's lowest to its highest.
    transition_night_c: mean minimum at which the warm-season grass takes over again [°C]. ryegrass: growth of what is sown, as
    (optimum [°C], spread [K], full growth above the optimum). ryegrass_rules: the window rules of cool-season grass.
    """

    night_c: float
    rise: float
    transition_night_c: float
    ryegrass: tuple[float, float, bool]
    ryegrass_rules: WindowRules


@dataclass(frozen=True)
class SoilWater:
    """A kind of soil: what it holds [mm per mm of depth], takes in [mm/h] and how deep the lawn drinks [mm].

    ponding_mm: what may stand between the leaves before it runs off [mm]. spells_a_morning: runs of a sprinkler with rests
    between. light_dressings: feed washes through it.
    first: what to do before watering helps, or None.
    """

    id: str
    name: str
    available_water: float
    infiltration_mm_per_h: float
    root_depth_mm: float
    ponding_mm: float
    spells_a_morning: float
    light_dressings: bool
    first: str | None


@dataclass(frozen=True)
class FeedRules:
    """Limits to one dressing of nitrogen [g/m²], and when the last one may go on.

    ceiling, soluble_ceiling: for feeds with and without enough slow release; None where the book's tasks give none.
    slow_release_share: least share of slow release for the full ceiling, 0 to 1. light_dressing: on soil that feed washes
    through. last_feed_weeks: before growth slows [weeks]. cool_autumn_share: of a cool-season lawn's feed, given while the year
    cools, 0 to 1.
    """

    ceiling: float | None
    soluble_ceiling: float | None
    slow_release_share: float | None
    light_dressing: float | None
    last_feed_weeks: float
    cool_autumn_share: float


@dataclass(frozen=True)
class SeenRules:
    """How far a keeper's own notes move a season: no more than most_days, e times less after fade_days [days]; a reading of soil that changes
    by less than least_change_k in a usual week [K] says nothing."""

    most_days: float
    fade_days: float
    least_change_k: float
