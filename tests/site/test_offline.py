"""Opened from a folder with the network off, every page works and asks no other host for anything.

Each page kind is opened so, by the same reader, in test_axe.py.
"""

import random
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.site.built_pages import built_pages
from tests.site.reader import KINDS, Reader

SAMPLE = 6


def open_each(reader: Reader, paths: list[str]) -> None:
    for path in paths:
        page = reader.open(path)
        assert page.locator("h1").count() == 1, path


def sample(site: Path) -> list[str]:
    """The same pages for the same book, so that a failure can be repeated."""
    others = sorted({file.relative_to(site).as_posix() for file in site.rglob("*.html")} - {*KINDS.values(), "404.html"})
    return random.Random(2026).sample(others, SAMPLE)


def test_other_pages_open_without_a_network(reader: Callable[..., Reader], site: Path) -> None:
    open_each(reader(), sample(site))


@pytest.mark.soak
def test_every_page_opens_without_a_network(reader: Callable[..., Reader], site: Path) -> None:
    open_each(reader(), sorted(built_pages(site)))


def test_the_watch_sees_a_page_that_asks_another_host(reader: Callable[..., Reader]) -> None:
    """If this did not hold, the tests above would pass on any page."""
    window = reader()
    page = window.open("about.html")
    page.evaluate("() => { const image = new Image(); image.src = 'https://example.com/x.png'; document.body.append(image); }")
    page.wait_for_timeout(200)
    assert any("example.com" in wrong for wrong in window.wrong)
    window.wrong.clear()
