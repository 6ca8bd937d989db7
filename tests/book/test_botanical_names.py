"""The botanical names of the grasses, against names read in published lists and floras."""

from pathlib import Path

import pytest

from tests.yaml_files import read_yaml

HERE = Path(__file__).parent.parent
GRASSES = HERE.parent / "data" / "grasses"
PUBLISHED = read_yaml(HERE / "published" / "botanical" / "accepted-names.yml")
# A hybrid is told by its parents; the lists read hold no name of its own for it.
BY_PARENTS = {"hybrid-couch": "Cynodon dactylon × Cynodon transvaalensis"}


def botanical_name(grass: str) -> str:
    return str(read_yaml(GRASSES / f"{grass}.yml")["botanical_name"])


def short(name: str) -> str:
    """The name with its genus as one letter, as the second species of a line is written."""
    genus, species = name.split()
    return f"{genus[0]}. {species}"


@pytest.mark.parametrize("row", PUBLISHED, ids=lambda row: row["name"])
def test_a_name_and_its_author_are_as_published(row: dict[str, str]) -> None:
    told = botanical_name(row["grass"])
    assert f"{row['name']} {row['author']}" in told or f"{short(row['name'])} {row['author']}" in told


def test_every_grass_has_a_published_name_or_is_told_by_its_parents() -> None:
    held = {row["grass"] for row in PUBLISHED} | set(BY_PARENTS)
    assert held >= {path.stem for path in GRASSES.glob("*.yml")}
    for grass, name in BY_PARENTS.items():
        assert botanical_name(grass) == name


def test_no_species_of_a_grass_goes_without_a_reading() -> None:
    for path in sorted(GRASSES.glob("*.yml")):
        if path.stem in BY_PARENTS:
            continue
        told = botanical_name(path.stem)
        for row in (row for row in PUBLISHED if row["grass"] == path.stem):
            told = told.replace(f"{row['name']} {row['author']}", "").replace(f"{short(row['name'])} {row['author']}", "")
        assert not any(word[0].isupper() and word.endswith(".") for word in told.split()), told
