"""The records of a book, one class per kind of file."""

from generator.book.records.aftercare import Aftercare
from generator.book.records.answer import Answer
from generator.book.records.calculator import Calculator
from generator.book.records.glossary import Glossary, Topics
from generator.book.records.grass import Grass
from generator.book.records.hold import Hold
from generator.book.records.identification import Key
from generator.book.records.inspection import Inspection
from generator.book.records.place import Place
from generator.book.records.practice import Practice, SeasonGroups
from generator.book.records.problem import Expert, Problem
from generator.book.records.renovation import Renovation
from generator.book.records.retired import retired_record
from generator.book.records.services import Services
from generator.book.records.source import Source
from generator.book.records.step import SharedStep
from generator.book.records.task import Caution, Task
from generator.book.records.work_record import WorkRecord

# Folder of data/ (plural) -> record. The file's name is the id.
KINDS = {
    "grasses": Grass,
    "tasks": Task,
    "cautions": Caution,
    "places": Place,
    "calculators": Calculator,
    "holds": Hold,
    "steps": SharedStep,
    "renovations": Renovation,
    "aftercare": Aftercare,
    "problems": Problem,
    "experts": Expert,
    "answers": Answer,
}
# The singular, as schemas and messages name it.
SINGULAR = {
    "grasses": "grass", "tasks": "task", "cautions": "caution", "places": "place", "calculators": "calculator",
    "holds": "hold", "steps": "step", "renovations": "renovation", "aftercare": "aftercare",
    "problems": "problem", "experts": "expert", "answers": "answer",
}  # fmt: skip
SINGLE_FILES = {
    "practice.yml": Practice, "season-groups.yml": SeasonGroups, "inspection.yml": Inspection, "record.yml": WorkRecord, "key.yml": Key,
    "glossary.yml": Glossary, "topics.yml": Topics, "services.yml": Services, "retired.yml": retired_record(KINDS),
}  # fmt: skip
MAY_BE_MISSING = frozenset({"inspection.yml", "record.yml", "key.yml", "glossary.yml", "topics.yml", "services.yml", "retired.yml"})

__all__ = [
    "KINDS", "MAY_BE_MISSING", "SINGLE_FILES", "SINGULAR", "Aftercare", "Answer", "Calculator", "Caution", "Expert", "Glossary", "Grass",
    "Hold", "Inspection", "Key", "Place", "Practice", "Problem", "Renovation", "SeasonGroups", "Services", "SharedStep", "Source", "Task", "WorkRecord",
]
