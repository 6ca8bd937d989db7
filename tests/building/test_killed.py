"""The site is there at every instant, whoever ends a build and however."""

import json
import random
import re
import shutil
import signal
import subprocess
import sys
import time
from collections import Counter
from pathlib import Path

import pytest

from tests.book_folders import SMALLEST
from tests.building.watcher import Watched

ROOT = Path(__file__).parents[2]
COMMAND = Path(sys.executable).with_name("swardbook")
SIGNALS = (signal.SIGKILL, signal.SIGTERM, signal.SIGINT)
ENDS = {-signal.SIGKILL, 128 + signal.SIGTERM, 128 + signal.SIGINT}


def small_sites(site: Path, kills: int, way: str) -> dict:
    run = subprocess.run([sys.executable, "-m", "tests.building.killed", site, str(kills), way], capture_output=True, text=True, cwd=ROOT, timeout=60 + kills)
    assert run.returncode == 0, run.stderr
    return json.loads(run.stdout)


@pytest.mark.parametrize("kills", [12, pytest.param(600, marks=pytest.mark.soak)])
def test_no_look_meets_a_gap_while_builds_are_killed_in_the_middle_of_the_step(tmp_path: Path, kills: int) -> None:
    found = small_sites(tmp_path / "site", kills, "exchange")
    print(f"\n{kills} killed: {found['looks']} looks, {len(found['wrong'])} gaps or mixes; {found['ends']}")
    assert found["wrong"] == [] and found["looks"] > kills
    assert found["whole"] and found["left"] == [] and found["missing_after_a_kill"] == 0
    assert set(map(int, found["ends"])) <= ENDS


@pytest.mark.parametrize("kills", [12, pytest.param(600, marks=pytest.mark.soak)])
def test_without_such_a_step_the_next_build_finds_whatever_a_kill_left(tmp_path: Path, kills: int) -> None:
    """Between two renames there is a gap, and a SIGKILL in it leaves none in place; but nothing is ever lost or left."""
    found = small_sites(tmp_path / "site", kills, "no_exchange")
    print(f"\n{kills} killed: {found['looks']} looks, {len(found['wrong'])} gaps; {found['missing_after_a_kill']} kills left the site aside; {found['ends']}")
    assert found["whole"] and found["left"] == []
    assert set(map(int, found["ends"])) <= ENDS


def book_of_edition(book: Path, number: int) -> None:
    """The same book under another name, which every page of it says at its foot."""
    practice = book / "data/practice.yml"
    practice.write_text(re.sub(r"(?m)^name: .*", f"name: Edition {number}", practice.read_text(encoding="utf-8")), encoding="utf-8")


def started(book: Path) -> subprocess.Popen[str]:
    return subprocess.Popen([COMMAND, "build", "--book", book], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)


def wait_for_the_swap(book: Path, build: subprocess.Popen[str]) -> None:
    """Until the last file of the new site is written: what is left is to move it in."""
    while build.poll() is None and not (book / ".site.building/site/book/files.json").exists():
        time.sleep(0.001)


def before_ours(said: str) -> bool:
    """Whether Ctrl-C came before the first line of ours: on a busy machine Python is half a second in starting, and tells it in its own words."""
    return "KeyboardInterrupt" in said and "generator" not in said


def killed_builds(book: Path, moments: list[tuple[int, float | None]]) -> tuple[Watched, Counter]:
    """Builds a book once, then kills a build for each signal: after so many seconds, or around the swap; then builds it again."""
    draw, ends = random.Random(len(moments)), Counter()
    with started(book) as first:
        assert first.wait(timeout=300) == 0
    with Watched(book / "site") as seen:
        for number, (kill, after_s) in enumerate(moments, start=2):
            book_of_edition(book, number)
            with started(book) as build:
                if after_s is None:
                    wait_for_the_swap(book, build)
                    time.sleep(draw.uniform(0, 0.02))
                else:
                    time.sleep(after_s)
                build.send_signal(kill)
                _, said = build.communicate(timeout=300)
                ends[build.returncode] += 1
                assert before_ours(said) or ("Traceback" not in said and len(said.splitlines()) <= 1), said
        with started(book) as last:
            assert last.wait(timeout=300) == 0
    return seen, ends


def told(name: str, seen: Watched, ends: Counter) -> None:
    print(f"\n{ends.total()} builds of {name} killed: {seen.looks} looks, {seen.editions} editions seen, {len(seen.wrong)} gaps or mixes; {dict(ends)}")


def book_copy(of: Path, tmp_path: Path) -> Path:
    book = tmp_path / "book"
    for part in ("content", "data"):
        shutil.copytree(of / part, book / part)
    shutil.copy(of / "mkdocs.yml", book)
    practice = book / "data/practice.yml"
    if "book_title:" not in practice.read_text(encoding="utf-8"):  # The name changes with each edition; what the site is called stays.
        title = re.search(r"(?m)^site_name: (.*)", (book / "mkdocs.yml").read_text(encoding="utf-8"))[1]
        practice.write_text(f"book_title: {title}\n{practice.read_text(encoding='utf-8')}", encoding="utf-8")
    book_of_edition(book, 1)
    return book


def test_a_build_that_is_killed_leaves_the_site_and_the_next_one_leaves_nothing_else(tmp_path: Path) -> None:
    book = book_copy(SMALLEST, tmp_path)
    seen, ends = killed_builds(book, [(signal.SIGKILL, None)])
    told("the smallest book", seen, ends)
    assert seen.wrong == [] and seen.looks > 100
    assert {each.name for each in book.iterdir()} == {"content", "data", "mkdocs.yml", "site"}


@pytest.mark.soak
@pytest.mark.parametrize(("name", "of", "kills", "longest_s"), [("the smallest book", SMALLEST, 300, 8), ("our own book", ROOT, 36, 40)])
def test_no_look_meets_a_gap_in_hundreds_of_killed_builds(tmp_path: Path, name: str, of: Path, kills: int, longest_s: float) -> None:
    draw = random.Random(kills)
    book = book_copy(of, tmp_path)
    seen, ends = killed_builds(book, [(SIGNALS[each % 3], None if each % 2 else draw.uniform(0.5, longest_s)) for each in range(kills)])
    told(name, seen, ends)
    assert seen.wrong == [] and seen.looks > 100 * kills
    assert {each.name for each in book.iterdir()} == {"content", "data", "mkdocs.yml", "site"}
