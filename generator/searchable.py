"""What of a page search should read: everything but the parts marked data-search-exclude.

The theme's own search leaves such parts' headings in its index, one record each; a calendar of twelve printed months
would fill it with months. Here the marked parts are gone before the index sees the page.
"""

from html import escape
from html.parser import HTMLParser

MARK = "data-search-exclude"

# Where search cuts a text and a query into words. Search takes a word typed for the start of a word, so 'when to scarify'
# would ask for every page with 'topdress'; little words are therefore cut away like the spaces around them.
LITTLE_WORDS = (
    "a an and are as at be by can do does for from how i if in is it long many much my of on or should that the this to "
    "was what when where which who why will with you your"
).split()
SEPARATOR = rf"[\s\-]+|\b(?:{'|'.join(LITTLE_WORDS)})\b"
VOID = frozenset({"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"})


class _Filter(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.kept: list[str] = []
        self._depth = 0  # elements open inside a marked part, itself included

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if self._depth or any(name == MARK for name, _ in attrs):
            self._depth += tag not in VOID
            return
        identity = next((f' id="{escape(value)}"' for name, value in attrs if name == "id" and value), "")
        self.kept.append(f"<{tag}{identity}>")

    def handle_endtag(self, tag: str) -> None:
        if tag in VOID:
            return
        if self._depth:
            self._depth -= 1
        else:
            self.kept.append(f"</{tag}>")

    def handle_data(self, data: str) -> None:
        if not self._depth:
            self.kept.append(escape(data, quote=False))


def searchable(html: str) -> str:
    """The page for the search index: tags, ids and words, without the marked parts."""
    reader = _Filter()
    reader.feed(html)
    reader.close()
    return "".join(reader.kept)
