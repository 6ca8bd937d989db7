"""How the package is made for others: it goes out under the book's own name, with the shared knowledge in it.

In this folder the package is called `generator`, a name that anybody's package may have; installed beside others it is `swardbook`. What is
installed for working on it here stays a link to this folder.
"""

import os
import re
import shutil
import tempfile
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from setuptools import build_meta
from setuptools.build_meta import build_editable, get_requires_for_build_editable, get_requires_for_build_wheel, prepare_metadata_for_build_editable

HERE, NAME = "generator", "swardbook"
KNOWLEDGE = ("data", "content")
_IMPORT = re.compile(rf"^(\s*(?:from|import) ){HERE}(?=[. \n])", re.MULTILINE)

__all__ = ["build_editable", "build_sdist", "build_wheel", "get_requires_for_build_editable", "get_requires_for_build_wheel", "prepare_metadata_for_build_editable"]


def build_wheel(wheel_directory: str, config_settings: Mapping[str, Any] | None = None, metadata_directory: str | None = None) -> str:
    """The wheel's file name in `wheel_directory`, as PEP 517 asks for it."""
    folder = os.path.abspath(wheel_directory)
    with _laid_out(Path.cwd()):
        return str(build_meta.build_wheel(folder, config_settings))


def build_sdist(sdist_directory: str, config_settings: Mapping[str, Any] | None = None) -> str:
    raise NotImplementedError("there is no source archive: make a wheel with `pip wheel . --no-deps`, or clone the repository")


@contextmanager
def _laid_out(root: Path) -> Iterator[None]:
    """The package as it goes out, in a folder of its own, with that as the current folder."""
    with tempfile.TemporaryDirectory() as made:
        aside = Path(made)
        shutil.copytree(root / HERE, aside / NAME, ignore=shutil.ignore_patterns("__pycache__"))
        for file in (aside / NAME).rglob("*.py"):
            file.write_text(renamed(file.read_text(encoding="utf-8")), encoding="utf-8")
        for folder in KNOWLEDGE:
            shutil.copytree(root / folder, aside / NAME / "knowledge" / folder)
        settings = (root / "pyproject.toml").read_text(encoding="utf-8")
        (aside / "pyproject.toml").write_text(re.sub(rf"\b{HERE}\b", NAME, settings), encoding="utf-8")
        shutil.copy(root / "README.md", aside)
        os.chdir(aside)
        try:
            yield
        finally:
            os.chdir(root)


def renamed(source: str) -> str:
    """A module's text with the imports of the package by its other name."""
    return _IMPORT.sub(rf"\g<1>{NAME}", source)
