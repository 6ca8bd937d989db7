"""The list of checks: every file in generator/checks is on it, and says what it holds."""

from pathlib import Path

import generator.checks
from generator.book.records import KINDS, SINGLE_FILES
from generator.checks import CHECKS, WARNINGS

ALL = (*CHECKS, *WARNINGS)
FOLDER = Path(generator.checks.__file__).parent


def test_every_rule_file_is_listed_once() -> None:
    files = {file.stem.replace("_", "-") for file in FOLDER.rglob("*.py")} - {"--init--", "check"}
    assert {check.name for check in ALL} == files
    assert len(ALL) == len(files)


def test_every_check_says_its_rule_and_what_it_reads() -> None:
    for check in ALL:
        assert check.description.endswith("."), check.name
        assert set(check.scope) <= {*KINDS, *(file.removesuffix(".yml") for file in SINGLE_FILES), "sources", "mkdocs", "content"}, check.name
        assert check.scope, check.name
