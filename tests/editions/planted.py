"""A book with a value of its own in each private place, and how to find any of them in a site, however it is written there."""

import gzip
import re
import shutil
import zipfile
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

from tests.book_folders import WHOLE, edit

# What stands in the book -> where it was put. No two are alike, and none is a number that anything else would come to.
NUMBERS = {
    "91739.31": "the price of a product", "61739.37": "the price of hire", "4391.73": "the running price of a machine", "5917.39": "the price of work",
    "3917.93": "the minimum price of work", "8191.73": "the price of an hour", "7393.19": "the minimum charge", "6173.93": "the price of spoil",
    "17.3931": "the tax", "23.7193": "the deposit", "73.9187": "the time of setting up", "137.9173": "the time of work by hand",
    "0.7391": "the width of a machine",
}  # fmt: skip
WORDS = {
    "Markedtax": "the name of the tax", "ZZQ-7193": "the prefix of invoices", "REG 7391 931": "the registration", "Marked-account": "how to pay",
    "Marked Lane": "the address on invoices", "Marked broom": "a machine", "Marked pricing page": "a page of content/ whose head says so",
    "Marked private folder": "a page in the private folder", "marked,row,zzq": "a file in the private folder", "Marked record": "the work record",
    "Marked column": "a row of the work record", "Marked estimate": "the terms of the inspection sheet", "Marked inspection": "a question of the inspection sheet",
    "Marked hold": "a reason to hold off", "Marked method": "the method of a calculator", "Marked choice": "when to choose a plan", "Marked bag": "the note of a product",
    "Marked bottom line": "an answer that quotes a price",
}  # fmt: skip
# What must stand in both sites, so that neither is empty.
PUBLIC = ("Whole Lawns", "02 5550 0134", "Take a broom", "After sweeping", "Plain renovation")

_PRACTICE = """
telephone: 02 5550 0134
email: hello@example.org
public_address: https://lawns.example/book/
hand_work:
  water-it: {minutes: 137.9173}
invoice:
  prefix: ZZQ-7193
  registration: REG 7391 931
  address: [1 Marked Lane]
  how_to_pay: Marked-account, please.
"""
_RECORD = """
title: Marked record
summary: Who swept what.
law: Ask.
nitrogen_by: nutrient
lists:
  almanac: {country: AU, authority: Nowhere, whom: Whoever sweeps., source: almanac}
columns:
  work: {label: Marked column, kind: choice, choices: {feed: Feed, spray: Spray}, asked_by: [almanac]}
  date: {label: Day, kind: date}
  lawn: {label: Lawn, kind: text}
  grass: {label: Grass, kind: grass}
  area: {label: Area, kind: number, unit: m2}
  amount: {label: Amount, kind: number, unit: kg}
  nitrogen_percent: {label: Nitrogen, kind: number, unit: "%"}
"""
_NUTRIENT = """
name: Nitrogen of a feed
summary: How much nitrogen an invented feed gives.
inputs:
  area: {question: Area, unit: m2, default: 100, above: 0}
  product: {question: Feed, unit: kg, default: 1, above: 0}
  nitrogen_percent: {question: Nitrogen, unit: "%", default: 20, above: 0}
results:
  nitrogen_rate: {label: Nitrogen, unit: g/m2, formula: product * nitrogen_percent / area, main: true}
method: Product over area.
examples:
  - {title: One bag, source: assumption, basis: arithmetic, inputs: {area: 100 m2, product: 1 kg, nitrogen_percent: 20 %},
     results: {nitrogen_rate: {value: 2, unit: g/m2, within: 0.000001}}}
topic: feed and soil
"""


def planted_book(folder: Path) -> Path:
    """The book in `folder`: one of everything, with the marks above in it."""
    book = folder / "book"
    shutil.copytree(WHOLE, book)
    data, content = book / "data", book / "content"
    edit(data / "practice.yml", {
        "price: 40\n": "price: 91739.31\n    note: Marked bag of the invented kind.\n", "name: Broom": "name: Marked broom", "working_width_m: 0.5": "working_width_m: 0.7391",
        "hire_price_per_day: 12": "hire_price_per_day: 61739.37", "running_price_per_hour: 0": "running_price_per_hour: 4391.73",
        "price_per_100_m2: 20": "price_per_100_m2: 5917.39", "minimum_price: 30": "minimum_price: 3917.93", "setup_minutes: 10": "setup_minutes: 73.9187",
        "hourly_price: 50": "hourly_price: 8191.73", "minimum_charge: 60": "minimum_charge: 7393.19", "spoil_price_per_m3: 70": "spoil_price_per_m3: 6173.93",
        "tax_name: GST": "tax_name: Markedtax", "tax_percent: 10": "tax_percent: 17.3931", "deposit_percent: 25": "deposit_percent: 23.7193",
    })  # fmt: skip
    added(data / "practice.yml", _PRACTICE)
    edit(data / "answers" / "how-often-sweep.yml", {
        "  - text: Take a broom.": "  - {text: \"Marked bottom line: {practice.minimum_charge} a trip.\", source: ours}\n  - text: Take a broom.",
        "see: {tasks: [sweep]": "see: {calculators: [sweeping], plans: [plain-renovation], tasks: [sweep]",
    })  # fmt: skip
    edit(data / "aftercare" / "after-sweeping.yml", {"    why: It has been swept.": "    quantities: [{calculator: nutrient}]\n    why: It has been swept."})
    edit(data / "renovations" / "plain-renovation.yml", {
        "window: renovation": "window: renovation\nchoose_when: [{text: Marked choice of plan., source: assumption}]",
        "      - calculator: sweeping\n": "      - calculator: sweeping\n        machine: broom\n",
    })  # fmt: skip
    edit(data / "calculators" / "sweeping.yml", {"method: Area": "method: Marked method. Area"})
    edit(data / "holds" / "dust-in-the-air.yml", {"reason: The dust": "reason: Marked hold. The dust"})
    edit(data / "inspection.yml", {"ask: Is the gate": "ask: Marked inspection. Is the gate", '"{practice}: {total}': '"Marked estimate. {practice}: {total}'})
    (data / "record.yml").write_text(_RECORD, encoding="utf-8")
    (data / "calculators" / "nutrient.yml").write_text(_NUTRIENT, encoding="utf-8")
    (content / "private").mkdir()
    (content / "pricing.md").write_text("---\ntitle: Marked pricing page\nprivate: true\n---\n\nSee [a plan](plans/plain-renovation.md).\n", encoding="utf-8")
    (content / "private" / "notes.md").write_text("# Marked private folder\n\n[List](list.csv)\n", encoding="utf-8")
    (content / "private" / "list.csv").write_text("marked,row,zzq\n", encoding="utf-8")
    added(content / "about.md", "\nWhat it costs stands on [its page](pricing.md#marked). [All calculators](calculators/index.md), [the sheet](aftercare/after-sweeping.md).\n")
    return book


def added(file: Path, text: str) -> None:
    file.write_text(file.read_text(encoding="utf-8") + text, encoding="utf-8")


def found_in(site: Path) -> set[str]:
    """Which of the marks stand in any file of a site, in its name, or in what is packed in it."""
    whole = b"\n".join(every_text(site))
    letters = _letters(whole)
    return {mark for mark in NUMBERS if written_as(mark).search(whole)} | {mark for mark in WORDS if _letters(mark.encode()) in letters}


def every_text(site: Path) -> Iterator[bytes]:
    for file in sorted(site.rglob("*")):
        yield file.relative_to(site).as_posix().encode()
        if file.is_file():
            yield from unpacked(file.read_bytes())


def unpacked(content: bytes) -> Iterator[bytes]:
    yield content
    if content[:2] == b"\x1f\x8b":
        yield from unpacked(gzip.decompress(content))
    elif content[:2] == b"PK":
        with zipfile.ZipFile(BytesIO(content)) as packed:
            for name in packed.namelist():
                yield from unpacked(packed.read(name))


def _letters(text: bytes) -> bytes:
    """Words as they stand in a name, an address or a sentence alike."""
    return text.lower().translate(None, b" \n\t_-")


def written_as(mark: str) -> re.Pattern[bytes]:
    """A number however it may be written: in cents, with a comma, with its thousands apart, as JSON escapes what stands between."""
    whole, part = mark.split(".")
    apart = rb"(?:[ ,.'_\xa0]|\xe2\x80\xaf|\xc2\xa0|\\u[0-9a-f]{4}|&[a-z]+;|&#\d+;)?"
    digits = apart.join(digit.encode() for digit in whole.lstrip("0"))
    return re.compile((rb"(?<!\d)" + digits + rb"[.,]?" if digits else rb"[.,]") + part.encode())
