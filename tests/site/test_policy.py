"""Each page says what it may load and run, and by that policy, sent by a server too, and with nothing kept, the whole book works."""

import functools
import threading
from collections.abc import Callable, Iterator
from html.parser import HTMLParser
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, Page, expect

from generator.site.frame.policy import HEADERS_FILE, page_policy
from tests import our_book
from tests.site.reader import KINDS, TELL_REFUSED, Reader

# Some browsers look for the letters of a page no further than this.
WHERE_LETTERS_ARE_TOLD = 1024
REFUSING = """for (const name of ['localStorage', 'sessionStorage']) {
  Object.defineProperty(window, name, { get() { throw new DOMException('refused', 'SecurityError'); } });
}"""


class Policies(HTMLParser):
    """The policies of a page, and how many scripts and styles were asked for before the first of them."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.policies: list[str] = []
        self.before = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if given.get("http-equiv") == "Content-Security-Policy":
            self.policies.append(given.get("content") or "")
        elif tag in ("script", "link") and not self.policies:
            self.before += 1


def test_every_page_says_its_policy_before_it_asks_for_anything(site: Path) -> None:
    for page in sorted(site.rglob("*.html")):
        text = page.read_text(encoding="utf-8")
        reader = Policies()
        reader.feed(text[: text.index("</head>")])
        assert (reader.policies, reader.before) == ([page_policy()], 0), page
        assert "charset=" in text[:WHERE_LETTERS_ARE_TOLD], page


def test_the_policy_lets_nothing_in_that_is_written_into_a_page() -> None:
    assert "unsafe" not in page_policy() and "*" not in page_policy() and "http" not in page_policy()
    assert "script-src 'self' file:" in page_policy()


def test_a_live_preview_may_run_what_shows_a_change_and_nothing_else_is_looser() -> None:
    assert page_policy(previewing=True).replace(" 'unsafe-inline'", "", 1) == page_policy()


def header_lines(site: Path) -> dict[str, str]:
    lines = (site / HEADERS_FILE).read_text(encoding="utf-8").splitlines()
    return dict(line.split(": ", 1) for line in lines)


def test_the_headers_hold_the_policy_of_the_pages_and_what_only_they_can_say(site: Path) -> None:
    lines = header_lines(site)
    assert lines["Content-Security-Policy"] == f"{page_policy()}; frame-ancestors 'none'"
    assert lines["X-Content-Type-Options"] == "nosniff"
    assert {"Referrer-Policy", "Permissions-Policy", "Cross-Origin-Opener-Policy"} <= set(lines)


@pytest.fixture
def address(site: Path) -> Iterator[str]:
    """A server that sends the header lines of the book with every file, at its root and at the path of its address, by which the page of a
    lost address goes."""
    lines, path = header_lines(site), urlsplit(str(our_book.book().practice.public_address)).path

    class Strict(SimpleHTTPRequestHandler):
        def translate_path(self, asked: str) -> str:
            return super().translate_path("/" + asked.removeprefix(path).lstrip("/"))

        def end_headers(self) -> None:
            for name, value in lines.items():
                self.send_header(name, value)
            super().end_headers()

        def log_message(self, format: str, *args: object) -> None:
            """Nobody reads it."""

    serving = ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Strict, directory=str(site)))
    threading.Thread(target=serving.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{serving.server_address[1]}"
    serving.shutdown()
    serving.server_close()


@pytest.fixture
def hosted(browser: Browser) -> Iterator[Callable[..., Page]]:
    """Make a page of a hosted book, with storage or without; at the end none of them may have met an error."""
    made: list[tuple[Page, list[str]]] = []

    def make(storage: bool = True, **window: object) -> Page:
        context, wrong = browser.new_context(**window), []
        context.on("weberror", lambda error: wrong.append(f"script error: {error.error}"))
        context.on("console", lambda message: wrong.append(f"{message.text} on {page.url}") if message.type == "error" else None)
        context.add_init_script(TELL_REFUSED)
        if not storage:
            context.add_init_script(REFUSING)
        page = context.new_page()
        made.append((page, wrong))
        return page

    yield make
    for page, _ in made:
        page.context.close()
    assert not [each for _, wrong in made for each in wrong]


# Every third kind; the long run takes them all, and test_axe.py each kind under the policy of the page itself.
@pytest.mark.parametrize("step", [5, pytest.param(1, marks=pytest.mark.soak)])
def test_kinds_of_page_work_hosted_by_the_strict_headers_and_without_storage(address: str, hosted: Callable[..., Page], step: int) -> None:
    page = hosted(storage=False)
    for path in [*KINDS.values(), "404.html"][::step]:
        page.goto(f"{address}/{path}", wait_until="load")
        assert page.locator("h1").count() == 1, path
        expect(page.locator(".sb-units-switch").first).to_be_visible()


def test_light_and_units_switch_on_a_page_that_may_keep_nothing(reader: Callable[..., Reader]) -> None:
    window = reader(color_scheme="light")
    window.context.add_init_script(REFUSING)
    page = window.open("tasks/scarify.html")
    page.locator("header").get_by_title("Dark pages").click()
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")
    page.get_by_role("button", name="US").first.click()
    expect(page.locator("html")).to_have_attribute("data-units", "us")


def test_dark_pages_stay_dark_from_page_to_page_and_open_dark(address: str, hosted: Callable[..., Page]) -> None:
    page = hosted(color_scheme="light")
    page.goto(f"{address}/tasks/scarify.html", wait_until="load")
    page.locator("header").get_by_title("Dark pages").click()
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")
    # The theme's own script comes last of all: what is dark without it was dark before anything was drawn.
    page.route("**/bundle.*.js", lambda route: route.fulfill(body="", content_type="text/javascript"))
    page.goto(f"{address}/grasses/kikuyu.html", wait_until="load")
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")
    assert page.evaluate("() => navigator.serviceWorker.ready.then(found => Boolean(found.active))"), "pages are kept under the same headers"


@pytest.mark.parametrize("kept", ['{"index": "x"}', "[1]", "null", "{", '{"index": 99, "color": {"onload": "x"}}'])
def test_a_damaged_memory_of_light_and_dark_breaks_no_page(reader: Callable[..., Reader], kept: str) -> None:
    window = reader(color_scheme="dark")
    page = window.open("about.html")
    page.evaluate("kept => localStorage.setItem(__md_scope.pathname + '.__palette', kept)", kept)
    page.reload(wait_until="load")
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")


def test_the_watch_sees_what_a_policy_refuses(reader: Callable[..., Reader]) -> None:
    """If this did not hold, no test that opens pages would notice."""
    window = reader()
    page = window.open("about.html")
    page.evaluate("""() => {
      const script = document.createElement('script');
      script.textContent = 'window.ran = true';
      document.body.append(script);
      document.body.setAttribute('style', 'color: red');
    }""")
    page.wait_for_timeout(200)
    assert any("script-src" in wrong for wrong in window.wrong) and any("style-src" in wrong for wrong in window.wrong)
    assert page.evaluate("() => window.ran") is None
    window.wrong.clear()


NO_CLIPBOARD = "navigator.clipboard.writeText = () => Promise.reject(new DOMException('refused', 'NotAllowedError'));"


@pytest.mark.parametrize(("path", "button", "marked"), [
    ("aftercare/maker.html", "[data-part=copy-link]", "aftercare/"),
    ("aftercare/maker.html", "[data-part=copy-message]", "aftercare/"),
    ("inspection.html", "[data-component~=inspection-estimate] [data-part=copy]", "Minimum charge"),
])
def test_a_refused_clipboard_leaves_the_text_marked(reader: Callable[..., Reader], path: str, button: str, marked: str) -> None:
    window = reader()
    window.context.add_init_script(NO_CLIPBOARD)
    page = window.open(path)
    page.locator(button).click()
    page.wait_for_function("marked => getSelection().toString().includes(marked)", arg=marked)
