"""`swardbook programme`: a year of visits on a terminal, as data, as a calendar and as a table."""

import csv
import json
from datetime import date
from pathlib import Path
from typing import Any

from click.testing import CliRunner
from icalendar import Calendar

from generator.cli import main

ASKED = ("programme", "couch", "sydney", "--area", "240 m2", "--from", "2026-12-01")


def run(*args: str) -> str:
    result = CliRunner().invoke(main, args)
    assert result.exit_code == 0, result.output
    return result.output


def values(*more: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(run(*ASKED, *more, "--json"))
    return found


def test_a_year_is_told_in_days_time_and_money() -> None:
    told = run(*ASKED, "--visits", "6", "--mowing")
    assert "Thu 24 Dec 2026  Feed  13 min  104.50 AUD" in told
    assert "about Wed 15 Sep 2027: a job of its own" in told
    assert "Lime, only where needed: A soil test asked for lime." in told
    found = values("--visits", "6", "--mowing")
    cuts = found["mowing"]
    visits = sum(round(each["price"]["total"] * 100) for each in found["visits"])
    assert round(found["price"]["total"] * 100) == visits + cuts["cuts"] * round(cuts["each"]["total"] * 100)
    assert f"In the year: {found['price']['total']:.2f} AUD" in told


def test_files_say_the_same(tmp_path: Path) -> None:
    ics, table = tmp_path / "visits.ics", tmp_path / "visits.csv"
    run(*ASKED, "--visits", "4", "--ics", str(ics), "--csv", str(table))
    found = values("--visits", "4")
    events = Calendar.from_ical(ics.read_bytes()).walk("VEVENT")
    days = {event.decoded("dtstart").isoformat() for event in events}
    assert days == {each["date"] for each in found["visits"]} | {found["renovation"]["date"]}
    rows = list(csv.DictReader(table.read_text().splitlines()))
    assert [(row["date"], row["task"]) for row in rows] == [(each["date"], work["task"]) for each in found["visits"] for work in each["works"]]


def test_a_kept_lawn_gives_what_is_not_said(tmp_path: Path) -> None:
    kept = {"wanted": 3, "start": "2027-01-05", "tasks": ["feed", "lime"], "cuts": 0, "visits": {"visit-1": {"on": "2027-02-19", "tasks": ["feed"]}}}
    lawn = {"code": "TL-014", "grass": "couch", "place": "sydney", "area": "240 m2", "programme": kept}
    file = tmp_path / "lawns.json"
    file.write_text(json.dumps({"version": 1, "lawns": [lawn]}))
    found = json.loads(run("programme", "--lawn", "TL-014", "--lawns", str(file), "--json"))
    assert (found["grass"], found["place"], found["area_m2"], found["from"], found["asked_visits"]) == ("couch", "sydney", 240.0, "2027-01-05", 3)
    in_it = {task for each in found["visits"] for task in each["tasks"]} | {each["task"] for each in found["own"]}
    assert in_it == {"feed", "lime"}
    assert all(date.fromisoformat(each["date"]) >= date(2027, 1, 5) for each in found["visits"])


def test_what_is_not_there_is_named() -> None:
    for args, word in ((("--with", "lme"), "lime"), (("--visits", "13"), "12"), (("--site", "hollo"), "hollow")):
        result = CliRunner().invoke(main, [*ASKED, *args])
        assert result.exit_code == 2
        assert word in result.output
    result = CliRunner().invoke(main, ["programme", "couch", "sydney"])
    assert result.exit_code == 2
    assert "--area" in result.output
