"""What mkdocs.yml says that this book shows or reads: its name, its folder of pages, the day a build is told to take for today."""

from datetime import date, datetime
from pathlib import Path

from pydantic import BaseModel, ConfigDict

from generator.book.fields.characters import UNSEEN
from generator.book.fields.texts import Sentence, Title, Typed
from generator.book.lists.for_a_job import FIRST_YEAR, LAST_YEAR
from generator.book.loading.disk import unfit
from generator.book.loading.folders import SETTINGS
from generator.book.loading.load import checked, read_text
from generator.book.loading.marked_yaml import Node, read_tree
from generator.findings import Finding, shown

DEFAULT_FOLDER = "docs"
PLUGIN = "swardbook"


class _Shown(BaseModel):
    """The keys of mkdocs.yml that the site shows or that say where pages lie; MkDocs reads the others."""

    model_config = ConfigDict(extra="ignore")

    site_name: Title | None = None
    site_description: Sentence | None = None
    docs_dir: Typed | None = None


def chosen_day(given: str | date) -> date:
    """The day that a build takes for today. Raises ValueError for text that is no day, or one too far away to print calendars of."""
    day = given if isinstance(given, date) else date.fromisoformat(given)
    day = day.date() if isinstance(day, datetime) else day
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        raise ValueError(f"the year {day.year} is not from {FIRST_YEAR} to {LAST_YEAR}")
    return day


def settings_of(root: Path) -> tuple[Path | None, list[Finding]]:
    """The folder of the pages written by hand (None for one outside the book), and what is wrong in mkdocs.yml with what the book uses of it."""
    folder, file = root / DEFAULT_FOLDER, root / SETTINGS
    if unfit(file, root) or not file.is_file():
        return folder, []  # Told with the other files.
    text, findings = read_text(file, SETTINGS, UNSEEN)
    if text is None:
        return folder, findings
    tree, findings = read_tree(text, SETTINGS)
    if tree is None or tree.kind != "map":
        return folder, findings
    _, findings = checked(tree, _Shown)  # What MkDocs may hold and a record may not, such as tags, is left to MkDocs.
    findings += [node.unseen for key in _Shown.model_fields if (node := tree.children.get(key)) and node.unseen]
    findings += _day_findings(tree)
    named = tree.children.get("docs_dir")
    if named is None or not isinstance(named.value, str):
        return folder, findings
    folder = root / named.value
    if not folder.is_symlink() and not folder.resolve().is_relative_to(root.resolve()):  # A link has a line of its own.
        findings.append(Finding(named.text or named.where, f"'{shown(named.value)}' is outside the book", "name a folder of the book, such as content"))
        return None, findings
    return folder, findings


def settings_tree(root: Path) -> Node | None:
    """What mkdocs.yml says, value by value; None where it cannot be read, which `settings_of` tells."""
    file = root / SETTINGS
    text = None if unfit(file, root) or not file.is_file() else read_text(file, SETTINGS, UNSEEN)[0]
    tree = None if text is None else read_tree(text, SETTINGS)[0]
    return tree if tree is not None and tree.kind == "map" else None


def plugins_named(tree: Node) -> dict[str, Node | None]:
    """The plugins that mkdocs.yml asks for, each with its table of options, or None where it has none."""
    plugins, named = tree.children.get("plugins"), dict[str, Node | None]()
    for node in (plugins, *(plugins.children.values() if plugins else ())):
        if node is not None and node.kind == "map":
            named |= {name: options if options.kind == "map" else None for name, options in node.entries()}
        elif node is not None and node.kind == "scalar" and isinstance(node.value, str):
            named.setdefault(node.value, None)
    return named


def _day_findings(tree: Node) -> list[Finding]:
    options = plugins_named(tree).get(PLUGIN)
    node = options.children.get("today") if options else None
    if node is None or node.refused or node.value is None:
        return []
    try:
        chosen_day(node.value if isinstance(node.value, str) else "")
    except ValueError:
        return [Finding(node.text or node.where, f"'{shown(node.value if node.kind == 'scalar' else node.kind)}' is not a day that a build can start from",
                        f"write year, month and day, as \"2026-10-12\", from {FIRST_YEAR} to {LAST_YEAR}")]
    return []
