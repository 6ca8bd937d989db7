"""A reader of the built site: opens its pages from the disk, without a network, and minds what goes wrong there."""

from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page

# What a page opened from a folder may ask for: files beside it, and what it made itself.
OWN_SCHEMES = ("file:", "data:", "blob:", "about:")

# One page of each kind; what holds for these holds for the kind.
KINDS = {
    "home": "index.html",
    "grasses": "grasses/index.html",
    "guides": "renovate/index.html",
    "calendars": "calendars/index.html",
    "calculators": "calculators/index.html",
    "aftercare sheets": "aftercare/index.html",
    "jobs": "jobs/index.html",
    "inspection sheet": "inspection.html",
    "work record": "record.html",
    "your lawns": "lawns.html",
    "year of visits": "programme.html",
    "tasks": "tasks/index.html",
    "cautions": "cautions/index.html",
    "grass": "grasses/kikuyu.html",
    "key": "grasses/key.html",
    "guide": "renovate/kikuyu.html",
    "plans": "plans/index.html",
    "plan": "plans/light-renovation.html",
    "task": "tasks/scarify.html",
    "caution": "cautions/silica-dust.html",
    "place": "places/canberra.html",
    "calendar": "calendars/sydney/couch.html",
    "frosty calendar": "calendars/canberra/couch.html",
    "comparison": "compare/couch.html",
    "calculator": "calculators/granular-feed.html",
    "aftercare": "aftercare/after-renovation.html",
    "problem finder": "problems/index.html",
    "problem": "problems/dry-spots.html",
    "client link": "aftercare/maker.html",
    "answers": "answers/index.html",
    "answer": "answers/how-low.html",
    "glossary": "glossary.html",
    "side by side": "side-by-side.html",
    "grasses in order": "which-grass.html",
    "names": "names.html",
    "sources": "sources.html",
    "about": "about.html",
    "how to use": "how-to-use.html",
    "kept on this device": "kept.html",
    "methods": "methods.html",
}

# What a page's policy refuses, said where its errors are said.
TELL_REFUSED = """document.addEventListener('securitypolicyviolation', event => {
  console.error(`refused by the policy: ${event.effectiveDirective} ${event.blockedURI} ${event.sample}`);
});"""


class Reader:
    """One browser window, offline, with nothing remembered; `wrong` lists what a reader should never have met. served: the address of the
    site on a server of this machine, for a window that reads it from there."""

    def __init__(self, browser: Browser, site: Path, served: str = "", **window: Any):
        self.site, self.address = site, served or site.as_uri()
        self.own = (*OWN_SCHEMES, self.address)
        self.wrong: list[str] = []
        self.context = browser.new_context(offline=not served, **window)
        self.context.on("request", self._asked)
        self.context.on("weberror", lambda error: self.wrong.append(f"script error: {error.error}"))
        self.context.on("console", self._said)
        self.context.add_init_script(TELL_REFUSED)
        self.page: Page = self.context.new_page()

    def open(self, path: str) -> Page:
        """The page at `path` of the site, e.g. 'tasks/scarify.html#steps'; its scripts have run."""
        self.page.goto(f"{self.address}/{path}", wait_until="load")
        return self.page

    def close(self) -> None:
        self.context.close()

    def _asked(self, request: Any) -> None:
        if not request.url.startswith(self.own):
            self.wrong.append(f"asked another host: {request.url} from {self.page.url}")

    def _said(self, message: Any) -> None:
        if message.type == "error":
            self.wrong.append(f"console: {message.text} on {self.page.url}")
