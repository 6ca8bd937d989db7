"""Which figures of season-groups.yml the season engine reads by name, in which unit it takes them, and what each may be."""

from generator.model.record import Measured

_PART = Measured("1", 0, 1)
_SEVERAL = Measured("1", 0, 20)
_WEEKS = Measured("week", 0, 52)
_READING = Measured("°C", -60, 60)

RULES: dict[str, Measured] = {
    "warm_start_share": _PART, "warm_best_share": _PART, "warm_slow_share": _PART, "cool_start_share": _PART, "cool_slow_share": _PART,
    "near_best": _PART, "peak_share": _PART, "no_slack_share": _PART, "little_growth": _PART, "little_growth_stretch": _SEVERAL,
    "least_growth": _PART, "shortest_weeks": _WEEKS, "overseeding_weeks": _WEEKS, "air_frost_c": _READING, "ground_frost_c": _READING,
    "warm_frost_risk": _PART, "warm_frost_risk_surface_running": _PART, "frost_weeks": _WEEKS,
    "minimum_spread_base": Measured("K", 0.1, 20), "minimum_spread_per_range": Measured("1", 0, 2),
    "night_to_night": Measured("1", 0, 0.98), "year_to_year_spread": Measured("K", 0, 20), "counting_step": Measured("K", 0, 5),
    "warm_heat_limit": _READING, "cool_heat_limit": _READING, "summer_turn": Measured("K", 0, 20), "light_recovery_share": _PART,
    "last_feed_weeks": _WEEKS, "cool_autumn_share": _PART, "warm_transition_night": _READING, "ponding": Measured("mm", 0, 200),
    "spells_a_morning": Measured("1", 1, 20), "wet_rain": Measured("mm/day", 0, 1000), "wet_ratio": _SEVERAL,
    "soil_depth": Measured("mm", 1, 5000), "soil_diffusivity": Measured("1", 1e-9, 1e-4), "warm_dormant_soil": _READING,
    "cool_dormant_soil": _READING, "warm_green_up_soil": _READING,
}  # fmt: skip
# Of each named microclimate.
OFFSETS: dict[str, Measured] = {
    "maximum_offset": Measured("K", -30, 30), "minimum_offset": Measured("K", -30, 30), "evaporation_share": Measured("1", 0, 5),
}
