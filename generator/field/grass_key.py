"""The key of grasses: which question parts which, worked out from what each grass says of itself."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from generator.book.records.grass import Grass
from generator.book.records.identification import KeyQuestion


@dataclass(frozen=True)
class End:
    """Where a path ends. grasses: ids; more than one where no question tells them apart."""

    grasses: tuple[str, ...]


@dataclass(frozen=True)
class Fork:
    """A question, by its position in the key's list, and what follows each answer."""

    question: int
    yes: "Fork | End"
    no: "Fork | End"


@dataclass(frozen=True)
class Way:
    """How the key reaches its end: answers in order, as (position of the question, answered yes)."""

    answers: tuple[tuple[int, bool], ...]
    grasses: tuple[str, ...]


def values_of(grass: Grass, feature: str) -> tuple[str, ...]:
    """What a grass says of one feature; more than one value where plants or sources differ, none where it does not say."""
    if feature in ("habit", "season_group"):
        return (getattr(grass, feature),)
    return getattr(grass.identification, feature) if grass.identification else ()


def answer(question: KeyQuestion, grass: Grass) -> bool | None:
    """What a grass answers: True, False, or None where it may be either."""
    answers = {value in question.yes for value in values_of(grass, question.feature)}
    return answers.pop() if len(answers) == 1 else None


def key_of(questions: tuple[KeyQuestion, ...], grasses: Mapping[str, Grass]) -> Fork | End:
    """The key of those grasses that say how they are told.

    At each fork stands the first question of the list that every grass still in play answers and that parts them; so each
    grass lies at the end of one path, and a new one falls into its place by its own words.
    """
    described = tuple(id for id, grass in grasses.items() if grass.identification)
    return _fork(questions, grasses, described)


def _fork(questions: tuple[KeyQuestion, ...], grasses: Mapping[str, Grass], ids: tuple[str, ...]) -> Fork | End:
    for position, question in enumerate(questions):
        answers = {id: answer(question, grasses[id]) for id in ids}
        if set(answers.values()) == {True, False}:
            yes = tuple(id for id in ids if answers[id])
            no = tuple(id for id in ids if not answers[id])
            return Fork(position, _fork(questions, grasses, yes), _fork(questions, grasses, no))
    return End(ids)


def ways(node: Fork | End, so_far: tuple[tuple[int, bool], ...] = ()) -> Iterator[Way]:
    """Every path through a key, the answer yes first."""
    if isinstance(node, End):
        yield Way(so_far, node.grasses)
        return
    yield from ways(node.yes, (*so_far, (node.question, True)))
    yield from ways(node.no, (*so_far, (node.question, False)))
