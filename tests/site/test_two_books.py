"""Two books on one host keep their copies for reading without a network apart."""

import os
import shutil
import threading
import time
from collections.abc import Callable, Iterator
from functools import partial
from http.server import ThreadingHTTPServer
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from generator.site.frame.offline import WORKER, Keeping, offline_files, preview_files
from tests.site.tabs import Quiet

PAGE = (
    '<!doctype html><html lang="en"><title>{title}</title><h1>{title}</h1>'
    "<script>navigator.serviceWorker.register('{worker}').then(() => navigator.serviceWorker.ready).then(() => document.body.setAttribute('data-ready', ''))</script>"
)


@pytest.fixture
def host(tmp_path: Path) -> Iterator[tuple[str, Path]]:
    """An address, and the folder that is served there."""
    serving = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=str(tmp_path)))
    threading.Thread(target=serving.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{serving.server_address[1]}", tmp_path
    serving.shutdown()
    serving.server_close()


def put_up(site: Path, title: str, *, preview: bool = False, age_seconds: int = 100) -> None:
    """An edition of a small book, with the worker that a build gives it. age_seconds: a server tells editions apart by whole seconds."""
    site.mkdir(exist_ok=True)
    for page in ("index.html", "page.html"):
        (site / page).write_text(PAGE.format(title=title, worker=WORKER), encoding="utf-8")
    for name, text in (preview_files() if preview else offline_files(site, Keeping())).items():
        (site / name).write_text(text, encoding="utf-8")
    for file in site.iterdir():
        os.utime(file, (time.time() - age_seconds,) * 2)


def opened(context: BrowserContext, address: str) -> Page:
    page = context.new_page()
    page.goto(address)
    page.wait_for_selector("[data-ready]", state="attached")
    return page


def until(found: Callable[[], bool]) -> None:
    deadline = time.monotonic() + 10
    while not found():
        assert time.monotonic() < deadline
        time.sleep(0.05)


def names(page: Page) -> list[str]:
    return page.evaluate("() => caches.keys()")


def test_each_of_two_books_opens_without_a_network(page: Page, host: tuple[str, Path]) -> None:
    address, folder = host
    for book in ("one", "two"):
        put_up(folder / book, f"Book {book}")
        opened(page.context, f"{address}/{book}/index.html")
    until(lambda: len(names(page.context.pages[-1])) == 2)
    put_up(folder / "two", "Book two, again", age_seconds=0)  # a new edition drops its own old one, and no other
    opened(page.context, f"{address}/two/index.html")
    last = page.context.pages[-1]
    last.evaluate("() => navigator.serviceWorker.getRegistration().then(each => each.update())")
    until(lambda: len(names(last)) == 2 and "Book two, again" in last.evaluate("async () => (await (await fetch(location.href)).text())"))
    for book in ("one", "two"):
        shutil.rmtree(folder / book)
        last.goto("about:blank")
        last.goto(f"{address}/{book}/index.html")
        expect(last.locator("h1")).to_have_text({"one": "Book one", "two": "Book two, again"}[book])


# What editions of before kept, named by a hash alone; and what another program keeps.
LEFT = {
    "swardbook-0123456789abcdef": ["one/index.html", "one/page.html"],
    "swardbook-fedcba9876543210": ["two/index.html"],
    "swardbook-00112233445566ff": ["one/index.html", "other/index.html"],
    "notes-v1": ["one/index.html"],
}
PLANT = """async ([address, left]) => {
  for (const [name, paths] of Object.entries(left)) {
    const cache = await caches.open(name);
    for (const path of paths) { await cache.put(address + '/' + path, new Response('old')); }
  }
}"""


@pytest.mark.parametrize("preview", [False, True], ids=["built", "live preview"])
def test_a_book_drops_what_is_its_own_and_nothing_else(page: Page, host: tuple[str, Path], preview: bool) -> None:
    address, folder = host
    put_up(folder / "one", "Book one", preview=preview)
    (folder / "blank.html").write_text("<!doctype html><title>t</title>", encoding="utf-8")
    page.goto(f"{address}/blank.html")
    page.evaluate(PLANT, [address, LEFT])
    script = f"{address}/one/{WORKER}"
    page.evaluate("([script, scope]) => navigator.serviceWorker.register(script, {scope}).then(() => null)", [script, f"{address}/one/"])
    until(lambda: "swardbook-0123456789abcdef" not in names(page))
    others = sorted(name for name in names(page) if "#" not in name)
    assert others == sorted(LEFT.keys() - {"swardbook-0123456789abcdef"})
    if not preview:
        until(lambda: any(f"{address}/one/#" in name for name in names(page)))
        kept = page.evaluate("async (at) => { const name = (await caches.keys()).find(each => each.includes('#')); return (await (await caches.open(name)).keys()).map(each => each.url); }", address)
        assert f"{address}/one/page.html" in kept
