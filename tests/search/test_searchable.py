"""What search reads of a page: everything but the marked parts."""

from generator.site.page_tree import PageTree
from generator.site.search.page_text import Reading, read


def reading(html: str) -> Reading:
    return read(PageTree(html))


def test_a_marked_part_goes_with_everything_inside_it():
    page = '<h1>Couch</h1><div class="a" data-search-exclude><div>May</div><br><h2 id="june">June</h2></div><p>Mow.</p>'
    assert reading(page) == Reading((), ("Mow.",))


def test_parts_of_other_kinds_and_several_of_them():
    page = '<p>a</p><details data-search-exclude><p>b</p></details><p>c</p><section data-search-exclude="">d</section>e'
    assert reading(page) == Reading((), ("a", "c", "e"))


def test_a_page_without_marks_is_read_whole():
    assert reading('<p title="data-search-exclude">a &lt; b</p>') == Reading((), ("a < b",))


def test_a_page_that_somebody_nests_without_end_is_read():
    assert reading("<b><i>" * 2000 + "deep").sentences == ("deep",)
