"""What a job's page says of it, for the page as it is built and for the script that writes another job: templates with named places."""

SENTENCES = {
    "frost": "Any frost in the four weeks from then: {chance}.",
    "before": "Before the day",
    "week": "Week {number}, from {day}",
    "times": "{name}, {times} times",
}
