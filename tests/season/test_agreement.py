"""Our windows against calendars that public bodies print: most agree, and the rest are named and explained in the book."""

from statistics import mean

import pytest

from generator.season.inputs import climate_of, grass_season_of
from generator.season.reasons import because
from generator.season.windows.main_windows import Window
from generator.season.windows.preferred import Preferred
from generator.season.windows.printed_agreement import ENOUGH, agreement
from generator.season.year import year
from tests.our_book import book
from tests.season.shipped import groups, places, rules

PRINTED = groups().published


def compared(calendar, grass_id):
    grass = grass_season_of(grass_id, book().grasses[grass_id], groups())
    season = year(climate_of(places()[calendar.place]), grass, rules().sites["open"], rules())
    return agreement(calendar.first, calendar.last, season.windows[calendar.window].windows)


CASES = [(calendar, grass) for calendar in PRINTED for grass in calendar.grasses]


@pytest.mark.parametrize(("calendar", "grass"), CASES, ids=lambda v: v if isinstance(v, str) else f"{v.place}-{v.first}")
def test_our_window_holds_most_of_the_printed_weeks_or_the_book_explains_why_not(calendar, grass):
    found = compared(calendar, grass)
    assert found is not None, f"{calendar.says} We find no window at all."
    if not found.is_close:
        assert calendar.explained, f"{calendar.source}: only {found.share_of_printed:.0%} of the printed weeks"


def test_at_least_four_public_bodies_in_both_hemispheres_agree():
    agreeing = {}
    for calendar in PRINTED:
        shares = [compared(calendar, grass).share_of_printed for grass in calendar.grasses]
        if mean(shares) >= ENOUGH:
            agreeing[calendar.sources] = places()[calendar.place].latitude_deg > 0
    assert len(agreeing) >= 4 and set(agreeing.values()) == {True, False}


def test_those_that_disagree_are_these_and_no_more():
    disagreeing = {calendar.place for calendar, grass in CASES if not compared(calendar, grass).is_close}
    # Explained in data/season-groups.yml.
    assert disagreeing == {"miami"}


def test_weeks_are_counted_over_new_year():
    def window(first, last):
        return Window(first, last, Preferred(first, last, because("nothing")), (), (), ((), ()), True)

    # 1 to 28 December against 15 December to 14 January: weeks 51 and 52 are shared, of four printed.
    found = agreement("12-01", "12-28", [window(348, 13)])
    assert found.shared_weeks == 2 and found.share_of_printed == 0.5
    assert agreement("12-01", "12-28", []) is None
