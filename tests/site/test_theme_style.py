"""What is left out of the theme's stylesheet is what no page shows, and nothing else is; an author who turns a thing on gets its rules."""

import re
from collections import Counter
from pathlib import Path

import material
import pytest
from playwright.sync_api import Browser

from generator.site.frame.theme_style import TURNED_ON_BY, without_unused
from tests.site.reader import KINDS

THEME = Path(material.__file__).parent / "templates/assets/stylesheets"
COLOUR = re.compile(r'\[data-md-color-(?:primary|accent)="?([\w-]+)"?\]')
# Each selector of a stylesheet as a browser reads it, with the conditions around it and what it says.
RULES = r"""text => {
  const sheet = new CSSStyleSheet(), found = [];
  sheet.replaceSync(text);
  const walk = (rules, around) => {
    for (const rule of rules) {
      const drawings = Array.from(rule.style || []).filter(name => name.startsWith('--md-') && rule.style.getPropertyValue(name).startsWith('url('));
      drawings.forEach(name => rule.style.removeProperty(name));
      if (rule.selectorText === undefined) {
        if (rule.cssRules && rule.conditionText !== undefined) walk(rule.cssRules, around + rule.conditionText); else found.push(rule.cssText);
      } else rule.selectorText.split(/,(?![^(]*\))/).forEach(each => found.push(around + '|' + each.trim() + '|' + rule.style.cssText));
    }
  };
  walk(sheet.cssRules, '');
  return found;
}"""


def theme(name: str) -> str:
    return next(THEME.glob(f"{name}.*.css")).read_text(encoding="utf-8")


@pytest.mark.parametrize("name", ["main", "palette"])
def test_only_rules_of_what_is_off_are_left_out(browser: Browser, name: str) -> None:
    page = browser.new_page()
    whole, lean = (Counter(page.evaluate(RULES, text)) for text in (theme(name), without_unused(theme(name), {"attr_list", "tables", "toc"}, {"teal"}, "")))
    page.close()
    gone = whole - lean
    assert gone and all("table:not([class]) + :is(" in rule for rule in lean - whole)
    for rule in gone:
        colours = COLOUR.findall(rule)
        off = any(f".{begins}" in rule for begins in TURNED_ON_BY) or (bool(colours) and set(colours).isdisjoint({"teal", "indigo"}))
        assert off or rule.endswith("|:root|") or "table:not([class]) + *" in rule, rule
    assert not [rule for rule in lean if any(f".{begins}" in rule for begins in TURNED_ON_BY)]


def test_what_an_author_turns_on_or_writes_stays() -> None:
    for begins, ways in TURNED_ON_BY.items():
        if f".{begins}" not in theme("main"):
            continue
        assert f".{begins}" not in without_unused(theme("main"), (), (), "")
        assert f".{begins}" in without_unused(theme("main"), (), (), f'<div class="{begins}">')
        for way in ways:
            assert f".{begins}" in without_unused(theme("main"), {way}, (), way if way.startswith(".") else ""), way


def test_no_page_shows_what_was_left_out(site: Path) -> None:
    for kind, path in KINDS.items():
        classes = {each for found in re.findall(r'class="([^"]*)"', (site / path).read_text(encoding="utf-8")) for each in found.split()}
        assert not [each for each in classes if each.startswith(tuple(TURNED_ON_BY))], kind
