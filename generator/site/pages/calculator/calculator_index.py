"""The front door of the calculators, by what they are about."""


from generator.book.book import Book
from generator.site.page import Page
from generator.site.page_context import PageContext
from generator.site.shared.lawn_pieces import HOW_TO_BUILD_UP, gives_a_piece


def calculator_index(book: Book, here: PageContext) -> Page:
    lead = "Type what you have, in metric or US units; the answer follows as you type, with the working and published examples to check it by."
    groups = [
        {"title": topic[0].upper() + topic[1:], "cards": [
            {"title": calculator.name, "url": here.links.calculator(id), "text": calculator.summary}
            for id, calculator in book.calculators.items() if calculator.topic == topic
        ], "note": HOW_TO_BUILD_UP if any(gives_a_piece(each) for each in book.calculators.values() if each.topic == topic) else None}
        for topic in book.topics_of("calculators")
    ]
    context = {"title": "Calculators", "lead": lead, "groups": [group for group in groups if group["cards"]]}
    return Page("calculators/index", "Calculators", "index", context, lead)
