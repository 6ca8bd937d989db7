"""What a lawn was fed comes to the same on the record's page and on the command line, and what cannot be counted is told alike."""

import random

from generator.field.nitrogen_record import nitrogen_by_lawn
from generator.site.frame.render import own_scripts
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
