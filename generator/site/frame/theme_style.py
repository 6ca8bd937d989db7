"""The theme's own stylesheet without what this book never shows: tabs, boxes, blogs and the like that nothing in its settings turns on.

It is the heaviest file but one of every page, and each of its rules is tried at every change of a page: the rules for tabs alone make a
browser look at every step of a job again when one of them moves.
"""

import re
from collections.abc import Collection, Iterator, Mapping
from pathlib import Path
from typing import Any

THEME_STYLES = ("main.*.css", "palette.*.css")

# How the names of classes begin, to what turns them on: an extension of Markdown, a plugin, a setting or feature, or a class (with a dot) that
# a page written by hand gives.
TURNED_ON_BY = {
    "tabbed-": ("pymdownx.tabbed", "pymdownx.blocks.tab"),
    "admonition": ("admonition", "pymdownx.details", "pymdownx.blocks.admonition", "pymdownx.blocks.details"),
    "highlight": ("codehilite", "pymdownx.highlight", "pymdownx.superfences", "pymdownx.inlinehilite"),
    "mermaid": ("pymdownx.superfences",),
    "arithmatex": ("pymdownx.arithmatex",),
    "critic": ("pymdownx.critic",),
    "keys": ("pymdownx.keys",),
    "task-list": ("pymdownx.tasklist",),
    "footnote": ("footnotes",),
    "md-post": ("blog", "material/blog"),
    "md-author": ("blog", "material/blog"),
    "md-profile": ("blog", "material/blog"),
    "md-pagination": ("blog", "material/blog"),
    "md-tag": ("tags", "material/tags"),
    "md-version": ("version",),
    "md-select": ("version", "alternate"),
    "md-consent": ("consent",),
    "md-feedback": ("analytics",),
    "md-social": ("social",),
    "md-source": ("repo_url",),
    "md-annotation": ("content.code.annotate", ".annotate"),
    "md-tooltip": ("content.code.annotate", "content.code.copy", "content.code.select", "content.tooltips", "content.footnote.tooltips", ".annotate"),
}
# The colours that the theme gives where a palette names none.
USUAL_COLOUR = "indigo"
# A rule for whatever comes next makes a browser look at all that follows when something is put in; these are what comes next here.
NARROWER = {".md-typeset table:not([class])+*": ".md-typeset table:not([class])+:is(p,ul,ol,h2,h3)"}
CONDITIONS = ("@media", "@supports", "@layer")
DRAWING = re.compile(r"(--md-[\w-]+):url\(")


def lean_theme(folder: Path, settings: Mapping[str, Any], written: str) -> None:
    """Writes the theme's stylesheets of a built site anew. settings: those of MkDocs; written: the HTML of pages written by hand."""
    palette = settings["theme"].get("palette") or []
    colours = {each[kind].replace(" ", "-") for each in (palette if isinstance(palette, list) else [palette]) for kind in ("primary", "accent") if each.get(kind)}
    turned_on = {
        *settings["markdown_extensions"], *settings["plugins"], *(settings["theme"].get("features") or ()),
        *(key for key, value in {**settings["extra"], "repo_url": settings["repo_url"]}.items() if value),
    }  # fmt: skip
    for file in (found for name in THEME_STYLES for found in (folder / "assets/stylesheets").glob(name)):
        file.write_text(without_unused(file.read_text(encoding="utf-8"), turned_on, colours, written), encoding="utf-8")


def without_unused(style: str, turned_on: Collection[str], colours: Collection[str], written: str) -> str:
    """The stylesheet for a book with these extensions, plugins, settings and colours; a class that `written`, the pages written by hand, names
    stays."""
    unused = [begins for begins, ways in TURNED_ON_BY.items() if not set(ways) & set(turned_on) and not _is_written(begins, ways, written)]
    classes = rf"\.(?:{'|'.join(map(re.escape, unused))})" if unused else r"(?!)"
    kept = "|".join(map(re.escape, sorted({*colours, USUAL_COLOUR})))
    return _without_drawings(_lean(style, re.compile(rf"{classes}|\[data-md-color-(?:primary|accent)=(?!(?:{kept})\])")))


def _is_written(begins: str, ways: Collection[str], written: str) -> bool:
    return any(each in written for each in (begins, *(way.removeprefix(".") for way in ways if way.startswith("."))))


def _lean(style: str, unused: re.Pattern[str]) -> str:
    return "".join(_kept(head, body, unused) for head, body in _rules(style))


def _kept(head: str, body: str | None, unused: re.Pattern[str]) -> str:
    if body is None:
        return head
    if head.startswith(CONDITIONS):
        inner = _lean(body, unused)
        return f"{head}{{{inner}}}" if inner else ""
    selectors = [head] if head.startswith("@") else [NARROWER.get(each, each) for each in _parts(head, ",") if not unused.search(each)]
    return f"{','.join(selectors)}{{{body}}}" if selectors else ""


def _rules(style: str) -> Iterator[tuple[str, str | None]]:
    """Each rule as what stands before its brace and within; None within for a statement that has no braces."""
    begin = 0
    while begin < len(style):
        at = _until(style, begin, "{;")
        if at == len(style) or style[at] == ";":
            yield style[begin : at + 1], None
            begin = at + 1
            continue
        end = _until(style, at + 1, "}")
        yield style[begin:at], style[at + 1 : end]
        begin = end + 1


def _parts(text: str, separator: str) -> list[str]:
    found, begin = [], 0
    while begin <= len(text):
        end = _until(text, begin, separator)
        found.append(text[begin:end])
        begin = end + 1
    return found


def _until(text: str, begin: int, wanted: str) -> int:
    """Where one of the characters stands next, outside quotes and brackets; the end of the text for nowhere."""
    quote, depth, at = "", 0, begin
    while at < len(text):
        character = text[at]
        if character == "\\":
            at += 1
        elif quote:
            quote = "" if character == quote else quote
        elif not depth and character in wanted:
            return at
        elif character in "\"'":
            quote = character
        elif character in "([{":
            depth += 1
        elif character in ")]}":
            depth -= 1
        at += 1
    return len(text)


def _without_drawings(style: str) -> str:
    """Without the drawings that no rule is left for; they are half the weight of what goes."""
    used = set(re.findall(r"var\((--[\w-]+)", style))

    def lean(head: str, body: str | None) -> str:
        if body is None:
            return head
        if head.startswith(CONDITIONS):
            return f"{head}{{{''.join(lean(*rule) for rule in _rules(body))}}}"
        if not head.startswith(":root"):
            return f"{head}{{{body}}}"
        kept = [each for each in _parts(body, ";") if not ((named := DRAWING.match(each)) and named[1] not in used)]
        return f"{head}{{{';'.join(kept)}}}" if kept else ""

    return "".join(lean(*rule) for rule in _rules(style))
