"""What every test may ask for: a real Chromium, started once a run."""

from collections.abc import Generator, Iterator

import pytest
from playwright.sync_api import Browser, Page, sync_playwright

from tests import chromium, quiet


def chromium_path() -> str:
    """The Chromium to test in; the run ends with one clear line when there is none."""
    path = chromium.find()
    if path is None:
        pytest.exit(chromium.missing(), returncode=1)
    return path


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """One Chromium for the whole run; ask it for a context of your own."""
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=chromium_path(), args=chromium.ARGUMENTS)
        yield started
        started.close()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A fresh page in a context of its own."""
    context = browser.new_context()
    yield context.new_page()
    context.close()


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item: pytest.Item) -> Generator[None, object, object]:
    """Tests marked `alone` run with nothing beside them, what they stand on (the site, a page) included."""
    with quiet.turn(alone=item.get_closest_marker("alone") is not None):
        return (yield)
