"""A task's page: each caution where it bites and once, the months worked out, and the same parts on every task that calendars list."""

from datetime import date
from functools import cache

import pytest

from generator.site.page import Links
from generator.site.page_context import PageContext
from generator.site.pages.task.view import task_page
from generator.site.year.when_due import months_due, spans, when_view
from tests.our_book import seasons

TASKS = sorted(seasons().book.tasks)
DUE = [id for id in TASKS if seasons().book.tasks[id].due]


@cache
def view(id: str) -> dict:
    book = seasons().book
    return task_page(book, id, PageContext(book, f"tasks/{id}", date(2027, 2, 10))).context


@pytest.mark.parametrize("id", TASKS)
def test_each_caution_of_a_task_is_shown_where_it_bites_or_before_the_first_step(id: str) -> None:
    before = [each["id"] for each in view(id)["cautions"]]
    at_steps = {each["id"] for step in view(id)["steps"] for each in step["cautions"]}
    assert set(before) | at_steps == set(seasons().book.tasks[id].cautions)
    assert not set(before) & at_steps


@pytest.mark.parametrize("id", DUE)
def test_cautions_that_belong_to_a_step_do_not_stand_in_a_heap(id: str) -> None:
    """Noise, fuel, heat and a hired machine go with the whole job; what else bites has its step."""
    assert {each["id"] for each in view(id)["cautions"]} <= {"noise", "fuel", "heat", "hired-machines"}


@pytest.mark.parametrize("id", DUE)
def test_a_task_that_calendars_list_is_told_whole(id: str) -> None:
    wanted = {"purpose", "timing", "steps", "machine", "check", "mistakes", "order", "weather", "recovery"}
    assert {part["id"] for part in view(id)["parts"]} - {"not-advised"} == wanted


@pytest.mark.parametrize("id", sorted(seasons().book.cautions))
def test_a_caution_says_what_can_happen_to_whom_what_to_do_and_whom_to_ask(id: str) -> None:
    caution = seasons().book.cautions[id]
    assert caution.hazard and caution.at_risk and caution.what_to_do and caution.defer_to_all
    assert set(caution.defer_to) == {"AU", "NZ", "ZA", "US", "GB"}


def test_months_are_told_as_spans_round_the_year() -> None:
    assert spans((0, 1, 11)) == "December to February"
    assert spans((2,)) == "March"
    assert spans((0, 2, 3, 4, 9)) == "January, March to May, October"
    assert spans(tuple(range(12))) == "all year"


def test_months_of_a_task_agree_with_the_calendars_that_list_it() -> None:
    """A warm-season renovation at the home place, in the southern half, is for its warm half; a cool-season one is not."""
    months = months_due(seasons())["scarify"]
    assert seasons().book.places[seasons().book.practice.home_place].latitude_deg < 0
    assert set(months["kikuyu"]) <= {8, 9, 10, 11, 0}
    assert set(months["perennial-ryegrass"]) <= {1, 2, 3, 4}
    rows = when_view(seasons(), "scarify", months_due(seasons()), Links("tasks/scarify"))["rows"]
    assert any("Kikuyu" in row["grasses"] and row["text"] == spans(months["kikuyu"]) for row in rows)


def test_a_task_without_a_rule_shows_no_months() -> None:
    assert when_view(seasons(), "no-such-task", months_due(seasons()), Links("tasks/x")) is None
