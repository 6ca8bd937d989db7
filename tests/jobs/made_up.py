"""What the tests of a job's work share: a practice, tasks and steps made up here, and the book's own calculators."""

from generator.book.records.practice import Practice
from generator.book.records.step import Step
from generator.book.records.task import Task
from tests.our_book import book

CALCULATORS = book().calculators


def a_practice(**fields):
    return Practice.model_validate({
        "name": "Example Lawns", "invented": True, "about": "Made up.", "home_place": "town", "home_grass": "couch", "feed": "granule",
        "products": {"granule": {"name": "Granule", "nitrogen_percent": 20}}, **fields,
    })


def a_step(id="core", task=None, day=0, **fields):
    return Step.model_validate({
        "id": id, "day": day, "task": task, "title": id.capitalize(), "say": "Do it.", "source": "common practice", **fields,
    })


def some_tasks(*ids):
    return {
        id: Task.model_validate({"name": id.capitalize(), "summary": "Made up.", "steps": [{"text": "Do.", "source": "common practice"}]})
        for id in ids
    }
