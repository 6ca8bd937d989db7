"""A command takes every place of the book, whether the practice offers it or not."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.cli import main
from tests.our_book import book

ROOT = str(Path(__file__).parents[2])


@pytest.mark.parametrize("place", ["phoenix", "dublin", "townsville", "bemidji"])
@pytest.mark.parametrize(
    "asked",
    [
        ["season", "tall-fescue", "PLACE", "--json"],
        ["plan", "core-only", "--grass", "tall-fescue", "--place", "PLACE", "--area", "240 m2", "--on", "2027-05-01", "--json"],
        ["calc", "weekly-water-need", "--grass", "tall-fescue", "--place", "PLACE", "--on", "07-01", "--json"],
    ],
)
def test_a_place_not_offered_is_as_good_as_any(asked: list[str], place: str) -> None:
    assert place in book().other_places
    run = CliRunner().invoke(main, [asked[0], "--book", ROOT, *(place if word == "PLACE" else word for word in asked[1:])])
    assert run.exit_code == 0, run.output
    assert json.loads(run.stdout)


def test_a_name_like_none_of_very_many_is_not_answered_by_all_of_them() -> None:
    run = CliRunner().invoke(main, ["season", "--book", ROOT, "couch", "zzz"])
    assert run.exit_code == 2 and "there are 133, such as aberporth" in run.stderr and len(run.stderr) < 300
