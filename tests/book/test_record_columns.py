"""The columns of the work record hold what published lists ask for; each list as its authority prints it."""


import pytest
from pydantic import ValidationError

from generator.book.book import Book
from generator.book.records.work_record import WorkRecord
from tests.our_book import book as our_book

# What the authority's own text names, as the column that takes it. Read in 2026; the text is named beside each.
ASKED = {
    # Pesticides Regulation 2017 (NSW), clause 36(1) a to h: full product name; date; crop or situation; rate and quantity; address
    # and delineation of the area; who applied; who was supervised; wind speed and direction; other weather that the label names.
    "nsw": "product date grass rate amount lawn part applied_by supervised_by wind_speed wind_direction temperature rain",
    # Agriculture Victoria 2023: trade name; date; rate; crop or situation; location; wind; applicator; supervisor; for whom.
    "vic": "product date rate grass part wind_speed wind_direction applied_by supervised_by lawn",
    # DPIRD Western Australia: date and time; owner and applicator; location; product; method; rate; situation.
    "wa": "date start applied_by lawn part product equipment rate grass",
    # 7 CFR 110.3(a): brand name and EPA registration number; total amount; location, size of area, crop or site; month, day and
    # year; name and certification number of the applicator who applied or supervised.
    "usda": "product registration_number amount lawn part area grass date applied_by supervised_by licence_number",
    # US EPA, applicator recordkeeping under the EPA plan: person for whom; location; size; crop or site; date and time; product;
    # registration number; total amount; certified applicator with number, and others who applied.
    "epa": "lawn part area grass date start product registration_number amount applied_by supervised_by licence_number",
    # Scottish code of practice, annex F: worker; site; crop or area; reason; product and MAPP number; dose; volume; total
    # product; total area; start and finish; weather such as wind; other information.
    "scotland": "applied_by lawn grass target product registration_number rate water amount area start finish wind_speed wind_direction remarks",
    # Regulation (EC) 1107/2009, article 67(1): product, time and dose, area and crop.
    "gb": "product date start rate area grass",
}


@pytest.fixture(scope="module")
def book() -> Book:
    return our_book()


@pytest.mark.parametrize("list_id", ASKED)
def test_every_field_of_a_list_has_its_column(book: Book, list_id: str) -> None:
    marked = {id for id, column in book.record.columns.items() if list_id in column.asked_by}
    assert set(ASKED[list_id].split()) <= marked


def test_no_list_is_without_columns_and_none_calls_itself_the_law(book: Book) -> None:
    for id in book.record.lists:
        assert any(id in column.asked_by for column in book.record.columns.values()), id
    assert "not the law" in book.record.law


def test_a_list_that_was_read_only_where_it_is_quoted_says_what_it_is_good_for(book: Book) -> None:
    for id, each in book.record.lists.items():
        assert each.note or all(book.sources[source].read != "quoted" for source in each.sources), id


@pytest.mark.parametrize(("column", "change", "told"), [
    ("area", {"unit": None}, "a number has a unit, and nothing else has one"),
    ("remarks", {"choices": {"a": "A"}}, "a choice has choices, and nothing else has them"),
    ("amount", {"kind": "text", "unit": None}, "the yearly sum needs a column 'amount' of kind number"),
    ("remarks", {"asked_by": ["nobody"]}, "column 'remarks' is asked for by 'nobody', which is not among the lists"),
    ("work", {"choices": {"dig": "Dig"}}, "the work is a spray or a feed"),
])  # fmt: skip
def test_columns_that_do_not_fit_are_told(book: Book, column: str, change: dict, told: str) -> None:
    written = book.record.model_dump(mode="json")
    written["columns"][column] |= change
    with pytest.raises(ValidationError, match=told):
        WorkRecord.model_validate(written)
