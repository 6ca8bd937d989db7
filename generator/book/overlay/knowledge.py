"""Where the shared knowledge lies: carried in the installed package, or the folder that a clone of this repository is."""

from pathlib import Path

# The key of practice.yml by which a book lies over it.
KNOWLEDGE = "shared_knowledge"
# What stands before the path of a shared file in a message: it is not in the author's folder.
SHARED_PATH = "shared/"

_PACKAGE = Path(__file__).parents[2]


def knowledge_folder() -> Path:
    """The folder that holds the shared data/ and content/."""
    carried = _PACKAGE / "knowledge"
    return carried if carried.is_dir() else _PACKAGE.parent
