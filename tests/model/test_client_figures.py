"""What a client reads must not rest on what was only recalled: sheets, answers, and the figures these take from elsewhere."""

import re
from pathlib import Path
from typing import Any

import pytest
import yaml

DATA = Path(__file__).parent.parent.parent / "data"
SHEETS = sorted([*(DATA / "aftercare").glob("*.yml"), *(DATA / "answers").glob("*.yml")])
TAKEN = re.compile(r"\b(step|task|grass)\.([a-z0-9_-]+)(?:\.([a-z0-9_-]+))?(?:\.([a-z0-9_-]+))?")
FIELDS_OF_A_GRASS = ("mowing_height", "nitrogen_per_year", "recovery", "seed_rate", "tolerance")


def read(path: Path) -> dict[str, Any]:
    return yaml.safe_load(path.read_text())


def recalled(node: Any) -> bool:
    """Whether the value itself is marked; another source's figure beside it is not what the client is shown."""
    if isinstance(node, list):
        return any(recalled(each) for each in node)
    return isinstance(node, dict) and (node.get("from_memory") is True or any(recalled(v) for k, v in node.items() if k != "others"))


@pytest.mark.parametrize("path", SHEETS, ids=lambda path: path.stem)
def test_a_client_sheet_says_nothing_recalled(path: Path) -> None:
    assert not recalled(read(path))


def taken() -> set[tuple[str, str, str]]:
    return {match.groups(default="")[:3] for path in SHEETS for match in TAKEN.finditer(path.read_text())}


@pytest.mark.parametrize("kind, id, field", sorted(taken()))
def test_a_figure_that_a_client_sheet_takes_is_not_recalled(kind: str, id: str, field: str) -> None:
    if kind == "step":
        assert not recalled(read(DATA / "steps" / f"{id}.yml"))
    elif kind == "task":
        assert not recalled(read(DATA / "tasks" / f"{id}.yml").get("figures", {}).get(field))
    elif id in FIELDS_OF_A_GRASS:
        for path in sorted((DATA / "grasses").glob("*.yml")):
            node = read(path).get(id)
            assert not recalled((node or {}).get(field) if id == "tolerance" else node), path.name
