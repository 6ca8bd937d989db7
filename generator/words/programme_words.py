"""What is said of a year of visits, on the page, on a terminal and for the client: templates with named places, for Python and the browser."""

SENTENCES = {
    "later": "{weeks} later than it falls due",
    "earlier": "{weeks} earlier than it falls due",
    "week": "{count} week",
    "weeks": "{count} weeks",
    "on_time": "in its own week",
    "window": "It must not leave its window, and no visit falls in that.",
    "interval": "It needs weeks between one time and the next, and no visit is near enough to this one.",
    "far": "No visit is near enough to its week.",
    "own": "A visit of its own, about {day}: {task}. {why}",
    "fits": "All of this fits into {visits}.",
    "left": "{visits}. What none of them can take stands below.",
    "visit": "{count} visit",
    "visits": "{count} visits",
    "renovation": "{plan}, about {day}: a job of its own, with its own plan and price.",
    "routine": "{task}: every {weeks}, {times} in the year.",
    "weekly": "{task}: every week while it is due, {times} in the year.",
    "time": "{count} time",
    "times": "{count} times",
    "cuts": "Mowing between the visits: {times} in the year",
    "only_where": "{task}, only where needed: {where}",
    "shed": "{task}, about {day}: done in the shed.",
}
# Seasons of the calendar beyond the tropics, from the quarter that December begins; the south is half a year on.
SEASONS = ("Winter", "Spring", "Summer", "Autumn")
TROPIC_DEG = 23.44
WET, DRY = "Wet season", "Drier months"


def counted(number: int, one: str) -> str:
    """'1 week', '3 weeks': a word of the table with its number."""
    return SENTENCES[one if number == 1 else f"{one}s"].format(count=number)


def moved_words(weeks: int) -> str:
    """By how many weeks a work is moved, in words."""
    return SENTENCES["later" if weeks > 0 else "earlier"].format(weeks=counted(abs(weeks), "week")) if weeks else SENTENCES["on_time"]


def season_name(month: int, latitude_deg: float, wet: bool) -> str:
    """What a month (1 to 12) is called there. latitude_deg: south is negative [°]; within the tropics the rain alone parts the year."""
    if abs(latitude_deg) < TROPIC_DEG:
        return WET if wet else DRY
    return SEASONS[(month % 12 // 3 + (2 if latitude_deg < 0 else 0)) % 4]
