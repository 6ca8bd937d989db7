"""lawns.json: the lawns that a reader keeps, with their inspections, jobs and work record, as the page of lawns saves them and takes them in.

One file, versioned; its JSON Schema is in the book. Measures are texts with their units, as somebody typed them; numbers say theirs.
Twin: lawn file.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated, Literal

from pydantic import AfterValidator, ConfigDict, Field

from generator.book.fields.sourced import Record, RecordProblem
from generator.book.fields.texts import Currency, Identifier
from generator.book.lists.csv_reading import list_name, unreadable
from generator.book.lists.for_a_job import FIRST_YEAR, LARGEST_LAWN_M2, LAST_YEAR, MOST_CENTS, MOST_PEOPLE, MOST_RAIN_MM
from generator.book.lists.lawn_code import LAWN_CODE, NAMES_NOBODY
from generator.book.loading.load import load_record
from generator.book.records.practice import OPEN_SITE
from generator.findings import Finding, Where, shown


def _code(text: str) -> str:
    if not LAWN_CODE.fullmatch(text):
        raise RecordProblem(f"'{shown(text)}' is not a lawn's code", NAMES_NOBODY)
    return text


Code = Annotated[str, AfterValidator(_code), Field(json_schema_extra={"pattern": f"^{LAWN_CODE.pattern}$"})]
Day = Annotated[str, Field(pattern=r"^[0-9]{4}-[0-9]{2}-[0-9]{2}$", description=f"ISO 8601, {FIRST_YEAR} to {LAST_YEAR}.")]
# A visit a week, and some over: far more than anybody sells (our limit).
MOST_VISITS_KEPT, DAYS_OF_A_YEAR = 60, 366
Area = Annotated[float, Field(gt=0, le=LARGEST_LAWN_M2)]


class Kept(Record):
    """Something that another edition of the book may have written: what this one does not know of it is passed over."""

    model_config = ConfigDict(extra="ignore", frozen=True, allow_inf_nan=False)


class KeptPiece(Kept):
    """A piece that a lawn was measured by."""

    name: str
    sizes: str = Field(description="As it was measured, such as '12 m × 8 m'.")
    area: Annotated[float, Field(gt=0)] = Field(description="[m2]")
    hole: bool = Field(description="Taken away: a house, a bed, a pool.")


Cents = Annotated[int, Field(ge=-MOST_CENTS, le=MOST_CENTS, description="Hundredths of the currency.")]
Count = Annotated[float, Field(ge=0, le=MOST_CENTS)]


class KeptLine(Kept):
    """A line of a quote, and its share of the tax."""

    name: str
    amount: Cents
    tax: Cents


class KeptVisit(Kept):
    """A visit of a programme, as it was agreed; what happened to it since stands beside."""

    on: Day
    tasks: tuple[Identifier, ...] = ()
    plan: Identifier | None = Field(default=None, description="The plan of a visit that is a job of its own: the renovation.")
    put: Day | None = Field(default=None, description="The day to which it is moved.")
    done: Day | None = None
    skipped: bool = False


class KeptYearQuote(Kept):
    """What a year of visits was offered for, as it was on that day: a line a visit, and one for the mowing."""

    on: Day
    until: Day | None = Field(default=None, description="The last day on which it can be accepted.")
    currency: Currency
    rate: Annotated[float, Field(ge=0, le=1, description="Tax, as a share.")]
    inside: bool = Field(description="Amounts hold the tax already.")
    lines: dict[Identifier, KeptLine] = Field(default={}, description="By visit; 'mowing' for the cuts between.")
    before_tax: Cents
    tax: Cents
    total: Cents
    area: Area | None = Field(default=None, description="[m2]")
    accepted: Day | None = None


class KeptProgramme(Kept):
    """A year of visits to a lawn."""

    wanted: Annotated[int, Field(ge=1, le=MOST_VISITS_KEPT)] = Field(description="At most so many visits were asked for.")
    start: Day
    tasks: tuple[Identifier, ...] = Field(default=(), description="The tasks that are in it.")
    cuts: Annotated[int, Field(ge=0, le=DAYS_OF_A_YEAR)] = Field(default=0, description="Mowings between the visits.")
    visits: dict[Identifier, KeptVisit] = Field(default={})
    quote: KeptYearQuote | None = None


class KeptSeen(Kept):
    """What was seen of a season on a lawn, with the days."""

    soil: str | None = Field(default=None, description="Soil temperature with its unit: '14 °C'.")
    soil_depth: str | None = Field(default=None, description="How deep it was read, with its unit: '100 mm'.")
    soil_on: Day | None = None
    green_up: Day | None = Field(default=None, description="The day on which it was seen to green up.")
    last_frost: Day | None = Field(default=None, description="The day of the last frost seen.")


class KeptLawn(Kept):
    """A lawn, and what stays the same of it."""

    code: Code = Field(description="The client's code, never a name.")
    grass: Identifier
    place: Identifier
    site: Identifier = OPEN_SITE
    area: str | None = Field(default=None, description="With its unit: '240 m2'.")
    town: str | None = Field(default=None, description="Part of town, by which a round is ordered.")
    travel: str | None = Field(default=None, description="To get there, with its unit: '15 min'.")
    machines: tuple[Identifier, ...] = Field(default=(), description="The practice's machines that fit through the gate.")
    facts: dict[Identifier, str] = Field(
        default={}, description="Answers to the questions of the inspection that stay the same, by question: 'sprinkler-rate': '14 mm/h'.",
    )
    pieces: tuple[KeptPiece, ...] = ()
    programme: KeptProgramme | None = None
    seen: KeptSeen | None = Field(default=None, description="What was seen this year, which moves its windows.")


class KeptPacks(Kept):
    """Packs of a product that a quote counts on."""

    name: str
    count: Count


class KeptQuote(Kept):
    """What was offered to the client, as it was on that day, whatever the job comes to since."""

    number: Count = Field(description="The latest counts.")
    on: Day
    until: Day | None = Field(default=None, description="The last day on which it can be accepted.")
    currency: Currency
    rate: Annotated[float, Field(ge=0, le=1, description="Tax, as a share.")]
    inside: bool = Field(description="Amounts hold the tax already.")
    lines: dict[Identifier, KeptLine] = Field(default={})
    before_tax: Cents
    tax: Cents
    total: Cents
    deposit: Cents
    minutes: Count | None = Field(default=None, description="Of our own work [min].")
    packs: dict[Identifier, KeptPacks] = Field(default={})
    job: str = Field(default="", description="The work, step by step.")
    area: Area | None = Field(default=None, description="[m2]")
    accepted: Day | None = None


class KeptInvoice(Kept):
    """An invoice's own number and days."""

    number: str
    on: Day
    due: Day | None = None


class KeptPayment(Kept):
    """What was paid."""

    number: Count
    on: Day
    amount: Cents
    deposit: bool = False


class KeptVariation(Kept):
    """What costs more or less than was quoted; owed once it is agreed."""

    number: Count
    on: Day
    what: str
    amount: Cents
    tax: Cents
    why: str = ""
    agreed: Day | None = None


class KeptUse(Kept):
    """What was used: minutes of our own work [min], and packs by product."""

    minutes: Count | None = None
    packs: dict[Identifier, Count] = Field(default={})


class KeptMoney(Kept):
    """The money of a job, from quote to paid."""

    quotes: dict[Identifier, KeptQuote] = Field(default={})
    done: Day | None = None
    invoice: KeptInvoice | None = None
    used: KeptUse | None = None
    payments: dict[Identifier, KeptPayment] = Field(default={})
    variations: dict[Identifier, KeptVariation] = Field(default={})


class KeptJob(Kept):
    """A job as the planner keeps it."""

    plan: Identifier
    grass: Identifier
    place: Identifier
    site: Identifier
    area: Area = Field(description="[m2]")
    on: Day = Field(description="The day of the job.")
    name: str = Field(default="", description="The code of its lawn.")
    typed: str = Field(default="", description="The area as it was typed.")
    start: str | None = Field(default=None, description="When work starts, such as 07:30.")
    crew: Annotated[int, Field(ge=1, le=MOST_PEOPLE)] | None = Field(default=None, description="People who go to it; the practice's own number where left out.")
    done: dict[Identifier, Day] = Field(default={}, description="Steps that were done, with their days.")
    put: dict[Identifier, Day] = Field(default={}, description="Steps that are put off, with their days.")
    without: tuple[Identifier, ...] = Field(default=(), description="Steps that this lawn does not need.")
    chosen: tuple[Identifier, ...] = Field(default=(), description="Steps done only where needed, which this lawn needs.")
    rain: dict[Day, Annotated[float, Field(ge=0, le=MOST_RAIN_MM)]] = Field(default={}, description="By day [mm].")
    inspection: dict[Identifier, str] = Field(default={}, description="Answers that the job goes by, by question.")
    key: str = Field(default="", description="What the ids of its calendar begin with.")
    money: KeptMoney | None = None


class KeptInspection(Kept):
    """The inspection of a lawn; answers that stay the same are the lawn's own facts."""

    lawn: Code
    head: dict[str, str] = Field(default={}, description="Date, and who looked.")
    answers: dict[str, str] = Field(default={}, description="By question, each with its unit.")
    ticks: dict[str, str] = Field(default={}, description="What is ticked off.")


class LawnFile(Kept):
    """Everything that a reader keeps of lawns, but for photographs, which stay on the device."""

    version: Literal[1]
    lawns: tuple[KeptLawn, ...] = ()
    jobs: tuple[KeptJob, ...] = ()
    record: tuple[dict[str, str], ...] = Field(default=(), description="Entries of the work record: column to text.")
    inspections: tuple[KeptInspection, ...] = ()


@dataclass(frozen=True)
class LawnJobs:
    """A lawn of a file with its jobs, the latest day first, what its inspection found, and where it stands."""

    lawn: KeptLawn
    jobs: tuple[KeptJob, ...]
    answers: Mapping[str, str]
    where: Where


def read_lawn_file(file: Path) -> tuple[list[LawnJobs], list[Finding]]:
    """Every lawn of a lawns.json, and what is wrong with the file, all of it."""
    if wrong := unreadable(file):
        return [], [wrong]
    kept, root, findings = load_record(file, list_name(file), LawnFile)
    if kept is None or root is None:
        return [], findings
    places = root.children.get("lawns")
    found, seen = [], set()
    for number, lawn in enumerate(kept.lawns):
        where = places.children[number].where if places else root.where
        if lawn.code in seen:
            findings.append(Finding(where, f"there are two lawns '{lawn.code}'", "give each a code of its own"))
        seen.add(lawn.code)
        jobs = sorted((job for job in kept.jobs if job.name == lawn.code), key=lambda job: job.on, reverse=True)
        answers: dict[str, str] = next((each.answers for each in kept.inspections if each.lawn == lawn.code), {})
        found.append(LawnJobs(lawn, tuple(jobs), {**answers, **lawn.facts}, where))
    if not found and not findings:
        findings.append(Finding(Where(list_name(file)), "the file has no lawns", "save it from the page of lawns, once a lawn is kept there"))
    return found, findings
