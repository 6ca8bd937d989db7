"""When a hold rule holds, in words for people: 'Lowest temperature at most 2 °C', 'Soil: dry, and wind over 22 km/h'."""

from collections.abc import Iterable, Mapping

from generator.book.records.calculator import Constant
from generator.book.records.hold import Hold, HoldRule
from generator.field.forecast import ANSWERED_BY, QUESTIONS, DayQuestion
from generator.field.holds import condition_of
from generator.formula import Formula
from generator.formula.nodes import Both, Comparison, Name, Node, Not, Number, text_of, walk
from generator.words.figures import converted, unit_words

# Plain words and [metric, US] pairs, as the component `words` takes them.
Words = list[str | list[str]]
_THAN = {"<": "under", "<=": "at most", ">": "over", ">=": "at least", "==": "exactly", "!=": "other than"}


def rule_words(hold: Hold, rule: HoldRule) -> Words:
    """The condition of a rule, its numbers with their units. What has no plain words stands as it was written."""
    return _capital(_joined(_condition(condition_of(rule).root, hold.constants)))


def _condition(node: Node, constants: Mapping[str, Constant]) -> Words:
    if (asked := _only_choice(node)) is not None:
        return _chosen(asked, node)
    match node:
        case Both(operator, conditions):
            parts = _by_question(conditions) if operator == "and" else [(each,) for each in conditions]
            return _between([_part(each, constants) for each in parts], f", {operator} ")
        case Not(condition):
            return ["not (", *_condition(condition, constants), ")"]
        case Comparison((operator,), (Name(name), _)) if name in ANSWERED_BY and operator in _THAN:
            return [f"{_small(QUESTIONS[ANSWERED_BY[name]].name)} ", *_than(node, constants)]
    return [text_of(node)]


def _part(nodes: tuple[Node, ...], constants: Mapping[str, Constant]) -> Words:
    """Conditions of one question as one: its choices that fit all of them, or 'wind over 5 km/h and under 20 km/h'."""
    if len(nodes) > 1 and _only_choice(nodes[0]):
        return _condition(Both("and", nodes), constants)
    first, *more = nodes
    return _between([_condition(first, constants), *(_than(each, constants) for each in more if isinstance(each, Comparison))], " and ")


def _by_question(conditions: tuple[Node, ...]) -> Iterable[tuple[Node, ...]]:
    groups: dict[object, list[Node]] = {}
    for position, each in enumerate(conditions):
        groups.setdefault(_only_choice(each) or _compared(each) or position, []).append(each)
    return [tuple(each) for each in groups.values()]


def _compared(node: Node) -> str | None:
    match node:
        case Comparison((operator,), (Name(name), _)) if name in ANSWERED_BY and operator in _THAN:
            return name
    return None


def _only_choice(node: Node) -> str | None:
    """The one question of choices that a condition asks, and nothing else."""
    asked = {ANSWERED_BY.get(part.name) for part in walk(node) if isinstance(part, Name)}
    [question] = asked if len(asked) == 1 else [None]
    return question if question is not None and QUESTIONS[question].choices else None


def _chosen(question: str, node: Node) -> Words:
    choices = QUESTIONS[question].choices
    fit = [word for word, names in choices.items() if Formula(node, "").evaluate(names)]
    return [f"{_small(QUESTIONS[question].name)}: {' or '.join(fit) or 'none of these'}"]


def _than(node: Comparison, constants: Mapping[str, Constant]) -> Words:
    """'at most 2 °C', in the units of the question that is compared."""
    [operator], [name, right] = node.operators, node.operands
    assert isinstance(name, Name), "a rule asks a question first"
    question = QUESTIONS[ANSWERED_BY[name.name]]
    match right:
        case Name(other) if other in constants:
            measure = _pair(constants[other].value, constants[other].unit, question)
        case Name(other) if other in ANSWERED_BY:
            return [f"{_THAN[operator]} the {_small(QUESTIONS[ANSWERED_BY[other]].name)}"]
        case Number(0):
            measure = _pair(0, question.unit or "1", question)
        case _:
            return [f"{_THAN[operator]} {text_of(right)}"]
    return [f"{_THAN[operator]} ", measure]


def _pair(value: float, unit: str, question: DayQuestion) -> list[str]:
    """To three figures, not to what a person measures out: the answer turns there. [metric, US]; US is empty where both are alike."""
    if question.unit is None or question.us_unit is None:
        return [_shown(value, unit), ""]
    return [_shown(converted(value, unit, each), each) for each in (question.unit, question.us_unit)]


def _shown(value: float, unit: str) -> str:
    text = f"{value:.3g}".replace("-", "−")
    return f"{text} {unit_words(unit, plural=text != '1')}"


def _between(several: list[Words], word: str) -> Words:
    found = several[0]
    for each in several[1:]:
        found = [*found, word, *each]
    return found


def _joined(words: Words) -> Words:
    """Plain words that follow each other as one, for a shorter script."""
    found: Words = []
    for each in words:
        if isinstance(each, str) and found and isinstance(found[-1], str):
            found[-1] += each
        else:
            found.append(each)
    return found


def _capital(words: Words) -> Words:
    first = words[0]
    return [first[:1].upper() + first[1:], *words[1:]] if isinstance(first, str) else words


def _small(name: str) -> str:
    return name[:1].lower() + name[1:]
