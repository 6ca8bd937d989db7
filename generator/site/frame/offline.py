"""What the worker of a hosted book is told at build time: which edition it is of, what is kept at once, and every file that can be kept.

Three files: the worker with the hash of the edition and what has to be there before it takes over; the list of all files, which it asks for
once; and the edition alone, which it asks for whenever a page is opened.
"""

import gzip
import hashlib
import json
import re
from collections.abc import Iterable
from dataclasses import dataclass
from math import fsum
from pathlib import Path
from posixpath import dirname, join, normpath

from generator.site.frame.render import lean_script

WORKER, LIST, EDITION = "offline-worker.js", "offline-files.json", "offline-edition.json"
WORKERS = Path(__file__).parents[1] / "assets" / "worker"
PREVIEW = "preview-worker.js"
# What every page needs: our joined files, the theme's, the front page and the search index; not the maps of tools, nor languages of the theme.
SHELL = (
    "index.html", "manifest.webmanifest", "assets/swardbook.*", "assets/local.js", "assets/mark.svg", "assets/icon.svg", "assets/logo.*", "assets/favicon.*",
    "assets/stylesheets/*.css", "assets/javascripts/*.js", "assets/theme/*.js",
    "assets/search/*.js", "assets/vendor/minisearch.js", "assets/vendor/stemmer.js",
)
# No reader opens these from a page: public data for programs, the page of a lost address, and what only tools and search engines ask for. What
# lists the pages for these carries the day of the build, which makes no new edition.
NOT_READ = re.compile(r"book/|404\.html$|sitemap\.|.*\.map$|assets/javascripts/(lunr|workers)/")
_LOADED = re.compile(r"""<(?:script|link|img)\b[^>]*?\b(?:src|href)="([^"#?:]+\.(?:js|css|svg|png|jpe?g|webp))\"""")
_NAMED = re.compile(r"""[\w./-]+\.js\b""")
# Of how many files one is packed to tell how large the whole book is when it is kept.
ONE_OF = 8


@dataclass(frozen=True)
class Keeping:
    """first: pages that have to be there before an edition takes over, at_once: that are kept after one visit, as 'cautions/dust.html'.

    chosen: patterns of files that are kept for the grass and the place that a reader chose, as 'renovate/{grass}.html'; * stands for any letters.
    """

    first: tuple[str, ...] = ()
    at_once: tuple[str, ...] = ()
    chosen: tuple[str, ...] = ()


def offline_files(site: Path, keeping: Keeping, *, for_clients: bool = False) -> dict[str, str]:
    """Name and text of the worker of a built site, and of what it asks for."""
    hashes = {path: hashlib.sha256((site / path).read_bytes()).hexdigest()[:16] for path in _paths(site)}
    whole = hashlib.sha256("".join(f"{path} {hash}\n" for path, hash in hashes.items()).encode()).hexdigest()[:16]
    edition = f"c{whole}" if for_clients else whole
    shell = {file.relative_to(site).as_posix() for pattern in SHELL for file in site.glob(pattern) if file.is_file()}
    shell |= {path for page in keeping.first if page in hashes for path in (page, *_loaded_by(site, page, hashes))}
    at_once = shell | {path for page in (*keeping.first, *keeping.at_once) if page in hashes for path in (page, *_made_of(site, page, hashes))}
    at_once |= {path for page in hashes if page.endswith(".html") and _matches(page, keeping.chosen) for path in _loaded_by(site, page, hashes)}
    readable = {path: hash[:8] for path, hash in hashes.items() if not NOT_READ.match(path)}
    told = {
        "edition": edition, "files": readable, "at_once": sorted(at_once & readable.keys()), "chosen": list(keeping.chosen),
        "bytes": int(fsum((site / path).stat().st_size for path in readable)), "packed_bytes": _packed_bytes(site, list(readable)),
    }
    named = {"BOOK": edition, "SHELL": {path: hashes[path][:8] for path in sorted(shell)}}
    head = "".join(f"const {name} = {json.dumps(value)};\n" for name, value in named.items())
    scripts = "\n".join(path.read_text(encoding="utf-8") for path in sorted(WORKERS.glob("[0-9]-*.js")))
    return {WORKER: head + lean_script(scripts), LIST: json.dumps(told, separators=(",", ":")) + "\n", EDITION: json.dumps({"edition": edition}) + "\n"}


def preview_files() -> dict[str, str]:
    """A live preview has a worker that keeps nothing."""
    return {WORKER: (WORKERS / PREVIEW).read_text(encoding="utf-8")}


def _paths(site: Path) -> list[str]:
    paths = (file.relative_to(site).as_posix() for file in site.rglob("*") if file.is_file())
    return sorted(path for path in paths if path not in (WORKER, LIST, EDITION) and not path.startswith("sitemap."))


def _made_of(site: Path, page: str, there: Iterable[str]) -> set[str]:
    """What it loads, and the scripts that it names and loads when they are wanted."""
    return _loaded_by(site, page, there) | _in_site(page, _NAMED.findall((site / page).read_text(encoding="utf-8")), there)


def _loaded_by(site: Path, page: str, there: Iterable[str]) -> set[str]:
    """What a page is made of."""
    return _in_site(page, _LOADED.findall((site / page).read_text(encoding="utf-8")), there)


def _in_site(page: str, addresses: Iterable[str], there: Iterable[str]) -> set[str]:
    return {normpath(join(dirname(page), each)) for each in addresses} & set(there)


def _matches(path: str, patterns: Iterable[str]) -> bool:
    return any(re.fullmatch(re.sub(r"\\\{[a-z]+\\\}|\\\*", "[^/]*", re.escape(each)), path) for each in patterns)


def _packed_bytes(site: Path, paths: list[str]) -> int:
    """How large these files are when each is packed, told from some of them."""
    some = [(site / path).read_bytes() for path in paths[:: ONE_OF if len(paths) > 200 else 1]]
    plain, packed = fsum(map(len, some)), fsum(len(gzip.compress(each, 6, mtime=0)) for each in some)
    return round(packed / plain * fsum((site / path).stat().st_size for path in paths)) if plain else 0
