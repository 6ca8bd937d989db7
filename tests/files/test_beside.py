"""A file that a command writes is the old one or the whole new one, whatever happens in between."""

import fcntl
import multiprocessing
import os
import stat
import subprocess
import sys
import time
from contextlib import suppress
from pathlib import Path

import pytest

from generator.files.locked import Busy, create_locked
from generator.files.written_beside import beside, write_beside


def test_a_file_is_written(tmp_path: Path) -> None:
    write_beside(tmp_path / "job.ics", b"a job")
    assert (tmp_path / "job.ics").read_bytes() == b"a job"
    assert [each.name for each in tmp_path.iterdir()] == ["job.ics"]
    umask = os.umask(0)
    os.umask(umask)
    assert stat.S_IMODE((tmp_path / "job.ics").stat().st_mode) == 0o666 & ~umask


@pytest.mark.parametrize("error", [KeyboardInterrupt, OSError, ValueError])
def test_what_stands_there_stays_until_the_new_one_is_whole(tmp_path: Path, error: type[BaseException]) -> None:
    file = tmp_path / "job.ics"
    file.write_bytes(b"the old job")
    with pytest.raises(error), beside(file) as new:
        new.write(b"half of the ")
        new.flush()
        assert file.read_bytes() == b"the old job"
        raise error
    assert file.read_bytes() == b"the old job"
    assert [each.name for each in tmp_path.iterdir()] == ["job.ics"]


def test_a_link_is_followed_and_permissions_are_kept(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    (tmp_path / "real/job.ics").write_bytes(b"old")
    (tmp_path / "real/job.ics").chmod(0o604)
    (tmp_path / "link.ics").symlink_to("real/job.ics")
    (tmp_path / "new.ics").symlink_to("real/other.ics")
    write_beside(tmp_path / "link.ics", b"new")
    write_beside(tmp_path / "new.ics", b"new")
    assert (tmp_path / "link.ics").is_symlink() and (tmp_path / "new.ics").is_symlink()
    assert (tmp_path / "real/job.ics").read_bytes() == b"new" == (tmp_path / "real/other.ics").read_bytes()
    assert stat.S_IMODE((tmp_path / "real/job.ics").stat().st_mode) == 0o604
    assert sorted(each.name for each in (tmp_path / "real").iterdir()) == ["job.ics", "other.ics"]


def test_a_device_and_a_programs_own_output_are_written_straight(tmp_path: Path) -> None:
    write_beside(Path("/dev/null"), b"x")
    assert stat.S_ISCHR(Path("/dev/null").stat().st_mode)
    script = "from pathlib import Path; from generator.files.written_beside import write_beside; write_beside(Path('/dev/stdout'), b'new\\n')"
    assert subprocess.run([sys.executable, "-c", script], capture_output=True).stdout == b"new\n"
    log = tmp_path / "log"
    log.write_bytes(b"before\n")
    with log.open("ab") as led:
        subprocess.run([sys.executable, "-c", script], stdout=led, check=True)
    assert log.read_bytes() == b"before\nnew\n"
    with pytest.raises(OSError, match="No space left"):
        write_beside(Path("/dev/full"), b"x")


@pytest.mark.parametrize("name", ["no folder/job.ics", "s" * 256, "ring"])
def test_where_no_file_can_be_written_nothing_is_left(tmp_path: Path, name: str) -> None:
    (tmp_path / "ring").symlink_to("ring")
    with pytest.raises(OSError):
        write_beside(tmp_path / name, b"x")
    assert [each.name for each in tmp_path.iterdir()] == ["ring"]


def test_the_longest_name_is_written_too(tmp_path: Path) -> None:
    write_beside(tmp_path / ("s" * 255), b"x")
    assert [each.name for each in tmp_path.iterdir()] == ["s" * 255]


def test_what_a_killed_command_left_beside_goes_with_the_next(tmp_path: Path) -> None:
    (tmp_path / ".job.ics.writing").write_bytes(b"half of")
    write_beside(tmp_path / "job.ics", b"whole")
    assert [each.name for each in tmp_path.iterdir()] == ["job.ics"]


def test_a_link_under_the_hidden_name_is_never_written_through(tmp_path: Path) -> None:
    (tmp_path / "mine").write_bytes(b"mine")
    (tmp_path / ".job.ics.writing").symlink_to("mine")
    write_beside(tmp_path / "job.ics", b"whole")
    assert (tmp_path / "mine").read_bytes() == b"mine" and (tmp_path / "job.ics").read_bytes() == b"whole"


def test_of_two_that_write_one_file_the_second_is_told(tmp_path: Path) -> None:
    with beside(tmp_path / "job.ics") as first:
        with pytest.raises(Busy):
            write_beside(tmp_path / "job.ics", b"second")
        first.write(b"first")
    assert (tmp_path / "job.ics").read_bytes() == b"first"


def take_turns(file: Path, until: float, mine: bytes) -> None:
    while time.monotonic() < until:
        with suppress(Busy):
            write_beside(file, mine * 5000)


@pytest.mark.parametrize("seconds", [1, pytest.param(30, marks=pytest.mark.soak)])
def test_whoever_reads_sees_one_whole_file_of_one_writer(tmp_path: Path, seconds: int) -> None:
    file = tmp_path / "job.ics"
    write_beside(file, b"a" * 5000)
    until = time.monotonic() + seconds
    started = multiprocessing.get_context("spawn")
    writers = [started.Process(target=take_turns, args=(file, until + 1, mine)) for mine in (b"a", b"b")]
    for writer in writers:
        writer.start()
    reads = 0
    while time.monotonic() < until:
        text = file.read_bytes()
        assert len(text) == 5000 and len(set(text)) == 1
        reads += 1
    for writer in writers:
        writer.join()
        assert writer.exitcode == 0
    print(f"\n{reads} reads of a file that two commands write, each of one whole file")
    assert [each.name for each in tmp_path.iterdir()] == ["job.ics"]


def test_a_lock_is_of_the_file_that_stands_there(tmp_path: Path) -> None:
    first = create_locked(tmp_path / "lock")
    with pytest.raises(Busy):
        create_locked(tmp_path / "lock")
    os.close(first)
    second = create_locked(tmp_path / "lock")
    assert os.path.samestat(os.fstat(second), (tmp_path / "lock").stat())
    with (tmp_path / "lock").open() as other, pytest.raises(BlockingIOError):
        fcntl.flock(other, fcntl.LOCK_EX | fcntl.LOCK_NB)
    os.close(second)
