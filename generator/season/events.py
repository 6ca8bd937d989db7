"""What happens in a computed year, as dates with reasons: green-up, peak, slow-down, dormancy, frosts, last safe dates."""

from dataclasses import dataclass

from generator.season.calendar_days import DAYS, day_words, week_number
from generator.season.windows.limits import clear_ahead
from generator.season.year import SeasonYear
from generator.season.windows.main_windows import recovery_days

# Risks at which the last and the first frost are told.
EVEN_RISK, TENTH_RISK = 0.5, 0.1


@dataclass(frozen=True)
class Event:
    """A day (`first` and `last` the same) or a stretch of the year, day numbers from 0; both None where it does not happen.

    `why` says what set it, with its numbers, or why there is none.
    """

    first: int | None
    last: int | None
    why: str

    @property
    def words(self) -> str:
        """'14 September', '3 June to 20 August', or 'none'."""
        if self.first is None or self.last is None:
            return "none"
        return day_words(self.first) if self.first == self.last else f"{day_words(self.first)} to {day_words(self.last)}"


def events(season: SeasonYear) -> dict[str, Event]:
    """Every event of the year by its id, in the order in which a growing season meets them."""
    return {
        "last_frost_even": _last_frost(season, EVEN_RISK, ground=False),
        "last_frost_tenth": _last_frost(season, TENTH_RISK, ground=False),
        "last_ground_frost_even": _last_frost(season, EVEN_RISK, ground=True),
        "last_ground_frost_tenth": _last_frost(season, TENTH_RISK, ground=True),
        "green_up": _green_up(season), "spring_transition": _transition(season), "peak": _peak(season),
        "last_safe_renovation": _last_safe(season, season.grass.recovery_weeks, "renovation"),
        "last_safe_light_renovation": _last_safe(season, season.grass.light_recovery_weeks, "a light renovation"),
        "slow_down": _slow_down(season),
        "first_ground_frost_tenth": _first_frost(season, TENTH_RISK, ground=True),
        "first_ground_frost_even": _first_frost(season, EVEN_RISK, ground=True),
        "first_frost_tenth": _first_frost(season, TENTH_RISK, ground=False),
        "first_frost_even": _first_frost(season, EVEN_RISK, ground=False),
        "dormancy": _dormancy(season),
    }


def _on(day: int | None, why: str, why_none: str) -> Event:
    return Event(None, None, why_none) if day is None else Event(day, day, why)


def _stretch(days: tuple[int, int] | None, why: str, why_none: str) -> Event:
    return Event(None, None, why_none) if days is None else Event(*days, why)


def _soil(season: SeasonYear, day: int) -> str:
    return season.view.degrees(season.climate.soil_c[day])


def _green_up(season: SeasonYear) -> Event:
    mark, day = season.rules.green_up_soil_c, season.green_up_day
    if mark is None:
        return Event(None, None, "cool-season grass stays green through winter")
    lowest = season.view.degrees(min(season.climate.soil_c))
    if day is None:
        kept = min(season.climate.soil_c) >= mark
        return Event(None, None, f"the soil never falls below {mark:g} °C (its lowest is {lowest}), so the lawn stays green" if kept
                     else f"the soil never warms to {mark:g} °C")
    return _on(day, f"the soil has warmed to {_soil(season, day)}; dormant turf greens up at about {mark:g} °C", "")


def _transition(season: SeasonYear) -> Event:
    day, mark = season.transition_day, season.transition_night_c
    if season.grass.group == "cool":
        return Event(None, None, "only warm-season turf that was sown with ryegrass changes over in spring")
    nights = season.climate.minimum_c
    if day is None:
        low, high = season.view.degrees(min(nights)), season.view.degrees(max(nights))
        return Event(None, None, f"nights never cross {mark:g} °C: they run from {low} to {high}")
    return _on(day, f"nights have warmed to {season.view.degrees(nights[day])}: from {mark:g} °C warm-season turf takes over from winter ryegrass", "")


def _peak(season: SeasonYear) -> Event:
    return _stretch(
        season.peak, f"growth is at {season.rules.peak_share:.0%} or more of the most this place gives "
        f"(a growth potential of {season.growth.best:.2f})", "nothing grows here",
    )


def _slow_down(season: SeasonYear) -> Event:
    day = season.slow_down_day
    if day is None:
        return Event(None, None, f"growth never falls far: its lowest is {season.growth.least:.2f}, its best {season.growth.best:.2f}")
    return _on(day, f"in week {week_number(day)} growth falls to {season.growth.share[day]:.0%} of the most this place gives "
                    f"(growth potential {season.growth.potential[day]:.2f}) and can no longer close an opened surface", "")


def _dormancy(season: SeasonYear) -> Event:
    mark = f"{season.rules.dormant_soil_c:g} °C"
    lowest = season.view.degrees(min(season.climate.soil_c))
    return _stretch(
        season.dormancy, f"the soil is at or below {mark}; its lowest is {lowest}",
        f"the soil never falls to {mark}; its lowest is {lowest}",
    )


def _last_safe(season: SeasonYear, weeks: float, job: str) -> Event:
    """The last day on which a job may be finished so that the grass has closed over when growth slows down."""
    slow = season.slow_down_day
    if slow is None:
        return Event(None, None, "growth never slows too far to close over")
    days = recovery_days(weeks, season.view, season.rules)
    day = (slow - days - 1) % DAYS
    if clear_ahead(season.slack, days)[day]:
        return Event(day, day, f"{job} needs {days / 7:.0f} weeks of growing weather, and growth slows down on {day_words(slow)}")
    return Event(None, None, f"growing weather never lasts the {days / 7:.0f} weeks that {job} needs")


def _frost_words(risk: float, ground: bool) -> tuple[str, str]:
    """The kind of frost, and the odds in words."""
    return ("ground frost" if ground else "frost"), ("evens" if risk == EVEN_RISK else f"one year in {1 / risk:.0f}")


def _last_frost(season: SeasonYear, risk: float, ground: bool) -> Event:
    kind, odds = _frost_words(risk, ground)
    return _on(season.last_frost_day(risk, ground), f"after it the chance of any more {kind} before summer is {odds} or less",
               f"the chance of a {kind} before summer is never more than {odds}")


def _first_frost(season: SeasonYear, risk: float, ground: bool) -> Event:
    kind, odds = _frost_words(risk, ground)
    return _on(season.first_frost_day(risk, ground), f"by then, after summer, a {kind} has become likelier than {odds}",
               f"a {kind} never becomes likelier than {odds}")
