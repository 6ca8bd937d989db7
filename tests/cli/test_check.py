"""`swardbook check` and `swardbook schema` at the terminal."""

from pathlib import Path

from click.testing import CliRunner

from generator.cli import main
from tests.book_folders import SMALLEST


def test_a_folder_that_is_not_there_is_a_usage_error() -> None:
    run = CliRunner().invoke(main, ["check", "--book", "no-such-folder"])
    assert run.exit_code == 2
    assert "no-such-folder" in run.stderr


def test_an_unknown_command_is_a_usage_error() -> None:
    assert CliRunner().invoke(main, ["chekc"]).exit_code == 2


def test_check_reads_the_current_folder(monkeypatch) -> None:
    monkeypatch.chdir(SMALLEST)
    run = CliRunner().invoke(main, ["check"])
    assert run.exit_code == 0, run.output


def test_an_empty_folder_has_one_problem(tmp_path: Path) -> None:
    run = CliRunner().invoke(main, ["check", "--book", str(tmp_path)])
    assert run.stdout == "data:1:1: the folder data/ is missing; name the folder that holds it with --book\n"
    assert run.stderr == "1 problem\n"
    assert run.exit_code == 1


def test_schema_writes_one_file_for_each_kind(tmp_path: Path) -> None:
    (tmp_path / "data").mkdir()
    run = CliRunner().invoke(main, ["schema", "--book", str(tmp_path)])
    assert run.exit_code == 0
    names = {file.name for file in (tmp_path / "data" / "schema").iterdir()}
    kinds = (
        "grass task caution place calculator step renovation hold aftercare practice season-groups inspection record services sources "
        "countries problem expert answer key glossary topics retired"
    )
    assert names == {f"{kind}.schema.json" for kind in (*kinds.split(), "quantity")}
