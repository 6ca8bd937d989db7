"""Text that a spreadsheet would take for a formula goes out behind an apostrophe, and reading takes that off again.

A spreadsheet runs a cell that begins with one of these signs; the wide ones are run where Chinese, Japanese or Korean is written.
Source: OWASP, CSV Injection. Twin: shielding.
"""

import re

RUN = "=+\\-@\\t\\r\\n\uff1d\uff0b\uff0d\uff20"
# What already has apostrophes gets one more, so that taking one off gives back what was written.
_TO_SHIELD = re.compile(f"'*[{RUN}]")
_SHIELDED = re.compile(f"'+[{RUN}]")


def shielded(text: str) -> str:
    """The text as it may stand in a cell."""
    return f"'{text}" if _TO_SHIELD.match(text) else text


def unshielded(cell: str) -> str:
    """What was written, from the cell that holds it."""
    return cell[1:] if _SHIELDED.match(cell) else cell
