"""How long a step takes on a lawn with so many people, by the practice's machines and its own minutes. Twin: job work."""

from collections.abc import Mapping
from dataclasses import dataclass

from generator.book.records.calculator import Calculator
from generator.book.records.practice import HandWork, Machine, Practice
from generator.book.records.step import Step
from generator.calculators.calculate import calculate
from generator.calculators.single_value import single
from generator.formula import plain_sum
from generator.jobs.amounts import Spoil
from generator.units import to_si, unit

# The calculator that says how long a machine takes; a book without it has no times of machines.
MACHINE_HOURS = "machine-hours"
MINUTE = 60.0
PER_100_M2 = 100.0
USUAL_PEOPLE = 1


@dataclass(frozen=True)
class StepTime:
    """What a step's time is made of, in minutes of one person where several may share it.

    setup: of a machine, never shared. fixed [min], per_m2 [min/m2], per_m3 [min/m3 of loose spoil]: by hand. trip: for each trailer load
    [min], never shared. machine: what the machine-hours calculator is given, all but area and passes [SI]. pace: how many people the
    machine's speed is the pace of. shared: whether several people divide fixed, per_m2, per_m3 and the machine's time between them.
    """

    setup: float = 0.0
    fixed: float = 0.0
    per_m2: float = 0.0
    per_m3: float = 0.0
    trip: float = 0.0
    machine: Mapping[str, float] | None = None
    pace: int = 1
    shared: bool = False


def people_of(practice: Practice, people: int | None = None) -> int:
    """How many people go to a job: as it is asked for, else the practice's own number."""
    return people or practice.people or USUAL_PEOPLE


def time_of(step: Step, practice: Practice, calculators: Mapping[str, Calculator]) -> StepTime | None:
    """What a step's time is made of; None where the practice says nothing of it, nor of its task."""
    work = next((practice.hand_work[id] for id in (step.timed_as, step.id, step.use) if id in practice.hand_work), None)
    return _by_hand(work) if work else _of_task(step.task, practice, calculators)


def _by_hand(work: HandWork) -> StepTime:
    return StepTime(
        fixed=work.minutes or 0.0, per_m2=(work.minutes_per_100_m2 or 0.0) / PER_100_M2, per_m3=work.minutes_per_spoil_m3 or 0.0,
        trip=work.minutes_per_load or 0.0, shared=work.hands == "shared",
    )


def _of_task(task: str | None, practice: Practice, calculators: Mapping[str, Calculator]) -> StepTime | None:
    operation = practice.operations.get(task) if task else None
    if operation is None:
        return None
    machine = practice.machines.get(operation.machine) if operation.machine else None
    values = machine_values(machine, calculators) if machine else None
    if values is None and operation.setup_minutes is None:
        return None
    return StepTime(operation.setup_minutes or 0.0, machine=values, pace=machine.pace_of_people if machine else 1, shared=operation.hands == "shared")


def machine_values(machine: Machine, calculators: Mapping[str, Calculator]) -> dict[str, float] | None:
    """What the machine-hours calculator is given of a machine [SI], all but the area and the passes; None where it cannot be worked out.
    """
    if MACHINE_HOURS not in calculators or machine.working_width_m is None or machine.speed_km_per_h is None:
        return None
    values = {
        "width": machine.working_width_m, "speed": to_si(machine.speed_km_per_h, unit("km/h")),
        "overlap": (machine.overlap_percent or 0.0) / 100,
    }
    return values if machine.efficiency_percent is None else values | {"efficiency": machine.efficiency_percent / 100}


def minutes_of(time: StepTime, calculators: Mapping[str, Calculator], area_m2: float, passes: int, people: int, away: Spoil) -> float | None:
    """How long it takes [min]; None where it goes by trailer loads and the practice does not say what one holds.

    area_m2: of grass [m2]. passes: how often a machine goes over it. away: what the job carries away. Of what is not shared, the machine sets
    the pace, and more people do not shorten it; of what is, its speed counts for as many people as it is the pace of.
    """
    if time.trip and away.trailer_loads is None:
        return None
    machine = _machine_minutes(time.machine, calculators, area_m2, passes) if time.machine else 0.0
    work = plain_sum((time.fixed, time.per_m2 * area_m2, time.per_m3 * away.volume_m3, machine * (time.pace if time.shared else 1)))
    return plain_sum((time.setup, time.trip * (away.trailer_loads or 0), work / (people if time.shared else 1)))


def _machine_minutes(values: Mapping[str, float], calculators: Mapping[str, Calculator], area_m2: float, passes: int) -> float:
    return single(calculate(calculators[MACHINE_HOURS], {**values, "area": area_m2, "passes": float(passes)}).results["hours"].si) / MINUTE
