"""A place with an impossible climate is refused before anything is built from it."""

from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.cli import main
from tests.book_folders import broken_book, expected_lines


@pytest.mark.parametrize("name", ["bad-climate-figures", "impossible-climate", "eleven-months"])
def test_nothing_is_built_from_a_bad_climate(name: str, tmp_path: Path) -> None:
    site = tmp_path / "site"
    run = CliRunner().invoke(main, ["build", "--book", str(broken_book(name, tmp_path)), "--to", str(site)])
    assert run.exit_code == 1
    for line in expected_lines(name):
        assert line in run.output
    assert not site.exists()
