"""The working of every calculator is read on the smallest telephone without scrolling sideways, and says the same there as elsewhere."""

from collections.abc import Callable

import pytest

from tests.asking import ask
from tests.our_book import book
from tests.site.reader import Reader
from tests.slices import every

SMALL, DESK = {"width": 360, "height": 640}, {"width": 1280, "height": 900}
UNFOLDED = """async () => {
  const working = document.querySelector('.sb-calculator__working');
  if (!working.open) await new Promise(done => { working.addEventListener('toggle', done, {once: true}); working.open = true; });
  const steps = [...document.querySelectorAll('.sb-calculator__step .sb-scroll')];
  const shown = each => each.getClientRects().length > 0;
  const words = each => { const copy = each.cloneNode(true); copy.querySelectorAll('.sb-hidden').forEach(hidden => hidden.remove()); return copy.textContent.replaceAll('√', ''); };
  return {
    steps: steps.length, cut: steps.filter(each => each.scrollWidth > each.clientWidth).map(each => each.textContent), page: document.documentElement.scrollWidth,
    formulas: steps.filter(each => shown(each.querySelector('math'))).length, twins: steps.filter(each => shown(each.querySelector('.sb-formula'))).length,
    same: steps.every(each => words(each.querySelector('.sb-formula')) === each.querySelector('math').textContent),
  };
}"""
CALCULATORS = sorted(book().calculators)
# Roots, fractions in fractions, and the longest words, at each run.
HARDEST = ["reference-evapotranspiration", "evapotranspiration-of-a-day", "soil-test-need", "cutting-down"]


@pytest.mark.parametrize("name", [*HARDEST, *every(9, [each for each in CALCULATORS if each not in HARDEST])])
def test_no_formula_needs_scrolling_sideways_on_a_telephone(reader: Callable[..., Reader], name: str) -> None:
    found = ask(reader(viewport=SMALL).open(f"calculators/{name}.html"), UNFOLDED)
    assert found["cut"] == [] and found["page"] <= SMALL["width"]
    assert found["twins"] == found["steps"] > 0 and found["formulas"] == 0 and found["same"]


def test_a_wide_screen_and_paper_have_the_formula_itself(reader: Callable[..., Reader]) -> None:
    page = reader(viewport=DESK).open("calculators/seeding.html")
    found = ask(page, UNFOLDED)
    assert found["formulas"] == found["steps"] > 0 and found["twins"] == 0
    page.set_viewport_size(SMALL)
    assert ask(page, UNFOLDED)["formulas"] == 0
    page.emulate_media(media="print")
    assert ask(page, UNFOLDED)["twins"] == 0
