"""The records of a book, one class per kind of file."""

from generator.model.aftercare import Aftercare
from generator.model.answer import Answer
from generator.model.calculator import Calculator
from generator.model.glossary import Glossary
from generator.model.grass import Grass
from generator.model.hold import Hold
from generator.model.identification import Key
from generator.model.inspection import Inspection
from generator.model.place import Place
from generator.model.practice import Practice, SeasonGroups
from generator.model.problem import Expert, Problem
from generator.model.renovation import Renovation, SharedStep
from generator.model.retired import retired_record
from generator.model.services import Services
from generator.model.source import Source
from generator.model.task import Caution, Task
from generator.model.work_record import WorkRecord

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
    "glossary.yml": Glossary, "services.yml": Services, "retired.yml": retired_record(KINDS),
}  # fmt: skip
MAY_BE_MISSING = frozenset({"inspection.yml", "record.yml", "key.yml", "glossary.yml", "services.yml", "retired.yml"})

__all__ = [
    "KINDS", "MAY_BE_MISSING", "SINGLE_FILES", "SINGULAR", "Aftercare", "Answer", "Calculator", "Caution", "Expert", "Glossary", "Grass",
    "Hold", "Inspection", "Key", "Place", "Practice", "Problem", "Renovation", "SeasonGroups", "Services", "SharedStep", "Source", "Task", "WorkRecord",
]
