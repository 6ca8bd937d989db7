"""How many small changes of the engine its tests notice: `python -m tests.small_changes [HOW MANY]`, a part of `make soak`.

The engine is copied aside, mutmut changes it in some thousands of places, and a sample of these, the same each time, is tried: one change,
then the tests that run through the changed function. A change that no test minds is a survivor; `survivors.yml` says of each that is
known why it may live. The run fails below LEAST_SCORE, and for a survivor that is not listed.
"""

import hashlib
import json
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

import yaml

ROOT = Path(__file__).parents[2]
COPIED = ("generator", "tests", "data", "content", "mkdocs.yml", "pyproject.toml")
KNOWN = Path(__file__).with_name("survivors.yml")
SAMPLE, SEED = 300, 13
LEAST_SCORE = 0.85
# What mutmut writes of a change that was tried: the tests passed, no test ran through it; anything else noticed it, if only by never ending.
LIVED, UNTESTED = 0, 33


def main(how_many: int) -> int:
    with tempfile.TemporaryDirectory(prefix="mutants-") as folder:
        place = Path(folder)
        copy_engine(place)
        mutmut(place, "nothing.*")  # Makes the changes. It looks for the tests before it has copied them, and gives up.
        mutmut(place, "nothing.*")  # Learns which tests run through which function.
        names = told(place).keys()
        sample = sorted(names, key=lot)[:how_many]
        mutmut(place, *sample)
        codes = {name: code for name, code in told(place).items() if name in set(sample) and code is not None}
        return judge(codes, len(names), place)


def lot(name: str) -> str:
    """Where a change stands in the draw. It hangs on its own name alone, so that one function rewritten leaves the rest of the sample as it was."""
    return hashlib.sha256(f"{SEED} {name}".encode()).hexdigest()


def copy_engine(place: Path) -> None:
    for name in COPIED:
        copy = shutil.copytree if (ROOT / name).is_dir() else shutil.copyfile
        copy(ROOT / name, place / name)


def mutmut(place: Path, *names: str) -> None:
    """Generates the changes and tries those named. Its own exit code says no more than its files do."""
    surroundings = {**os.environ, "PYTHONPATH": os.pathsep.join([str(place / "mutants"), *filter(None, [os.environ.get("PYTHONPATH")])])}
    subprocess.run([sys.executable, "-m", "mutmut", "run", "--max-children", "2", *names], cwd=place, env=surroundings, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)


def told(place: Path) -> dict[str, int | None]:
    """Each change by its name, and how its tests ended; None where it was not tried."""
    files = (place / "mutants").rglob("*.meta")
    return {name: code for file in files for name, code in json.loads(file.read_text(encoding="utf-8"))["exit_code_by_key"].items()}


def judge(codes: dict[str, int], of: int, place: Path) -> int:
    lived = sorted(name for name, code in codes.items() if code in (LIVED, UNTESTED))
    known = yaml.safe_load(KNOWN.read_text(encoding="utf-8")) or {}
    score = 1 - len(lived) / len(codes) if codes else 0.0
    print(f"{len(codes)} of {of} changes tried: {len(codes) - len(lived)} noticed, {score:.1%}")
    for name in lived:
        print(f"\n{name}: {known.get(name, 'NOT LISTED')}", *shown(place, name), sep="\n")
    strangers = [name for name in lived if name not in known]
    return int(score < LEAST_SCORE or bool(strangers))


def shown(place: Path, name: str) -> Iterator[str]:
    run = subprocess.run([sys.executable, "-m", "mutmut", "show", name], cwd=place, capture_output=True, text=True)
    yield from (line for line in run.stdout.splitlines() if line.startswith(("+", "-")) and not line.startswith(("+++", "---")))


if __name__ == "__main__":
    raise SystemExit(main(int(sys.argv[1]) if len(sys.argv) > 1 else SAMPLE))
