"""The `swardbook` command: one screen a command; the thinking lives in the rooms it calls."""

import json
import sys
from pathlib import Path

import click

from generator.book.records.calculator import Calculator
from generator.calculators.calculate import USAGE, Calculation, calculate
from generator.calculators.inversion import solve
from generator.commands.build import build, pack
from generator.commands.choices import bound_inputs, choice_options
from generator.commands.common import book_option, checked_now, known, present, typed_values, whole_book
from generator.commands.doctor import doctor
from generator.commands.exit_codes import ExitCode, codes_text
from generator.commands.hold import hold
from generator.commands.last_resort import Commands
from generator.commands.own_book.changes import changes
from generator.commands.own_book.init import init
from generator.commands.own_book.new import new
from generator.commands.own_book.place import place as place_command
from generator.commands.own_book.schema import schema
from generator.commands.plan import plan
from generator.commands.programme import programme
from generator.commands.record import record
from generator.commands.round import round_command
from generator.commands.season import season
from generator.commands.shell_words import ids
from generator.files.calculation_text import calculation_text, calculation_values, listing_text, listing_values
from generator.findings import one_line, short_words
from generator.units import american_words, to_si, unit


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]}, epilog=codes_text())
@click.version_option(package_name="swardbook")
def main() -> None:
    """A practice book for turf: check it, build it, and get answers from it."""
    for stream in (sys.stdout, sys.stderr):  # A terminal without '°' gets an escape, never a traceback.
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")


@main.command()
@book_option
def check(root: Path) -> None:
    """Check every file of the book; each problem is one line, and so is what is unusual in it, which refuses nothing."""
    (book, findings), unusual = checked_now(root)
    for finding in sorted([*findings, *unusual]):
        click.echo(finding)
    if book is None:
        click.echo("1 problem" if len(findings) == 1 else f"{len(findings)} problems", err=True)
        raise SystemExit(ExitCode.FINDINGS)
    click.echo(f"The book is in order: {book.size()} records read, and every check passed.")


@main.command()
@book_option
@click.argument("name", required=False, shell_complete=ids("calculators"))
@click.argument("values", nargs=-1, metavar="[INPUT=VALUE ...]")
@click.option("--list", "listed", is_flag=True, help="List every calculator, or NAME alone, with its inputs, results and units.")
@click.option("--solve", "for_input", metavar="INPUT", help="Work backwards: find INPUT from a result, such as --solve area packs=2.")
@click.option("--us", is_flag=True, help="Answer in US units; a gallon is the US gallon, and a ton is 2000 lb.")
@click.option("--json", "as_data", is_flag=True, help="Print JSON, unrounded, for other programs.")
@choice_options
def calc(
    root: Path, name: str | None, values: tuple[str, ...], listed: bool, for_input: str | None, us: bool, as_data: bool,
    **choices: str | None,
) -> None:
    """Run the calculator NAME. Values take units: area='240 m2' depth='5 mm'; what you do not type can be filled in by an option."""
    book = whole_book(root)
    calculators = book.calculators
    if name is not None:
        name = present(book, "calculators", name)
        known(name, calculators, "calculator")
    if listed:
        chosen = calculators if name is None else {name: calculators[name]}
        click.echo(json.dumps(listing_values(chosen), ensure_ascii=False) if as_data else listing_text(chosen))
        return
    if name is None:
        raise click.UsageError("name a calculator; 'swardbook calc --list' shows them all")
    typed = typed_values(values, "INPUT=VALUE", "area='240 m2'")
    bound = bound_inputs(book, calculators[name], {*typed, *([for_input] if for_input else ())}, choices)
    given = {each: to_si(found.value, unit(found.unit)) for each, found in (bound or {}).items()}
    typed = {each: american_words(text) for each, text in typed.items()} if us else typed
    run = calculated(calculators[name], given | typed, for_input)
    for problem in run.problems:
        click.echo(one_line(short_words(f"{problem.about}: {problem.sentence}")), err=True)
    if run.problems:
        for said in run.warnings:
            click.echo(said.sentence, err=True)
        raise SystemExit(ExitCode.USAGE if any(problem.code in USAGE for problem in run.problems) else ExitCode.FINDINGS)
    if as_data:
        solved = {} if for_input is None else {"solved": for_input}
        told = {} if bound is None else {"bound": {each: found.where_from for each, found in bound.items()}}
        click.echo(json.dumps({"calculator": name, **solved, **calculation_values(run, us, for_input), **told}, ensure_ascii=False))
    else:
        where_from = {each: found.where_from for each, found in (bound or {}).items()}
        click.echo(calculation_text(calculators[name], run, us, where_from, for_input))


def calculated(calculator: Calculator, typed: dict[str, str | float], for_input: str | None) -> Calculation:
    """The run, straight or turned round; a result among what was typed is what the input is found from."""
    if for_input is None:
        return calculate(calculator, typed)
    given = {name: text for name, text in typed.items() if name in calculator.inputs}
    return solve(calculator, {name: text for name, text in typed.items() if name not in given}, for_input, given)


main.add_command(init)
main.add_command(new)
main.add_command(doctor)
main.add_command(changes)
main.add_command(build)
main.add_command(pack)
main.add_command(schema)
main.add_command(season)
main.add_command(plan)
main.add_command(place_command, "place")
main.add_command(programme)
main.add_command(round_command, "round")
main.add_command(hold)
main.add_command(record)
