"""The thresholds that the season engine takes (`rules` and `sites` of season-groups.yml), each with the kind of quantity it must hold."""

from typing import Annotated

from pydantic import Field

from generator.book.fields.sourced import Figure, Measured, Record

Part = Annotated[Figure, Measured("share of growth")]
Weeks = Annotated[Figure, Measured("weeks of a year")]
Soil = Annotated[Figure, Measured("soil temperature of a rule")]
Frost = Annotated[Figure, Measured("frost reading")]
Night = Annotated[Figure, Measured("night of a rule")]
Heat = Annotated[Figure, Measured("heat of a rule")]
Offset = Annotated[Figure, Measured("offset of a site")]


class SeasonRules(Record):
    """Shares of growth are of what the place itself reaches, 0 to 1."""

    warm_start_share: Part = Field(description="How far growth of warm-season grass has come from its yearly low to its yearly best before work starts.")
    warm_open_rise: Part = Field(description="Part of the way from the year's lowest daily mean to its highest before warm-season turf may be opened up.")
    warm_preferred_rise: Part = Field(description="The same before it had best be, where winter does not send it dormant.")
    warm_preferred_rise_dormant: Part = Field(description="The same after a dormancy of `long_dormancy` or more.")
    long_dormancy: Annotated[Figure, Measured("days of sleep")] = Field(description="Days of dormancy after which spring work waits longest.")
    moist_summer: Annotated[Figure, Measured("rain against need")] = Field(description="Summer rain, against what evaporates, from which a summer is not dry.")
    full_recovery_potential: Annotated[Figure, Measured("whole share of growth")] = Field(
        description="Growth potential from which a day counts as a whole day of recovery."
    )
    longest_stretch: Annotated[Figure, Measured("times the recovery")] = Field(
        description="A recovery may take at most so many times the weeks of the grass's renovation."
    )
    warm_slow_share: Part = Field(description="Below it warm-season growth is slowing; recovery must be done by then.")
    cool_start_share: Part = Field(description="As `warm_start_share`, for cool-season grass.")
    cool_slow_share: Part = Field(description="As `warm_slow_share`, for cool-season grass.")
    cool_open_share: Part = Field(description="Growth at which work on cool-season grass may begin in spring.")
    cool_preferred_share: Part = Field(description="Growth that work on cool-season grass in autumn should still find.")
    preferred_weeks: Weeks = Field(description="Length of the preferred span of a window.")
    seed_soil: Soil = Field(description="Soil temperature below which seed hardly sprouts: that of cool-season grass, and weeds that a pre-emergent is to stop.")
    seedling_weeks: Weeks = Field(description="Least weeks between sowing in spring and extreme heat or high summer.")
    ryegrass_night: Night = Field(description="Mean minimum at or below which winter ryegrass is sown.")
    ryegrass_rise: Part = Field(description="And the daily mean is no further than this part of the way up from the year's lowest to its highest.")
    peak_share: Part = Field(description="Growth drawn as the peak on the season strip.")
    no_slack_share: Part = Field(description="Where growth never falls below this share of its best, temperature closes no window.")
    little_growth: Part = Field(description="Best growth of the year below which the place is called cool for a grass.")
    least_growth: Part = Field(description="Best growth of the year below which there is no window at all.")
    shortest_weeks: Weeks = Field(description="A window shorter than this is not offered.")
    light_recovery_share: Part = Field(description="Share of the recovery that a light job needs.")
    last_feed_weeks: Weeks = Field(description="Weeks before growth slows after which no feed goes on.")
    cool_autumn_share: Part = Field(description="Share of a cool-season lawn's feed that is given while the year cools.")
    overseeding_weeks: Weeks = Field(description="Weeks of growing weather that seed sown into a lawn needs.")
    air_frost_c: Frost = Field(description="Screen minimum that counts as an air frost.")
    ground_frost_c: Frost = Field(description="Screen minimum that counts as a ground frost.")
    warm_frost_risk: Part = Field(description="Largest chance of a frost night in the first `frost_weeks` after work on warm-season grass.")
    warm_frost_risk_surface_running: Part = Field(description="The same for grass with no stems below ground.")
    frost_weeks: Weeks = Field(description="Weeks after the work in which a frost counts.")
    minimum_spread_base: Annotated[Figure, Measured("spread of nights")] = Field(
        description="Standard deviation of the daily minimum: this, and `minimum_spread_per_range` for each degree of the year's range."
    )
    minimum_spread_per_range: Annotated[Figure, Measured("spread to the range")] = Field(description="Degrees of it for each degree of the yearly range of mean minima.")
    night_to_night: Annotated[Figure, Measured("likeness of nights")] = Field(
        description="Correlation of one night's departure from the mean minimum with the next's, where nights swing as far through the year as a day does."
    )
    year_to_year_spread: Annotated[Figure, Measured("spread of years")] = Field(description="Standard deviation of a whole season's departure from the mean minimum.")
    counting_step: Annotated[Figure, Measured("step of reading")] = Field(description="Half the last digit of a minimum as it is read.")
    warm_heat_limit: Heat = Field(description="Daily mean above which warm-season turf is not opened up.")
    cool_heat_limit: Heat = Field(description="The same for cool-season turf.")
    summer_turn: Annotated[Figure, Measured("turn of summer")] = Field(
        description="Days within this of the year's highest or lowest mean are high summer or deep winter."
    )
    wet_rain: Annotated[Figure, Measured("rain of a wet day")] = Field(description="Rain past which a day may belong to the wet season.")
    wet_ratio: Annotated[Figure, Measured("times what evaporates")] = Field(description="And past this many times reference evapotranspiration it does.")
    soil_depth: Annotated[Figure, Measured("depth of a soil thermometer")] = Field(description="Depth at which soil temperature is told.")
    soil_diffusivity: Annotated[Figure, Measured("diffusivity of soil")] = Field(description="Thermal diffusivity of the soil, m2/h.")
    warm_dormant_soil: Soil = Field(description="Soil temperature at or below which warm-season grass does not grow.")
    warm_green_up_soil: Soil = Field(description="Soil temperature at which warm-season grass greens up.")
    cool_dormant_soil: Soil = Field(description="Soil temperature at or below which cool-season grass does not grow.")
    warm_transition_night: Night = Field(description="Mean minimum at which warm-season grass takes over from winter ryegrass.")
    ponding: Annotated[Figure, Measured("water between leaves")] = Field(description="Water that may stand between the leaves before it runs off.")
    spells_a_morning: Annotated[Figure, Measured("runs in a morning")] = Field(description="Runs of a sprinkler in a morning, with rests between.")
    seen_most_days: Annotated[Figure, Measured("days of a season")] = Field(description="By one note, a season runs no more than so many days early or late.")
    seen_fade: Annotated[Figure, Measured("days of a season")] = Field(description="Days after which what was seen says e times less of an opening or an ending.")
    seen_least_change: Annotated[Figure, Measured("change of soil in a week")] = Field(
        description="What soil changes by in a usual week, below which a reading says nothing of the season."
    )

    @property
    def by_name(self) -> dict[str, Figure]:
        """For texts, holds and calculators, which name a rule as season-groups.rule."""
        return {name: getattr(self, name) for name in type(self).model_fields}


class SiteOffsets(Record):
    """A named microclimate against the open weather station."""

    maximum_offset: Offset = Field(description="Added to each day's maximum.")
    minimum_offset: Offset = Field(description="Added to each night's minimum.")
    evaporation_share: Annotated[Figure, Measured("share at a site")] = Field(description="Share of the open station's evapotranspiration.")
