"""What a book chooses of the shared knowledge: it is in order, whatever was chosen, and nothing in it speaks of what was not."""

import random
import re
from pathlib import Path

import pytest

from generator.book.book import Book, PartialBook
from generator.book.loading.marked_yaml import Node
from generator.book.loading.whole_book import read_book
from generator.checks import check_book
from tests.our_book import ROOT, book
from tests.slices import first

GRASSES, PLACES, PLANS = sorted(book().grasses), sorted(book().places), sorted(book().renovations)
FEED = (
    "feed: own-feed\nproducts:\n  own-feed: {name: Own feed, nitrogen_percent: 20, phosphate_percent: 2, potash_percent: 8, slow_release_percent: 50, "
    "pack_mass_kg: 20, full_rate_kg_per_100_m2: 3, for_tasks: [feed]}\n"
)
EXAMPLE = next(text for text in re.findall(r"```yaml\n(.*?)```", (ROOT / "README.md").read_text(), re.DOTALL) if "\nextends: " in text)
# Names of publications, of plants that are none of ours, and ids: what is written there is quoted, or read by nobody.
QUOTED_FILES = {"sources"}


def own_book(folder: Path, grasses: list[str], places: list[str], more: str = "") -> Path:
    (folder / "data").mkdir(parents=True)
    (folder / "content").mkdir()
    (folder / "mkdocs.yml").write_text((ROOT / "mkdocs.yml").read_text().replace(book().practice.title, "Heron Lawns practice book"))
    (folder / "data/practice.yml").write_text(
        "name: Heron Lawns\ninvented: false\nshared_knowledge: true\nabout: Lawns.\n"
        f"home_place: {places[0]}\nplaces: [{', '.join(places)}]\nhome_grass: {grasses[0]}\ngrasses: [{', '.join(grasses)}]\n{FEED}{more}"
    )
    return folder


def texts(tree: Node) -> list[str]:
    if tree.kind == "scalar":
        return [tree.value] if isinstance(tree.value, str) else []
    return [text for child in tree.children.values() for text in texts(child)]


def unheard(made: PartialBook, whole: Book) -> re.Pattern[str] | None:
    """One name of each grass that is not in the book, where no other grass or plant has it in its name: its botanical name, and what
    the practice's country calls it."""
    gone = [grass for id, grass in whole.grasses.items() if id not in made.grasses]
    kept = " ".join(name.casefold() for grass in made.grasses.values() for name in (grass.name, grass.botanical_name, *sum(grass.names.values(), ())))
    names = {grass.name.casefold() for grass in gone} | {" ".join(grass.botanical_name.split()[:2]).casefold() for grass in gone}
    names = {name for name in names if name not in kept} - {"couch", "agrostis capillaris"}
    return re.compile(rf"\b({'|'.join(sorted(map(re.escape, names)))})\b", re.IGNORECASE) if names else None


@pytest.mark.parametrize("seed", first(2, range(60)))
def test_any_choice_is_a_book_in_order_that_speaks_of_nothing_else(seed: int, tmp_path: Path) -> None:
    rng = random.Random(seed)
    grasses, places = rng.sample(GRASSES, rng.randint(1, 6)), rng.sample(PLACES, rng.randint(1, 4))
    plans = f"plans: [{', '.join(rng.sample(PLANS, rng.randint(1, 4)))}]\n" if seed % 3 == 0 else ""
    root = own_book(tmp_path / "own", grasses, places, plans)
    loaded = check_book(root, 2026)
    assert loaded.findings == []
    made = loaded.book
    assert made is not None
    assert (sorted(made.grasses), sorted(made.places)) == (sorted(grasses), sorted(places))
    assert dict(made.cautions) == dict(book().cautions), "no choice loses a caution"
    names = unheard(made, book())
    said = [
        f"{kind}/{id}: {text}" for (kind, id), tree in made.trees.items() if kind not in QUOTED_FILES for text in texts(tree)
        if names is not None and names.search(text) and not re.fullmatch(r"[a-z0-9-]+", text)
    ]
    assert said == []


def test_what_is_chosen_and_is_not_there_is_told_with_the_nearest_name(tmp_path: Path) -> None:
    root = own_book(tmp_path / "own", ["couch", "kikuyo"], ["sydney"], "plans: [top-dres-and-level]\nwithout: {problems: [mos]}\n")
    _, found = read_book(root)
    assert [str(each) for each in found] == [
        "data/practice.yml:8:18: 'kikuyo' is not in data/grasses; did you mean 'kikuyu'?",
        "data/practice.yml:12:9: 'top-dres-and-level' is not in data/renovations; did you mean 'top-dress-and-level'?",
        "data/practice.yml:13:22: 'mos' is not in data/problems; did you mean 'moss'?",
    ]


def test_what_an_owner_wrote_of_something_left_out_is_told_and_not_cut(tmp_path: Path) -> None:
    root = own_book(tmp_path / "own", ["couch"], ["sydney"], "without: {answers: [guarantee]}\n")
    (root / "data/answers").mkdir()
    (root / "data/answers/our-prices.yml").write_text((ROOT / "data/answers/looks-worse.yml").read_text().replace(
        "see: {", "see: {grasses: [kikuyu], ").replace("answers: [how-long-until-green]", "answers: [guarantee]").replace("question: ", "question: Our own. ", 1))
    (root / "data/grasses").mkdir()
    (root / "data/grasses/couch.yml").write_text(EXAMPLE)
    made, findings = read_book(root)
    found = [str(each) for each in findings]
    assert len(found) == 2
    assert any("grass 'kikuyu' is left out of this book; choose it in data/practice.yml, or take it out here" in line for line in found)
    assert any("answer 'guarantee' is left out of this book" in line for line in found)
    couch, shared = made.grasses["couch"], book().grasses["couch"]
    assert (couch.mowing_height.use, couch.mowing_height.sources, couch.recovery) == (15, ("ours",), shared.recovery), "the README's example does what it says"
    assert len(couch.never) == len(shared.never) + 1


def test_an_owners_own_answer_may_hold_their_own_figures_under_their_own_heading(tmp_path: Path) -> None:
    root = own_book(tmp_path / "own", ["couch"], ["sydney"])
    (root / "data/answers").mkdir()
    text = (ROOT / "data/answers/looks-worse.yml").read_text()
    (root / "data/answers/our-rounds.yml").write_text(
        re.sub(r"(?m)^topic: .*", "topic: our rounds", text).replace("question: ", "question: Our own. ", 1).replace("when we come to look.", "when we come, 12 days on, in March.")
    )
    (root / "data/topics.yml").write_text("answers: {add: [our rounds]}\n")
    assert check_book(root, 2026).findings == []
    (root / "data/topics.yml").unlink()
    assert [str(each).split(";")[0] for each in check_book(root, 2026).findings] == ["data/answers/our-rounds.yml:9:8: 'our rounds' is no topic of answers"]
