"""The browser the tests run in. `python -m tests.engines.chromium` finds or installs it."""

from tests.engines.machine_browser import MachineBrowser

# The shell is the same engine without a window to draw, and takes half the processor time for the same tests.
CHROMIUM = MachineBrowser(
    title="Chromium",
    names=("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome"),
    variable="SWARDBOOK_CHROMIUM",
    packages={"apt-get": ("chromium-headless-shell", "chromium"), "dnf": ("chromium-headless", "chromium"), "apk": ("chromium",)},
)
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
]

if __name__ == "__main__":
    raise SystemExit(CHROMIUM.main())
