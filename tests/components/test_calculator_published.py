"""Levels that a soil report prints: the form waits for them, takes them typed, and fills in those of a public body by name."""

from tests.components.calculators import field, figure

ID = "soil-test-need"
WAITING = ".sb-calculator__notice[data-until-answered]"


def choose(page, words: str) -> None:
    select = page.locator("select[data-part=published]")
    select.select_option(label=next(each for each in select.locator("option").all_inner_texts() if words in each))


def test_nothing_is_said_of_an_element_before_its_level_stands_there(opened):
    page = opened(ID)
    assert page.locator(WAITING).is_visible()
    assert field(page, "potassium_level").input_value() == "" and figure(page, "potassium_need") == "–"
    field(page, "potassium_level").fill("70")
    # 150 kg of soil to the square metre: 20 ppm short are 3 g/m2, over four years 0.75.
    assert figure(page, "potassium_short") == "3 g/m²" and figure(page, "potassium_need") == "0.75 g/m²"
    assert figure(page, "phosphorus_need") == "–"


def test_published_levels_are_filled_in_by_name_and_may_be_typed_over(opened):
    page = opened(ID)
    choose(page, "high begins")
    # Rutgers prints 72 lb of phosphorus to the acre where high begins, at twice the ppm.
    assert field(page, "phosphorus_level").input_value() == "36"
    assert field(page, "sulphur_level").input_value() == "", "it prints no level for sulphur"
    assert figure(page, "potassium_short") == "3.45 g/m²"  # (146 / 2 - 50) ppm x 0.15 g/m2
    field(page, "potassium_level").fill("50")
    assert figure(page, "potassium_short") == "0 g/m²"


def test_a_link_of_before_opens_with_its_figures(opened):
    """The levels were not asked for then, so the reader types them now."""
    page = opened(ID)
    fragment = "#v=1&nitrogen_per_year=16+g/m2&soil_potassium=41+ppm&depth=10+cm&bulk_density=1.5+t/m3&soil_ph=6.5&potassium_to_nitrogen=50+%25&sulphur_to_nitrogen=10+%25"
    page.goto(page.url.split("#")[0] + fragment)
    page.reload()
    assert not page.locator("[data-part=damaged]").is_visible()
    assert field(page, "soil_potassium").input_value() == "41" and field(page, "nitrogen_per_year").input_value() == "16"
    assert page.locator(WAITING).is_visible()
