"""`swardbook doctor`: what this machine and this folder have and lack, a line each."""

import os
import re
import shutil
import sys
from collections.abc import Iterator
from importlib.metadata import PackageNotFoundError, requires, version
from pathlib import Path

import click

from generator.book.overlay.knowledge import knowledge_folder
from generator.commands.common import book_option
from generator.commands.exit_codes import ExitCode
from generator.commands.shell_words import lies_over_shared
from generator.findings import one_line

PACKAGE = "swardbook"
OLDEST_PYTHON = (3, 11)
_NEEDED = re.compile(r"([\w.-]+)\s*([^;]*)$")
_BOUND = re.compile(r"(>=|<)\s*([\d.]+)")

# Whether it is there, what it is, and what to do where it is not; a line that is only useful lacks nothing when it is not there.
Looked = tuple[bool, str, str]


@click.command()
@book_option
def doctor(root: Path) -> None:
    """Say what this machine and this folder have and what they lack, and what to do about it. Ends with 1 where something is missing."""
    lacking = False
    for there, what, instead in (*_machine(), *_folder(root)):
        click.echo(f"ok       {what}" if there else f"missing  {what}; {instead}")
        lacking = lacking or not there
    if lacking:
        raise SystemExit(ExitCode.FINDINGS)


def _machine() -> Iterator[Looked]:
    yield sys.version_info >= OLDEST_PYTHON, f"Python {sys.version.split()[0]}", "install Python 3.11 or newer"
    try:
        carried = knowledge_folder().name == "knowledge"
        yield True, f"{PACKAGE} {version(PACKAGE)}, {'installed as a package' if carried else 'from a clone'}", ""
        for name, bounds in (found.groups() for each in requires(PACKAGE) or () if (found := _NEEDED.match(each))):
            yield _library(name, bounds)
    except PackageNotFoundError:
        yield False, f"{PACKAGE} is not installed", "run 'make site', or install its wheel"
    encoding = (sys.stdout.encoding or "").lower().replace("-", "")
    yield encoding == "utf8", f"the terminal writes {sys.stdout.encoding}", "set PYTHONIOENCODING=utf-8, or signs such as ° are written out"
    git = shutil.which("git")
    yield True, "git" if git else "no git, which only a book under version control needs", ""


def _library(name: str, bounds: str) -> Looked:
    """One library that a book is built with, against what it has to be."""
    try:
        has = version(name)
    except PackageNotFoundError:
        return False, name, f"install it: pip install '{name}{bounds.strip()}'"
    fits = all((_parts(has) >= _parts(limit)) == (sign == ">=") for sign, limit in _BOUND.findall(bounds))
    return fits, f"{name} {has}", f"it has to be {bounds.strip()}"


def _parts(said: str) -> tuple[int, ...]:
    return tuple(int(part) for part in re.findall(r"\d+", said)[:3])


def _folder(root: Path) -> Iterator[Looked]:
    here = one_line(root.resolve())
    is_book = (root / "mkdocs.yml").is_file() and (root / "data" / "practice.yml").is_file()
    yield is_book, f"a book in {here}", "go to the folder of a book, name it with --book, or make one: swardbook init FOLDER"
    if is_book:
        yield True, "it lies over the shared knowledge" if lies_over_shared(root) else "it stands alone", ""
        yield os.access(root, os.W_OK), "the folder can be written to", "the site has to go elsewhere: swardbook build --to DIR"
