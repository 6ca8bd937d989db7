"""The repository's own book, built once a run by the command its author types."""

import fcntl
import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from statistics import mean
from typing import Any

import pytest
from playwright.sync_api import Browser

from tests.machine import slowness
from tests.site.reader import Reader
from tests.site.tabs import address_of

ROOT = Path(__file__).resolve().parents[2]
# The promise for the demo book, on an ordinary desktop that does nothing else: seconds of processor time, for the clock on the wall would
# tell how busy its neighbours are. A neighbour takes memory and caches from it too, so beside other tests a build a quarter longer is told.
SLOWEST_BUILD_SECONDS = 48
BESIDE_OTHERS = 1.25


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Folder of the built site, built once however many processes the tests run in: the first builds, the others wait. The audit names one
    that is there already in SWARDBOOK_SITE."""
    if named := os.environ.get("SWARDBOOK_SITE"):
        return Path(named).resolve()
    base = tmp_path_factory.getbasetemp()
    shared = base.parent if os.environ.get("PYTEST_XDIST_WORKER") else base
    folder = shared / "built" / "site"
    folder.parent.mkdir(exist_ok=True)
    with (shared / "built.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not folder.exists():
            build(folder)
    return folder


def build(folder: Path, slowest_seconds: float = SLOWEST_BUILD_SECONDS * BESIDE_OTHERS) -> None:
    """The build is quiet, and quick enough to wait for."""
    command = Path(sys.executable).with_name("swardbook")
    slow_before, before = slowness(), os.times()
    run = subprocess.run(
        [command, "build", "--book", ROOT, "--to", folder], capture_output=True, text=True, cwd=folder.parent,
        env={**os.environ, "PYTHONIOENCODING": "utf-8"},
    )  # fmt: skip
    after = os.times()
    seconds = (after.children_user - before.children_user) + (after.children_system - before.children_system)
    assert run.returncode == 0, run.stdout + run.stderr
    assert run.stderr == "", "a build of a sound book has nothing to warn about"
    assert seconds / mean((slow_before, slowness())) < slowest_seconds


@pytest.fixture
def reader(browser: Browser, site: Path) -> Iterator[Callable[..., Reader]]:
    """Make a reader: `reader(viewport=...)`, of the site on the disk, or on a server where SWARDBOOK_SERVED says so. At the end none of them
    may have met a foreign request or an error."""
    made: list[Reader] = []
    served = "SWARDBOOK_SERVED" in os.environ

    with address_of(site, "http" if served else "file") as address:

        def make(**window: Any) -> Reader:
            made.append(Reader(browser, site, address if served else "", **window))
            return made[-1]

        yield make
        for each in made:
            each.close()
    assert not [wrong for each in made for wrong in each.wrong]
