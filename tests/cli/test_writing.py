"""Files that commands write: whole or not there, and one line for why not."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.cli import main
from tests.book_folders import SMALLEST
from tests.slices import first

COMMAND = Path(sys.executable).with_name("swardbook")
JOB = ["--grass", "plaingrass", "--place", "flatfield", "--area", "100 m2", "--on", "2026-10-12"]


def limited_to(size: int):
    """Lets a command write no file larger than so many bytes: the disk is full in the middle of one."""
    def limit() -> None:
        import resource

        resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))

    return limit


def plan(*more: str | Path, size: int | None = None) -> subprocess.CompletedProcess[str]:
    words = ["plan", "--book", SMALLEST, "plain-renovation", *JOB, *more]
    return subprocess.run([COMMAND, *words], capture_output=True, text=True, preexec_fn=limited_to(size) if size is not None else None)


@pytest.mark.parametrize("option", first(1, ["--ics", "--csv"]))
def test_a_disk_that_is_full_leaves_the_earlier_file_and_no_half_one(tmp_path: Path, option: str) -> None:
    file = tmp_path / "job"
    file.write_bytes(b"the earlier job")
    run = plan(option, file, size=100)
    assert (run.returncode, run.stdout, run.stderr) == (1, "", f"{file}: cannot be written (File too large); name another file\n")
    assert file.read_bytes() == b"the earlier job"
    assert [each.name for each in tmp_path.iterdir()] == ["job"]


@pytest.mark.parametrize(("file", "why"), [("no folder/job.ics", "No such file or directory"), ("/dev/full", "No space left on device")])
def test_a_place_where_no_file_can_be_written_is_one_line(tmp_path: Path, file: str, why: str) -> None:
    run = CliRunner().invoke(main, ["plan", "--book", str(SMALLEST), "plain-renovation", *JOB, "--ics", str(tmp_path / file)])
    assert (run.exit_code, run.stderr) == (1, f"{tmp_path / file}: cannot be written ({why}); name another file\n")


def test_a_round_writes_both_its_files_in_the_same_way(tmp_path: Path) -> None:
    lawns = tmp_path / "lawns.csv"
    lawns.write_text("client,grass,place,area\nA1,plaingrass,flatfield,100 m2\n", encoding="utf-8")
    for option in ("--ics", "--csv"):
        run = CliRunner().invoke(main, ["round", "--book", str(SMALLEST), str(lawns), "--on", "2026-10-12", option, "/dev/full"])
        assert (run.exit_code, run.stderr) == (1, "/dev/full: cannot be written (No space left on device); name another file\n")


def test_schemas_are_written_into_books_only(tmp_path: Path) -> None:
    run = CliRunner().invoke(main, ["schema", "--book", str(tmp_path)])
    assert (run.exit_code, run.output) == (1, f"{tmp_path}: no data/ here; go to the folder of a book or name it with --book\n")
    assert list(tmp_path.iterdir()) == []


def test_schemas_are_whole_or_as_they_were(tmp_path: Path) -> None:
    (tmp_path / "data").mkdir()
    assert CliRunner().invoke(main, ["schema", "--book", str(tmp_path)]).exit_code == 0
    folder = tmp_path / "data/schema"
    before = {each.name: each.read_bytes() for each in folder.iterdir()}
    run = subprocess.run([COMMAND, "schema", "--book", tmp_path], capture_output=True, text=True, preexec_fn=limited_to(100))
    assert run.returncode == 1 and len(run.stderr.splitlines()) == 1 and run.stderr.endswith("cannot be written (File too large); name another file\n")
    assert {each.name: each.read_bytes() for each in folder.iterdir()} == before


def test_a_folder_of_schemas_that_is_a_file_is_one_line(tmp_path: Path) -> None:
    (tmp_path / "data").mkdir()
    (tmp_path / "data/schema").touch()
    run = CliRunner().invoke(main, ["schema", "--book", str(tmp_path)])
    assert (run.exit_code, run.output) == (1, f"{tmp_path}/data/schema: cannot be written (File exists); name another file\n")


def test_a_command_that_is_ended_while_it_writes_leaves_the_earlier_file(tmp_path: Path) -> None:
    """It writes into a pipe that nobody empties, so that it is still at it when it is asked to end."""
    os.mkfifo(tmp_path / "pipe")
    script = (
        "import sys; from pathlib import Path; from generator.commands.writing import write_out\n"
        "print('writing', flush=True); write_out(Path(sys.argv[1]), b'x' * 1_000_000)"
    )
    with subprocess.Popen([sys.executable, "-c", script, tmp_path / "pipe"], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as run:
        assert run.stdout.readline() == "writing\n"
        reader = os.open(tmp_path / "pipe", os.O_RDONLY)
        os.read(reader, 1)
        run.terminate()
        _, said = run.communicate(timeout=60)
    os.close(reader)
    assert run.returncode == 143 and said == f"Stopped. {tmp_path}/pipe is as it was.\n"
