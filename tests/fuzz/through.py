"""A changed book from its files through to the pages, in one process: `python -m tests.fuzz.through SEED COUNT` goes on until COUNT were accepted."""

import re
import shutil
import signal
import sys
import tempfile
import traceback
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from random import Random

from generator.checks import check_book
from generator.site.book_site import BookSite
from tests.book_folders import BOOKS, WHOLE
from tests.fuzz.mutations import Files, places, written

TODAY = date(2026, 11, 29)
LONGEST_SECONDS = 60
NOTHING = "(nothing)"
# What no reader should meet: a number that is none, Python's own words. "None." may begin a sentence.
NO_TEXT = re.compile(r"(?<![\w./-])(NaN|nan|-?inf|Infinity|None(?![.:]| [a-z])|undefined|Traceback)(?![\w-])|object at 0x|\[object |Undefined")


@dataclass
class Counts:
    tried: int = 0
    refused: int = 0
    accepted: int = 0
    pages: int = 0
    crashes: Counter = field(default_factory=Counter)
    shown: dict = field(default_factory=dict)


def small_book(to: Path) -> Path:
    """The whole small book with everything that another one adds."""
    shutil.copytree(WHOLE, to)
    shutil.copytree(BOOKS / "additions", to / "data", dirs_exist_ok=True)
    return to


@contextmanager
def in_time(seconds: int) -> Iterator[None]:
    """Seconds of processor time: those on the wall would tell how busy the machine is."""

    def late(number: int, frame: object) -> None:
        raise TimeoutError(f"not done in {seconds} seconds")

    before = signal.signal(signal.SIGPROF, late)
    signal.setitimer(signal.ITIMER_PROF, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


class Through:
    """Books changed by lot, and what a build makes of those that are accepted."""

    def __init__(self, root: Path, longest_seconds: int = LONGEST_SECONDS) -> None:
        self.root, self.longest_seconds = root, longest_seconds
        self.files = Files(root)
        self.counts = Counts()
        self.usual = self._odd(BookSite(check_book(root).book, TODAY))

    def try_one(self, seed: int) -> None:
        """Raises nothing: what went wrong is counted by its kind, with the change that shows it."""
        changed = self.files.mutated(Random(seed))
        for name, data in changed.items():
            (self.root / name).write_text(written(data), encoding="utf-8")
        self.counts.tried += 1
        try:
            with in_time(self.longest_seconds):
                loaded = check_book(self.root)
                if loaded.book is None:
                    self.counts.refused += 1
                    assert loaded.findings and all("\n" not in str(each) and "object at 0x" not in str(each) for each in loaded.findings)
                    return
                self.counts.accepted += 1
                odd = self._odd(BookSite(loaded.book, TODAY)) - self.usual
                assert not odd, f"shows {sorted(odd)[:5]}"
        except Exception as error:
            last = traceback.extract_tb(error.__traceback__)
            ours = next((each for each in reversed(last) if "/generator/" in each.filename), last[-1])
            kind = f"{type(error).__name__} in {Path(ours.filename).name}:{ours.name}"
            self.counts.crashes[kind] += 1
            self.counts.shown.setdefault(kind, (seed, str(error)[:200], f"{ours.filename}:{ours.lineno}", self._difference(changed)))
        finally:
            for name in changed:
                (self.root / name).write_text(self.files.sound[name], encoding="utf-8")

    def told(self) -> str:
        """The counts, and one change for each kind of crash."""
        counts = self.counts
        lines = [f"{counts.tried} changed books: {counts.refused} refused, {counts.accepted} accepted, {counts.pages} pages"]
        return "\n".join([*lines, *(f"{count} times {kind}: {counts.shown[kind]}" for kind, count in counts.crashes.most_common())])

    def _odd(self, site: BookSite) -> set[tuple[str, str]]:
        """Everything a build makes is made here. Words no reader should meet: (page or file, the words about it)."""
        found = set()
        for path, page in site.pages.items():
            found |= {(path, each) for each in odd(site.html(page)[0])}
            found |= {(path, each) for each in odd(f"{page.title} {page.description}")}
            self.counts.pages += 1
        for path, content in site.files.items():
            if isinstance(content, str) and not path.startswith("book/schema/"):
                found |= {(path, each) for each in odd(content)}
        found |= {("search", each) for each in odd(site.index.script())}
        return found

    def _difference(self, changed: dict) -> str:
        """The first places that a change touched, each with what stood there and what stands there now."""
        lines = []
        for name, data in changed.items():
            before, now = dict(places(self.files.data[name])), dict(places(data))
            different = [place for place in {**before, **now} if before.get(place, NOTHING) != now.get(place, NOTHING)]
            values = [place for place in different if not isinstance(before.get(place), dict | tuple | list)]
            lines += [f"{name} {place}: {before.get(place, NOTHING)!r:.60} -> {now.get(place, NOTHING)!r:.60}" for place in values]
        return "; ".join(lines[:4])


def odd(text: str) -> set[str]:
    return {text[max(0, each.start() - 30) : each.end() + 10] for each in NO_TEXT.finditer(text)}


def main() -> None:
    first, wanted = int(sys.argv[1]), int(sys.argv[2])
    with tempfile.TemporaryDirectory() as folder:
        through = Through(small_book(Path(folder) / "book"))
        seed = first
        while through.counts.accepted < wanted:
            known = len(through.counts.crashes)
            through.try_one(seed)
            seed += 1
            if len(through.counts.crashes) > known or seed % 100 == 0:
                print(through.told(), flush=True)
        print(through.told())


if __name__ == "__main__":
    main()
