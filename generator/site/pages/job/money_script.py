"""What the job page asks for only when money is: the estimate's pieces with places for the job, the practice's terms, and what stands on an invoice."""

from generator.book.book import Book
from generator.field.inspection_words import TO_FILL_IN, estimate_pieces
from generator.site.pages.job.job_scripts import job_script

MONEY_SCRIPT = "assets/jobs/money.js"
NO_SUCH_PRACTICE = "This practice is invented. Nobody does this work, and nothing is to be paid."
# Said instead of the terms by a practice whose book has no estimate.
PLAIN_OFFER = {"id": "price", "title": "Estimate", "text": "{job}. {area}, for {client}. {total}. {date}."}


def money_script(book: Book) -> str:
    """pieces: {id, title, text} with {client}, {date}, {area}, {job} and {total} left to fill in. tax: as a line of a sheet names it."""
    practice, inspection, invoice = book.practice, book.inspection, book.practice.invoice
    whole = (
        estimate_pieces(inspection, practice, book.places[practice.home_place].country, {name: f"{{{name}}}" for name in TO_FILL_IN})[0]
        if inspection and inspection.estimate else []
    )
    percent = f" {practice.tax_percent:g} %" if practice.tax_percent else ""
    return job_script("money", {
        "pieces": [{"id": piece.id, "title": piece.title, "text": text} for piece, text in whole] or [PLAIN_OFFER],
        "unforeseen": list(inspection.estimate.unforeseen) if inspection and inspection.estimate else [],
        "practice": practice.name, "reach": [each for each in (practice.telephone, practice.email) if each],
        "invented": NO_SUCH_PRACTICE if practice.invented else None, "tax": (practice.tax_name or "Tax") + percent,
        "valid_days": practice.estimate_valid_days, "hourly_price": practice.hourly_price,
        "invoice": {
            "prefix": invoice.prefix, "registration": invoice.registration, "address": list(invoice.address),
            "pays_within_days": invoice.pays_within_days, "how_to_pay": invoice.how_to_pay,
        },
    })
