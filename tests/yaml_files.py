"""YAML read by the fast loader: Python's own takes a second for the list of sources alone."""

from pathlib import Path
from typing import Any

import yaml


def parsed(text: str) -> Any:
    return yaml.load(text, Loader=yaml.CSafeLoader)


def read_yaml(file: Path) -> Any:
    return parsed(file.read_text(encoding="utf-8"))
