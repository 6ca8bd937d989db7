"""Month names in rules are found, and plain words that look like them are not."""

from dataclasses import replace

import pytest

from generator.book.loading.whole_book import read_book
from generator.checks.season.no_months import CHECK
from tests.book_folders import WHOLE


def found(say: str) -> list[str]:
    book, findings = read_book(WHOLE)
    assert not findings
    sweep = book.tasks["sweep"]
    due = sweep.due[0].model_copy(update={"say": say})
    changed = replace(book, tasks={**book.tasks, "sweep": sweep.model_copy(update={"due": (due,)})})
    return [finding.what for finding in CHECK.check(changed)]


@pytest.mark.parametrize("say", ["Sow in March.", "Sow by September.", "Begin 12 May, not before.", "Not until early May.", "An OCTOBER job."])
def test_a_month_is_found(say):
    (what,) = found(say)
    assert "another season elsewhere" in what


@pytest.mark.parametrize("say", ["It may frost.", "March along the edge.", "May need a second pass.", "Augment the feed.", "Mark the heads."])
def test_a_plain_word_is_not(say):
    assert found(say) == []
