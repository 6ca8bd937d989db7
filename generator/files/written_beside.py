"""Files are written beside their place and moved in: whoever looks sees the old one or the whole new one."""

import os
import re
import stat
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import BinaryIO

from generator.files.locked import create_locked, hidden_beside

# Where a shell has led a program's output: written on from where it stands, never replaced.
_LED_ELSEWHERE = re.compile(r"/dev/(stdin|stdout|stderr|fd/\d+)|/proc/(self|\d+)/fd/\d+")


def write_beside(path: Path, content: bytes) -> None:
    """Put content into a file, as `beside` does."""
    with beside(path) as file:
        file.write(content)


@contextmanager
def beside(path: Path) -> Iterator[BinaryIO]:
    """A file to write that takes the place of `path` in one step when it is whole; on any exception the old one stays.

    A link is followed to its file, and a file that is replaced keeps its permissions. A device or a pipe is written straight.
    Raises Busy while another command writes the same file; OSError as `open` does.
    """
    if _LED_ELSEWHERE.fullmatch(str(path)) or (path.exists() and not path.is_file()):
        with open(os.open(path, os.O_WRONLY | os.O_APPEND), "wb") as file:
            yield file
        return
    place = Path(os.path.realpath(path))
    earlier = place.stat() if os.path.lexists(place) else None  # A link to itself ends here.
    aside = hidden_beside(place, "writing")
    descriptor = create_locked(aside)
    try:
        with open(descriptor, "wb", closefd=False) as file:
            yield file
        if earlier is not None:
            _as_before(descriptor, earlier)
        os.fsync(descriptor)
        os.replace(aside, place)
    except BaseException:
        with suppress(FileNotFoundError):
            aside.unlink()
        raise
    finally:
        os.close(descriptor)


def _as_before(descriptor: int, earlier: os.stat_result) -> None:
    if hasattr(os, "fchown"):
        with suppress(PermissionError):
            os.fchown(descriptor, earlier.st_uid, earlier.st_gid)
        os.fchmod(descriptor, stat.S_IMODE(earlier.st_mode))
