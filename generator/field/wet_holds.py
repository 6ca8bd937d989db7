"""Which tasks wet weather holds, by the hold rules themselves: what a sheet for the day says of rain."""

from collections.abc import Mapping

from generator.book.records.hold import Hold
from generator.field.forecast import QUESTIONS, Forecast
from generator.field.holds import answer_for

# What is wet, and what a rule is then told, with nothing else known: a wet leaf, wet ground, and more rain to come than any rule calls heavy [m].
WET: Mapping[str, Mapping[str, float]] = {
    "leaf": QUESTIONS["leaf"].choices["wet"], "soil": QUESTIONS["soil"].choices["wet"], "rain": {"rain_to_come": 1.0},
}
# Rain does this work itself.
DONE_BY_RAIN = "water"


def wet_holds(holds: Mapping[str, Hold]) -> dict[str, list[str]]:
    """Task -> which of WET holds it, whatever else the day is like; without the tasks that none of them holds.

    holds: by id, as `check` has passed them. What only asks for care is no hold, and a rule that hangs on something else as well is none either.
    """
    tasks = sorted({task for hold in holds.values() for task in hold.tasks} - {DONE_BY_RAIN})
    asked = {task: {id: hold for id, hold in holds.items() if task in hold.tasks} for task in tasks}
    found = {task: [wet for wet, known in WET.items() if answer_for(asked[task], Forecast(known)).answer == "hold"] for task in tasks}
    return {task: wets for task, wets in found.items() if wets}
