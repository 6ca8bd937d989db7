"""`swardbook hold`: may this task go ahead today?"""

import json
from pathlib import Path

import click

from generator.commands.common import book_option, known, typed_values, whole_book
from generator.commands.exit_codes import HOLD_CODES, hold_codes_text
from generator.commands.shell_words import ids
from generator.field.forecast import Forecast, read_forecast
from generator.field.holds import answer_for, asks_of, holds_of
from generator.files.hold_answer import asked_text, hold_text, hold_values
from generator.findings import one_line
from generator.moment import moment


@click.command(epilog=hold_codes_text())
@book_option
@click.argument("task", shell_complete=ids("tasks"))
@click.argument("answers", nargs=-1, metavar="[QUESTION=ANSWER ...]")
@click.option("--grass", shell_complete=ids("grasses"), help="The grass, by its id; it answers what the grass decides.")
@click.option("--list", "listed", is_flag=True, help="Show only what is asked about TASK, and how to answer.")
@click.option("--json", "as_data", is_flag=True, help="Print JSON, for other programs.")
def hold(root: Path, task: str, answers: tuple[str, ...], grass: str | None, listed: bool, as_data: bool) -> None:
    """Say whether TASK may go ahead today, from what you know of the weather, lawn and label: low='2 °C' wind='12 km/h' leaf=dry."""
    book = whole_book(root)
    known(task, book.tasks, "task")
    holds = holds_of(task, book.holds)
    if listed:
        click.echo(asked_text(asks_of(holds)) or "There is nothing to ask about this task.")
        return
    forecast = typed_forecast(answers)
    if grass is not None:
        known(grass, book.grasses, "grass")
        chosen = book.grasses[grass]
        forecast = forecast.of_grass(chosen.season_group == "cool", chosen.habit == "above ground")
    found = answer_for(holds, forecast)
    if as_data:
        click.echo(json.dumps(hold_values(task, found, holds, forecast), ensure_ascii=False))
    else:
        click.echo(hold_text(book.tasks[task].name, found, holds, book.sources))
    raise SystemExit(HOLD_CODES[found.answer])


def typed_forecast(words: tuple[str, ...]) -> Forecast:
    """'leaf=wet' and so on as a forecast; what cannot be read ends the command, all of it told at once."""
    forecast, troubles = read_forecast(typed_values(words, "QUESTION=ANSWER", "leaf=dry or wind='12 km/h'"), moment().date())
    if troubles:
        raise click.UsageError("\n".join(one_line(f"{each.question}: {each.sentence}") for each in troubles))
    return forecast
