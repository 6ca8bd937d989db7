"""The money of a job, from the quote to the last payment: frozen when it is quoted, told when it differs, printed a sheet a page, and
right to the cent. Sums here are decimal arithmetic, a half away from zero, as a bookkeeper does them; nothing of ours works them out."""

import io
import json
import random
import re
from collections.abc import Callable
from decimal import ROUND_HALF_UP, Decimal
from math import ceil, fsum
from pathlib import Path

import yaml
from playwright.sync_api import Page, expect
from pypdf import PdfReader

from generator.book.lists.lawn_file import KeptJob
from tests.asking import ask
from tests.site.reader import Reader
from tests.site.tabs import NEVER_SHOWN, kept, key_of, plant
from tests.site.test_jobs import JOB, part
from tests.site.test_kept_work import KEPT_JOB

PRICE = "#v=1&part=price&plan=warm-below-ground&grass=couch&place=canberra&site=open&area=240&on=2026-12-16"
PRACTICE = Path(__file__).parents[2] / "data" / "practice.yml"
GST = Decimal("0.1")  # Of the demo practice.
DEPOSIT = Decimal("0.2")


def cents(amount: Decimal) -> Decimal:
    return amount.quantize(Decimal("0.01"), ROUND_HALF_UP)


def minutes_by_hand(spoil_m3: float) -> float:
    """Time for the plan of a couch lawn of 240 m2, two people, added up here step by step from data/practice.yml. Two machines need one person
    each, and have their passes over the lawn: minutes = 60 x area x passes / (width less overlap x speed in m/h x efficiency)."""
    practice = yaml.safe_load(PRACTICE.read_text(encoding="utf-8"))

    def by_machine(task: str, passes: int = 1) -> float:
        operation = practice["operations"][task]
        machine = practice["machines"].get(operation.get("machine"), {})
        if "working_width_m" not in machine:  # Looked at, turned on or edged: its setting up is all that the file knows.
            return float(operation["setup_minutes"])
        pace = machine["working_width_m"] * (1 - machine["overlap_percent"] / 100) * machine["speed_km_per_h"] * 1000 * machine["efficiency_percent"] / 100
        return float(operation["setup_minutes"] + 60 * 240 * passes / pace)  # Spreading sand is the pace of two, and two are there.

    def by_hand(name: str) -> float:
        work = practice["hand_work"][name]
        alone = work.get("minutes", 0) + 240 / 100 * work.get("minutes_per_100_m2", 0) + spoil_m3 * work.get("minutes_per_spoil_m3", 0)
        loads = ceil(spoil_m3 / practice["trailer_volume_m3"])
        return float(alone / (1 if work.get("hands") == "one" else 2) + loads * work.get("minutes_per_load", 0))

    before = by_machine("soil-test"), by_machine("water"), by_machine("mow"), by_machine("edge"), by_machine("feed"), by_hand("mark")
    cut = by_machine("cut-down"), 2 * by_machine("scarify"), by_hand("clear-up"), by_machine("mow"), by_machine("core", passes=3), by_hand("cores")
    fed = by_machine("feed"), by_machine("topdress"), by_machine("level"), by_machine("water")
    left = by_hand("spoil"), by_hand("clean-gear"), by_hand("hand-over")
    after = 3 * by_machine("check-recovery"), by_machine("mow"), by_machine("feed")
    return fsum(before + cut + fed + left + after)


def opened(reader: Callable[..., Reader]) -> Page:
    made = reader(viewport={"width": 360, "height": 640})
    made.page.clock.set_fixed_time("2026-12-01T09:00:00")
    page = made.open(JOB + PRICE)
    page.evaluate("window.print = () => {}")
    expect(part(page, "money-owed")).to_be_visible()
    return page


def act(page: Page, name: str) -> None:
    page.locator(f"[data-act=money-{name}]").click()


def owed(page: Page, words: str) -> None:
    expect(part(page, "money-owed")).to_have_text(words)


def again(page: Page) -> None:
    page.reload()
    page.evaluate("window.print = () => {}")
    expect(part(page, "money-owed")).to_be_visible()


def printed(page: Page, paper: str) -> str:
    """The only page of the sheet that is open."""
    act(page, "print")
    pages = PdfReader(io.BytesIO(page.pdf(format=paper))).pages  # its end puts the page back
    assert len(pages) == 1, f"{len(pages)} pages of {paper}"
    return " ".join(pages[0].extract_text().split())


def change_area(page: Page, area: str) -> None:
    page.locator(".sb-parts [data-to=when]").click()
    page.locator("[data-choice=area]").fill(area)
    page.locator("[data-choice=area]").blur()
    page.locator(".sb-parts [data-to=price]").click()


def test_a_job_is_quoted_accepted_varied_invoiced_and_paid(reader: Callable[..., Reader]) -> None:
    page = opened(reader)
    before_tax, total = (Decimal(part(page, name).inner_text()) for name in ("before-tax", "total"))
    assert total == before_tax + cents(before_tax * GST)  # 2877.26 and a tenth of it, 287.73: 3164.99
    owed(page, "Nothing is quoted yet.")
    expect(part(page, "money-accepted-ask")).to_be_hidden()
    act(page, "quote")
    owed(page, f"Owed: {total} AUD, once the quote is accepted.")
    expect(part(page, "money-quote-said")).to_have_text(f"Tue 1 Dec 2026: {total} AUD, open until Thu 31 Dec 2026.")  # 30 days of the practice
    letter = part(page, "money-text").input_value()
    assert f"{total} in AUD." in letter and "Core, 3 times: " in letter and "240 m²" in letter and "{" not in letter and "[" not in letter
    assert "11 h" not in letter and "1 pack" not in letter, "what we count on ourselves is none of the client's"
    href = part(page, "money-mail").get_attribute("href") or ""
    assert href.startswith("mailto:?subject=Estimate&body=") and f"{total}%20in%20AUD" in href
    assert "GST 10 %" in printed(page, "Letter")

    # The job grows afterwards: told, and what was quoted stays until it is quoted anew.
    change_area(page, "300 m2")
    now = Decimal(part(page, "total").inner_text())
    expect(part(page, "money-quote-said")).to_contain_text(f"it now comes to {now}, {now - total} more than quoted.")
    owed(page, f"Owed: {total} AUD, once the quote is accepted.")
    act(page, "quote")
    owed(page, f"Owed: {now} AUD, once the quote is accepted.")
    act(page, "quote-undo")
    owed(page, f"Owed: {total} AUD, once the quote is accepted.")
    change_area(page, "240 m2")
    expect(part(page, "money-quote-said")).not_to_contain_text("changed")

    act(page, "accepted")
    expect(page.locator("[data-act=money-quote-undo]")).to_be_hidden()
    deposit = cents(total * DEPOSIT)  # a fifth of 3164.99 is 632.998, so 633.00
    expect(part(page, "money-deposit-amount")).to_have_value(str(deposit))
    act(page, "deposit")
    owed(page, f"Owed: {total - deposit} AUD.")

    # Used against quoted, and a variation that is owed only once it is agreed.
    part(page, "money-used-box").locator("summary").click()
    hours = page.locator("[data-used='']")
    hours.fill("a morning")
    hours.blur()
    expect(part(page, "money-told")).to_contain_text("such as 6.5 h")
    hours.fill("20 h")
    hours.blur()
    row = part(page, "money-used").locator("tr").first
    hours_over, minutes_over = re.search(r"(\d+) h (\d+) min", row.locator("td").last.inner_text()).groups()  # type: ignore[union-attr]
    over = 60 * int(hours_over) + int(minutes_over)
    spoil = float(re.search(r"[\d.]+", part(page, "spoil").text_content() or "")[0])  # type: ignore[index]
    assert abs(20 * 60 - minutes_by_hand(spoil) - over) <= 1, "the page tells its spoil to a tenth of a cubic metre: a minute for two people"
    row.get_by_role("button", name="Offer as a variation").click()
    expect(part(page, "money-variation-amount")).to_have_value(str(cents(Decimal(over) / 60 * 78)))  # The practice's hour is 78.
    assert part(page, "money-unforeseen").locator("option").count() > 3
    part(page, "money-variation-what").fill("Buried rubble or roots")
    part(page, "money-variation-why").fill("Two hours with the bar")
    part(page, "money-variation-amount").fill("156.05")
    act(page, "variation")
    owed(page, f"Owed: {total - deposit} AUD.")
    page.get_by_role("button", name="Show it: variation 1").click()
    sheet = printed(page, "A4")
    assert "Variation 1" in sheet and "171.66" in sheet and "signature" in sheet  # 156.05 and a tenth, 15.605, so 15.61
    page.get_by_role("button", name="The client agreed").click()
    whole = total + Decimal("171.66")
    owed(page, f"Owed: {whole - deposit} AUD.")

    act(page, "done")
    act(page, "invoice")
    again(page)
    owed(page, f"Owed: {whole - deposit} AUD, by Tue 15 Dec 2026.")  # 14 days of the practice
    expect(page.locator("[data-act=money-variation]")).to_be_hidden()
    act(page, "invoice-show")
    for paper in ("A4", "Letter"):
        text = printed(page, paper)
        wanted = ("Invoice TL-1", "ABN 00 101 202 303", "1 Tussock Lane", "Name and address", "GST 10 %", f"Total {whole}", f"−{deposit}", f"{whole - deposit}", "bank transfer", "invented")
        assert not [each for each in wanted if each not in text], text
    amounts = part(page, "money-paper").locator("table").first.locator("tbody tr").all_inner_texts()
    found = [[Decimal(each) for each in re.findall(r"-?\d+\.\d\d", row.replace(" ", ""))][-2:] for row in amounts]
    assert sum(row[0] for row in found) == before_tax + Decimal("156.05")
    assert sum(row[1] for row in found) == whole - before_tax - Decimal("156.05")

    part(page, "money-paid-amount").fill("1,000")
    act(page, "paid")
    again(page)
    owed(page, f"Owed: {whole - deposit - 1000} AUD, by Tue 15 Dec 2026.")
    act(page, "paid")
    owed(page, "Nothing is owed.")
    part(page, "money-paid-amount").fill("0.01")
    act(page, "paid")
    expect(part(page, "money-owed")).to_contain_text("Overpaid: 0.01 AUD.")
    part(page, "money-payments").get_by_role("button", name="Take it off").last.click()
    page.clock.set_fixed_time("2026-12-16T09:00:00")
    part(page, "money-payments").get_by_role("button", name="Take it off").last.click()
    expect(part(page, "money-owed")).to_contain_text("Overdue since Tue 15 Dec 2026")
    for undone in ("invoice", "done", "deposit", "accepted"):
        act(page, f"{undone}-undo")
        expect(part(page, f"money-{undone}-ask")).to_be_visible()
    owed(page, f"Owed: {whole - 1000} AUD, once the quote is accepted.")

    # Nothing of it is in what a client gets, and the row is one that the command line reads.
    assert not re.search("quote|money|paid", f"{part(page, 'maker').get_attribute('href')} {part(page, 'handover').get_attribute('href')} {page.url}")
    row = page.evaluate("Swardbook.kept('jobs').all()[0].row")
    assert row["money"]["quotes"] and KeptJob.model_validate({name: each for name, each in row.items() if name != "visit"}).money is not None


def test_numbers_of_invoices_go_on_from_job_to_job_and_none_is_given_twice(reader: Callable[..., Reader]) -> None:
    page = opened(reader)
    for number in (1, 2):
        act(page, "quote")
        act(page, "accepted")
        expect(part(page, "money-invoice-number")).to_have_value(f"TL-{number}")
        if number == 2:
            part(page, "money-invoice-number").fill("TL-1")
            act(page, "invoice")
            expect(part(page, "money-told")).to_have_text("TL-1 is the number of another job’s invoice.")
            part(page, "money-invoice-number").fill("TL-40")
        act(page, "invoice")
        page.locator(".sb-parts [data-to=client]").click()
        page.locator("[data-act=new]").click()
        page.locator(".sb-parts [data-to=price]").click()
        owed(page, "Nothing is quoted yet.")
    act(page, "quote")
    act(page, "accepted")
    expect(part(page, "money-invoice-number")).to_have_value("TL-41")


def taxes_of_the_lines_come_to_the_tax_of_the_whole(page: Page) -> None:
    draw = random.Random(20261201)
    cases = [
        {
            "lines": [{"name": "x", "amount": draw.choice((1, 5, 50, 105, 995, draw.randrange(10**7)))} for _ in range(draw.randrange(1, 25))],
            "rate": draw.choice((0, 0.05, 0.1, 0.125, 0.15, 0.2, 0.0825)), "inside": draw.random() < 0.5,
        }
        for _ in range(400)
    ]  # fmt: skip
    found = ask(page, "cases => cases.map(each => Swardbook.moneySums.withTax(each.lines, each).map(line => line.tax))", cases)
    for case, taxes in zip(cases, found, strict=True):
        rate, total = Decimal(str(case["rate"])), Decimal(sum(line["amount"] for line in case["lines"]))
        exact = total * rate / (1 + rate) if case["inside"] else total * rate
        assert sum(taxes) == exact.quantize(Decimal(1), ROUND_HALF_UP), case
        for line, tax in zip(case["lines"], taxes, strict=True):
            alone = Decimal(line["amount"]) * (rate / (1 + rate) if case["inside"] else rate)
            assert abs(tax - alone) <= 1, "no line is a cent and more from its own tax"
    # By hand: a tenth of 1.05 is 0.105, so 0.11, and of less to pay as much less; what is typed is read sign by sign.
    assert ask(page, "() => [105, -105, 0].map(each => Swardbook.moneySums.taxOf(each, {rate: 0.1, inside: false}))") == [11, -11, 0]
    typed = {"246.90": 24690, "1,234.5": 123450, "8,05": 805, "-12": -1200, "0.29": 29, "1 000": 100000, "1e3": None, "": None, "12.345": None, "--1": None, "9" * 12: None}
    assert ask(page, "texts => texts.map(Swardbook.moneySums.typed)", list(typed)) == list(typed.values())


QUOTE = {"number": 1, "on": "2026-12-01", "currency": "AUD", "rate": 0.1, "inside": False, "lines": {}, "before_tax": 100, "tax": 10, "total": 110, "deposit": 0}
HOSTILE = [
    [], 7, "paid", {"quotes": 5}, {"quotes": {"a": {**QUOTE, "total": "1"}}}, {"quotes": {"a": {**QUOTE, "rate": 1e9}}}, {"quotes": {"a": {**QUOTE, "currency": "<b>"}}},
    {"quotes": {"a": {**QUOTE, "total": 1e300}}}, {"quotes": {"a": {**QUOTE, "total": 0.5}}}, {"quotes": {"__proto__": QUOTE, "A B": QUOTE}}, {"quotes": {"a": {**QUOTE, "lines": {"1": {"name": 5}}}}},
    {"invoice": {"number": "<img src=x onerror=alert(1)>", "on": "2026-12-01"}}, {"quotes": {"a": QUOTE}, "invoice": {"on": "2026-12-01"}},
    {"quotes": {"a": QUOTE}, "payments": {"p": {"number": 1, "on": "2026-02-31", "amount": 5}, "q": {"number": 2, "on": "2026-12-01", "amount": None}}},
    {"quotes": {"a": QUOTE}, "variations": {"v": {"number": 1, "on": "2026-12-01", "what": "<b>x</b>", "amount": 5, "tax": 1, "agreed": "soon"}}},
    {"quotes": {"a": QUOTE}, "used": {"minutes": -5, "packs": {"x": "y"}}}, {"quotes": {"a": {**QUOTE, "packs": {"gone-here": {"name": "Gone", "count": 2}}}}},
]  # fmt: skip


def test_taxes_come_to_the_cent_and_hostile_money_does_no_harm(reader: Callable[..., Reader]) -> None:
    page = opened(reader)
    taxes_of_the_lines_come_to_the_tax_of_the_whole(page)
    rows = {f"r{at}": {**KEPT_JOB, "name": f"M{at}", "money": money} for at, money in enumerate(HOSTILE)}
    plant(page, {key_of("jobs") + f".{id}": json.dumps({"v": 1, "at": 1, "stamp": "a", "seen": [], "row": row}) for id, row in rows.items()})
    again(page)
    assert {f"M{at}" for at in range(len(HOSTILE))} <= {each["name"] for each in kept(page, "jobs")}
    said = ask(page, """ids => ids.map(id => {
      const list = document.querySelector('[data-part=kept]');
      list.value = id;
      list.dispatchEvent(new Event('change', {bubbles: true}));
      return new Promise(done => setTimeout(() => done([...document.querySelectorAll('.sb-money')].map(each => each.textContent).join(' ')), 0));
    }).reduce((all, each) => all.then(list => each.then(text => [...list, text])), Promise.resolve([]))""", list(rows))
    assert len(said) == len(HOSTILE) and not [word for word in NEVER_SHOWN for text in said if word in text]
    expect(part(page, "money-owed")).to_have_text("Owed: 1.10 AUD, once the quote is accepted.")  # the last one, sound but for a product of another book
    assert page.locator(".sb-money img, .sb-money b").count() == 0
