"""Where a book keeps what was measured at its places this year."""

from pathlib import Path

FOLDER = "observed"


def observed_file(root: Path, place: str) -> Path:
    """The daily record of a place in the book of that folder, whether it is there or not."""
    return root / FOLDER / f"{place}.csv"
