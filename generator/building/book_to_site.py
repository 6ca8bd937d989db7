"""A book into a site: MkDocs builds it aside, what a person put into the earlier one is carried over, and it is moved in."""

import logging
import os
from io import BytesIO
from pathlib import Path

import yaml
from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort, ConfigurationError, PluginError

from generator.book.editions import Audience
from generator.building.failed import BuildFailed, failed
from generator.building.safe_content import safe_files
from generator.building.safe_pages import SafePages
from generator.building.safe_settings import safe_settings
from generator.building.swap import replace_site
from generator.building.target import Target
from generator.findings import one_line

SETTINGS = "mkdocs.yml"
OUR_PLUGIN = "swardbook"
MKDOCS_FOLDER = "docs"  # where it looks for pages when a book does not say


def build_site(root: Path, target: Target, safe: bool = False, audience: Audience = "practice") -> None:
    """Build the book in `root` aside, strictly, then move it in.

    safe: refuse whatever in the book could run. audience: whose site it is. Raises BuildFailed with what to tell the author; `target.stands()` says what
    stands there then.
    """
    if not (root / SETTINGS).is_file():
        raise BuildFailed(f"{one_line(root)}: no mkdocs.yml here; go to the folder of a book or name it with --book")
    target.must_take_a_site(root)
    settings = _safe(root) if safe else None
    replace_site(target, lambda site: _build_into(root, settings, site, target, audience))


def _safe(root: Path) -> bytes:
    """The settings of a book in which nothing was found that could run."""
    settings, findings = safe_settings(root, SETTINGS)
    findings += safe_files(root, _content(settings))
    if settings is None or findings:
        raise failed(sorted(findings))
    return settings


def _content(settings: bytes | None) -> str:
    """The folder of the pages, from the book's."""
    return str(yaml.safe_load(settings).get("docs_dir", MKDOCS_FOLDER)) if settings else "content"


def _build_into(root: Path, settings: bytes | None, site: Path, target: Target, audience: Audience) -> None:
    os.environ.setdefault("NO_MKDOCS_2_WARNING", "1")  # a notice of the theme's authors, not of this book
    said = _Said(logging.WARNING)
    mkdocs_log = logging.getLogger("mkdocs")
    mkdocs_log.addHandler(said)
    try:
        file = str((root / SETTINGS).absolute())
        config = load_config(BytesIO(settings) if settings else file, config_file_path=file, site_dir=str(site), strict=True)
        if settings:
            config.plugins["safe pages"] = SafePages(_content(settings))
        _run(config, target, audience)
    except Abort as error:  # MkDocs has told why through its log, and says here only that it stopped
        raise BuildFailed("\n".join(said.messages) or str(error)) from error
    except (ConfigurationError, PluginError) as error:
        raise BuildFailed(str(error)) from error
    except OSError as error:
        reading = error.filename and error.filename2 is None  # What fails in copying names both, and is told of where it was to go.
        if reading and not Path(os.fsdecode(error.filename)).is_relative_to(site.parent):
            raise BuildFailed(f"{one_line(error.filename)}: cannot be read ({error.strerror}); check its permissions") from error
        raise
    except UnicodeError as error:  # A page that is no text; MkDocs has named it.
        raise BuildFailed(f"{one_line(said.messages[0] if said.messages else error)}; save it as UTF-8") from error
    finally:
        mkdocs_log.removeHandler(said)


def _run(config: MkDocsConfig, target: Target, audience: Audience) -> None:
    target.must_lie_outside(Path(config.docs_dir))
    ours = config.plugins.get(OUR_PLUGIN)
    if ours is not None:
        ours.audience = audience
    elif audience == "clients":
        raise BuildFailed(f"{SETTINGS}: names no plugin {OUR_PLUGIN}, which leaves out what clients are not to see; add it under 'plugins'")
    config.plugins.on_startup(command="build", dirty=False)
    try:
        mkdocs_build(config)
    finally:
        config.plugins.on_shutdown()


class _Said(logging.Handler):
    """Keeps what MkDocs warns of, for whoever asked for the build."""

    def __init__(self, level: int) -> None:
        super().__init__(level)
        self.messages: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.messages.append(record.getMessage())
