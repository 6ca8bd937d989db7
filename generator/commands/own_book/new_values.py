"""What a new record is filled with: its own name, and what the book has for it to refer to."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from string import Template

from generator.book.book import PartialBook
from generator.book.overlay.extending import EXTENDS
from generator.book.records.grass import Grass
from generator.book.records.place import Place
from generator.book.records.practice import Practice
from generator.files.place_record import quoted

TEMPLATES = Path(__file__).with_name("new_record")
# Where a comment that stands beside its key begins.
COMMENT_AT = 46
_COMMENTED = re.compile(r"(?P<text>.*?\S) {2,}# (?P<comment>.*)")
_IN_THE_KEY = re.compile(r"\n# identification:.*\n(?:#   .*\n)+")
_COUNTRY = re.compile(r"\b([A-Z]{2}): ")
_TOP_KEY = re.compile(r"(\w+):")
# What a reader tells one record from another by, and the check refuses twice.
OF_ITS_OWN = ("name", "title", "question", "summary", "short", "botanical_name", "names", "latitude_deg")
# What holds of one grass alone: an empty value takes it out.
OF_ONE_GRASS = ("look_alikes",)


@dataclass(frozen=True)
class NewBook:
    """A book that a record is written for. grass, place: those it opens with, which a new record takes after."""

    book: PartialBook
    practice: Practice
    grass_id: str
    grass: Grass
    place: Place

    @classmethod
    def of(cls, book: PartialBook) -> "NewBook | None":
        """None where too little of the book can be read."""
        practice = book.practice
        if practice is None or practice.home_grass not in book.grasses or practice.home_place not in book.places:
            return None
        return cls(book, practice, practice.home_grass, book.grasses[practice.home_grass], book.places[practice.home_place])


def new_text(kind: str, id: str, into: NewBook) -> str:
    """The file of a new record. kind: as an author says it, such as grass or plan."""
    text = (TEMPLATES / f"{kind}.txt").read_text(encoding="utf-8")
    if kind == "grass" and into.book.key is not None:  # A key has to reach every grass of its book.
        text = _IN_THE_KEY.sub(lambda block: block[0].replace("\n# ", "\n"), text)
    template = Template(text)
    return _aligned(template.substitute(_values(id, into)))


def words_of(id: str) -> str:
    """'sweet-smother-grass' as people say it."""
    return id.replace("-", " ")


def _values(id: str, into: NewBook) -> Mapping[str, str]:
    words, book, place = words_of(id), into.book, into.place
    title, normals = words[:1].upper() + words[1:], place.normals
    return {
        "id": id, "title": title, "name": quoted(title), "plain_name": quoted(words), "question": quoted(f"{title}?", always=True),
        "name_of_its_own": quoted(f"Write the name that science has for {words}"),
        "misspelt": quoted(words.replace(" ", "") if " " in words else f"{words}s"),
        "country": quoted(place.country, always=place.country.lower() in ("no", "on", "off", "yes", "y", "n")),
        "season_group": into.grass.season_group, "habit": into.grass.habit, "plan": into.grass.renovation, "operations": _operations(into.grass),
        "grass": into.grass_id, "tasks": _first(book.tasks, ""), **{name: _first(book.of(kind), f"ID-OF-A-{name.upper()}") for name, kind in NAMED.items()},
        "other_name": place.name, "region": quoted(place.region), "latitude": f"{_beside(place.latitude_deg, len(book.places)):.6g}",
        "longitude": f"{place.longitude_deg:.7g}",
        "climate_kind": quoted(place.climate_kind), "station": quoted(normals.station), "first_year": str(normals.first_year), "last_year": str(normals.last_year),
        "step_c": f"{normals.temperature_step_c:g}", "source": normals.source,
        "maximum": _row(normals.mean_maximum_c), "minimum": _row(normals.mean_minimum_c), "rain": _row(normals.rain_mm),
    }


NAMED = {
    "caution": "cautions", "calculator": "calculators", "step": "steps", "task": "tasks", "sheet": "aftercare", "expert": "experts", "problem": "problems",
}


def _first(ids: Iterable[str], otherwise: str) -> str:
    return next(iter(ids), otherwise)


def _row(figures: Iterable[float]) -> str:
    return f"[{', '.join(f'{figure:g}' for figure in figures)}]"


def _beside(latitude_deg: float, steps: int = 1) -> float:
    """Some hundredths of a degree nearer the equator: no two places lie on one spot."""
    return latitude_deg - 0.01 * steps if latitude_deg > 0 else latitude_deg + 0.01 * steps


def _operations(grass: Grass) -> str:
    """Levels that let the new grass follow the plan: those of the grass that it takes after."""
    comment = "  # by task: none, light, moderate or hard, and how that is done on this grass"
    if not grass.operations:
        return f" {{}}{comment}"
    rows = (f"  {task}: {{level: {each.level}, how: Write how., source: assumption}}" for task, each in grass.operations.items())
    return "\n".join([comment, *rows])


def extending_text(kind: str, id: str, shared: Path) -> str:
    """The file of a record over a shared one: what it is over, what it must say for itself under a name of its own, and all else to uncomment."""
    lines = shared.read_text(encoding="utf-8").splitlines()
    head = [line for line in lines[:1] if line.startswith("# yaml-language-server")]
    blocks = _blocks(lines[len(head):])
    own = [] if id == shared.stem else _own(kind, id, blocks)
    told = {line.partition(":")[0] for line in own}
    rest = [f"# {line}".rstrip() for key, block in blocks if key not in told for line in block]
    return "\n".join([
        *head, f"{EXTENDS}: {shared.stem}",
        "# All else is as the shared knowledge has it: what it says now stands below. Take the '#' from what you want otherwise, and change it; a figure",
        "# wants a source of its own. An empty value takes a key out. A list may be given as add, without and change.",
        *own, *rest,
    ]) + "\n"


def _blocks(lines: Iterable[str]) -> list[tuple[str, list[str]]]:
    """The lines of each key of the file, by its key; remarks before the first key under ''."""
    blocks: list[tuple[str, list[str]]] = [("", [])]
    for line in lines:
        if key := _TOP_KEY.match(line):
            blocks.append((key[1], []))
        blocks[-1][1].append(line)
    return blocks


def _own(kind: str, id: str, blocks: Iterable[tuple[str, list[str]]]) -> list[str]:
    words = words_of(id)
    title = words[:1].upper() + words[1:]
    said = {
        "name": quoted(title), "title": quoted(title), "question": quoted(f"{title}?", always=True), "summary": f"Write what {words} is.",
        "botanical_name": quoted(f"Write the name that science has for {words}"), "short": f"{{text: Write the answer to {words}., source: ours}}",
    }
    lines = []
    for key, block in blocks:
        if key == "latitude_deg":
            lines.append(f"{key}: {_beside(float(block[0].partition(':')[2].split('#')[0])):.6g}")
        elif key == "names":
            lines += [_names(words, block)] if kind == "grasses" else []
        elif key == "source":
            lines.append(f"{key}: ours")
        elif key == "tasks" and kind == "holds":
            lines.append(f"{key}: []")
        elif key in OF_ITS_OWN:
            lines.append(f"{key}: {said[key]}")
        elif key in OF_ONE_GRASS and kind == "grasses":
            lines.append(f"{key}:")
    return lines


def _names(words: str, block: Iterable[str]) -> str:
    """Its own name in the first country, and none in the others: an empty value takes a key out."""
    countries = list(dict.fromkeys(_COUNTRY.findall("\n".join(block))))
    return f"names: {{{', '.join(f'{country}: [{quoted(words)}]' if at == 0 else f'{country}: ' for at, country in enumerate(countries))}}}"


def _aligned(text: str) -> str:
    """Comments beside keys in one column, whatever was filled in before them."""
    return "".join(f"{_beside_text(line)}\n" for line in text.splitlines())


def _beside_text(line: str) -> str:
    found = _COMMENTED.fullmatch(line)
    if not found or line.startswith("# yaml") or not found["text"].strip("# "):
        return line
    return f"{found['text']:<{COMMENT_AT - 2}}  # {found['comment']}"
