"""What must hold of a whole book: one rule a file, listed here by hand."""

from pathlib import Path

from generator.checks import (
    aftercare, bindings, climates, due, examples, figures, formulas, holds, inspection, key, label_only, no_months, operations,
    page_names, plan_parts, plans, problems, published, quotes, retired, services, settings, sources, step_cautions,
)
from generator.checks.check import Check
from generator.findings import first_told
from generator.model.book import Loaded, read_book

CHECKS: tuple[Check, ...] = (
    figures.CHECK, sources.CHECK, operations.CHECK, due.CHECK, formulas.CHECK, examples.CHECK, label_only.CHECK, published.CHECK,
    plans.CHECK, plan_parts.CHECK, bindings.CHECK, aftercare.CHECK, climates.CHECK, no_months.CHECK,
    inspection.CHECK, holds.CHECK, key.CHECK, step_cautions.CHECK, problems.CHECK, quotes.CHECK, page_names.CHECK, retired.CHECK, services.CHECK,
    settings.CHECK,
)  # fmt: skip


def check_book(root: Path) -> Loaded:
    """The book, when its files, its references and every check are in order; else all that is wrong."""
    book, findings = read_book(root)
    for check in CHECKS:
        findings.extend(first_told(check.check(book)))
    return Loaded(None if findings else book, sorted(set(findings)))


__all__ = ["CHECKS", "Check", "check_book"]
