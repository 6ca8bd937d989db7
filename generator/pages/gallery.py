"""The page that shows each component from its own examples: for those who build the book."""

from typing import Any

from generator.pages.page import Page, Section


def gallery_page(components: list[dict[str, Any]]) -> Page:
    """components: name, params and examples of each, as its own example file has them."""
    description = "Every building block of these pages, shown from its own examples."
    context = {"title": "Components", "lead": description, "galleries": components}
    sections = tuple(Section(f"component-{each['name']}", each["name"]) for each in components)
    return Page("components", "Components", "components", context, description, sections=sections)
