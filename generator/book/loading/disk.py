"""What lies where a file or a folder of the book belongs: read only what is one, and nothing from outside."""

import os
import stat
from collections.abc import Iterator
from pathlib import Path

from generator.findings import Finding, Where, shown

_KINDS = (
    (stat.S_ISFIFO, "a pipe"), (stat.S_ISSOCK, "a socket"), (stat.S_ISCHR, "a device"), (stat.S_ISBLK, "a device"),
)  # fmt: skip
TAKE_AWAY = "take it away"


def unfit(entry: Path, within: Path) -> tuple[str, str] | None:
    """Why something must not be read, and what would be right; None for a file or folder. Nothing is opened.

    within: the folder that a link may not lead out of.
    """
    try:
        kind = entry.stat().st_mode
    except FileNotFoundError:
        return "is a link to nothing", TAKE_AWAY
    except (OSError, RuntimeError, ValueError) as error:
        if entry.is_symlink():
            return "is a link that leads nowhere", TAKE_AWAY
        return f"cannot be read ({getattr(error, 'strerror', None) or 'its name'})", "check its permissions"
    if entry.is_symlink():
        if not entry.resolve().is_relative_to(within.resolve()):
            return "is a link that leads out of the book", "put the file itself here, or take the link away"
        if stat.S_ISDIR(kind):
            return "is a link to a folder", "put the folder itself here, or take the link away"
    for is_one, name in _KINDS:
        if is_one(kind):
            return f"is {name} and no file", TAKE_AWAY
    mode = os.R_OK | os.X_OK if stat.S_ISDIR(kind) else os.R_OK
    if not os.access(entry, mode, effective_ids=os.access in os.supports_effective_ids):
        return "cannot be read", "check its permissions"
    return None


def finding_of(entry: Path, within: Path, path: str) -> Finding | None:
    """The one line about something that must not be read. path: as findings name it."""
    fault = unfit(entry, within)
    return None if fault is None else Finding(Where(path), f"'{shown(entry.name)}' {fault[0]}", fault[1])


def entries(folder: Path) -> list[Path]:
    """What lies in a folder by name, without the hidden files that systems and editors leave. The folder can be read."""
    return [entry for entry in sorted(folder.iterdir()) if not entry.name.startswith(".")]


def walked(folder: Path, path: str, within: Path) -> Iterator[tuple[Path, str, Finding | None]]:
    """Every file below a folder, with its path as findings name it and what is wrong with it; a folder only where it is wrong."""
    for entry in sorted(folder.iterdir()):
        here = f"{path}/{shown(entry.name)}"
        hidden = entry.name.startswith(".")
        if hidden and not entry.is_dir():
            continue  # An editor's own, which no build takes either.
        wrong = finding_of(entry, within, here)
        if wrong is None and entry.is_dir():
            yield from walked(entry, here, within)
        elif wrong is not None or not hidden:
            yield entry, here, wrong
