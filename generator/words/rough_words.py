"""Weeks and shares as people say them, "early November" and "about half", and exactly."""

from generator.season.calendar_days import MONTH_LENGTHS, MONTH_OF_DAY, MONTHS, day_of_month, day_words, week_days

# Shares that a person says as a word, in percent.
SHARES = {
    10.0: "a tenth", 20.0: "a fifth", 25.0: "a quarter", 100 / 3: "a third", 40.0: "two fifths", 50.0: "half", 60.0: "three fifths",
    200 / 3: "two thirds", 75.0: "three quarters", 80.0: "four fifths",
    90.0: "nine tenths",
}  # fmt: skip
_ROUGHLY = {0.0: "hardly any", **{percent: f"about {words}" for percent, words in SHARES.items()}, 100.0: "nearly all"}
_THIRDS_OF_A_MONTH = ("early ", "mid-", "late ")


def rough_share(part: float, exactly: bool) -> str:
    """'about half' of a part of a whole [1]; more than all is told as it is. exactly: '48%'."""
    percent = 100 * part
    if exactly or percent > 100:
        return f"{part:.0%}"
    return _ROUGHLY[min(_ROUGHLY, key=lambda each: abs(each - percent))]


def rough_week(number: float, exactly: bool) -> str:
    """'early November' of a week's number [1 to 52], by its middle day. exactly: 'week 45 (5 November)', the day on which it begins."""
    days = week_days(round(number) - 1)
    if exactly:
        return f"week {number:.0f} ({day_words(days[0])})"
    middle = days[len(days) // 2]
    month = MONTH_OF_DAY[middle]
    third = (day_of_month(middle) - 1) * len(_THIRDS_OF_A_MONTH) // MONTH_LENGTHS[month]
    return f"{_THIRDS_OF_A_MONTH[third]}{MONTHS[month]}"
