"""The season engine: pure functions of climate and turf. No files, no YAML, no clock, no page.

`year(climate, grass, site, rules)` computes a grass at a site through a year; `inputs` turns the book's records into what
it takes; `schedule` asks a task's rules of the result.
"""

from generator.turf.equations import EQUATIONS, Equation
from generator.turf.inputs import EngineRules, climate_of, engine_rules_of, grass_season_of
from generator.turf.season import SeasonYear, Week, year
from generator.turf.season_json import as_json
from generator.turf.windows import Window, Windows

__all__ = [
    "EQUATIONS", "EngineRules", "Equation", "SeasonYear", "Week", "Window", "Windows", "as_json", "climate_of",
    "engine_rules_of", "grass_season_of", "year",
]
