"""Every page of a book, one view per page kind."""

from collections.abc import Callable, Collection, Iterator
from dataclasses import replace
from datetime import date
from typing import Any

from generator.pages.aftercare import aftercare_index, aftercare_page
from generator.pages.almanac import Almanac
from generator.pages.answer import answer_index, answer_page
from generator.pages.calculator import calculator_page
from generator.pages.calendar import calendar_page
from generator.pages.client_link import client_link_page
from generator.pages.compare import compare_page
from generator.pages.desk import Desk
from generator.pages.grass import grass_index, grass_page
from generator.pages.glossary import glossary_page
from generator.pages.guide import guide_index, guide_page
from generator.pages.hubs import calculator_index, calendar_index, home_page
from generator.pages.inspection import inspection_page
from generator.pages.job import has_jobs, job_page
from generator.pages.key import key_page
from generator.pages.page import Page
from generator.pages.place import place_page
from generator.pages.plan import plan_index, plan_page
from generator.pages.problem import problem_index, problem_page
from generator.pages.ranked import ranked_page
from generator.pages.record import record_page
from generator.pages.reference import names_page
from generator.pages.retired import moved_page, retired_addresses, retired_page
from generator.pages.side_by_side import side_by_side_page
from generator.pages.sources import sources_page
from generator.pages.strips import all_dates, strip_view, when_row
from generator.pages.task import caution_index, caution_page, task_index, task_page
from generator.pages.when_due import months_due, when_view


def all_pages(almanac: Almanac, today: date, written: frozenset[str] = frozenset()) -> list[Page]:
    """Every generated page.

    today: only where a printed calendar starts; nothing computed depends on it.
    written: pages written by hand, as paths of their Markdown.
    """
    desks: dict[str, Desk] = {}

    def desk(path: str) -> Desk:
        return desks.setdefault(path, Desk(almanac.book, path, today, written))

    return [replace(page, foot=desks[page.path].sourcing.foot()) for page in _pages(almanac, desk)]


def _pages(almanac: Almanac, desk: Callable[[str], Desk]) -> Iterator[Page]:
    book = almanac.book
    yield home_page(almanac, desk("index"))
    strips = {id: _card_strip(almanac, id) for id in book.grasses}
    yield grass_index(book, desk("grasses/index"), strips)
    if book.key is not None:
        yield key_page(book, desk("grasses/key"))
    yield guide_index(book, desk("renovate/index"), strips, {id: _window_at_home(almanac, id) for id in book.grasses})
    yield plan_index(book, desk("plans/index"))
    yield from (plan_page(book, id, desk(f"plans/{id}")) for id in book.renovations)
    if book.inspection is not None:
        sheet = inspection_page(book, desk("inspection"))
        yield from (sheet, moved_page("visit", sheet, desk("visit")))
    for id in book.grasses:
        here = desk(f"grasses/{id}")
        yield grass_page(book, id, here, _page_strip(almanac, id), _calendars(almanac, id, here))
        here = desk(f"renovate/{id}")
        yield guide_page(book, id, here, _when(almanac, id, here))
    if len(book.grasses) > 1:
        yield side_by_side_page(book, desk("side-by-side"))
        yield ranked_page(book, desk("which-grass"))
    if has_jobs(book):
        yield job_page(almanac, desk("jobs/index"))
    yield task_index(book, desk("tasks/index"))
    months = months_due(almanac)
    for id in book.tasks:
        here = desk(f"tasks/{id}")
        yield task_page(book, id, here, when_view(almanac, id, months, here.links))
    yield caution_index(book, desk("cautions/index"))
    yield from (caution_page(book, id, desk(f"cautions/{id}")) for id in book.cautions)
    yield calculator_index(book, desk("calculators/index"))
    yield from (calculator_page(book, id, desk(f"calculators/{id}")) for id in book.calculators)
    yield aftercare_index(book, desk("aftercare/index"))
    if book.aftercare:
        yield client_link_page(book, desk("aftercare/maker"))
    yield from (aftercare_page(book, id, desk(f"aftercare/{id}")) for id in book.aftercare)
    if book.problems:
        yield problem_index(book, desk("problems/index"))
    yield from (problem_page(book, id, desk(f"problems/{id}")) for id in book.problems)
    yield answer_index(book, desk("answers/index"))
    yield from (answer_page(book, id, desk(f"answers/{id}")) for id in book.answers)
    yield calendar_index(almanac, desk("calendars/index"))
    yield from (compare_page(almanac, id, desk(f"compare/{id}")) for id in book.grasses)
    for place in book.places:
        yield place_page(almanac, place, desk(f"places/{place}"))
    for place in almanac.calendar_places:
        yield from (calendar_page(almanac, grass, place, desk(f"calendars/{place}/{grass}")) for grass in book.grasses)
    if book.record is not None:
        yield record_page(book, desk("record"))
    if book.glossary is not None:
        yield glossary_page(book, desk("glossary"))
    yield names_page(book, desk("names"))
    yield sources_page(book, desk("sources"))
    yield from (retired_page(book, folder, id, desk(f"{folder.path}/{id}")) for folder, id in retired_addresses(book))


def navigation(written: list[str], there: Collection[str]) -> list[dict[str, Any]]:
    """The tabs: front doors only. A full tree would stand in every page and grow with pages squared.

    written: pages written by hand, which stand under About. there: every page of the book, as 'jobs/index.md'.
    """
    doors = [
        {"Home": "index.md"}, {"Grasses": "grasses/index.md"}, {"Renovate": "renovate/index.md"}, {"Jobs": "jobs/index.md"},
        {"Calendars": "calendars/index.md"}, {"Calculators": "calculators/index.md"}, {"Aftercare": "aftercare/index.md"},
        {"Problems": "problems/index.md"}, {"Answers": "answers/index.md"}, {"Tasks": "tasks/index.md"}, {"Cautions": "cautions/index.md"},
    ]
    about = [{"Glossary": "glossary.md"}, {"Names by country": "names.md"}, {"Sources": "sources.md"}]

    def present(links: list[dict[str, str]]) -> list[dict[str, str]]:
        return [link for link in links if set(link.values()) <= set(there)]

    return [*present(doors), {"About": [*present(about), *written]}]


def _card_strip(almanac: Almanac, grass: str) -> dict[str, Any]:
    season = almanac.season(grass, almanac.book.practice.home_place)
    return strip_view(season, f"strip-{grass}", "card", "")


def _window_at_home(almanac: Almanac, grass: str) -> str:
    """When its own plan is done where the practice is, in a sentence."""
    book, home = almanac.book, almanac.book.practice.home_place
    dates = all_dates(almanac.season(grass, home).windows[book.renovations[book.grasses[grass].renovation].window])
    return f"{book.places[home].name}: {dates}." if dates else f"{book.places[home].name}: no window."


def _page_strip(almanac: Almanac, grass: str) -> dict[str, Any]:
    home = almanac.book.practice.home_place
    title = f"The year at {almanac.book.places[home].name}"
    return strip_view(almanac.season(grass, home), "year", "page", title, legend=True, today=True)


def _calendars(almanac: Almanac, grass: str, desk: Desk) -> list[dict[str, str]]:
    rows = []
    for place, record in almanac.book.places.items():
        dates = all_dates(almanac.season(grass, place).renovation)
        text = f"renovate {dates}" if dates else "no renovation window"
        rows.append({"name": record.name, "url": almanac.year_address(desk.links, grass, place), "text": text})
    return rows


def _when(almanac: Almanac, grass: str, desk: Desk) -> dict[str, Any]:
    book = almanac.book
    record = book.grasses[grass]
    kind = book.renovations[record.renovation].window
    rows = [
        when_row(almanac.season(grass, place), kind, place, each.name, almanac.year_address(desk.links, grass, place))
        for place, each in book.places.items()
    ]
    return {"strip": _page_strip(almanac, grass), "rows": rows, "label": f"When to renovate {record.name}, by place"}
