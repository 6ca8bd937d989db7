"""What a reader should know of a place's record: what follows from its figures, said in one way, and its own notes."""

from generator.book.records.place import Place

# Normals that end here or earlier are from cooler years than ours.
LAST_YEAR_OF_COOLER_NORMALS = 2010


def place_notes(place: Place) -> list[str]:
    """Sentences: how frost was found, how short the record is, and what the place's file adds."""
    normals, said = place.normals, []
    if normals.frost_days is None:
        said.append(
            "This record counts no frost nights. They are worked out from the mean minima, by a rule made for Australian stations. They may be out by "
            "a night a month, and the last frost may come up to four weeks earlier than given here."
        )
    if normals.years_of_each_month:
        fewest, most = normals.years_of_each_month
        years = f"{fewest} to {most}" if fewest != most else f"{most}"
        said.append(f"The record is short, with {years} years of each month. One warm or cold year makes a difference.")
        if normals.rain_source is None:
            said.append("Its rain is from the same few years. At some stations those were wet years, up to a third above the mean of 30 years.")
    if normals.last_year <= LAST_YEAR_OF_COOLER_NORMALS:
        said.append(f"The means end in {normals.last_year}. Today is warmer by up to 1 °C, so spring comes earlier and autumn later than given here.")
    return [*said, *place.notes]
