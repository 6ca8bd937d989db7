"""The problem finder: each page answers, tells its causes apart and ends at somebody licensed where one is needed; the list is found by sight."""

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import expect

from tests.site.built_pages import built_pages
from tests.site.reader import Reader
from tests.site.test_truth import PRODUCT_RATE
from tests.yaml_files import read_yaml

ROOT = Path(__file__).parents[2]
PROBLEMS: dict[str, dict[str, Any]] = {
    file.stem: read_yaml(file) for file in sorted((ROOT / "data" / "problems").glob("*.yml"))
}
LEAST = 35
# What may hurt more than the lawn, and who is qualified for it (common practice: licensing differs by country, its need does not).
NEEDED = {
    "licensing": "A licensed spray operator", "spray-drift": "A licensed spray operator", "re-entry": "A licensed spray operator",
    "chemical-label": "A licensed spray operator", "tree-roots": "A qualified tree worker",
    "buried-services": "The locating service and the owner of the line",
}  # fmt: skip
SPRAYED = {"spray-out", "pre-emergent"}  # Tasks done with what only a label may dose.


def part(site: Path, id: str, heading: str) -> str:
    """The HTML of a page of a problem from a heading of the second order to the next."""
    text = (site / "problems" / f"{id}.html").read_text(encoding="utf-8")
    return text.split(f'<h2 id="{heading}"')[1].split("<h2")[0] if f'<h2 id="{heading}"' in text else ""


def test_there_are_as_many_as_were_promised_and_each_has_its_page(site: Path) -> None:
    assert len(PROBLEMS) >= LEAST
    assert {f"problems/{id}.html" for id in PROBLEMS} <= set(built_pages(site))


@pytest.mark.parametrize("id", PROBLEMS)
def test_a_page_opens_with_its_answer_and_tells_two_causes_apart(site: Path, id: str) -> None:
    text = (site / "problems" / f"{id}.html").read_text(encoding="utf-8")
    assert re.search(r"</h1>\s*<p class=\"sb-lead\">[^<]{40,}</p>", text)
    causes = re.findall(r'<h3 id="(cause-[a-z0-9-]+)">', part(site, id, "causes"))
    assert len(causes) == len(set(causes)) >= 2
    assert part(site, id, "causes").count("How to tell") == part(site, id, "causes").count("What to do") == len(causes)


@pytest.mark.parametrize("id", PROBLEMS)
def test_each_answer_leads_to_a_cause_on_the_page_or_to_another_problem(site: Path, id: str) -> None:
    ids = built_pages(site)[f"problems/{id}.html"].ids
    answers = re.findall(r"<dt>(.*?)</dt><dd>(.*?)</dd>", part(site, id, "ask"), re.DOTALL)
    assert len(answers) >= 4
    for answer, leads in answers:
        links = re.findall(r'href="([^"]+)"', leads)
        assert links, answer
        assert all(link[1:] in ids if link.startswith("#") else link[3:] in built_pages(site) for link in links), (answer, links)


@pytest.mark.parametrize("id", PROBLEMS)
def test_whoever_is_needed_is_sent_for(site: Path, id: str) -> None:
    causes = PROBLEMS[id]["causes"].values()
    wanted = {NEEDED[caution] for cause in causes for caution in cause.get("cautions", ()) if caution in NEEDED}
    if any(SPRAYED & set(cause.get("cured_by", ())) for cause in causes):
        wanted.add("A licensed spray operator")
    sent_for = part(site, id, "send-for")
    assert not [who for who in wanted if f">{who}</a>" not in sent_for]


def test_no_problem_gives_a_rate_of_a_product(site: Path) -> None:
    found = {id: match[0] for id in PROBLEMS if (match := PRODUCT_RATE.search(built_pages(site)[f"problems/{id}.html"].text))}
    assert not found


def test_the_list_has_each_problem_once_without_a_script(reader: Callable[..., Reader]) -> None:
    page = reader(java_script_enabled=False, viewport={"width": 360, "height": 740}).open("problems/index.html")
    names = page.locator(".sb-problem-list__name").all_inner_texts()
    assert sorted(names) == sorted(problem["name"] for problem in PROBLEMS.values())
    expect(page.locator(".sb-problem-list__filters")).to_be_hidden()


def test_the_list_narrows_down_to_what_was_seen_and_opens_up_again(reader: Callable[..., Reader]) -> None:
    page = reader(viewport={"width": 360, "height": 740}, has_touch=True, is_mobile=True).open("problems/index.html")
    page.get_by_label("Colour").select_option("orange or pink")
    page.get_by_label("Shape").select_option("on the leaf")
    wanted = [
        problem["name"] for problem in PROBLEMS.values()
        if "orange or pink" in problem["signs"]["colour"] and "on the leaf" in problem["signs"]["shape"]
    ]
    assert sorted(page.locator(".sb-problem-list__name:visible").all_inner_texts()) == sorted(wanted) != []
    expect(page.locator("[data-part=left]")).to_have_text(f"{len(wanted)} problems")
    page.get_by_label("When").select_option("after spraying")
    page.get_by_label("Where").select_option("new lawn")
    expect(page.locator("[data-part=left]")).to_contain_text("None has all of these")
    page.get_by_role("button", name="Show all").click()
    expect(page.locator(".sb-problem-list__name:visible")).to_have_count(len(PROBLEMS))


def test_what_brings_a_problem_on_or_cures_it_leads_to_it(site: Path) -> None:
    """Feeding makes stripes and burns (common practice) and cures hunger; a client's sheet and a grass lead on too."""
    pages = {name: (site / name).read_text(encoding="utf-8") for name in ("tasks/feed.html", "aftercare/after-new-turf.html", "grasses/couch.html")}
    wrong, right = pages["tasks/feed.html"].split('<h2 id="problems"')[1].split("What it puts right")
    assert "problems/stripes-after-feeding.html" in wrong and "problems/burn-after-spreading.html" in wrong
    assert "problems/yellow-from-hunger.html" in right and "problems/stripes-after-feeding.html" not in right
    assert "problems/new-turf-drying.html" in pages["aftercare/after-new-turf.html"].split('<h2 id="wrong"')[1]
    assert "problems/spring-dead-spot.html" in pages["grasses/couch.html"].split('<h2 id="problems"')[1]
