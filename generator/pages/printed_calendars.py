"""Our windows beside the calendars that public bodies print: how far they agree, and where not, why."""

from typing import Any

from generator.model.practice import PublishedCalendar
from generator.pages.almanac import Almanac
from generator.pages.desk import Desk
from generator.pages.strips import all_dates, short_day
from generator.pages.year_words import WINDOW_LABELS
from generator.turf.agreement import ENOUGH, agreement, day_number

TEMPLATE = "printed-calendars.html.j2"


def printed_calendars(almanac: Almanac, desk: Desk) -> dict[str, Any]:
    """Rows of a table, one a printed calendar and grass, and the explanations of those that differ."""
    published = almanac.book.season_groups.published
    rows = [_row(almanac, each, grass, desk) for each in published for grass in each.grasses]
    close = sum(1 for row in rows if row["is_close"])
    return {
        "rows": rows, "close": close, "count": len(rows), "enough": f"{ENOUGH:.0%}",
        "explained": [
            {
                "place": almanac.book.places[each.place].name, "marks": desk.sourcing.marks(each),
                "grasses": " and ".join(almanac.book.grasses[id].name for id in each.grasses), "text": each.explained,
            }
            for each in published if each.explained
        ],
    }


def _row(almanac: Almanac, printed: PublishedCalendar, grass: str, desk: Desk) -> dict[str, Any]:
    found = almanac.season(grass, printed.place).windows[printed.window]
    shared = agreement(printed.first, printed.last, found.windows)
    return {
        "place": almanac.book.places[printed.place].name, "grass": almanac.book.grasses[grass].name,
        "url": almanac.year_address(desk.links, grass, printed.place), "window": WINDOW_LABELS[printed.window],
        "says": printed.says, "note": printed.note, "marks": desk.sourcing.marks(printed),
        "printed": f"{short_day(day_number(printed.first))} to {short_day(day_number(printed.last))}",
        "ours": all_dates(found) or f"none: {found.why_none}",
        "share": f"{shared.share_of_printed:.0%}" if shared else "none", "is_close": bool(shared and shared.is_close),
    }
