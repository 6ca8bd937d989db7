"""Windows against 98 that public bodies print: how far they agree, and that no one country, source or job carries the sum."""

import pytest

from tests.our_book import ROOT
from tests.season.published_windows import page_tables, scores, summed, table

# What leaving out one part may take away.
FIVE_POINTS = 0.05


def test_most_printed_days_are_covered_and_most_preferred_days_are_printed_ones():
    print(table())
    found = summed()
    assert found.spans >= 50
    assert found.covered >= 0.78 and found.best >= 0.76 and found.preferred >= 0.70, found
    assert found.works is not None and found.works >= 0.85


def test_the_page_of_methods_says_what_this_comes_to():
    found, said = summed(), " ".join((ROOT / "content" / "methods.md").read_text(encoding="utf-8").split())
    assert f"held against {found.spans} spans" in said
    assert f"cover {found.covered:.0%}".replace("%", " %") in said and f"{found.best:.0%}".replace("%", " %") + " of the best dates" in said


def test_the_page_of_printed_windows_shows_each_of_them_and_every_miss():
    page = (ROOT / "content" / "printed-windows.md").read_text(encoding="utf-8")
    assert page.endswith(page_tables() + "\n"), "write its tables anew with tests.season.published_windows.page_tables"


@pytest.mark.parametrize("country", ["AU", "GB"])
def test_no_country_is_left_behind(country):
    found = summed(lambda score: score.entry["country"] == country)
    assert found.covered >= 0.70 and found.preferred >= 0.60 and found.best >= 0.60, found


def test_winter_ryegrass_is_sown_when_bodies_say():
    assert summed(lambda score: score.entry["job"] == "winter_overseeding").covered >= 0.60


PARTS = sorted({(key, str(score.entry[key])) for score in scores() for key in ("country", "job")} | {
    ("organisation", score.entry["source"]["organisation"]) for score in scores()
})


@pytest.mark.parametrize(("key", "name"), PARTS, ids=[name for _, name in PARTS])
def test_no_one_part_carries_the_sum(key, name):
    """With each country, source and job left out in turn, none of the three falls by more than five points."""
    whole = summed()
    rest = summed(lambda score: str((score.entry["source"] if key == "organisation" else score.entry)[key]) != name)
    print(f"without {name}: covered {rest.covered:.0%}, preferred {rest.preferred:.0%}, best {rest.best:.0%}")
    assert min(rest.covered - whole.covered, rest.preferred - whole.preferred, rest.best - whole.best) >= -FIVE_POINTS, (rest, whole)


@pytest.mark.parametrize("score", [score for score in scores() if score.preferred is not None], ids=lambda score: score.entry["id"])
def test_a_miss_of_more_than_three_weeks_is_explained(score):
    explained = score.entry.get("explained")
    assert explained if score.off > 21 else not explained, f"{score.off:.0f} days off: {score.ours}"
