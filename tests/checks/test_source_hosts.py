"""Which addresses a source may have: a body's own pages, and no place that only passes them on."""

import pytest

from generator.checks.texts.source_addresses import refused


@pytest.mark.parametrize("address", [
    "https://pypi.org/project/almanac/", "https://cran.r-project.org/package=almanac", "https://www.npmjs.com/package/almanac",
    "https://studylib.net/doc/1/almanac", "https://www.yumpu.com/en/document/view/1", "https://staging.almanac.org/page",
    "https://developer.almanac.org/widget", "https://almanac-test.garden.vic.gov.au/flora", "https://almanac-prod.cloud.gov.au/page", "https://almanac.dotcms.cloud/news",
    "http://countyextension.blogspot.com/2008/07/", "https://almanac.wordpress.com/", "https://github.com/almanac/almanac",
    "https://keyserver.lucidcentral.org/weeds/data/", "https://www.researchgate.net/publication/1", "https://staging.scite.ai/authors/1",
])  # fmt: skip
def test_a_place_that_only_passes_it_on_is_refused(address):
    assert refused(address)


@pytest.mark.parametrize("address", [
    "http://archive.apvma.gov.au/use_safely/directions.php", "https://doi.org/10.1071/CP15380", "https://extension.uga.edu/publications/",
    "https://soiltest.uconn.edu/factsheets/", "https://www.epa.gov/pesticides", "https://blogs.k-state.edu/turf/frost-already",
    "https://latest.example.org/page",
])  # fmt: skip
def test_a_bodys_own_page_is_not(address):
    assert refused(address) is None
