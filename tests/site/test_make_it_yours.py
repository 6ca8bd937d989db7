"""A book of another practice shows that practice and no other: its name, colour, logo, address and units, wherever the book is hosted."""

import functools
import json
import re
import shutil
import threading
from collections.abc import Iterator
from http.server import ThreadingHTTPServer
from pathlib import Path
from urllib.parse import urljoin

import pytest
from click.testing import CliRunner
from playwright.sync_api import Browser, Page, expect

from generator.book.contrast import contrast
from generator.cli import main
from tests import our_book
from tests.book_folders import SMALLEST, WHOLE, edit
from tests.site.tabs import Quiet
from tests.site.test_axe import READ_IN

NAME, TITLE, PATH = "Kestrel Flat Lawns", "Kestrel Flat Lawns practice book", "/lawns/"
COLOUR, ADDRESS = "#24527a", f"https://kestrelflat.example{PATH}"
DESCRIPTION = "What we do on your lawn, and when."
LOGO = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 40"><rect width="120" height="40" rx="6" fill="#24527a"/>'
    '<path d="M10 30L30 10l20 20" stroke="#fff" stroke-width="4" fill="none"/></svg>'
)
OURS = f"""name: {NAME}
colour: "{COLOUR}"
logo: logo.svg
description: {DESCRIPTION}
units: us
public_address: {ADDRESS}
telephone: 02 7010 4321
email: ask@kestrelflat.example
invented: false
"""
HTML_PAGES = ("index.html", "about.html", "aftercare/after-sweeping.html", "grasses/plaingrass.html", "404.html")
CONTRASTS = "async () => (await axe.run(document, {runOnly: ['color-contrast'], preload: false})).violations.flatMap(each => each.nodes.map(node => node.html))"
COMPUTED = """selector => { const style = getComputedStyle(document.querySelector(selector)); return [style.color, style.backgroundColor]; }"""


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("yours") / "book"
    shutil.copytree(WHOLE, folder)
    edit(folder / "data/practice.yml", {
        "name: Whole Lawns\ninvented: true\nabout: An invented practice, in an invented town, for tests.\n": f"{OURS}about: Two people and a mower.\n",
    })  # fmt: skip
    edit(folder / "mkdocs.yml", {"Whole Lawns practice book": TITLE})
    (folder / "logo.svg").write_text(LOGO, encoding="utf-8")
    about = (our_book.ROOT / "content/about.md").read_text(encoding="utf-8")
    (folder / "content/about.md").write_text(about.replace("[Methods](methods.md)", "Methods"), encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def yours(book: Path) -> Path:
    """The site of that book, in a folder of the name that its address ends with."""
    site = book.parent / "host" / PATH.strip("/")
    run = CliRunner().invoke(main, ["build", "--book", str(book), "--to", str(site)])
    assert run.exit_code == 0, run.output
    return site


@pytest.fixture(scope="module")
def host(yours: Path) -> Iterator[str]:
    """A server with the site below its root; a lost address gets the site's own page for it."""

    class Host(Quiet):
        def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
            text = (yours / "404.html").read_bytes()
            self.send_response(code)
            self.send_header("Content-Type", "text/html; charset=utf-8")
            self.send_header("Content-Length", str(len(text)))
            self.end_headers()
            self.wfile.write(text)

    serving = ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Host, directory=str(yours.parent)))
    threading.Thread(target=serving.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{serving.server_address[1]}"
    serving.shutdown()
    serving.server_close()


@pytest.fixture(scope="module")
def window(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(viewport={"width": 1280, "height": 900}, service_workers="block")
    yield context.new_page()
    context.close()


def head(site: Path, page: str) -> dict[str, str]:
    """What the head of a page says: name or property of each meta element, rel of each link, and its title."""
    text = (site / page).read_text(encoding="utf-8").partition("</head>")[0]
    said = {name + media: content for name, media, content in re.findall(r'<meta (?:name|property)="([^"]+)"( media="[^"]+")? content="([^"]*)"', text)}
    return {**said, **dict(re.findall(r'<link rel="([^"]+)" href="([^"]*)"', text)), "title": re.findall(r"<title>([^<]*)</title>", text)[0]}


def test_no_file_of_the_site_holds_a_word_of_the_invented_practice(yours: Path) -> None:
    demo = our_book.book().practice
    host = re.findall(r"//([^/]+)", str(demo.public_address))[0]
    words = [demo.name, demo.title, " ".join(demo.name.split()[:2]), host, host.split(".")[0], demo.telephone, demo.email, *demo.invoice.address,
             demo.invoice.registration, "Whole Lawns"]  # fmt: skip
    wanted = re.compile("|".join(re.escape(str(each)) for each in words).encode(), re.IGNORECASE)
    files = [file for file in yours.rglob("*") if file.is_file()]
    assert len(files) > 100
    assert not [f"{file.relative_to(yours)}: {found[0].decode()}" for file in files if (found := wanted.search(file.read_bytes()))]


@pytest.mark.parametrize("page", HTML_PAGES)
def test_each_page_names_the_practice_to_browsers_and_link_previews(yours: Path, page: str) -> None:
    said = head(yours, page)
    assert said["title"].endswith(TITLE) and said["og:site_name"] == TITLE and said["og:type"] == "website" and said["og:locale"] == "en_AU"
    assert said["og:title"] and said["og:description"] == said["description"]
    assert said['theme-color media="(prefers-color-scheme: light)"'] == COLOUR and 'theme-color media="(prefers-color-scheme: dark)"' in said
    assert urljoin(ADDRESS + page if page != "404.html" else ADDRESS, said["manifest"]) == f"{ADDRESS}manifest.webmanifest"
    assert said["icon"].endswith("assets/logo.svg")
    address = None if page == "404.html" else ADDRESS + page
    assert (said.get("canonical"), said.get("og:url")) == (address, address)


def test_the_first_page_is_called_as_the_book_is_once(yours: Path) -> None:
    said = head(yours, "index.html")
    assert (said["title"], said["og:title"], said["description"]) == (TITLE, TITLE, DESCRIPTION)


def test_the_list_for_search_engines_has_each_page_under_the_address(yours: Path) -> None:
    listed = re.findall(r"<loc>([^<]*)</loc>", (yours / "sitemap.xml").read_text(encoding="utf-8"))
    pages = {page.relative_to(yours).as_posix() for page in yours.rglob("*.html")} - {"404.html"}
    assert sorted(listed) == sorted(ADDRESS + page for page in pages)


def test_the_manifest_names_the_practice_and_its_icon_is_there(yours: Path) -> None:
    manifest = json.loads((yours / "manifest.webmanifest").read_text(encoding="utf-8"))
    assert (manifest["name"], manifest["short_name"], manifest["description"]) == (TITLE, "Kestrel Flat", DESCRIPTION)
    assert (manifest["theme_color"], manifest["lang"], manifest["scope"]) == (COLOUR, "en-AU", ".")
    assert (yours / manifest["start_url"]).is_file() and all((yours / each["src"]).is_file() for each in manifest["icons"])
    assert {each["purpose"] for each in manifest["icons"]} == {"any", "maskable"}


def test_the_public_data_and_the_page_about_the_book_are_the_practices(yours: Path) -> None:
    assert json.loads((yours / "book/book.json").read_text(encoding="utf-8"))["practice"] == NAME
    about = (yours / "about.html").read_text(encoding="utf-8").partition("<article")[2]
    for wanted in (NAME, "Two people and a mower.", "tel:0270104321", "ask@kestrelflat.example"):
        assert wanted in about
    assert "invented" not in about.partition("</article>")[0]


def test_a_lost_address_below_the_books_own_is_answered_in_full(host: str, window: Page) -> None:
    failed: list[str] = []
    window.on("requestfailed", lambda request: failed.append(request.url))
    window.on("response", lambda response: failed.append(response.url) if response.status >= 400 else None)
    lost = f"{host}{PATH}grasses/deeper/no-such-page.html"
    window.goto(lost, wait_until="load")
    assert failed == [lost]
    expect(window.locator("h1")).to_have_text("No such page")
    expect(window.locator(".sb-lead")).to_contain_text(NAME)
    assert window.locator(".sb-logo").first.evaluate("each => each.naturalWidth > 0")
    window.get_by_role("link", name="Go to the first page").click()
    expect(window.locator("h1")).to_have_text(NAME)
    assert window.url == f"{host}{PATH}index.html"


def test_pages_open_in_the_units_of_the_practice_until_a_reader_chooses(host: str, window: Page) -> None:
    window.goto(f"{host}{PATH}index.html", wait_until="load")
    assert window.locator("html").get_attribute("data-units") == "us"
    window.locator(".md-header [data-units-choice=metric]").click()
    window.reload(wait_until="load")
    assert window.locator("html").get_attribute("data-units") == "metric"


def rgb(colour: str) -> str:
    """'rgb(36, 82, 122)' -> '#24527a'."""
    return "#" + "".join(f"{int(part):02x}" for part in re.findall(r"\d+", colour)[:3])


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_links_buttons_and_texts_can_be_read_in_the_colour(yours: Path, browser: Browser, scheme: str) -> None:
    context = browser.new_context(viewport={"width": 1280, "height": 900}, color_scheme=scheme)
    page = context.new_page()
    for path in ("grasses/plaingrass.html", "aftercare/after-sweeping.html"):
        page.goto(f"{yours.as_uri()}/{path}", wait_until="load")
        page.evaluate(READ_IN)
        assert page.evaluate(CONTRASTS) == []
        link, _ = page.evaluate(COMPUTED, ".md-content a[href]:not(.sb-button)")
        chosen, ground = page.evaluate(COMPUTED, ".sb-units-switch__choice[aria-pressed=true]")
        assert rgb(ground) == rgb(link) and contrast(rgb(chosen), rgb(ground)) >= 4.5
        assert (rgb(link) == COLOUR) is (scheme == "light")
    context.close()


def test_what_is_printed_for_a_client_bears_the_logo(yours: Path, window: Page) -> None:
    window.goto(f"{yours.as_uri()}/aftercare/after-sweeping.html", wait_until="load")
    logo = window.locator(".sb-letterhead img")
    expect(logo).to_be_hidden()
    window.emulate_media(media="print")
    expect(logo).to_be_visible()
    box = logo.bounding_box()
    assert box and box["width"] / box["height"] == pytest.approx(3, rel=0.05)
    window.emulate_media(media="screen")
    assert "sb-letterhead" in (yours / "jobs/index.html").read_text(encoding="utf-8")


def test_a_book_without_an_address_has_no_canonical_links_and_no_list_and_says_so(tmp_path: Path) -> None:
    book, site = tmp_path / "book", tmp_path / "site"
    shutil.copytree(SMALLEST, book)
    edit(book / "data/practice.yml", {"invented: true": "invented: false"})
    told = CliRunner().invoke(main, ["check", "--book", str(book)])
    assert told.exit_code == 0 and "data/practice.yml:1:1: note: no `public_address`" in told.stdout
    run = CliRunner().invoke(main, ["build", "--book", str(book), "--to", str(site)])
    assert run.exit_code == 0, run.output
    assert not list(site.glob("sitemap*"))
    said = head(site, "index.html")
    assert "canonical" not in said and "og:url" not in said and said["og:title"] == "Least Lawns practice book"
