"""The weeks as a spreadsheet reads them (RFC 4180)."""

import csv
from io import StringIO

import pytest

from generator.book.attribution import place_attribution
from generator.site.year.year_files import weeks_path
from tests.our_book import seasons
from tests.pages.shipped_book import files, pairs


def rows(grass: str, place: str) -> list[dict[str, str]]:
    text = files()[weeks_path(grass, place)]
    assert isinstance(text, str)
    return list(csv.DictReader(StringIO(text, newline="")))


@pytest.mark.parametrize("place", seasons().calendar_places)
def test_each_file_has_52_weeks_and_thanks_in_its_last_column(place):
    thanks = "; ".join(place_attribution(seasons().book, place))
    for grass in seasons().book.grasses:
        weeks = rows(grass, place)
        assert [week["week"] for week in weeks] == [str(number) for number in range(1, 53)]
        assert all(list(week)[-1] == "attribution" and week["attribution"] == thanks for week in weeks)
        assert all(None not in week and None not in week.values() for week in weeks)


def test_lines_end_with_cr_lf():
    assert all(text.count("\n") == text.count("\r\n") == 53 for name, text in files().items() if name.endswith(".csv"))


def test_the_figures_are_the_engines():
    season = seasons().season("couch", "canberra")
    for week, row in zip(season.weeks, rows("couch", "canberra"), strict=True):
        assert float(row["mean_temperature_c"]) == pytest.approx(week.mean_temperature_c, abs=0.05)
        assert float(row["growth_potential"]) == pytest.approx(week.growth_potential, abs=0.0005)
        assert float(row["water_need_mm"]) == pytest.approx(week.water_need_mm, abs=0.05)
        assert row["windows"].split() == list(week.in_windows)


def test_whole_degrees_stay_whole():
    """A temperature must not claim more than was published."""
    for grass, place in pairs():
        whole = seasons().book.places[place].normals.temperature_step_c >= 1
        for row in rows(grass, place):
            assert ("." not in row["mean_temperature_c"]) == whole, place
