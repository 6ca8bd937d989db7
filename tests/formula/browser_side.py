"""The browser's half of the formula tests: static scripts in a page opened from the disk."""

import json
from pathlib import Path

from playwright.sync_api import Browser

from generator.units import units_script

ASSETS = Path(__file__).parents[2] / "generator" / "site" / "assets"


def run_in_browser(browser: Browser, folder: Path, script: str) -> object:
    """What `script` leaves in `window.outcome`, run after the shipped scripts from file://."""
    names = ["units.js", "quantity.js", "formula.js", "cases.js"]
    (folder / "units.js").write_text(units_script(), encoding="utf-8")
    for shipped in ("quantity.js", "formula.js"):
        (folder / shipped).write_text((ASSETS / shipped).read_text("utf-8"), encoding="utf-8")
    (folder / "cases.js").write_text(script, encoding="utf-8")
    tags = "".join(f'<script src="{name}" defer></script>' for name in names)
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
