"""What mkdocs.yml may say in a safe build: a closed list, for most of what a site's settings can say is which code to run.

The file is read as plain YAML, and MkDocs is given what was read here, never the file: no tag, merge or second reader brings in more.
"""

import re
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

import yaml

from generator.book.loading.load import read_text
from generator.book.loading.marked_yaml import REFUSED, Node, read_tree
from generator.findings import Finding, Where, shown, suggestion

OTHERWISE = "take it out, or read the book and build it without --safe"
# Markdown's own extensions and others that only turn text into markup: none reads a file or imports what it is told to.
EXTENSIONS = (
    "abbr", "admonition", "attr_list", "def_list", "fenced_code", "footnotes", "md_in_html", "sane_lists", "smarty", "tables", "toc",
    "pymdownx.betterem", "pymdownx.caret", "pymdownx.details", "pymdownx.keys", "pymdownx.mark", "pymdownx.smartsymbols",
    "pymdownx.tasklist", "pymdownx.tilde",
)  # fmt: skip

Rule = Callable[[Node, str], Iterator[Finding]]


def safe_settings(root: Path, name: str) -> tuple[bytes | None, list[Finding]]:
    """The settings of the book in `root` as a YAML text of plain values, or None; and what a safe build refuses in them.

    name: of the file, from the book's folder.
    """
    text, findings = read_text(root / name, name)
    if text is None:
        return None, findings
    tree, findings = read_tree(text, name)
    if tree is None:
        return None, findings or [Finding(Where(name), "the file is empty", "write the site's settings")]
    findings = sorted([*findings, *_SETTINGS(tree, "the file")])
    return (None if findings else yaml.safe_dump(tree.plain(), sort_keys=False).encode()), findings


def plain_text(node: Node, what: str) -> Iterator[Finding]:
    """Text that is printed in pages, and so no markup."""
    if node.kind != "scalar" or not isinstance(node.value, str | int | float):
        yield from _refused(node, f"{what} is not text", "write plain text")
    elif "<" in str(node.value):
        yield from _refused(node, f"{what} holds markup", "write plain text, without '<'")


def _refused(node: Node, what: str, instead: str) -> Iterator[Finding]:
    if node.value is not REFUSED:  # Else told when it was read.
        yield Finding(node.where, what, instead)


def _flag(node: Node, what: str) -> Iterator[Finding]:
    if not isinstance(node.value, bool):
        yield from _refused(node, f"{what} is neither true nor false", "write true or false")


def _like(pattern: str, instead: str) -> Rule:
    def rule(node: Node, what: str) -> Iterator[Finding]:
        if node.kind != "scalar" or not isinstance(node.value, str | int) or not re.fullmatch(pattern, str(node.value)):
            yield from _refused(node, f"{what} is not one that a safe build takes", instead)

    return rule


def _only(allowed: Any, instead: str) -> Rule:
    def rule(node: Node, what: str) -> Iterator[Finding]:
        if node.kind != "scalar" or (node.value is not allowed and node.value != allowed):
            yield from _refused(node, f"{what} is not one that a safe build takes", instead)

    return rule


def _list_of(item: Rule) -> Rule:
    def rule(node: Node, what: str) -> Iterator[Finding]:
        if node.kind != "list":
            yield from _refused(node, f"{what} is not a list", "begin each of its lines with '- '")
        for child in node.children.values() if node.kind == "list" else ():
            yield from item(child, f"what stands under {what}")

    return rule


def _either(single: Rule, **kinds: Rule) -> Rule:
    """By kind of node: `list=`, `map=`; a scalar otherwise."""

    def rule(node: Node, what: str) -> Iterator[Finding]:
        yield from kinds.get(node.kind, single)(node, what)

    return rule


def _map(keys: Mapping[str, Rule], called: str) -> Rule:
    """A map with these keys and no others. called: what a key is called in a message."""

    def rule(node: Node, what: str) -> Iterator[Finding]:
        if node.kind != "map":
            yield from _refused(node, f"{what} is not a map", "write its keys below it, each with ': '")
            return
        for key, child in node.entries():
            if key in keys:
                yield from keys[key](child, f"'{key}'")
            else:
                yield Finding(node.keys[key], f"a safe build takes no {called} '{shown(key)}'", suggestion(key, keys, OTHERWISE))

    return rule


def _named(names: Mapping[str, Rule], called: str) -> Rule:
    """An item of a list that names a thing, alone or with options of its own."""
    with_options = _map(names, called)

    def rule(node: Node, what: str) -> Iterator[Finding]:
        if node.kind == "map":
            yield from with_options(node, what)
        elif node.value not in names:
            yield from _refused(node, f"a safe build takes no {called} '{shown(node.value)}'", OTHERWISE)

    return rule


def _options_none(node: Node, what: str) -> Iterator[Finding]:
    if node.kind != "scalar" or node.value is not None:
        yield from _refused(node, f"a safe build takes no options of {what}", OTHERWISE)


def _navigation(node: Node, what: str) -> Iterator[Finding]:
    if node.kind == "list":
        for child in node.children.values():
            yield from _navigation(child, what)
    elif node.kind == "map":
        for key, child in node.entries():
            if "<" in key:
                yield Finding(node.keys[key], "the title of a page holds markup", "write plain text, without '<'")
            yield from _navigation(child, what)
    else:
        yield from _PAGE(node, f"an entry of {what}")


_WORD = _like(r"[A-Za-z][A-Za-z0-9 _.-]*", "write a plain word")
_ICON = _like(r"[a-z0-9]+(-[a-z0-9]+)*(/[a-z0-9]+(-[a-z0-9]+)*)+", "name an icon of the theme, such as material/grass")
_PAGE = _like(r"(?!/)(?!.*\.\.)[\w /.-]+\.md(#[\w-]+)?|https?://[^\s\"'<>]+", "name a page of content/, as about.md, or an address that begins with https://")
_FOLDER = _like(r"(?!.*\.\.)[\w-][\w /.-]*", "name a folder of the book, such as content")
_ADDRESS = _like(r"https?://[^\s\"'<>]+", "write an address that begins with https://")
_LEFT_OUT = _like(r"[^!<]+", "name what is left out, without '!', which would bring hidden files back")
_NUMBER = _like(r"[0-9](-[0-9])?", "write a number, such as 3")
_PALETTE = _map(
    {
        "media": plain_text, "scheme": _WORD, "primary": _WORD, "accent": _WORD,
        "toggle": _map({"icon": _ICON, "name": plain_text}, "setting of the theme"),
    },
    "setting of the theme",
)  # fmt: skip
_THEME = _map(
    {
        "name": _only("material", "write material; other themes are code"), "language": _WORD, "direction": _WORD,
        "font": _only(False, "write false: fonts of others are fetched from them"), "favicon": _FOLDER, "logo": _FOLDER,
        "icon": _map({"logo": _ICON}, "icon of the theme"), "features": _list_of(_WORD), "palette": _either(_PALETTE, list=_list_of(_PALETTE)),
    },
    "setting of the theme",
)  # fmt: skip
_PLUGINS: dict[str, Rule] = {"swardbook": _either(_options_none, map=_map({"today": plain_text}, "option of the plugin")), "search": _options_none}
_EXTENSIONS: dict[str, Rule] = dict.fromkeys(EXTENSIONS, _options_none) | {
    "toc": _either(_options_none, map=_map({"permalink": _flag, "title": plain_text, "toc_depth": _NUMBER, "anchorlink": _flag}, "option of the extension")),
}
_SETTINGS = _map(
    {
        "site_name": plain_text, "site_description": plain_text, "site_author": plain_text, "copyright": plain_text, "site_url": _ADDRESS,
        "docs_dir": _FOLDER, "site_dir": _FOLDER, "use_directory_urls": _flag, "strict": _flag, "nav": _navigation,
        "exclude_docs": _LEFT_OUT, "draft_docs": _LEFT_OUT, "not_in_nav": plain_text,
        "theme": _either(_only("material", "write material; other themes are code"), map=_THEME),
        "plugins": _list_of(_named(_PLUGINS, "plugin")), "extra": _map({"generator": _flag}, "setting under 'extra'"),
        "markdown_extensions": _list_of(_named(_EXTENSIONS, "extension")),
    },
    "setting",
)  # fmt: skip
