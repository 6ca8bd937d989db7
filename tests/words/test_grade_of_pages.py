"""Every kind of page is plain: in the middle no more than eight years of schooling, and no page far beyond."""

import re
from collections import defaultdict
from functools import cache
from statistics import median

import pytest

from tests.words.reading_grade import grade
from tests.words.texts import ROOT, book_texts, plain

HIGHEST_MEDIAN_GRADE, HIGHEST_GRADE = 8, 9
KINDS = (
    "answers", "aftercare", "problems", "cautions", "experts", "holds", "renovations", "tasks", "grasses", "calculators", "places",
    "content",
)  # fmt: skip


@cache
def sentences_by_file() -> dict[str, list[str]]:
    """What each file says in whole sentences; names, labels and headings would make any page look plain."""
    said = defaultdict(list)
    for text in book_texts():
        if text.text.endswith((".", "!", "?")):
            said[text.path].append(plain(text.text))
    return said


def pages(kind: str) -> dict[str, str]:
    """The text of each page of a kind; a guide is its plan with the steps that it shares with others."""
    found = {}
    for path, said in sentences_by_file().items():
        if f"/{kind}/" in f"/{path}":
            steps = re.findall(r"\buse: ([\w-]+)", (ROOT / path).read_text(encoding="utf-8")) if kind == "renovations" else []
            found[path] = " ".join(said + [text for step in steps for text in sentences_by_file().get(f"data/steps/{step}.yml", [])])
    return found


@pytest.mark.parametrize("kind", KINDS)
def test_pages_of_a_kind_ask_for_eight_years_of_school_or_fewer(kind):
    grades = {path: grade(text) for path, text in pages(kind).items()}
    assert median(grades.values()) <= HIGHEST_MEDIAN_GRADE
    assert {path: round(number, 1) for path, number in grades.items() if number > HIGHEST_GRADE} == {}


def test_a_step_by_itself_is_plain_enough():
    steps = [" ".join(said) for path, said in sentences_by_file().items() if path.startswith("data/steps/")]
    assert median(map(grade, steps)) <= HIGHEST_MEDIAN_GRADE


def test_a_hard_text_would_be_found():
    hard = "Supplementary irrigation necessitates consideration of evapotranspirational requirements throughout establishment."
    assert grade(hard) > HIGHEST_GRADE
