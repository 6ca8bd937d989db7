"""What search keeps of a page: headings and whole sentences; not the marks of sources, forms and lists of links."""

from generator.site.page_tree import PageTree
from generator.site.search.page_text import read

PAGE = """
<h1 id="top">Scarify</h1><p class="sb-lead">Cut out the thatch. Do it once.</p>
<h2 id="when">When</h2>
<ul><li>In 25 mm of thatch &amp; more. <span class="sb-source-marks"><span class="sb-hidden">Source: </span><a href="x">A book</a></span></li></ul>
<p>Mind: <a href="a">Moving blades</a>, <a href="b">Thrown stones</a>.</p>
<p>It is told in <a href="c">the guide</a> of each grass that takes it.</p>
<table><tr><th>Depth</th><td>25 mm</td></tr></table>
<select><option>Perth</option></select><svg><text>Jan</text><path d="M0"/></svg><button>Print<br></button>
<dl><dt>How soon <svg><path d="M0"/></svg></dt><dd>Within a week. It stays.</dd></dl>
<p>Cut out the thatch.</p>
"""


def test_headings_and_sentences_stand_in_order_and_each_once():
    reading = read(PageTree(PAGE))
    assert reading.headings == ("When",)
    assert reading.sentences == (
        "Cut out the thatch.", "Do it once.", "In 25 mm of thatch & more.", "It is told in the guide of each grass that takes it.", "Depth 25 mm",
        "How soon: Within a week.", "It stays.",
    )


def test_an_empty_page_says_nothing():
    assert read(PageTree("")) == read(PageTree("<h1>Title</h1>"))
