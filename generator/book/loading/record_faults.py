"""Why a record cannot be read, in plain sentences: one finding for each mistake pydantic meets."""

import re
from collections import defaultdict
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Annotated, Any, get_args, get_origin

from pydantic_core import ErrorDetails

from generator.book.fields.annotations import inside, record_of
from generator.book.fields.plausible import PLAUSIBLE, amount
from generator.book.fields.sourced import BeyondSense, Measured, RecordProblem
from generator.book.fields.texts import IDENTIFIER, PATTERNS
from generator.book.fields.walk import measured
from generator.book.loading.marked_yaml import Node, ValuePath
from generator.book.renamed import KEYS, WORDS
from generator.findings import MOST_TOLD, Finding, Where, not_told, shown, suggestion

_WANTED = {
    "string_type": "text", "float_type": "a number", "int_type": "a whole number",
    "bool_type": "true or false", "tuple_type": "a list", "dict_type": "a map of keys",
    "model_type": "a map of keys",
}  # fmt: skip
_NO, _YES = ("no", "off", "n", "false"), ("yes", "on", "y", "true")


@dataclass
class _Spot:
    """Where in the tree an error of pydantic's belongs."""

    error: ErrorDetails
    node: Node
    name: str  # Of the key or the item, for the sentence.
    path: ValuePath
    hint: Any
    parent: Node | None
    above: Any = None  # The hint of the parent.
    of_key: bool = False
    in_choice: bool = False

    @property
    def wanted(self) -> str | None:
        return _WANTED.get(self.error["type"])


def record_findings(errors: list[ErrorDetails], root: Node, hint: Any) -> list[Finding]:
    """One finding for each mistake among pydantic's errors, at most MOST_TOLD; nothing for values already refused."""
    choices: dict[ValuePath, list[_Spot]] = defaultdict(list)
    findings = []
    spots = [spot for error in errors if (spot := _spot(error, root, hint)) is not None]
    if len(spots) > MOST_TOLD:
        findings.append(not_told(_place(spots[MOST_TOLD]), len(spots) - MOST_TOLD))
        spots = spots[:MOST_TOLD]
    misspelt = _misspelt(spots)
    for spot in spots:
        error = spot.error
        if error["type"] == "missing" and misspelt.get((spot.path, str(error["loc"][-1]))):
            continue  # It stands there misspelt, and that has its own finding.
        if error["type"] == "too_short" and len(spot.node.children) >= error["ctx"]["min_length"]:
            continue  # Its items are wrong, not too few: each has its own finding.
        if spot.in_choice:
            choices[_choice_path(error, spot)].append(spot)
        else:
            findings.append(_finding(spot))
    for path, spots in choices.items():
        findings.extend(_choice_findings(path, spots))
    return findings


def _misspelt(spots: list[_Spot]) -> dict[tuple[ValuePath, str], str]:
    """(path of a map, key that is missing from it) -> the unknown key there that must mean it."""
    missing: dict[ValuePath, list[str]] = defaultdict(list)
    for spot in spots:
        if spot.error["type"] == "missing":
            missing[spot.path].append(str(spot.error["loc"][-1]))
    meant = {}
    for spot in spots:
        if spot.error["type"] == "extra_forbidden":
            for key in get_close_matches(str(spot.path[-1]), missing[spot.path[:-1]], n=1):
                meant[spot.path[:-1], key] = str(spot.path[-1])
    return meant


def _spot(error: ErrorDetails, root: Node, hint: Any) -> _Spot | None:
    spot = _Spot(error, root, "the record", (), hint, None)
    for step in error["loc"]:
        if step == "[key]":
            spot.of_key = True
        elif step in spot.node.children:
            child = spot.node.children[step]
            name = f"'{shown(step)}'" if isinstance(step, str) else f"item {step + 1}"
            spot = _Spot(error, child, name, (*spot.path, step), inside(spot.hint, step), spot.node, spot.hint,
                         in_choice=spot.in_choice)
        elif not (error["type"] == "missing" and step == error["loc"][-1]):
            spot.in_choice = True  # The name of one of several allowed types.
        if spot.node.refused:
            return None
    return spot


def _choice_path(error: ErrorDetails, spot: _Spot) -> ValuePath:
    """Path of the value that may be of several types: errors of one such value belong together."""
    for count, step in enumerate(error["loc"]):
        if count >= len(spot.path) or spot.path[count] != step:
            return spot.path[:count]
    return spot.path


def _choice_findings(path: ValuePath, spots: list[_Spot]) -> list[Finding]:
    """When one allowed type nearly fits, what it says; else one sentence that names them all."""
    nearer = [s for s in spots if s.wanted is None or s.path != path]
    if nearer:
        return [_finding(s) for s in nearer]
    wanted = list(dict.fromkeys(s.wanted for s in spots if s.wanted is not None))
    return [_type_finding(spots[0], " or ".join(wanted), wanted[0])]


def _finding(spot: _Spot) -> Finding:
    kind = spot.error["type"]
    if spot.wanted:
        return _type_finding(spot, spot.wanted, spot.wanted)
    special = {
        "missing": _missing, "extra_forbidden": _unknown_key, "literal_error": _not_listed,
        "string_pattern_mismatch": _pattern, "value_error": _record_problem,
    }.get(kind)  # fmt: skip
    if special:
        return special(spot)
    what, instead = _limit(spot)
    return Finding(_place(spot), what, instead)


def _place(spot: _Spot) -> Where:
    if spot.of_key and spot.parent:
        return spot.parent.keys[str(spot.path[-1])]
    return spot.node.text or spot.node.where


def _found(node: Node) -> str:
    if node.kind != "scalar":
        return f"a {node.kind}"
    if isinstance(node.value, bool):
        return f"{str(node.value).lower()}"
    if isinstance(node.value, str):
        return f"the text '{shown(node.value)}'"
    return f"the number {shown(node.value)}"


def _type_finding(spot: _Spot, wanted: str, first: str) -> Finding:
    node, name = spot.node, spot.name
    where = node.where if node.kind != "scalar" else _place(spot)
    if node.kind == "scalar" and node.value is None:
        where = spot.parent.keys.get(str(spot.path[-1]), where) if spot.parent else where
        return Finding(where, f"{name} is empty", f"write {wanted}{_or_leave_out(spot)}")
    return Finding(where, f"{name} must be {wanted}, found {_found(node)}", _right_type(node, first))


def _or_leave_out(spot: _Spot) -> str:
    record = record_of(spot.above)
    field = record.model_fields.get(str(spot.path[-1])) if record and spot.path else None
    return ", or leave the key out" if field and not field.is_required() else ""


def _right_type(node: Node, wanted: str) -> str:
    value = node.value
    if wanted == "text":
        if node.kind == "map":
            return "write one text, in quotes if it holds ': '"
        return "write one text" if node.kind == "list" else f"put it in quotes: '{str(value).lower()}'"
    if wanted == "true or false" and isinstance(value, str):
        word = value.strip().lower()
        return "write false" if word in _NO else "write true" if word in _YES else "write true or false"
    if wanted in ("a number", "a whole number") and isinstance(value, str):
        if re.fullmatch(r"\s*[-+]?[0-9]+(\.[0-9]+)?\s*", value):
            return f"write it without quotes or leading zeros: {float(value):g}"
        return "write the number alone, such as 25" if "whole" in wanted else "write the number alone, such as 25 or 0.5"
    if wanted == "a list":
        return "write one item to a line, each after '- ', or all of them between [ and ]"
    if wanted == "a map of keys":
        return "write one 'key: value' to a line"
    return f"write {wanted}"


def _missing(spot: _Spot) -> Finding:
    key = str(spot.error["loc"][-1])
    record = record_of(spot.hint)
    field = record.model_fields.get(key) if record else None
    meaning = field.description if field else None
    inside_of = f" under {spot.name}" if spot.path else ""
    instead = f"add '{key}': {_lower(meaning)}" if meaning else f"add '{key}'"
    return Finding(spot.node.first, f"the key '{key}' is missing{inside_of}", instead.rstrip("."))


def _unknown_key(spot: _Spot) -> Finding:
    key = str(spot.path[-1])
    record, parent = record_of(spot.above), spot.parent or spot.node
    here = parent.keys[key].path  # What lies below, in the shared knowledge, may be written again here.
    known = [k for k in record.model_fields if k not in parent.keys or parent.keys[k].path != here] if record else []
    listed = f"the keys still free here are: {', '.join(known)}" if known else "take it out"
    instead = f"it is called '{KEYS[key]}' now" if KEYS.get(key) in known else suggestion(key, known, listed)
    return Finding(parent.keys[key], f"unknown key '{shown(key)}'", instead)


def _not_listed(spot: _Spot) -> Finding:
    allowed = re.findall(r"'([^']*)'", spot.error["ctx"]["expected"])
    value = spot.path[-1] if spot.of_key else spot.node.value
    if not allowed:  # The one number that it may be, such as the version of a file.
        return Finding(_place(spot), f"{spot.name} cannot be {_found(spot.node)}", f"write {spot.error['ctx']['expected']}")
    listed = f"write {_listed(allowed)}"
    if not isinstance(value, str):
        if value is None and not spot.of_key:
            return Finding(_place(spot), f"{spot.name} is empty", listed)
        return Finding(_place(spot), f"{spot.name} must be a word from a list, found {_found(spot.node)}", listed)
    what = f"unknown key '{shown(value)}'" if spot.of_key else f"{spot.name} cannot be '{shown(value)}'"
    instead = f"it is called '{WORDS[value]}' now" if WORDS.get(value) in allowed else suggestion(value, allowed, listed)
    return Finding(_place(spot), what, instead)


def _pattern(spot: _Spot) -> Finding:
    value = str(spot.path[-1] if spot.of_key else spot.node.value)
    if not value.strip():
        return Finding(_place(spot), f"{spot.name} is empty", f"write it{_or_leave_out(spot)}")
    pattern = spot.error["ctx"]["pattern"]
    what, instead = PATTERNS.get(pattern, ("is not written as it should be", "see its schema in data/schema"))
    word = re.sub(r"[^a-z0-9]+", "-", value.lower()).strip("-")
    if word and pattern == IDENTIFIER:
        instead = f"{instead}, such as '{shown(word)}'"
    return Finding(_place(spot), f"'{shown(value)}' {what}", instead)


def _record_problem(spot: _Spot) -> Finding:
    problem = spot.error["ctx"]["error"]
    if not isinstance(problem, RecordProblem):
        return Finding(spot.node.first, str(problem), "correct it")
    node = spot.node.children.get(problem.key) if problem.key else None
    where = (node.text or node.where) if node else spot.node.first
    wanted = _wanted_of(spot) if isinstance(problem, BeyondSense) else None
    if wanted is None or node is None or not isinstance(node.value, int | float):
        return Finding(where, problem.what, problem.instead)
    given = amount(f"{node.value:g}", str(spot.node.children["unit"].value))
    return Finding(where, *wanted.row.refusal(given, str(spot.path[-1]), node.value))


def _wanted_of(spot: _Spot) -> Measured | None:
    """What the figure at a spot means, which says more closely what it may be."""
    record, name = record_of(spot.above), str(spot.path[-1]) if spot.path else ""
    marks = get_args(spot.hint) if get_origin(spot.hint) is Annotated else ()
    own = next((mark for mark in marks if isinstance(mark, Measured)), None)
    return own or (measured(record, name) if record and name in record.model_fields else None)


def _limit(spot: _Spot) -> tuple[str, str]:
    """Too long, too short, too large, too small."""
    kind, limits, name = spot.error["type"], spot.error.get("ctx", {}), spot.name
    value, count = shown(spot.node.value), len(spot.node.children)
    number = next((v for v in limits.values() if isinstance(v, int | float)), 0)
    match kind:
        case "string_too_short":
            return f"{name} is empty", "write text"
        case "string_too_long":
            return f"{name} is longer than {number} characters", "shorten it, or split it"
        case "too_short":
            return f"{name} has {_items(count)}", f"it needs at least {_items(number)}"
        case "too_long":
            return f"{name} has {_items(count)}", f"it takes at most {_items(number)}"
        case "too_fine":
            return f"{name} is {value}", f"it must be 0, or at least {number:g}"
        case "impossible":
            row = PLAUSIBLE[str(limits["kind"])]
            return f"{name} is {amount(value, row.unit)}: {row.reason(spot.node.value)}", f"give {row.possible}"
        case "greater_than":
            return f"{name} is {value}", f"it must be more than {number:g}"
        case "greater_than_equal":
            return f"{name} is {value}", f"it must be at least {number:g}"
        case "less_than":
            return f"{name} is {value}", f"it must be less than {number:g}"
        case "less_than_equal":
            return f"{name} is {value}", f"it must be at most {number:g}"
    return f"{name} does not fit ({shown(spot.error['msg'])})", "see its schema in data/schema"


def _items(count: float) -> str:
    return "one item" if count == 1 else f"{count} items"


def _listed(words: list[str]) -> str:
    quoted = [f"'{word}'" for word in words]
    return " or ".join([", ".join(quoted[:-1]), quoted[-1]]) if len(quoted) > 1 else quoted[0]


def _lower(sentence: str) -> str:
    """A description after a colon: its first word small, unless it is a name or an abbreviation."""
    return sentence if sentence[1:2].isupper() else sentence[0].lower() + sentence[1:]
