"""The inspection sheet in a real browser: the same findings as in Python, shown at once with their reasons, kept through a reload."""

import json
import random
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from generator.field.inspection_result import InspectionResult, findings_of
from generator.site.frame.render import asset_files, render
from generator.site.page_context import PageContext
from generator.site.pages.inspection.inspection_script import inspection_script
from generator.site.pages.inspection.view import inspection_page
from tests.components.calculators import BOOK
from tests.slices import every

INSPECTION = BOOK.inspection
RANDOM_SHEETS = 300
RUN = "sheets => sheets.map(answers => Swardbook.inspection.findings(Swardbook.inspectionSheet, answers))"
KEPT = "swardbook.visit"  # Kept under the name it had first.


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> str:
    folder = tmp_path_factory.mktemp("inspection")
    assets = asset_files()
    for name in ("swardbook.css", "swardbook.js", "inspection-sheet.js"):
        (folder / "assets").mkdir(exist_ok=True)
        (folder / "assets" / name).write_text(assets[f"assets/{name}"], encoding="utf-8")
    (folder / "assets" / "inspection.js").write_text(inspection_script(INSPECTION), encoding="utf-8")
    view = inspection_page(BOOK, BOOK.inspection, PageContext(BOOK, "inspection", date(2026, 1, 1)))
    (folder / "inspection.html").write_text(
        '<!doctype html><html lang="en"><meta charset="utf-8"><title>t</title><link rel="stylesheet" href="assets/swardbook.css">'
        '<script src="assets/swardbook.js" defer></script>'
        f'<body class="md-typeset" data-md-color-scheme="default">{render("pages/inspection/inspection.html.j2", view.context)}</body></html>',
        encoding="utf-8",
    )
    return (folder / "inspection.html").as_uri()


@pytest.fixture
def sheet(page: Page, address: str) -> Any:
    """The page with its scripts run; the test fails on any script error."""
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(str(error)))
    page.on("console", lambda message: errors.append(message.text) if message.type == "error" else None)
    page.goto(address)
    yield page
    assert errors == []


def question(page: Page, id: str) -> Any:
    return page.locator(f"[data-question={id}]")


def measure(page: Page, id: str, text: str) -> None:
    question(page, id).locator(".sb-inspection__measure").fill(text)
    question(page, id).locator(".sb-inspection__measure").blur()


def choose(page: Page, id: str, choice: str) -> None:
    question(page, id).locator(f"input[value={choice}]").check()


def plain(result: InspectionResult) -> dict[str, Any]:
    """A result as the browser gives it: each outcome by its question and place."""
    def keys(found: Any) -> list[str]:
        return [f"{each.question}:{each.position}" for each in found]
    return {
        "stops": keys(result.stops), "added": keys(result.added), "notes": keys(result.notes), "unanswered": list(result.unanswered),
        "softened": {task: {"levels": soft.levels, "why": keys(soft.why)} for task, soft in result.softened.items()},
        "leftOut": {task: keys(why) for task, why in result.left_out.items()},
        "chosen": {step: keys(why) for step, why in result.chosen.items()}, "measured": dict(result.measured),
        "troubles": {each.question: each.sentence for each in result.troubles},
    }


def random_answers(chance: random.Random) -> dict[str, str]:
    answers = {}
    for each in INSPECTION.questions:
        if chance.random() < 0.3:
            continue
        if each.choices:
            answers[each.id] = chance.choice([*each.choices, "no-such-choice", ""])
        else:
            most = each.at_most or 100
            number = chance.choice([chance.uniform(-0.05 * most, 1.1 * most), chance.uniform(0, 0.1 * most), *_limits(each.outcomes)])
            answers[each.id] = f"{number:.4g}{chance.choice(['', '', f' {each.unit}' if each.unit != '1' else '', ' banana'])}"
    if chance.random() < 0.1:
        answers["a-question-of-another-book"] = chance.choice(["yes", " "])
    return answers


def _limits(outcomes: Any) -> list[float]:
    """The limits themselves, where < and <= part."""
    return [INSPECTION.constants[name].value for outcome in outcomes if outcome.when for name in INSPECTION.constants if name in outcome.when]


def test_browser_and_python_find_the_same_in_random_sheets(sheet: Page) -> None:
    chance = random.Random(2026)
    sheets = [random_answers(chance) for _ in range(RANDOM_SHEETS)]
    found = sheet.evaluate(RUN, sheets)
    effects = set()
    for answers, each in zip(sheets, found, strict=True):
        each.pop("found")
        expected = plain(findings_of(INSPECTION, answers))
        assert each == expected, answers
        effects |= {name for name, value in expected.items() if value}
    assert effects == {"stops", "added", "notes", "unanswered", "softened", "leftOut", "chosen", "measured", "troubles"}


def test_an_answer_shows_at_once_what_it_changes_and_why(sheet: Page) -> None:
    measure(sheet, "thatch-depth", "60")
    found = question(sheet, "thatch-depth").locator("[data-part=found]")
    expect(found).to_contain_text("Take it out over two seasons")
    expect(found).to_contain_text("Blades reach 25 mm (1 in)")
    choose(sheet, "grass-confirmed", "not-sure")
    state = sheet.locator("[data-part=state]")
    expect(state).to_contain_text("Stop: 1 thing has to be settled first.")
    expect(state).to_contain_text(f"Not looked at yet: {len(INSPECTION.questions) - 2} of {len(INSPECTION.questions)}.")
    choose(sheet, "grass-confirmed", "as-planned")
    expect(state).to_contain_text("Nothing stops the job so far.")
    expect(question(sheet, "grass-confirmed").locator("[data-part=found]")).to_have_text("Nothing changes.")


def test_a_kept_answer_that_is_none_of_the_choices_is_told_and_can_be_taken_back(sheet: Page) -> None:
    """Another edition of the book had a choice that this one has not."""
    row = '{"v": 1, "at": 0, "stamp": "a", "seen": [], "row": {"head": {}, "answers": {"water-supply": "a-river"}, "ticks": {}}}'
    sheet.evaluate("row => localStorage.setItem('swardbook.visit.sheet', row)", row)
    sheet.reload()
    told = question(sheet, "water-supply").locator("[data-part=trouble]")
    expect(told).to_contain_text("'a-river' is not one of its choices.")
    question(sheet, "water-supply").locator("[data-part=clear]").click()
    expect(told).to_be_hidden()
    assert "a-river" not in sheet.evaluate("localStorage.getItem('swardbook.visit.sheet')")


def test_an_answer_can_be_taken_back(sheet: Page) -> None:
    choose(sheet, "water-supply", "none")
    question(sheet, "water-supply").locator("[data-part=clear]").click()
    expect(sheet.locator("[data-part=state]")).to_contain_text(f"{len(INSPECTION.questions)} of {len(INSPECTION.questions)}")
    expect(question(sheet, "water-supply").locator("[data-part=found]")).to_be_hidden()


def test_an_impossible_measure_is_told_beside_its_field(sheet: Page) -> None:
    measure(sheet, "living-cover", "120")
    expect(question(sheet, "living-cover").locator("[data-part=trouble]")).to_have_text("This cannot be more than 100 %; is that a slip?")
    expect(question(sheet, "living-cover").locator(".sb-inspection__measure")).to_have_attribute("aria-invalid", "true")


def test_a_measure_keeps_its_unit_when_the_reader_changes_units(sheet: Page) -> None:
    measure(sheet, "thatch-depth", "60")
    sheet.evaluate("Swardbook.preferences.set('units', 'us')")
    assert question(sheet, "thatch-depth").locator(".sb-inspection__measure").input_value() == "60 mm"
    measure(sheet, "thatch-depth", "0.3")  # 0.3 in is 7.6 mm, under the trigger of 13 mm.
    assert question(sheet, "thatch-depth").locator(".sb-inspection__measure").input_value() == "0.3 in"
    expect(question(sheet, "thatch-depth").locator("[data-part=found]")).to_contain_text("Leave out: Scarify.")


def test_the_sheet_is_there_again_after_a_reload_and_can_be_emptied_and_brought_back(sheet: Page) -> None:
    sheet.locator("[data-head=lawn]").fill("K-17")
    measure(sheet, "soil-ph", "5")
    choose(sheet, "pets", "live-out")
    sheet.locator("[data-tick=photo-1]").check()
    sheet.reload()

    def holds(there: bool) -> None:
        expect(sheet.locator("[data-head=lawn]")).to_have_value("K-17" if there else "")
        expect(question(sheet, "soil-ph").locator(".sb-inspection__measure")).to_have_value("5" if there else "")
        expect(question(sheet, "pets").locator("input[value=live-out]")).to_be_checked(checked=there)
        expect(sheet.locator("[data-tick=photo-1]")).to_be_checked(checked=there)

    holds(True)
    sheet.locator("[data-part=empty]").click()
    holds(False)
    sheet.locator("[data-part=empty]").click()
    holds(True)


@pytest.mark.parametrize("kept", every(3, [
    json.dumps({"v": 1, "answers": {"soil-ph": "<img src=x onerror=alert(1)>" * 50, "pets": "<b>"}, "head": {"lawn": "<b>" * 999}}),
    "{", "null", '{"v": 1, "answers": null, "head": [], "ticks": 3}', '{"v": 2, "answers": {"soil-ph": "5"}}', '{"v": 1}', "7", '"v"',
    '{"v": 1, "answers": {"soil-ph": 5, "no-such": "x", "pets": {}}}',
]))
def test_what_was_kept_and_is_damaged_does_no_harm(sheet: Page, kept: str) -> None:
    sheet.evaluate("([key, kept]) => localStorage.setItem(key, kept)", [KEPT, kept])
    sheet.reload()
    expect(sheet.locator("[data-part=state]")).to_contain_text(f"Not looked at yet: {len(INSPECTION.questions)} of {len(INSPECTION.questions)}.")
    assert sheet.locator(".sb-inspection img, .sb-inspection b").count() == 0


def test_the_text_to_send_holds_findings_reasons_and_answers(sheet: Page) -> None:
    sheet.evaluate("Object.defineProperty(navigator, 'clipboard', {value: undefined})")
    sheet.locator("[data-head=lawn]").fill("K-17")
    measure(sheet, "thatch-depth", "8")
    choose(sheet, "services", "not-asked")
    sheet.locator("[data-component=inspection-sheet] [data-part=copy]").click()
    text = sheet.locator("[data-part=by-hand] textarea").input_value()
    for line in (
        "Lawn (a code, no name): K-17", "Leave out", "- Scarify: Leave the scarifier at home. A thin layer cushions the lawn and does no harm.",
        "14 days before: Have the plans in hand", "Not looked at yet", "How deep is the thatch? 8 mm", "What is buried under it? Not asked yet",
        "What is the soil? –",
    ):
        assert line in text, line


def test_without_scripts_the_sheet_can_be_filled_in_and_names_every_outcome(browser: Any, address: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(address)
    choose(page, "pool", "downhill")
    for details in page.locator(".sb-inspection__all > summary").all()[:3]:
        details.click()
    assert page.locator("[data-outcome]").count() == sum(len(each.outcomes) for each in INSPECTION.questions)
    expect(page.locator("[data-outcome='thatch-depth:0']")).to_contain_text("Under 13 mm (½ in): Leave out: Scarify.")
    expect(page.locator("[data-part=plain]")).to_be_visible()
    assert page.locator("[data-component=inspection-sheet] button:visible").count() == 0
    context.close()


def test_the_component_rests_on_a_page_without_its_questions(page: Page, tmp_path: Path) -> None:
    """In the gallery of components the form stands as printed."""
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(str(error)))
    assets = asset_files()
    scripts = "".join(f"<script>{assets[name]}</script>" for name in ("assets/swardbook.js", "assets/inspection-sheet.js"))
    (tmp_path / "bare.html").write_text(f'<!doctype html><form data-component="inspection-sheet"></form>{scripts}', encoding="utf-8")
    page.goto((tmp_path / "bare.html").as_uri())
    assert errors == []
