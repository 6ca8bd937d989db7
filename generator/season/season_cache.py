"""The computed years of a book: every grass at every place, asked once."""

from dataclasses import dataclass
from functools import cached_property

from generator.book.book import Book
from generator.book.daily.daily_record import DailyRecord
from generator.book.records.practice import OPEN_SITE
from generator.season.climate.climate import Climate
from generator.season.due_months import DueTask, due_by_month
from generator.season.inputs import EngineRules, climate_of, engine_rules_of, grass_season_of
from generator.season.observed.this_year import ThisYear, this_year
from generator.season.reasons import Reason, because
from generator.season.task_figures import PRE_EMERGENT_SOIL
from generator.season.windows.every_kind import WindowKind
from generator.season.year import SeasonYear, year


@dataclass(frozen=True)
class SeasonCache:
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
        return tuple(id for id in self.book.offered_places if wanted is None or id in wanted)

    def season(self, grass: str, place: str, site: str = OPEN_SITE) -> SeasonYear:
        """The computed year, worked out once. Raises KeyError for an unknown grass, place or site."""
        key = (grass, place, site)
        if key not in self._seasons:
            record = self.book.grasses[grass]
            self._seasons[key] = year(
                self._climate(place), grass_season_of(grass, record, self.book.season_groups),
                self.rules.sites[site], self.rules, self._not_advised(self.book.places[place].country),
            )
        return self._seasons[key]

    def this_year(self, grass: str, place: str, record: DailyRecord, site: str = OPEN_SITE) -> ThisYear:
        """The year about the last day of a record. Raises KeyError as `season`; ValueError for a record without a day that has maximum and minimum."""
        return this_year(
            self._climate(place), grass_season_of(grass, self.book.grasses[grass], self.book.season_groups), self.rules.sites[site], self.rules, record,
            self._not_advised(self.book.places[place].country),
        )

    def measured(self, grass: str, place: str) -> ThisYear | None:
        """The year about the last day of the book's own record of a place, in the open, worked out once; None where it has none."""
        if place not in self.book.observed:
            return None
        if (grass, place) not in self._measured:
            self._measured[grass, place] = self.this_year(grass, place, self.book.observed[place])
        return self._measured[grass, place]

    @cached_property
    def _measured(self) -> dict[tuple[str, str], ThisYear]:
        return {}

    def _not_advised(self, country: str) -> dict[WindowKind, Reason]:
        task = self.book.tasks.get(PRE_EMERGENT_SOIL[0])
        why = [each for each in task.not_advised if country in each.countries] if task else []
        return {"pre_emergent": because("not-advised", why=why[0].text)} if why else {}

    def _climate(self, place: str) -> Climate:
        """Checked once for all the grasses of the place."""
        if place not in self._climates:
            self._climates[place] = climate_of(self.book.places[place])
        return self._climates[place]

    @cached_property
    def _climates(self) -> dict[str, Climate]:
        return {}

    @cached_property
    def _seasons(self) -> dict[tuple[str, str, str], SeasonYear]:
        return {}

    def due(self, grass: str, place: str) -> list[list[DueTask]]:
        """What falls due in each month, January first, in the open; worked out once for the page and the home page's file."""
        if (grass, place) not in self._due:
            self._due[grass, place] = due_by_month(self.book, self.book.grasses[grass], self.season(grass, place))
        return self._due[grass, place]

    @cached_property
    def _due(self) -> dict[tuple[str, str], list[list[DueTask]]]:
        return {}
