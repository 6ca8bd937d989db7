"""The one Jinja environment: a template and its context become text.

Autoescape is on, so nothing an author typed becomes markup, and `StrictUndefined` makes a misspelt
field fail the build at its line in the template. A page's template is found as
`pages/<kind>/<kind>.html.j2`, the macros of a part as `<name>/<name>.html.j2`.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import lru_cache
from pathlib import Path
from typing import Any

import yaml
from jinja2 import Environment, FileSystemLoader, StrictUndefined, UndefinedError
from markupsafe import Markup
from rcssmin import cssmin  # type: ignore[import-untyped]  # It has no types of its own.
from rjsmin import jsmin  # type: ignore[import-untyped]  # The same.

from generator.book.book import Book
from generator.book.editions import OWN, Edition
from generator.book.fields.private import Opened
from generator.site.frame.contract import contract_script, local_script, part_script
from generator.site.frame.ink_style import ink_style
from generator.site.shared.kept_limits import LONGEST
from generator.site.shared.strip_drawing import STRIP

SITE = Path(__file__).parents[1]
ASSETS = SITE / "assets"
COMPONENTS = SITE / "parts"
THEME = Path(__file__).parent / "theme"

# What the components share comes first, in this order: they lean on it.
SHARED_STYLES = ("tokens.css", "base.css")
SHARED_SCRIPTS = (
    "start.js", *(path.relative_to(ASSETS).as_posix() for folder in ("figures", "store") for path in sorted((ASSETS / folder).glob("*.js"))),
    "preferences.js", "country.js", *(path.relative_to(ASSETS).as_posix() for path in sorted((ASSETS / "lawns").glob("*.js"))),
)

_COMPONENT = re.compile(r'data-component="([^"]*)"')


@lru_cache(maxsize=1)
def environment() -> Environment:
    """The environment every page and component is rendered in; made once a build, so that no page looks whether its templates have changed."""
    made = Environment(
        loader=FileSystemLoader([SITE, COMPONENTS]),
        autoescape=True,
        auto_reload=False,
        undefined=StrictUndefined,
        finalize=_there,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.globals.update(strip=STRIP, longest=LONGEST)
    made.filters["share"] = share
    made.filters["runs"] = runs
    made.filters["spells"] = spells
    return made


def _there(value: Any) -> Any:
    """What a template prints; nothing at all is as wrong there as a misspelt field, and no reader should meet the word None."""
    if value is None:
        raise UndefinedError("prints a value that is not there; ask for it with 'if' first")
    return value


def render(template: str, context: Mapping[str, Any]) -> str:
    """The text of `template` (a path below the site room or its `parts/`) filled from `context`.

    Raises jinja2.UndefinedError when the template asks for a field the context has not, or prints one that is None.
    """
    return environment().get_template(template).render(context)


def render_component(name: str, view: Mapping[str, Any]) -> str:
    """The markup of one component for the dict its view prepared."""
    module = environment().get_template(f"{name}/{name}.html.j2").module
    return str(getattr(module, name.replace("-", "_"))(view))


def render_page(template: str, context: Mapping[str, Any], foot: Mapping[str, Any] | None) -> str:
    """A page with the line at its foot: where the template says `sources_foot`, because it prints well there, or else last.

    foot: the dict of the component sources-foot; None for a page that needs no such line.
    """
    line = render_component("sources-foot", foot) if foot else ""
    laid_out = render(template, {**context, "sources_foot": Markup(line)})
    return laid_out if line in laid_out else laid_out + line


def component_names() -> list[str]:
    """Folder names in `parts/`, sorted."""
    return sorted(folder.name for folder in COMPONENTS.iterdir() if (folder / f"{folder.name}.html.j2").exists())


def component_assets(colour: str | None = None) -> tuple[list[str], list[tuple[str, str]]]:
    """What pages need beside their HTML: stylesheets and scripts, in the order they must load.

    colour: of the practice, '#rrggbb'; None for the book's own. Returns (css texts, scripts as (file name, text)): shared ones first, then the other files of
    `assets/`, then the components by name. A component with a script of its own is left out of the scripts.
    """
    styles = [ASSETS / name for name in SHARED_STYLES]
    scripts = [ASSETS / name for name in SHARED_SCRIPTS]
    styles += [path for path in sorted(ASSETS.glob("*.css")) if path not in styles]
    scripts += [path for path in sorted(ASSETS.glob("*.js")) if path not in scripts]
    for name in component_names():
        styles += [] if own_style(name) else [COMPONENTS / name / f"{name}.css"]
        scripts += [] if own_script(name) else sorted((COMPONENTS / name).glob("*.js"))
    tokens, *others = (path.read_text(encoding="utf-8") for path in styles if path.exists())
    return (
        [tokens, ink_style(colour), *others],
        [(path.name, path.read_text(encoding="utf-8")) for path in scripts if path.exists()],
    )


def described(name: str) -> dict[str, Any]:
    """What a component's own `.yml` says of it: params, examples, and `own_script` where few pages need its script."""
    # The loader in C: the examples are many, and each build reads them all.
    return yaml.load((COMPONENTS / name / f"{name}.yml").read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)  # type: ignore[no-any-return]  # As our own components are written.


@lru_cache(maxsize=1)
def private_parts() -> dict[str, Opened]:
    """Components that are the practice's own, as their `.yml` says: name to the word that opens them to clients."""
    written = (name for name in component_names() if (COMPONENTS / name / f"{name}.yml").exists())
    return {name: word for name in written if (word := described(name).get("private"))}


def parts_left_out(edition: Edition) -> frozenset[str]:
    """Components that do not stand in the pages of an edition."""
    return frozenset(name for name, word in private_parts().items() if not edition.has(word))


def own_script(name: str) -> str | None:
    """Where the site keeps the script of a component that only some pages load; None where every page has it."""
    # A component in the making has its template before its examples; the live preview must stand that.
    written = (COMPONENTS / name / f"{name}.yml").exists()
    return f"assets/{name}.js" if written and described(name).get("own_script") else None


def own_style(name: str) -> str | None:
    """The same for its style."""
    return f"assets/{name}.css" if own_script(name) and described(name).get("own_style") else None


def own_styles() -> dict[str, str]:
    """Each style that only some pages load: path in the site to text."""
    return {path: lean_style((COMPONENTS / name / f"{name}.css").read_text(encoding="utf-8")) for name in component_names() if (path := own_style(name))}


def own_scripts() -> dict[str, str]:
    """Each script that only some pages load: path in the site to text, a component's files joined by name."""
    return {
        path: part_script(name) + lean_script("\n".join(file.read_text(encoding="utf-8") for file in sorted((COMPONENTS / name).glob("*.js"))))
        for name in component_names() if (path := own_script(name))
    }


@lru_cache(maxsize=1)
def _wanted_by() -> dict[str, tuple[str, ...]]:
    """Component with a script of its own -> the scripts of those it leans on, and its own."""
    with_own = {name: path for name in component_names() if (path := own_script(name))}
    return {name: (*(with_own[each] for each in described(name).get("leans_on", ())), path) for name, path in with_own.items()}


@lru_cache(maxsize=1)
def _styled_by() -> dict[str, str]:
    return {name: path for name in component_names() if (path := own_style(name))}


def with_own_files(html: str, top: str) -> str:
    """A page's HTML with the styles and scripts that its components want and that it does not load yet. top: the way to the site's folder: '../'."""
    there = {name for found in _COMPONENT.findall(html) for name in found.split()}
    wanted = dict.fromkeys(path for name, paths in _wanted_by().items() if name in there for path in paths)
    styles = "".join(f'<link rel="stylesheet" href="{top}{path}">\n' for name, path in _styled_by().items() if name in there)
    return styles + html + "".join(f'<script src="{top}{path}" defer></script>\n' for path in wanted if f"{path}\"" not in html)


def lean_script(text: str) -> str:
    """A script of ours as readers load it, without comments and needless blanks: a quarter of what they load is saved so."""
    return f"{jsmin(text)}\n"


def lean_style(text: str) -> str:
    """The same for a style."""
    return f"{cssmin(text)}\n"


def share(part: float, whole: float = 1) -> str:
    """`part` of `whole` as an SVG or CSS length: share(13, 52) is '25%'."""
    return f"{100 * part / whole:.3f}".rstrip("0").rstrip(".") + "%"


def runs(weeks: Sequence[Mapping[str, Any]], key: str) -> list[dict[str, Any]]:
    """Neighbouring weeks with the same `key`, as one piece each, so that a year is a few shapes and not 52.

    weeks: the weeks of a season strip in order. Returns pieces with `value`, `x` and `width` (lengths).
    """
    pieces: list[dict[str, Any]] = []
    for index, week in enumerate(weeks):
        if pieces and pieces[-1]["value"] == week[key]:
            pieces[-1]["count"] += 1
        else:
            pieces.append({"value": week[key], "first": index, "count": 1})
    for piece in pieces:
        piece["x"] = share(piece["first"], len(weeks))
        piece["width"] = share(piece["count"], len(weeks))
    return pieces


def spells(weeks: Sequence[Mapping[str, Any]]) -> list[dict[str, Any]]:
    """Neighbouring weeks that are alike in everything, for the year in words.

    Returns the first week of each spell with `until`, the `from` of its last week, and `count` of weeks.
    """
    alike: list[dict[str, Any]] = []
    for week in weeks:
        if alike and all(alike[-1][key] == value for key, value in week.items() if key not in ("number", "from")):
            alike[-1]["until"] = week["from"]
            alike[-1]["count"] += 1
        else:
            alike.append({**week, "until": week["from"], "count": 1})
    return alike


STYLE = "assets/swardbook.css"
SCRIPT = "assets/swardbook.js"
LOCAL_SCRIPT = "assets/local.js"
SEARCH_SCRIPT = "assets/search/search.js"
# What the theme asks for in scripts of its own, each loaded where it is needed: not joined.
THEME_SCRIPTS = "assets/theme"


def asset_files(book: Book | None = None, edition: Edition = OWN) -> dict[str, str]:
    """The joined style and script of every page, the scripts of some, and the vendored files: path in the site to text.

    book: whose places and names the pages show; None for parts alone.
    """
    left_out = {path for name in parts_left_out(edition) for path in (own_script(name), own_style(name))}
    styles, scripts = component_assets(book.practice.colour if book else None)
    vendored = {f"assets/vendor/{path.name}": path.read_text(encoding="utf-8") for path in sorted((ASSETS / "vendor").glob("*.js"))}
    joined = {STYLE: lean_style("\n".join(styles)), SCRIPT: "\n".join([contract_script(book), *(lean_script(text) for _, text in scripts)])}
    searching = {SEARCH_SCRIPT: lean_script("\n".join(path.read_text(encoding="utf-8") for path in sorted((ASSETS / "search").glob("*.js"))))}
    local = {LOCAL_SCRIPT: local_script(book) + lean_script("\n".join(path.read_text(encoding="utf-8") for path in sorted((ASSETS / "local").glob("*.js"))))}
    theme = {f"{THEME_SCRIPTS}/{path.name}": path.read_text(encoding="utf-8") for path in sorted((ASSETS / "theme").glob("*.js"))}
    own = {path: text for path, text in {**own_styles(), **own_scripts()}.items() if path not in left_out}
    return {**joined, **own, **searching, **local, **theme, **vendored}
