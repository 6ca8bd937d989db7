"""What the YAML reader calls wrong, in an author's words."""

import re

import yaml

from generator.findings import Finding, Where, shown

# Part of the reader's own message -> what is wrong, what would be right, and whether to point at the
# place where the broken thing began rather than at the place where the reader gave up.
_SENTENCES = (
    ("mapping values are not allowed",
     "there is a second ':' in this line, or the line is indented too far",
     "put text with a colon in quotes, or line the key up with its neighbours", False),
    ("mapping keys are not allowed",
     "'?' begins a YAML key of another kind, and such keys are not read", "put text with signs in it in quotes", False),
    ("could not find expected ':'",
     "this line is neither 'key: value' nor a list item",
     "write ':' and a space after the key, or indent the line to continue the text above", True),
    ("block sequence entries are not allowed",
     "a list item starts on the line of its key", "start '- ' on a line of its own", False),
    ("found unexpected end of stream",
     "a quote that opens here is never closed", "close it with the same quote", True),
    ("found unexpected document indicator",
     "a quote that opens here is never closed", "close it with the same quote", True),
    ("did not find expected ',' or ']'", "a list that opens with '[' here is not closed",
     "put ',' between its items and ']' at its end", True),
    ("did not find expected ',' or '}'", "a map that opens with '{' here is not closed",
     "put ',' between its keys and '}' at its end", True),
    ("unknown escape character", "a backslash in double quotes begins an unknown sign",
     "use single quotes, or write the backslash twice", False),
    ("hexdecimal", "a backslash in double quotes begins an unknown sign",
     "use single quotes, or write the backslash twice", False),
    ("did not find expected '-' indicator", "there is a line of another kind in a list",
     "begin it with '- ', or indent it under the item above", False),
    ("did not find expected key", "this line or word does not fit under the key above",
     "line the key up with its neighbours, and put text with signs in it in quotes", False),
    ("did not find expected node content", "a value is missing before this sign",
     "write the value, or take the sign out; text with signs in it goes in quotes", False),
    ("exceeded maximum nesting", "lists and maps are nested too deep here",
     "keep to the depth of the record's own keys", False),
    ("expected <document start>", "there is something after the end of the record",
     "keep one record to a file and take the line '...' or '---' out", False),
    ("leading empty line", "a block of text begins with a line that is indented too far",
     "indent all its lines alike", False),
    ("while scanning an alias", "'*' begins a YAML alias, and aliases are not read",
     "put the text in quotes", True),
    ("while scanning an anchor", "'&' begins a YAML anchor, and anchors are not read",
     "put the text in quotes", True),
    ("while scanning a tag", "'!' begins a YAML tag, and tags are not read", "put the text in quotes", True),
    ("while parsing a tag", "'!' begins a YAML tag, and tags are not read", "put the text in quotes", True),
    ("while parsing a node", "'!' begins a YAML tag, and tags are not read", "put the text in quotes", True),
    ("block scalar", "after '|' or '>' the line must end", "start the text on the next line, indented", True),
    ("directive", "a line that begins with '%' is not read", "take it out", False),
    ("incompatible YAML", "a line that begins with '%' is not read", "take it out", False),
)


def syntax_finding(error: yaml.YAMLError, lines: list[str], path: str) -> Finding:
    """One finding for a file that the YAML reader gave up on."""
    mark = getattr(error, "problem_mark", None)
    if mark is None:  # Control characters: met before there are marks.
        return Finding(Where(path), f"the YAML cannot be read ({shown(error)})", "save the file as plain text")
    tab = _tab(lines, mark.line, path)
    if tab is not None:
        return tab
    problem = getattr(error, "problem", None)
    said = f"{getattr(error, 'context', '') or ''}, {problem or ''}"
    if "cannot start any token" in said:
        sign = lines[mark.line][mark.column : mark.column + 1]
        return Finding(_where(mark, lines, path), f"a value cannot begin with '{shown(sign)}'", "put the text in quotes")
    for words, what, instead, at_beginning in _SENTENCES:
        if words in said:
            begun = getattr(error, "context_mark", None)
            return Finding(_where(begun if at_beginning and begun else mark, lines, path), what, instead)
    return Finding(_where(mark, lines, path), f"the YAML cannot be read here ({shown(problem)})",
                   "compare the line with one of a record that loads")


def _where(mark: yaml.Mark, lines: list[str], path: str) -> Where:
    """The mark as an editor counts; the end of the file is the end of its last line with text."""
    line, column = mark.line, mark.column
    if line >= len(lines) or (line == len(lines) - 1 and not lines[line].strip()):
        line = max((n for n, text in enumerate(lines) if text.strip()), default=0)
        column = len(lines[line].rstrip())
    return Where(path, line + 1, column + 1)


def _tab(lines: list[str], line: int, path: str) -> Finding | None:
    """A tab in the indent of the broken line: the usual cause, whatever the reader calls it."""
    if line < len(lines) and (indent := re.match(r"[ ]*\t", lines[line])):
        return Finding(Where(path, line + 1, indent.end()), "there is a tab in the indent", "indent with two spaces")
    return None
