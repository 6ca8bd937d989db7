"""A safe build reads mkdocs.yml as plain YAML and takes only what is on its list: each line of the rest is named, all at once."""

from pathlib import Path

import pytest

from generator.building.safe_settings import safe_settings
from tests.book_folders import SMALLEST, WHOLE
from tests.yaml_files import parsed, read_yaml

ROOT = Path(__file__).parents[2]
PLAIN = {"site_name": "site_name: A book\n", "docs_dir": "docs_dir: content\n", "theme": "theme: material\n", "plugins": "plugins:\n  - swardbook\n"}

# What could run, read a file of this computer, tell what is in its environment, or make pages that do so: settings and the places told.
REFUSED = {
    "a hook": ("hooks:\n  - hook.py\n", ["6:1"]),
    "another plugin": ("plugins:\n  - swardbook\n  - search\n  - macros\n  - exec: {a: 1}\n", ["9:5", "10:5"]),
    "a plugin's folder": ("plugins:\n  search: {}\n", ["7:3"]),
    "options of a plugin": ("plugins:\n  - swardbook: {data_dir: /etc}\n  - search: {lang: en}\n", ["7:17", "8:13"]),
    "another theme": ("theme: readthedocs\n", ["6:8"]),
    "a theme's folder": ("theme:\n  name: material\n  custom_dir: theme\n  static_templates: [a.html]\n", ["8:3", "9:3"]),
    "a theme's font and language": ("theme:\n  name: material\n  font: {text: x}\n  language: ../../x\n  icon: {logo: ../../x}\n  locale: en\n", ["8:9", "9:13", "10:16", "11:3"]),
    "templates": ("extra_templates: [a.html]\n", ["6:1"]),
    "another file of settings": ("INHERIT: ../other.yml\n", ["6:1"]),
    "scripts and styles": ("extra_javascript: [a.js]\nextra_css: [a.css]\n", ["6:1", "7:1"]),
    "extensions that read files or import what they are told to": (
        "markdown_extensions:\n  - pymdownx.snippets\n  - os:system\n  - pymdownx.superfences: {custom_fences: []}\n"
        "  - toc: {slugify: os.system}\n  - attr_list: {x: 1}\n  - codehilite\n", ["7:5", "8:5", "9:5", "10:11", "11:16", "12:5"]),
    "a folder outside the book": ("docs_dir: ../other\nsite_dir: /srv\n", ["6:11", "7:11"]),
    "hidden files brought back": ("exclude_docs: |\n  !.htaccess\n", ["6:15"]),
    "markup": ('copyright: <script src="x"></script>\nsite_author: <b>me</b>\n', ["6:12", "7:14"]),
    "an address that is a script": ("site_url: javascript:alert(1)\nnav:\n  - Home: javascript:alert(1)\n  - Up: ../../x.md\n  - /etc/x.md\n  - <b>: a.md\n", ["6:11", "8:11", "9:9", "10:5", "11:5"]),
    "other people's counters": ("extra:\n  analytics: {provider: google}\n", ["7:3"]),
    "what else MkDocs knows": ("watch: [/etc]\ndev_addr: 0.0.0.0:80\nrepo_url: https://a.example\nvalidation: {}\nremote_name: x\n", ["6:1", "7:1", "8:1", "9:1", "10:1"]),
    "tags": (
        "site_author: !ENV HOME\nextra: !!python/object/apply:os.system [touch ran]\nsite_url: !!python/name:os.system\ncopyright: !relative x\n",
        ["6:14", "7:8", "8:11", "9:12"]),
    "aliases and merges": ("extra: &a\n  generator: false\ntheme:\n  <<: *a\n", ["6:8", "9:3"]),
    "two documents": ("---\nhooks: [a.py]\n", ["6:1"]),
}  # fmt: skip


def refused(tmp_path: Path, text: str) -> list[str]:
    (tmp_path / "mkdocs.yml").write_text(text, encoding="utf-8")
    settings, findings = safe_settings(tmp_path, "mkdocs.yml")
    assert (settings is None) == bool(findings)
    return [str(finding) for finding in findings]


@pytest.mark.parametrize("case", REFUSED)
def test_what_is_not_on_the_list_is_refused_at_its_place(tmp_path: Path, case: str) -> None:
    more, places = REFUSED[case]
    own = {line.split(":")[0] for line in more.splitlines()}
    kept = "".join("\n" * block.count("\n") if key in own else block for key, block in PLAIN.items())  # The case's own stand from line 6.
    found = refused(tmp_path, kept + more)
    assert [line.split(": ")[0] for line in found] == [f"mkdocs.yml:{place}" for place in places], "\n".join(found)
    assert all("; " in line for line in found)


def test_a_key_that_stands_twice_is_refused(tmp_path: Path) -> None:
    """Of two, each reader of YAML may take another."""
    (line,) = refused(tmp_path, "".join(PLAIN.values()) + "plugins: [exec]\n")
    assert line.startswith("mkdocs.yml:6:1: the key 'plugins' is here twice")


@pytest.mark.parametrize("book", [ROOT, SMALLEST, WHOLE], ids=["our own", "smallest", "whole"])
def test_our_own_books_are_safe_and_mkdocs_is_given_what_they_say(book: Path) -> None:
    settings, findings = safe_settings(book, "mkdocs.yml")
    assert findings == []
    assert parsed(settings) == read_yaml(book / "mkdocs.yml")


@pytest.mark.parametrize("text", ["", "- a\n", "text\n", "site_name: [broken\n", "a: \x00\n", "theme:\n  - material\nplugins: swardbook\nnav: 3\nextra: []\nstrict: 1\n"])
def test_settings_that_cannot_be_read_are_told(tmp_path: Path, text: str) -> None:
    assert refused(tmp_path, text) and all(line.startswith("mkdocs.yml:") for line in refused(tmp_path, text))
