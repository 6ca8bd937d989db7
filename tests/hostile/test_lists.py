"""`round` and `record` end in an answer or in sentences, whatever list they are handed: never in a traceback."""

import random
import re
from collections import Counter
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from generator.book.lists.lawns import MOST_LAWNS
from generator.cli import main
from tests.hostile.lists import Known, hostile_list

ROOT = Path(__file__).parents[2]
LAWN = "TL-1,couch,sydney,9 m2\n"
HEADER = "client,grass,place,area\n"
KEPT = "work,date,lawn,product,area\nfeed,2026-02-03,L1,P,9 m2\n"
# Path, line and column, what is wrong; what would be right.
FINDING = re.compile(r"^.+:\d+:\d+: .+; .+$")
KNOWN = Known(("couch", "kikuyu", "buffalo", "tall-fescue"), ("sydney", "canberra"), ("warm-below-ground", "overseed", "oversow-winter"))


def run(command: str, file: Path, *words: str) -> Result:
    day = ("--on", "2026-10-12") if command == "round" else ()
    return CliRunner().invoke(main, [command, "--book", str(ROOT), str(file), *day, *words])


def written(folder: Path, content: bytes | str, name: str = "list.csv") -> Path:
    file = folder / name
    file.write_bytes(content.encode() if isinstance(content, str) else content)
    return file


def ends_in_sentences(result: Result) -> None:
    if result.exception is not None and not isinstance(result.exception, SystemExit):
        raise result.exception
    assert result.exit_code in (0, 1, 2), result.exit_code
    if result.exit_code == 0:
        return
    assert result.stdout == "" and result.stderr.strip()
    if result.exit_code == 1:
        assert all(FINDING.match(line) for line in result.stderr.splitlines()), result.stderr[:400]


def hostile(command: str, count: int, seed: int, folder: Path) -> Counter[int]:
    """How often each exit code came."""
    draw, codes = random.Random(seed), Counter()
    for number in range(count):
        name, content, options = hostile_list(draw, KNOWN, kept=command == "record")
        file = written(folder, content, name)
        result = run(command, file, *options, *(("--json",) if number % 2 else ()))
        try:
            ends_in_sentences(result)
        except Exception as error:
            raise AssertionError(f"{command} list {number} of seed {seed}, {name!r} {options}: {content[:500]!r}") from error
        codes[result.exit_code] += 1
    return codes


@pytest.mark.parametrize("command", ["round", "record"])
def test_a_hostile_list_ends_in_sentences(command: str, tmp_path: Path) -> None:
    assert sum(hostile(command, 40, 1, tmp_path).values()) == 40


@pytest.mark.soak
@pytest.mark.parametrize(("command", "count"), [("round", 3000), ("record", 3000)])
def test_three_thousand_hostile_lists_end_in_sentences(command: str, count: int, tmp_path: Path) -> None:
    codes = hostile(command, count, 2, tmp_path)
    print(f"\n{command}: {count} hostile lists, 0 tracebacks; {', '.join(f'{times} ended with {code}' for code, times in sorted(codes.items()))}")
    assert all(codes[code] > count // 50 for code in (0, 1)), "the lists are too tame, or none is right"


@pytest.mark.parametrize(("command", "right"), [("round", HEADER + LAWN), ("record", KEPT)])
@pytest.mark.parametrize(("sign", "words", "option"), [(";", "semicolons", ";"), ("\t", "tabs", "tab"), ("|", "upright bars", "|")])
def test_other_separators_are_named_and_taken(command: str, right: str, sign: str, words: str, option: str, tmp_path: Path) -> None:
    """A spreadsheet set to a country with decimal commas saves 'CSV' with semicolons."""
    file = written(tmp_path, right.replace(",", sign))
    result = run(command, file)
    assert result.exit_code == 1
    column = right.index(",") + 1
    assert result.stderr == f"list.csv:1:{column}: this list is separated by {words}; use commas, or --separator '{option}'\n"
    answer = run(command, file, "--separator", option)
    assert (answer.exit_code, answer.stdout) == (0, run(command, written(tmp_path, right)).stdout)


def test_a_separator_that_was_not_needed_is_told(tmp_path: Path) -> None:
    result = run("round", written(tmp_path, HEADER + LAWN), "--separator", ";")
    assert result.stderr == "list.csv:1:7: this list is separated by commas; leave --separator out\n"
    assert run("round", written(tmp_path, HEADER + LAWN), "--separator", "-").exit_code == 2


@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
def test_lines_may_end_as_any_system_ends_them(ending: str, tmp_path: Path) -> None:
    """CR alone is what some spreadsheets still write as 'CSV (Macintosh)'."""
    right = run("round", written(tmp_path, HEADER + LAWN))
    assert right.exit_code == 0
    assert run("round", written(tmp_path, (HEADER + LAWN).replace("\n", ending))).stdout == right.stdout
    wrong = run("round", written(tmp_path, (HEADER + LAWN + LAWN.replace("couch", "coch")).replace("\n", ending)))
    assert wrong.stderr == "list.csv:3:1: no grass 'coch'; did you mean 'couch'?\n"


@pytest.mark.parametrize(("content", "told"), [
    (b"", "list.csv:1:1: the file is empty; write the names of the columns, and a line for each entry"),
    (b"\r\n \n", "list.csv:1:1: the file is empty; write the names of the columns, and a line for each entry"),
    (HEADER.encode(), "list.csv:1:1: the list has no lawns; write a line for each, with its client's code, grass, place and area"),
    ((HEADER + LAWN).encode("utf-16"), "list.csv:1:1: the file is saved as UTF-16; save it as UTF-8"),
    ((HEADER + LAWN).encode("utf-16-le"), "list.csv:1:1: the list is saved as UTF-16; save it as UTF-8"),
    ((HEADER + LAWN).encode("utf-16-be"), "list.csv:1:1: the list is saved as UTF-16; save it as UTF-8"),
    ((HEADER + "TL-1,couch,Orléans,9 m2").encode("latin-1"), "list.csv:2:15: the byte 0xe9 is not UTF-8 text; save the file as UTF-8"),
    ((HEADER + "TL-1,couch,syd\0ney,9 m2").encode(), "list.csv:2:15: an invisible control character (U+0000) is here; delete it"),
    (b"client,client,grass,place,area\n", "list.csv:1:8: the column 'client' is here twice; keep one of them"),
    ((HEADER + 'TL-1,"couch,sydney,9 m2\n' + LAWN).encode(), "list.csv:2:6: the quote that opens here is never closed; close it; a quote inside a value is written twice"),
    ((HEADER + "TL-1,couch,sydney,9 m2,x").encode(), "list.csv:2:24: this line has more values than there are columns; put values with a comma in quotes"),
    ((HEADER + "TL-1,couch,sydney,1e12 m2").encode(), "list.csv:2:1: area: an area of 1e12 m2 is not a lawn; give at most 10,000,000 m2"),
    ((HEADER + f"TL-1,{'a' * 200_000},sydney,9 m2").encode(), f"list.csv:2:6: '{'a' * 57}...' is not an id; use small letters, digits and single hyphens"),
    (b"client,grass,place,area,on\nTL-1,couch,sydney,9 m2,9999-12-31", "list.csv:2:1: '9999-12-31' is not a day for a job; give one from 1900 to 2199"),
    (b"client,grass,place,area" + b"," * 100_000, "list.csv:1:30: the first line has 100004 values; the columns are: client, grass, place, area, site, plan, on, town, travel"),
    (HEADER.encode() + LAWN.encode() * 100_000, "list.csv:1:1: the list is larger than 1000 kB; split it into several lists"),
    (HEADER.encode() + LAWN.encode() * (MOST_LAWNS + 1), f"list.csv:1:1: the list has {MOST_LAWNS + 1} lawns; split it into lists of at most {MOST_LAWNS}"),
])  # fmt: skip
def test_each_slip_is_one_line(content: bytes, told: str, tmp_path: Path) -> None:
    result = run("round", written(tmp_path, content))
    assert (result.exit_code, result.stderr) == (1, told + "\n")


def test_a_mark_at_the_beginning_and_blanks_after_commas_do_no_harm(tmp_path: Path) -> None:
    right = run("round", written(tmp_path, HEADER + LAWN))
    assert right.exit_code == 0
    assert run("round", written(tmp_path, "\ufeff" + HEADER + 'TL-1, "couch" , sydney, "9 m2"\n\n')).stdout == right.stdout


def test_a_shielded_value_is_read_as_it_was_meant(tmp_path: Path) -> None:
    result = run("round", written(tmp_path, HEADER + "TL-1,'=couch,sydney,9 m2\n"))
    assert result.stderr == "list.csv:2:6: '=couch' is not an id; use small letters, digits and single hyphens\n"
