"""`swardbook doctor` says what is there and what is not, and what to do."""

from pathlib import Path

from click.testing import CliRunner

from generator.cli import main
from tests.book_folders import WHOLE


def test_a_book_on_a_machine_that_builds_it_lacks_nothing() -> None:
    ended = CliRunner().invoke(main, ["doctor", "--book", str(WHOLE)])
    assert ended.exit_code == 0, ended.output
    assert "ok       it stands alone" in ended.output and "ok       pydantic " in ended.output


def test_a_folder_that_is_no_book_is_told_with_what_to_do(tmp_path: Path) -> None:
    ended = CliRunner().invoke(main, ["doctor", "--book", str(tmp_path)])
    assert ended.exit_code == 1 and "swardbook init FOLDER" in ended.output
