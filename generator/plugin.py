"""What MkDocs calls while it builds: each hook is a few lines; the work is done in the rooms below."""

from datetime import date
from pathlib import Path

from jinja2 import Environment
from mkdocs.config import config_options as option
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, event_priority
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as MkDocsPage
from mkdocs.structure.toc import AnchorLink, TableOfContents
from mkdocs.utils.templates import TemplateContext

from generator.book.book import Book
from generator.book.editions import Audience, Edition, Unsaid, edition_for
from generator.book.overlay.shared_pages import shared_pages, without_dead_links
from generator.plugin_reading import day, leave_out_private, name_left_out, whole_book
from generator.site.book_site import BookSite
from generator.site.frame.brand import told_to_mkdocs
from generator.site.frame.escaping import as_title, escape_in, mark_content, mark_titles, plain_title, without_unsafe
from generator.site.frame.render import SCRIPT, STYLE, THEME, environment
from generator.site.registry import navigation


class SwardbookConfig(Config):
    today = option.Optional(option.Type((str, date)))  # for builds that must come out the same on any day


class SwardbookPlugin(BasePlugin[SwardbookConfig]):
    book: Book
    site: BookSite
    edition: Edition
    audience: Audience = "practice"  # A build for clients says so; MkDocs by itself makes the practice's own site.
    previewing = False

    def on_startup(self, *, command: str, dirty: bool) -> None:
        self.previewing = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        day(None)  # MkDocs reads the same variable later, and ends in a traceback where it cannot
        # Read before MkDocs looks at what lies in content/, where a pipe or an endless link would hold it up.
        self.book = whole_book(Path(config.config_file_path).parent)
        environment.cache_clear()  # The preview builds again and again, and templates may have changed in between.
        config.theme.dirs.insert(0, str(THEME))
        config.theme["features"] = without_unsafe(config.theme.get("features") or ())
        config.update(told_to_mkdocs(self.book.practice, self.previewing))
        config.mdx_configs.setdefault("tables", {})["use_align_attribute"] = True  # the policy of a page applies no style written into it
        config.extra_css.append(STYLE)
        config.extra |= {"script": SCRIPT, "generator": False}
        self.edition = edition_for(self.audience, self.book.practice)
        if self.edition.for_clients:
            config.site_name = self.book.practice.name
        return config

    @event_priority(100)  # before others look at the files
    def on_files(self, files: Files, config: MkDocsConfig) -> Files:
        if self.edition.for_clients:
            leave_out_private(files)
        own = {file.src_uri for file in files.documentation_pages()}
        shared = shared_pages(self.book, own)
        written = frozenset(own | shared.keys())
        try:
            self.site = site = BookSite(self.book, day(self.config["today"]), written, self.edition)
        except Unsaid as unsaid:
            raise PluginError(str(unsaid)) from None
        texts = {path: without_dead_links(text, written | site.pages.keys()) for path, text in shared.items()}
        for path, content in (dict.fromkeys(site.pages, "") | site.files | texts).items():
            files.append(File.generated(config, path, content=content))
        if self.edition.for_clients:
            name_left_out(files, written, config)
        config.extra["swardbook"] = site.on_every_page(self.previewing)
        if config.nav is None or self.edition.for_clients:  # only front doors stand in it; the rest is reached from hubs and search, on purpose
            config.nav = navigation(sorted(site.added), written | site.pages.keys(), self.edition)
            config.not_in_nav = option.PathSpec().run_validation("*")
        return files

    def on_page_markdown(self, markdown: str, page: MkDocsPage, config: MkDocsConfig, files: Files) -> str:
        page.update_date = self.site.today.isoformat()  # what the list of pages for search engines says, and the stamp of its packed copy
        ours = self.site.pages.get(page.file.src_uri)
        if ours is not None:
            page.meta.update(self.site.front_matter(ours))
        return markdown if ours is None else ""

    def on_page_content(self, html: str, page: MkDocsPage, config: MkDocsConfig, files: Files) -> str:
        ours = self.site.pages.get(page.file.src_uri)
        if ours is None:
            html, thanks = self.site.written_html(html, page.file.src_uri.removesuffix(".md"), plain_title(page), page.meta)
            page.meta.update({"footer_notes": thanks} if thanks else {})
            return html
        laid_out, sections = self.site.html(ours)
        page.toc = TableOfContents([AnchorLink(as_title(section.title), section.id, 2) for section in sections])
        return laid_out

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
        self.site.write_last(Path(config.site_dir), config, self.previewing)

    def on_serve(self, server: LiveReloadServer, config: MkDocsConfig, builder: object) -> LiveReloadServer:
        server.watch(str(Path(config.config_file_path).parent / "data"))
        return server
