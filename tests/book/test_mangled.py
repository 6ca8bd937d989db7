"""However a file is mangled, checking the book ends in findings or in a book: never in a traceback."""

import shutil
from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from generator.checks import check_book
from tests.book_folders import WHOLE

FILES = sorted(str(file.relative_to(WHOLE)) for file in (WHOLE / "data").rglob("*.yml"))
PIECES = [b"\t", b"\n", b"  ", b":", b": ", b"- ", b"[", b"]", b"{", b"}", b"'", b'"', b"&a ", b"*a", b"!!x ", b"<<: ", b"#", b"|",
          b">", b"%", b"@", b"?", b"? ", b"---\n", b"...\n", b"\xff", b"\0", b"\xc3", b"\xe2\x80\xa8", b"~", b".nan", b"1e999",
          b"no", b"null", b"-", b"9" * 400, b"\\", b",", b"\r", b"\xef\xbb\xbf"]  # fmt: skip

# Where in the file, how much is taken out, what goes in.
cuts = st.tuples(st.floats(0, 1), st.integers(0, 40), st.sampled_from(PIECES) | st.binary(max_size=6))


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return Path(shutil.copytree(WHOLE, tmp_path_factory.mktemp("mangled") / "book"))


names, changes = st.sampled_from(FILES), st.lists(cuts, min_size=1, max_size=4)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(name=names, changes=changes)
# A name as long as a page, which a message about another name lists.
@example(name="data/sources.yml", changes=[(0.0, 0, b"9" * 400), (0.0, 0, b"9" * 400)])
def test_a_mangled_file_is_told_at_its_line(book: Path, name: str, changes: list[tuple[float, int, bytes]]) -> None:
    check_mangled(book, name, changes)


@pytest.mark.soak
@settings(max_examples=3000, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(name=names, changes=changes)
def test_many_a_mangled_file_is_told_at_its_line(book: Path, name: str, changes: list[tuple[float, int, bytes]]) -> None:
    check_mangled(book, name, changes)


def check_mangled(book: Path, name: str, changes: list[tuple[float, int, bytes]]) -> None:
    """Every finding names a place in the file and says what would be right; no finding means a book."""
    file, sound = book / name, (WHOLE / name).read_bytes()
    raw = sound
    for share, taken, put in changes:
        at = int(share * len(raw))
        raw = raw[:at] + put + raw[at + taken :]
    file.write_bytes(raw)
    try:
        loaded = check_book(book)
    finally:
        file.write_bytes(sound)
    assert (loaded.book is None) == bool(loaded.findings)
    for finding in loaded.findings:
        line = str(finding)
        assert "\n" not in line and len(line) < 900
        assert finding.where.line >= 1 and finding.where.column >= 1
        assert finding.what and finding.instead
    if any(finding.where.path == name for finding in loaded.findings):
        last = raw.decode("utf-8", "replace").count("\n") + raw.count(b"\r") + raw.count(b"\xe2\x80\xa8") + 1
        assert all(finding.where.line <= last for finding in loaded.findings if finding.where.path == name)
