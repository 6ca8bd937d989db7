"""Quick-response codes as a phone sees them: drawn by a browser, photographed, and read back by a decoder that is not ours (zxing-cpp)."""

import io
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
import zxingcpp
from PIL import Image
from playwright.sync_api import Locator, Page

from tests.site.reader import Reader
from tests.site.test_aftercare import ADDRESS, MAKER, make_link

PHONE = {"width": 360, "height": 780}


def read_back(drawn: Locator) -> list[str]:
    """Every text that the decoder finds in a picture of an element."""
    picture = Image.open(io.BytesIO(drawn.screenshot()))
    return [code.text for code in zxingcpp.read_barcodes(picture.convert("L"))]


@pytest.fixture(params=["light", "dark"])
def page(reader: Callable[..., Reader], request: pytest.FixtureRequest) -> Iterator[Page]:
    yield reader(viewport=PHONE, color_scheme=request.param).page


def test_every_printed_code_opens_its_sheet(reader: Callable[..., Reader], site: Path) -> None:
    """In the light colours and the dark ones by turns: it is one picture with one white edge for both."""
    pages = [reader(viewport=PHONE, color_scheme=scheme).page for scheme in ("light", "dark")]
    codes = sorted((site / "assets/qr").glob("*.svg"))
    assert codes
    for at, file in enumerate(codes):
        page = pages[at % 2]
        page.goto(f"{site.as_uri()}/aftercare/{file.stem}.html")
        assert read_back(page.locator(".sb-qr img")) == [f"{ADDRESS}aftercare/{file.stem}.html"], file.name


def test_a_clients_code_is_the_clients_link(page: Page, site: Path) -> None:
    page.goto(f"{site.as_uri()}/{MAKER}")
    link = make_link(page)
    assert read_back(page.locator("[data-part=code] svg")) == [link]


def test_a_link_with_every_step_ticked_still_makes_a_code_that_reads(page: Page, site: Path) -> None:
    page.goto(f"{site.as_uri()}/{MAKER}")
    make_link(page)
    for box in page.locator("label.sb-client-link__step:visible input").all():
        if not box.is_checked():
            box.locator("..").click()
    link = page.locator("[data-part=link]").inner_text()
    assert len(link) > 200
    assert read_back(page.locator("[data-part=code] svg")) == [link]


def test_the_decoder_finds_nothing_where_no_code_is(page: Page, site: Path) -> None:
    page.goto(f"{site.as_uri()}/{MAKER}")
    assert read_back(page.locator("h1")) == []
