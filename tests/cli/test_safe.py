"""A stranger's book runs nothing when it is checked, nor when it is built with --safe; each thing that would is named."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.book_folders import SMALLEST, edit
from tests.slices import first

COMMAND = Path(sys.executable).with_name("swardbook")
SETTINGS = """
hooks:
  - hook.py
INHERIT: other.yml
watch: !!python/object/apply:os.mkdir [RAN-by-a-tag]
extra_templates: [page.html]
site_author: !ENV HOME
"""


@pytest.fixture
def stranger(tmp_path: Path) -> Path:
    """A book that leaves a file RAN-... beside itself as soon as anything of it runs."""
    book = tmp_path / "book"
    shutil.copytree(SMALLEST, book)
    ran = f"from pathlib import Path\nPath({str(tmp_path)!r}, 'RAN-a-module').touch()\n"
    for name in ("hook.py", "sitecustomize.py", "data/hook.py", "content/hook.py", "yaml.py", "mkdocs.py"):
        (book / name).write_text(ran, encoding="utf-8")
    (book / "other.yml").write_text("hooks: [hook.py]\n", encoding="utf-8")
    (book / "theme").mkdir()
    (book / "theme/main.html").write_text("{{ ''.__class__.__mro__ }}", encoding="utf-8")
    (book / "content/page.html").write_text("{{ config }}", encoding="utf-8")
    edit(book / "mkdocs.yml", {"  name: material\n": "  name: material\n  custom_dir: theme\n", "  - swardbook\n": "  - swardbook\n  - macros\n", "  - attr_list\n": "  - attr_list\n  - pymdownx.snippets\n"})
    with (book / "mkdocs.yml").open("a", encoding="utf-8") as settings:
        settings.write(SETTINGS.replace("RAN-by-a-tag", str(tmp_path / "RAN-by-a-tag")))
    return book


def swardbook(book: Path, *words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run([COMMAND, *words], capture_output=True, text=True, encoding="utf-8", cwd=book)


def ran(book: Path) -> list[str]:
    return sorted(each.name for folder in (book, book.parent) for each in folder.iterdir() if each.name.startswith("RAN"))


def test_checking_a_strangers_book_runs_nothing_of_it(stranger: Path) -> None:
    run = swardbook(stranger, "check")
    assert run.stderr + run.stdout and "Traceback" not in run.stderr
    assert ran(stranger) == []


@pytest.mark.parametrize("words", first(1, [["build", "--safe"], ["pack", "--safe", "../stranger.zip"]]), ids=lambda words: words[0])
def test_a_safe_build_names_all_that_would_run_and_runs_none_of_it(stranger: Path, words: list[str]) -> None:
    run = swardbook(stranger, *words)
    assert run.returncode == 1 and run.stderr == "Nothing was built.\n"
    lines = run.stdout.splitlines()
    for said in ("'custom_dir'", "plugin 'macros'", "extension 'pymdownx.snippets'", "'hooks'", "'INHERIT'", "'watch'", "'extra_templates'", "tag '!ENV'", "tag '!!python/object/apply:os.mkdir'"):
        assert len([line for line in lines if said in line and line.startswith("mkdocs.yml:")]) == 1, said
    assert sorted(line.split(":")[0] for line in lines if not line.startswith("mkdocs.yml:")) == ["content/hook.py", "content/page.html"]
    assert ran(stranger) == [] and not (stranger / "site").exists() and not (stranger.parent / "stranger.zip").exists()


def test_a_plain_build_does_run_it(stranger: Path) -> None:
    """Otherwise the tests above would say nothing."""
    for part in ("\nINHERIT: other.yml", "  custom_dir: theme\n", "  - macros\n"):
        edit(stranger / "mkdocs.yml", {part: "\n" if part[0] == "\n" else ""})
    swardbook(stranger, "build")
    assert ran(stranger) == ["RAN-a-module", "RAN-by-a-tag"]


def test_a_script_in_a_page_is_named_where_it_stands(tmp_path: Path) -> None:
    book = tmp_path / "book"
    shutil.copytree(SMALLEST, book)
    with (book / "content/about.md").open("a", encoding="utf-8") as page:
        page.write("\nA picture. <img src=x onerror=alert(1)>\n\nA note.\n{: onclick='alert(1)' }\n")
    last = len((book / "content/about.md").read_text(encoding="utf-8").splitlines())
    run = swardbook(book, "build", "--safe")
    instead = "could run something or fetch it; take it out, or read the book and build it without --safe"
    assert run.stdout.splitlines() == [
        f"content/about.md:{last - 3}:23: the attribute 'onerror' of 'img' {instead}", f"content/about.md:{last}:4: the attribute 'onclick' of 'p' {instead}",
    ]  # fmt: skip
    assert run.returncode == 1 and {each.name for each in book.iterdir()} == {"content", "data", "mkdocs.yml"}
