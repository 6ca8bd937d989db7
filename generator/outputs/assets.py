"""Style and script files of the site: joined from the components, and generated from the book."""


from generator.model.book import Book
from generator.pages.calculator import calculator_script
from generator.render import ASSETS, component_assets
from generator.units import units_script

STYLE = "assets/swardbook.css"
SCRIPT = "assets/swardbook.js"


def shared_scripts() -> tuple[str, ...]:
    """Scripts that every page loads, in order."""
    return (SCRIPT,)


def asset_files(book: Book) -> dict[str, str | bytes]:
    """Path in the site to content."""
    styles, scripts = component_assets()
    files: dict[str, str | bytes] = {
        STYLE: "\n".join(styles),
        SCRIPT: "\n".join([*(text for _, text in scripts), units_script()]),
    }
    for path in sorted((ASSETS / "vendor").glob("*.js")):
        files[f"assets/vendor/{path.name}"] = path.read_text(encoding="utf-8")
    for id, calculator in book.calculators.items():
        files[f"assets/calculators/{id}.js"] = calculator_script(id, calculator)
    return files


