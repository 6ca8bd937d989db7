"""What a client asks, answered for the day it is: six lines at the top of the sheet, on any day of any sheet, and on paper."""

import io
import re
from collections.abc import Callable
from datetime import date, timedelta
from typing import Any
from urllib.parse import parse_qs, unquote, urlsplit

import pytest
from playwright.sync_api import expect
from pypdf import PdfReader

from tests.asking import ask
from tests.site.conftest import ROOT
from tests.site.reader import Reader
from tests.site.test_aftercare import ADDRESS, MAKER, SHEET, make_link, on_day
from tests.slices import every
from tests.yaml_files import read_yaml

JOB = date(2026, 10, 12)
SMALLEST = {"viewport": {"width": 360, "height": 640}, "locale": "en-AU"}
SCREEN_AND_A_HALF_PX = 1.5 * 640
QUESTIONS = ["walk", "mower", "water", "height", "colour", "coming"]
SHEETS = {path.stem: read_yaml(path) for path in sorted((ROOT / "data/aftercare").glob("*.yml"))}
# Days from the job -> what the sheet answers on each, read as it stands on the page. The clock stands still, and the job moves.
ANSWERS = """(link, days) => days.map(day => {
  const on = Swardbook.dates.iso(Swardbook.dates.today() - day);
  Swardbook.aftercareSheet.open(Swardbook.clientLink.read(`v=1&on=${on}${link}`));
  const answers = [...document.querySelectorAll("[data-part=today] [data-answer]")];
  return {
    headline: document.querySelector(".sb-aftercare__headline").innerText, asked: answers.map(each => each.dataset.answer),
    said: Object.fromEntries(answers.map(each => [each.dataset.answer, each.querySelector("dd").innerText])),
    bottom: answers.length ? answers[answers.length - 1].getBoundingClientRect().bottom + window.scrollY : 0,
    panel: document.querySelector("[data-part=today]").innerText,
  };
})"""


def answers(window: Reader, path: str, link: str, days: list[int], today: date = JOB) -> dict[int, Any]:
    return dict(zip(days, ask(on_day(window, path, today), ANSWERS, link, days), strict=True))


@pytest.mark.walk
def test_the_six_answers_of_a_warm_renovation_stand_on_the_first_screen_and_a_half(reader: Callable[..., Reader]) -> None:
    found = answers(reader(**SMALLEST), SHEET, "&grass=kikuyu&area=240", [0, 3, 9, 28, 60])
    for day, told in found.items():
        assert told["asked"] == QUESTIONS, day
        assert told["bottom"] <= SCREEN_AND_A_HALF_PX, (day, told["bottom"])
    said = {day: told["said"] for day, told in found.items()}
    assert "day 3" in found[3]["headline"] and "this sheet is finished" in found[60]["headline"]
    assert said[3]["walk"].startswith("Not yet. Children, dogs and chairs stay off.") and said[28]["walk"].startswith("With care.")
    assert [said[day]["mower"].split(".")[0] for day in (0, 9, 28, 60)] == ["Not yet", "With care", "Yes", "Yes"]
    # 4 mm a day in the first week, and 8 mm every second day after it: the steps that the plan waters by.
    assert "holds 4 mm" in said[3]["water"] and "holds 8 mm" in said[9]["water"]
    assert said[9]["colour"].startswith("Yes. Brown") and "Call us" in said[60]["colour"]
    assert "Nothing more is due" in said[60]["coming"] and "02 5550 0134" in found[60]["panel"] and "This is over" in found[60]["panel"]
    # A label decides for dogs and children while the plan feeds; once all is over it has nothing left to say.
    assert "the time on the label" in said[3]["walk"] and "label" not in said[60]["walk"]


def test_what_is_not_yet_allowed_and_what_comes_next_have_their_dates(reader: Callable[..., Reader]) -> None:
    """Counted by hand from Monday 12 October 2026: day 28 is Monday 9 November, day 8 is Tuesday 20 October."""
    said = answers(reader(**SMALLEST), SHEET, "", [0])[0]["said"]
    assert re.search(r"Not before Mon,? 9 Nov", said["walk"]) and re.search(r"Not before Tue,? 20 Oct", said["mower"])
    assert re.match(r"Tue,? 13 Oct: Water a little every morning", said["coming"])
    assert "kept at" not in said["height"]


def test_minutes_stand_in_place_of_the_can_where_the_link_knows_the_sprinklers(reader: Callable[..., Reader]) -> None:
    """4 mm on the driest quarter at 80 % is a mean of 5 mm: 20 minutes at 15 mm an hour; 8 mm is 40."""
    window = reader(**SMALLEST)
    found = answers(window, SHEET, "&area=240&rate=15&even=80&grass=couch", [3, 9])
    assert "Run the sprinklers 20\u00a0min each time." in found[3]["said"]["water"] and "40\u00a0min" in found[9]["said"]["water"]
    assert "can" not in found[3]["said"]["water"]
    height = read_yaml(ROOT / "data/grasses/couch.yml")["mowing_height"]
    assert f"Couch is kept at {height['low']} to {height['high']} mm." in found[3]["said"]["height"]
    window.page.evaluate("document.documentElement.setAttribute('data-units', 'us')")
    told = ask(window.page, ANSWERS, "&area=240&grass=couch", [3])[0]
    # 4 mm is 0.157 in; 240 m2 over 0.09290304 is 2583 square feet.
    assert "0.16 in" in told["said"]["water"] and "mm" not in told["panel"] and "2,583 ft²" in told["panel"] and "m²" not in told["panel"]


def test_a_hole_that_was_only_spiked_has_its_own_minutes(reader: Callable[..., Reader]) -> None:
    """8 mm and 10 mm at 20 mm an hour and 80 %: 30 and 37.5 minutes."""
    water = answers(reader(**SMALLEST), "aftercare/after-coring.html", "&rate=20&even=80", [9])[9]["said"]["water"]
    assert "Every second day: run the sprinklers 30\u00a0min." in water and re.search(r"Only spiked: run the sprinklers 3[78](\.5)?\u00a0min", water)


def test_before_the_job_the_sheet_says_what_to_do_for_it_and_when(reader: Callable[..., Reader]) -> None:
    found = answers(reader(**SMALLEST), SHEET, "", [-5, -1])
    assert "in 5 days" in found[-5]["headline"] and "tomorrow" in found[-1]["headline"]
    assert found[-5]["asked"] == [] and "as usual" in found[-5]["panel"]
    assert "Clear the lawn for tomorrow" in found[-5]["panel"] and "Get the soil moist" in found[-5]["panel"]
    assert "Clear the lawn for tomorrow" in found[-1]["panel"] and "Get the soil moist" not in found[-1]["panel"]


# What a client cannot know: an id, a place in the data, a value that was never filled in, a mark of a source.
INTERNAL = re.compile(r"\b(?:step|renovation|practice|inspection|grass|task)\.[a-z]|[{}]|\bundefined\b|\bnull\b|\bNaN\b|\byaml\b|\bswardbook\b|\[\d+\]", re.IGNORECASE)
KINDS = ("steps", "grasses", "aftercare", "calculators", "renovations", "tasks")
IDS = [path.stem for kind in KINDS for path in sorted((ROOT / "data" / kind).glob("*.yml")) if "-" in path.stem]
SHOWN = """() => [document.querySelector("article").innerText, document.querySelectorAll("article .sb-source-marks a, article [data-part=maker]").length
  && [...document.querySelectorAll("article .sb-source-marks a, article [data-part=maker]")].some(each => each.checkVisibility())]"""


@pytest.mark.parametrize("sheet", every(4, SHEETS))
def test_every_sheet_has_its_answers_and_nothing_internal_on_it(reader: Callable[..., Reader], sheet: str) -> None:
    written, window = SHEETS[sheet], reader(**SMALLEST)
    last = max(days["to_day"] for days in written["days"])
    days = sorted({each[end] for question in QUESTIONS[:-1] for each in written["asked"][question] for end in ("from_day", "to_day")} | {last + 1})
    for day, told in answers(window, f"aftercare/{sheet}.html", "&grass=couch&area=240&done=core.topdress", days).items():
        assert told["asked"] == QUESTIONS and all(told["said"].values()), day
        for question in QUESTIONS[:-1]:
            held = [each["say"] for each in written["asked"][question] if each["from_day"] <= day <= each["to_day"]]
            assert len(held) == (day <= last), (question, day)
            assert not held or held[0] in told["said"][question], (question, day)
    for day in (0, 9, last + 1):
        ask(window.page, ANSWERS, "&grass=couch&area=240&rate=15&done=core.topdress", [day])
        text, marked = window.page.evaluate(SHOWN)
        assert not INTERNAL.search(text), INTERNAL.search(text)
        assert not [id for id in IDS if re.search(rf"(?<![\w-]){id}(?![\w-])", text)] and not marked


def test_without_scripts_the_answers_are_a_table_by_days(reader: Callable[..., Reader]) -> None:
    page = reader(**SMALLEST, java_script_enabled=False).open(SHEET)
    rows = page.locator("[data-asked=walk] tr[data-first]")
    expect(rows.first).to_contain_text("Days 0 to 27")
    expect(rows.first).to_contain_text("Not yet. Children, dogs and chairs stay off.")
    expect(rows.last).to_contain_text("From day 43")
    assert page.locator("[data-asked]:visible").evaluate_all("all => all.map(each => each.dataset.asked)") == ["before", *QUESTIONS]
    assert page.locator("[data-asked=water]").get_by_text("holds 4 mm").is_visible()


def test_the_message_is_ready_for_the_devices_own_messages_and_mail(reader: Callable[..., Reader]) -> None:
    """RFC 5724 and RFC 6068: what stands in the address is percent-encoded, and the lines of a mail end with CR LF."""
    page = on_day(reader(**SMALLEST, has_touch=True, is_mobile=True), MAKER, JOB)
    expect(page.locator("[data-part=share]")).to_be_hidden()  # this browser has no sheet for sharing
    make_link(page)
    message = page.locator("[data-part=message]").input_value()
    text, mail = (page.locator(f"[data-part={part}]") for part in ("text-message", "mail"))
    expect(text).to_be_visible()
    assert text.get_attribute("href").startswith("sms:?&body=") and unquote(text.get_attribute("href").removeprefix("sms:?&body=")) == message
    sent = urlsplit(mail.get_attribute("href"))
    assert (sent.scheme, sent.path) == ("mailto", "") and parse_qs(sent.query, strict_parsing=True) == {
        "subject": ["After the renovation"], "body": [message.replace("\n", "\r\n")],
    }
    page.locator("input[name=on]").fill("")
    expect(text).to_be_hidden()
    expect(mail).to_be_hidden()


def test_a_device_with_a_sheet_for_sharing_is_handed_the_link_once_it_is_tapped(reader: Callable[..., Reader]) -> None:
    window = reader(**SMALLEST)
    window.context.add_init_script("window.shared = []; navigator.share = what => { window.shared.push(what); return Promise.reject(new Error('closed')); };")
    page = on_day(window, f"{SHEET}#v=1&on={JOB}&grass=couch", JOB + timedelta(3))
    assert page.evaluate("window.shared") == []
    page.locator("[data-component=aftercare-take] [data-part=share]").click()
    assert page.evaluate("window.shared") == [{"title": "After the renovation", "url": f"{ADDRESS}{SHEET}#v=1&on={JOB}&grass=couch"}]
    page = on_day(window, MAKER, JOB)
    link = make_link(page)
    page.locator("[data-part=share]").click()
    assert link in page.evaluate("window.shared")[0]["text"]


def test_paper_has_the_days_with_their_dates_on_one_page(reader: Callable[..., Reader]) -> None:
    page = on_day(reader(**SMALLEST), f"{SHEET}#v=1&on={JOB}", JOB)
    (only,) = (each.extract_text() for each in PdfReader(io.BytesIO(page.pdf(format="A4", prefer_css_page_size=True))).pages)
    assert "Leave the mower in the shed." in only and "When to call" in only
