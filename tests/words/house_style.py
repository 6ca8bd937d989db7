"""What is wrong with a text by the house's style: slips, loose prose, words we do not use. As data: file, line, what to write.

`python -m tests.words.house_style` prints the findings of the whole book.
"""

import re
import subprocess
import sys
from collections.abc import Iterable, Iterator
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import codespell_lib
from proselint.checks import __register__ as prose_checks
from proselint.registry import CheckRegistry
from proselint.tools import LintFile

from tests.words.texts import ROOT, Text, book_texts, guide_texts, plain
from tests.yaml_files import read_yaml

BETWEEN = "\n\n"
PUT_IN = {"it", "5", "mm", "0", "00"}  # What stands for a value in a text; two of them side by side repeat no word.


class Finding(NamedTuple):
    path: str
    line: int
    what: str
    instead: str

    def __str__(self) -> str:
        return f"{self.path}:{self.line}: {self.what}; write {self.instead}"


@cache
def style() -> dict[str, Any]:
    return read_yaml(Path(__file__).parent / "house-style.yml")


def findings(texts: Iterable[Text]) -> list[Finding]:
    """All that the house's style finds in the texts, by file and line."""
    texts = list(texts)
    return sorted({*loose_prose(texts), *slips(texts), *american(texts), *words_not_used(texts)})


def loose_prose(texts: list[Text]) -> Iterator[Finding]:
    """What proselint finds. It reads all texts at once, which is faster a hundred times than one by one."""
    registry = CheckRegistry()
    if not registry.checks:
        registry.register_many(prose_checks)
    chosen = dict.fromkeys(style()["turned_off"], False) | dict.fromkeys(style()["checks"], True)
    chosen = dict(sorted(chosen.items(), key=lambda item: item[0].count("."), reverse=True))  # The nearest name decides.
    read = LintFile("the book", BETWEEN.join(plain(text.text) for text in texts))
    ends, end = [], 1
    for text in texts:
        end += len(plain(text.text)) + len(BETWEEN)
        ends.append(end)
    for result in read.lint({"max_errors": 10_000, "checks": chosen}):
        start, stop = result.check_result.span
        said = read.content[start:stop].strip()
        if BETWEEN in said or set(said.lower().split()) <= PUT_IN or any(words in said.lower() for words in style()["allowed"]):
            continue
        text = next(text for text, end in zip(texts, ends, strict=True) if start < end)
        yield Finding(text.path, text.line_of(said), f"{said!r} ({result.check_result.check_path})", f"as it says: {result.check_result.message}")


def slips(texts: list[Text]) -> Iterator[Finding]:
    """What codespell finds."""
    command = [sys.executable, "-m", "codespell_lib", "--builtin", ",".join(style()["slips"])]
    command += ["--ignore-words-list", ",".join(style()["spelled_right"]), "-"]
    typed = "\n".join(plain(text.text) for text in texts)
    printed = subprocess.run(command, input=typed, text=True, capture_output=True, cwd=ROOT, check=False).stdout
    for number, slip, right in re.findall(r"^(\d+):.*\n\t(\S+) ==> (.*)$", printed, re.MULTILINE):
        text = texts[int(number) - 1]
        yield Finding(text.path, text.line_of(slip), f"{slip!r} is a slip of spelling", right)


def american(texts: list[Text]) -> Iterator[Finding]:
    """American spellings; names with a capital inside a sentence stay as their owners write them."""
    for text in texts:
        for found in re.finditer(r"[A-Za-z]+", text.text):
            british = _british().get(found[0].lower())
            if british and (found[0].islower() or found.start() == 0) and found[0].lower() not in style()["british_too"]:
                yield Finding(text.path, text.line_of(found[0]), f"{found[0]!r} is the American spelling", british)


@cache
def _british() -> dict[str, str]:
    table = Path(codespell_lib.__file__).parent / "data" / "dictionary_en-GB_to_en-US.txt"
    pairs = [line.split("->") for line in table.read_text(encoding="utf-8").splitlines() if "->" in line]
    return {form.strip(): british for british, forms in pairs for form in forms.split(",") if form.strip()}


def words_not_used(texts: list[Text]) -> Iterator[Finding]:
    """Words, turns and signs of house-style.yml."""
    refused = {re.compile(rf"\b{re.escape(words)}\b".replace(r"\*", r"\w*"), re.IGNORECASE): to for words, to in style()["words"].items()}
    refused |= {re.compile(re.escape(sign)): to for sign, to in style()["signs"].items()}
    refused |= {re.compile(turn, re.IGNORECASE): to for turn, to in style()["turns"].items()}
    everything = BETWEEN.join(text.text for text in texts)
    for pattern, instead in refused.items():
        if pattern.search(everything):
            for text in texts:
                for found in pattern.finditer(text.text):
                    yield Finding(text.path, text.line_of(found[0]), f"we do not write {found[0]!r}", instead)


def main() -> int:
    found = findings((*book_texts(), *guide_texts()))
    print(*found, sep="\n")
    return 1 if found else 0


if __name__ == "__main__":
    raise SystemExit(main())
