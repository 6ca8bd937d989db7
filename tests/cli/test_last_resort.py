"""What a terminal sees when the machine refuses something, or when the program has a fault: a sentence, and never a traceback."""

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

import click
import pytest
from click.testing import CliRunner

from generator.book.lists.csv_reading import unreadable
from generator.cli import main
from generator.commands.last_resort import Commands
from tests.book_folders import WHOLE

ROOT = Path(__file__).parents[2]
COMMAND = str(Path(sys.executable).with_name("swardbook"))
NOBODY = 65534


def test_a_reader_who_has_seen_enough_ends_it_quietly() -> None:
    """As `swardbook calc --list | head -1` does."""
    shell = subprocess.run(["bash", "-c", '"$0" calc --list --book "$1" | head -1', COMMAND, WHOLE], capture_output=True, text=True)
    assert len(shell.stdout.splitlines()) == 1 and shell.stderr == ""


def test_output_that_cannot_be_written_is_one_sentence() -> None:
    with open("/dev/full", "w") as full:
        ended = subprocess.run([COMMAND, "calc", "--list", "--book", str(WHOLE)], stdout=full, stderr=subprocess.PIPE, text=True)
    assert ended.returncode == 1
    assert ended.stderr == "Error: No space left on device: what was asked for could not be written or read\n"


def test_a_moment_that_is_none_is_one_sentence() -> None:
    ended = CliRunner(env={"SOURCE_DATE_EPOCH": "today"}).invoke(main, ["check", "--book", str(WHOLE)])
    assert ended.exit_code == 2 and ended.stdout == ""
    assert ended.stderr.splitlines()[-1].startswith("Error: SOURCE_DATE_EPOCH 'today' is not a moment; give the seconds since 1 January 1970")


@pytest.mark.parametrize("command", ["round", "record"])
@pytest.mark.parametrize(("kind", "code", "said"), [
    ("missing", 2, "does not exist"),
    ("folder", 2, "is a directory"),
    ("pipe", 1, "this is not a file; save the list as a file and name that"),
    ("device", 1, "this is not a file; save the list as a file and name that"),
    ("link to itself", 2, "does not exist"),
    ("huge", 1, "the list is larger than 1000 kB; split it into several lists"),
    ("long name", 2, "does not exist"),
])  # fmt: skip
def test_what_is_no_list_is_told(command: str, kind: str, code: int, said: str, tmp_path: Path) -> None:
    file = tmp_path / "list.csv"
    match kind:
        case "folder":
            file.mkdir()
        case "pipe":
            os.mkfifo(file)
        case "device":
            file = Path("/dev/zero")
        case "link to itself":
            file.symlink_to(file)
        case "huge":
            with file.open("wb") as opened:
                opened.truncate(100_000_000)
        case "long name":
            file = tmp_path / ("x" * 5000)
    on = ("--on", "2026-10-12") if command == "round" else ()
    ended = CliRunner().invoke(main, [command, "--book", str(ROOT), str(file), *on])
    assert ended.exit_code == code and said in ended.stderr and not isinstance(ended.exception, OSError)


@pytest.mark.parametrize("kind", ["missing", "file", "pipe", "empty folder"])
@pytest.mark.parametrize("command", [("check",), ("season", "couch", "sydney"), ("calc", "--list"), ("hold", "scarify")])
def test_a_book_that_is_none_is_told(command: tuple[str, ...], kind: str, tmp_path: Path) -> None:
    book = tmp_path / "book"
    match kind:
        case "file":
            book.write_text("no book", encoding="utf-8")
        case "pipe":
            os.mkfifo(book)
        case "empty folder":
            book.mkdir()
    ended = CliRunner().invoke(main, [*command, "--book", str(book)])
    said, no_folder = ended.stdout + ended.stderr, kind in ("missing", "file")
    assert isinstance(ended.exception, SystemExit) and ended.exit_code == (2 if no_folder else 1)
    assert ("Invalid value for '--book'" if no_folder else "the folder data/ is missing") in said


@pytest.fixture
def nobody() -> Iterator[None]:
    """The machine's owner may read anything, so for this test we are somebody else."""
    owner = os.geteuid() == 0
    if owner:
        os.seteuid(NOBODY)
    yield
    if owner:
        os.seteuid(0)


def test_a_list_that_may_not_be_read_is_told(nobody: None) -> None:
    folder = Path(tempfile.mkdtemp())
    file = folder / "list.csv"
    file.write_text("client,grass,place,area\nTL-1,couch,sydney,9 m2\n", encoding="utf-8")
    file.chmod(0)
    assert str(unreadable(file)) == "list.csv:1:1: the list cannot be read (Permission denied); check its name and its permissions"
    shutil.rmtree(folder)


@pytest.fixture
def broken(monkeypatch: pytest.MonkeyPatch) -> Commands:
    """Commands of which one has a fault, one runs out of memory and one finds the disk gone."""
    commands = Commands("swardbook")

    @commands.command()
    @click.argument("trouble")
    def work(trouble: str) -> None:
        raise {"fault": KeyError("lawn\nsize"), "memory": MemoryError(), "disk": OSError(5, "Input/output error", "a\nfile")}[trouble]

    monkeypatch.setattr(sys, "argv", ["swardbook", "work", "fault"])
    return commands


def test_a_fault_of_the_program_is_one_line_for_a_terminal(broken: Commands, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        broken()
    told = capsys.readouterr().err
    assert ended.value.code == 1 and told.count("\n") == 1
    assert told.startswith("This is a fault in Swardbook, not in your book; please pass this line on to its keepers: KeyError at test_last_resort.py:")


def test_a_fault_of_the_program_is_no_sentence_for_a_test(broken: Commands) -> None:
    """Or no test would ever meet one."""
    assert isinstance(CliRunner().invoke(broken, ["work", "fault"]).exception, KeyError)


@pytest.mark.parametrize(("trouble", "told"), [
    ("memory", "Error: this takes more memory than there is; ask for less at a time\n"), ("disk", "Error: a\\nfile: Input/output error\n"),
])
def test_what_the_machine_refuses_is_one_line(broken: Commands, trouble: str, told: str) -> None:
    ended = CliRunner().invoke(broken, ["work", trouble])
    assert (ended.exit_code, ended.stderr) == (1, told)
