"""What is said of a calculator's figures, and the limits of saying it, for Python and the browser alike: templates with named places."""

from typing import Any

from generator.calculators.root_search import SEARCH
from generator.units.unit_list import COUNTS

SLACK = 1e-9  # A limit met to nine digits is met: 100 % typed as 1 1/1 must not be refused for its rounding.
DIGITS = 9  # Of an input that was worked back to: 133.333333 rather than 133.3333334667, which is only where a rounding begins.
MOST_LISTED = 3
# A count after the number 1. The first other way to write it is the word for one of them.
SINGULAR = {spelling: count.aliases[0] for spelling, count in COUNTS.items() if "/" not in spelling}

SENTENCES = {
    "above": "{question} must be more than {limit}; {given} was given.",
    "at-least": "{question} cannot be less than {limit}; {given} was given.",
    "at-most": "{question} cannot be more than {limit}; {given} was given.",
    "whole": "{question} must be a whole number; {given} was given.",
    "seldom-under": "{question} is seldom under {limit}; is {given} right?",
    "seldom-over": "{question} is seldom over {limit}; is {given} right?",
    "no-answer": "{label}: no answer; {why}",
    # Of a calculator turned round.
    "unreadable": "{label}: {why}",
    "never": "{label}: no answer, whatever '{question}' is.",
    "same": "{label} does not change with '{question}'.",
    "below": "{label} cannot be {wanted}: whatever '{question}' is, it never goes below {limit}.",
    "beyond": "{label} cannot be {wanted}: whatever '{question}' is, it never goes above {limit}.",
    "jumps": "{label} cannot be {wanted}: whatever '{question}' is, it jumps past that.",
    "too-many": "{label} rises and falls with '{question}', so too many values give {wanted}; ask for another.",
    "several": "{label} rises and falls with '{question}', so more than one value gives {wanted}: {listed}.",
    "stretch": "{label}: {wanted} for any value from {first} to {last}; the {which} is given.",
    "open-stretch": "{label}: {wanted} for any value from {first} up; the {which} is given.",
    "leap": "No value of '{question}' gives exactly {wanted}: {near} with {given}, {far} with {other}.",
    "more": "a little more",
    "less": "a little less",
}


def calculator_table() -> dict[str, Any]:
    """All of it for the browser, JSON-able."""
    return {"slack": SLACK, "digits": DIGITS, "most_listed": MOST_LISTED, "singular": SINGULAR, "sentences": SENTENCES, "search": SEARCH._asdict()}
