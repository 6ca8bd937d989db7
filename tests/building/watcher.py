"""Looks at a site every millisecond, as a web server does: by path, each file anew. Run as a program, so that nothing holds it up.

A look is a gap when a file is missing or ends too early; a mix when one and the same folder holds files of two editions.
Every edition of a site under test names itself in each file, as `Edition 7`.
"""

import json
import os
import re
import select
import subprocess
import sys
from pathlib import Path
from types import TracebackType

FILES = {"index.html": "</html>", "about.html": "</html>", "book/book.json": "}", "book/practice.json": "}"}
EDITION = re.compile(r"Edition (\d+)")
EVERY_S = 0.001


class Watched:
    """`with Watched(site) as seen:` a watcher looks on; afterwards `seen.looks`, `seen.editions` and `seen.wrong` say what it saw."""

    def __init__(self, site: Path) -> None:
        self.site = site
        self.looks, self.editions, self.wrong = 0, 0, []

    def __enter__(self) -> "Watched":
        self._watcher = subprocess.Popen([sys.executable, __file__, self.site], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
        assert self._watcher.stdout.readline() == "looking\n"
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        said, _ = self._watcher.communicate("stop\n")
        self.looks, self.editions, self.wrong = json.loads(said)


def look(site: Path) -> tuple[set[str], str | None]:
    """The editions that one look met in one folder, and what was wrong."""
    editions: dict[int, set[str]] = {}
    for name, end in FILES.items():
        try:
            folder = os.stat(site).st_ino
            text = (site / name).read_text(encoding="utf-8")
            if os.stat(site).st_ino != folder:  # Moved in between: which folder the file is of cannot be told.
                continue
        except OSError as error:
            return set(), f"{name}: {error.strerror}"
        if not text.rstrip().endswith(end):
            return set(), f"{name} ends too early"
        editions.setdefault(folder, set()).update(EDITION.findall(text))
    mixed = [sorted(found) for found in editions.values() if len(found) != 1]
    return set().union(*editions.values()), f"one folder with editions {mixed}" if mixed else None


def main(site: Path) -> None:
    looks, editions, wrong = 0, set(), []
    print("looking", flush=True)
    while not select.select([sys.stdin], [], [], EVERY_S)[0]:
        found, trouble = look(site)
        looks += 1
        editions |= found
        wrong += [trouble] if trouble else []
    print(json.dumps([looks, len(editions), wrong]))


if __name__ == "__main__":
    main(Path(sys.argv[1]))
