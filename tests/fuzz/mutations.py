"""Small changes to a sound book, drawn by lot: other values, keys and items taken out, doubled or put elsewhere."""

import json
from collections.abc import Iterator
from pathlib import Path
from random import Random
from typing import Any

from generator.book.fields.walk import measured
from generator.book.loading.folders import SINGLES
from generator.book.loading.load import checked
from generator.book.loading.marked_yaml import read_tree
from generator.book.records import KINDS
from generator.book.records.season_rules import SeasonRules, SiteOffsets

MEASURED = {name: measured(each, name) for each in (SeasonRules, SiteOffsets) for name in each.model_fields}

Path_ = tuple[str | int, ...]

NUMBERS: tuple[float, ...] = (
    0, 1, -1, 2, 3, 7, 12, 24, 52, 99, 100, 365, 366, 1000, 9999, -0.0, 0.5, -0.5, 1e-300, 1e-12, 1e-9, 1e-6, 1e-3, 1e6, 1e9, 1e12, 1e15,
    1e30, 1e300, 1e308, -1e308, -1e-300, 10**17, -(10**17), 1.7976931348623157e308, 5e-324,
)
TEXTS = (
    "", " ", "a", "y", "Z", "0", "-", ".", "?", "no", "a\nb", "a\tb", "a\r\nb", "Grün", "日本語", "e\u0301", "a\u202eb", "\u200b",
    "a\u00adb", "\u2028", "\x00", "\x07", "😀", "<b>bold</b>", "a & b", "\"king\"", "it's", "{task.water.one-watering-on-sand}", "{", "}", "{}",
    "{name}", "%s", "=1+1", "a" * 119, "word " * 230, "x" * 1199, "a/b", "../../x", "#", "C:\\x", "$x", "`a`", "[a](b)", "*a*", "|", "::",
)
DATES = ("2026-13-01", "02-29", "02-30", "12-31", "01-01", "00-00", "1900-01-01", "9999-12-31", "09-31")
FORMULAS = (
    "1", "0", "1 / 0", "-1", "1e308", "1e308 * 10", "2**2**2**2", "x**" * 30 + "x", "sqrt(0 - 1)", "log(0)", "pi", "area", "true", "not 1", "area / 0",
    "min(1, 2)", "1 < 2", "2 < 1", "growth > 0", "growth >= 1 and growth < 0", "(" * 59 + "1" + ")" * 59, "0 ** 0", "exp(999)",
)
FILLS = ("5 mm", "0 mm", "-5 mm", "1e308 mm", "1e-300 mm", "5", "grass.seed_rate", "practice.feed.nitrogen_percent", "grass.mowing_height or 5 mm")


class Files:
    """The YAML files of a book as plain data, to be changed and written again."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.sound = {
            str(file.relative_to(root)): file.read_text(encoding="utf-8")
            for file in sorted((root / "data").rglob("*.yml"))
        }
        self.data = {name: read_tree(text, name)[0].plain() for name, text in self.sound.items()}
        self.ids = sorted({Path(name).stem for name in self.data} | {key for data in self.data.values() for key in keys(data)})
        scalars = [(place[-1], value) for data in self.data.values() for place, value in places(data) if not isinstance(value, dict | list | tuple)]
        self.texts = sorted({value for _, value in scalars if isinstance(value, str)})
        self.formulas = sorted({value for key, value in scalars if key in ("formula", "when", "do_when", "not_when")})

    def mutated(self, draw: Random) -> dict[str, Any]:
        """File name to what it holds then: one to three changes, or many numbers of a file at their ends."""
        return self._stretched(draw) if draw.random() < 0.3 else self._changed(draw)

    def _stretched(self, draw: Random) -> dict[str, Any]:
        """A file with many of its numbers far from what they were, each as far as its record allows."""
        name = draw.choice([each for each in self.data if numbers(self.data[each])])
        data = json.loads(json.dumps(self.data[name]))
        share = draw.choice((0.05, 0.2, 0.6))
        for place, value in numbers(data):
            if draw.random() > share:
                continue
            above = at(data, place[:-1])
            for other in draw.sample(stretched(place, value), 3):
                above[place[-1]] = other
                if self._loads(name, data):
                    break
                above[place[-1]] = value
        return {name: data}

    def _loads(self, name: str, data: Any) -> bool:
        file = Path(name)
        hint = SINGLES.get(file.name) or KINDS[file.parent.name]
        return checked(read_tree(written(data), name)[0], hint)[0] is not None

    def _changed(self, draw: Random) -> dict[str, Any]:
        changed: dict[str, Any] = {}
        name = draw.choice(list(self.data))
        for _ in range(draw.choice((1, 1, 1, 2, 3))):
            data = json.loads(json.dumps(changed.get(name, self.data[name])))
            self._change(data, name, draw)
            changed[name] = data
            if draw.random() < 0.3:
                name = draw.choice(list(self.data))
        return changed

    def _change(self, data: Any, name: str, draw: Random) -> None:
        if not data:
            return  # An earlier change emptied it.
        place, value = draw.choice((draw.random() < 0.5 and numbers(data)) or list(places(data)))
        above = at(data, place[:-1])
        if isinstance(value, dict | list):
            self._change_group(above, place[-1], value, draw)
        elif draw.random() < 0.12:
            taken_out(above, place[-1])
        else:
            above[place[-1]] = self._other(place, value, draw)
        if draw.random() < 0.06 and isinstance(data, dict):
            self._borrow(data, name, draw)

    def _change_group(self, above: Any, step: Any, value: Any, draw: Random) -> None:
        how = draw.randrange(5)
        if how == 0 or not value:
            taken_out(above, step)
        elif isinstance(value, list):
            if how == 1:
                value.append(draw.choice(value))
            elif how == 2:
                value.pop(draw.randrange(len(value)))
            elif how == 3:
                value.reverse()
            else:
                value.clear()
        elif how in (1, 2):
            value.pop(draw.choice(list(value)))
        elif how == 3:
            turned = dict(reversed(value.items()))
            value.clear()
            value.update(turned)
        else:
            key = draw.choice(list(value))
            value[draw.choice([*self.ids, *TEXTS])] = value.pop(key)

    def _borrow(self, data: dict, name: str, draw: Random) -> None:
        """A field that another file of the same kind has."""
        folder = name.rpartition("/")[0]
        other = draw.choice([each for each in self.data if each.rpartition("/")[0] == folder])
        if isinstance(self.data[other], dict) and self.data[other]:
            key = draw.choice(list(self.data[other]))
            data[key] = json.loads(json.dumps(self.data[other][key]))

    def _other(self, place: Path_, value: Any, draw: Random) -> Any:
        if isinstance(value, bool):
            return not value
        if isinstance(value, int | float):
            if draw.random() < 0.5:
                return draw.choice(NUMBERS)
            return draw.choice((-value, 0, -1, 0.001, 1000, 90, -90, 1e5, value * 2, value / 2, value * 10, value / 10, value + 1, value - 1, value * 1000, value / 1000, round(value, 0)))
        key = place[-1] if isinstance(place[-1], str) else place[-2] if len(place) > 1 else ""
        if key in ("formula", "when", "do_when", "not_when"):
            return draw.choice((*FORMULAS, *self.formulas))
        pool = draw.choice((TEXTS, TEXTS, self.texts, self.ids, DATES if "-" in str(value) else TEXTS, FILLS))
        if draw.random() < 0.1:
            return draw.choice(NUMBERS)
        return draw.choice(pool)


def numbers(data: Any) -> list[tuple[Path_, float]]:
    """Every number below `data`, with its path."""
    return [(place, value) for place, value in places(data) if isinstance(value, int | float) and not isinstance(value, bool)]


def stretched(place: Path_, value: float) -> list[float]:
    """What a number may be stretched to: the ends that the season engine's own figures have, or far up and down."""
    known = next((MEASURED[step] for step in place if step in MEASURED), None)
    ends = [known.lowest, known.highest] if known else [0, 1, -value]
    return [*ends, value / 1000, value * 1000, value / 7, value * 7, int(value * 3), 0]


def places(data: Any, place: Path_ = ()) -> Iterator[tuple[Path_, Any]]:
    """Every value below `data`, with its path."""
    inside = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list | tuple) else ()
    for step, value in inside:
        yield (*place, step), value
        yield from places(value, (*place, step))


def keys(data: Any) -> Iterator[str]:
    return (place[-1] for place, _ in places(data) if isinstance(place[-1], str))


def at(data: Any, place: Path_) -> Any:
    for step in place:
        data = data[step]
    return data


def taken_out(above: Any, step: str | int) -> None:
    del above[step]


def written(data: Any) -> str:
    """As YAML: JSON is a part of it, line breaks and signs as escapes in double quotes."""
    return json.dumps(data, ensure_ascii=False, indent=1).replace("\u2028", "\\u2028").replace("\u200b", "\\u200b").replace(
        "\u202e", "\\u202e").replace("\u00ad", "\\u00ad") + "\n"
