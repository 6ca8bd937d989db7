"""Names that no record may take: exactly those of the pages that stand beside the records' own."""

from collections import defaultdict
from pathlib import Path

import yaml

from generator.checks.page_names import TAKEN
from generator.pages.retired import FOLDERS
from tests.site.conftest import ROOT


def test_the_names_taken_are_those_of_the_pages_there_are(site: Path) -> None:
    gone = yaml.safe_load((ROOT / "data/retired.yml").read_text(encoding="utf-8"))
    found = defaultdict(set)
    for folder in FOLDERS:
        records = {file.stem for file in (ROOT / "data" / folder.kind).glob("*.yml")}
        pages = {file.stem for file in (site / folder.path).glob("*.html")}
        assert records <= pages, folder
        found[folder.kind] |= pages - records - gone.get(folder.kind, {}).keys()
    assert {kind: names for kind, names in found.items() if names} == {kind: set(names) for kind, names in TAKEN.items()}
