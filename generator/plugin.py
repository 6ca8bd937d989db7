"""What MkDocs calls while it builds: each hook is a few lines; the work is done in the rooms below."""

from datetime import date, datetime
from pathlib import Path
from typing import Any

from jinja2 import Environment
from mkdocs.config import config_options as option
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin, event_priority
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as MkDocsPage
from mkdocs.structure.toc import AnchorLink, TableOfContents
from mkdocs.utils.templates import TemplateContext

from generator.checks import check_book
from generator.escaped import as_title, escape_in, mark_content, mark_titles, plain_title, without_unsafe
from generator.model.attribution import attribution
from generator.model.book import Book
from generator.model.practice import Practice
from generator.model.settings import chosen_day
from generator.moment import moment
from generator.outputs.offline import WORKER, offline_worker
from generator.outputs.policy import HEADERS_FILE, NO_REFERRER, header_lines, page_policy
from generator.pages import navigation, printed_calendars
from generator.pages.desk import Desk
from generator.pages.page import Page
from generator.render import FAVICON, GENERATOR, SCRIPT, STYLE, asset_files, environment, render
from generator.search.book import FILE as SEARCH
from generator.search.reading import read
from generator.searchable import searchable
from generator.site import Site


PRINTED_CALENDARS = "<!-- swardbook: printed-calendars -->"


class SwardbookConfig(Config):
    today = option.Optional(option.Type((str, date)))  # for builds that must come out the same on any day


class SwardbookPlugin(BasePlugin[SwardbookConfig]):
    def __init__(self) -> None:
        self.book: Book | None = None
        self.site: Site | None = None
        self.previewing = False

    def on_startup(self, *, command: str, dirty: bool) -> None:
        self.previewing = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        built_at()  # MkDocs reads the same variable later, and ends in a traceback where it cannot
        # Before MkDocs looks at what lies in content/, where a pipe or an endless link would hold it up.
        self.book = whole_book(Path(config.config_file_path).parent)
        environment.cache_clear()  # The preview builds again and again, and templates may have changed in between.
        config.theme.dirs.insert(0, str(GENERATOR / "theme"))
        config.theme["favicon"] = FAVICON
        config.theme["features"] = without_unsafe(config.theme.get("features") or ())
        # By attribute, not by style: the policy of a page applies no style that is written into it.
        config.mdx_configs.setdefault("tables", {})["use_align_attribute"] = True
        config.extra_css.append(STYLE)
        config.extra["script"] = SCRIPT
        config.extra["generator"] = False
        return config

    def day(self) -> date:
        """Today, or the day that mkdocs.yml names. Raises PluginError for one that cannot be."""
        if not self.config.today:
            return built_at().date()
        try:
            return chosen_day(self.config.today)
        except ValueError as error:
            raise PluginError(f"mkdocs.yml: 'today' of the plugin swardbook is not a day that a build can start from: {error}") from error

    @event_priority(100)  # before others look at the files
    def on_files(self, files: Files, config: MkDocsConfig) -> Files:
        book = self.book
        written = frozenset(file.src_uri for file in files.documentation_pages())
        self.site = site = Site(book, self.day(), written)
        made = asset_files() | site.files | {HEADERS_FILE: header_lines()}
        for path, content in (dict.fromkeys(site.pages, "") | made).items():
            files.append(File.generated(config, path, content=content))
        config.extra["swardbook"] = {
            "footer": footer_notes(book.practice), "policy": page_policy(self.previewing), "referrer": NO_REFERRER,
        }
        if config.nav is None:
            config.nav = navigation(sorted(site.added), written | site.pages.keys())
            config.not_in_nav = option.PathSpec().run_validation("*")  # the rest is reached from hubs and search, on purpose
        return files

    def on_page_markdown(self, markdown: str, page: MkDocsPage, config: MkDocsConfig, files: Files) -> str:
        page.update_date = self.site.today.isoformat()  # what the list of pages for search engines says, and the stamp of its packed copy
        ours = self.site.pages.get(page.file.src_uri)
        if ours is None:
            return markdown
        page.meta.update(front_matter(ours))
        return ""

    def on_page_content(self, html: str, page: MkDocsPage, config: MkDocsConfig, files: Files) -> str:
        ours = self.site.pages.get(page.file.src_uri)
        if ours is None:
            written = self._with_parts(html, page)
            title, description = plain_title(page), page.meta.get("description", "")
            words = [str(word) for word in page.meta.get("words") or ()]
            self.site.shelf.put_written(page.file.src_uri.removesuffix(".md"), title, str(description), words, read(searchable(written)))
            return written
        laid_out, sections = self.site.html(ours)
        page.toc = TableOfContents([AnchorLink(as_title(section.title), section.id, 2) for section in sections])
        return laid_out

    def _with_parts(self, html: str, page: MkDocsPage) -> str:
        """A page written by hand, with what it asks us to work out: <!-- swardbook: printed-calendars -->."""
        if PRINTED_CALENDARS not in html:
            return html
        desk = Desk(self.site.book, page.file.src_uri.removesuffix(".md"), self.site.today)
        page.meta["footer_notes"] = attribution(self.site.book)
        return html.replace(PRINTED_CALENDARS, render(printed_calendars.TEMPLATE, printed_calendars.printed_calendars(self.site.almanac, desk)))

    def on_env(self, env: Environment, config: MkDocsConfig, files: Files) -> Environment:
        escape_in(env)
        mark_titles(file.page for file in files.documentation_pages() if file.page is not None)
        return env

    @event_priority(-200)  # whatever another does to a page's HTML is done
    def on_page_context(self, context: TemplateContext, page: MkDocsPage, config: MkDocsConfig, nav: Navigation) -> TemplateContext:
        mark_content(page)
        return context

    @event_priority(-200)  # when everything else is written
    def on_post_build(self, config: MkDocsConfig) -> None:
        search = Path(config.site_dir, SEARCH)
        search.parent.mkdir(parents=True, exist_ok=True)
        search.write_text(self.site.shelf.script(), encoding="utf-8")
        site, scripts = Path(config.site_dir), GENERATOR / "assets" / "worker"
        script = (scripts / ("preview-worker.js" if self.previewing else WORKER)).read_text(encoding="utf-8")
        (site / WORKER).write_text(script if self.previewing else offline_worker(site, script), encoding="utf-8")

    def on_serve(self, server, config: MkDocsConfig, builder):
        server.watch(str(Path(config.config_file_path).parent / "data"))
        return server


def whole_book(root: Path) -> Book:
    """The book in a folder. Raises PluginError with every problem, one a line."""
    loaded = check_book(root)
    if loaded.book is None:
        raise PluginError("\n".join(str(finding) for finding in loaded.findings))
    return loaded.book


def built_at() -> datetime:
    """The moment of the build. Raises PluginError where it cannot be told."""
    try:
        return moment()
    except ValueError as error:
        raise PluginError(str(error)) from None


def front_matter(page: Page) -> dict:
    meta: dict[str, Any] = {"title": page.title, "description": page.description}
    meta["hide"] = ["navigation", "toc"] if not page.sections else ["navigation"]
    meta["footer_notes"] = list(page.attribution)
    return meta


def footer_notes(practice: Practice) -> list[str]:
    if practice.invented:
        return [f"{practice.name}: an invented practice. Its people, clients, products and prices do not exist."]
    return [practice.name]
