"""The line drawings say in words what they show, take the colour of the text, and one is there for each part that is drawn."""

import re
from xml.etree import ElementTree

import pytest

from generator.book.records.identification import FEATURES
from generator.site.frame.render import COMPONENTS
from generator.site.pages.grass.grass_parts import DRAWN, drawing

FOLDER = COMPONENTS / "grass-drawing"
FILES = sorted(FOLDER.glob("*.svg"))
SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_a_drawing_says_what_it_shows(file) -> None:
    root = ElementTree.fromstring(file.read_text(encoding="utf-8"))
    assert root.get("role") == "img"
    assert root.find(f"{SVG}title").text and root.find(f"{SVG}desc").text.endswith(".")
    # Drawn on a page more than once: an id would not be unique.
    assert not [each for each in root.iter() if each.get("id")]


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_a_drawing_takes_the_colour_of_the_text(file) -> None:
    colours = re.findall(r'(?:fill|stroke)="([^"]*)"', file.read_text(encoding="utf-8"))
    assert set(colours) <= {"none", "currentColor"}
    assert "currentColor" in colours


def test_each_way_of_running_and_each_drawn_part_has_its_drawing() -> None:
    habits = ("above ground", "above and below ground", "below ground", "bunch")
    wanted = [drawing("habit", habit, "")["drawing"] for habit in habits]
    wanted += [drawing(feature, value, "")["drawing"] for feature in DRAWN for value in FEATURES[feature]]
    assert sorted(wanted) == sorted(file.stem for file in FILES)


def test_no_two_drawings_say_the_same() -> None:
    said = [ElementTree.fromstring(file.read_text(encoding="utf-8")).find(f"{SVG}desc").text for file in FILES]
    assert len(said) == len(set(said))
