"""The thresholds of the season stand in their order, and the open site is the weather station itself."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.fields.sourced import Figure
from generator.book.records.practice import OPEN_SITE, SeasonGroups
from generator.checks.check import Check
from generator.findings import Finding

# Pairs of rules, the lower first: the unit that both are compared in, and why.
IN_ORDER = (
    ("least_growth", "little_growth", "1", "where there is no growth to speak of there is little growth, too"),
    ("air_frost_c", "ground_frost_c", "°C", "the ground is colder than the screen on a clear night"),
    ("warm_dormant_soil", "warm_green_up_soil", "°C", "grass that greens up is not asleep"),
    ("cool_heat_limit", "warm_heat_limit", "°C", "warm-season grass stands more heat"),
    ("warm_open_rise", "warm_preferred_rise", "1", "a window opens before its best days"),
    ("warm_preferred_rise", "warm_preferred_rise_dormant", "1", "turf that slept waits longer"),
)  # fmt: skip
NO_OFFSET = {"maximum_offset": ("K", 0), "minimum_offset": ("K", 0), "evaporation_share": ("1", 1)}


def _check(book: PartialBook) -> Iterator[Finding]:
    groups = book.season_groups
    if groups is None:
        return
    for path, key, what, instead in (*_rules(groups), *_groups(groups), *_open_site(groups)):
        yield Finding(book.where("season-groups", "season-groups", *path, key), what, instead)


Fault = tuple[tuple[str, ...], str, str, str]


def _rules(groups: SeasonGroups) -> Iterator[Fault]:
    for lower, upper, spelling, because in IN_ORDER:
        figures = [getattr(groups.rules, name) for name in (lower, upper)]
        low, high = (_default(figure, spelling) for figure in figures)
        if low is not None and high is not None and low > high:
            yield ("rules", upper), _key(figures[1]), f"'{upper}' is {high:g}, below '{lower}' at {low:g}: {because}", "swap them, or correct one"


def _groups(groups: SeasonGroups) -> Iterator[Fault]:
    for name in ("warm", "cool"):
        group = getattr(groups, name)
        base, best = _default(group.growth_base, "°C"), _default(group.growth_optimum, "°C")
        if base is not None and best is not None and base >= best:
            yield (name, "growth_base"), _key(group.growth_base), f"growth stops below {base:g} °C and is best at {best:g} °C", "give a base below the optimum"


def _open_site(groups: SeasonGroups) -> Iterator[Fault]:
    for name, (spelling, right) in NO_OFFSET.items():
        figure = getattr(groups.sites[OPEN_SITE], name)
        value = _default(figure, spelling)
        if value is not None and abs(value - right) > 1e-9:
            yield ("sites", OPEN_SITE, name), _key(figure), f"'{OPEN_SITE}' is the weather station itself, and '{name}' is {value:g} there", f"give {right}"


def _default(figure: Figure, spelling: str) -> float | None:
    """None where its unit has been told already."""
    try:
        return figure.measured_in(spelling).default
    except ValueError:
        return None


def _key(figure: Figure) -> str:
    return next(key for key in ("use", "low", "high") if getattr(figure, key) is not None)


CHECK = Check("rules-in-order", "The thresholds of the season stand in their order.", ("season-groups",), _check)
