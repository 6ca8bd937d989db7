"""The gallery: every component from its own examples, as the theme dresses it. For those who build the book; no book holds it.

`make gallery` writes it; the tests of the components read the same page.
"""

import sys
from pathlib import Path
from typing import Any

import material
from markupsafe import Markup

from generator.site.frame.render import asset_files, component_names, described, environment, own_script, render_component, with_own_files

THEME = Path(material.__file__).parent / "templates" / "assets" / "stylesheets"
TEMPLATE = Path(__file__).with_name("gallery.html.j2")
SCHEMES = {"components.html": "default", "components-dark.html": "slate"}


def page_of(body: str, scheme: str = "default") -> str:
    """A page with the styles and scripts of a site around `body`. scheme: a palette of the theme, 'default' or 'slate'."""
    styles = "".join(f'<link rel="stylesheet" href="{sheet.as_uri()}">' for sheet in sorted(THEME.glob("*.css")))
    return (
        f'<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Components</title>{styles}'
        '<meta name="viewport" content="width=device-width,initial-scale=1"><link rel="stylesheet" href="assets/swardbook.css">'
        '<script src="assets/swardbook.js" defer></script></head>'
        f'<body data-md-color-scheme="{scheme}" data-md-color-primary="indigo" data-md-color-accent="indigo">'
        f'<main class="md-content"><article class="md-content__inner md-typeset">{with_own_files(body, "")}</article></main></body></html>'
    )


def write_gallery(folder: Path) -> list[Path]:
    """Write the gallery, light and dark, with all that it loads. Returns the pages."""
    for path, text in asset_files().items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, encoding="utf-8")
    body = environment().from_string(TEMPLATE.read_text(encoding="utf-8")).render(galleries=_galleries())
    for name, scheme in SCHEMES.items():
        (folder / name).write_text(page_of(body, scheme), encoding="utf-8")
    return [folder / name for name in SCHEMES]


def _galleries() -> list[dict[str, Any]]:
    sets = []
    for name in component_names():
        about = described(name)
        examples = [{"name": each["name"], "html": Markup(render_component(name, each["view"]))} for each in about["examples"]]
        sets.append({"name": name, "params": about["params"], "examples": examples, "script": own_script(name)})
    return sets


if __name__ == "__main__":
    print("\n".join(str(page) for page in write_gallery(Path(sys.argv[1]).resolve())))
