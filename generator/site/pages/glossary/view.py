"""The glossary: A to Z, what each word means, what it is called elsewhere, and where to read on."""

from collections.abc import Iterator
from typing import Any

from generator.book.book import Book
from generator.book.records.glossary import Term
from generator.site.making import Making
from generator.site.page import Page, PageEntry
from generator.site.page_context import PageContext
from generator.site.shared.prose import Prose
from generator.site.shared.see_links import GLOSSARY, see_links
from generator.words.figures import value_words


def glossary_page(book: Book, here: PageContext) -> Page:
    terms, prose = book.of("terms"), Prose(here)
    others = _others(book)
    ordered = sorted(terms.items(), key=lambda item: item[1].name.casefold())
    entries = {id: _entry(id, term, prose, book, here) for id, term in ordered}
    letters = [
        {
            "id": f"letter-{letter.lower().replace(' ', '-')}", "letter": letter,
            "entries": [entries[id] for id, term in ordered if _letter(term.name) == letter],
            "others": [other for other in others if _letter(other["name"]) == letter],
        }
        for letter in sorted({_letter(name) for name in (*(term.name for term in terms.values()), *(other["name"] for other in others))})
    ]
    lead = f"{len(terms)} words of the trade in plain English{_called_in(book)}."
    context = {"title": "Glossary", "lead": lead, "letters": letters, "quoted": prose.quoted(), "names_url": here.links.to("names")}
    found = tuple(PageEntry(id, term.name, tuple(_names(book, term)), term.misspellings, prose.plain(term.means)) for id, term in ordered)
    return Page(GLOSSARY, "Glossary", "glossary", context, lead, entries=found)


def _entry(id: str, term: Term, prose: Prose, book: Book, here: PageContext) -> dict[str, Any]:
    return {
        "id": id, "name": term.name, **prose.sentence(term, term.means),
        "elsewhere": [{"name": name, "where": ", ".join(countries)} for name, countries in _names(book, term).items()],
        "unit": _unit_words(term.unit) if term.unit else None, "see": see_links(book, term.see, here),
    }


def _others(book: Book) -> list[dict[str, str]]:
    """Each other name with the word it leads to, by name; none for a name that is a word of its own here."""
    terms = book.of("terms")
    own = {each.name.casefold() for each in terms.values()}
    found = [
        {"name": name, "id": id, "word": term.name} for id, term in terms.items() for name in _names(book, term) if name.casefold() not in own
    ]
    return sorted(found, key=lambda other: other["name"].casefold())


def _names(book: Book, term: Term) -> dict[str, list[str]]:
    """Each other name to the countries that use it, in the order of the countries."""
    found: dict[str, list[str]] = {}
    for code, country in book.countries.items():
        for name in term.names.get(code, ()):
            if name.casefold() != term.name.casefold():
                found.setdefault(name, []).append(country.name)
    return found


def _called_in(book: Book) -> str:
    """', with what they are called in New Zealand and the United States'; empty where no word has another name."""
    where = [each.in_a_sentence or each.name for code, each in book.countries.items() if any(term.names.get(code) for term in book.of("terms").values())]
    return f", with what they are called in {' and '.join(filter(None, (', '.join(where[:-1]), where[-1])))}" if where else ""


def _letter(name: str) -> str:
    first = name[0].upper()
    return first if first.isalpha() else "0 to 9"


def _unit_words(spelling: str) -> str:
    """'1 g/m² is 0.2 lb/1000 ft² in US units', or the unit alone where it is the same everywhere."""
    words = value_words(1, spelling)
    return f"{words['metric']} is {words['us']} in US units." if words["us"] else f"Counted in {(words['metric'] or '').removeprefix('1').strip()}."


def pages(making: Making) -> Iterator[Page]:
    if making.book.glossary is not None:
        yield glossary_page(making.book, making.here(GLOSSARY))
