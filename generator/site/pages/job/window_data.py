"""The windows of a lawn as the planner reads them: their days, and what is said of a day inside, before or after, roughly and with all numbers."""

from collections.abc import Callable
from typing import Any

from generator.jobs.window_answer import Stretch, no_window, outside
from generator.season.calendar_days import month_and_day
from generator.season.reasons import Reason, Several
from generator.words.reason_text import Text, said, said_exactly


def window_data(found: tuple[Stretch, ...], why_none: Reason | None) -> dict[str, Any]:
    """before, after: what is said of a day outside, where {days} stands for how many it is out. exactly: with all numbers, where these say more."""
    none = no_window(why_none) if why_none else None
    return {"none": none and said(none), "none_exactly": none and said_exactly(none), "stretches": [
        {
            "first": each.first, "last": each.last, "from": month_and_day(each.first), "to": month_and_day(each.last),
            "best": None if each.best is None else month_and_day(each.best), **_whys(each, said), "exactly": _whys(each, said_exactly),
        }
        for each in found
    ]}


def _whys(each: Stretch, told: Callable[[Reason | Several], Text]) -> dict[str, Text]:
    whys = {"why": each.why, "before": outside("{days}", "before", each), "after": outside("{days}", "after", each)}
    return {name: words for name, why in whys.items() if (words := told(why))}
