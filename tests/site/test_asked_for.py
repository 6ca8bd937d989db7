"""Pages that people look for by everyday words: the complaint or the question as it is typed brings up its page among the first three."""

from collections.abc import Callable

from tests.site.reader import Reader

READY = "() => !!(window.Swardbook && Swardbook.search && Swardbook.search.ask)"
FIRST_THREE = "text => Swardbook.search.ask(text).slice(0, 3).map(find => find.page.path)"
ASKED_FOR = {
    "best grass for shade": "which-grass.html", "hard wearing grass": "which-grass.html", "salt tolerant grass": "which-grass.html",
    "which grass needs least water": "answers/least-water.html", "which grass for dogs": "answers/best-for-children.html",
    "durban grass": "answers/durban-grass.html", "LM grass": "answers/durban-grass.html", "what is my lawn grass": "answers/what-grass.html",
    "can I renovate in winter": "answers/why-not-in-winter.html", "is it too late to overseed": "answers/too-late-to-overseed.html",
    "chinch bug": "problems/chinch-bugs.html", "nutgrass": "problems/nutgrass.html", "uintjies": "problems/nutgrass.html",
    "bindii": "problems/bindii.html", "onehunga weed": "problems/bindii.html", "crabgrass": "problems/summer-grass.html",
    "clover in lawn": "problems/broadleaf-weeds.html", "grey leaf spot": "problems/leaf-spots.html",
}  # fmt: skip


def test_what_people_look_for_is_found(reader: Callable[..., Reader]) -> None:
    page = reader().open("index.html")
    page.locator(".md-search__input").focus()
    page.wait_for_function(READY)
    found = {asked: page.evaluate(FIRST_THREE, asked) for asked in ASKED_FOR}
    assert {asked: hits for asked, hits in found.items() if ASKED_FOR[asked] not in hits} == {}
