"""Builds of one book under different circumstances, and the bytes they come to."""

import hashlib
import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
COMMAND = Path(sys.executable).with_name("swardbook")
# 29 November 2025, 00:00 in London and already the 29th at noon in New Zealand.
EPOCH = "1764374400"


def built(book: Path, to: Path, command: Path = COMMAND, cwd: Path | None = None, umask: int = -1, **settings: str) -> dict[str, str]:
    """Every file of the book's site with the digest of its bytes. settings: of the environment, beside PATH and HOME."""
    environment = {"PATH": os.environ["PATH"], "HOME": os.environ.get("HOME", "/"), "SOURCE_DATE_EPOCH": EPOCH, **settings}
    run = subprocess.run(
        [command, "build", "--book", book, "--to", to], capture_output=True, text=True, encoding="utf-8", env=environment, cwd=cwd, umask=umask,
    )  # fmt: skip
    assert run.returncode == 0, run.stdout + run.stderr
    return {
        file.relative_to(to).as_posix(): hashlib.sha256(file.read_bytes()).hexdigest() for file in sorted(to.rglob("*")) if file.is_file()
    }


def differing(one: dict[str, str], other: dict[str, str]) -> list[str]:
    """Paths that only one of two sites has, or that differ."""
    return sorted(path for path in one.keys() | other.keys() if one.get(path) != other.get(path))
