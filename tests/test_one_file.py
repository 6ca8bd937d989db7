"""A new grass, task, caution, place, calculator, plan, sheet or problem is one new file: nothing else is touched, and the built site has it."""

import json
import shutil
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from generator.book.records import KINDS
from generator.cli import main
from tests.book_folders import BOOKS, SMALLEST

ADDITIONS = BOOKS / "additions"


@dataclass(frozen=True)
class Addition:
    """One new file: `page` is its own page; `shown` are pages that must lead to it; `asked` is what a reader would search for."""

    kind: str
    id: str
    name: str
    page: str | None
    shown: tuple[str, ...] = ()
    asked: tuple[str, ...] = ()
    files: tuple[str, ...] = ()


ALL = (
    Addition(
        "grasses", "fairgrass", "Fairgrass", "grasses/fairgrass.html",
        shown=("index.html", "grasses/index.html", "renovate/index.html", "calendars/index.html", "places/flatfield.html", "names.html"),
        asked=("Fairgrass", "mooigras", "fairgras"),
        files=("renovate/fairgrass.html", "calendars/flatfield/fairgrass.html", "assets/seasons/fairgrass--flatfield.js",
               "book/seasons/flatfield/fairgrass.json"),
    ),
    Addition(
        "tasks", "comb", "Comb", "tasks/comb.html",
        shown=("tasks/index.html", "names.html", "calendars/flatfield/plaingrass.html", "assets/seasons/plaingrass--flatfield.js"),
        asked=("Comb", "tousle"),
    ),
    Addition("cautions", "wet-grass", "Wet grass", "cautions/wet-grass.html", shown=("cautions/index.html",), asked=("Wet grass",)),
    Addition(
        "places", "hillside", "Hillside", "places/hillside.html",
        shown=("index.html", "calendars/index.html", "grasses/plaingrass.html", "renovate/plaingrass.html"),
        asked=("Hillside",),
        files=("calendars/hillside/plaingrass.html", "assets/seasons/plaingrass--hillside.js", "book/seasons/hillside/plaingrass.json"),
    ),
    Addition(
        "calculators", "combing", "Combing", "calculators/combing.html", shown=("calculators/index.html",), asked=("Combing",),
        files=("assets/calculators/combing.js",),
    ),
    # A hold has no page of its own: it answers for its tasks.
    Addition("holds", "soft-morning", "Soft morning", None),
    Addition(
        "renovations", "gentle-renovation", "Gentle renovation", "plans/gentle-renovation.html", shown=("plans/index.html",),
        asked=("Gentle renovation",),
    ),
    # Nor has a step that plans share: the plans that use it show it.
    Addition("steps", "look-again", "Look again", None),
    Addition(
        "aftercare", "after-combing", "After combing", "aftercare/after-combing.html", shown=("aftercare/index.html",),
        asked=("After combing",),
    ),
    Addition(
        "problems", "blue-lawn", "Blue lawn", "problems/blue-lawn.html", shown=("problems/index.html",), asked=("Blue lawn", "azure lawn", "bleu lawn"),
    ),
    # An expert stands where the problems are found, and problems send for them.
    Addition("experts", "painter", "A painter", None),
    Addition(
        "answers", "is-it-flat", "Is it flat?", "answers/is-it-flat.html", shown=("answers/index.html",), asked=("Is it flat?", "flat lawn"),
    ),
)  # fmt: skip


def build(book: Path) -> None:
    """By the command its author types, in this process: a dozen interpreters more would only take longer."""
    run = CliRunner().invoke(main, ["build", "--book", str(book)])
    assert run.exit_code == 0, run.output


@pytest.fixture(scope="module", params=ALL, ids=lambda addition: addition.kind)
def built(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[Addition, Path]:
    """The smallest book with one file more, built by the command its author types."""
    addition = request.param
    book = tmp_path_factory.mktemp(addition.kind) / "book"
    shutil.copytree(SMALLEST, book)
    (book / "data" / addition.kind).mkdir(exist_ok=True)
    shutil.copyfile(ADDITIONS / addition.kind / f"{addition.id}.yml", book / "data" / addition.kind / f"{addition.id}.yml")
    build(book)
    return addition, book / "site"


def read_json(file: Path) -> Any:
    return json.loads(file.read_text(encoding="utf-8"))


def test_there_is_an_addition_of_every_kind() -> None:
    assert {addition.kind for addition in ALL} == set(KINDS) == {folder.name for folder in ADDITIONS.iterdir()}


def test_it_has_a_page_with_its_name(built: tuple[Addition, Path]) -> None:
    addition, site = built
    assert addition.page is None or f">{addition.name}</h1>" in (site / addition.page).read_text(encoding="utf-8")
    assert not [path for path in addition.files if not (site / path).is_file()]


def test_the_pages_that_list_its_kind_show_it(built: tuple[Addition, Path]) -> None:
    addition, site = built
    assert not [path for path in addition.shown if addition.name not in (site / path).read_text(encoding="utf-8")]


def test_search_knows_it_by_each_of_its_names(built: tuple[Addition, Path]) -> None:
    addition, site = built
    told = (site / "assets/search/book.js").read_text(encoding="utf-8").removeprefix("Swardbook.search.read(").removesuffix(");\n")
    hits = [page for page in json.loads(told)["pages"] if page["path"] == addition.page]
    words = [word for page in hits for word in (page["title"], *page.get("names", ()), *page.get("heard", ()))]
    assert set(addition.asked) <= set(words)


def test_it_is_in_the_data_of_the_book(built: tuple[Addition, Path]) -> None:
    addition, site = built
    record = read_json(site / f"book/{addition.kind}.json")["records"][addition.id]
    assert record[{"steps": "title", "answers": "question"}.get(addition.kind, "name")] == addition.name


def test_a_plan_that_uses_a_new_step_shows_it(tmp_path: Path) -> None:
    """The step is one file; the plan says in its own that it uses it, and on which day."""
    book = tmp_path / "book"
    shutil.copytree(SMALLEST, book)
    shutil.copytree(ADDITIONS / "steps", book / "data/steps")
    plan = book / "data/renovations/plain-renovation.yml"
    plan.write_text(plan.read_text(encoding="utf-8").rstrip() + "\n  - use: look-again\n    day: 9\n", encoding="utf-8")
    build(book)
    page = (book / "site/renovate/plaingrass.html").read_text(encoding="utf-8")
    assert "See that it still grows." in page and "Day 9" in page


def test_a_grass_that_follows_a_new_plan_shows_its_steps(tmp_path: Path) -> None:
    """The plan is one file; the grass says which plan it follows in its own."""
    book = tmp_path / "book"
    shutil.copytree(SMALLEST, book)
    shutil.copy(ADDITIONS / "renovations/gentle-renovation.yml", book / "data/renovations")
    grass = book / "data/grasses/plaingrass.yml"
    grass.write_text(grass.read_text(encoding="utf-8").replace("renovation: plain-renovation", "renovation: gentle-renovation"), encoding="utf-8")
    build(book)
    assert "Nothing needs doing." in (book / "site/renovate/plaingrass.html").read_text(encoding="utf-8")
