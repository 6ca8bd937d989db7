"""What must hold of a whole book: one rule a file, listed here by hand."""

from pathlib import Path

from generator.book.book import PartialBook
from generator.book.loading.whole_book import Loaded, read_book
from generator.checks.calculators import examples, filled_inputs, formulas, label_only, published_fills
from generator.checks.check import Check
from generator.checks.field import hold_rules, inspection_sheet, key_of_grasses, problem_questions
from generator.checks.plans import aftercare_answers, aftercare_days, hand_work, operations, own_window, plan_parts, step_cautions, step_order, visit_steps
from generator.checks.season import climates, due_rules, figure_units, no_months, offered_places
from generator.checks.sense import filled_sizes, grass_figures, months_of_a_place, place_on_earth, practice_figures, rules_in_order, text_years, twin_records, unusual
from generator.checks.texts import (
    demo_left,
    known_topics,
    looks_fit,
    page_names,
    practice_notes,
    quotes,
    retired_ids,
    service_lines,
    settings_fit,
    site_settings,
    source_addresses,
)
from generator.findings import Finding, Where, first_told

CHECKS: tuple[Check, ...] = (
    figure_units.CHECK, source_addresses.CHECK, operations.CHECK, due_rules.CHECK, formulas.CHECK, examples.CHECK, label_only.CHECK,
    published_fills.CHECK, step_order.CHECK, plan_parts.CHECK, filled_inputs.CHECK, aftercare_days.CHECK, aftercare_answers.CHECK, climates.CHECK, no_months.CHECK,
    inspection_sheet.CHECK, hold_rules.CHECK, key_of_grasses.CHECK, step_cautions.CHECK, problem_questions.CHECK, quotes.CHECK, page_names.CHECK,
    retired_ids.CHECK, known_topics.CHECK, service_lines.CHECK, site_settings.CHECK, own_window.CHECK, hand_work.CHECK, offered_places.CHECK, visit_steps.CHECK,
    place_on_earth.CHECK, months_of_a_place.CHECK, grass_figures.CHECK, practice_figures.CHECK, rules_in_order.CHECK, text_years.CHECK,
    twin_records.CHECK, filled_sizes.CHECK, settings_fit.CHECK, looks_fit.CHECK, demo_left.CHECK,
)  # fmt: skip
# What these find is told and refuses nothing.
WARNINGS: tuple[Check, ...] = (unusual.CHECK, practice_notes.CHECK)


def check_book(root: Path, this_year: int | None = None) -> Loaded:
    """The book, when its files, its references and every check are in order; else all that is wrong.

    this_year: the year that it is checked in, for what cannot be of years to come; None where nobody asks.
    """
    return _checked(*read_book(root, this_year))


def check_and_warn(root: Path, this_year: int | None = None) -> tuple[Loaded, list[Finding]]:
    """The same, and what is unusual in as much of the book as can be read."""
    book, findings = read_book(root, this_year)
    seldom: dict[Where, Finding] = {}
    for finding in (finding for check in WARNINGS for finding in first_told(check.check(book))):
        seldom.setdefault(finding.where, finding)  # One line to a place.
    loaded = _checked(book, findings)
    told = {finding.where for finding in loaded.findings}
    return loaded, sorted(finding for where, finding in seldom.items() if where not in told)


def _checked(book: PartialBook, findings: list[Finding]) -> Loaded:
    for check in CHECKS:
        findings.extend(first_told(check.check(book)))
    return Loaded(None if findings else book.whole(), sorted(set(findings)))


__all__ = ["CHECKS", "WARNINGS", "Check", "check_and_warn", "check_book"]
