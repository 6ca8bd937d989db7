"""Words about what is not in a book: the names of grasses left out, figures of records left out, and texts without the sentences that hold them."""

import re
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from generator.book.loading.marked_yaml import Node, ValuePath
from generator.book.records.grass import Grass

_SENTENCE_END = re.compile(r"(?<=[.!?])\s+")
# A sentence that begins so speaks of the one before it, and goes with it.
_LEANS_BACK = re.compile(r"(it|its|they|their|them|this|that|these|those|both|but|so|then|there|neither|either|the other|the others|here)\b", re.IGNORECASE)
_PLACEHOLDER = re.compile(r"\{(grass|task|problem|plan|step|hold|calculator|practice)\.([^{}.]+)")
KINDS_QUOTED = {
    "grass": "grasses", "task": "tasks", "problem": "problems", "plan": "renovations", "step": "steps", "hold": "holds", "calculator": "calculators",
    "practice": "practice",
}  # fmt: skip
_PARTS_OF_A_NAME = re.compile(r",|\(|\)| or ")
_WORD_END = r"(?:e?s|'s|’s)?(?![\w-])"
# The name that botany gives a hybrid holds the names of its parents.
NO_TEXT = {"botanical_name"}
FIGURES = "figures"  # Their names are shown.
_AN_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


@dataclass(frozen=True)
class Unspoken:
    """What no text of the book may speak of. names: of grasses left out; also_named: names of those that are there, which may hold such a name
    in them; absent: ids that are not there, by kind."""

    names: re.Pattern[str] | None
    also_named: re.Pattern[str] | None
    absent: Mapping[str, Collection[str]]

    def in_text(self, text: str) -> bool:
        """Whether a text speaks of it."""
        if any(id in self.absent.get(KINDS_QUOTED[kind], ()) for kind, id in _PLACEHOLDER.findall(text)):
            return True
        if self.names is None or not self.names.search(text):
            return False
        rest = self.also_named.sub("#", text) if self.also_named else text
        return self.names.search(rest) is not None

    def without(self, text: str) -> str:
        """The text without its sentences that speak of it, and without those after them that only make sense with them; '' where none is left."""
        kept, leans = [], False
        for sentence in _SENTENCE_END.split(text):
            leans = self.in_text(sentence) or (leans and _LEANS_BACK.match(sentence) is not None)
            if not leans:
                kept.append(sentence)
        return " ".join(kept)


def unsaid(left_out: Iterable[Grass], there: Iterable[Grass], strangers: Iterable[str], absent: Mapping[str, Collection[str]]) -> Unspoken:
    """strangers: what plants are called that are no grasses of any book: English couch is not couch."""
    kept = {name.casefold() for grass in there for name in _names(grass)}
    kept |= {part.strip().casefold() for name in strangers for part in _PARTS_OF_A_NAME.split(name) if part.strip()}
    gone = {name.casefold() for grass in left_out for name in _names(grass)} - kept
    return Unspoken(_pattern(gone), _pattern(kept), absent)


def _names(grass: Grass) -> set[str]:
    """All that people call a grass, slips of the pen among them: there the short words stand that no country's name is."""
    return {grass.name, *(name for names in grass.names.values() for name in names), *grass.misspellings}


def _pattern(names: Collection[str]) -> re.Pattern[str] | None:
    if not names:
        return None
    longest_first = sorted((re.escape(name) for name in names), key=lambda name: (-len(name), name))
    return re.compile(rf"(?<![\w-])(?:{'|'.join(longest_first)}){_WORD_END}", re.IGNORECASE)


def spoken(tree: Node, unsaid: Unspoken, path: ValuePath = ()) -> Iterable[tuple[ValuePath, Node]]:
    """Every text of a record that speaks of it, with its path, and every figure that is called after it. An id is no text, but where it stands in a
    list of words."""
    if tree.kind == "scalar":
        if isinstance(tree.value, str) and (not _AN_ID.fullmatch(tree.value) or (path and isinstance(path[-1], int))) and unsaid.in_text(tree.value):
            yield path, tree
        return
    for key, child in tree.children.items():
        if path[-1:] == (FIGURES,) and unsaid.in_text(str(key).replace("-", " ")):
            yield (*path, key), child
        elif key not in NO_TEXT:
            yield from spoken(child, unsaid, (*path, key))
