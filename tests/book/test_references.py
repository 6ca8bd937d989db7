"""Every id that a record names is found, wherever it stands in the record."""

from generator.book.records import KINDS
from generator.book.references import named_by
from tests.book_folders import WHOLE, load_book


def names(kind: str, id: str) -> set[tuple[str, str]]:
    book, _ = load_book(WHOLE)
    return {(named.reference.kind, named.id) for named in named_by(book.of(kind)[id])}


def test_a_grass_names_its_plan_its_operations_its_cautions_and_its_sources() -> None:
    assert names("grasses", "plaingrass") == {
        ("renovations", "plain-renovation"), ("tasks", "sweep"), ("cautions", "sore-back"), ("sources", "almanac"),
        ("sources", "hearsay"), ("sources", "common practice"), ("sources", "assumption"), ("countries", "AU"),
    }  # fmt: skip


def test_a_plan_names_what_its_steps_name() -> None:
    assert names("renovations", "plain-renovation") >= {
        ("tasks", "sweep"), ("calculators", "sweeping"), ("cautions", "sore-back"), ("aftercare", "after-sweeping"),
    }  # fmt: skip


def test_other_kinds() -> None:
    assert names("places", "flatfield") == {("sources", "almanac"), ("countries", "AU")}
    assert names("calculators", "sweeping") >= {("tasks", "sweep"), ("cautions", "sore-back")}
    assert names("aftercare", "after-sweeping") >= {("tasks", "sweep"), ("cautions", "sore-back")}
    assert names("tasks", "sweep") >= {("calculators", "sweeping"), ("cautions", "sore-back"), ("sources", "hearsay")}


def test_every_kind_that_can_be_named_is_a_kind_of_record() -> None:
    book, _ = load_book(WHOLE)
    kinds = {named.reference.kind for _, _, record in book.records() for named in named_by(record)}
    assert kinds <= {*KINDS, "sources", "countries", "products", "machines"}


def test_a_disagreeing_source_deep_in_a_record_has_its_path() -> None:
    book, _ = load_book(WHOLE)
    paths = {named.path for named in named_by(book.tasks["sweep"]) if named.id == "hearsay"}
    assert paths == {("figures", "sweeps", "others", 0, "source")}
