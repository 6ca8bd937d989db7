"""What `swardbook plan --lawn` takes from a lawns.json where the command line leaves it out."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

import click

from generator.book.lists.lawn_file import KeptJob, KeptLawn, LawnJobs, read_lawn_file
from generator.commands.common import known
from generator.commands.exit_codes import ExitCode


@dataclass(frozen=True)
class Given:
    """A job as it was typed: ids, and measures with their units. None for what nobody said."""

    renovation: str | None = None
    grass: str | None = None
    place: str | None = None
    area: str | None = None
    on: str | None = None
    site: str | None = None
    done: Mapping[str, str] = field(default_factory=dict)
    without: Sequence[str] = ()
    chosen: Sequence[str] = ()
    answers: Mapping[str, str] = field(default_factory=dict)
    rain: Mapping[str, str] = field(default_factory=dict)
    people: str | None = None

    def over(self, kept: "Given") -> "Given":
        """This, and what was kept where this says nothing."""
        return Given(
            self.renovation or kept.renovation, self.grass or kept.grass, self.place or kept.place, self.area or kept.area, self.on or kept.on,
            self.site or kept.site, {**kept.done, **self.done}, (*kept.without, *(each for each in self.without if each not in kept.without)),
            (*kept.chosen, *(each for each in self.chosen if each not in kept.chosen)), {**kept.answers, **self.answers}, {**kept.rain, **self.rain},
            self.people or kept.people,
        )

    def asked(self, name: str) -> str:
        """What the job cannot do without; its absence ends the command."""
        value = getattr(self, name)
        if value is None:
            option = "RENOVATION" if name == "renovation" else f"--{name}"
            raise click.UsageError(f"Missing {'argument' if name == 'renovation' else 'option'} '{option}'.")
        return str(value)


def given_by(file: Path, code: str, renovation: str | None) -> Given:
    """The lawn of this code, with its latest job (of this plan, if one is named); anything wrong with the file ends the command."""
    return of_lawn(_of_file(file, code), renovation)


def kept_lawn(file: Path, code: str) -> KeptLawn:
    """The lawn of this code, as it is kept; anything wrong with the file ends the command."""
    return _of_file(file, code).lawn


def _of_file(file: Path, code: str) -> LawnJobs:
    found, findings = read_lawn_file(file)
    for finding in findings:
        click.echo(finding, err=True)
    if findings:
        raise SystemExit(ExitCode.FINDINGS)
    known(code, (each.lawn.code for each in found), "lawn")
    return next(each for each in found if each.lawn.code == code)


def of_lawn(kept: LawnJobs, renovation: str | None = None) -> Given:
    """What a lawn and its latest job give. renovation: only a job of this plan counts."""
    lawn = kept.lawn
    alone = Given(grass=lawn.grass, place=lawn.place, area=lawn.area, site=lawn.site, answers=dict(kept.answers))
    job = next((each for each in kept.jobs if renovation in (None, each.plan)), None)
    return alone if job is None else _of_job(job).over(alone)


def _of_job(job: KeptJob) -> Given:
    return Given(
        job.plan, job.grass, job.place, job.typed or f"{job.area!r} m2", job.on, job.site, {**job.put, **job.done}, job.without, job.chosen,
        job.inspection, {day: f"{depth!r} mm" for day, depth in job.rain.items()}, str(job.crew) if job.crew else None,
    )
