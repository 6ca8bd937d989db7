"""Code that is not ours is the code that its folder's README says it is: file by file, by hash."""

import hashlib
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
FOLDERS = (ROOT / "generator/site/assets/vendor", ROOT / "tests/vendor")


# How each shipped script differs from the one its authors published: what was put before, what was put after, what stood there.
CHANGED = {
    "idb.js": ("", "", "", {}),
    "minisearch.js": ("", "", "//# sourceMappingURL=index.js.map\n", {}),
    "stemmer.js": ("(function () {\n", "})();\n", "", {"window.stemmer = stemmer\n": "", "function stemmer(": "export function stemmer("}),
    "uqr.js": (
        '(function () {\n"use strict";\n', "window.uqr = { encode: encode };\n})();\n",
        "export { QrCodeDataType, encode, renderANSI, renderSVG, renderUnicode, renderUnicodeCompact };\n", {},
    ),
}  # fmt: skip


def digest(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()


def entries(folder: Path) -> dict[str, dict[str, str]]:
    """File to its line of the README's table, by the names of the columns."""
    lines = [[cell.strip() for cell in line.strip("| ").split(" | ")] for line in (folder / "README.md").read_text(encoding="utf-8").splitlines() if line.startswith("|")]
    return {line[0]: dict(zip(lines[0], line, strict=True)) for line in lines[2:]}


@pytest.mark.parametrize("folder", FOLDERS, ids=lambda each: str(each.relative_to(ROOT)))
def test_every_file_is_named_with_its_origin_and_version(folder: Path) -> None:
    told = entries(folder)
    assert told.keys() == {file.name for file in folder.iterdir()} - {"README.md"}
    for entry in told.values():
        assert re.search(r"npm `[a-z-]+` \d+\.\d+\.\d+", entry["origin"]) and entry["licence"]


@pytest.mark.parametrize("folder", FOLDERS, ids=lambda each: str(each.relative_to(ROOT)))
def test_every_file_is_the_one_that_was_taken_in(folder: Path) -> None:
    """A line changed by hand, or by somebody's tool, is found here."""
    for name, entry in entries(folder).items():
        assert hashlib.sha256((folder / name).read_bytes()).hexdigest() == entry["sha256"], name


@pytest.mark.parametrize("name", sorted(CHANGED))
def test_taking_our_changes_back_gives_the_authors_own_file(name: str) -> None:
    """The hash of the original is the one that its registry hands out, so nothing else was changed."""
    before, after, stood_there, words = CHANGED[name]
    _, licence, text = (FOLDERS[0] / name).read_text(encoding="utf-8").partition("*/\n")
    assert licence and text.startswith(before) and text.endswith(after)
    text = text.removeprefix(before).removesuffix(after) + stood_there
    for ours, theirs in words.items():
        assert text.count(ours) == 1
        text = text.replace(ours, theirs)
    assert digest(text) == entries(FOLDERS[0])[name]["sha256 of the original"]


def test_every_shipped_script_says_what_was_changed() -> None:
    assert CHANGED.keys() == entries(FOLDERS[0]).keys()
