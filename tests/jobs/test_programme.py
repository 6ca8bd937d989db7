"""A year of visits: nothing that falls due is lost, nothing is moved into harm, and no better grouping exists by the measure that is stated."""

from datetime import date, timedelta
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.book.records.practice import OPEN_SITE
from generator.jobs.planned_year import AskedYear, PlannedYear, planned_year
from generator.jobs.programme import chosen_works, programme, visit_day
from generator.jobs.programme_works import year_of_work
from generator.jobs.visit_grouping import Movable, best_visits, moved, nearest
from generator.season.task_schedule import due_weeks, weekly_quantities
from tests.our_book import book, seasons

# A short ring, so that every choice of visits can be tried.
YEAR = 12
WORKS = st.lists(st.builds(Movable, st.integers(0, YEAR - 1), st.integers(0, 4), st.integers(0, 4)), max_size=6)
PLACES = ("sydney", "canberra", "darwin", "chicago", "london-heathrow", "dubbo")


def measured(works: list[Movable], visits: tuple[int, ...]) -> tuple[int, int]:
    """How many works are left, and by how many weeks the others are moved, told of every week by itself."""
    left, weeks = 0, 0
    for work in works:
        reach = [by for by in range(-work.earlier, work.later + 1) if (work.week + by) % YEAR in visits]
        left += not reach
        weeks += min(map(abs, reach), default=0)
    return left, weeks


@settings(max_examples=150, deadline=None)
@given(WORKS, st.integers(1, 3))
def test_no_better_grouping_exists(works: list[Movable], most: int) -> None:
    for number, found in enumerate(best_visits(works, most, YEAR), 1):
        tried = [measured(works, some) for count in range(number + 1) for some in combinations(range(YEAR), count)]
        assert len(found) <= number
        assert measured(works, found) == min(tried), (works, found)
        # Each work goes where the measure says: the nearest visit in its reach.
        assert measured(works, found)[1] == sum(abs(near[1]) for work in works if (near := nearest(work, found, YEAR)))


def test_a_work_goes_over_new_year_like_over_any_other_day() -> None:
    assert moved(Movable(51, 0, 3), 1) == 2
    assert moved(Movable(1, 3, 0), 51) == -2
    assert moved(Movable(1, 1, 0), 51) is None
    assert best_visits([Movable(51, 1, 1), Movable(0, 1, 1), Movable(25, 0, 0)], 2)[1] in {(0, 25), (25, 51)}


@pytest.mark.parametrize("place", PLACES)
def test_everything_that_a_calendar_lists_is_in_a_visit_or_said_why_not(place: str) -> None:
    for id, grass in book().grasses.items():
        season = seasons().season(id, place)
        quantities = weekly_quantities(season)
        listed = {
            (task, rule, each.week - 1) for task, record in book().tasks.items() if (taken := grass.operations.get(task)) is None or taken.level != "none"
            for rule, due in enumerate(record.due) for each in due_weeks(due, quantities)
        }
        year = year_of_work(book(), grass, season)
        told = {(each.task, each.rule, week) for each in year.routine for week in each.weeks} | {(each.task, each.rule, each.week) for each in year.shed}
        told |= {each for each in listed if each[0] in year.renovation and each[2] == year.renovation_week}
        told |= {(each.task, each.rule, each.week) for each in year.works}
        assert told == listed, (id, place)
        every = {each.task for each in year.works}
        for visits in (1, 4, 12):
            found = programme(chosen_works(book(), year, chosen=every), visits)
            placed = [one.work for each in found.visits for one in each.placed]
            assert sorted([*placed, *found.own], key=repr) == sorted(year.works, key=repr)
            assert len(found.visits) <= visits


@pytest.mark.parametrize("place", PLACES)
def test_nothing_is_moved_into_harm(place: str) -> None:
    """Never to where `not_when` forbids it, out of a window, or within three quarters of the weeks that its rule wants between; lime and feed
    are kept apart (Penn State Extension: leave some weeks between lime and nitrogen)."""
    for id, grass in book().grasses.items():
        season = seasons().season(id, place)
        quantities = weekly_quantities(season)
        year = year_of_work(book(), grass, season)
        found = programme(chosen_works(book(), year, chosen={each.task for each in year.works}), 3)
        stood: dict[tuple[str, int], list[int]] = {}
        for visit in found.visits:
            for one in visit.placed:
                due = book().tasks[one.work.task].due[one.work.rule]
                stood.setdefault((one.work.task, one.work.rule), []).append(visit.week)
                assert visit.week == (one.work.week + one.moved_weeks) % 52
                for name in ("light_renovation", "oversowing", "pre_emergent"):
                    if f"{name}_window" in due.do_when:
                        assert quantities[visit.week][f"{name}_window"], (id, place, one)
                if one.work.task == "feed" and grass.season_group == "warm":
                    assert not quantities[visit.week]["wet"]
            if {"lime", "feed"} <= set(visit.tasks):
                assert all(one.moved_weeks == 0 for one in visit.placed if one.work.task in {"lime", "feed"})
        for (task, rule), weeks in stood.items():
            between = book().tasks[task].due[rule].every_weeks
            if len(weeks) > 1:
                gaps = [(after - before) % 52 for before, after in zip(weeks, (*weeks[1:], weeks[0]), strict=True)]
                assert min(gaps) >= between * 3 / 4, (id, place, task, weeks)


def planned(grass: str, place: str, visits: int = 6, **more: object) -> PlannedYear:
    return planned_year(seasons(), AskedYear(grass, place, 240.0, visits, date(2026, 12, 1), OPEN_SITE, **more))  # type: ignore[arg-type]


def test_dates_follow_the_seasons_of_both_hemispheres() -> None:
    """Feeding a warm-season lawn is summer work: about the turn of the year at Sydney, in the middle of it at Dallas."""
    south, north = ({each.day.month for each in planned("couch", place).visits if "feed" in each.tasks} for place in ("sydney", "dallas"))
    assert south <= {10, 11, 12, 1, 2, 3}
    assert north <= {4, 5, 6, 7, 8, 9}
    assert {each.season for each in planned("couch", "sydney").visits if each.day.month == 12} == {"Summer"}
    assert {each.season for each in planned("couch", "dallas").visits if each.day.month in {6, 7, 8}} <= {"Summer"}
    assert {each.season for each in planned("couch", "darwin").visits} <= {"Wet season", "Drier months"}
    days = [each.day for each in planned("couch", "sydney").visits]
    assert days == sorted(days)
    assert days[0] >= date(2026, 12, 1)
    assert days[-1] < date(2027, 12, 4)


@given(st.integers(0, 51), st.dates(date(2023, 1, 1), date(2033, 12, 31)))
def test_a_visit_is_on_a_working_day_of_its_week(week: int, start: date) -> None:
    day = visit_day(week, start)
    assert start <= day <= start + timedelta(368)
    assert day.weekday() < 5
    first = visit_day(week, date(start.year + 1, 1, 1))
    assert (first - date(start.year + 1, 1, 1)).days // 7 in {week, week + 1}


def test_sums_agree_to_the_cent() -> None:
    """What the visits come to is what the year comes to, tax and all; a bag for the year is paid once, however many feeds it is in."""
    for grass, place in (("couch", "sydney"), ("kikuyu", "canberra"), ("tall-fescue", "canberra")):
        for area in (37.0, 240.0, 1333.3):
            found = planned_year(seasons(), AskedYear(grass, place, area, 8, date(2026, 12, 1), chosen=("wetting-agent", "lime"), mowing=True))
            price = found.price
            assert price is not None and price.cut is not None
            for name in ("before_tax", "tax", "total"):
                assert getattr(price, name) == sum(getattr(each.price, name) for each in found.visits) + found.cuts * getattr(price.cut, name)
            assert price.total == price.before_tax + price.tax
            feed = next(each for each in price.shopping if each.product == book().practice.feed)
            lines = [line.amount for each in price.visits for line in each.lines if line.kind == "product" and line.name == feed.name]
            assert round(sum(lines) * 100) == round((feed.cost or 0) * 100)
            assert len(lines) == sum("feed" in each.tasks for each in found.visits)


def test_a_visit_of_one_feed_by_hand() -> None:
    """240 m2 of couch at Sydney: feeding costs 12 for 100 m2 but at least 40; three feeds share one bag of 74; a trip costs at least 95; 10 % tax.
    So a visit is 95.00 and 9.50 of tax, and takes 10 minutes of setting up and 240 m2 / (2 m x 4 km/h x 60 %) = 3 minutes."""
    visit = next(each for each in planned("couch", "sydney").visits if each.tasks == ("feed",))
    assert visit.price is not None
    assert (visit.price.before_tax, visit.price.tax, visit.price.total) == (9500, 950, 10450)
    assert visit.price.minutes == pytest.approx(13.0)
    assert visit.price.lines[0].amount == 40.0


def test_what_is_done_only_where_needed_is_in_it_when_it_is_chosen() -> None:
    assert not any("lime" in each.tasks for each in planned("couch", "sydney").visits)
    assert any("lime" in each.tasks for each in planned("couch", "sydney", chosen=("lime",)).visits)
    assert not any("feed" in each.tasks for each in planned("couch", "sydney", without=("feed",)).visits)
