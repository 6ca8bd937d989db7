"""A small strict reader of HTML: what browsers forgive, this does not."""

from html.parser import HTMLParser

VOID = {"area", "base", "br", "col", "hr", "img", "input", "link", "meta", "source", "wbr"}


class Reader(HTMLParser):
    """Collects faults, ids and the text that a person reads."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[str] = []
        self.faults: list[str] = []
        self.ids: list[str] = []
        self.references: list[str] = []
        self.words: list[str] = []

    def handle_starttag(self, tag, attrs):
        self._attributes(tag, attrs)
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):
        self._attributes(tag, attrs)

    def handle_endtag(self, tag):
        if not self.open or self.open.pop() != tag:
            self.faults.append(f"</{tag}> closes nothing that is open at line {self.getpos()[0]}")

    def handle_data(self, data):
        self.words.append(data)

    def _attributes(self, tag, attrs):
        names = [name for name, _ in attrs]
        if len(names) != len(set(names)):
            self.faults.append(f"<{tag}> says one attribute twice at line {self.getpos()[0]}")
        for name, value in attrs:
            if name == "id":
                self.ids.append(value)
            if name in ("for", "aria-labelledby", "aria-describedby", "aria-controls"):
                self.references += value.split()
            if name.startswith("on") or (value or "").strip().lower().startswith("javascript:"):
                self.faults.append(f"<{tag} {name}> carries script")

    def text(self) -> str:
        return " ".join(" ".join(self.words).split())


def read(html: str) -> Reader:
    reader = Reader()
    reader.feed(html)
    reader.close()
    reader.faults += [f"<{tag}> is never closed" for tag in reader.open]
    return reader
