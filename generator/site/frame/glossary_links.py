"""Leads from the first use of a word of the trade on a page to that word in the glossary.

The links are put into the finished page, so that no author types one and a new word is led to wherever it is used. Left alone are
headings, links, buttons and forms, the page's opening, cautions, tables of names, what search does not read, and what a script owns.
"""

import re
from collections.abc import Iterable, Iterator, Mapping

from generator.book.records.glossary import Term
from generator.site.page import Links, Page
from generator.site.page_tree import PageTree
from generator.site.shared.see_links import GLOSSARY, explained_on

# As a selector of CSS: an element that stands in one of these, or is one.
LEFT = ", ".join((
    "a", "button", "label", "summary", "script", "style", "svg", "math", "select", "textarea", "form", "nav", "table", "dt", "cite",
    "h1", "h2", "h3", "h4", "h5", "h6", ".sb-lead", ".sb-source-marks", ".sb-hidden", ".sb-caution", ".sb-names-table", ".sb-asked__ask",
    "[data-search-exclude]", "[data-component]",
))  # fmt: skip
BLANKS = " \t\n\r\f"  # A tree may leave out a text of these alone.
_TAG = re.compile(r"(<[^<>]*>)")
_WORD = re.compile(r"(?<![\w&#-])[A-Za-z]+(?!\w)")


class GlossaryLinks:
    """The words that texts lead to, ready to be looked up. terms: of the glossary, by id."""

    def __init__(self, terms: Mapping[str, Term]):
        self._pages = {id: explained_on(term.see) for id, term in terms.items()}
        self._by_first: dict[str, list[tuple[re.Pattern[str], str]]] = {}
        for form, id in sorted(_forms(terms), key=lambda each: -len(each[0])):
            whole = re.compile(re.escape(form).replace(r"\ ", r"[\s-]+").replace(r"\-", r"[\s-]") + r"(?![\w-])", re.IGNORECASE)
            self._by_first.setdefault(re.split(r"[\s-]", form.casefold())[0], []).append((whole, id))

    def page(self, page: Page, html: str, tree: PageTree) -> str:
        """The page with its words linked. html: as our own templates write it, `<` and `>` escaped in texts; tree: the tree of it."""
        links = Links(page.path)
        addresses = {id: links.to(GLOSSARY, id) for id, pages in self._pages.items() if page.path not in pages}
        pieces = _TAG.split(html)
        # No parser tells where in the page a text stood: the tree's texts and what is between the tags are laid side by side, in order.
        texts = [index for index in range(0, len(pieces), 2) if pieces[index].strip(BLANKS)]
        for index, runs in zip(texts, (runs for text, runs in tree.texts(LEFT) if text.strip(BLANKS)), strict=True):
            if runs and addresses:
                pieces[index] = "".join(self._words(pieces[index], addresses))
        return "".join(pieces)

    def _words(self, text: str, addresses: dict[str, str]) -> Iterator[str]:
        """addresses: of the words still to be led to; each goes out once it was."""
        at = 0
        for word in _WORD.finditer(text):
            if word.start() < at:
                continue
            for whole, id in self._by_first.get(word[0].casefold(), ()):
                if id in addresses and (found := whole.match(text, word.start())):
                    yield text[at:word.start()]
                    yield f'<a class="sb-word" href="{addresses.pop(id)}">{found[0]}</a>'
                    at = found.end()
                    break
        yield text[at:]


def _forms(terms: Mapping[str, Term]) -> Iterable[tuple[str, str]]:
    """Each word that leads to an entry, in one and in many; a word with an everyday meaning leads nowhere."""
    own = {term.name.casefold() for term in terms.values()}
    for id, term in terms.items():
        if not term.plain_word:
            yield term.name, id
            if (many := _many(term.name)).casefold() not in own:
                yield many, id


def _many(word: str) -> str:
    if word.endswith(("ch", "sh", "x", "ss")):
        return f"{word}es"
    return f"{word[:-1]}ies" if word.endswith("y") and word[-2:-1] not in (*"aeiou", "") else f"{word}s"
