"""What a lawn was fed comes to the same on the record's page and on the command line, and what cannot be counted is told alike."""

import csv
import json
import random
from itertools import accumulate

from generator.book.lists.kept_record import read_kept
from generator.field.nitrogen_record import nitrogen_by_lawn
from generator.site.frame.render import own_scripts
from generator.site.pages.record.view import record_script
from tests.asking import ask
from tests.components.calculators import BOOK

CALCULATOR = BOOK.record.nitrogen_by
YEARS = """(id, entries) => Swardbook.recordYears.years(Swardbook.calculators[id], entries).map(
  year => [year.lawn, Number(year.year), year.si, year.feeds, year.left.map(each => each.why), year.grass || null])"""


def test_random_records_add_up_alike(all_scripts):
    draw = random.Random(12)

    def entry() -> dict[str, str]:
        made = {
            "work": draw.choice(("feed", "feed", "feed", "spray")), "lawn": draw.choice(("TL-1", "TL-2", "a")), "grass": draw.choice(("", "couch", "kikuyu")),
            "date": f"{draw.choice((2025, 2026))}-0{draw.randint(1, 9)}-1{draw.randint(0, 9)}",
            "area": draw.choice(("240 m2", "2,500 ft2", "0 m2", "12 kg", "")), "amount": draw.choice(("5 kg", "11 lb", "-1 kg", "5 kgg", "", "3 L")),
            "nitrogen_percent": draw.choice(("25 %", "4.5", "120 %", "")),
        }
        return {name: text for name, text in made.items() if text}

    records = [[entry() for _ in range(draw.randint(0, 12))] for _ in range(250)]
    all_scripts.add_script_tag(content=own_scripts()["assets/work-record.js"])
    counted, told = 0, set()
    for entries in records:
        ours = [
            [year.lawn, year.year, year.nitrogen_kg_per_m2, year.feeds, [why for _, why in year.left_out], year.grass]
            for year in nitrogen_by_lawn(BOOK.calculators[CALCULATOR], entries)
        ]
        assert ask(all_scripts, YEARS, CALCULATOR, entries) == ours, entries
        counted += sum(year[3] for year in ours)
        told |= {why for year in ours for why in year[4]}
    assert counted > 50 and len(told) > 6


VALUES = {
    "date": ("2026-10-12", "2026-02-29", "2028-02-29", "12/10/2026", "2026-1-2", "0001-01-01", ""), "time": ("14:30", "7:05", "24:00", "7:60", "", "7.30"),
    "text": ("TL-014", "a b", "x" * 24, "x" * 25, "-a", "O'Neil, 3", "", "é"), "grass": ("couch", "kikuyo", "", "Couch"),
    "number": ("240 m2", "12", "-3", "-3 °C", "5 kg", "3 L", "21 %", "20 km/h", "68 °F", "1/0", "fast", ""), "choice": ("feed", "spray", "n", "calm", "fed", ""),
}
FAULTY = """([columns, grasses, rows]) => rows.map(row => columns.filter(
  column => Swardbook.workKept.fault(column, row[column.id] || '', grasses)).map(column => column.id))"""


def test_page_and_command_line_refuse_the_same_values(all_scripts, tmp_path):
    draw, columns = random.Random(13), BOOK.record.columns
    rows = [{id: draw.choice(VALUES[column.kind]) for id, column in columns.items()} for _ in range(400)]
    file = tmp_path / "kept.csv"
    with file.open("w", encoding="utf-8", newline="") as opened:
        written = csv.DictWriter(opened, list(columns))
        written.writeheader()
        written.writerows(rows)
    grasses = dict.fromkeys(BOOK.grasses, True)
    findings = read_kept(file, BOOK.record, grasses)[1]
    starts = [list(accumulate((len(f'"{value}"' if "," in value else value) + 1 for value in row.values()), initial=1)) for row in rows]
    ours = [[] for _ in rows]
    for each in findings:
        number = each.where.line - 2
        ours[number].append(list(columns)[starts[number].index(each.where.column)])
    spec = json.loads(record_script(BOOK, BOOK.record).partition("workRecord = ")[2].rstrip(";\n"))["columns"]
    all_scripts.add_script_tag(content=own_scripts()["assets/work-record.js"])
    assert ask(all_scripts, FAULTY, [spec, grasses, rows]) == ours
    assert {id for faults in ours for id in faults} > {"date", "start", "lawn", "grass", "amount", "temperature", "wind_direction"}
