"""Hold or go on a task's page, in a real browser: asked, answered at once with reasons, kept on the device, mounted for a step."""

import json
import re
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import material
import pytest
from playwright.sync_api import Locator, Page, expect

from generator.field.forecast import QUESTIONS
from generator.field.holds import asks_of, holds_of, said_reason
from generator.site.frame.render import asset_files, render_component
from generator.site.page_context import PageContext
from generator.site.pages.task.view import task_page
from generator.site.shared.hold_script import PATH, hold_script
from generator.site.shared.hold_view import hold_view
from tests.components.calculators import BOOK

THEME = Path(material.__file__).parent / "templates" / "assets" / "stylesheets"
AXE = Path(__file__).parents[1] / "vendor" / "axe.min.js"
KEPT = "swardbook.holds"
SCRIPTS = ("assets/swardbook.js", PATH, "assets/hold-or-go.js")
HOSTILE = "<img src=x onerror=alert(1)>"
# A mild, moist, dry-leafed day: none of it is frost, heat or wet ground by anybody's reckoning.
MILD = {"low": "9", "high": "19", "leaf": "dry", "soil": "moist"}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """One page a task, with the component alone, and an empty one to mount it in."""
    made = tmp_path_factory.mktemp("hold")
    assets = {**asset_files(), PATH: hold_script(BOOK)}
    (made / "assets").mkdir()
    for name in ("assets/swardbook.css", *SCRIPTS):
        (made / name).write_text(assets[name], encoding="utf-8")
    styles = "".join(f'<link rel="stylesheet" href="{sheet}">' for sheet in (*(each.as_uri() for each in sorted(THEME.glob("*.css"))), "assets/swardbook.css"))
    loaded = "".join(f'<script src="{name}" defer></script>' for name in SCRIPTS)
    bodies = {task: render_component("hold-or-go", hold_view(BOOK, task, PageContext(BOOK, "any", date(2026, 1, 1)))) for task in ("core", "spray-out", "pre-emergent")}
    for name, body in {**bodies, "empty": '<div id="slot"></div>'}.items():
        (made / f"{name}.html").write_text(
            '<!doctype html><html lang="en"><meta charset="utf-8"><title>t</title><meta name="viewport" content="width=device-width">'
            f'{styles}<body data-md-color-scheme="default" data-md-color-primary="indigo" data-md-color-accent="indigo">'
            f'<main class="md-content" style="padding-top: 4rem"><article class="md-content__inner md-typeset">{body}</article></main>{loaded}</body></html>',
            encoding="utf-8",
        )
    return made


@pytest.fixture
def opened(page: Page, folder: Path) -> Any:
    """Opens a page by name; the test fails on any script error."""
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(str(error)))
    page.on("console", lambda message: errors.append(message.text) if message.type == "error" else None)
    page.set_default_timeout(5000)

    def open_page(name: str) -> Page:
        page.goto((folder / f"{name}.html").as_uri())
        return page

    yield open_page
    assert errors == []


def field(page: Page, id: str) -> Locator:
    """The field of a question, whatever kind it is."""
    return page.locator(f"[id$='-{id}-how']").locator("xpath=..")


def say(page: Page, **answers: str) -> None:
    for id, text in answers.items():
        box = field(page, id)
        if box.locator("select").count():
            box.locator("select").select_option(text)
        elif text == "none":
            box.locator("input[type=checkbox]").check()
        elif box.locator("input[type=radio]").count():
            box.locator(f"input[value='{text}']").check()
        else:
            box.locator("input[type=text]").fill(text)
            box.locator("input[type=text]").blur()


def answer(page: Page) -> Locator:
    return page.locator(".sb-hold__said")


def test_frost_holds_and_a_milder_night_lets_it_go(opened: Callable[[str], Page]) -> None:
    page = opened("core")
    say(page, **{**MILD, "low": "-3"}, grass="couch")
    expect(answer(page)).to_contain_text("Hold. Frost tonight.")
    reason = page.locator(".sb-hold__reasons > li")
    expect(reason).to_have_count(1)
    expect(reason).to_contain_text("What would change it: A run of nights without frost.")
    expect(reason.locator(".sb-source-marks")).to_have_count(0)  # common practice, which the foot of the page says once
    # An air frost is 0 °C or colder on the thermometer (Met Office, WMO); the rule shows where it turns.
    expect(reason).to_contain_text("Lowest temperature at most 0 °C")
    say(page, low="9")
    expect(answer(page)).to_have_text("Go. Nothing asked here speaks against it.")
    expect(reason).to_have_count(0)
    expect(page.locator(".sb-hold__quiet")).to_contain_text("frost tonight")


def test_the_grass_decides_between_care_and_hold_on_a_night_near_freezing(opened: Callable[[str], Page]) -> None:
    """Common practice, no source: what has no runners below ground does not come back from there."""
    page = opened("core")
    say(page, **{**MILD, "low": "1"}, grass="couch")
    expect(answer(page)).to_contain_text("Go with care. Frost tonight.")
    say(page, grass="buffalo")
    expect(answer(page)).to_contain_text("Hold. Frost tonight.")


def test_each_answer_has_its_own_sign_beside_its_word(opened: Callable[[str], Page]) -> None:
    page, signs = opened("core"), set()
    for low, word in (("9", "Go"), ("1", "Go with care"), ("-3", "Hold"), ("", "Not known yet")):
        say(page, **{**MILD, "low": low}, grass="couch")
        expect(page.locator(".sb-hold__word")).to_have_text(word)
        signs.add(page.locator(".sb-hold__plate, .sb-hold__stroke").evaluate_all("all => all.map(each => each.getAttribute('d')).join()"))
    assert len(signs) == 4


def test_where_nothing_is_known_it_says_so_and_asks_what_these_rules_need(opened: Callable[[str], Page]) -> None:
    page = opened("core")
    expect(answer(page)).to_contain_text("Not known yet")
    asked = asks_of(holds_of("core", BOOK.holds))
    shown = page.locator(".sb-hold__field")
    # Two of its questions are answered by naming the grass.
    assert {"cool_season", "surface_running"} < set(asked) and shown.count() == len(asked) - 1
    # What reads as 'none' while nobody has answered it is not among what is not known.
    presumed = [id for id in asked if QUESTIONS[id].lately]
    expect(page.locator(".sb-hold__could:text('Not known')")).to_have_count(shown.count() - len(presumed))
    assert page.locator(".sb-hold__reasons").count() == 0
    # With the questions folded, each is one tap away.
    page.locator(".sb-hold__day > summary").click()
    page.get_by_role("button", name="Soil").click()
    assert field(page, "soil").locator("input[value='']").evaluate("each => each === document.activeElement")


def test_what_is_known_is_enough_to_hold(opened: Callable[[str], Page]) -> None:
    page = opened("core")
    say(page, soil="wet")
    expect(answer(page)).to_contain_text("Hold. Sodden or frozen ground.")
    # What was published keeps its mark: the page of Purdue University on coring.
    expect(page.locator(".sb-hold__reasons .sb-source-marks a")).to_have_attribute("href", re.compile(r"sources\.html#purdue-aer16$"))
    say(page, soil="")
    expect(answer(page)).to_contain_text("Not known yet")


def test_frost_that_was_seen_counts_beside_a_mild_forecast(opened: Callable[[str], Page]) -> None:
    """Common practice: holes in warm-season grass stay open while frosts are about. Two nights ago is told as it was typed or ticked."""
    page = opened("core")
    page.clock.set_fixed_time(f"{TODAY}T12:00:00")
    say(page, **MILD, grass="couch")
    expect(answer(page)).to_contain_text("Go.")
    taken = page.locator(".sb-hold__presumed")
    expect(taken).to_contain_text("Taken for granted: no frost has been seen on the lawn.")
    taken.get_by_role("button").click()
    assert field(page, "frost_seen").locator("input[type=text]").evaluate("each => each === document.activeElement")
    for typed in ("2", "2 nights", "2026-11-26"):
        say(page, frost_seen=typed)
        expect(answer(page)).to_contain_text("Go with care. Frost seen before coring.")
        expect(page.locator(".sb-hold__reasons > li")).to_contain_text("With frost seen two nights ago, warm-season grass")
        expect(taken).to_have_count(0)
    say(page, frost_seen="2026-11-30")
    expect(field(page, "frost_seen").locator(".sb-hold__trouble")).to_contain_text("still to come")
    say(page, grass="tall-fescue")
    say(page, frost_seen="2")
    expect(answer(page)).to_contain_text("Go.")


def test_frost_that_nobody_looked_for_is_not_known_and_none_is_none(opened: Callable[[str], Page]) -> None:
    page = opened("core")
    say(page, **MILD, grass="couch")
    boxes = field(page, "frost_seen").locator("input[type=checkbox]")
    boxes.nth(1).check()
    expect(answer(page)).to_contain_text("Not known yet")
    expect(field(page, "frost_seen").locator(".sb-hold__could")).to_have_text("Not known, could ask for care")
    boxes.nth(0).check()
    expect(boxes.nth(1)).not_to_be_checked()
    expect(answer(page)).to_contain_text("Go.")
    expect(page.locator(".sb-hold__presumed")).to_have_count(0)
    page.reload()
    expect(boxes.nth(0)).to_be_checked()


def test_hostile_words_stay_words(opened: Callable[[str], Page]) -> None:
    page = opened("core")
    say(page, **MILD, grass="couch")
    say(page, low=HOSTILE)
    expect(field(page, "low").locator(".sb-hold__trouble")).to_contain_text(HOSTILE)
    expect(field(page, "low").locator("input")).to_have_attribute("aria-invalid", "true")
    expect(answer(page)).to_contain_text("Not known yet")
    assert page.locator(".sb-hold img").count() == 0
    say(page, low="20", high="10")
    expect(field(page, "low").locator(".sb-hold__trouble")).to_have_text("The lowest is above the highest; swap them.")
    expect(answer(page)).to_contain_text("Not known yet")


def days(page: Page) -> list[str]:
    """The dates of which something is kept."""
    return page.evaluate(f"Object.keys(localStorage).filter(each => each.startsWith('{KEPT}')).map(each => each.slice('{KEPT}.'.length))")


TODAY = "2026-11-28"


DAMAGED = (
    "{", "null", "7", '"v"', '{"v": 2, "days": {}}', '{"v": 1}', '{"v": 1, "days": [3]}', '{"v": 1, "days": {"yesterday": {}, "2026-11-28": 4}}',
    json.dumps({"v": 1, "days": {TODAY: {"at": HOSTILE, "all": {"low": 3, "nothing": "x", "label_wind": "1"}, "tasks": {"core": [1]}}}}),
    json.dumps({"v": 1, "days": {TODAY: {"at": "06:10", "all": {"low": HOSTILE * 90, "leaf": HOSTILE, "grass": "__proto__"}, "tasks": {"__proto__": {}}}}}),
)  # fmt: skip


def test_what_was_kept_and_is_damaged_does_no_harm(opened: Callable[[str], Page], page: Page) -> None:
    page.clock.set_fixed_time(f"{TODAY}T12:00:00")
    opened("core")
    for kept in DAMAGED:
        page.evaluate("([key, kept]) => { localStorage.clear(); localStorage.setItem(key, kept); }", [KEPT, kept])
        page.reload()
        expect(answer(page)).to_contain_text("Not known yet")
        assert page.locator(".sb-hold img").count() == 0, kept
        say(page, soil="wet")
        expect(answer(page)).to_contain_text("Hold")


def test_a_day_is_kept_for_every_task_and_can_be_forgotten(opened: Callable[[str], Page]) -> None:
    page = opened("core")
    say(page, **MILD, grass="couch")
    expect(answer(page)).to_contain_text("Go.")
    page.reload()
    expect(answer(page)).to_contain_text("Go.")
    expect(page.locator(".sb-hold__day")).not_to_have_attribute("open", "")
    page.locator(".sb-hold__day > summary").click()
    expect(field(page, "low").locator("input")).to_have_value("9 °C")
    opened("spray-out")
    expect(field(page, "high").locator("input")).to_have_value("19 °C")
    opened("core")
    page.locator(".sb-hold__day > summary").click()
    page.get_by_role("button", name="Clear what was said about this day").click()
    expect(answer(page)).to_contain_text("Not known yet")
    expect(field(page, "low").locator("input")).to_have_value("")
    page.reload()
    expect(answer(page)).to_contain_text("Not known yet")
    assert days(page) == []


def test_a_labels_limits_stay_with_their_own_task(opened: Callable[[str], Page]) -> None:
    """Another product has another label."""
    page = opened("spray-out")
    say(page, wind="12 km/h", label_wind="10 km/h")
    expect(answer(page)).to_contain_text("Hold. The label's limits.")
    opened("pre-emergent")
    expect(field(page, "wind").locator("input")).to_have_value("12 km/h")
    expect(field(page, "label_wind").locator("input[type=text]")).to_have_value("")
    say(page, label_wind="none")
    expect(field(page, "label_wind").locator("input[type=text]")).to_be_disabled()
    expect(field(page, "label_wind").locator(".sb-hold__could")).to_have_text("")


def test_yesterdays_forecast_is_not_todays(opened: Callable[[str], Page], page: Page) -> None:
    page.clock.set_fixed_time("2026-11-28T22:00:00")
    opened("core")
    say(page, soil="wet")
    expect(answer(page)).to_contain_text("Hold")
    expect(page.locator(".sb-hold__day > summary")).to_contain_text("told at 22:00")
    page.clock.set_fixed_time("2026-11-29T05:00:00")
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")  # the phone wakes on the next morning
    expect(answer(page)).to_contain_text("Not known yet")
    page.clock.set_fixed_time("2026-12-02T05:00:00")
    say(page, leaf="dry")
    assert days(page) == ["2026-12-02"]


def test_a_number_is_read_in_the_readers_units_and_keeps_them(opened: Callable[[str], Page]) -> None:
    page = opened("core")
    page.evaluate("Swardbook.preferences.set('units', 'us')")
    say(page, **{**MILD, "low": "30", "high": "70"}, grass="couch")  # 30 °F is 1.1 °C below freezing.
    expect(answer(page)).to_contain_text("Hold. Frost tonight.")
    expect(page.locator(".sb-hold__if")).to_have_count(1 + page.locator(".sb-hold__list .sb-hold__if").count())
    expect(page.locator(".sb-hold__reasons .sb-quantity__us")).to_be_visible()
    page.evaluate("Swardbook.preferences.set('units', 'metric')")
    expect(field(page, "low").locator("input")).to_have_value("30 °F")
    expect(answer(page)).to_contain_text("Hold. Frost tonight.")


def test_a_page_can_mount_it_with_what_it_knows(opened: Callable[[str], Page]) -> None:
    page = opened("empty")
    page.evaluate("""() => {
      window.told = [];
      window.box = Swardbook.holdOrGo.mount(document.getElementById('slot'), {
        task: 'water', date: '2026-11-30', known: {depth_due: 12, cool_season: true}, open: false, onAnswer: (now) => window.told.push(now)
      });
    }""")
    assert page.locator("[id$='-depth_due-how']").count() == 0
    expect(page.locator(".sb-hold__told")).to_have_text("From the job: water due today 12 mm.")
    page.locator(".sb-hold__day > summary").click()
    say(page, rain_to_come="15 mm", soil="moist")
    expect(answer(page)).to_contain_text("Hold. Rain does the watering.")
    assert page.evaluate("box.answer()") == page.evaluate("told[told.length - 1]")
    assert page.evaluate("[told[0].answer, box.answer().answer, box.answer().words, box.answer().names]") == ["ask", "hold", "Hold", ["Rain does the watering"]]
    # Twenty millimetres are due instead: fifteen do not make up for them.
    page.evaluate("box.update({known: {depth_due: '20 mm'}})")
    assert page.evaluate("box.answer().answer") == "ask"
    assert days(page) == ["2026-11-30"]
    page.evaluate("box.remove()")
    assert page.locator("#slot > *").count() == 0
    assert page.evaluate("Swardbook.holdOrGo.mount(document.getElementById('slot'), {task: 'soil-test'})") is None
    expect(page.locator("#slot")).to_be_hidden()


def test_steps_of_one_date_share_what_was_said(opened: Callable[[str], Page]) -> None:
    page = opened("empty")
    page.evaluate("""() => ['core', 'topdress'].forEach((task) => {
      const slot = document.getElementById('slot').appendChild(document.createElement('div'));
      slot.id = task;
      Swardbook.holdOrGo.mount(slot, {task, date: '2026-11-30', known: {cool_season: false, surface_running: true}});
    })""")
    page.locator("#core input[value=wet]").last.check()
    expect(page.locator("#topdress .sb-hold__word")).to_have_text("Hold")
    # Only the one that was touched is read out.
    assert page.locator(".sb-hold__said").evaluate_all("all => all.map(each => each.getAttribute('aria-live'))") == ["polite", "off"]
    ids = page.locator("[id]").evaluate_all("all => all.map(each => each.id)")
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("scheme", ["default", "slate"])
def test_the_form_is_fit_for_everybody_and_for_a_small_phone(opened: Callable[[str], Page], page: Page, scheme: str) -> None:
    page.set_viewport_size({"width": 360, "height": 740})
    opened("spray-out").evaluate("scheme => document.body.setAttribute('data-md-color-scheme', scheme)", scheme)
    say(page, wind="lots", low="-3", label_low="2")
    page.add_script_tag(path=AXE)
    rules = {rule: {"enabled": False} for rule in ("bypass", "region", "landmark-one-main", "page-has-heading-one")}
    found = page.evaluate("rules => axe.run(document, {rules, preload: false, resultTypes: ['violations']})", rules)["violations"]
    assert [(each["id"], each["nodes"][0]["html"][:120]) for each in found] == []
    page.locator(".sb-hold__rules > summary").click()
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    small = page.evaluate("""() => [...document.querySelectorAll('button, select, summary, .sb-hold__choice, input')]
      .filter(each => each.offsetParent && each.getBoundingClientRect().height < 44).map(each => each.outerHTML.slice(0, 90))""")
    assert small == []


def test_without_scripts_every_rule_is_there_to_read(browser: Any, folder: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((folder / "core.html").as_uri())
    rules = [rule for hold in holds_of("core", BOOK.holds).values() for rule in hold.rules]
    assert page.locator(".sb-hold__list .sb-hold__rule:visible").count() == len(rules) > 5
    text = page.locator(".sb-hold__list").inner_text()
    assert all(said_reason(rule) in text and rule.change in text for rule in rules)
    # Nobody has said when, so nothing claims a day.
    assert "With frost seen a few nights ago" in text
    assert "Lowest temperature at most 0 °C (32 °F)" in text
    assert page.locator("button:visible, input:visible").count() == 0
    context.close()


def test_only_tasks_that_something_holds_load_the_scripts() -> None:
    for task in BOOK.tasks:
        view = task_page(BOOK, task, PageContext(BOOK, f"tasks/{task}", date(2026, 1, 1))).context
        held = bool(holds_of(task, BOOK.holds))
        assert bool(view["hold"]) is held and ("../assets/hold-or-go.js" in view["scripts"]) is held, task
    assert not holds_of("soil-test", BOOK.holds)
