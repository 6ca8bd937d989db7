"""Names that no record may take: exactly those of the pages that stand beside the records' own."""

from collections import defaultdict
from pathlib import Path

from generator.checks.texts.page_names import TAKEN
from generator.site.pages.retired.view import FOLDERS
from tests.site.conftest import ROOT
from tests.yaml_files import read_yaml


def test_the_names_taken_are_those_of_the_pages_there_are(site: Path) -> None:
    gone = read_yaml(ROOT / "data/retired.yml")
    found = defaultdict(set)
    for folder in FOLDERS:
        records = {file.stem for file in (ROOT / "data" / folder.kind).glob("*.yml")}
        pages = {file.stem for file in (site / folder.path).glob("*.html")}
        assert records <= pages, folder
        found[folder.kind] |= pages - records - gone.get(folder.kind, {}).keys()
    assert {kind: names for kind, names in found.items() if names} == {kind: set(names) for kind, names in TAKEN.items()}
