"""The book from a server: what was opened once can be read again without one, and what one visit keeps is small."""

import functools
import threading
import time
from collections.abc import Iterator
from http.server import ThreadingHTTPServer
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.site.hosting import CHOOSE, STORED, settled
from tests.site.tabs import Quiet

MOST_KEPT_BYTES = 6_000_000  # As it is stored, which is packed.
SHEET = "aftercare/after-renovation.html"
# The page and everything that it was made of.
KEPT = """async () => {
  const parts = [location.href.split('#')[0],
    ...[...document.querySelectorAll('script[src], img[src], link[rel=stylesheet]')].map(each => each.src || each.href)];
  return (await Promise.all(parts.map(each => caches.match(each)))).every(Boolean);
}"""


@pytest.fixture
def server(site: Path) -> Iterator[ThreadingHTTPServer]:
    serving = ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=str(site)))
    threading.Thread(target=serving.serve_forever, daemon=True).start()
    yield serving
    serving.server_close()


def test_a_sheet_opened_once_opens_again_without_a_server(server: ThreadingHTTPServer, page: Page) -> None:
    address = f"http://127.0.0.1:{server.server_address[1]}"
    page.clock.set_fixed_time("2026-10-21T09:00:00")
    page.goto(f"{address}/{SHEET}#v=1&on=2026-10-12&grass=couch")
    deadline = time.monotonic() + 20
    while not page.evaluate(KEPT):
        assert time.monotonic() < deadline, "the page was not kept"
        time.sleep(0.1)
    page.evaluate(CHOOSE, ["couch", "sydney"])
    kept = settled(page, "calendars/sydney/couch.html")
    wanted = {"index.html", "cautions/silica-dust.html", "calculators/granular-feed.html", "jobs/index.html", "renovate/couch.html"}
    assert wanted <= set(kept["pages"])
    assert 1_000_000 < sum(page.evaluate(STORED).values()) < MOST_KEPT_BYTES
    server.shutdown()
    server.server_close()
    page.goto("about:blank")
    page.goto(f"{address}/{SHEET}#v=1&on=2026-10-12&grass=couch")
    expect(page.locator("[data-part=today]")).to_contain_text("is day 9")
    assert page.evaluate("() => getComputedStyle(document.querySelector('.sb-aftercare__today')).borderTopWidth") == "2px"
