"""`swardbook plan` as someone at a terminal sees it. Facts of the trade are common practice, as the trade states them."""

import csv
import json
import re
from collections import Counter
from datetime import date
from math import ceil
from pathlib import Path

import icalendar
import pytest
from click.testing import CliRunner

from generator.cli import main
from tests.our_book import book as our_book

ROOT = str(Path(__file__).parents[2])
JOB = ("warm-below-ground", "--grass", "couch", "--place", "sydney", "--area", "240 m2", "--on", "2026-10-12")


def run(*words):
    return CliRunner().invoke(main, ["plan", "--book", ROOT, *words])


def job(*words):
    result = run(*words, "--json")
    assert result.exit_code == 0, result.output
    return json.loads(result.stdout)


@pytest.fixture(scope="module")
def october():
    return job(*JOB)


def test_the_day_is_inside_the_window_and_says_why(october):
    assert october["window"]["inside"] and october["window"]["from"] < "10-12"
    assert "growth" in october["window"]["why"]


def test_sand_for_the_grass_s_depth(october):
    """Area times depth: couch takes 6 mm here, and 240 m2 at 6 mm are 1.44 m3."""
    sand = next(each for step in october["steps"] for each in step["quantities"] if each["calculator"] == "topdressing-sand")
    assert sand["inputs"]["depth"] == {"value": 6, "unit": "mm"}
    assert sand["results"]["volume"]["value"] == pytest.approx(1.44) and sand["filled"]["area"] == "this lawn"


def test_a_label_rate_is_never_ours(october):
    spray = next(each for step in october["steps"] for each in step["quantities"] if each["calculator"] == "tank-mix")
    assert spray["needs_label"] and "product" not in spray["results"]


def test_gear_is_booked_so_many_days_before_it_is_needed(october):
    corer = next(each for each in october["gear"] if "corer" in each["name"].lower())
    assert corer["from"] in ("hire", "borrow") and corer["needed"] == "2026-10-12"
    assert date.fromisoformat(corer["book_by"]) < date(2026, 10, 1) and corer["check_by"] == "2026-10-11"


def test_a_machine_that_is_late_moves_what_waits_for_it(october):
    late = {step["id"]: step for step in job(*JOB, "--done", "core=2026-10-14")["steps"]}
    planned = {step["id"]: step for step in october["steps"]}
    assert (late["topdress"]["date"], late["topdress"]["moved_by"]) == ("2026-10-14", "core")
    assert late["cut-down"]["date"] == planned["cut-down"]["date"] == "2026-10-12"


def test_a_step_that_is_not_needed_is_left_out_and_its_place_closes_up(october):
    """Without the spray nothing waits for it; the cut's price goes with the cut."""
    without = job(*JOB, "--without", "spray-out", "--without", "cut-down")
    assert {"spray-out", "cut-down"} <= {each["id"] for each in without["left_out"]}
    assert not {"spray-out", "cut-down"} & {each["id"] for each in without["steps"]}
    assert "spray-out" not in next(each for each in without["steps"] if each["id"] == "check-dead")["after"]
    assert without["cost"]["total"] < october["cost"]["total"]


def test_what_is_done_only_where_needed_is_on_no_list_until_it_is_chosen(october):
    """The sprayer goes along only where grass is sprayed out, and its work costs something only then."""
    chosen = job(*JOB, "--with", "spray-out")
    assert "Sprayer" not in {each["name"] for each in october["gear"]} and "Sprayer" in {each["name"] for each in chosen["gear"]}
    assert [each["counted"] for found in (october, chosen) for each in found["steps"] if each["id"] == "spray-out"] == [False, True]
    assert chosen["cost"]["total"] > october["cost"]["total"]
    assert run(*JOB, "--with", "core").exit_code == 2  # It is done anyway.


def test_what_the_inspection_found_changes_the_plan():
    """Common practice: five hours of sun take the hard work a grade down; too little living cover is no renovation."""
    shady = job(*JOB, "--inspection", "sun-hours=5 h")
    levels = {step["id"]: step["level"] for step in shady["steps"]}
    full = {step["id"]: step["level"] for step in job(*JOB)["steps"]}
    order = ("none", "light", "moderate", "hard")
    softer = [id for id, level in levels.items() if level and full.get(id) and order.index(level) < order.index(full[id])]
    assert softer or set(full) - set(levels), "nothing became gentler"
    assert shady["inspection"]["softer"] and "thatch-depth" in shady["inspection"]["unanswered"]
    dead = run(*JOB, "--inspection", "living-cover=30 %")
    assert dead.exit_code == 0 and dead.output.startswith("Stop:")


def test_an_option_and_a_step_under_their_old_names_still_answer():
    old = run(*JOB, "--visit", "sun-hours=5 h", "--without", "next-visit", "--json")
    new = run(*JOB, "--inspection", "sun-hours=5 h", "--without", "next-date", "--json")
    assert old.exit_code == new.exit_code == 0 and old.stdout == new.stdout
    assert "'next-visit' is 'next-date' now" in old.stderr and not new.stderr
    assert "--visit" not in run("--help").stdout


def test_a_calendar_handed_out_before_a_step_was_renamed_goes_on(tmp_path):
    """Its event keeps the id that the calendar has: the step was next-visit when it was first handed out."""
    file = tmp_path / "job.ics"
    assert run(*JOB, "--inspection", "access-width=600 mm", "--ics", str(file)).exit_code == 0
    text = file.read_text(encoding="utf-8").replace("\n ", "")
    ids = re.findall(r"^UID:(.*)@", text, re.M)
    assert sum(id.endswith("-20261012-next-visit") for id in ids) == 1
    assert [id for id in ids if "-20261012-visit-access-width-" in id], "a step that an inspection adds keeps its id too"
    assert not [id for id in ids if "next-date" in id or "found-" in id]


def test_spoil_is_told_in_the_bags_and_loads_of_the_practice(october):
    """Bags of 60 L and a trailer of 1.2 m3, as data/practice.yml has them; a part of one is one more."""
    volume_m3 = october["spoil_m3"]
    assert volume_m3 > 1
    assert october["spoil_bags"] == ceil(volume_m3 * 1000 / 60) and october["spoil_trailer_loads"] == ceil(volume_m3 / 1.2)


def test_what_is_still_to_be_measured_has_no_answer_yet(october):
    cans = next(each for step in october["steps"] for each in step["quantities"] if each["calculator"] == "catch-cans")
    assert cans["measured"] and cans["results"] == {} and cans["warnings"] == []


def test_the_price_adds_up(october):
    """Lines, then the tax of practice.yml on top: 10 %."""
    found = october["cost"]
    assert found["before_tax"] == pytest.approx(sum(line["amount"] for line in found["lines"]))
    assert found["tax"] == pytest.approx(found["before_tax"] * 0.1, abs=0.006)
    assert found["total"] == pytest.approx(found["before_tax"] + found["tax"])
    assert all(round(line["amount"], 2) == line["amount"] for line in found["lines"]), "a line is told to the cent"


def test_looks_at_the_lawn_are_in_the_price_and_said_so(october):
    """What practice.yml does not charge within a job has no line, and all of it is told of."""
    book = our_book()
    free = {book.tasks[task].name: task for task, each in book.practice.operations.items() if not each.charged_in_jobs}
    found = october["cost"]
    done = Counter(step["task"] for step in october["steps"] if step["who"] == "hands" and step["counted"])
    assert {each["name"]: each["times"] for each in found["included"]} == {name: done[task] for name, task in free.items() if done[task]}
    assert found["included"] and not free.keys() & {line["name"] for line in found["lines"]}
    assert "Included in the price: " in run(*JOB).output


@pytest.mark.parametrize(("grass", "product"), [("tall-fescue", "fescue-seed"), ("perennial-ryegrass", "ryegrass-seed")])
def test_seed_follows_the_grass(grass, product):
    """practice.yml has seed of both. Nobody oversows one with the seed of the other: common practice."""
    shopping = job("overseed", "--grass", grass, *JOB[3:7], "--on", "2027-04-05")["shopping"]
    seed = next(line for line in shopping if "sow" in " ".join(line["steps"]))
    assert seed["product"] == product and seed["note"] is None


def test_winter_ryegrass_is_ryegrass_on_any_lawn():
    shopping = job("oversow-winter", "--grass", "couch", *JOB[3:7], "--on", "2027-04-05")["shopping"]
    assert "ryegrass-seed" in [line["product"] for line in shopping]


def test_rain_that_covers_a_watering_is_told(october):
    wet = next(each for step in october["steps"] for each in step["watering"])
    words = run(*JOB, "--rain", f"{wet['date']}={wet['depth_mm']} mm").output
    assert f"Rain covers 1 more: {wet['litres']:.0f} L less to give" in words


def test_coring_takes_as_long_as_the_machine_needs(october):
    """0.48 m at 3 km/h and 65 % are 936 m2 an hour: 240 m2 in 15.4 minutes, with 40 to unload, set and clean.

    115 by 90 mm are 96.6 holes in a square metre, so the 278 that are wanted take three passes.
    """
    core = next(step for step in october["steps"] if step["id"] == "core")
    assert core["minutes"] == pytest.approx(3 * 240 / 936 * 60 + 40) and core["passes"] == 3


def test_frost_country_in_early_spring_is_outside_and_says_by_how_much():
    """Canberra has frost into November: Bureau of Meteorology normals, station 070351."""
    window = job(*JOB[:3], "--place", "canberra", *JOB[5:7], "--on", "2026-09-12")["window"]
    assert not window["inside"] and window["side"] == "before" and window["days_outside"] > 28
    assert "frost" in window["why"] and window["frost_chance_four_weeks"] > 0.5


def test_a_hollow_is_later_than_open_ground():
    open_ground, hollow = (job(*JOB[:3], "--place", "canberra", *JOB[5:], "--site", site)["window"] for site in ("open", "hollow"))
    assert hollow["frost_chance_four_weeks"] > open_ground["frost_chance_four_weeks"]


def test_the_calendar_file_has_an_event_a_step(tmp_path, october):
    file = tmp_path / "job.ics"
    assert run(*JOB, "--ics", str(file)).exit_code == 0
    events = icalendar.Calendar.from_ical(file.read_bytes()).walk("VEVENT")
    found = [(event.decoded("dtstart").isoformat(), str(event["summary"])) for event in events]
    assert found == [(step["date"], step["title"]) for step in october["steps"]]
    assert not any("rrule" in event for event in events), "a job is done once"


def test_a_job_that_moved_keeps_the_ids_of_its_events(tmp_path):
    """RFC 5545, 3.8.4.7: one event, one UID. Another year's job on the same lawn is another."""
    def ids(on, *words):
        file = tmp_path / "job.ics"
        assert run(*JOB[:-1], on, *words, "--ics", str(file)).exit_code == 0
        return {str(event["uid"]) for event in icalendar.Calendar.from_ical(file.read_bytes()).walk("VEVENT")}

    assert ids("2026-10-14", "--first-on", "2026-10-12") == ids("2026-10-12")
    assert not ids("2027-10-12") & ids("2026-10-12")


def test_the_table_has_a_row_a_step(tmp_path, october):
    file = tmp_path / "job.csv"
    assert run(*JOB, "--csv", str(file)).exit_code == 0
    with file.open(encoding="utf-8", newline="") as table:
        assert [row["step"] for row in csv.DictReader(table)] == [step["id"] for step in october["steps"]]


@pytest.mark.parametrize(("words", "said"), [
    (("warm-below-gruond", *JOB[1:]), "did you mean 'warm-below-ground'?"),
    ((*JOB[:2], "cuch", *JOB[3:]), "did you mean 'couch'?"),
    ((*JOB[:6], "240 kg", *JOB[7:]), "--area"),
    ((*JOB[:6], "0 m2", *JOB[7:]), "is not a lawn"),
    ((*JOB[:8], "12/10/2026"), "is not a date; write year, month and day"),
    ((*JOB, "--inspection", "thatch-dept=60 mm"), "did you mean 'thatch-depth'?"),
    ((*JOB, "--inspection", "thatch-depth=60 kg"), "thatch"),
    ((*JOB, "--done", "cores"), "has no '='"),
    ((*JOB, "--done", "coer=2026-10-14"), "did you mean 'core'?"),
    (("cool-autumn", *JOB[1:]), "is for cool-season grass"),
])
def test_a_slip_gets_one_line(words, said):
    result = run(*words)
    assert result.exit_code == 2 and said in result.output and "Traceback" not in result.output
