"""Every component draws every one of its examples, in sound markup, with the words it was given."""

import pytest
from jinja2 import UndefinedError

from generator.site.frame.render import COMPONENTS, component_names, render_component, runs, share, spells
from tests.components.markup import read
from tests.yaml_files import read_yaml

READ_ALOUD = {"say", "metric", "country_name", "wait_for", "because", "defer", "text"}


def examples() -> list:
    found = []
    for name in component_names():
        described = read_yaml(COMPONENTS / name / f"{name}.yml")
        found += [pytest.param(name, each["view"], id=f"{name}: {each['name']}") for each in described["examples"]]
    return found


def words_of(view):
    """Each text in a view that a reader must find on the page."""
    if isinstance(view, dict):
        for key, value in view.items():
            if key in READ_ALOUD and isinstance(value, str):
                yield " ".join(value.split())
            else:
                yield from words_of(value)
    elif isinstance(view, list):
        for value in view:
            yield from words_of(value)


@pytest.mark.parametrize(("name", "view"), examples())
def test_an_example_is_sound_markup_with_its_words(name, view):
    drawn = read(render_component(name, view))
    assert drawn.faults == []
    assert len(drawn.ids) == len(set(drawn.ids))
    assert [each for each in drawn.references if each not in drawn.ids] == []
    assert [words for words in words_of(view) if words not in drawn.text()] == []


@pytest.mark.parametrize("name", component_names())
def test_a_component_lists_what_it_takes(name):
    described = read_yaml(COMPONENTS / name / f"{name}.yml")
    assert all({"name", "type", "required", "description"} <= set(param) for param in described["params"])
    required = {param["name"] for param in described["params"] if param["required"]}
    known = {param["name"] for param in described["params"]}
    for example in described["examples"]:
        assert required <= set(example["view"]), example["name"]
        assert set(example["view"]) <= known, example["name"]


def test_a_missing_field_stops_the_build():
    with pytest.raises(UndefinedError, match="summary"):
        render_component("caution", {"id": "x", "name": "Noise", "weight": "note", "url": "", "defer": ""})


def test_a_field_that_holds_nothing_is_never_printed():
    """The guides once told their readers None."""
    with pytest.raises(UndefinedError, match="not there"):
        render_component("card", {"url": "x.html", "title": "Couch", "text": None})


def test_markup_in_a_text_stays_text():
    hostile = "<img src=x onerror=alert(1)>"
    drawn = read(render_component("notice", {"kind": "plain", "text": hostile}))
    assert drawn.faults == []
    assert hostile in drawn.text()


def test_a_strip_says_the_year_in_words_and_names_its_windows():
    view = next(param.values[1] for param in examples() if param.id == "season-strip: a page, north of the equator, both windows")
    text = read(render_component("season-strip", view)).text()
    assert "Overseed: 13 Aug to 30 Sep" in text
    # The example's first weeks: slow to week 8 (from 19 Feb), with frost, too wet.
    assert "1 Jan to 19 Feb Slow likely often too wet" in text


def test_marks_say_what_kind_of_source_it_is():
    marks = [
        {"kind": "published", "label": "Allen 1998", "url": "sources.html#allen"},
        {"kind": "assumption", "label": "assumption", "url": None},
    ]
    html = render_component("source-marks", {"marks": marks})
    assert 'href="sources.html#allen"' in html
    assert read(html).text() == "Source: Allen 1998 , assumption"


def test_a_quantity_without_a_us_twin_is_said_once():
    assert read(render_component("quantity", {"metric": "14 days", "us": None})).text() == "14 days"
    assert read(render_component("quantity", {"metric": "25 mm", "us": "1 in"})).text() == "25 mm ( 1 in )"


def test_shares_and_runs():
    assert share(13, 52) == "25%"
    assert share(0.5) == "50%"
    weeks = [{"state": "slow"}, {"state": "slow"}, {"state": "peak"}, {"state": "slow"}]
    assert [(piece["value"], piece["x"], piece["width"]) for piece in runs(weeks, "state")] == [
        ("slow", "0%", "50%"), ("peak", "50%", "25%"), ("slow", "75%", "25%"),
    ]


def test_spells_join_weeks_that_are_alike():
    weeks = [{"number": 1, "from": "1 Jan", "frost": True}, {"number": 2, "from": "8 Jan", "frost": True}, {"number": 3, "from": "15 Jan", "frost": False}]
    assert [(each["from"], each["until"], each["count"]) for each in spells(weeks)] == [("1 Jan", "8 Jan", 2), ("15 Jan", "15 Jan", 1)]
