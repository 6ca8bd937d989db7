"""What every test may ask for: a real browser, started once a run; and our own book, checked once."""

import gc
import os
import signal
from collections.abc import Generator, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, sync_playwright

from generator.checks import check_book
from generator.commands import common
from tests import our_book, quiet
from tests.engines import firefox
from tests.engines.chromium import ARGUMENTS, CHROMIUM
from tests.engines.machine_browser import MachineBrowser

# A shell that runs the tests in the background has Ctrl-C ignored, and every command they start would go on ignoring it.
if signal.getsignal(signal.SIGINT) is signal.SIG_IGN:
    signal.signal(signal.SIGINT, signal.default_int_handler)

# Collecting makes some hundred thousand objects that stay to the end of the run; none is garbage yet.
gc.disable()

BUILDS_THE_SITE = "test_links.py"


def path_of(wanted: MachineBrowser) -> str:
    """The browser to test in; the run ends with one clear line when there is none."""
    path = wanted.find()
    if path is None:
        pytest.exit(wanted.missing(), returncode=1)
    return path


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """One Chromium for the whole run, or one Firefox where SWARDBOOK_ENGINE says so; ask it for a context of your own."""
    with sync_playwright() as playwright:
        if os.environ.get("SWARDBOOK_ENGINE") == "firefox":
            started = firefox.launch(playwright, path_of(firefox.FIREFOX))
        else:
            started = playwright.chromium.launch(executable_path=path_of(CHROMIUM), args=ARGUMENTS)
        yield started
        started.close()


@pytest.fixture(scope="session", autouse=True)
def our_book_is_checked_once() -> Iterator[None]:
    """Every command checks the whole book before it answers. Ours is the same for all tests; any other is checked each time."""

    def checked(root: Path, this_year: int | None = None) -> Any:
        return our_book.loaded() if root.resolve() == our_book.ROOT else check_book(root, this_year)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(common, "check_book", checked)
        yield


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A fresh page in a context of its own."""
    context = browser.new_context()
    yield context.new_page()
    context.close()


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """What reads the built site begins: one process builds it while the other goes on with what needs none."""
    items.sort(key=lambda item: item.path.name != BUILDS_THE_SITE)


def pytest_collection_finish() -> None:
    """From here there is garbage; what was collected is set apart from it and not looked through each time."""
    gc.freeze()
    gc.enable()


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item: pytest.Item) -> Generator[None, object, object]:
    """Tests marked `alone` run with nothing beside them, what they stand on (the site, a page) included."""
    with quiet.turn(alone=item.get_closest_marker("alone") is not None):
        return (yield)
