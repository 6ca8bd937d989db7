"""A shell completes ids from the names of files, asked as a shell asks; where there is no book it says nothing."""

from pathlib import Path

import pytest
from click.shell_completion import BashComplete

from generator.cli import main
from tests.book_folders import WHOLE


@pytest.mark.parametrize(("typed", "begun", "found"), [
    (["season"], "pl", ["plaingrass"]), (["season", "plaingrass"], "", ["flatfield"]), (["hold"], "sw", ["sweep"]), (["calc"], "", ["sweeping"]),
    (["plan"], "", ["plain-renovation"]), (["new"], "gr", ["grass"]),
])
def test_ids_are_completed(typed: list[str], begun: str, found: list[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    shell = BashComplete(main, {}, "swardbook", "_SWARDBOOK_COMPLETE")
    monkeypatch.chdir(WHOLE)
    assert [item.value for item in shell.get_completions(typed, begun)] == found
    monkeypatch.chdir(tmp_path)
    assert typed == ["new"] or shell.get_completions(typed, begun) == []
