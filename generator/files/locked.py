"""A file that one living process holds: how a command that still runs is told from one that was killed."""

import hashlib
import os
import stat
import sys
from contextlib import suppress
from pathlib import Path

LONGEST_NAME_BYTES = 255  # What most file systems take.
TRIES = 100  # Each is lost only to another process that begins or ends in the same moment.


class Busy(Exception):
    """A living process holds the file."""


def hidden_beside(path: Path, ending: str) -> Path:
    """The hidden name beside a path for what is in the making: 'site' and 'building' make '.site.building'."""
    name = f".{path.name}.{ending}"
    if len(os.fsencode(name)) > LONGEST_NAME_BYTES:
        name = f".{_digest(path.name)}.{ending}"
    return path.with_name(name)


def create_locked(path: Path) -> int:
    """A new, empty file, open for writing and locked for as long as it is open. Returns its descriptor.

    What a dead process left under that name is taken away first. Raises Busy where a living one holds it; OSError as `open` does.
    """
    for _ in range(TRIES):
        with suppress(FileExistsError):
            descriptor = os.open(path, os.O_RDWR | os.O_CREAT | os.O_EXCL, 0o666)
            if _lock(descriptor) and _is_at(path, descriptor):
                return descriptor
            os.close(descriptor)
            continue
        with suppress(FileNotFoundError):
            _take_away(path)
    raise Busy(path)


def _take_away(path: Path) -> None:
    if not stat.S_ISREG(path.lstat().st_mode):  # Never follow a link that lies where the file should be.
        path.unlink()
        return
    descriptor = os.open(path, os.O_RDWR)
    try:
        if not _lock(descriptor):
            raise Busy(path)
        if _is_at(path, descriptor):
            path.unlink()
    finally:
        os.close(descriptor)


def _is_at(path: Path, descriptor: int) -> bool:
    """Whether the open file is still the one of that name: another process may have moved or removed it before it was locked."""
    try:
        return os.path.samestat(path.lstat(), os.fstat(descriptor))
    except FileNotFoundError:
        return False


def _digest(name: str) -> str:
    return hashlib.sha256(os.fsencode(name)).hexdigest()[:16]


def _lock(descriptor: int) -> bool:
    """Lock an open file until it is closed; False where another process has it. Where files cannot be locked, all is taken for dead."""
    try:
        import fcntl
    except ImportError:  # Windows
        return _lock_on_windows(descriptor)
    try:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    except OSError:  # some network folders
        return True
    return True


def _lock_on_windows(descriptor: int) -> bool:
    if sys.platform == "win32":
        import msvcrt

        try:
            msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
    return True
