"""YAML as a tree: what plain values mean, and where they stand."""

import pytest

from generator.book.loading.marked_yaml import DEEPEST, read_tree


def value(text: str):
    root, findings = read_tree(text, "f.yml")
    assert not findings, findings
    return root.plain()


def lines(text: str) -> list[str]:
    return [str(finding) for finding in read_tree(text, "f.yml")[1]]


@pytest.mark.parametrize("word", ["no", "yes", "on", "off", "y", "N", "TRUE", "2026-10-12", "12:30", "0x1F", "1_000",
                                  "009021", "1.2.3", "+", ".", "e5", "NaN"])  # fmt: skip
def test_what_only_looks_like_something_else_stays_text(word: str) -> None:
    assert value(f"a: {word}") == {"a": word}


@pytest.mark.parametrize(("text", "meaning"), [
    ("12", 12), ("-3", -3), ("0", 0), ("2.5", 2.5), (".5", 0.5), ("1e3", 1000.0), ("-0.1", -0.1), ("5.", 5.0),
    ("true", True), ("false", False), ("", None), ("~", None), ("null", None),
    ("'12'", "12"), ('"true"', "true"), ("''", ""),
])  # fmt: skip
def test_plain_values_mean_what_they_say(text: str, meaning: object) -> None:
    found = value(f"a: {text}")["a"]
    assert found == meaning and type(found) is type(meaning)


def test_a_key_is_the_text_it_is_written_as() -> None:
    assert value("no: 1\n12: 2\ntrue: 3") == {"no": 1, "12": 2, "true": 3}


def test_places_count_from_one_and_enter_quotes_and_blocks() -> None:
    root, _ = read_tree("a: 'x'\nb:\n  - 1\n  - \"y\"\nc: |\n\n   block\nd: plain\n", "f.yml")
    assert str(root.children["a"].text) == "f.yml:1:5"
    assert str(root.children["b"].children[1].text) == "f.yml:4:6"
    assert str(root.children["c"].text) == "f.yml:7:4"
    assert str(root.children["d"].text) == "f.yml:8:4"
    assert str(root.keys["c"]) == "f.yml:5:1"


def test_columns_count_characters_not_bytes() -> None:
    root, _ = read_tree("a: {b: °°°, c: x}\n", "f.yml")
    assert str(root.children["a"].children["c"].text) == "f.yml:1:16"


def test_windows_line_ends_are_read() -> None:
    assert value("a: 1\r\nb:\r\n  - x\r\n") == {"a": 1, "b": ("x",)}


@pytest.mark.parametrize("line_end", ["\r", "\x85", "\u2028", "\u2029", "\n\r"])
def test_lines_that_yaml_counts_are_lines(line_end: str) -> None:
    """YAML 1.1, 5.4: CR, NEL, LS and PS break a line as LF does."""
    assert value(line_end.join(["a: 1", "b: \"x\\ty\"", 'c: "z"', ""])) == {"a": 1, "b": "x\ty", "c": "z"}


def test_every_second_key_is_told_and_the_first_kept() -> None:
    root, findings = read_tree("a: 1\na: 2\nb: {c: 1, c: 2}\n", "f.yml")
    assert [str(f.where) for f in findings] == ["f.yml:2:1", "f.yml:3:11"]
    assert root.plain() == {"a": 1, "b": {"c": 1}}


def test_an_alias_without_an_anchor_is_text_that_wants_quotes() -> None:
    assert lines("a: *x") == ["f.yml:1:4: '*x' is a YAML alias, and aliases are not read; "
                              "write the value out in full, or put text that begins with '*' in quotes"]


@pytest.mark.parametrize("text", ["{" * 5000, "- " * 5000, "[" * 900 + "]" * 900, "? " * 3000,
                                  "\n".join("  " * n + "a:" for n in range(200))])  # fmt: skip
def test_depth_has_an_end(text: str) -> None:
    found = lines(text)
    assert len(found) == 1 and "deep" in found[0]


def test_forty_levels_are_read_and_the_next_is_not() -> None:
    assert not lines("[" * DEEPEST + "]" * DEEPEST)
    assert lines("[" * (DEEPEST + 1) + "]" * (DEEPEST + 1))


@pytest.mark.parametrize("text", [
    "a:\n\t- b\n", "a\nb: c\n", "a: - b\n", 'a: "\\q"\n', 'a: "\\u12"\n', "a: {b: 1\n", "- a\nb: 1\n", "a: 1\n- b\n",
    "a: 'x' y\n", "a: %x\n", "a: [1, , 2]\n", "a: !<x\n", "a: 1\n...\nb: 1\n", ": b\n", "%TAG x\n---\na: 1\n",
    "%YAML 3.0\n---\na: 1\n", "a: x\n  y: z\n", "a: * b\n", "a: & b\n", "a: }\n", "a: @x\n", "a: `x`\n", "a: |x\n",
    "a: 'x\n", "a: !x!y z\n", "a: \"x\n---\n", "a: |\n    \n  x\n", "a: !!binary ?\n", "<<: {a: 1}\n", "{a: b: c}\n",
])  # fmt: skip
def test_what_is_not_plain_yaml_is_one_plain_sentence(text: str) -> None:
    found = lines(text)
    assert len(found) == 1, found
    assert "cannot be read here" not in found[0], found
    assert "; " in found[0]
