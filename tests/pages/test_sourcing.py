"""What a page says of its sources: beside a sentence, and once at its foot."""

import re

from generator.site.frame.render import render_component
from generator.site.page import Links
from generator.site.shared.sourcing import Sourcing
from tests.our_book import seasons

SOURCES = seasons().book.sources
ONE = next(iter(SOURCES))
# Two that share a short name, which a list has to tell apart.
TWINS = next(
    (first, second) for first in SOURCES for second in SOURCES if first < second and SOURCES[first].label == SOURCES[second].label
)


def foot(*asked: tuple[str, ...], for_clients: bool = False) -> str:
    """The line at the foot of a page that was asked for these sources, a sentence each; empty without one."""
    sourcing = Sourcing(SOURCES, Links("answers/x"), for_clients)
    for sources in asked:
        sourcing.marks_of(sources)
    view = sourcing.foot()
    return " ".join(re.sub(r"<[^>]+>", "", render_component("sources-foot", view)).split()) if view else ""


def test_the_trade_reads_a_mark_where_something_was_published_or_chosen_and_none_elsewhere():
    sourcing = Sourcing(SOURCES, Links("tasks/x"))
    shown = [mark["label"] for mark in sourcing.marks_of([ONE, "common practice", "assumption", "ours"])["marks"]]
    assert shown == [SOURCES[ONE].label, "assumption"]


def test_a_client_reads_none():
    assert Sourcing(SOURCES, Links("answers/x"), for_clients=True).marks_of([ONE, "assumption", "ours"])["marks"] == []


def test_the_foot_says_what_has_no_mark():
    assert foot((ONE,), ("common practice",)) == "What has no mark is common practice of the trade."
    assert foot(("common practice",)) == "What this page says is common practice of the trade."
    assert foot((ONE,), ("common practice",), ("ours",)) == "What has no mark is common practice of the trade or our own way of working."
    assert foot((ONE,)) == foot() == ""


def test_the_foot_of_a_clients_page_names_the_sources():
    label = SOURCES[ONE].label
    assert foot((ONE,), for_clients=True) == f"Sources: {label}."
    assert foot((ONE,), ("common practice",), for_clients=True) == f"Sources: {label}. The rest is common practice of the trade."
    assert foot(("ours",), for_clients=True) == "What this page says is our own way of working."
    assert foot(("common practice",), ("assumption",), for_clients=True) == (
        "What this page says is common practice of the trade. Some figures are an assumption of this book."
    )


def test_sources_of_one_name_are_told_apart_and_each_leads_to_its_own_place():
    sourcing = Sourcing(SOURCES, Links("answers/x"), for_clients=True)
    sourcing.marks_of(TWINS)
    html = render_component("sources-foot", sourcing.foot())
    label = SOURCES[TWINS[0]].label
    assert f">{label}</a>" in html and f">{label} (2)</a>" in html
    assert all(f'href="../sources.html#{each}"' in html for each in TWINS)


def test_two_marks_of_one_name_side_by_side_are_told_apart():
    shown = Sourcing(SOURCES, Links("tasks/x")).marks_of(TWINS)["marks"]
    label = SOURCES[TWINS[0]].label
    assert [mark["label"] for mark in shown] == [label, f"{label} (2)"]
    assert len({mark["url"] for mark in shown}) == 2
