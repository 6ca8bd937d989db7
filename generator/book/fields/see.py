"""Pages that say more: what an answer or a word of the glossary leads to."""

from pydantic import Field

from generator.book.fields.sourced import AftercareId, AnswerId, CalculatorId, CautionId, GrassId, ProblemId, Record, RenovationId, TaskId, TermId


class See(Record):
    """Ids of other records, kind by kind; each becomes a link under its own name."""

    answers: tuple[AnswerId, ...] = ()
    problems: tuple[ProblemId, ...] = ()
    aftercare: tuple[AftercareId, ...] = ()
    grasses: tuple[GrassId, ...] = ()
    tasks: tuple[TaskId, ...] = ()
    plans: tuple[RenovationId, ...] = Field(default=(), description="Renovation plans.")
    calculators: tuple[CalculatorId, ...] = ()
    cautions: tuple[CautionId, ...] = ()
    terms: tuple[TermId, ...] = Field(default=(), description="Words of the glossary.")
