"""What the README promises is so: its example grass is a good one, and what it names exists."""

import re
from pathlib import Path

from generator.book.loading.load import load_record
from generator.book.records import KINDS
from generator.book.records.grass import Grass
from generator.cli import main
from tests.yaml_files import parsed, read_yaml

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def example() -> str:
    return re.search(r"```yaml\n(.*?)```", README, re.DOTALL)[1]


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
