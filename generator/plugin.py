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
from generator.glossed import Glossed
from generator.model.attribution import attribution
from generator.model.book import Book
from generator.model.practice import Practice
from generator.moment import moment
from generator.outputs.json_book import json_files
from generator.outputs.offline import WORKER, offline_worker
from generator.outputs.policy import HEADERS_FILE, NO_REFERRER, header_lines, page_policy
from generator.outputs.qr import qr_files
from generator.pages import all_pages, navigation, printed_calendars
from generator.pages.almanac import Almanac
from generator.pages.calculator_script import calculator_script
from generator.pages.desk import Desk
from generator.pages.fill_in import COUNTS_FILE, FILE as FILL_IN, counts_script, fill_in_script
from generator.pages.hold_script import PATH as HOLDS, hold_script
from generator.pages.job import has_jobs
from generator.pages.job_scripts import job_scripts
from generator.pages.page import Page
from generator.pages.record import SPEC as RECORD, record_script
from generator.pages.season_script import season_scripts
from generator.pages.visit import SPEC as VISIT
from generator.pages.visit_script import visit_script
from generator.pages.year import year_scripts
from generator.pages.year_files import year_files
from generator.render import FAVICON, GENERATOR, SCRIPT, STYLE, asset_files, component_examples, render
from generator.search.book import FILE as SEARCH, Shelf
from generator.search.reading import read
from generator.searchable import searchable
from generator.turf.season_json import as_json


PRINTED_CALENDARS = "<!-- swardbook: printed-calendars -->"


class SwardbookConfig(Config):
    today = option.Optional(option.Type(str))  # an ISO date, for builds that must come out the same on any day


class SwardbookPlugin(BasePlugin[SwardbookConfig]):
    def __init__(self) -> None:
        self.pages: dict[str, Page] = {}
        self.shelf = Shelf()
        self.glossed = Glossed({})
        self.almanac: Almanac | None = None
        self.today = date.min
        self.previewing = False

    def on_startup(self, *, command: str, dirty: bool) -> None:
        self.previewing = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        built_at()  # MkDocs reads the same variable later, and ends in a traceback where it cannot
        config.theme.dirs.insert(0, str(GENERATOR / "theme"))
        config.theme["favicon"] = FAVICON
        config.theme["features"] = without_unsafe(config.theme.get("features") or ())
        # By attribute, not by style: the policy of a page applies no style that is written into it.
        config.mdx_configs.setdefault("tables", {})["use_align_attribute"] = True
        config.extra_css.append(STYLE)
        config.extra["script"] = SCRIPT
        config.extra["generator"] = False
        return config

    @event_priority(100)  # before others look at the files
    def on_files(self, files: Files, config: MkDocsConfig) -> Files:
        book = whole_book(Path(config.config_file_path).parent)
        self.almanac = almanac = Almanac(book)
        self.glossed = Glossed(book.of("terms"))
        written = {file.src_uri for file in files.documentation_pages()}
        self.today = today = date.fromisoformat(self.config.today) if self.config.today else built_at().date()
        pages = {f"{page.path}.md": page for page in all_pages(almanac, today, component_examples(), frozenset(written))}
        # A page written by hand takes the place of ours.
        self.pages = {path: page for path, page in pages.items() if path not in written}
        for path, content in (dict.fromkeys(self.pages, "") | site_files(almanac, today)).items():
            files.append(File.generated(config, path, content=content))
        config.extra["swardbook"] = {
            "footer": footer_notes(book.practice), "policy": page_policy(self.previewing), "referrer": NO_REFERRER,
        }
        if config.nav is None:
            config.nav = navigation(sorted(written - pages.keys()), written | pages.keys())
            config.not_in_nav = option.PathSpec().run_validation("*")  # the rest is reached from hubs and search, on purpose
        self.shelf = Shelf()
        return files

    def on_page_markdown(self, markdown: str, page: MkDocsPage, config: MkDocsConfig, files: Files) -> str:
        page.update_date = self.today.isoformat()  # what the list of pages for search engines says, and the stamp of its packed copy
        ours = self.pages.get(page.file.src_uri)
        if ours is None:
            return markdown
        page.meta.update(front_matter(ours))
        return ""

    def on_page_content(self, html: str, page: MkDocsPage, config: MkDocsConfig, files: Files) -> str:
        ours = self.pages.get(page.file.src_uri)
        if ours is None:
            written = self._with_parts(html, page)
            title, description = plain_title(page), page.meta.get("description", "")
            words = [str(word) for word in page.meta.get("words") or ()]
            self.shelf.put_written(page.file.src_uri.removesuffix(".md"), title, str(description), words, read(searchable(written)))
            return written
        written = render(f"{ours.template}.html.j2", ours.context)
        # A page leaves out a part it has nothing for: its table of contents leaves it out too.
        there = [section for section in ours.sections if f'id="{section.id}"' in written]
        if ours.in_search:
            self.shelf.put(ours, read(searchable(written)))
        page.toc = TableOfContents([AnchorLink(as_title(section.title), section.id, 2) for section in there])
        return self.glossed.page(ours, written)

    def _with_parts(self, html: str, page: MkDocsPage) -> str:
        """A page written by hand, with what it asks us to work out: <!-- swardbook: printed-calendars -->."""
        if PRINTED_CALENDARS not in html or self.almanac is None:
            return html
        desk = Desk(self.almanac.book, page.file.src_uri.removesuffix(".md"), self.today)
        page.meta["footer_notes"] = attribution(self.almanac.book)
        return html.replace(PRINTED_CALENDARS, render(printed_calendars.TEMPLATE, printed_calendars.printed_calendars(self.almanac, desk)))

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
        search.write_text(self.shelf.script(), encoding="utf-8")
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


def site_files(almanac: Almanac, today: date) -> dict[str, str | bytes]:
    """Everything in the site that is not a page: path to content. today: the first year of the calendar files."""
    book = almanac.book
    years = {(grass, place): as_json(almanac.season(grass, place)) for grass in book.grasses for place in book.places}
    scripts = {f"assets/calculators/{id}.js": calculator_script(id, calculator) for id, calculator in book.calculators.items()}
    if book.visit is not None:
        scripts[VISIT] = visit_script(book.visit)
    if book.holds:
        scripts[HOLDS] = hold_script(book)
    if book.record is not None:
        scripts[RECORD] = record_script(book)
    if has_jobs(book):
        scripts |= job_scripts(almanac)
    return {
        **asset_files(), **scripts, **season_scripts(almanac), **year_scripts(almanac), **year_files(almanac, today),
        FILL_IN: fill_in_script(almanac), COUNTS_FILE: counts_script(almanac), **qr_files(book), **json_files(book, years), HEADERS_FILE: header_lines(),
    }


def footer_notes(practice: Practice) -> list[str]:
    if practice.invented:
        return [f"{practice.name}: an invented practice. Its people, clients, products and prices do not exist."]
    return [practice.name]
