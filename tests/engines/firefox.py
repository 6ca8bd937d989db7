"""The second engine, for the audit: the distribution's own Firefox. `python -m tests.engines.firefox` finds or installs it."""

import os
import subprocess
from pathlib import Path

from playwright.sync_api import Browser, Playwright

from tests.engines.machine_browser import MachineBrowser

FIREFOX = MachineBrowser(
    title="Firefox",
    names=("firefox-esr", "firefox"),
    variable="SWARDBOOK_FIREFOX",
    packages={"apt-get": ("firefox-esr", "firefox"), "dnf": ("firefox",), "apk": ("firefox-esr", "firefox")},
)
# A telephone's bar for scrolling lies over the page and takes no room of it.
AS_ON_A_TELEPHONE = {"ui.useOverlayScrollbars": 1}


def launch(playwright: Playwright, path: str) -> Browser:
    """The Firefox at `path`, spoken to over WebDriver BiDi as it came from the distribution: no driver, nothing patched, nothing fetched."""
    relay = Path(__file__).with_name("relay.py")
    return playwright.firefox.launch(channel="moz-firefox", executable_path=relay, env={**os.environ, FIREFOX.variable: path}, firefox_user_prefs=AS_ON_A_TELEPHONE)


if __name__ == "__main__":
    raise SystemExit(FIREFOX.main() or subprocess.call([str(FIREFOX.find()), "--version"]))
