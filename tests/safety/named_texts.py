"""Each text that tells somebody to do something, under a name, with the cautions that its reader is shown."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from tests.words.texts import markdown_texts

ROOT = Path(__file__).parents[2]
# Names that others gave, ids and formulas, where their words come from, and what people type into a search box.
NOT_TOLD = {
    "source", "misspellings", "asked_as", "names", "words", "signs", "unit", "us_unit", "id", "event_id", "formula", "result", "do_when", "not_when", "only_when",
    "binds", "fill", "task", "tasks", "cautions", "after", "calculator", "calculators", "see", "use", "gaps", "problem", "problems", "caused_by", "cured_by",
    "plans", "expert", "aftercare", "similar", "grasses", "machine", "from_where", "settles", "table", "figures", "constants", "examples", "tests", "season_group",
}  # fmt: skip


@dataclass(frozen=True)
class NamedText:
    """name: 'step core', 'answer puddles'. told: its texts, and 'gear:mower' for each machine. cautions: what stands with it."""

    name: str
    told: tuple[str, ...]
    cautions: frozenset[str]


@cache
def named_texts() -> tuple[NamedText, ...]:
    found = [*_whole("tasks", "task"), *_whole("answers", "answer"), *_whole("aftercare", "aftercare"), *_whole("holds", "hold"),
             *_whole("calculators", "calculator"), *_whole("problems", "problem"), *_steps(), *_plans(), *_questions(), *_pages()]
    return tuple(found)


def _read(folder: str) -> Iterator[tuple[str, dict[str, Any]]]:
    for path in sorted((ROOT / "data" / folder).glob("*.yml")):
        yield path.stem, yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)


def _whole(folder: str, kind: str) -> Iterator[NamedText]:
    """A record whose page shows the cautions that stand anywhere in it."""
    for id, record in _read(folder):
        yield NamedText(f"{kind} {id}", tuple(_told(record)), frozenset(_cautions(record)))


def _steps() -> Iterator[NamedText]:
    for id, step in _read("steps"):
        yield NamedText(f"step {id}", (*_told(step), *_gear(step)), frozenset(step.get("cautions", ())))


def _plans() -> Iterator[NamedText]:
    """A plan's own words, with all of its steps' cautions; and each step where the plan words it anew, with those that are left to it."""
    shared = dict(_read("steps"))
    for id, plan in _read("renovations"):
        steps = [{**shared.get(step.get("use"), {}), **step} for step in plan["steps"]]
        own = {key: value for key, value in plan.items() if key != "steps"}
        yield NamedText(f"plan {id}", tuple(_told(own)), frozenset(caution for step in steps for caution in step.get("cautions", ())))
        for step, written in zip(steps, plan["steps"], strict=True):
            told = (*_told(written), *_gear(written))
            # Where a plan lists cautions anew, those of the shared step are gone, and its words are read once more.
            if "use" in written and "cautions" in written:
                told = (*_told(step), *_gear(step))
            yield NamedText(f"plan {id}: {step.get('id', step.get('use'))}", told, frozenset(step.get("cautions", ())))


def _questions() -> Iterator[NamedText]:
    sheet = yaml.load((ROOT / "data" / "inspection.yml").read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
    for question in sheet["questions"]:
        yield NamedText(f"question {question['id']}", tuple(_told(question)), frozenset(question.get("cautions", ())))


def _pages() -> Iterator[NamedText]:
    for path in sorted((ROOT / "content").glob("**/*.md")):
        yield NamedText(f"page {path.stem}", tuple(text.text for text in markdown_texts(str(path.relative_to(ROOT)))), frozenset())


def _gear(step: dict[str, Any]) -> Iterator[str]:
    for gear in step.get("gear", ()):
        yield from [f"gear:{gear['machine']}"] if "machine" in gear else []
        yield from ["hire"] if gear.get("from_where") == "hire" else []


def _told(node: Any) -> Iterator[str]:
    if isinstance(node, dict):
        for key, value in node.items():
            if key not in NOT_TOLD:
                yield from _told(value)
    elif isinstance(node, list):
        for value in node:
            yield from _told(value)
    elif isinstance(node, str) and " " in node:
        yield " ".join(node.split())


def _cautions(node: Any) -> Iterator[str]:
    if isinstance(node, dict):
        for key, value in node.items():
            # 'see' leads to a page that has it; it does not show it.
            yield from value if key == "cautions" else _cautions(value) if key != "see" else ()
    elif isinstance(node, list):
        for value in node:
            yield from _cautions(value)
