"""What the tests of components share."""

import pytest

from tests.components.calculators import IDS, component, page_with


@pytest.fixture
def opened(page, tmp_path):
    """Opens calculators by id; the test fails on any script error."""
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(str(error)))
    page.on("console", lambda message: errors.append(message.text) if message.type == "error" else None)

    def open_page(*ids: str, bodies: list[str] | None = None):
        page.goto(page_with(tmp_path, bodies or [component(id) for id in ids], list(ids)))
        return page

    yield open_page
    assert errors == []


@pytest.fixture(scope="module")
def all_scripts(browser, tmp_path_factory):
    """One page with the scripts of every calculator and none of their forms; a script error fails the test that comes upon it."""
    yield from all_on_one_page(browser, tmp_path_factory.mktemp("scripts"), [])


@pytest.fixture(scope="module")
def all_forms(browser, tmp_path_factory):
    """One page with every calculator on it."""
    yield from all_on_one_page(browser, tmp_path_factory.mktemp("forms"), [component(id) for id in IDS])


def all_on_one_page(browser, folder, bodies):
    context = browser.new_context()
    page = context.new_page()
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(str(error)))
    page.goto(page_with(folder, bodies, IDS))
    yield page
    context.close()
    assert errors == []
