"""What a reader has chosen, so that calculators can be filled in from it: a grass, a place, a day, a product."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from generator.book.records.grass import Grass
from generator.book.records.inspection import Inspection
from generator.book.records.place import Place
from generator.book.records.practice import Practice, SeasonGroups
from generator.book.records.renovation import Renovation
from generator.book.records.step import SharedStep
from generator.book.records.task import Task
from generator.season.season_cache import SeasonCache
from generator.season.year import SeasonYear


@dataclass(frozen=True)
class Chosen:
    """What is chosen, and so can fill something in; every part may be left out.

    steps: the book's shared steps, for `step.` fields; task: the one whose page it is, for `task.` figures. told_by: who sets a
    plain value, in words. year: the computed season of this grass at this place (of any grass there, for what no grass changes);
    day: day number in it, 0 for 1 January; until: the last of the days from there on. groups: for `group.` fields.
    product, machine, operation: ids in the practice. A product that is chosen stands in for the practice's own feed.
    sheet: the book's inspection, for `inspection.` fields; measured: what it found on this lawn, by question [SI].
    """

    grass: Grass | None = None
    practice: Practice | None = None
    renovation: Renovation | None = None
    groups: SeasonGroups | None = None
    place: Place | None = None
    year: SeasonYear | None = None
    day: int | None = None
    until: int | None = None
    product: str | None = None
    machine: str | None = None
    operation: str | None = None
    steps: Mapping[str, SharedStep] | None = None
    task: Task | None = None
    sheet: Inspection | None = None
    measured: Mapping[str, float] = field(default_factory=dict)
    told_by: str = "this plan"


def chosen_from(
    seasons: SeasonCache, grass: str | None = None, place: str | None = None, day: int | None = None, product: str | None = None,
    machine: str | None = None, until: int | None = None, operation: str | None = None,
) -> Chosen:
    """What these ids of the book choose; day, until: day numbers, 0 for 1 January. Raises KeyError for an unknown id."""
    book = seasons.book
    return Chosen(
        grass=None if grass is None else book.grasses[grass], practice=book.practice, groups=book.season_groups,
        place=None if place is None else book.places[place],
        # What no grass changes, such as rain, is the same in the year of any.
        year=None if place is None else seasons.season(grass or book.practice.home_grass, place),
        day=day, until=until, product=product, machine=machine, operation=operation,
    )
