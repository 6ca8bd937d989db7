"""The questions of a problem lead to its causes, tell each cause from each other, and end at somebody licensed where one is needed."""

from collections.abc import Iterator
from itertools import combinations

from generator.book.book import PartialBook
from generator.book.records.problem import Problem
from generator.checks.check import Check
from generator.findings import Finding, suggestion


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, problem in book.problems.items():
        unknown = list(_unknown_causes(book, id, problem))
        yield from unknown
        if not unknown:  # A misspelt cause leaves the right one without its answer: told once already.
            yield from _never_asked_for(book, id, problem)
            yield from _not_told_apart(book, id, problem)
        if all(each.expert in book.experts for each in problem.send_for):
            yield from _nobody_sent_for(book, id, problem)


def _unknown_causes(book: PartialBook, id: str, problem: Problem) -> Iterator[Finding]:
    for number, question in enumerate(problem.questions):
        for position, answer in enumerate(question.answers):
            for place, cause in enumerate(answer.causes):
                if cause not in problem.causes:
                    where = book.where("problems", id, "questions", number, "answers", position, "causes", place)
                    otherwise = f"the causes of this problem are: {', '.join(problem.causes)}"
                    yield Finding(where, f"'{cause}' is not a cause of this problem", suggestion(cause, problem.causes, otherwise))


def _answers(problem: Problem) -> list[frozenset[str]]:
    """The causes that each answer points to, of every question."""
    return [frozenset(answer.causes) for question in problem.questions for answer in question.answers]


def _never_asked_for(book: PartialBook, id: str, problem: Problem) -> Iterator[Finding]:
    pointed = frozenset().union(*_answers(problem))
    for cause in problem.causes:
        if cause not in pointed:
            yield Finding(book.where("problems", id, "causes", cause, "[key]"), f"no answer points to the cause '{cause}'",
                          "name it under an answer, or take it out")


def _not_told_apart(book: PartialBook, id: str, problem: Problem) -> Iterator[Finding]:
    answers = _answers(problem)
    pointed = [cause for cause in problem.causes if any(cause in answer for answer in answers)]
    for one, other in combinations(pointed, 2):
        if not any((one in answer) != (other in answer) for answer in answers):
            yield Finding(book.where("problems", id, "causes", other, "[key]"), f"no question tells '{other}' from '{one}'",
                          "add a question whose answers point to one of them only")


def _nobody_sent_for(book: PartialBook, id: str, problem: Problem) -> Iterator[Finding]:
    sent_for = {each.expert for each in problem.send_for}
    for cause_id, cause in problem.causes.items():
        for position, caution in enumerate(cause.cautions):
            wanted = [expert for expert, each in book.experts.items() if caution in each.for_cautions]
            if wanted and not sent_for & set(wanted):
                yield Finding(book.where("problems", id, "causes", cause_id, "cautions", position),
                              f"the caution '{caution}' asks for somebody licensed, but nobody is sent for",
                              f"add {' or '.join(repr(each) for each in wanted)} under 'send_for'")


CHECK = Check("problem-questions", "The questions of a problem tell its causes apart, and somebody licensed is named where one is needed.",
    ("problems", "experts"), _check,
)  # fmt: skip
