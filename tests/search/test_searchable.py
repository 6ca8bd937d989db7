"""What search reads of a page: everything but the marked parts."""

from generator.site.search.searchable import searchable


def test_a_marked_part_goes_with_everything_inside_it():
    page = '<h1>Couch</h1><div class="a" data-search-exclude><div>May</div><br><h2 id="june">June</h2></div><p>Mow.</p>'
    assert searchable(page) == "<h1>Couch</h1><p>Mow.</p>"


def test_parts_of_other_kinds_and_several_of_them():
    page = '<p>a</p><details data-search-exclude><p>b</p></details><p>c</p><section data-search-exclude="">d</section>e'
    assert searchable(page) == "<p>a</p><p>c</p>e"


def test_a_page_without_marks_stays_as_it_is():
    page = '<p title="data-search-exclude">a &lt; b</p>'
    assert searchable(page) == page
