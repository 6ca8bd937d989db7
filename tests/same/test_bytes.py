"""The same book makes the same bytes: on any day that SOURCE_DATE_EPOCH names, in any place, under any Python."""

import re
import shutil
import subprocess
from datetime import UTC, datetime
from pathlib import Path

import pytest

from generator.moment import moment
from tests.book_folders import SMALLEST
from tests.same.building import COMMAND, EPOCH, ROOT, built, differing
from tests.same.pythons import environment, others


def test_now_is_what_the_environment_says(monkeypatch: pytest.MonkeyPatch) -> None:
    """1764374400 s after the beginning of 1970 are 20421 days: 29 November 2025."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", EPOCH)
    assert moment() == datetime(2025, 11, 29, tzinfo=UTC)


def test_today_is_the_day_in_greenwich(monkeypatch: pytest.MonkeyPatch) -> None:
    """So that a book has one date round the world."""
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)
    assert moment().utcoffset().total_seconds() == 0 and abs((moment() - datetime.now(UTC)).total_seconds()) < 5


@pytest.mark.parametrize("given", ["", "yesterday", "-1", "1e9", "12.5", "１７６４", "9" * 30, " 1764374400", "253402300799"])
def test_no_moment_is_told_in_one_line(given: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", given)
    with pytest.raises(ValueError, match=r"^SOURCE_DATE_EPOCH '.{0,40}' is not a moment; give the seconds since 1 January 1970") as told:
        moment()
    assert "\n" not in str(told.value)


def test_a_build_without_a_moment_ends_in_one_line(tmp_path: Path) -> None:
    shutil.copytree(SMALLEST, tmp_path / "book")
    run = subprocess.run([COMMAND.with_name("mkdocs"), "build"], capture_output=True, text=True, cwd=tmp_path / "book",
                         env={"PATH": "/usr/bin:/bin", "SOURCE_DATE_EPOCH": "soon"})  # fmt: skip
    assert run.returncode != 0 and "Traceback" not in run.stderr
    assert run.stderr.count("SOURCE_DATE_EPOCH 'soon' is not a moment; give the seconds") == 1


def test_where_and_how_it_is_built_does_not_show(tmp_path: Path) -> None:
    """Another clock, tongue, order of sets, folder and mask; and a book whose files were made in another order."""
    backwards = tmp_path / "elsewhere" / "a book"
    for file in sorted(SMALLEST.rglob("*"), reverse=True):
        if file.is_file() and "site" not in file.relative_to(SMALLEST).parts:
            (backwards / file.relative_to(SMALLEST)).parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(file, backwards / file.relative_to(SMALLEST))
    here = built(SMALLEST, tmp_path / "here", PYTHONHASHSEED="1", TZ="Pacific/Auckland", LC_ALL="C.UTF-8")
    there = built(
        backwards, tmp_path / "there", cwd=tmp_path, umask=0o077, PYTHONHASHSEED="2", TZ="America/Los_Angeles", LC_ALL="C", LANGUAGE="de", COLUMNS="40",
    )
    assert len(here) > 30 and differing(here, there) == []
    calendars = [file.read_text(encoding="utf-8") for file in (tmp_path / "here").rglob("*.ics")]
    assert calendars and {stamp for text in calendars for stamp in re.findall(r"(?:DTSTAMP|LAST-MODIFIED):(\S+)", text)} == {"20251129T000000Z"}


@pytest.mark.soak
def test_every_python_builds_the_same_book(tmp_path: Path) -> None:
    ours = built(ROOT, tmp_path / "ours")
    found = others()
    print(f"\n{len(ours)} files by this Python; others found: {', '.join(f'3.{minor}' for _, minor in found) or 'none'}")
    assert found, "no other Python 3.11 or newer on PATH or under PYENV_ROOT/versions, so nothing was compared"
    for (_, minor), python in found.items():
        folder = tmp_path / f"python-{minor}"
        theirs = built(ROOT, folder / "site", command=environment(python, folder), PYTHONHASHSEED=str(minor), TZ="Pacific/Auckland", LC_ALL="C")
        unlike = differing(ours, theirs)
        print(f"Python 3.{minor}: {len(theirs)} files, {len(unlike)} differ")
        assert unlike == []
