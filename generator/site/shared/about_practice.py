"""Whose book this is, for the page about it: what the practice says of itself, how to reach it, and on what terms it works."""

from typing import Any

from generator.book.records.practice import Practice
from generator.field.inspection_words import number_words, tax_words
from generator.site.shared.public_lines import telephone_link

TEMPLATE = "about-practice.html.j2"


def about_practice(practice: Practice) -> dict[str, Any]:
    """invented: true for a practice made up to show something. terms: a line each, without an end mark."""
    invoice, deposit, days = practice.invoice, practice.deposit_percent, practice.estimate_valid_days
    terms = [
        tax_words(practice),
        f"{number_words(deposit)} % is paid when an estimate is accepted" if deposit else None,
        f"An estimate can be accepted for {days} days" if days else None,
        f"An invoice is paid within {invoice.pays_within_days} days" if invoice.registration or invoice.how_to_pay else None,
    ]
    return {
        "name": practice.name, "about": practice.about, "invented": practice.invented, "telephone": practice.telephone,
        "telephone_link": telephone_link(practice.telephone), "email": practice.email, "address": ", ".join(invoice.address),
        "registration": invoice.registration, "terms": [each for each in terms if each],
    }
