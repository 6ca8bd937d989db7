"""A lawn added up from pieces in a real browser: kept, handed on to other calculators, and never upset by what stands in storage."""

import io
import json
from datetime import date

import pytest
from playwright.sync_api import expect
from pypdf import PdfReader

from generator.site.frame.render import SCRIPT, asset_files, component_assets, own_scripts, render
from generator.site.page_context import PageContext
from generator.site.pages.calculator.calculator_script import calculator_script
from generator.site.pages.calculator.view import calculator_page
from generator.site.pages.guide.view import guide_page
from generator.site.pages.task.view import task_page
from generator.site.shared.lawn_pieces import gives_a_piece, piece_name, takes_an_area
from tests.components.calculators import BOOK, component, figure
from tests.components.calculators import field as entry

PAGES = ("area-rectangle", "area-triangle", "area-triangle-sides", "area-circle", "area-sum", "granular-feed", "growth-potential")
LAWN = "../assets/lawn-pieces.js"


def here(path: str) -> PageContext:
    return PageContext(BOOK, path, date(2026, 1, 1))


def html(body: str, scripts: str = "") -> str:
    return (
        '<!doctype html><html lang="en"><meta charset="utf-8"><title>t</title><meta name="viewport" content="width=device-width">'
        f'<link rel="stylesheet" href="../assets/swardbook.css"><script src="../{SCRIPT}" defer></script><body class="md-typeset" data-md-color-scheme="default">'
        f'<article class="md-content__inner md-typeset">{body}</article>{scripts}</body></html>'
    )


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """Pages of calculators as the site has them, and one with a calculator embedded as in a guide."""
    made = tmp_path_factory.mktemp("lawn")
    for path, text in asset_files().items():
        (made / path).parent.mkdir(parents=True, exist_ok=True)
        (made / path).write_text(text, encoding="utf-8")
    (made / "assets" / "calculators").mkdir()
    (made / "calculators").mkdir()
    for id in PAGES:
        (made / "assets" / "calculators" / f"{id}.js").write_text(calculator_script(id, BOOK.calculators[id]), encoding="utf-8")
        page = calculator_page(BOOK, id, here(f"calculators/{id}"))
        (made / "calculators" / f"{id}.html").write_text(html(render("pages/calculator/calculator.html.j2", page.context)), encoding="utf-8")
    names = ("../assets/calculator.js", "../assets/calculators/granular-feed.js", LAWN)
    scripts = "".join(f'<script src="{name}" defer></script>' for name in names)
    (made / "calculators" / "embedded.html").write_text(html("<h1>Guide</h1>" + component("granular-feed", "step"), scripts), encoding="utf-8")
    return made


@pytest.fixture
def opened(browser, folder):
    """Opens a page by name in one window; the test fails on any script error."""
    errors: list[str] = []
    contexts = []

    def open_page(name: str, before: str = "", **window):
        if not contexts or window:
            contexts.append(browser.new_context(**window))
            page = contexts[-1].new_page()
            page.set_default_timeout(5000)
            page.on("pageerror", lambda error: errors.append(str(error)))
            if before:
                page.add_init_script(before)
        page = contexts[-1].pages[0]
        page.goto((folder / "calculators" / f"{name}.html").as_uri())
        return page

    yield open_page
    for context in contexts:
        context.close()
    assert errors == []


def part(page, name: str):
    return page.locator(f"[data-part={name}]")


def add(page, hole: bool = False, **sizes: str):
    for name, text in sizes.items():
        entry(page, name).fill(text)
    page.get_by_role("button", name="Take away from the lawn" if hole else "Add to the lawn").click()


def rows(page) -> list[str]:
    return [" ".join(text.split()) for text in page.locator(".sb-lawn-pieces__piece").all_inner_texts()]


def two_rectangles_and_a_triangular_hole(opened):
    """12 x 8 = 96 and 16 x 10 = 160 m2; of that half of 8 x 4 = 16 m2 is not grass: 240 m2 of lawn."""
    page = opened("area-rectangle")
    add(page, length="12", width="8")
    add(page, length="16", width="10 m")
    page = opened("area-triangle")
    add(page, hole=True, base="8", height="4")
    return page


def test_the_sum_of_pieces_feeds_another_calculator(opened):
    """240 m2 at 1.5 kg/100 m2 are 3.6 kg."""
    page = two_rectangles_and_a_triangular_hole(opened)
    assert part(page, "answered").inner_text() == "Triangle, 8 m × 4 m, is taken away: 16 m². The lawn is now 240 m², of 3 pieces."
    assert rows(page) == [
        "+ Added: Rectangle 12 m × 8 m 96 m² Remove piece 1: Rectangle, 12 m × 8 m",
        "+ Added: Rectangle 16 m × 10 m 160 m² Remove piece 2: Rectangle, 16 m × 10 m",
        "− Taken away: Triangle 8 m × 4 m 16 m² Remove piece 3: Triangle, 8 m × 4 m",
    ]
    assert part(page, "figure").inner_text() == "240 m²" and part(page, "other").inner_text() == "2583.3 ft²"
    page.get_by_label("Use 240 m² in").select_option(label="Granular feed")
    part(page, "open").click()
    assert page.url.endswith("granular-feed.html#v=1&area=240+m2")
    expect(entry(page, "area")).to_have_value("240")
    assert figure(page, "product") == "3.6 kg"
    assert page.locator(".sb-lawn-pieces__from").inner_text() == "from the lawn of 3 pieces"


def test_a_button_beside_the_area_fills_it_in_in_the_unit_of_the_field(opened):
    """240 m2 / 0.09290304 m2/ft2 (NIST SP 811) = 2583.34 ft2."""
    two_rectangles_and_a_triangular_hole(opened)
    for name in ("granular-feed", "embedded"):
        page = opened(name)
        come_from = page.locator(".sb-lawn-pieces__from")
        assert entry(page, "area").input_value() == "100" and come_from.inner_text() == ""
        page.get_by_role("button", name="Use the lawn: 240 m²").click()
        assert entry(page, "area").input_value() == "240" and figure(page, "product") == "3.6 kg"
        assert come_from.inner_text() == "from the lawn of 3 pieces"
        assert come_from.get_attribute("id") in entry(page, "area").get_attribute("aria-describedby")
        page.locator('[data-input="area"] select').select_option("ft2")
        assert come_from.inner_text() == ""  # 240 ft2 are not the lawn.
        page.get_by_role("button", name="Use the lawn").click()
        assert entry(page, "area").input_value() == "2583.34" and figure(page, "product") == "3.6 kg"
        entry(page, "area").fill("300")
        assert come_from.inner_text() == ""
        page.evaluate("window.localStorage.removeItem('swardbook.unit.granular-feed.area.metric')")


def test_a_reload_keeps_the_lawn_and_a_new_one_clears_it(opened):
    page = two_rectangles_and_a_triangular_hole(opened)
    page.reload()
    assert len(rows(page)) == 3 and part(page, "figure").inner_text() == "240 m²"
    page.get_by_role("button", name="Remove piece 2").click()
    # 96 less 16.
    assert part(page, "done").inner_text() == "Rectangle, 16 m × 10 m, is off the list. The lawn is now 80 m², of 2 pieces."
    assert page.evaluate("document.activeElement.textContent") == "Put it back"
    page.keyboard.press("Enter")
    assert part(page, "figure").inner_text() == "240 m²"
    page.get_by_role("button", name="Start a new lawn").click()
    assert rows(page) == [] and part(page, "none").is_visible()
    page.get_by_role("button", name="Put it back").click()
    assert len(rows(page)) == 3
    page.get_by_role("button", name="Start a new lawn").click()
    page = opened("granular-feed")
    assert page.get_by_role("button", name="Use the lawn").count() == 0


def test_a_triangle_that_cannot_be_is_named_with_its_side(opened):
    """8 m cannot meet across 3 + 4 = 7 m."""
    page = opened("area-triangle-sides")
    for sides, longest in ((("8", "4", "3"), "first"), (("3", "8", "4"), "second"), (("3", "4", "8"), "third")):
        add(page, **dict(zip(("first_side", "second_side", "third_side"), sides, strict=True)))
        assert part(page, "answered").inner_text() == (
            f"Triangle by its sides, {' × '.join(f'{side} m' for side in sides)}, cannot be added. These sides cannot make a triangle, "
            f"because the {longest} is as long as the other two together, or longer. Measure it again."
        )
        assert rows(page) == []


def test_a_shape_without_an_answer_is_refused_in_its_own_words(opened):
    page = opened("area-rectangle")
    for length, width, sentence in (
        ("banana", "8", "banana × 8 m, cannot be added. Length: 'banana' is not a quantity; write one such as 2.5."),
        ("12", "0", "12 m × 0 m, cannot be added. Width: width must be more than 0 m; 0 m was given."),
        ("100000 km", "100000 km", "100000 km × 100000 km, cannot be added. It is too large for a lawn."),
    ):
        add(page, length=length, width=width)
        assert part(page, "answered").inner_text() == f"Rectangle, {sentence}" and rows(page) == []


def test_holes_larger_than_the_pieces_are_told_and_feed_nothing(opened):
    page = opened("area-rectangle")
    add(page, length="3", width="2")
    add(page, hole=True, length="5", width="2")
    assert part(page, "problem").inner_text() == (
        "More is taken away (10 m²) than the pieces hold (6 m²). A piece is missing, or a hole is counted twice."
    )
    assert not part(page, "hand-on").is_visible()
    assert opened("granular-feed").get_by_role("button", name="Use the lawn").count() == 0
    page = opened("area-rectangle")
    add(page, length="2", width="2")  # 6 + 4 - 10.
    assert part(page, "problem").inner_text() == "Nothing is left. Check the pieces and the holes."


def test_a_property_in_us_units(opened):
    """University of Maryland, calculating turf area: 130 ft x 67 ft, a triangle of two legs of 20 ft and a piece of 500 ft2 are
    8710 + 200 + 500 = 9410 ft2; less 4857.5 ft2 that is not lawn, here typed as 97.15 ft x 50 ft, 4552.5 are left."""
    page = opened("area-rectangle")
    page.evaluate("Swardbook.preferences.set('units', 'us')")
    add(page, length="130", width="67")
    add(page, length="25", width="20")
    page = opened("area-triangle")
    add(page, base="20", height="20")
    assert part(page, "figure").inner_text() == "9410 ft²"
    assert rows(page)[0].startswith("+ Added: Rectangle 130 ft × 67 ft 8710 ft²")
    page = opened("area-rectangle")
    add(page, hole=True, length="97.15", width="50")
    assert part(page, "figure").inner_text() == "4552.5 ft²"
    page.get_by_label("Use 4552.5 ft² in").select_option(label="Granular feed")
    part(page, "open").click()
    expect(entry(page, "area")).to_have_value("4552.5")
    assert page.locator('[data-input="area"] select').input_value() == "ft2"
    assert page.get_by_role("button", name="Use the lawn: 4552.5 ft²").is_visible()
    page.evaluate("Swardbook.preferences.set('units', 'metric')")
    # 4552.5 x 0.09290304 = 422.94 m2.
    assert page.get_by_role("button", name="Use the lawn: 422.9 m²").is_visible()


def test_an_input_that_stays_as_it_is_goes_unsaid(opened):
    """8 m across: 4 x 4 x pi = 50.27 m2; half of it 25.13."""
    page = opened("area-circle")
    add(page)
    page.get_by_text("More", exact=True).click()
    add(page, share="50")
    assert [row.split(" Remove")[0] for row in rows(page)] == [
        "+ Added: Circle 8 m 50.3 m²", "+ Added: Circle Distance across the full circle: 8 m; How much of the circle: 50 % 25.1 m²",
    ]


PIECE = {"name": "Rectangle", "sizes": "12 m × 8 m", "area": 96, "hole": False}
AMISS = [
    {"area": -1}, {"area": 0}, {"area": "96"}, {"area": None}, {"area": 1e12}, {"hole": 1}, {"hole": None}, {"name": ""}, {"name": 5},
    {"name": "x" * 81}, {"sizes": "x" * 161}, {"sizes": {"toString": "x"}}, {"name": ["<b>"]},
]  # fmt: skip
HOSTILE = [
    "{", "null", "[]", "17", '"text"', "{}", '{"v": 1}', '{"v": "1", "pieces": []}', '{"v": 1, "pieces": [null]}',
    '{"v": 1, "pieces": [[]]}', json.dumps({"v": 1, "pieces": {"0": PIECE}}), "x" * 70000, "[" * 50000,
    '{"v": 1, "pieces": [{"name": "R", "sizes": "", "area": 1e999, "hole": false}]}',
    *(json.dumps({"v": 1, "pieces": [PIECE, {**PIECE, **wrong}]}) for wrong in AMISS),
]  # fmt: skip


def test_damaged_storage_is_set_aside_and_a_sound_piece_stays(opened):
    page = opened("area-rectangle")
    for kept in HOSTILE:
        # As if another window had written it; each is read afresh.
        page.evaluate("""kept => {
          window.localStorage.clear();
          window.localStorage.setItem('swardbook.lawn', kept);
          window.dispatchEvent(new StorageEvent('storage', {key: null}));
        }""", kept)
        assert "could not be read" in page.locator(".sb-kept--aside").inner_text(), kept[:80]
        assert len(rows(page)) == kept.startswith('{"v": 1, "pieces": [{"name": "Rectangle"'), kept[:80]
        assert page.evaluate("window.localStorage.getItem('swardbook.aside.swardbook.lawn.1')") == kept
    page.reload()
    add(page)
    assert part(page, "figure").inner_text() == "192 m²"


def test_a_lawn_of_another_version_is_set_aside_and_says_so(opened):
    page = opened("area-rectangle")
    page.evaluate("kept => window.localStorage.setItem('swardbook.lawn', kept)", json.dumps({"v": 2, "lawns": {}}))
    page.reload()
    assert "from another edition of the book" in page.locator(".sb-kept--aside").inner_text() and rows(page) == []


def test_markup_in_storage_stays_text(opened):
    page = opened("area-rectangle")
    hostile = {**PIECE, "name": "<img src=x onerror=alert(1)>", "sizes": "</li><script>alert(1)</script>", "__proto__": 1}
    page.evaluate("kept => window.localStorage.setItem('swardbook.lawn', kept)", json.dumps({"v": 1, "pieces": [hostile]}))
    page.reload()
    assert "<img src=x onerror=alert(1)> </li><script>alert(1)</script>" in rows(page)[0]
    assert page.locator(".sb-lawn-pieces img, .sb-lawn-pieces script").count() == 0


def test_without_storage_the_lawn_lasts_as_long_as_the_page_and_says_so(opened):
    refused = "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('refused', 'SecurityError'); } });"
    page = opened("area-rectangle", before=refused)
    notice = "This browser keeps nothing for this page. What you wrote stays on this page until you close it."
    assert page.locator(".sb-kept--now").inner_text() == notice
    add(page)
    add(page)
    assert part(page, "figure").inner_text() == "192 m²" and notice in page.locator(".sb-kept--now").inner_text()


def test_a_lawn_changed_in_another_window_shows_here(opened):
    page = opened("area-rectangle")
    other = page.context.new_page()
    other.goto(page.url)
    add(other)
    expect(part(page, "figure")).to_have_text("96 m²")


def test_without_scripts_the_section_says_so_and_offers_nothing_dead(opened):
    page = opened("area-rectangle", java_script_enabled=False)
    assert "Scripts are off, so no pieces can be kept here." in page.locator(".sb-lawn-pieces").inner_text()
    assert page.locator(".sb-lawn-pieces button:visible, .sb-lawn-pieces select:visible").count() == 0


def test_it_fits_a_telephone_and_a_glove(opened):
    opened("area-rectangle", viewport={"width": 360, "height": 700})
    page = two_rectangles_and_a_triangular_hole(opened)
    page.get_by_role("button", name="Remove piece 1").click()
    page.get_by_role("button", name="Put it back").click()
    for name in ("area-triangle", "granular-feed"):
        page = opened(name)
        assert page.evaluate("document.documentElement.scrollWidth") <= 360
        ours = page.locator(".sb-lawn-pieces, .sb-lawn-pieces__add, .sb-lawn-pieces__beside")
        heights = ours.locator("button:visible, select:visible, a:visible, summary:visible").evaluate_all(
            "all => all.map(each => each.offsetHeight)"
        )
        assert heights and min(heights) >= 44


def test_the_list_prints_on_the_card_without_its_buttons(opened):
    page = two_rectangles_and_a_triangular_hole(opened)
    page.evaluate("window.print = () => {}")
    page.locator(".sb-calculator__share [data-part=print]").click()
    sheets = PdfReader(io.BytesIO(page.pdf(format="A5"))).pages
    printed = " ".join(sheets[0].extract_text().split())
    assert len(sheets) == 1
    for words in ("The lawn so far", "16 m × 10 m", "240 m²"):
        assert words in printed
    for words in ("Remove", "Add to the lawn", "Start a new lawn", "Granular feed", "Measure a lawn"):
        assert words not in printed


def test_an_empty_lawn_prints_nothing(opened):
    printed = PdfReader(io.BytesIO(opened("area-rectangle").pdf(format="A4"))).pages
    assert "The lawn so far" not in " ".join(sheet.extract_text() for sheet in printed)


def test_only_pages_that_use_it_load_its_script():
    """Its own file: neither a part of what every page loads nor of the calculators' budget."""
    assert not [name for name, _ in component_assets()[1] if name.startswith("lawn-pieces")]
    assert list(own_scripts()).count("assets/lawn-pieces.js") == 1
    for id, calculator in BOOK.calculators.items():
        context = calculator_page(BOOK, id, here(f"calculators/{id}")).context
        assert (LAWN in context["scripts"]) == (gives_a_piece(calculator) or takes_an_area(calculator))
        assert (context["lawn"] is not None) == gives_a_piece(calculator)
    assert LAWN in guide_page(BOOK, "kikuyu", here("renovate/kikuyu"), {}).context["scripts"]
    assert LAWN in task_page(BOOK, "feed", here("tasks/feed")).context["scripts"]
    assert LAWN not in task_page(BOOK, "pre-emergent", here("tasks/pre-emergent")).context["scripts"]


def test_a_piece_is_called_by_its_shape():
    named = {id: piece_name(BOOK.calculators[id]) for id in ("area-rectangle", "area-ellipse", "area-triangle-sides", "area-polygon")}
    assert list(named.values()) == ["Rectangle", "Oval", "Triangle by its sides", "Area by corner points"]
