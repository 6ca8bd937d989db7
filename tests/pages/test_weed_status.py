"""Where a grass is a weed: a rule of one state is said with the state, and each is sent to whom it may ask."""

from datetime import date

import pytest

from generator.site.page_context import PageContext
from generator.site.pages.grass.view import _weed_status
from tests.our_book import book


def rows(grass: str) -> list[dict[str, str]]:
    here = PageContext(book(), f"grasses/{grass}", date(2026, 1, 1))
    return _weed_status(book(), book().grasses[grass], here)


@pytest.mark.parametrize("grass", sorted(book().grasses))
def test_what_holds_in_some_regions_only_is_said_with_them(grass: str) -> None:
    said = {row["text"]: row for row in rows(grass) if row["text"]}
    for status in book().grasses[grass].weed_status:
        row = said[status.text]
        assert all(region in row["where"] for region in status.regions) and row["where"].startswith(book().countries[status.country].name)
        if status.regions and status.ask:
            assert row["ask"] == status.ask


@pytest.mark.parametrize("grass", sorted(book().grasses))
def test_every_country_ends_with_whom_to_ask_there(grass: str) -> None:
    """Whom one state or region names is not who is asked in the whole country."""
    own = {status.ask for status in book().grasses[grass].weed_status if status.regions and status.ask}
    last = {row["where"].split(",")[0]: row for row in rows(grass)}
    assert all(row["ask"] for row in last.values())
    assert not any(row["ask"] in own for row in rows(grass) if "," not in row["where"])
