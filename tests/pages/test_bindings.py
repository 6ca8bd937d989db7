"""Calculators on guides and task pages start with what the book knows, and each figure says where it comes from."""

from datetime import date

import pytest

from generator.site.frame.render import render
from generator.site.page_context import PageContext
from generator.site.pages.aftercare.view import aftercare_page
from generator.site.pages.calendar.view import thirstiest_week
from generator.site.pages.guide.view import guide_page
from generator.site.pages.task.view import task_page
from tests.our_book import book
from tests.our_book import seasons as shipped_almanac

BOOK = book()
FEED = BOOK.practice.products[BOOK.practice.feed]


def fields(view: dict) -> dict[str, dict]:
    return {field["name"]: field for field in (*view["fields"], *view["more"])}


def guide_calculators(grass: str) -> list[dict]:
    page = guide_page(BOOK, grass, PageContext(BOOK, f"renovate/{grass}", date(2026, 1, 1)), {})
    return [view for stage in page.context["stages"] for step in stage["steps"] for view in step["calculators"]]


def test_a_guide_falls_back_on_what_an_input_is_bound_to():
    """The plans say nothing of the height at which sand is spread, nor of the bag's phosphate: the grass and the practice do."""
    sand = next(view for view in guide_calculators("kikuyu") if view["calculator"] == "topdressing-sand")
    height = fields(sand)["leaf_height"]
    assert height["value"] == f"{BOOK.grasses['kikuyu'].mowing_height.default:g}"
    assert height["from_words"] == "from this grass's mowing height"
    feed = next(view for view in guide_calculators("kikuyu") if view["calculator"] == "granular-feed")
    assert fields(feed)["phosphate_percent"]["from_words"] == f"from {FEED.name}, phosphate"


def test_what_the_plan_fills_in_comes_before_what_an_input_is_bound_to():
    for id, grass in BOOK.grasses.items():
        steps = {f"{step.id}-{number}": quantity for step in BOOK.renovations[grass.renovation].steps for number, quantity in enumerate(step.quantities)}
        for view in guide_calculators(id):
            quantity = next(each for key, each in steps.items() if view["id"] == f"calc-{each.calculator}-{key}")
            for name, expression in quantity.fill.items():
                if expression.startswith("renovation."):
                    assert fields(view)[name]["from_words"] == "set by this plan"


def test_a_full_rate_is_filled_in_only_where_a_plan_splits_a_feed():
    """The bag's full rate beside a feed that is not split would promise product for a later feed that nobody planned."""
    page = task_page(BOOK, "feed", PageContext(BOOK, "tasks/feed", date(2026, 1, 1)))
    assert fields(page.context["calculator"])["full_rate"]["from_words"] is None


def test_a_task_holds_its_first_calculator_with_the_practice_s_figures():
    page = task_page(BOOK, "feed", PageContext(BOOK, "tasks/feed", date(2026, 1, 1)))
    view = page.context["calculator"]
    assert view["calculator"] == BOOK.tasks["feed"].calculators[0]
    nitrogen = fields(view)["nitrogen_percent"]
    assert nitrogen["value"] == f"{FEED.nitrogen_percent:g}" and nitrogen["from_words"] == f"from {FEED.name}, nitrogen"
    html = render("pages/task/task.html.j2", page.context)
    assert html.count('data-component="calculator"') == 1 and f"{view['calculator']}.js" in html
    assert html.index("<summary>") < html.index('data-component="calculator"')


def test_a_task_without_calculators_has_none():
    id = next(id for id, task in BOOK.tasks.items() if not task.calculators)
    page = task_page(BOOK, id, PageContext(BOOK, f"tasks/{id}", date(2026, 1, 1)))
    assert page.context["calculator"] is None and "sb-calculator" not in render("pages/task/task.html.j2", page.context)


def test_an_aftercare_sheet_holds_calculators_filled_in_from_the_plan_s_own_watering():
    page = aftercare_page(BOOK, "after-renovation", PageContext(BOOK, "aftercare/after-renovation", date(2026, 1, 1)))
    week = next(days for days in page.context["sheet"]["days"] if days["title"] == "The first week")
    view, step = week["calculators"][0], BOOK.steps["water-first-week"]
    depth = fields(view)["depth"]
    assert (f"{depth['value']} {depth['unit']}", depth["from_words"]) == (step.watering.depth, f"from our step: {step.title}")
    assert view["answer"]["quantity"]["metric"].endswith("min")
    html = render("pages/aftercare/aftercare.html.j2", page.context)
    held = [view for days in page.context["sheet"]["days"] for view in days["calculators"]]
    assert html.count('data-component="calculator"') == len(held) >= 2
    assert all(f"calculators/{each['calculator']}.js" in html for each in held)


def test_each_calculator_of_a_sheet_starts_with_a_depth_of_its_own():
    for id in BOOK.aftercare:
        page = aftercare_page(BOOK, id, PageContext(BOOK, f"aftercare/{id}", date(2026, 1, 1)))
        for view in (view for days in page.context["sheet"]["days"] for view in days["calculators"]):
            assert fields(view)["depth"]["from_words"], view["id"]


def test_a_task_fills_its_calculator_from_its_own_figures():
    page = task_page(BOOK, "water", PageContext(BOOK, "tasks/water", date(2026, 1, 1)))
    depth = fields(page.context["calculator"])["depth"]
    figure = BOOK.tasks["water"].figures["one-watering-on-sand"]
    assert (depth["value"], depth["unit"]) == (f"{figure.default:g}", figure.unit)
    assert depth["from_words"] == "from this task's figures, one watering on sand"


@pytest.mark.parametrize("place", ["sydney", "chicago"])
def test_a_year_holds_the_water_of_its_thirstiest_week(place):
    """What the calculator says of that week is what the season says, whichever half of the year it falls in."""
    seasons = shipped_almanac()
    water = thirstiest_week(seasons, "tall-fescue", place, PageContext(BOOK, f"calendars/{place}/tall-fescue", date(2026, 1, 1)))
    week = max(seasons.season("tall-fescue", place).weeks[:51], key=lambda each: each.water_need_mm)  # the last has eight days
    assert fields(water)["rain"]["from_words"] == f"from {BOOK.places[place].name}, week of {water['from_day']}"
    # In January or the weeks about it in the south, in July or the weeks about it in the north.
    assert water["from_day"].split()[1] in (("November", "December", "January") if place == "sydney" else ("June", "July", "August"))
    need = next(result for result in water["results"] if result["name"] == "need")
    assert float(need["metric"].removesuffix(" mm")) == pytest.approx(week.water_need_mm, abs=0.3)
