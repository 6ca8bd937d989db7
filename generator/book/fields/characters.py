"""Signs that no text of a book may hold, because nobody sees them: control signs, joints without width, turns of the writing direction."""

import re

# What YAML may not hold, save for line breaks and tabs.
CONTROL = re.compile(r"[^\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]")

# The first that fits says what a sign is and what to do about it. Ranges of the Unicode standard, general category Cf and beyond.
_UNSEEN: tuple[tuple[str, str, str], ...] = (
    (r"\u2028\u2029\x85\x0b\x0c", "an unseen line break", "start a new line instead"),
    (r"\x00-\x08\x0e-\x1f\x7f-\x84\x86-\x9f\ufffe\uffff", "an invisible control character", "delete it"),
    (r"\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069", "an invisible sign that turns the direction of the text", "delete it"),
    (r"\u00ad\u034f\u115f\u1160\u17b4\u17b5\u180b-\u180f\u200b-\u200d\u2060-\u2065\u206a-\u206f\u3164\ufeff\uffa0\ufff0-\ufffb"
     r"\U0001bca0-\U0001bca3\U0001d173-\U0001d17a\U000e0000-\U000e00ff", "an invisible sign without width", "delete it"),
    (r"\ud800-\udfff", "half a sign", "write the whole sign, or delete it"),
)  # fmt: skip
UNSEEN = re.compile("[" + "".join(signs for signs, *_ in _UNSEEN) + "]")
_KINDS = tuple((re.compile(f"[{signs}]"), what, instead) for signs, what, instead in _UNSEEN)


def said_of(sign: str) -> tuple[str, str]:
    """What an unseen sign is, with its number, and what to do about it."""
    what, instead = next((what, instead) for signs, what, instead in _KINDS if signs.match(sign))
    return f"{what} (U+{ord(sign):04X}) is here", instead
