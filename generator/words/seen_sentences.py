"""What is said of a season that a keeper's own notes move, in the command line and in the browser alike.

Each has named places: {days} '9 days', {on} the day of the note, {usual_day} a day of the year, {reading} as it was typed, {usual} a temperature.
"""

HALVES = {"warming": "spring", "cooling": "autumn"}
SOURCES = {"soil": "your thermometer", "green_up": "your green-up", "last_frost": "the last frost you saw"}
EDGES = ("opens", "best", "closes")

SENTENCES = {
    "late": "This {half} runs {days} late by {source}.",
    "early": "This {half} runs {days} early by {source}.",
    "usual": "This {half} runs as usual by {source}.",
    "frost-late": "What waits for the last frost is late by the frost you saw.",
    "soil-why": "You read {reading} on {on}. Soil here usually has {usual} on that day, and your reading about {usual_day}.",
    "green-up-why": "You saw green-up on {on}. It usually comes about {usual_day} here.",
    "frost-why": "You saw a frost on {on}, {days} after the usual last one, about {usual_day}. What waits for the last frost waits longer.",
    "most": "No season is taken to run further than {most} by one note.",
    "over": "{note} of {on} belongs to a half-year that is over. It moves nothing now.",
    "still": "Soil hardly changes at this time of year, so your reading of {on} does not tell whether the season is early or late.",
    "no_green_up": "This grass stays green here in a usual year, so green-up tells nothing.",
    "not_late": "The frost of {on} came no later than usual here. It moves nothing.",
    "older": "{note} of {on} moves nothing, as another note is newer.",
    "opens": "opens about {moved} instead of {usual}",
    "best": "is best about {moved} instead of {usual}",
    "closes": "closes about {moved} instead of {usual}",
    "day-in": "The day of the job lies in this year's window.",
    "day-out": "The day of the job lies outside this year's window.",
    "nothing": "No window here moves by it.",
    "how": "The further off a day is, the less it moves. Days set by rain, by the length of the day or by the calendar do not move.",
}
NOTES = {"soil": "Your reading", "green_up": "The green-up", "last_frost": "The frost"}
REFUSALS = {
    "not-a-temperature": "Give the temperature of the soil, such as 14 °C or 57 °F.",
    "no-soil": "No soil under grass has that. Give a reading from {least} to {most}.",
    "no-depth": "Give how deep you read it, from {least} to {most}.",
    "no-date": "Give a day, such as 2026-09-20.",
    "future": "That day is still to come. Give the day on which you saw it.",
    "long-ago": "That is more than a year ago and tells nothing of this year.",
}
# What a soil thermometer under turf may say, and how deep it is read [°C, mm].
COLDEST_SOIL_C, HOTTEST_SOIL_C, SHALLOWEST_MM, DEEPEST_MM = -10, 45, 20, 500
LONGEST_AGO_DAYS = 366
