"""What an answer's page says beside its own words: a table from the grasses, the message to paste, and where a retired one leads."""

from datetime import date

from generator.site.frame.render import render
from generator.site.page_context import PageContext
from generator.site.pages.answer.view import answer_page
from generator.site.pages.retired.view import FOLDERS, retired_page
from tests.book_folders import WHOLE, load_book
from tests.our_book import seasons

BOOK = load_book(WHOLE).book
ID = "how-often-sweep"


def here(path: str, book=BOOK) -> PageContext:
    return PageContext(book, path, date(2026, 1, 1))


def test_a_table_has_a_row_for_each_grass_with_its_own_figure():
    table = answer_page(BOOK, ID, here(f"answers/{ID}")).context["table"]
    rows = {row["name"]: row["cells"] for row in table["rows"]}
    assert set(rows) == {grass.name for grass in BOOK.grasses.values()}
    assert rows["Plaingrass"][0]["quantity"]["metric"] == "20 to 30 mm"  # as data/grasses/plaingrass.yml of the book has it
    assert rows["Plaingrass"][1]["text"] == "low"


def test_the_message_is_the_question_the_short_answer_and_the_public_address():
    book = seasons().book
    send = answer_page(book, "how-often-water", here("answers/how-often-water", book)).context["send"]
    first, *_, last = send["message"]["text"].splitlines()
    assert first == book.answers["how-often-water"].question
    assert last == f"More: {book.practice.public_address}answers/how-often-water.html"


def test_a_retired_answer_leads_to_the_one_that_took_its_place():
    folder = next(each for each in FOLDERS if each.kind == "answers")
    page = retired_page(BOOK, folder, "how-often-brush", here("answers/how-often-brush"))
    written = render(page.template, page.context)
    assert "It is swept now." in written and 'href="../answers/how-often-sweep.html"' in written
