"""The calculators of this book in a real browser: the same answers as in Python, while typing, and sentences for nonsense."""

import gzip

import pytest

from generator.calculators.calculate import calculate, default_si, figures, show_amount
from generator.site.frame.render import component_assets, own_scripts, render
from generator.site.pages.calculator.calculator_script import calculator_script
from generator.site.pages.calculator.view import calculator_page, calculator_view
from generator.site.shared.fill_in import SCRIPT as FILL_IN_SCRIPT
from generator.site.shared.lawn_pieces import CALCULATOR_SCRIPT
from tests.components.calculators import BOOK, DESK, IDS, component, field, figure, page_with, typed

FIGURES = "all => Object.fromEntries(all.map(each => [each.dataset.result, each.querySelector('.sb-calculator__figure')?.innerText]))"


@pytest.mark.parametrize("id", IDS)
def test_browser_and_python_give_the_same(all_scripts, id):
    calculator = BOOK.calculators[id]
    for example in calculator.examples:
        run = calculate(calculator, dict(example.inputs))
        out = all_scripts.evaluate(
            "([id, typed]) => Swardbook.calculator.run(Swardbook.calculators[id], typed)", [id, typed(calculator, example.inputs)]
        )
        assert out["problems"] == {} and out["noAnswer"] == {}
        assert out["results"].keys() == run.results.keys()
        for name, amount in run.results.items():
            assert out["results"][name] == pytest.approx(amount.si, rel=1e-9, abs=1e-15), f"{example.title}: {name}"
        said = [said.sentence for said in run.warnings if said.about is None]
        assert [each["say"] for each in out["said"]] == said
        assert out["notes"] == {said.about: said.sentence for said in run.warnings if said.about}


@pytest.mark.parametrize("id", IDS)
def test_shows_the_same_figures_as_the_build_printed(all_forms, id):
    """With scripts off a page shows the build's figures; the script must not change them at its start."""
    calculator = BOOK.calculators[id]
    start = {name: default_si(asked) for name, asked in calculator.inputs.items() if not asked.label_only}
    seen = all_forms.locator(f"#calc-{id} [data-result]").evaluate_all(FIGURES)
    for name, amount in calculate(calculator, start).results.items():
        if not calculator.results[name].working:
            assert seen[name].replace("²", "2").replace("³", "3") == show_amount(amount.si, amount.unit, amount.decimals)


# Rounding half away from zero at what can be measured out, by hand: 2.345 to 2 places is 2.35, a whole count stays,
# and two digits that count are kept however few places were asked for.
ROUNDED = (
    [(2.345, 2, "2.35"), (-2.345, 2, "-2.35"), (142, 0, "142"), (0.00417, 1, "0.0042"), (9.6, 0, "9.6"), (171.4, 0, "171"),
     (1234567.891, None, "1234568"), (0, 2, "0"), (0.999, 2, "1"), (99.96, 1, "100"), (0.0995, 1, "0.1")]
)  # fmt: skip


def test_rounding(opened):
    page = opened("coring")
    for value, decimals, expected in ROUNDED:
        assert figures(value, decimals) == expected
        assert page.evaluate("([v, d]) => Swardbook.calculator.figures(v, d)", [value, decimals]) == expected


def test_answers_change_while_typing(opened):
    page = opened("granular-feed")
    field(page, "area").fill("")
    field(page, "area").type("240")
    field(page, "rate").fill("3")
    assert figure(page, "product") == "7.2 kg"  # 2.4 hundreds of square metres at 3 kg.
    field(page, "area").fill("30 ft x 12 ft")  # 360 square feet are 33.445 m2.
    assert figure(page, "product") == "1 kg"


@pytest.mark.parametrize(
    ("name", "text", "sentence"),
    [
        ("area", "banana", "'banana' is not a quantity; write one such as 2.5."),
        ("area", "", "Nothing is typed here; give a number, with its unit."),
        ("area", "3 kg", "'3 kg' is a mass, but an area is wanted; use m², ha, 100 m²."),
        ("area", "-5", "Area to feed must be more than 0 m²; -5 m² was given."),
        ("nitrogen_percent", "120", "Nitrogen on the bag cannot be more than 100 %; 120 % was given."),
        ("passes", "1.5", "Passes over the lawn must be a whole number; 1.5 passes was given."),
        ("pack_mass", "0", "Product in one pack must be more than 0 kg; 0 kg was given."),
    ],
)
def test_nonsense_gets_a_sentence_beside_its_field(opened, name, text, sentence):
    page = opened("granular-feed")
    field(page, name).fill(text)
    problem = page.locator(f'[data-input="{name}"] .sb-calculator__problem')
    assert problem.is_visible() and problem.inner_text() == sentence
    assert field(page, name).get_attribute("aria-invalid") == "true"
    assert problem.get_attribute("id") in field(page, name).get_attribute("aria-describedby")
    assert "NaN" not in page.inner_text("body") and "undefined" not in page.inner_text("body")


def test_an_unusual_value_is_asked_about_and_still_answered(opened):
    page = opened("topdressing-sand")
    field(page, "depth").fill("15")
    assert "seldom over 10 mm; is 15 mm right?" in page.locator('[data-input="depth"]').inner_text()
    assert figure(page, "volume") == "1.5 m³"  # 100 m2 by 15 mm.
    assert "More than half of the leaf would be under sand" in page.locator(".sb-calculator__said").inner_text()


def test_units_switch_for_the_page_and_for_one_field(opened):
    page = opened("topdressing-sand")
    field(page, "depth").fill("25.4")
    page.evaluate("Swardbook.preferences.set('units', 'us')")
    assert field(page, "area").input_value() == "1000"  # Untouched: a round figure for US readers.
    assert field(page, "depth").input_value() == "1"  # Typed: the same depth, in inches.
    assert figure(page, "volume") == "3.09 yd³"  # 1000 ft2 by 1 in is 83.33 ft3.
    page.evaluate("Swardbook.preferences.set('units', 'metric')")
    page.locator('[data-input="area"] select').select_option("ha")
    field(page, "area").fill("1")
    field(page, "depth").fill("4")
    assert figure(page, "volume") == "40 m³"


def test_label_rate_starts_empty_and_is_measured_or_weighed(opened):
    page = opened("tank-mix")
    assert field(page, "label_rate").input_value() == ""
    assert figure(page, "product") == "–" and figure(page, "water") == "4 L"
    field(page, "area").fill("500 m2")
    field(page, "label_rate").fill("50")
    assert figure(page, "product") == "250 mL"
    field(page, "label_rate").fill("50 g/100 m2")
    assert figure(page, "product") == "250 g" and figure(page, "last_load_product") == "62.5 g"
    page.locator('[data-input="label_rate"] select').select_option("kg/ha")
    field(page, "label_rate").fill("2")
    assert figure(page, "product") == "100 g"  # 2 kg/ha is 0.2 g/m2.


def test_two_on_one_page_do_not_touch_each_other(opened):
    bodies = [
        component("topdressing-sand", "first", {"depth": (4.0, "mm", "from this grass: 3 to 5 mm")}), component("topdressing-sand", "second"),
    ]
    page = opened("topdressing-sand", bodies=bodies)
    field(page, "area", "#calc-topdressing-sand-first").fill("250")
    assert figure(page, "volume", "#calc-topdressing-sand-first") == "1 m³"
    assert figure(page, "volume", "#calc-topdressing-sand-second") == "0.4 m³"
    assert "from this grass: 3 to 5 mm" in page.locator("#calc-topdressing-sand-first").inner_text()
    ids = page.evaluate("Array.from(document.querySelectorAll('[id]'), each => each.id)")
    assert len(ids) == len(set(ids))


def test_without_scripts_the_fields_are_shut_and_the_answers_stand(browser, tmp_path):
    address = page_with(tmp_path, [component("topdressing-sand")], ["topdressing-sand"])
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(address)
    assert field(page, "area").is_disabled()
    assert figure(page, "volume") == "0.4 m³" and "Scripts are off" in page.inner_text("body")
    context.close()


def test_every_calculator_page_fits_a_telephone(browser, tmp_path):
    pages = [render("pages/calculator/calculator.html.j2", calculator_page(BOOK, id, DESK).context) for id in IDS]
    bodies = [f'<article data-of="{id}">{body}</article>' for id, body in zip(IDS, pages, strict=True)]
    context = browser.new_context(viewport={"width": 360, "height": 700})
    page = context.new_page()
    page.goto(page_with(tmp_path, bodies, IDS))
    assert page.locator("[data-of]").count() == len(IDS)
    wide = page.evaluate(
        "Array.from(document.querySelectorAll('[data-of]')).filter(each => each.scrollWidth > 360).map(each => each.dataset.of)"
    )
    assert wide == [] and page.evaluate("document.documentElement.scrollWidth") <= 360
    small = page.evaluate(
        "Array.from(document.querySelectorAll('.sb-calculator input, .sb-calculator select, .sb-calculator summary'))"
        ".filter(each => each.offsetHeight && (each.offsetHeight < 44 || parseFloat(getComputedStyle(each).fontSize) < 16"
        " && each.tagName !== 'SUMMARY')).map(each => each.outerHTML)"
    )
    assert small == []
    context.close()


def test_hostile_text_never_becomes_markup(opened):
    page = opened("granular-feed")
    field(page, "area").fill("<img src=x onerror=alert(1)>")
    assert page.locator(".sb-calculator img").count() == 0


def test_scripts_are_small_enough_for_a_telephone():
    ours = [own_scripts()[CALCULATOR_SCRIPT], own_scripts()[FILL_IN_SCRIPT]]
    packed = sum(len(gzip.compress(text.encode())) for text in [*ours, *(calculator_script(id, BOOK.calculators[id]) for id in IDS)])
    assert packed < 60_000


def test_pages_without_a_calculator_do_not_load_its_script():
    assert not [name for name, _ in component_assets()[1] if name.startswith(("calculator", "fill-in"))]


def test_a_figure_bound_in_another_unit_is_converted():
    """30 g/m2 bound as 300 kg/ha: 1 kg/ha is 0.1 g/m2."""
    view = calculator_view(BOOK, "seeding", DESK, filled={"seed_rate": (300.0, "kg/ha", "from this grass")})
    rate = next(each for each in view["fields"] if each["name"] == "seed_rate")
    assert rate["value"] == "30" and rate["from_words"] == "from this grass"
