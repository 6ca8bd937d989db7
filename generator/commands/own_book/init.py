"""`swardbook init`: a book of one's own over the shared knowledge."""

import json
import re
import sys
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from string import Template

import click

from generator.book.book import PartialBook
from generator.book.loading.whole_book import read_book
from generator.book.overlay.knowledge import knowledge_folder
from generator.book.overlay.upstream import STATE_FILE, state_text
from generator.book.records.place import Country
from generator.checks import check_book
from generator.commands.common import MOST_LISTED
from generator.commands.exit_codes import ExitCode
from generator.commands.own_book.schema import write_schemas
from generator.commands.writing import write_out
from generator.findings import one_line, shown, suggestion
from generator.moment import this_year

TEXTS = Path(__file__).with_name("new_book")
ANY_MONEY = "AUD"
_NO_ID = re.compile(r"[^a-z0-9]+")
LOGOS = (".svg", ".png")


@dataclass(frozen=True)
class BookQuestion:
    """What a new book has to know: the option, what it is asked with on a terminal, and what is taken if nothing is said."""

    option: str
    words: str
    otherwise: Callable[["Answers", PartialBook], str] | None = None


Answers = dict[str, str]


def _first(key: str) -> Callable[[Answers, PartialBook], str]:
    return lambda answers, _: _ids(answers[key])[0]


QUESTIONS = (
    BookQuestion("name", "What is your practice called?"),
    BookQuestion("place", "Which place is home? (an id, such as sydney; --list shows them)"),
    BookQuestion("places", "Which places are in the book, with commas between?", lambda answers, _: answers["place"]),
    BookQuestion("grasses", "Which grasses, with commas between? The first is the one the book opens with. (--list shows them)"),
    BookQuestion("units", "In which units do pages open, metric or us?", lambda answers, shared: "us" if _us_units(answers, shared) else "metric"),
    BookQuestion("currency", "In which money do you charge? (three capitals)", lambda answers, shared: _currency(answers, shared)),
    BookQuestion("colour", "What is your colour, as #24527a? (empty for the book's own)", lambda answers, _: ""),
    BookQuestion("logo", "Where is your logo, an SVG or PNG file? (empty for none)", lambda answers, _: ""),
    BookQuestion("public_address", "Where will the book be hosted, such as https://example.org/book/? (empty if you do not know yet)", lambda answers, _: ""),
)


@click.command()
@click.argument("folder", required=False, type=click.Path(path_type=Path))
@click.option("--name", help="What your practice is called.")
@click.option("--place", help="The place that is home.")
@click.option("--places", help="The places that are in the book, with commas between; the home place alone if left out.")
@click.option("--grasses", help="The grasses that are in the book, with commas between; it opens with the first.")
@click.option("--units", help="metric or us; those of the home place's country if left out.")
@click.option("--currency", help="Three capitals; the money of the home place's country if left out.")
@click.option("--colour", help="Your colour, such as '#24527a'.")
@click.option("--logo", help="An SVG or PNG file, which is copied into the book.")
@click.option("--public-address", help="Where the book will be hosted.")
@click.option("--list", "listed", is_flag=True, help="List the places and grasses of the shared knowledge.")
def init(folder: Path | None, listed: bool, **given: str | None) -> None:
    """Make a book of your own in FOLDER, over the shared knowledge. What no option says is asked for, on a terminal."""
    shared, _ = read_book(knowledge_folder())
    if listed:
        for kind in ("grasses", "places"):
            click.echo(f"{kind}: {', '.join(shared.of(kind))}")
        return
    if folder is None:
        raise click.UsageError("name a folder for the book, such as my-book")
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise click.UsageError(f"{one_line(folder)} is there already and holds something; name a new folder")
    answers = _answers(given, shared)
    _refuse(_wrong(answers, shared))
    _write(folder, answers)
    found = check_book(folder, this_year())
    for finding in found.findings:
        click.echo(finding, err=True)
    click.echo(f"Made {one_line(folder)}: {len(_ids(answers['grasses']))} grasses, {len(_places(answers))} places.")
    if found.book is None:
        raise SystemExit(ExitCode.FINDINGS)
    click.echo(f"Next: swardbook build --book {one_line(folder)}, then open {one_line(folder / 'site' / 'index.html')}")


def _answers(given: Mapping[str, str | None], shared: PartialBook) -> Answers:
    """An answer to every question: from an option, from the terminal, or by what the others say. Ends the command where one cannot be had."""
    answers: Answers = {}
    asks = sys.stdin.isatty() and any(value is None for value in given.values())
    missing = [f"--{each.option}" for each in QUESTIONS if each.otherwise is None and given[each.option] is None]
    if missing and not asks:
        raise click.UsageError(f"say {' and '.join(missing)}; on a terminal they are asked for")
    for each in QUESTIONS:
        said = given[each.option]
        if said is None:
            usual = each.otherwise(answers, shared) if each.otherwise else ""
            said = click.prompt(each.words, default=usual, show_default=bool(usual)) if asks else usual
        answers[each.option] = (said or "").strip()
        if asks:
            _refuse(_wrong(answers, shared))
    return answers


def _refuse(wrong: Iterable[str]) -> None:
    wrong = list(wrong)
    if wrong:
        raise click.UsageError("\n".join(wrong))


def _wrong(answers: Answers, shared: PartialBook) -> Iterable[str]:
    """Everything about the answers so far that no file would stand for."""
    for option, kind in (("place", "places"), ("places", "places"), ("grasses", "grasses")):
        known = list(shared.of(kind))
        for id in _ids(answers.get(option, "")):
            if id not in known:
                yield f"--{option}: '{shown(id)}' is not in the shared {kind}; {suggestion(id, known, f'swardbook init --list shows all {min(len(known), MOST_LISTED)}')}"
    if answers.get("units", "metric") not in ("metric", "us"):
        yield f"--units: '{shown(answers['units'])}' is neither metric nor us"
    if logo := answers.get("logo"):
        file = Path(logo)
        if file.suffix.lower() not in LOGOS:
            yield f"--logo: '{shown(file.name)}' is neither an SVG nor a PNG file"
        elif not file.is_file():
            yield f"--logo: there is no file '{shown(logo)}'"


def _ids(listed: str) -> list[str]:
    return [id for id in (each.strip() for each in listed.split(",")) if id]


def _places(answers: Answers) -> list[str]:
    return list(dict.fromkeys([answers["place"], *_ids(answers["places"])]))


def _country(answers: Answers, shared: PartialBook) -> Country | None:
    """The country of the home place; None for a place that is refused in a moment."""
    home = shared.places.get(answers["place"])
    return shared.countries[home.country] if home else None


def _us_units(answers: Answers, shared: PartialBook) -> bool:
    country = _country(answers, shared)
    return country is not None and country.us_units


def _currency(answers: Answers, shared: PartialBook) -> str:
    country = _country(answers, shared)
    return country.currency if country and country.currency else ANY_MONEY


def _write(folder: Path, answers: Answers) -> None:
    title = f"{answers['name']} practice book"
    logo = Path(answers["logo"]) if answers["logo"] else None
    values = {
        "name": _text(answers["name"]), "plain_name": answers["name"], "title": _text(title), "about": _text(f"{answers['name']} looks after lawns."),
        "units": answers["units"], "currency": answers["currency"], "home_place": answers["place"], "home_grass": _ids(answers["grasses"])[0],
        "places": ", ".join(_places(answers)), "grasses": ", ".join(_ids(answers["grasses"])),
        "public_address": _line("public_address", answers["public_address"], "https://example.org/book/", "where the book will be hosted; client links are built on it"),
        "calendar_name": f"{_NO_ID.sub('-', answers['name'].lower()).strip('-') or 'practice'}.invalid",
        "colour": _line("colour", answers["colour"], '"#24527a"', "of links, buttons and edges"),
        "logo": _line("logo", f"logo{logo.suffix.lower()}" if logo else "", "logo.svg", "a file in the book's folder"),
    }
    for name in ("data", "content"):
        (folder / name).mkdir(parents=True, exist_ok=True)
    for source, target in (("practice", "data/practice.yml"), ("mkdocs", "mkdocs.yml")):
        text = Template((TEXTS / f"{source}.txt").read_text(encoding="utf-8")).substitute(values)
        write_out(folder / target, text.encode())
    write_out(folder / ".gitignore", b"/site/\n/.site-*/\n")
    write_out(folder / "content" / ".keep", b"")
    if logo:
        write_out(folder / f"logo{logo.suffix.lower()}", logo.read_bytes())
    write_schemas(folder)
    write_out(folder / STATE_FILE, state_text(folder).encode())


def _text(words: str) -> str:
    """A text in YAML, which reads JSON's quotes as its own."""
    return json.dumps(words, ensure_ascii=False)


def _line(key: str, said: str, such_as: str, meaning: str) -> str:
    """A line that says it, or one to uncomment."""
    return f"{key}: {_text(said)}" if said else f"# {key}: {such_as}   {meaning}"
