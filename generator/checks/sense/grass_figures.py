"""The figures of a grass do not contradict each other."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.fields.sourced import Amounts, Claim
from generator.book.records.grass import Grass
from generator.checks.check import Check
from generator.findings import Finding


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, grass in book.grasses.items():
        for path, end, what, instead in _faults(book, grass):
            figure: object = grass
            for name in path:
                figure = getattr(figure, name)
            yield Finding(book.where("grasses", id, *path, _key(figure, end)), what, instead)


Fault = tuple[tuple[str, ...], str, str, str]


def _faults(book: PartialBook, grass: Grass) -> Iterator[Fault]:
    """The figure that contradicts another, the end of it that does, and what to say."""
    cut, height = _amounts(grass.renovation_height, "mm"), _amounts(grass.mowing_height, "mm")
    if cut and height and cut.highest > height.highest:
        yield (
            ("renovation_height",), "high", f"a renovation cuts down to {cut.highest:g} mm, and it is mown at {height.highest:g} mm as it is",
            "give a height under the mowing height, or leave it out where it must not be cut down",
        )  # fmt: skip
    sand = _amounts(grass.topdressing_depth, "mm")
    if sand and height and sand.lowest > height.highest:
        yield ("topdressing_depth",), "low", f"{sand.lowest:g} mm of sand bury a lawn of {height.highest:g} mm", "give a depth that the leaf stands out of"
    once, year = _amounts(grass.nitrogen_per_feed, "g/m2"), _amounts(grass.nitrogen_per_year, "g/m2")
    if once and year and once.highest > year.highest:
        yield ("nitrogen_per_feed",), "high", f"one feed of {once.highest:g} g/m2 is more than the {year.highest:g} g/m2 of a year", "swap them, or correct one"
    over, new = _amounts(grass.overseed_rate, "g/m2"), _amounts(grass.seed_rate, "g/m2")
    if over and new and over.lowest > new.highest:
        what = f"seed over a living lawn, {over.lowest:g} g/m2, is more than for bare ground, {new.highest:g} g/m2"
        yield ("overseed_rate",), "low", what, "swap them, or correct one"
    group = getattr(book.season_groups, grass.season_group, None)
    base = _amounts(grass.season.base, "°C") or (group and _amounts(group.growth_base, "°C"))
    best = _amounts(grass.season.optimum, "°C") or (group and _amounts(group.growth_optimum, "°C"))
    if base and best and base.default >= best.default and (grass.season.base or grass.season.optimum):
        path = ("season", "base" if grass.season.base else "optimum")
        yield path, "use", f"growth stops below {base.default:g} °C and is best at {best.default:g} °C", "give a base below the optimum"


def _amounts(figure: Claim | None, spelling: str) -> Amounts | None:
    """None where it is not given, and where its unit has been told already."""
    try:
        return None if figure is None else figure.measured_in(spelling)
    except ValueError:
        return None


def _key(figure: object, end: str) -> str:
    return next(key for key in (end, "use", "high", "low") if getattr(figure, key) is not None)


CHECK = Check("grass-figures", "The figures of a grass do not contradict each other.", ("grasses",), _check)
