"""Our windows beside the calendars that public bodies print: how far they agree, and where not, why."""

from typing import Any

from generator.book.records.practice import PublishedCalendar
from generator.season.season_cache import SeasonCache
from generator.season.windows.printed_agreement import ENOUGH, agreement, day_number
from generator.site.page_context import PageContext
from generator.site.year.strips import all_dates, short_day
from generator.site.year.year_address import year_address
from generator.site.year.year_words import WINDOW_LABELS
from generator.words.reason_text import in_one, said

TEMPLATE = "printed-calendars.html.j2"


def printed_calendars(seasons: SeasonCache, here: PageContext) -> dict[str, Any]:
    """Rows of a table, one a printed calendar and grass, and the explanations of those that differ."""
    published = seasons.book.season_groups.published
    rows = [_row(seasons, each, grass, here) for each in published for grass in each.grasses]
    close = sum(1 for row in rows if row["is_close"])
    return {
        "rows": rows, "close": close, "count": len(rows), "enough": f"{ENOUGH:.0%}",
        "explained": [
            {
                "place": seasons.book.places[each.place].name, "marks": here.sourcing.marks(each),
                "grasses": " and ".join(seasons.book.grasses[id].name for id in each.grasses), "text": each.explained,
            }
            for each in published if each.explained
        ],
    }


def _row(seasons: SeasonCache, printed: PublishedCalendar, grass: str, here: PageContext) -> dict[str, Any]:
    found = seasons.season(grass, printed.place).windows[printed.window]
    shared = agreement(printed.first, printed.last, found.windows)
    return {
        "place": seasons.book.places[printed.place].name, "grass": seasons.book.grasses[grass].name,
        "url": year_address(seasons, here.links, grass, printed.place), "window": WINDOW_LABELS[printed.window],
        "says": printed.says, "note": printed.note, "marks": here.sourcing.marks(printed),
        "printed": f"{short_day(day_number(printed.first))} to {short_day(day_number(printed.last))}",
        "ours": all_dates(found) if found.why_none is None else in_one("none: ", said(found.why_none)),
        "share": f"{shared.share_of_printed:.0%}" if shared else "none", "is_close": bool(shared and shared.is_close),
    }
