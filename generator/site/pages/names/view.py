"""Names by country: what a grass and a job are called elsewhere."""

from collections.abc import Iterator, Mapping
from typing import Any

from generator.book.book import Book
from generator.site.making import Making
from generator.site.page import Page
from generator.site.page_context import PageContext


def names_page(book: Book, here: PageContext) -> Page:
    """Glossary of names by country: grasses, then tasks."""
    named = [*(each.names for each in book.grasses.values()), *(each.names for each in book.tasks.values())]
    countries = {code: country.name for code, country in book.countries.items() if any(names.get(code) for names in named)}
    groups = [
        {"id": "grasses", "title": "Grasses", "rows": [
            _name_row(grass.name, here.links.grass(id), grass.names, countries, grass.botanical_name) for id, grass in book.grasses.items()
        ]},
        {"id": "tasks", "title": "Tasks", "rows": [
            _name_row(task.name, here.links.task(id), task.names, countries, None) for id, task in book.tasks.items() if task.names
        ]},
    ]
    lead = "The same grass and the same job go by other names in other countries. Find yours here; search finds all of them."
    context = {"title": "Names by country", "lead": lead, "countries": list(countries.values()), "groups": groups}
    return Page("names", "Names by country", "names", context, lead, ("grass names", "what is it called overseas", "names in other countries"))


def _name_row(name: str, url: str, names: Mapping[str, tuple[str, ...]], countries: Mapping[str, str], botanical: str | None) -> dict[str, Any]:
    return {
        "name": name, "url": url, "botanical_name": botanical,
        "by_country": [{"country_name": name, "names": ", ".join(names.get(code, ())) or "–"} for code, name in countries.items()],
    }


def pages(making: Making) -> Iterator[Page]:
    yield names_page(making.book, making.here("names"))
