"""The lawns that a reader keeps: one form for what stays the same of each, which every other page then goes by."""

from collections.abc import Iterator
from typing import Any

from generator.book.json_schema import LAWN_FILE_SCHEMA
from generator.season.season_cache import SeasonCache
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.inspection.view import SCRIPT as INSPECTION_RULES
from generator.site.pages.inspection.view import SPEC as INSPECTION_QUESTIONS
from generator.site.pages.inspection.view import asked_in
from generator.site.pages.job.view import has_jobs
from generator.site.pages.programme.view import PATH as PROGRAMME
from generator.site.shared.lawn_pieces import CALCULATOR_SCRIPT, first_shape
from generator.site.shared.seen_script import seen_view
from generator.site.year.site_years import site_words

PATH, SCRIPT, VENDORED = "lawns", "assets/lawn-record.js", "assets/vendor/idb.js"
SECTIONS = (Section("lawn-form", "A new lawn"), Section("one-file", "All of it in one file"))
TITLE, LEAD = "Your lawns", "Write down each lawn once. Choose one, and guides, calendars, calculators, jobs and the work record go by it."
WORDS = ("lawn record", "clients", "client list", "sites", "property", "properties", "back up", "export", "import", "photos of a lawn", "photographs")


def lawns_page(seasons: SeasonCache, here: PageContext) -> Page:
    scripts = [VENDORED, CALCULATOR_SCRIPT, *([INSPECTION_QUESTIONS, INSPECTION_RULES] if seasons.book.inspection else []), SCRIPT]
    context = {
        "title": TITLE, "lead": LEAD, "record": record_view(seasons, here), "seen": seen_view(seasons, here, follows="lawn"),
        "scripts": [here.links.file(each) for each in scripts],
    }
    return Page(PATH, TITLE, "lawns", context, LEAD, WORDS, sections=SECTIONS)


def record_view(seasons: SeasonCache, here: PageContext) -> dict[str, Any]:
    """The lawn-record component's dict."""
    book, practice = seasons.book, seasons.book.practice
    lasting = [each for each in book.inspection.questions if each.lasting] if book.inspection else []
    return {
        "id": "lawns", "chosen": {"grass": practice.home_grass, "place": practice.home_place},
        "grasses": [{"id": id, "name": each.name} for id, each in book.grasses.items()],
        "places": [{"id": id, "name": each.name, "region": each.region} for id, each in book.offered_places.items()],
        "sites": [{"id": id, "name": site_words(id)} for id in seasons.sites],
        "machines": [{"id": id, "name": each.name} for id, each in practice.machines.items()],
        "plans": {id: each.name for id, each in book.renovations.items()},
        "facts": [asked_in(each) for each in lasting],
        "targets": {
            "jobs": here.links.to("jobs/index"), "programme": here.links.to(PROGRAMME) if has_jobs(book) else "",
            "record": here.links.to("record") if book.record else "",
            "inspection": here.links.to("inspection") if book.inspection else "",
            "measure": here.links.calculator(shape) if (shape := first_shape(book)) else "", "schema": here.links.file(f"book/schema/{LAWN_FILE_SCHEMA}"),
        },
    }


def pages(making: Making) -> Iterator[Page]:
    yield lawns_page(making.seasons, making.here(PATH))
