"""Asks a page for much at once. What goes in and comes out is one text: a value handed over as anything else costs Playwright more than
most sums do, and a text keeps every bit of every number."""

import json
from typing import Any

from playwright.sync_api import Page


def ask(page: Page, function: str, *given: Any) -> Any:
    """What a JavaScript function makes of these, there and back as JSON: `undefined` and NaN come back as they would in a file."""
    return json.loads(page.evaluate(f"async given => JSON.stringify(await ({function})(...JSON.parse(given)))", json.dumps(given)))
