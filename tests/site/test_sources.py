"""The sources page: what each page takes from a source, and what rests on none."""

import re
from pathlib import Path

from tests.yaml_files import read_yaml

ROOT = Path(__file__).parents[2]
TAG = re.compile(r"<[^>]+>")


def entry(site: Path, id: str) -> str:
    text = (site / "sources.html").read_text(encoding="utf-8")
    start = text.index(f'id="{id}"')
    return " ".join(TAG.sub(" ", text[start:text.index("</details>", start)]).split())


def test_a_source_says_which_figures_were_taken_and_where_they_stand(site: Path) -> None:
    """Clemson's calendar for bermudagrass gives 1 to 1 1/4 inches of water a week: 25 to 32 mm."""
    taken = entry(site, "clem-bermuda")
    assert "Water" in taken and "weekly depth, 25 to 32 mm" in taken
    assert "How often should I water?" in taken, "an answer that quotes the figure rests on its source too"


def test_figures_without_a_published_source_are_listed(site: Path) -> None:
    assert "renovation height, 5 to 15 mm" in entry(site, "assumption")  # couch: our reading of "nearly to soil"
    assert entry(site, "common-practice")


def test_people_to_ask_stand_on_a_shelf_of_their_own_and_lead_to_who_that_is(site: Path) -> None:
    text = (site / "sources.html").read_text(encoding="utf-8").split('<h2 id="people"')[1]
    finder = (site / "problems/index.html").read_text(encoding="utf-8")
    for file in (ROOT / "data/experts").glob("*.yml"):
        assert f'<a href="problems/index.html#expert-{file.stem}">{read_yaml(file)["name"]}</a>' in text
        assert f'id="expert-{file.stem}"' in finder
    assert "problems/tree-roots-in-lawn.html#send-for" in text  # a tree worker is sent for there


def test_every_source_that_a_plan_or_a_step_names_leads_to_it(site: Path) -> None:
    plan = read_yaml(ROOT / "data/renovations/warm-below-ground.yml")
    assert plan["name"] in entry(site, "dardanup")
