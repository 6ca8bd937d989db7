"""No calculator starts with a rate that only a product's label may give."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.checks.check import Check
from generator.findings import Finding

# What would offer a figure for it, or hint at one.
_HINTS = ("us_default", "usual_low", "usual_high", "binds")


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, calculator in book.calculators.items():
        for name, wanted in calculator.inputs.items():
            place = ("calculators", id, "inputs", name)
            if "label" in name.split("_") and not wanted.label_only:
                yield Finding(book.where(*place, "[key]"), f"'{name}' is asked for without 'label_only'",
                              "add 'label_only: true': the label gives it, never the book")
            if not wanted.label_only:
                continue
            if wanted.default != 0:
                yield Finding(book.where(*place, "default"), f"'{name}' is for the label to give, and has a default",
                              "write 'default: 0'; the form then starts empty")
            for hint in _HINTS:
                if getattr(wanted, hint) is not None:
                    yield Finding(book.where(*place, hint), f"'{name}' is for the label to give, and has '{hint}'",
                                  "take it out; the book offers no such figure")


CHECK = Check("label-only", "What only a label may give has no default in the book.", ("calculators",), _check)
