"""What a shell completes: ids by the names of files alone, as a whole book takes seconds to read. Says nothing where there is no book."""

from collections.abc import Callable, Iterable, Mapping
from pathlib import Path

import click
from click.shell_completion import CompletionItem

from generator.book.overlay.knowledge import KNOWLEDGE, knowledge_folder

Complete = Callable[[click.Context, click.Parameter, str], list[CompletionItem]]


def ids(kind: str) -> Complete:
    """Completes the ids of one kind of record, of the book in --book or the current folder."""
    return lambda context, _, begun: _items(file_ids(_root(context), kind), begun)


def ids_of(parameter: str, kinds: Mapping[str, str]) -> Complete:
    """The same, of the kind that another argument of the command says. kinds: its word to the folder of data/."""

    def complete(context: click.Context, _: click.Parameter, begun: str) -> list[CompletionItem]:
        kind = kinds.get(context.params.get(parameter) or "")
        return _items(file_ids(_root(context), kind), begun) if kind else []

    return complete


def kinds_to_write(kinds: Iterable[str]) -> Complete:
    return lambda context, _, begun: _items(kinds, begun)


def file_ids(root: Path, kind: str) -> list[str]:
    """Ids by the files of data/KIND, with those of the shared knowledge where the book lies over it; none where there is no book."""
    try:
        folders = [root, *([knowledge_folder()] if lies_over_shared(root) else [])]
        return sorted({file.stem for folder in folders for file in (folder / "data" / kind).glob("*.yml")})
    except OSError:
        return []


def lies_over_shared(root: Path) -> bool:
    """Whether the practice of a book asks for the shared knowledge, by its line alone. Raises OSError where there is no practice."""
    lines = (root / "data" / "practice.yml").read_text(encoding="utf-8", errors="replace").splitlines()
    return any(line.split("#")[0].replace(" ", "").rstrip() == f"{KNOWLEDGE}:true" for line in lines)


def _root(context: click.Context) -> Path:
    return Path(context.params.get("root") or ".")


def _items(words: Iterable[str], begun: str) -> list[CompletionItem]:
    return [CompletionItem(word) for word in words if word.startswith(begun)]
