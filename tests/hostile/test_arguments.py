"""Every command ends in an answer or in sentences, whatever is typed after it."""

import random
from collections import Counter
from itertools import islice
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from generator.cli import main
from generator.commands import common
from generator.commands.exit_codes import ExitCode
from tests.hostile.arguments import hostile_arguments

ROOT = Path(__file__).parents[2]
JOB = ("plan", "warm-below-ground", "--grass", "couch", "--place", "sydney", "--area", "240 m2", "--on", "2026-10-12")
LONGEST_LINE = 2000


def run(command: str, *words: str) -> Result:
    """As from a terminal; a fault of ours comes out as it is."""
    result = CliRunner().invoke(main, [command, "--book", str(ROOT), *words])
    if result.exception is not None and not isinstance(result.exception, SystemExit):
        raise result.exception
    return result


def hostile(count: int, seed: int) -> Counter[int]:
    codes: Counter[int] = Counter()
    calculators = tuple(common.whole_book(ROOT).calculators)
    for number, words in enumerate(islice(hostile_arguments(random.Random(seed), calculators), count)):
        try:
            result = run(*words)
        except Exception as error:
            raise AssertionError(f"arguments {number} of seed {seed}: {[word[:60] for word in words]}") from error
        assert result.exit_code in {*ExitCode}
        if result.exit_code in (ExitCode.FINDINGS, ExitCode.USAGE):
            assert result.stderr.strip() and all(len(line) < LONGEST_LINE for line in result.stderr.splitlines()), words
        codes[result.exit_code] += 1
    return codes


def test_hostile_arguments_end_in_sentences() -> None:
    assert sum(hostile(150, 1).values()) == 150


@pytest.mark.soak
def test_three_thousand_hostile_arguments_end_in_sentences() -> None:
    codes = hostile(3000, 2)
    print(f"\n3000 commands with hostile arguments, 0 tracebacks; {', '.join(f'{times} ended with {code}' for code, times in sorted(codes.items()))}")
    assert codes[0] > 200 and codes[2] > 200


@pytest.mark.parametrize(("words", "said"), [
    ((*JOB[:7], "1e12 m2", *JOB[8:]), "--area: an area of 1e12 m2 is not a lawn; give at most 10,000,000 m2"),
    ((*JOB[:7], "nan", *JOB[8:]), "--area: 'nan' is not a quantity; write one such as 2.5"),
    ((*JOB[:9], "9999-12-31"), "--on: '9999-12-31' is not a day for a job; give one from 1900 to 2199"),
    ((*JOB[:9], "0001-01-01"), "--on: '0001-01-01' is not a day for a job; give one from 1900 to 2199"),
    ((*JOB, "--done", "core=9999-12-31"), "--done core: '9999-12-31' is not a day for a job; give one from 1900 to 2199"),
    ((*JOB, "--done", "="), "--done '=' has nothing before its '='; write it as --done core=2026-10-14"),
    ((*JOB, "--done", "core=2026-10-14", "--done", "core=2026-10-15"), "--done 'core' is given twice; give it once"),
    ((*JOB, "--rain", "2026-10-13"), "--rain '2026-10-13' has no '='; write it as --rain 2026-10-13='8 mm'"),
    ((*JOB, "--rain", "2026-10-13=-5 mm"), "--rain 2026-10-13: '-5 mm' is not a day's rain; give 0 to 2000 mm"),
    ((*JOB, "--first-on", "x"), "--first-on: 'x' is not a date; write year, month and day, such as 2026-10-12"),
    (("season", "x" * 10_000, "sydney"), f"no grass '{'x' * 57}...'; there are "),
    (("calc", "topdressing-sand", "a\nb"), "'a\\nb' is not INPUT=VALUE; write it as area='240 m2'"),
    (("season", "couch", "sydney", "x" * 10_000), f"Got unexpected extra argument ({'x' * 56}..."),
    (("hold", "scarify", "=dry"), "'=dry' is not QUESTION=ANSWER; write it as leaf=dry or wind='12 km/h'"),
])  # fmt: skip
def test_a_slip_is_told_in_one_line(words: tuple[str, ...], said: str) -> None:
    result = run(*words)
    assert result.exit_code == 2
    assert result.stderr.splitlines()[-1].startswith(f"Error: {said}")


def test_numbers_beyond_all_lawns_are_still_printed() -> None:
    """A calculator takes any area on earth; its answer has as many digits as it has. 1e14 m2 at 5 mm are 5e11 m3."""
    result = run("calc", "topdressing-sand", "area=1e14 m2", "depth=5 mm")
    assert result.exit_code == 0 and "5" + "0" * 11 in result.stdout


def test_a_number_beyond_the_earth_is_refused() -> None:
    result = run("calc", "topdressing-sand", "area=1e20 m2", "depth=5 mm")
    assert result.exit_code == 2 and "'1e20 m2' is too large a number" in result.output
