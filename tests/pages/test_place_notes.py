"""A place's page says what its record lacks: once, in one way, from the figures themselves."""


from generator.site.year.place_notes import place_notes
from tests.our_book import book

PLACES = book().places


def said(place: str) -> str:
    return " ".join(place_notes(PLACES[place]))


def test_frost_that_nobody_counted_is_said_to_be_worked_out():
    assert "no frost nights" in said("auckland")
    assert "no frost nights" not in said("ballarat")


def test_a_short_record_says_how_many_years():
    assert "8 to 9 years of each month" in said("ballarat")
    assert "short" not in said("armidale")


def test_rain_of_few_years_is_said_only_where_rain_is_of_those_years():
    assert "same few years" in said("ballarat")
    assert "same few years" not in said("sydney")


def test_normals_of_cooler_years_say_so():
    assert "warmer by up to 1 °C" in said("phoenix")
    assert "warmer" not in said("oxford")
