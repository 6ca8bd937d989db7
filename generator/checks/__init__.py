"""What must hold of a whole book: one rule a file, listed here by hand."""

from pathlib import Path

from generator.book.loading.whole_book import Loaded, read_book
from generator.checks.calculators import examples, filled_inputs, formulas, label_only, published_fills
from generator.checks.check import Check
from generator.checks.field import hold_rules, inspection_sheet, key_of_grasses, problem_questions
from generator.checks.plans import aftercare_days, operations, own_window, plan_parts, step_cautions, step_order
from generator.checks.season import climates, due_rules, figure_units, no_months, offered_places
from generator.checks.texts import page_names, quotes, retired_ids, service_lines, site_settings, source_addresses
from generator.findings import first_told

CHECKS: tuple[Check, ...] = (
    figure_units.CHECK, source_addresses.CHECK, operations.CHECK, due_rules.CHECK, formulas.CHECK, examples.CHECK, label_only.CHECK,
    published_fills.CHECK, step_order.CHECK, plan_parts.CHECK, filled_inputs.CHECK, aftercare_days.CHECK, climates.CHECK, no_months.CHECK,
    inspection_sheet.CHECK, hold_rules.CHECK, key_of_grasses.CHECK, step_cautions.CHECK, problem_questions.CHECK, quotes.CHECK, page_names.CHECK,
    retired_ids.CHECK, service_lines.CHECK, site_settings.CHECK, own_window.CHECK, offered_places.CHECK,
)  # fmt: skip


def check_book(root: Path) -> Loaded:
    """The book, when its files, its references and every check are in order; else all that is wrong."""
    book, findings = read_book(root)
    for check in CHECKS:
        findings.extend(first_told(check.check(book)))
    return Loaded(None if findings else book.whole(), sorted(set(findings)))


__all__ = ["CHECKS", "Check", "check_book"]
