"""The computed years of a book: every grass at every place, asked once."""

from dataclasses import dataclass
from functools import cached_property

from generator.model.book import Book
from generator.model.practice import OPEN_SITE
from generator.pages.due import DueTask, due_by_month
from generator.pages.page import Links
from generator.turf.bindings import Context
from generator.turf.inputs import EngineRules, climate_of, engine_rules_of, grass_season_of
from generator.turf.season import SeasonYear, year


@dataclass(frozen=True)
class Almanac:
    book: Book

    @cached_property
    def rules(self) -> EngineRules:
        return engine_rules_of(self.book.season_groups, self.book.tasks)

    @cached_property
    def sites(self) -> tuple[str, ...]:
        """Names of the microclimates, the open station first."""
        return tuple(sorted(self.rules.sites, key=lambda name: (name != OPEN_SITE, list(self.rules.sites).index(name))))

    @cached_property
    def calendar_places(self) -> tuple[str, ...]:
        """Places that have calendars of their own, in the order of their names' ids."""
        wanted = self.book.practice.calendar_places
        return tuple(id for id in self.book.places if wanted is None or id in wanted)

    def year_address(self, links: Links, grass: str, place: str) -> str:
        """Where the year of a grass at a place is shown: its calendar, else its part of the place's page."""
        return links.calendar(grass, place) if place in self.calendar_places else links.to(f"places/{place}", grass)

    def season(self, grass: str, place: str, site: str = OPEN_SITE) -> SeasonYear:
        """The computed year, worked out once. Raises KeyError for an unknown grass, place or site."""
        key = (grass, place, site)
        if key not in self._seasons:
            record = self.book.grasses[grass]
            self._seasons[key] = year(
                climate_of(self.book.places[place]), grass_season_of(grass, record, self.book.season_groups),
                self.rules.sites[site], self.rules,
            )
        return self._seasons[key]

    @cached_property
    def _seasons(self) -> dict[tuple[str, str, str], SeasonYear]:
        return {}

    def context(
        self, grass: str | None = None, place: str | None = None, day: int | None = None, product: str | None = None,
        machine: str | None = None, until: int | None = None, operation: str | None = None,
    ) -> Context:
        """What these choices can fill calculators in from, by id; day, until: day numbers, 0 for 1 January. Raises KeyError for an unknown id."""
        book = self.book
        return Context(
            grass=None if grass is None else book.grasses[grass], practice=book.practice, groups=book.season_groups,
            place=None if place is None else book.places[place],
            # What no grass changes, such as rain, is the same in the year of any.
            year=None if place is None else self.season(grass or book.practice.home_grass, place),
            day=day, until=until, product=product, machine=machine, operation=operation,
        )

    def due(self, grass: str, place: str) -> list[list[DueTask]]:
        """What falls due in each month, January first, in the open; worked out once for the page and the home page's file."""
        if (grass, place) not in self._due:
            self._due[grass, place] = due_by_month(self.book, self.book.grasses[grass], self.season(grass, place))
        return self._due[grass, place]

    @cached_property
    def _due(self) -> dict[tuple[str, str], list[list[DueTask]]]:
        return {}
