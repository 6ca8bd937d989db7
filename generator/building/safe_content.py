"""What may lie in content/ in a safe build: pages whose markup only lays out text, and pictures.

Of each page the markup is looked at that Markdown makes of it, against a closed list, so that no spelling of a script gets by.
"""

import os
import re
from collections.abc import Iterator, Mapping
from html import unescape
from html.parser import HTMLParser
from pathlib import Path
from typing import NamedTuple

from generator.findings import Finding, Where, one_line

PICTURES = (".png", ".jpg", ".jpeg", ".gif", ".webp", ".avif", ".ico")
FILES = (".md", *PICTURES, ".txt", ".csv", ".ics")
FRONT_MATTER = ("title", "description", "words", "hide")
ELEMENTS = set(
    "a abbr b blockquote br caption cite code col colgroup dd del details dfn div dl dt em figcaption figure h1 h2 h3 h4 h5 h6 hr i img "
    "input ins kbd label li mark nav ol p pre q s samp section small span strong sub summary sup table tbody td tfoot th thead time tr u "
    "ul var".split()
)
ATTRIBUTES = set(
    "align alt checked class colspan datetime dir disabled height href id lang markdown open role rowspan scope span src start style title type "
    "value width".split()
)
VALUES = {"style": re.compile(r"text-align: ?(left|center|right);?"), "type": re.compile(r"checkbox|1|a|A|i|I")}
HREF, SRC = re.compile(r"(https?:|mailto:|tel:)\S*|[^\s:#]*(#\S*)?", re.IGNORECASE), re.compile(r"(?!//)[^\s:]*")
COMMENT = re.compile(r" *swardbook: [a-z-]+ *|[^<>]*[^<>!-] +")  # What two readers could end at different places is none.
OTHERWISE = "take it out, or read the book and build it without --safe"


class RefusedMarkup(NamedTuple):
    what: str
    begins: str  # the text to look for in the page as it was written


def safe_files(root: Path, content: str) -> list[Finding]:
    """What a safe build refuses of the files in the folder `content` of a book. Links are never followed."""
    folder = root / content
    if not Path(os.path.realpath(folder)).is_relative_to(os.path.realpath(root)):
        return [Finding(Where(content), "the folder is a link that leads out of the book", "put the pages themselves there")]
    return sorted(_files(folder, content))


def _files(folder: Path, path: str) -> Iterator[Finding]:
    for entry in os.scandir(folder) if folder.is_dir() else ():
        if entry.name.startswith("."):  # MkDocs publishes none.
            continue
        where = Where(one_line(f"{path}/{entry.name}"))
        if entry.is_symlink():
            yield Finding(where, "a link could lead to any file of this computer", "put the file itself here")
        elif entry.is_dir():
            yield from _files(Path(entry.path), f"{path}/{entry.name}")
        elif not entry.is_file() or not entry.name.lower().endswith(FILES):
            yield Finding(where, f"a safe build publishes only {', '.join(FILES)}", OTHERWISE)


def safe_page(path: str, source: str, html: str, title: str, front_matter: Mapping[str, object]) -> list[Finding]:
    """What a safe build refuses in a page.

    path: from the book's folder; source: the page as it was written; html: what Markdown made of it; title: as the page is called.
    """
    found = [RefusedMarkup(f"a safe build takes no '{key}' at the head of a page", f"{key}:") for key in front_matter if key not in FRONT_MATTER]
    for name, text in (("title", title), ("description", front_matter.get("description", ""))):
        if "<" in unescape(str(text)):
            found.append(RefusedMarkup(f"the {name} of the page holds markup", "<"))
    reading = _Reading()
    reading.feed(html)
    reading.close()
    return sorted({Finding(_where(path, source, each.begins), one_line(each.what), OTHERWISE) for each in [*found, *reading.found]})


def _where(path: str, source: str, begins: str) -> Where:
    at = max(source.lower().find(begins.lower()), 0)
    return Where(path, source.count("\n", 0, at) + 1, at - source.rfind("\n", 0, at))


class _Reading(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=False)
        self.found: list[RefusedMarkup] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        whole = self.get_starttag_text() or ""
        if tag not in ELEMENTS:
            self.found.append(RefusedMarkup(f"the element '{tag}' could run something or fetch it", f"<{tag}"))
        if "<" in whole[1:]:
            self.found.append(RefusedMarkup(f"the element '{tag}' is not closed with '>'", whole))
        for name, value in attrs:
            if name not in ATTRIBUTES or (name in VALUES and not VALUES[name].fullmatch(value or "")):
                self.found.append(RefusedMarkup(f"the attribute '{name}' of '{tag}' could run something or fetch it", name))
            elif name in ("href", "src") and not (HREF if name == "href" else SRC).fullmatch((value or "").strip()):
                self.found.append(RefusedMarkup(f"the address '{value}' is neither a page of the book nor one of the web", value or name))

    def handle_data(self, data: str) -> None:
        if "<" in data:  # Markdown spells it &lt; where it is text.
            self.found.append(RefusedMarkup("a '<' begins markup that is not ended", "<"))

    def handle_comment(self, data: str) -> None:
        if not COMMENT.fullmatch(data):
            self.found.append(RefusedMarkup("a comment holds signs that could end it early", "<!--"))

    def handle_decl(self, decl: str) -> None:
        self.found.append(RefusedMarkup("'<!' begins no markup of a page", "<!"))

    def unknown_decl(self, data: str) -> None:
        self.handle_decl(data)

    def handle_pi(self, data: str) -> None:
        self.found.append(RefusedMarkup("'<?' begins no markup of a page", "<?"))
