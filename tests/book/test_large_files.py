"""Whatever stands in a file of the largest size, checking the book takes seconds, and says the first hundred problems and how many more."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.checks import check_book
from generator.findings import MOST_TOLD
from tests.book_folders import WHOLE
from tests.fuzz.through import in_time
from tests.slices import every

LONGEST_SECONDS = 15  # A few seconds where nothing else runs.
GRASS, SUMS, TASK, PLAN = "data/grasses/plaingrass.yml", "data/calculators/sweeping.yml", "data/tasks/sweep.yml", "data/renovations/plain-renovation.yml"


def more(count: int, of: str) -> str:
    return "".join(of.replace("#", str(number)) for number in range(count))


def after(head: str, count: int, of: str) -> Callable[[str], str]:
    return lambda text: text.replace(head, head + more(count, of), 1)


CASES: dict[str, tuple[str, Callable[[str], str]]] = {
    "unknown keys, 80,000": (GRASS, lambda text: text + more(80_000, "key-#: 1\n")),
    "unknown keys": (GRASS, lambda text: text + more(9_000, "summarx#: 1\n")),
    "keys twice": (GRASS, lambda text: text + "name: x\n" * 9_000),
    "wrong items": (GRASS, lambda text: text.replace("[plaingrass", f"[{'1,' * 18_000}plaingrass")),
    "unknown ids": (TASK, lambda text: text.replace("cautions: [", f"cautions: [{more(18_000, 'sore-bac#,')}")),
    "unknown sources": (GRASS, lambda text: text.replace("source: almanac", f"source: [{more(18_000, 'alman#,')}]", 1)),
    "many sources": ("data/sources.yml", lambda text: text + more(1_900, "s-#: {title: 'x #', organisation: y, no_address: z, read: whole}\n")),
    "wrong sources": ("data/sources.yml", lambda text: text + more(4_000, "s-#: {titel: x}\n")),
    "inputs": (SUMS, after("inputs:\n", 2_000, "  a#: {question: x, unit: mmx#, default: 1}\n")),
    "results": (SUMS, after("results:\n", 2_000, "  r#: {label: x, unit: h, formula: areax# / speed}\n")),
    "steps": (PLAN, after("steps:\n", 1_200, "  - {id: s#, title: x, say: y, day: 0, after: [t#], source: almanac}\n")),
    "units": (TASK, after("figures:\n", 2_000, "  a-#: {use: 1, unit: mmx#, source: almanac}\n")),
    "words": ("data/glossary.yml", lambda text: text + more(2_000, "  word-#: {name: word #, means: 'It is {task.sweep.sweeps#}.', source: almanac}\n")),
    "brackets": (GRASS, lambda text: text + "x: " + "[" * 400_000),
    "a long text": (GRASS, lambda text: text.replace("An invented grass.", "word " * 190_000)),
    "a long key": (GRASS, lambda text: text + f'"{"x" * 900_000}": 1\n'),
    "escapes": (GRASS, lambda text: text.replace("An invented grass.", f'"{chr(92)}x41'.ljust(6) + f"{chr(92)}x41" * 220_000 + f'{chr(92)}u202e"')),
    "a long number": (GRASS, lambda text: text.replace("use: 25", f"use: {'9' * 900_000}")),
    "a long formula": (SUMS, lambda text: text.replace("area / speed + pause", "(" * 400_000)),
    "comments": (GRASS, lambda text: "#\n" * 400_000 + text),
}  # fmt: skip
SOUND = {"many sources", "comments"}


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return Path(shutil.copytree(WHOLE, tmp_path_factory.mktemp("large") / "book"))


@pytest.mark.parametrize("case", every(2, CASES))
def test_a_large_file_is_checked_in_seconds(book: Path, case: str) -> None:
    name, change = CASES[case]
    file = book / name
    sound = file.read_text(encoding="utf-8")
    changed = change(sound)
    assert changed != sound
    file.write_text(changed, encoding="utf-8")
    try:
        with in_time(LONGEST_SECONDS):
            findings = check_book(book).findings
    finally:
        file.write_text(sound, encoding="utf-8")
    assert bool(findings) != (case in SOUND)
    # From reading the file, from its record, from its references, and from each check that reads it.
    assert len(findings) <= 4 * (MOST_TOLD + 1)


def test_what_is_not_told_is_counted(book: Path) -> None:
    file = book / GRASS
    sound = file.read_text(encoding="utf-8")
    file.write_text(sound + more(250, "key-#: 1\n"), encoding="utf-8")
    try:
        told = [str(finding) for finding in check_book(book).findings]
    finally:
        file.write_text(sound, encoding="utf-8")
    assert len(told) == 101
    assert told[-1].endswith("150 more like those above, from here on; fix the first 100; the next check shows the rest")
