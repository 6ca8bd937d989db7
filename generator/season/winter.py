"""Whether a grass lives through the winters of a place."""

from generator.season.engine_rules import GrassSeason
from generator.season.reasons import Reason, because, limit_degrees
from generator.season.weather import WeatherYear

# The reason that winter kills it, by which others know it.
KILLED = "killed-by-winter"


def killed_by_winter(weather: WeatherYear, grass: GrassSeason) -> Reason | None:
    """Why it does not last there, or None. Source: the grass's own figure, its `winter_kill`, against the coldest night of a usual year."""
    if grass.winter_kill_c is None or weather.coldest_night_c >= grass.winter_kill_c[0]:
        return None
    return because(KILLED, coldest=limit_degrees(round(weather.coldest_night_c)), least=limit_degrees(grass.winter_kill_c[0]))


def risked_in_winter(weather: WeatherYear, grass: GrassSeason) -> Reason | None:
    """What winter may kill of a grass that lasts there all the same, or None. Source: as `killed_by_winter`."""
    if grass.winter_kill_c is None or not grass.winter_kill_c[0] <= weather.coldest_night_c < grass.winter_kill_c[1]:
        return None
    return because("winter-may-kill", coldest=limit_degrees(round(weather.coldest_night_c)), begins=limit_degrees(grass.winter_kill_c[1]))
