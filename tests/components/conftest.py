"""What the tests of components share."""

import pytest

from tests.components.calculators import component, page_with


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
