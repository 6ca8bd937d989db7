"""Why there is no window, in the few words that a table has room for; the whole reason is in `sentences.py`."""

from generator.season.reasons import Reason, Several

FEW_WORDS = {
    "no-growing-season": "no growing season", "too-slow-all-year": "too little growth", "never-grows-strongly": "too little growth",
    "growing-never-lasts": "season too short", "too-short": "too few days", "no-common-day": "no day suits",
    "frost-all-year": "frost too likely", "heat-all-year": "too hot", "wet-all-year": "too wet", "no-cooler-season": "no cooler season",
    "killed-by-winter": "winter kills it", "never-closes": "closes too slowly", "too-cold-all-year": "soil too cold for seed",
    "undecided-warmer": "undecided", "undecided-cooler": "undecided",
}


def few_words(reason: Reason | Several) -> str:
    """'frost too likely'; of a reason that holds others, the first of these that has few words, and nothing where none has."""
    if isinstance(reason, Reason) and reason.code in FEW_WORDS:
        return FEW_WORDS[reason.code]
    inside = reason.reasons if isinstance(reason, Several) else reason.values.values()
    return next(filter(None, (few_words(each) for each in inside if isinstance(each, Reason | Several))), "")
