"""The part of a safe build that MkDocs calls: looks at each page of content/ when Markdown has been read."""

from jinja2 import Environment
from mkdocs.config.base import LegacyConfig
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin, event_priority
from mkdocs.structure.files import Files
from mkdocs.structure.pages import Page

from generator.building.safe_content import safe_page
from generator.findings import Finding


class SafePages(BasePlugin[LegacyConfig]):
    """Stops the build before a page is written, with all that is refused in any of them. content: their folder's name in the book."""

    def __init__(self, content: str) -> None:
        self.content = content
        self.findings: list[Finding] = []

    @event_priority(100)  # before our own parts are put in
    def on_page_content(self, html: str, page: Page, config: MkDocsConfig, files: Files) -> str:
        if page.file.generated_by is None:
            path = f"{self.content}/{page.file.src_uri}"
            self.findings += safe_page(path, page.file.content_string, html, str(page.title), page.meta)
        return html

    def on_env(self, env: Environment, config: MkDocsConfig, files: Files) -> Environment:
        if self.findings:
            raise PluginError("\n".join(str(finding) for finding in sorted(self.findings)))
        return env
