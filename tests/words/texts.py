"""Every text of the book that a reader reads, with the file and the line where it stands.

Four kinds of file hold words: YAML, Markdown, templates, and the few sentences in Python and in scripts that join values.
"""

import ast
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import yaml

ROOT = Path(__file__).parents[2]
FEWEST_WORDS = 3

# What stands under these keys is no prose: names that others gave, ids, formulas, units, and what people type into a search box.
NOT_PROSE = {
    "source", "misspellings", "asked_as", "names", "signs", "unit", "us_unit", "id", "title", "organisation", "short_title", "address",
    "licence", "attribution", "formula", "result", "do_when", "not_when", "only_when", "binds", "botanical_name", "botanical_synonyms",
    "station", "fill", "AU", "NZ", "ZA", "US", "GB", "IE", "task", "tasks", "cautions", "after", "calculator", "colour_code",
}  # fmt: skip
INLINE_TAGS = "a|abbr|b|code|em|i|kbd|small|span|strong|time"

_PLACEHOLDER_WORDS = re.compile(r"\{[^{}]*\.words\}")
_PLACEHOLDER = re.compile(r"\{[^{}\n]*\}")
_WORD = re.compile(r"[A-Za-z]{2,}")
_SCRIPT_TEXT = re.compile(r"'((?:[^'\\\n]|\\.)*)'|\"((?:[^\"\\\n]|\\.)*)\"")


@dataclass(frozen=True)
class Text:
    """A text, the file it stands in, its first and last line there (from 1), and the key or kind it stands under."""

    path: str
    line: int
    last_line: int
    key: str
    text: str

    def line_of(self, words: str) -> int:
        """The line of the file on which `words` begin; the text's first line when they are broken across lines."""
        lines = _lines(self.path)
        for start in (words, words.split()[0] if words.split() else words):
            for number in range(self.line, min(self.last_line, len(lines)) + 1):
                if start in lines[number - 1]:
                    return number
        return self.line


@cache
def _lines(path: str) -> list[str]:
    return (ROOT / path).read_text(encoding="utf-8").split("\n")


def plain(text: str) -> str:
    """The text with something short to read where a figure is put in."""
    return _PLACEHOLDER.sub("5 mm", _PLACEHOLDER_WORDS.sub("a third", text))


@cache
def book_texts() -> tuple[Text, ...]:
    """The texts that become pages: data, content, templates, and sentences of the generator."""
    found: list[Text] = []
    for path in _files("data", "**/*.yml"):
        found += yaml_texts(path)
    for path in _files("content", "**/*.md"):
        found += markdown_texts(path)
    for path in _files("generator/site", "**/*.j2", "**/*.html"):
        found += template_texts(path)
    for room in ("season", "calculators", "words", "jobs", "field", "files", "site"):
        for path in _files(f"generator/{room}", "**/*.py"):
            found += python_texts(path)
    for path in _files("generator/site", "**/*.js"):
        found += script_texts(path)
    return tuple(found)


@cache
def guide_texts() -> tuple[Text, ...]:
    """The texts for authors and developers."""
    return tuple(text for name in ("README.md", "DEVELOPERS.md", "CHANGELOG.md") if (ROOT / name).exists() for text in markdown_texts(name))


def _files(folder: str, *patterns: str) -> Iterator[str]:
    for pattern in patterns:
        for file in sorted((ROOT / folder).glob(pattern)):
            path = file.relative_to(ROOT).as_posix()
            if "/vendor/" not in path and "/schema/" not in path:
                yield path


def _prose(text: str) -> bool:
    return " " in text.strip() and len(_WORD.findall(text)) >= FEWEST_WORDS


def yaml_texts(path: str) -> Iterator[Text]:
    root = yaml.compose((ROOT / path).read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
    if root is not None:
        yield from _yaml_node(path, root, "")


def _yaml_node(path: str, node: yaml.Node, key: str) -> Iterator[Text]:
    if isinstance(node, yaml.MappingNode):
        for name, value in node.value:
            page_of_a_source = name.value == "where" and isinstance(value, yaml.ScalarNode)
            if name.value not in NOT_PROSE and not page_of_a_source:
                yield from _yaml_node(path, value, name.value)
    elif isinstance(node, yaml.SequenceNode):
        for value in node.value:
            yield from _yaml_node(path, value, key)
    elif _prose(node.value):
        yield Text(path, node.start_mark.line + 1, node.end_mark.line + 1, key, " ".join(node.value.split()))


def markdown_texts(path: str) -> Iterator[Text]:
    """Paragraphs, items and headings; no code, no rows of a table's rule, a link's words only."""
    text = (ROOT / path).read_text(encoding="utf-8")
    text = re.sub(r"```.*?```|<!--.*?-->", lambda found: "\n" * found[0].count("\n"), text, flags=re.DOTALL)
    block: list[str] = []
    start = 1
    for number, line in enumerate([*text.split("\n"), ""], start=1):
        if not line.strip() or re.match(r"\s*(?:[-*#|>]|\d+\.) ?", line):
            yield from _markdown_block(path, start, number - 1, block)
            block, start = [], number
        if line.strip():
            start = start if block else number
            block.append(line)
    yield from _markdown_block(path, start, number, block)


def _markdown_block(path: str, first: int, last: int, block: list[str]) -> Iterator[Text]:
    joined = " ".join(line.strip() for line in block)
    for cell in joined.strip("| ").split(" | ") if joined.startswith("|") else [joined]:
        cell = re.sub(r"`[^`]*`", "it", re.sub(r"!?\[([^\]]*)\]\([^)]*\)", r"\1", cell))
        cell = re.sub(r"^(?:[-*#>]+|\d+\.)\s*|[*_]{1,2}(?=\S)|(?<=\S)[*_]{1,2}", "", cell).strip()
        if _prose(cell):
            yield Text(path, first, max(first, last), "markdown", cell)


def template_texts(path: str) -> Iterator[Text]:
    text = (ROOT / path).read_text(encoding="utf-8")
    blank = r"\{#.*?#\}|\{%.*?%\}|<(?:script|style|svg)\b.*?</(?:script|style|svg)>"
    text = re.sub(blank, lambda found: "\0" + "\n" * found[0].count("\n"), text, flags=re.DOTALL)
    text = re.sub(r"\{\{.*?\}\}", "it", text, flags=re.DOTALL)
    text = re.sub(rf"</?(?:{INLINE_TAGS})\b[^>]*>", "", text)
    text = re.sub(r"<[^>]*>", lambda found: "\0" + "\n" * found[0].count("\n"), text)
    line = 1
    for part in text.split("\0"):
        begins = line + part[: len(part) - len(part.lstrip())].count("\n")
        line += part.count("\n")
        if _prose(part):
            yield Text(path, begins, line, "template", " ".join(part.split()))


def python_texts(path: str) -> Iterator[Text]:
    tree = ast.parse((ROOT / path).read_text(encoding="utf-8"))
    documents = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    inside = {id(part) for node in ast.walk(tree) if isinstance(node, ast.JoinedStr) for part in ast.walk(node) if part is not node}
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            text = "".join(part.value if isinstance(part, ast.Constant) else "it" for part in node.values)
        elif isinstance(node, ast.Constant) and isinstance(node.value, str) and not {id(node)} & (documents | inside):
            text = node.value
        else:
            continue
        if _prose(text):
            yield Text(path, node.lineno, node.end_lineno, "python", " ".join(text.split()))


def script_texts(path: str) -> Iterator[Text]:
    for number, line in enumerate(_lines(path), start=1):
        code = re.sub(r"(^|\s)//.*|^\s*\*.*", "", line)
        for found in _SCRIPT_TEXT.finditer(code):
            text = found[1] or found[2] or ""
            if _prose(text) and re.search(r"[a-z] [a-z]", text) and "<" not in text:
                yield Text(path, number, number, "script", text)
