"""One page per grass and place: the year as strip and charts, its windows, dates and needs, and twelve sheets to print."""

from collections.abc import Iterator
from math import fsum
from typing import Any

from generator.book.attribution import place_attribution
from generator.book.records.step import Quantity
from generator.calculators.chosen import chosen_from
from generator.jobs.said_first import law_against
from generator.season.calendar_days import MONTH_LENGTHS, MONTHS, day_words, month_days, week_days
from generator.season.due_months import DueTask
from generator.season.season_cache import SeasonCache
from generator.season.year import SeasonYear
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.job.view import has_jobs
from generator.site.pages.programme.view import PATH as PROGRAMME
from generator.site.shared.embedded import embedded_calculator
from generator.site.shared.lawn_pieces import calculator_scripts
from generator.site.shared.seen_script import seen_scripts, seen_view
from generator.site.year.place_notes import place_notes
from generator.site.year.site_years import site_words, year_context, year_scripts
from generator.site.year.strips import all_dates, strip_view
from generator.site.year.this_year_view import this_year_view
from generator.site.year.year_files import calendar_path, weeks_path, year_files
from generator.site.year.year_words import WINDOW_LABELS, frost_words, summary, window_lines
from generator.words.figures import converted, range_words, value_words
from generator.words.reason_text import in_one, plain, said, sentence
from generator.words.rough_words import rough_share

SECTIONS = (
    Section("year-strip", "The year"), Section("windows", "Windows"), Section("dates", "Dates"), Section("needs", "What it needs"),
    Section("sites", "Where the lawn is"), Section("take-away", "To download"),
    *(Section(name.lower(), name) for name in MONTHS),
)
THIS_YEAR = Section("this-year", "This year")
WEEKLY_WATER = "weekly-water-need"
GROWTH_WORDS = {"dormant": "dormant", "slow": "slow", "growing": "growing", "peak": "at its best"}


def calendar_page(seasons: SeasonCache, grass_id: str, place_id: str, here: PageContext) -> Page:
    book = seasons.book
    grass, place = book.grasses[grass_id], book.places[place_id]
    season = seasons.season(grass_id, place_id)
    months = seasons.due(grass_id, place_id)
    title = f"{grass.name} at {place.name}"
    owners = tuple(place_attribution(book, place_id))
    water = thirstiest_week(seasons, grass_id, place_id, here)
    this_year = this_year_view(seasons, grass_id, place_id, here.today)
    context = {
        "this_year_view": this_year, "title": title, "grass": grass.name, "grass_url": here.links.grass(grass_id), "guide_url": here.links.guide(grass_id),
        "laws": [plain(sentence(said(each))) for each in law_against(book, grass_id, place_id)],
        "place": place.name, "country": place.country, "place_url": here.links.place(place_id), "compare_url": here.links.comparison(grass_id, place_id),
        "programme_url": here.links.to(PROGRAMME) if has_jobs(book) and here.edition.has("jobs") else "",
        "seen": seen_view(seasons, here, place_id, grass_id),
        "strip": strip_view(season, "year", "page", f"The year of {title}", legend=True, today=True),
        **year_context(seasons, grass_id, place_id, here.links),
        "sites": _sites(seasons, grass_id, place_id), "whole_degrees": place.normals.temperature_step_c >= 1,
        "water": water, "scripts": calculator_scripts(book, [water] if water else [], here),
        "notes": place_notes(place), "methods_url": here.methods_url, "year": here.today.year,
        "month_sheets": [
            {**month_view(season, month, months[month], grass.name, place.name, here), "foot": "; ".join(owners)} for month in range(12)
        ],
        "files": [
            {
                "name": "Calendar file (.ics)", "url": here.links.file(calendar_path(grass_id, place_id)),
                "text": "windows and jobs, coming round each year, for the calendar of a phone",
            },
            {"name": "Weeks (.csv)", "url": here.links.file(weeks_path(grass_id, place_id)), "text": "a row a week, for a spreadsheet"},
            {"name": "The year as data (.json)", "url": here.links.file(f"book/seasons/{place_id}/{grass_id}.json"), "text": "for programs"},
        ],
    }
    answer = summary(season)
    words = tuple(f"{name} {place.name}" for names in grass.names.values() for name in names[:1])
    return Page(
        f"calendars/{place_id}/{grass_id}", f"{title}: calendar", "calendar", context, plain(answer),
        tuple(dict.fromkeys(words)), sections=(THIS_YEAR, *SECTIONS) if this_year else SECTIONS, attribution=owners,
        about=(f"grasses/{grass_id}", f"places/{place_id}"),
    )


def thirstiest_week(seasons: SeasonCache, grass_id: str, place_id: str, here: PageContext) -> dict[str, Any] | None:
    """The calculator of a week's water, filled in from the week that needs most in the open; None where none needs any."""
    weeks = seasons.season(grass_id, place_id).weeks
    # By the day, for the last week of the year has eight.
    week = max(weeks, key=lambda each: each.water_need_mm / len(week_days(each.week - 1)))
    if WEEKLY_WATER not in seasons.book.calculators or not week.water_need_mm:
        return None
    day = week_days(week.week - 1)[0]
    view = embedded_calculator(seasons.book, Quantity(calculator=WEEKLY_WATER), chosen_from(seasons, grass_id, place_id, day), here, "year")
    return {**view, "from_day": day_words(day)}


def why_rows(season: SeasonYear) -> list[dict[str, Any]]:
    """The reasons of each window, or why there is none."""
    return [
        {"label": WINDOW_LABELS[kind], "text": text if begins == "None." else in_one(begins, " ", text), "exactly": in_one(*exact)}
        for kind, lines in window_lines(season).items() for begins, text, *exact in lines
    ]


def month_view(season: SeasonYear, month: int, due: list[DueTask], grass: str, place: str, here: PageContext) -> dict[str, Any]:
    name = MONTHS[month]
    return {
        "id": name.lower(), "month_number": month + 1, "month_name": name, "grass": grass, "place": place, "year": here.today.year,
        "facts": month_facts(season, month),
        "tasks": [
            {
                "name": each.name, "url": here.links.task(each.task_id), "say": each.due.say, "because": each.due.because,
                "when": each.when, "marks": here.sourcing.marks(each.due),
            }
            for each in due
        ],
        "strip": strip_view(season, f"strip-{name.lower()}", "print", "", legend=True),
    }


def month_facts(season: SeasonYear, month: int) -> list[dict[str, Any]]:
    days = month_days(month)

    def mean(series: tuple[float, ...]) -> float:
        return fsum(series[day] for day in days) / MONTH_LENGTHS[month]

    low, high = mean(season.climate.minimum_c), mean(season.climate.maximum_c)
    if season.whole_degrees:
        low, high = round(low), round(high)
    middle = days[MONTH_LENGTHS[month] // 2]
    frost = season.weather.air_frost.nights_per_month()[month]
    week, of_its_best = 7 * mean(season.water_need_mm), rough_share(mean(season.growth.potential), exactly=False)
    return [
        _fact("Nights and days", _pair(low, high)),
        {"label": "Growth", "text": f"{GROWTH_WORDS[season.classes[middle]]} ({of_its_best} of what it can do)", "us": None},
        {"label": "Frost nights", "text": frost_words(frost), "us": None},
        _fact("Rain", value_words(round(fsum(season.climate.rain_mm[day] for day in days)), "mm")),
        _fact("Water to add", value_words(round(week), "mm"), " a week") if week >= 1
        else {"label": "Water to add", "text": "none in a usual year", "us": None},
    ]


def _pair(low_c: float, high_c: float) -> dict[str, str | None]:
    us = [round(converted(value, "°C", "°F")) for value in (low_c, high_c)]
    return {"metric": range_words(round(low_c), round(high_c), "°C"), "us": range_words(*us, "°F")}


def _fact(label: str, words: dict[str, str | None], after: str = "") -> dict[str, Any]:
    return {"label": label, "text": f"{words['metric']}{after}", "us": f"{words['us']}{after}" if words["us"] else None}


def _sites(seasons: SeasonCache, grass_id: str, place_id: str) -> list[dict[str, Any]]:
    """The windows again for a lawn that does not lie in the open."""
    rows = []
    for site in seasons.sites:
        season = seasons.season(grass_id, place_id, site)
        rows.append({
            "name": site_words(site),
            "windows": [
                {"label": label, "dates": all_dates(season.windows[kind]) or "none"}
                for kind, label in WINDOW_LABELS.items() if season.windows[kind].windows or kind == "renovation"
            ],
        })
    return rows


def pages(making: Making) -> Iterator[Page]:
    seasons = making.seasons
    for place in seasons.calendar_places:
        yield from (calendar_page(seasons, grass, place, making.here(f"calendars/{place}/{grass}")) for grass in making.book.grasses)


def files(making: Making) -> dict[str, str | bytes]:
    return {**year_scripts(making.seasons), **seen_scripts(making.seasons), **year_files(making.seasons, making.today)}
