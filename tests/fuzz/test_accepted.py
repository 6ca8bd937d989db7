"""If `check` says that a book is in order, a build of it stands: small changes drawn by lot, each accepted one built through to its pages."""

import shutil
from pathlib import Path

import pytest

from tests.book_folders import WHOLE
from tests.fuzz.through import Through, small_book

SHIPPED = Path(__file__).parents[2]


def built_through(root: Path, first_seed: int, accepted: int, **limits: int) -> Through:
    through, seed = Through(root, **limits), first_seed
    while through.counts.accepted < accepted:
        through.try_one(seed)
        seed += 1
    print(f"\n{through.told()}")
    assert not through.counts.crashes, through.told()
    assert through.counts.refused
    return through


def test_a_changed_book_that_is_accepted_can_be_built(tmp_path: Path) -> None:
    built_through(Path(shutil.copytree(WHOLE, tmp_path / "book")), 20_261_129, accepted=4)


@pytest.mark.soak
def test_three_thousand_changed_books_that_are_accepted_can_be_built(tmp_path: Path) -> None:
    built_through(small_book(tmp_path / "book"), 1, accepted=3000)


@pytest.mark.soak
def test_our_own_book_changed_can_be_built(tmp_path: Path) -> None:
    for part in ("data", "content"):
        shutil.copytree(SHIPPED / part, tmp_path / "book" / part)
    shutil.copy(SHIPPED / "mkdocs.yml", tmp_path / "book")
    built_through(tmp_path / "book", 1, accepted=20, longest_seconds=400)
