"""The browser's half of the formula tests: static scripts in a page opened from the disk."""

import json
from pathlib import Path

from playwright.sync_api import Browser

from generator.site.frame.render import SCRIPT, asset_files


def run_in_browser(browser: Browser, folder: Path, script: str) -> object:
    """What `script` leaves in `window.outcome`, run after the script of every page, from file://."""
    texts = {"book.js": asset_files()[SCRIPT], "cases.js": script}
    for name, text in texts.items():
        (folder / name).write_text(text, encoding="utf-8")
    tags = "".join(f'<script src="{name}" defer></script>' for name in texts)
    page_file = folder / "page.html"
    page_file.write_text(f'<!doctype html><meta charset="utf-8">{tags}', encoding="utf-8")
    context = browser.new_context(offline=True)
    page = context.new_page()
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(str(error)))
    page.goto(page_file.as_uri())
    # Numbers come back as JSON text, so that every bit of them does.
    outcome = page.evaluate("JSON.stringify(window.outcome)")
    context.close()
    assert errors == []
    return json.loads(outcome)
