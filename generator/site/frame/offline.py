"""What the worker of a hosted book is told at build time: which files every page needs, and a hash of the whole."""

import hashlib
import json
from pathlib import Path

WORKER = "offline-worker.js"
WORKERS = Path(__file__).parents[1] / "assets" / "worker"
# What every page needs: our joined files, the theme's, the front page and the search index; not the maps of tools, nor languages of the theme.
SHELL = (
    "index.html", "assets/swardbook.*", "assets/mark.svg", "assets/logo.*", "assets/favicon.*",
    "assets/stylesheets/*.css", "assets/javascripts/*.js", "assets/theme/*.js",
    "assets/search/*.js", "assets/vendor/minisearch.js", "assets/vendor/stemmer.js",
)


def worker_script(site: Path, previewing: bool) -> tuple[str, str]:
    """Name and text of the worker; a live preview has one that keeps nothing."""
    script = (WORKERS / ("preview-worker.js" if previewing else WORKER)).read_text(encoding="utf-8")
    return WORKER, script if previewing else offline_worker(site, script)


def offline_worker(site: Path, script: str) -> str:
    """The worker's script for a built site.

    script: the worker as written, which asks for BOOK, a hash of every file of the site, and SHELL, path to hash.
    """
    whole, hashes = hashlib.sha256(), {}
    for file in sorted(each for each in site.rglob("*") if each.is_file() and each.name != WORKER):
        path = file.relative_to(site).as_posix()
        hashes[path] = hashlib.sha256(file.read_bytes()).hexdigest()[:16]
        whole.update(f"{path} {hashes[path]}\n".encode())
    shell = sorted({file.relative_to(site).as_posix() for pattern in SHELL for file in site.glob(pattern) if file.is_file()})
    told = {"BOOK": whole.hexdigest()[:16], "SHELL": {path: hashes[path] for path in shell}}
    return "".join(f"const {name} = {json.dumps(value)};\n" for name, value in told.items()) + script
