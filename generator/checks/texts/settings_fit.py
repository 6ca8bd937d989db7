"""mkdocs.yml says nothing against the practice, which is the truth of what it names, and leaves on what the pages need of MkDocs and its theme."""

from collections.abc import Iterator
from pathlib import Path

from generator.book.book import PartialBook
from generator.book.loading.marked_yaml import Node
from generator.book.records.practice import Practice
from generator.book.settings import DEFAULT_FOLDER, PLUGIN, plugins_named, settings_tree
from generator.checks.check import Check
from generator.findings import Finding, Where, shown, suggestion

FILE = "practice"
# What the plugin takes: a slip here is a setting that does nothing.
OPTIONS = ("today",)
# Keys of MkDocs that bring settings from another file, or from the machine: what is missing here may stand there.
ELSEWHERE = "INHERIT"
SCHEMES = {"default": "light", "slate": "dark"}
# What a site may never be written over, beside the pages written by hand.
SOURCES = ("data", "generator")


def _check(book: PartialBook) -> Iterator[Finding]:
    tree = settings_tree(book.root)
    if tree is None:
        return
    if book.practice is not None:
        yield from _agrees(tree, book.practice)
    yield from _plugin(tree)
    yield from _folders(tree, book.root)
    yield from _theme(tree)


def _agrees(tree: Node, practice: Practice) -> Iterator[Finding]:
    """One truth, in practice.yml; MkDocs itself needs only the name."""
    said = (("site_name", practice.title, "`book_title`"), ("site_description", practice.described, "`description`"),
            ("site_url", practice.public_address, "`public_address`"))
    for key, ours, field in said:
        node = tree.children.get(key)
        if node is None and key == "site_name" and ELSEWHERE not in tree.children:
            yield Finding(Where(tree.where.path), "`site_name` is missing, without which MkDocs builds nothing", f"write 'site_name: {shown(ours)}'")
        if node is None or node.refused or node.kind != "scalar" or node.value is None or not str(node.value).strip():
            continue
        if " ".join(str(node.value).split()) != ours and not (key == "site_url" and f"{node.value}/" == ours):
            theirs = "and data/practice.yml says nothing of it" if ours is None else f"and data/practice.yml '{shown(ours)}'"
            right = "take it out here" if ours is None or key != "site_name" else f"write '{shown(ours)}' here"
            yield Finding(node.text or node.where, f"`{key}` says '{shown(node.value)}', {theirs}", f"{right}, or change {field} there")


def _plugin(tree: Node) -> Iterator[Finding]:
    named, node = plugins_named(tree), tree.children.get("plugins")
    if PLUGIN not in named:
        if ELSEWHERE not in tree.children and not (node is not None and node.refused):
            yield Finding(node.where if node else Where(tree.where.path), f"the plugin {PLUGIN}, which makes the pages, is not asked for",
                          f"add '- {PLUGIN}' under 'plugins'")
        return
    options = named[PLUGIN]
    for key, _ in options.entries() if options else ():
        if key not in OPTIONS:
            known = f"it knows {' and '.join(OPTIONS)}"
            yield Finding(options.keys[key] if options else tree.where, f"the plugin {PLUGIN} has no option '{shown(key)}'", suggestion(key, OPTIONS, known))


def _folders(tree: Node, root: Path) -> Iterator[Finding]:
    pages, site = tree.children.get("docs_dir"), tree.children.get("site_dir")
    folder = root / (pages.value if pages and isinstance(pages.value, str) else DEFAULT_FOLDER)
    if pages is None and ELSEWHERE not in tree.children and not folder.is_dir():
        yield Finding(Where(tree.where.path), "`docs_dir` is missing, and there is no folder docs/", "name the folder of the pages written by hand: 'docs_dir: content'")
    elif pages is not None and isinstance(pages.value, str) and not folder.exists() and not folder.is_symlink():
        yield Finding(pages.text or pages.where, f"there is no folder '{shown(pages.value)}'", "name the folder of the pages written by hand, such as content")
    if site is None or not isinstance(site.value, str) or not site.value:
        return
    target, held = (root / site.value).resolve(), [(root / each).resolve() for each in SOURCES]
    if folder.resolve() != root.resolve() and folder.resolve().is_relative_to(root.resolve()):  # Pages from outside have a line of their own.
        held.append(folder.resolve())
    if root.resolve().is_relative_to(target) or any(target.is_relative_to(each) for each in held):
        yield Finding(site.text or site.where, f"the site would be written over the book, into '{shown(site.value)}'", "name a folder of its own, such as site")


def _theme(tree: Node) -> Iterator[Finding]:
    if ELSEWHERE in tree.children:
        return
    yield from _must_be(tree, tree, "use_directory_urls", False, "pages could not be opened from a disk")
    theme = tree.children.get("theme")
    if theme is None or theme.refused:
        if theme is None:
            yield Finding(Where(tree.where.path), "`theme` is missing", "copy it from another book: 'name: material', 'font: false' and the two palettes")
        return
    if theme.kind != "map" or (theme.children.get("name") is not None and theme.children["name"].value != "material"):
        named = theme.children.get("name", theme)
        if theme.kind == "map" or theme.value != "material":
            yield Finding(named.where, "the pages are made for the theme 'material'", "write 'name: material'")
            return
    yield from _must_be(tree, theme, "font", False, "pages would ask another host for their letters, which their policy refuses")
    for key, field in (("logo", "logo"), ("favicon", "favicon")):
        if key in theme.children:
            yield Finding(theme.keys[key], f"the theme's `{key}` is not shown", f"take it out, and name the file as `{field}` in data/practice.yml")
    yield from _palettes(theme)


def _palettes(theme: Node) -> Iterator[Finding]:
    palette = theme.children.get("palette")
    if palette is not None and palette.refused:
        return
    each_of = palette.children.values() if palette and palette.kind == "list" else ()
    listed = [each.children["scheme"].value for each in each_of if "scheme" in each.children]
    for scheme, called in SCHEMES.items():
        if scheme not in listed:
            yield Finding(palette.where if palette else theme.first, f"`palette` lists no scheme '{scheme}', so there are no {called} pages",
                          "copy both palettes from another book")


def _must_be(tree: Node, table: Node, key: str, value: bool, otherwise: str) -> Iterator[Finding]:
    node = table.children.get(key)
    if node is not None and (node.refused or node.value is value):
        return
    where = node.where if node else Where(tree.where.path) if table is tree else table.first
    yield Finding(where, f"`{key}` is not {str(value).lower()}, and {otherwise}", f"write '{key}: {str(value).lower()}'")


CHECK = Check("settings-fit", "mkdocs.yml agrees with the practice and leaves on what the pages need.", ("mkdocs", FILE), _check)
