"""Turns at the machine: tests that measure time wait until no other runs, and none starts beside them.

Two locks, as at a door with a room behind: whoever wants to be alone keeps the door shut and waits for the room to empty.
"""

import fcntl
import os
import tempfile
from collections.abc import Iterator
from contextlib import AbstractContextManager, contextmanager, nullcontext
from pathlib import Path
from typing import IO


def turn(*, alone: bool) -> AbstractContextManager[None]:
    """One test's turn. Where tests run in one process, each has the machine to itself anyway."""
    run = os.environ.get("PYTEST_XDIST_TESTRUNUID")
    return _turn(Path(tempfile.gettempdir()) / f"swardbook-{run}", alone) if run else nullcontext()


@contextmanager
def _turn(locks: Path, alone: bool) -> Iterator[None]:
    how = fcntl.LOCK_EX if alone else fcntl.LOCK_SH
    with _file(locks, "door") as door, _file(locks, "room") as room:
        fcntl.flock(door, how)
        fcntl.flock(room, how)
        if not alone:
            fcntl.flock(door, fcntl.LOCK_UN)
        yield


def _file(locks: Path, name: str) -> IO[str]:
    return open(f"{locks}.{name}", "w")
