"""A figure that a calculator takes from a task: one number, one file."""


from generator.book.records.calculator import Calculator
from generator.book.records.task import Task
from generator.book.shared_figures import with_figures
from tests.book_folders import WHOLE
from tests.yaml_files import read_yaml


def record(kind: type, path: str):
    return kind.model_validate(read_yaml(WHOLE / "data" / path))


def test_the_calculator_gets_the_number_its_source_and_its_name():
    sweep = record(Task, "tasks/sweep.yml")
    sweeping = record(Calculator, "calculators/sweeping.yml").model_copy(update={"figures": {"times": "sweep.sweeps"}})
    whole, unknown = with_figures(sweeping, {"sweep": sweep})
    assert not unknown
    taken = whole.constants["times"]
    assert (taken.value, taken.unit, taken.source) == (2, "1", "almanac")  # as data/tasks/sweep.yml has it
    assert taken.meaning == "Sweep: sweeps."


def test_a_changed_figure_changes_what_the_calculator_takes():
    sweep = record(Task, "tasks/sweep.yml")
    other = sweep.model_copy(update={"figures": {"sweeps": sweep.figures["sweeps"].model_copy(update={"use": 3})}})
    sweeping = record(Calculator, "calculators/sweeping.yml").model_copy(update={"figures": {"times": "sweep.sweeps"}})
    assert with_figures(sweeping, {"sweep": other})[0].constants["times"].value == 3
