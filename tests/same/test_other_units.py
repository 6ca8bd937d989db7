"""A book whose figures are written in other units of their kind says the same: whichever unit an author takes, it is read."""

import shutil
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from random import Random
from typing import Any

import pytest
import yaml

from generator.book.book import Book
from generator.book.fields.sourced import Claim
from generator.book.fields.walk import parts
from generator.book.records.calculator import Constant
from generator.checks import check_book
from generator.files.job_values import job_values
from generator.files.season_json import as_json
from generator.jobs.job import Request
from generator.jobs.plans_for_grass import AskedJob, job_of, plans_for
from generator.season.season_cache import SeasonCache
from generator.units import Unit, from_si, to_si, unit
from generator.units.known_units import like
from tests.book_folders import WHOLE
from tests.yaml_files import read_yaml

ROOT = Path(__file__).parents[2]
SHARES = {"1", "%", "ppm"}
NUMBERS = ("low", "use", "high", "value")


def others(given: Unit) -> list[Unit]:
    """Other units for the same kind of quantity."""
    found = [each for each in like(given.dimension) if each.kind == given.kind or {each.spelling, given.spelling} <= SHARES]
    return [each for each in found if each.spelling != given.spelling]


def written_in_other_units(root: Path, to: Path, draw: Random) -> tuple[Path, int]:
    """A copy of a book with each figure and constant in a unit drawn by lot, and how many were rewritten."""
    for part in ("data", "content"):
        shutil.copytree(root / part, to / part)
    shutil.copy(root / "mkdocs.yml", to)
    rewritten, book = 0, check_book(root).book
    for kind, id, record in book.records():
        figures = [(path, part) for path, part in parts(record) if isinstance(part, Claim | Constant) and others(unit(part.unit))]
        if not figures:
            continue
        file = to / book.where(kind, id).path
        written = read_yaml(file)
        for path, figure in figures:
            at = written
            try:
                for key in path:
                    at = at[key]
            except KeyError:  # A constant that the calculator takes from a task's figures, where it is rewritten.
                continue
            other = draw.choice(others(unit(figure.unit)))
            at |= {key: from_si(to_si(getattr(figure, key), unit(figure.unit)), other) for key in NUMBERS if key in at} | {"unit": other.spelling}
        file.write_text(yaml.dump(written, Dumper=yaml.CSafeDumper, allow_unicode=True, sort_keys=False, width=4000), encoding="utf-8")
        rewritten += len(figures)
    return to, rewritten


def told(book: Book, places: list[str]) -> dict[tuple[str, ...], Any]:
    """Each grass's year at each place, and each plan's job there."""
    seasons, found = SeasonCache(book), {}
    for place in places:
        for id, grass in book.grasses.items():
            found["year", place, id] = as_json(seasons.season(id, place))
            for plan in plans_for(book, grass):
                asked = AskedJob(plan, id, place, Request(on=date(2026, 10, 12), area_m2=240))
                found["job", place, id, plan] = job_values(job_of(book, seasons, asked))
    return found


def differences(one: Any, other: Any, path: tuple = ()) -> Iterator[tuple]:
    if isinstance(one, dict) and isinstance(other, dict):
        for key in {**one, **other}:
            yield from differences(one.get(key), other.get(key), (*path, key))
    elif isinstance(one, list | tuple) and isinstance(other, list | tuple) and len(one) == len(other):
        for position, (this, that) in enumerate(zip(one, other, strict=True)):
            yield from differences(this, that, (*path, position))
    elif one != (pytest.approx(other, rel=1e-9) if isinstance(other, float) else other):
        yield path, one, other


def test_a_book_in_other_units_says_the_same(tmp_path: Path) -> None:
    same_in_other_units(WHOLE, tmp_path, range(6))


@pytest.mark.soak
def test_our_own_book_in_other_units_says_the_same(tmp_path: Path) -> None:
    same_in_other_units(ROOT, tmp_path, range(20), places=["sydney", "perth", "oxford", "atlanta"])


def same_in_other_units(root: Path, tmp_path: Path, seeds: range, places: list[str] | None = None) -> None:
    sound = check_book(root).book
    usual = told(sound, places or list(sound.places))
    for seed in seeds:
        folder, rewritten = written_in_other_units(root, tmp_path / str(seed), Random(seed))
        book, findings = check_book(folder)
        assert not findings, (seed, [str(each) for each in findings])
        assert rewritten > 50
        assert list(differences(usual, told(book, places or list(sound.places))))[:5] == [], seed
