"""What a reader chooses on the command line for calculators to be filled in from: a grass, a place, a day, a product, a machine, an operation."""

from collections.abc import Callable, Container, Iterable, Mapping
from datetime import date

import click

from generator.book.book import Book
from generator.book.records.calculator import Calculator
from generator.calculators.bindings import bindings, filled
from generator.calculators.chosen import Chosen, chosen_from
from generator.calculators.filled_value import Bound
from generator.commands.common import known
from generator.findings import shown
from generator.jobs.dates import day_of_year
from generator.season.season_cache import SeasonCache

OPTIONS = (
    click.option("--grass", help="Fill in from this grass, by its id."),
    click.option("--place", help="Fill in from this place; with --on, from its season."),
    click.option("--on", metavar="DATE", help="The day, such as 10-12 or 2026-10-12."),
    click.option("--until", metavar="DATE", help="The last day of a run of days that begins on --on."),
    click.option("--product", help="Fill in from this product of practice.yml."),
    click.option("--machine", help="Fill in from this machine of practice.yml."),
    click.option("--operation", metavar="TASK", help="Fill in from what practice.yml charges for this task."),
)


def choice_options(command: Callable[..., None]) -> Callable[..., None]:
    """Gives a command the options, as keywords grass, place, on, until, product, machine and operation."""
    for option in reversed(OPTIONS):
        command = option(command)
    return command


def bound_inputs(
    book: Book, calculator: Calculator, typed: Container[str], choices: Mapping[str, str | None]
) -> dict[str, Bound] | None:
    """What the choices fill a calculator in with, by input, where nothing was typed; None where nothing was chosen.

    Ends the command for a choice that the book does not know.
    """
    context = chosen(book, **choices)
    if context is None:
        return None
    return filled({name: each for name, each in bindings(calculator).items() if name not in typed}, context)


def chosen(
    book: Book, grass: str | None = None, place: str | None = None, on: str | None = None, product: str | None = None,
    machine: str | None = None, until: str | None = None, operation: str | None = None,
) -> Chosen | None:
    """The choices as bindings take them; None where there is none. Ends the command for what the book does not know."""
    tables: dict[str, tuple[str | None, Iterable[str]]] = {
        "grass": (grass, book.grasses), "place": (place, book.places), "product": (product, book.practice.products),
        "machine": (machine, book.practice.machines), "operation": (operation, book.practice.operations),
    }
    for kind, (id, ids) in tables.items():
        if id is not None:
            known(id, ids, kind)
    days = {option: None if text is None else day_number(text, option) for option, text in (("--on", on), ("--until", until))}
    if on is until is None and all(id is None for id, _ in tables.values()):
        return None
    return chosen_from(SeasonCache(book), grass, place, days["--on"], product, machine, days["--until"], operation)


def day_number(text: str, option: str) -> int:
    """'10-12' or '2026-10-12' as a day of the engine's year, 0 for 1 January; anything else ends the command."""
    try:
        # 2000 had a 29 February.
        return day_of_year(date.fromisoformat(text if text.count("-") == 2 else f"2000-{text}"))
    except ValueError:
        raise click.UsageError(f"{option}: '{shown(text)}' is not a day; write it as 10-12 or 2026-10-12") from None
