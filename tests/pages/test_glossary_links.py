"""The first use of a word of the trade leads to the glossary: once a page, in running text only, by a link that works from a disk."""

import re

import pytest

from generator.book.records.glossary import Term
from generator.site.frame.glossary_links import GlossaryLinks
from generator.site.page import Page
from generator.site.page_tree import PageTree
from generator.site.registry import PAGE_KINDS


def term(name: str, **more) -> Term:
    return Term(name=name, means="A word.", source="common practice", **more)


GLOSSED = GlossaryLinks({
    "thatch": term("Thatch"), "runner": term("Runner"), "hollow-tine": term("Hollow tine"), "tiller": term("Tiller"), "clay": term("Clay", plain_word=True),
    "scalping": term("Scalping", see={"tasks": ["cut-down"]}), "seed-head": term("Seed head"), "core": term("Core"), "coring": term("Coring"),
    "soil": term("Soil"), "soil-test": term("Soil test"),
})  # fmt: skip


def linked(html: str, path: str = "problems/moss", template: str = "problem") -> str:
    return GLOSSED.page(Page(path, "Moss", template, {}, ""), html, PageTree(html))


def words(html: str) -> list[str]:
    return re.findall(r'<a class="sb-word" href="([^"]*)">([^<]*)</a>', html)


def test_only_the_first_use_leads_on():
    page = linked("<p>Thatch holds water. Deep thatch is dry.</p><p>More thatch.</p>")
    assert page == '<p><a class="sb-word" href="../glossary.html#thatch">Thatch</a> holds water. Deep thatch is dry.</p><p>More thatch.</p>'


def test_the_address_is_relative_to_the_page():
    assert words(linked("<p>thatch</p>", "top", "task")) == [("glossary.html#thatch", "thatch")]


def test_more_than_one_of_it_and_two_words_with_or_without_a_hyphen():
    assert words(linked("<p>Runners, hollow-tines and seed heads.</p>")) == [
        ("../glossary.html#runner", "Runners"), ("../glossary.html#hollow-tine", "hollow-tines"), ("../glossary.html#seed-head", "seed heads"),
    ]


def test_the_longer_of_two_words_that_begin_alike_is_meant():
    assert words(linked("<p>A soil test tells the soil apart.</p>")) == [("../glossary.html#soil-test", "soil test"), ("../glossary.html#soil", "soil")]


def test_a_word_inside_another_is_another_word():
    assert words(linked("<p>The hardcore of a scored, runner-up distiller &core; core-shop.</p>")) == []
    assert words(linked("<p>Coring pulls a core.</p>")) == [("../glossary.html#coring", "Coring"), ("../glossary.html#core", "core")]


@pytest.mark.parametrize("html", [
    "<h2>Thatch</h2>", '<a href="x">on <b>thatch</b></a>', "<button>Thatch</button>", '<p class="sb-lead">Thatch.</p>', "<dt>Thatch</dt>",
    "<details><summary>Thatch</summary></details>", "<div data-search-exclude><div></div><p>Thatch</p></div>", '<div class="a" data-component="b"><p>Thatch</p></div>',
    '<svg><title>Thatch</title></svg>', '<img alt="Thatch" src="a.png">', '<p title="thatch">No.</p>', '<div class="sb-caution sb-caution--care"><p>Thatch</p></div>',
])  # fmt: skip
def test_what_is_no_running_text_is_left_alone(html):
    assert linked(html) == html


def test_blanks_comments_and_signs_spelled_out_keep_every_link_in_its_place():
    page = "\n<!-- thatch -->\n<table>\n <tr>\n<td>Thatch</td></tr></table>\n&nbsp;<p>It&#39;s&nbsp;</p> <pre>\n</pre>a<br>b &lt; <b>thatch &amp; more</b>"
    assert linked(page) == page.replace("<b>thatch", '<b><a class="sb-word" href="../glossary.html#thatch">thatch</a>')


def test_after_a_part_that_is_left_alone_the_next_use_leads_on():
    assert words(linked('<h2>Thatch</h2><div data-component="a"><br>thatch<p></p></div><p>Deep thatch.</p>')) == [("../glossary.html#thatch", "thatch")]


def test_an_everyday_word_leads_nowhere():
    assert words(linked("<p>Heavy clay.</p>")) == []


def test_the_page_that_explains_a_word_does_not_send_its_reader_away():
    assert words(linked("<p>Scalping.</p>", "tasks/cut-down", "task")) == []
    assert len(words(linked("<p>Scalping.</p>", "tasks/mow", "task"))) == 1


def test_only_pages_of_running_text_are_linked():
    """A plan's steps stand in the guides; calculators, calendars and lists are looked up, not read."""
    assert {kind.name for kind in PAGE_KINDS if kind.glossary} == {"task", "problem", "answer", "guide"}


def test_a_word_of_one_letter_is_a_word():
    """A book that was in order failed to build over it: there is no letter before its last."""
    terms = {"n": Term(name="y", means="One letter.", source="assumption")}
    assert GlossaryLinks(terms)
