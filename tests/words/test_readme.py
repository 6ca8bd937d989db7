"""What the README promises is so: its example grass is a good one, and what it names exists."""

import re
from pathlib import Path

from generator.book.fields.looks import Looks
from generator.book.loading.load import load_record
from generator.book.palette import falls_short
from generator.book.records import KINDS
from generator.book.records.grass import Grass
from generator.book.records.practice import Practice
from generator.cli import main
from tests.yaml_files import parsed, read_yaml

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def example(of: str = "grass") -> str:
    """The example of that file: of a practice, or of a grass, which names its schema."""
    return next(text for text in re.findall(r"```yaml\n(.*?)```", README, re.DOTALL) if (f"{of}.schema.json" in text) is (of == "grass"))


def test_the_example_practice_loads_and_shows_every_key_that_readers_see_it_by(tmp_path):
    file = tmp_path / "practice.yml"
    file.write_text(f"{example('practice')}home_place: sydney\nhome_grass: couch\nfeed: granule\nproducts: {{granule: {{name: Granule}}}}\n", encoding="utf-8")
    record, _, findings = load_record(file, "data/practice.yml", Practice)
    assert [str(finding) for finding in findings] == []
    assert {*Looks.model_fields, "about", "public_address", "telephone", "email", "invented"} <= record.model_fields_set
    assert falls_short(record.colour) is None


def test_the_example_grass_loads_without_a_finding(tmp_path):
    file = tmp_path / "sweet-smother-grass.yml"
    file.write_text(example(), encoding="utf-8")
    record, _, findings = load_record(file, "data/grasses/sweet-smother-grass.yml", Grass)
    assert [str(finding) for finding in findings] == []
    assert record.habit == "above ground"


def test_the_example_grass_shows_or_names_every_key_of_the_record():
    for name in Grass.model_fields:
        # Two that a first grass hardly needs stand in no list of the README.
        if name not in {"nitrogen_per_feed", "season"}:
            assert re.search(rf"\b{name}\b", README), name


def test_the_example_grass_is_not_yet_in_the_book():
    names = {read_yaml(path)["name"] for path in (ROOT / "data" / "grasses").glob("*.yml")}
    assert parsed(example())["name"] not in names


def test_each_kind_of_record_has_its_row():
    for kind in KINDS:
        assert f"`data/{kind}/NAME.yml`" in README, kind


def test_each_command_it_names_is_there():
    named = set(re.findall(r"`swardbook ([a-z]+)", README))
    assert named == set(main.commands), "README and the command line name different commands"
