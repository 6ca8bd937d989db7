"""Other Pythons on this machine, and an environment of the site's lock for each."""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

from tests.same.building import ROOT

OLDEST = (3, 11)
# Only the minor version counts for an author; of several, the newest.
_VERSION = re.compile(r"(\d+)\.(\d+)\.(\d+)")


def others() -> dict[tuple[int, int], Path]:
    """Interpreters of other minor versions that Swardbook takes, by version: on PATH, else pyenv's."""
    found: dict[tuple[int, int], Path] = {}
    versions = Path(os.environ.get("PYENV_ROOT", Path.home() / ".pyenv")) / "versions"
    numbered = sorted((tuple(map(int, name.groups())), folder) for folder in versions.glob("*") if (name := _VERSION.fullmatch(folder.name)))
    for version, folder in numbered:
        found[version[:2]] = folder / "bin" / "python3"
    for minor in range(OLDEST[1], 30):
        if (path := shutil.which(f"python3.{minor}")) and "shims" not in path:
            found[(3, minor)] = Path(path)
    return {version: path for version, path in sorted(found.items()) if version >= OLDEST and version != sys.version_info[:2] and path.exists()}


def environment(python: Path, folder: Path) -> Path:
    """The command `swardbook` in a new environment, which has what builds a book and nothing else."""
    ours = folder / "ours"
    ours.mkdir(parents=True)
    for name in ("pyproject.toml", "README.md"):
        shutil.copy(ROOT / name, ours / name)
    shutil.copytree(ROOT / "generator", ours / "generator", ignore=shutil.ignore_patterns("__pycache__"))
    made = folder / "environment"
    run(python, "-m", "venv", made)
    pip = (made / "bin" / "python", "-m", "pip", "install", "--quiet", "--disable-pip-version-check")
    run(*pip, "--require-hashes", "-r", ROOT / "requirements.lock")
    run(*pip, "--no-deps", "--no-build-isolation", ours)
    return made / "bin" / "swardbook"


def run(*words: str | Path) -> None:
    done = subprocess.run(words, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr
