"""Two tabs of one browser on the built site, from the disk or from a server on this machine."""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, BrowserContext, Page

FULL = "() => { Storage.prototype.setItem = function () { throw new DOMException('full', 'QuotaExceededError'); }; }"
ALL_KEPT = "() => Object.fromEntries(Object.keys(localStorage).filter(each => each.startsWith('swardbook.')).map(each => [each, localStorage.getItem(each)]))"
# What nobody should ever read on a page.
NEVER_SHOWN = ("NaN", "undefined", "Infinity", "[object Object]")


class Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        """Nobody reads it."""


@contextmanager
def address_of(site: Path, scheme: str) -> Iterator[str]:
    """Where the site is read from: 'file', or 'http' on this machine."""
    if scheme == "file":
        yield site.as_uri()
        return
    serving = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=str(site)))
    threading.Thread(target=serving.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{serving.server_address[1]}"
    serving.shutdown()
    serving.server_close()


class Tabs:
    """A browser with nothing remembered; `errors` lists what a script threw in any of its tabs."""

    def __init__(self, browser: Browser, address: str, **window: Any):
        self.address = address
        self.context: BrowserContext = browser.new_context(accept_downloads=True, service_workers="block", **window)
        self.context.set_default_timeout(8000)
        self.errors: list[str] = []
        self.context.on("weberror", lambda error: self.errors.append(str(error.error)))

    def open(self, path: str, before: str = "") -> Page:
        """A new tab with the page at `path`. before: a script that runs ahead of the page's own."""
        page = self.context.new_page()
        page.on("dialog", lambda dialog: dialog.accept())
        if before:
            page.add_init_script(before)
        page.goto(f"{self.address}/{path}")
        return page

    def two(self, path: str) -> tuple[Page, Page]:
        return self.open(path), self.open(path)


# What is kept under the name that it had in an earlier edition.
KEPT_AS = {"inspection": "visit"}


def key_of(collection: str) -> str:
    """What the keys of a collection begin with on the device."""
    return f"swardbook.{KEPT_AS.get(collection, collection)}"


def kept(page: Page, collection: str) -> list[dict[str, Any]]:
    """Rows of a collection as they are kept, in order."""
    return page.evaluate("name => Swardbook.kept(name).all().map(each => each.row)", collection)


def all_kept(page: Page) -> dict[str, str]:
    return page.evaluate(ALL_KEPT)


def plant(page: Page, texts: dict[str, str]) -> None:
    page.evaluate("texts => Object.entries(texts).forEach(([key, text]) => localStorage.setItem(key, text))", texts)
