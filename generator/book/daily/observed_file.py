"""Where a book keeps what was measured at its places this year, and what stands there."""

import os
from collections.abc import Collection
from pathlib import Path

from generator.book.daily.daily_reading import AskedOfDays, read_days
from generator.book.daily.daily_record import DailyRecord
from generator.book.loading.disk import entries, finding_of
from generator.findings import Finding, Where, shown, suggestion

FOLDER, ENDING = "observed", ".csv"


def read_observed(root: Path, places: Collection[str]) -> tuple[dict[str, DailyRecord], list[Finding]]:
    """The records of the folder by place, and what is wrong with them. places: ids that a file may be named for."""
    folder = root / FOLDER
    if not os.path.lexists(folder):
        return {}, []
    if wrong := finding_of(folder, root, FOLDER):
        return {}, [wrong]
    if not folder.is_dir():
        return {}, [Finding(Where(FOLDER), "this is not a folder", "keep the days of a place in observed/PLACE.csv")]
    found, findings = {}, []
    for file in entries(folder):
        path = f"{FOLDER}/{shown(file.name)}"
        if wrong := finding_of(file, root, path):
            findings.append(wrong)
        elif file.suffix != ENDING:
            findings.append(Finding(Where(path), "this is no daily record", "the days of a place stand in PLACE.csv; take it away"))
        elif file.stem not in places:
            findings.append(Finding(Where(path), f"no place '{shown(file.stem)}'", suggestion(file.stem, places, "name the file as its place in data/places")))
        else:
            record, _, told = read_days([file], AskedOfDays(folder=f"{FOLDER}/"))
            if not told and record.last_warmth is None:
                told = [Finding(Where(path), "no day has both a maximum and a minimum", "put both into the one file")]
            findings += told
            if not told:
                found[file.stem] = record
    return found, findings
