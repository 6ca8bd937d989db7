"""What a problem's page says of its numbers: in the reader's units, with the source they were read in."""

from datetime import date

from generator.site.frame.render import render
from generator.site.page_context import PageContext
from generator.site.pages.problem.view import problem_page
from tests.our_book import seasons

BOOK = seasons().book


def written(id: str) -> str:
    page = problem_page(BOOK, id, PageContext(BOOK, f"problems/{id}", date(2026, 1, 1)))
    return render(page.template, page.context)


def test_a_temperature_is_told_in_both_systems_and_names_who_measured_it():
    """Wisconsin's page on dollar spot: the disease is at work between 60 and 90 °F, which is 16 and 32 °C."""
    page = written("dollar-spot")
    assert "16 to 32 °C" in page and "61 to 90 °F" in page  # 16 °C is 60.8 °F
    assert 'href="../sources.html#wisc-dollar-spot"' in page


def test_a_page_lists_the_figures_that_it_puts_in():
    assert "Where the figures come from" in written("dollar-spot")
    assert "Where the figures come from" not in written("moss")
