"""The words of an inspection sheet with their values put in: figures in both systems, the practice's terms in an estimate."""

import re
from collections.abc import Mapping

from generator.book.book import Book
from generator.book.fields.sourced import CountryId
from generator.book.records.inspection import EstimatePiece, Inspection
from generator.book.records.practice import Practice
from generator.words.figures import claim_words, value_words

# What an estimate may name: values of the practice, and what stays to be filled in for each job, as it stands until then.
FROM_PRACTICE = ("practice", "telephone", "email", "currency", "minimum_charge", "tax", "deposit_percent", "valid_days", "law")
TO_FILL_IN = {
    "client": "[client's code]", "date": "[date of this estimate]", "area": "[area]", "job": "[the job, step by step]",
    "total": "[total]",
}
_PLACEHOLDER = re.compile(r"\{([a-z_]+)\}")


def filled(text: str, values: Mapping[str, str]) -> str:
    """A text with the values it names. Raises KeyError for a name without a value."""
    return _PLACEHOLDER.sub(lambda found: values[found[1]], text)


def estimate_pieces(
    inspection: Inspection, practice: Practice, country: CountryId | None, to_fill_in: Mapping[str, str] = TO_FILL_IN
) -> tuple[list[tuple[EstimatePiece, str]], list[EstimatePiece]]:
    """The estimate's pieces with the practice's values in them, and the pieces left out because the practice gives no such value.

    country: whose consumer law is named. to_fill_in: what stands in the places of the job, until one is known.
    """
    values = {**to_fill_in, **_values(inspection, practice, country)}
    whole, missing = [], []
    for piece in inspection.estimate.pieces if inspection.estimate else ():
        if set(_PLACEHOLDER.findall(piece.text)) <= values.keys():
            whole.append((piece, filled(piece.text, values)))
        else:
            missing.append(piece)
    return whole, missing


def _values(inspection: Inspection, practice: Practice, country: CountryId | None) -> dict[str, str]:
    given = {
        "practice": practice.name, "telephone": practice.telephone, "email": practice.email, "currency": practice.currency,
        "minimum_charge": number_words(practice.minimum_charge), "tax": tax_words(practice), "deposit_percent": number_words(practice.deposit_percent),
        "valid_days": number_words(practice.estimate_valid_days), "law": _law(inspection, country),
    }
    return {name: value for name, value in given.items() if value is not None}


def _law(inspection: Inspection, country: CountryId | None) -> str | None:
    """The consumer law that an estimate names; None in a book without estimates."""
    estimate = inspection.estimate
    if estimate is None:
        return None
    return estimate.law_elsewhere if country is None else estimate.law.get(country, estimate.law_elsewhere)


def tax_words(practice: Practice) -> str | None:
    """'10 % GST is added', or that it is in the prices already; None for a practice that says nothing of tax."""
    if practice.tax_name is None or practice.tax_percent is None:
        return None
    if practice.tax_percent == 0:
        return f"No {practice.tax_name} is charged"
    return f"{practice.tax_percent:g} % {practice.tax_name} {'is included' if practice.prices_include_tax else 'is added'}"


def number_words(value: float | None) -> str | None:
    """A number in any unit as the sheet prints it: two places, or none where there is nothing behind the point; None for none."""
    return None if value is None else f"{value:,.2f}".removesuffix(".00")


def figure_words(book: Book) -> dict[str, str]:
    """What a {name} in the sheet's texts stands for: '13 mm (½ in)'. A task's figure keeps its range."""
    inspection = book.inspection
    if inspection is None:
        return {}
    words = {name: value_words(constant.value, constant.unit) for name, constant in inspection.constants.items()}
    for name, place in inspection.figures.items():
        task, _, figure = place.partition(".")
        words[name] = claim_words(book.tasks[task].figures[figure])
    return {name: _both(each) for name, each in words.items()}


def _both(words: Mapping[str, str | None]) -> str:
    return f"{words['metric']} ({words['us']})" if words["us"] and words["us"] != words["metric"] else str(words["metric"])
