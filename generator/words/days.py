"""Days and stretches of a computed year in words."""

from generator.season.calendar_days import day_words
from generator.season.events import Event


def event_days(event: Event) -> str:
    """'14 September', '3 June to 20 August', or 'none'."""
    if event.first is None or event.last is None:
        return "none"
    return day_words(event.first) if event.first == event.last else f"{day_words(event.first)} to {day_words(event.last)}"
