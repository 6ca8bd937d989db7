"""What every test may ask for: a real Chromium, started once a run."""

import os
import shutil
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, sync_playwright

CHROMIUM_NAMES = ("chromium", "chromium-browser", "google-chrome")
CHROMIUM_ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
]


def chromium_path() -> str:
    """The Chromium to test in: SWARDBOOK_CHROMIUM, else the first one on PATH."""
    named = os.environ.get("SWARDBOOK_CHROMIUM")
    found = [shutil.which(name) for name in ([named] if named else CHROMIUM_NAMES)]
    path = next((path for path in found if path), None)
    if path is None:
        looked_for = f"SWARDBOOK_CHROMIUM={named}" if named else ", ".join(CHROMIUM_NAMES)
        pytest.exit(
            f"no Chromium found ({looked_for}); install chromium, or name one in SWARDBOOK_CHROMIUM",
            returncode=1,
        )
    return path


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """One Chromium for the whole run; ask it for a context of your own."""
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(
            executable_path=chromium_path(), args=CHROMIUM_ARGUMENTS
        )
        yield chromium
        chromium.close()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A fresh page in a context of its own."""
    context = browser.new_context()
    yield context.new_page()
    context.close()
