"""A hosted book after one visit: what opens with the server down, all of it at a button, and what happens when a new edition is up."""

import json
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner
from playwright.sync_api import Browser, Page, expect

from generator.cli import main
from tests.book_folders import WHOLE, edit
from tests.site.hosting import CHOOSE, STORED, Hosted, settled

SHEET = "aftercare/after-sweeping.html#v=1&on=2026-10-12&grass=plaingrass"
CAUTION = "cautions/sore-back.html"
BEFORE, CORRECTED = "Take a longer broom.", "Take a lighter broom, and change hands."
AND_THESE = ("calculators/index.html", "renovate/plaingrass.html", "calendars/flatfield/plaingrass.html", "jobs/index.html")
SCREEN = {"width": 360, "height": 800}


@pytest.fixture(scope="module")
def editions(tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    """Two editions of a small book: the second corrects a caution."""
    folder = tmp_path_factory.mktemp("editions")
    shutil.copytree(WHOLE, folder / "book")
    for name in ("one", "two"):
        if name == "two":
            edit(folder / "book/data/cautions/sore-back.yml", {BEFORE: CORRECTED})
        run = CliRunner().invoke(main, ["build", "--book", str(folder / "book"), "--to", str(folder / name)])
        assert run.exit_code == 0, run.output
    return [folder / "one", folder / "two"]


@pytest.fixture
def hosted(editions: list[Path]) -> Iterator[Hosted]:
    made = Hosted(editions[0])
    yield made
    made.stop()


@pytest.fixture
def phone(browser: Browser, hosted: Hosted) -> Iterator[Page]:
    """A telephone that paid one visit, by a client's link, and chose a grass and a place there."""
    context = browser.new_context(viewport=SCREEN)
    context.set_default_timeout(8000)
    errors: list[str] = []
    context.on("weberror", lambda error: errors.append(str(error.error)))
    page = context.new_page()
    page.goto(hosted.address + SHEET)
    page.evaluate(CHOOSE, ["plaingrass", "flatfield"])
    settled(page, "calendars/flatfield/plaingrass.html")
    yield page
    context.close()
    assert not errors


def test_after_one_visit_these_open_with_the_server_down(phone: Page, hosted: Hosted) -> None:
    hosted.stop()
    for path in ("", "index.html", "cautions/index.html", CAUTION, *AND_THESE):
        phone.goto("about:blank")
        phone.goto(hosted.address + path)
        assert phone.url == hosted.address + path
        assert phone.evaluate("() => getComputedStyle(document.body).getPropertyValue('--sb-ink') && Boolean(Swardbook.lawns)"), path
    phone.goto(hosted.address + SHEET)
    expect(phone.locator("[data-part=today]")).to_contain_text("Plaingrass is kept at 20 to 30 mm")
    phone.goto(hosted.address + "calculators/sweeping.html")
    phone.locator(".md-content input[type=text]").first.fill("30")
    expect(phone.locator(".md-content output").first).not_to_be_empty()
    phone.keyboard.press("Escape")
    phone.locator("header label[for=__search]").first.click()
    phone.locator("[data-component=search] input").fill("sore back")
    expect(phone.locator("[data-component=search] ol a").first).to_contain_text("Sore back")
    phone.goto("about:blank")
    phone.goto(hosted.address.rstrip("/"))
    assert phone.url == hosted.address


def test_a_page_that_is_not_kept_is_named_and_opens_once_there_is_a_signal(phone: Page, hosted: Hosted) -> None:
    hosted.stop()
    phone.goto(hosted.address + "tasks/sweep.html#steps")
    expect(phone.locator("h1")).to_have_text("This page is not kept on this device")
    expect(phone.locator("[data-part=asked]")).to_contain_text("You asked for Tasks: Sweep.")
    expect(phone.locator("[data-part=kept]")).to_contain_text("The year of Plaingrass at Flatfield")
    hosted.start()
    phone.get_by_role("link", name="Try again").click()
    expect(phone.locator("h1")).to_have_text("Sweep")
    assert phone.url == hosted.address + "tasks/sweep.html#steps"
    phone.goto(hosted.address + "tasks/no-such-task.html")
    expect(phone.locator("h1")).to_have_text("No such page")


def test_the_whole_book_is_kept_at_a_button_and_let_go_at_another(phone: Page, hosted: Hosted) -> None:
    needed = len(phone.evaluate(STORED))
    phone.goto(hosted.address + "kept.html")
    expect(phone.locator("[data-part=said]")).to_contain_text("The whole book takes about 1 MB on this device.")
    phone.get_by_role("button", name="Keep the whole book").click()
    expect(phone.locator("[data-part=said]")).to_contain_text("The whole book is kept on this device")
    hosted.stop()
    phone.goto(hosted.address + "tasks/sweep.html")
    expect(phone.locator("h1")).to_have_text("Sweep")
    phone.goto(hosted.address + "kept.html")
    phone.get_by_role("button", name="Keep only what I need").click()
    expect(phone.get_by_role("button", name="Keep the whole book")).to_be_visible()
    assert abs(len(phone.evaluate(STORED)) - needed) < 8
    phone.goto(hosted.address + "tasks/sweep.html")
    expect(phone.locator("h1")).to_have_text("This page is not kept on this device")


def test_a_device_without_room_says_so(phone: Page, hosted: Hosted) -> None:
    phone.goto(hosted.address + "kept.html")
    devtools = phone.context.new_cdp_session(phone)
    origin = hosted.address.removesuffix("/lawns/")
    devtools.send("Storage.overrideQuotaForOrigin", {"origin": origin, "quotaSize": 1})
    phone.get_by_role("button", name="Keep the whole book").click()
    expect(phone.locator("[data-part=said]")).to_contain_text("This device has no room left for the whole book.")


def test_a_corrected_caution_is_read_at_the_first_visit_and_kept(phone: Page, hosted: Hosted, editions: list[Path]) -> None:
    phone.goto(hosted.address + CAUTION)
    expect(phone.locator("article")).to_contain_text(BEFORE)
    hosted.site = editions[1]
    phone.goto(hosted.address + CAUTION)
    expect(phone.locator("article")).to_contain_text(CORRECTED)
    assert phone.locator(".sb-edition").count() == 0, "what is shown is the new edition"
    settled(phone, "calendars/flatfield/plaingrass.html")
    phone.wait_for_function("async () => (await caches.keys()).length === 1", timeout=15000)
    hosted.stop()
    phone.goto("about:blank")
    phone.goto(hosted.address + CAUTION)
    expect(phone.locator("article")).to_contain_text(CORRECTED)


def test_a_new_edition_is_told_on_the_page_that_is_open_and_what_was_typed_stays(phone: Page, hosted: Hosted, editions: list[Path]) -> None:
    phone.goto(hosted.address + "calculators/sweeping.html")
    field = phone.locator(".md-content input[type=text]").first
    field.fill("37")
    hosted.site = editions[1]
    phone.evaluate("() => document.dispatchEvent(new Event('visibilitychange'))")
    expect(phone.locator(".sb-edition")).to_contain_text("A new edition of this book is here")
    expect(field).to_have_value("37")
    phone.get_by_role("button", name="Show it").click()
    expect(phone.locator(".sb-edition")).to_have_count(0)
    expect(phone.locator(".md-content input[type=text]").first).to_have_value("37")
    hosted.stop()
    phone.goto(hosted.address + CAUTION)
    expect(phone.locator("article")).to_contain_text(CORRECTED)


def test_a_book_in_a_folder_offers_no_keeping(page: Page, editions: list[Path]) -> None:
    page.goto((editions[0] / "kept.html").as_uri())
    expect(page.locator("article")).to_contain_text("A book in a folder on a disk needs no keeping")
    assert page.locator("[data-component=keep-book] button:visible, [data-component=keep-link]:visible").count() == 0


def test_the_site_for_clients_keeps_its_own_pages_and_none_of_the_practices(editions: list[Path]) -> None:
    site = editions[0].parent / "for-clients"
    run = CliRunner().invoke(main, ["build", "--for", "clients", "--book", str(editions[0].parent / "book"), "--to", str(site)])
    assert run.exit_code == 0, run.output
    told = json.loads((site / "offline-files.json").read_text(encoding="utf-8"))
    assert told["edition"].startswith("c") and {"index.html", CAUTION, "aftercare/after-sweeping.html"} <= set(told["at_once"])
    assert all((site / path).is_file() for path in told["at_once"])
    assert not [each for each in (*told["files"], *told["chosen"]) if each.startswith(("jobs/", "assets/jobs/", "lawns", "inspection.html"))]
