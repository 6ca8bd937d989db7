"""Sources: each with what was taken from it and where, and every figure that rests on none."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from generator.book.book import Book
from generator.book.editions import Edition
from generator.book.fields.sourced import ASSUMPTION, COMMON_PRACTICE, OURS, Claim
from generator.book.fields.walk import parts
from generator.book.records.calculator import Constant
from generator.book.records.place import Place
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.places.view import PLACES
from generator.site.pages.problem.view import INDEX as EXPERTS
from generator.site.shared.public_lines import LINES, lines_of
from generator.site.shared.see_links import GLOSSARY
from generator.words.figures import claim_words
from generator.words.quoted_figures import Placeholder, pieces, quote

# Steps of a path that say nothing of what stands there.
_SILENT = {"figures", "constants", "use", "rules", "others"}
UNPUBLISHED = {
    COMMON_PRACTICE: "Figures that rest on common practice", ASSUMPTION: "Figures that are an assumption of this book",
    OURS: "Figures that are a promise or a custom of the practice",
}
# How far a source was read; one that was read as a whole needs no word of it.
READ = {"whole": None, "part": "Read in part.", "quoted": "Read as another published text quotes or reprints it."}
INTEREST = {"trade": "Trade press, or a makers' or growers' body.", "private": "A private source."}
SECTIONS = (Section("unpublished", "What rests on no publication"), Section("published", "Published"), Section("people", "People to ask"))


@dataclass
class Taken:
    """What one page takes from one source: figures as words, and how many sentences."""

    path: str
    name: str
    anchor: str = ""
    figures: list[str] = field(default_factory=list)
    sentences: int = 0


def sources_page(book: Book, here: PageContext) -> Page:
    taken = _taken(book, here)
    rows = [
        {
            "id": id, "label": source.label, "title": source.title, "organisation": source.organisation, "year": source.year,
            "where": source.where, "address": source.address, "no_address": source.no_address, "note": source.note,
            "marks": [words for words in (READ[source.read], INTEREST.get(source.interest or "")) if words],
            "attribution": source.attribution, "licence": source.licence, "used_by": _uses(taken[id], here),
        }
        for id, source in sorted(book.sources.items(), key=lambda each: each[1].label.casefold())
    ]
    unpublished = [{"id": id.replace(" ", "-"), "title": title, "used_by": _uses(_with_figures(taken[id]), here)} for id, title in UNPUBLISHED.items()]
    counts = {"published": len(rows), "addressed": sum(1 for row in rows if row["address"])}
    lead = "What this book takes from others, and from whom. A figure without a mark is common practice, and the foot of its page says so."
    context = {
        "title": "Sources", "lead": lead, "rows": rows, "counts": counts, "without_address": _without_address(book),
        "unpublished": [each for each in unpublished if each["used_by"]],
        "experts": [
            {"name": expert.name, "url": here.links.to(EXPERTS, f"expert-{id}"), "summary": expert.summary, "asked_by": _asked_by(book, id, here)}
            for id, expert in book.experts.items()
        ],
    }
    return Page("sources", "Sources", "sources", context, lead, ("who to ask", "experts"), SECTIONS)


def _without_address(book: Book) -> list[dict[str, Any]]:
    """Each reason why sources have no address, with the sources it is given for; the commonest first."""
    by_reason: dict[str, list[dict[str, str]]] = defaultdict(list)
    for id, source in book.sources.items():
        if source.no_address:
            by_reason[source.no_address].append({"id": id, "label": source.label})
    return [{"why": why, "sources": sources} for why, sources in sorted(by_reason.items(), key=lambda item: -len(item[1]))]


def _asked_by(book: Book, expert: str, here: PageContext) -> list[dict[str, Any]]:
    """Problems that end at this expert."""
    return [
        {"name": problem.name, "url": here.links.problem(id, "send-for"), "taken": ""}
        for id, problem in book.problems.items() if any(each.expert == expert for each in problem.send_for)
    ]


def _uses(uses: Iterable[Taken], here: PageContext) -> list[dict[str, Any]]:
    return [
        {"name": use.name, "url": here.links.to(use.path, use.anchor), "taken": _taken_words(use)}
        for use in sorted(uses, key=lambda use: (use.path, use.anchor))
    ]


def _taken_words(use: Taken) -> str:
    sentences = [] if not use.sentences else ["1 statement"] if use.sentences == 1 else [f"{use.sentences} statements"]
    return "; ".join([*dict.fromkeys(use.figures), *sentences])


def _with_figures(uses: Iterable[Taken]) -> Iterator[Taken]:
    return (Taken(use.path, use.name, use.anchor, use.figures) for use in uses if use.figures)


def _taken(book: Book, here: PageContext) -> dict[str, list[Taken]]:
    """Source id to what each page takes from it."""
    found: dict[str, dict[tuple[str, str], Taken]] = defaultdict(dict)
    for path, anchor, name, record in _shown(book, here.edition):
        for place, part in parts(record):
            figure = _figure_words(place, part)
            for source in getattr(part, "sources", ()):
                use = found[source].setdefault((path, anchor), Taken(path, name, anchor))
                use.figures += [figure] if figure else []
                use.sentences += not figure
    for path, anchor, name, texts in _quoting(book):
        for claim, label in _quoted(here.shelf, texts):
            for source in claim.sources:
                use = found[source].setdefault((path, anchor), Taken(path, name, anchor))
                use.figures.append(f"{label}, {claim_words(claim)['metric']}")
    for id, home in book.offered_places.items():
        for source in home.climate_sources:
            use = found[source].setdefault((f"places/{id}", ""), Taken(f"places/{id}", home.name))
            use.figures = [_of_climate(home, source)]
    # Those of the other places stand in one line: they would be longer than all the rest.
    others = Counter(
        (source, _of_climate(home, source)) for home in book.other_places.values() for source in home.climate_sources
    )
    for (source, what), count in others.items():
        figures = [f"{what} of {count} other places" if count > 1 else f"{what} of another place"]
        found[source][PLACES, ""] = Taken(PLACES, "Places", figures=figures)
    return defaultdict(list, {source: list(uses.values()) for source, uses in found.items()})


def _figure_words(place: tuple[str | int, ...], part: Any) -> str | None:
    """'mowing height, 25 to 38 mm'; None for what is no figure."""
    if isinstance(part, Constant):
        part = Claim(use=part.value, unit=part.unit, source=part.source)
    elif not isinstance(part, Claim):
        return None
    names = [step for step in place if isinstance(step, str) and step not in _SILENT]
    label = names[-1].replace("_", " ").replace("-", " ") if names else "figure"
    words = claim_words(part)["metric"]
    # A number too small for anyone to measure out is told as it stands in the file.
    return f"{label}, {f'{part.default:g}' if words in ('0', '') and part.default else words}"


def _shown(book: Book, edition: Edition) -> Iterator[tuple[str, str, str, Any]]:
    """Each record with the page that shows it in an edition: path, anchor, name, record."""
    shelves: dict[str, Mapping[str, Any]] = {
        "grasses": book.grasses, "tasks": book.tasks, "cautions": book.cautions, "aftercare": book.aftercare,
        "calculators": book.calculators, "problems": book.problems, "plans": book.renovations,
    }
    for folder, records in shelves.items():
        for id, record in records.items() if edition.publishes(folder) else ():
            yield f"{folder}/{id}", "", record.name, record
    for id, caution in book.cautions.items():
        yield from ((f"cautions/{id}", LINES, f"{caution.name} (who to ring)", line) for line in lines_of(book, id))
    for id, answer in book.answers.items():
        yield f"answers/{id}", "", answer.question, answer
    for hold in book.holds.values():
        yield from ((f"tasks/{task}", "", book.tasks[task].name, hold) for task in hold.tasks)
    for id, expert in book.experts.items():
        yield EXPERTS, f"expert-{id}", f"{expert.name} (who to send for)", expert
    for id, term in book.of("terms").items():
        yield GLOSSARY, id, f"{term.name} (glossary)", term
    for name, record in (("inspection", book.inspection), ("record", book.record)):
        if record is not None:
            yield name, "", record.title, record
    if book.season_groups is not None:
        yield "calendars/index", "", "Calendars: the rules of the season", book.season_groups


def _quoting(book: Book) -> Iterator[tuple[str, str, str, list[str]]]:
    """Each page that quotes figures of other records: path, anchor, name, texts."""
    for id, answer in book.answers.items():
        yield f"answers/{id}", "", answer.question, [text for _, text in answer.texts()]
    for id, problem in book.problems.items():
        others = [text for _, text in problem.texts() if f"{{problem.{id}." not in text]
        yield f"problems/{id}", "", problem.name, others
    for id, term in book.of("terms").items():
        yield GLOSSARY, id, f"{term.name} (glossary)", [term.means]


def _quoted(shelf: Book, texts: Iterable[str]) -> Iterator[tuple[Claim, str]]:
    for text in texts:
        for piece in pieces(text):
            if isinstance(piece, Placeholder):
                found = quote(piece.expression, shelf)  # type: ignore[arg-type]  # Its protocol says that the fields may be set.
                if found.claim is not None and found.kind != "practice":
                    yield found.claim, found.label


def pages(making: Making) -> Iterator[Page]:
    yield sources_page(making.book, making.here("sources"))


def _of_climate(home: Place, source: str) -> str:
    """What of a place's climate a source gives."""
    return "hardiness zone" if home.hardiness and home.hardiness.source == source else "monthly normals"
