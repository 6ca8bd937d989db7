"""Calculators of the shipped book on a page opened from the disk, and what a test types and reads there."""

from datetime import date
from functools import cache
from pathlib import Path

from generator.site.frame.render import SCRIPT, STYLE, asset_files, render_component
from generator.site.page_context import PageContext
from generator.site.pages.calculator.calculator_script import calculator_script
from generator.site.pages.calculator.view import calculator_view
from generator.site.shared.lawn_pieces import CALCULATOR_SCRIPT
from tests.our_book import book

BOOK = book()
IDS = sorted(BOOK.calculators)
DESK = PageContext(BOOK, "calculators/any", date(2026, 1, 1))


@cache
def shared() -> tuple[str, str]:
    """Style and script of every page that has a calculator."""
    files = asset_files()
    return files[STYLE], "\n".join([files[SCRIPT], files[CALCULATOR_SCRIPT]])


@cache
def script_of(id: str) -> str:
    return calculator_script(id, BOOK.calculators[id])


def page_with(folder: Path, bodies: list[str], ids: list[str]) -> str:
    """A page opened from the disk that holds these calculators and loads everything as the site does; its address."""
    style, script = shared()
    (folder / "book.css").write_text(style, encoding="utf-8")
    (folder / "book.js").write_text(script, encoding="utf-8")
    for id in ids:
        (folder / f"{id}.js").write_text(script_of(id), encoding="utf-8")
    own = "".join(f'<script src="{id}.js" defer></script>' for id in ids)
    (folder / "page.html").write_text(
        '<!doctype html><html lang="en" data-md-color-scheme="default"><meta charset="utf-8"><title>t</title>'
        '<meta name="viewport" content="width=device-width"><link rel="stylesheet" href="book.css">'
        f'<script src="book.js" defer></script><body class="md-typeset">{"".join(bodies)}{own}</body></html>',
        encoding="utf-8",
    )
    return (folder / "page.html").as_uri()


def component(id: str, place: str = "", filled=None) -> str:
    return render_component("calculator", calculator_view(BOOK, id, DESK, filled=filled, place=place))


def figure(page, result: str, box: str = "") -> str:
    return page.locator(f'{box} [data-result="{result}"] .sb-calculator__figure').inner_text()


def field(page, name: str, box: str = ""):
    return page.locator(f'{box} [data-input="{name}"] .sb-calculator__input')


def typed(calculator, texts: dict[str, str]) -> dict[str, dict[str, str]]:
    """Every field as the form holds it: what the example types, else the usual start."""
    found = {}
    for name, asked in calculator.inputs.items():
        start = asked.default if asked.many else (asked.default,)
        found[name] = {"text": texts.get(name, ", ".join(map(repr, start))), "unit": asked.unit}
    return found
