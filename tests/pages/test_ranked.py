"""Which grass for what: the order follows from the grasses' own records, and each need opens with its answer."""

from datetime import date

from generator.site.frame.render import render
from generator.site.page_context import PageContext
from generator.site.pages.ranked.view import ranked_page
from tests.our_book import seasons

BOOK = seasons().book
PAGE = ranked_page(BOOK, PageContext(BOOK, "which-grass", date(2026, 1, 1)))
NEEDS = {need["id"]: need for need in PAGE.context["needs"]}
ORDER = ["high", "medium", "low"]


def test_the_most_tolerant_stand_first_and_each_grass_once():
    for need in NEEDS.values():
        levels = [ORDER.index(row["level"]) for row in need["rows"]]
        assert levels == sorted(levels)
        assert len({row["name"] for row in need["rows"]}) == len(need["rows"]) == len(BOOK.grasses)


def test_a_grass_of_which_others_think_more_stands_before_its_equals():
    """Buffalo's drought: medium by one page of the University of California, high by another, so it leads the middle ones."""
    middle = [row["name"] for row in NEEDS["drought"]["rows"] if row["level"] == "medium"]
    assert middle[0] == "Buffalo"


def test_a_need_opens_with_the_grasses_that_bear_it_best():
    """UC Guide to Healthy Lawns: St. Augustinegrass (buffalo) and the fine fescues are its most shade-tolerant lawns."""
    assert NEEDS["shade"]["said"].startswith("Buffalo and Fine fescue take the most shade")


def test_a_reader_in_america_knows_couch_by_its_own_name():
    couch = next(row for row in NEEDS["wear"]["rows"] if row["name"] == "Couch")
    assert "bermudagrass" in couch["elsewhere"]


def test_the_page_names_a_source_for_each_level():
    page = render(PAGE.template, PAGE.context)
    assert page.count("Source: ") >= len(NEEDS) * len(BOOK.grasses)
