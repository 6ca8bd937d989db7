"""What draws a year again in the browser says and draws the same as the page did when it was built."""

import json
import re
from datetime import date, timedelta

import pytest

from generator.jobs.dates import day_of_year
from generator.season.calendar_days import day_words
from generator.site.frame.render import COMPONENTS, SCRIPT, asset_files, component_names, render_component
from generator.site.year.charts import CHARTS, path
from generator.site.year.strips import short_day
from tests.yaml_files import read_yaml

HOSTILE = "<img src=x onerror=alert(1)>"
RISING = list(range(-20, 32))
FALLING = [5 - value for value in RISING]


@pytest.fixture
def page(browser):
    """An empty page with the book's scripts in it."""
    context = browser.new_context()
    page = context.new_page()
    page.set_content("<!doctype html><title>Parts</title><body></body>")
    for script in (SCRIPT, "assets/season-strip.js", "assets/year-chart.js"):
        page.add_script_tag(content=asset_files()[script])
    yield page
    context.close()


def examples(name: str) -> list[dict]:
    return read_yaml(COMPONENTS / name / f"{name}.yml")["examples"]


@pytest.mark.parametrize("text", [*(each["view"]["text"] for each in examples("words")), [["14 days", ""]], [["3 mm", "3 mm"]], "plain"])
def test_words_are_the_same_from_both_sides(page, text):
    drawn = page.evaluate("text => Swardbook.words(document.createElement('p'), text).innerHTML", text)
    assert drawn == render_component("words", {"text": text})


def test_words_are_never_markup(page):
    assert page.evaluate("text => Swardbook.words(document.createElement('p'), [text, [text, text + '!']]).querySelectorAll('img').length", HOSTILE) == 0
    assert "<img" not in render_component("words", {"text": [HOSTILE, [HOSTILE, ""]]})


@pytest.mark.parametrize("kind", ["line", "area", "bars", "band"])
def test_a_shape_is_the_same_from_both_sides(page, kind):
    """Values below nothing, at it and above, and two ends whose middle is no whole number."""
    values = {"first": [*RISING[:-1], 36], "second": FALLING}
    names = "first second" if kind == "band" else "first"
    drawn = page.evaluate(
        """([kind, names, values]) => {
          document.body.replaceChildren(document.createRange().createContextualFragment(`<figure><svg><path data-shape="${kind}" data-series="${names}"/></svg></figure>`));
          Swardbook.redrawChart(document.querySelector('figure'), values);
          return document.querySelector('path').getAttribute('d');
        }""",
        [kind, names, values],
    )
    assert drawn == path(kind, [values[name] for name in names.split()])


@pytest.mark.parametrize("at", range(len(examples("season-strip"))))
def test_a_strip_drawn_again_with_its_own_year_is_the_strip_it_was(page, at):
    """The same growth, frost, windows, key and words; how a window's bar is boxed may differ."""
    view = examples("season-strip")[at]["view"]
    year = {
        "growth": "".join(week["state"][0] for week in view["weeks"]), "description": view["description"],
        "bands": {band["kind"]: band["label"] for band in view["bands"]},
        **{name: "".join("01"[bool(week[name])] for week in view["weeks"]) for name in ("frost", "chance", "wet", "renovation", "overseeding")},
    }
    read = """figure => ({
      growth: [...figure.querySelectorAll('.sb-season-strip__growth rect')].map(each => [parseFloat(each.getAttribute('x')).toFixed(1), parseFloat(each.getAttribute('width')).toFixed(1)]),
      frost: [...figure.querySelectorAll('.sb-season-strip__frost > svg')].map(each => parseFloat(each.getAttribute('x')).toFixed(1)),
      lines: figure.querySelectorAll('.sb-season-strip__growth line').length, defined: figure.querySelectorAll('defs pattern').length,
      key: [...figure.querySelectorAll('[data-key]')].filter(each => !each.hidden).map(each => each.textContent),
      words: [...figure.querySelectorAll('tr')].map(row => [...row.cells].map(cell => cell.textContent)),
    })"""
    page.evaluate("html => document.body.replaceChildren(document.createRange().createContextualFragment(html))", render_component("season-strip", view))
    figure = page.locator("figure")
    before = figure.evaluate(read)
    page.evaluate("year => Swardbook.redrawStrip(document.querySelector('figure'), year)", year)
    assert figure.evaluate(read) == before


def test_every_script_keeps_to_text():
    """Texts reach the page as text: no script writes markup or runs what it was given."""
    for name in component_names():
        for script in (COMPONENTS / name).glob("*.js"):
            assert not re.search(r"innerHTML|outerHTML|insertAdjacentHTML|\beval\(|new Function", script.read_text(encoding="utf-8")), script.name


def test_a_chart_reads_without_colour():
    """Every two shapes of one chart differ by more than their colour: in kind, or in how the line is laid."""
    for chart in CHARTS:
        looks = [(shape.kind, shape.style) for shape in chart.shapes]
        assert len(looks) == len(set(looks)), json.dumps(looks)


def test_a_day_of_the_book_s_year_is_the_same_from_both_sides(page):
    """Two years, one of them with a 29 February; and every day of the book's own year in words."""
    days = [date(2027, 12, 1) + timedelta(ahead) for ahead in range(500)]
    assert page.evaluate("days => days.map(Swardbook.dates.dayOfYear)", [f"{day}" for day in days]) == [day_of_year(day) for day in days]
    assert page.evaluate("[...Array(365).keys()].map(Swardbook.dates.dayWords)") == [day_words(day) for day in range(365)]
    assert page.evaluate("[...Array(365).keys()].map(Swardbook.dates.shortDay)") == [short_day(day) for day in range(365)]
