"""What a number of a book may be by what it means: the one table of it, for checks, for messages and for the schemas of an editor.

Outside what is possible it is a mistake, and refused at its line; outside what is usual it may be so, and is warned of. What any quantity
may be, whatever it means, stands in `units/bounds.py`.
"""

from fnmatch import fnmatchcase
from functools import cache
from typing import NamedTuple

from generator.units import Unit, unit


class Plausible(NamedTuple):
    """unit: that of the four ends, 1 for a plain number. why: the reason for them, fit to follow a colon."""

    unit: str
    lowest: float
    highest: float
    usual_low: float
    usual_high: float
    why: str

    @property
    def possible(self) -> str:
        """What may stand here, for an author: 1 to 500 mm."""
        return amount(f"{self.lowest:.12g} to {self.highest:.12g}", self.unit)

    @property
    def usual(self) -> str:
        """What stands here as a rule."""
        return amount(f"{self.usual_low:.12g} to {self.usual_high:.12g}", self.unit)

    @property
    def told(self) -> str:
        """All of it in a sentence, for whoever writes the file in an editor."""
        rule = "" if (self.usual_low, self.usual_high) == (self.lowest, self.highest) else f", as a rule {self.usual}"
        return f"May be {self.possible}{rule}: {self.why}."

    def reason(self, value: float) -> str:
        """Why a number cannot stand here, or seldom does."""
        return "nothing is less than none" if value < 0 == self.lowest else self.why

    def refusal(self, given: str, name: str, value: float) -> tuple[str, str]:
        """What is wrong with an impossible figure, and what would be right. given: as it stands in the file, with its unit."""
        return f"{given} is out of the question for '{name}': {self.reason(value)}", f"give {self.possible}"

    def allows(self, value: float) -> bool:
        """Whether a number in `unit` is possible, both ends included however they were rounded."""
        return _within(value, self.lowest, self.highest)

    def expects(self, value: float) -> bool:
        """Whether a number in `unit` is usual."""
        return _within(value, self.usual_low, self.usual_high)


def _within(value: float, lowest: float, highest: float) -> bool:
    return lowest - 1e-9 * abs(lowest) <= value <= highest + 1e-9 * abs(highest)


def amount(number: str, spelling: str) -> str:
    """A number with its unit, where it has one to be said."""
    if spelling in ("1", MONEY):
        return number
    return f"{number} {spelling}{'s' if spelling in ('day', 'week') and number != '1' else ''}"


MONEY = "money"  # A unit of the practice's own currency.
# The rainiest month on record, 9300 mm at Cherrapunji in July 1861: World Record Point Precipitation Measurements, Hydrometeorological
# Design Studies Center of the National Weather Service, http://www.nws.noaa.gov/oh/hdsc/record_precip/record_precip_world.html (2014).
# The figure is from memory; the page itself could not be read.
RAINIEST_MONTH_MM = 9300

PLAUSIBLE: dict[str, Plausible] = {
    # What is cut, and how it grows.
    "height of grass": Plausible("mm", 1, 500, 3, 150, "no mower cuts into the ground, and grass of half a metre is a meadow"),
    "width of a leaf": Plausible("mm", 0.1, 50, 0.2, 15, "a turfgrass has leaves from a hair to a finger in width"),
    "depth of thatch": Plausible("mm", 1, 200, 5, 40, "a lawn's thatch is counted in millimetres and acted on before it is a hand deep"),
    "days to sprout": Plausible("day", 1, 120, 2, 60, "seed takes days to sprout, and what has not come up in four months is dead"),
    "weeks of recovery": Plausible("week", 0.1, 104, 1, 26, "a lawn that has not grown in after two years of growing weather is gone"),
    "best growing temperature": Plausible("°C", 5, 45, 12, 38, "grass grows best well above freezing, and nothing grows at 45 °C"),
    "base temperature of growth": Plausible("°C", -5, 25, 0, 18, "growth of grass stops somewhere between freezing and a cool room"),
    "spread of growth": Plausible("K", 0.5, 30, 3, 12, "growth falls off over some degrees on either side of its best"),
    "killing cold": Plausible("°C", -70, 5, -45, -2, "it is frost that kills grass in winter"),
    "growth of leaf": Plausible("mm/day", 0.1, 60, 1, 20, "a lawn in full growth gains millimetres a day"),
    "share of growth": Plausible("1", 0, 1, 0, 1, "a share is a part of one"),
    "whole share of growth": Plausible("1", 0.01, 1, 0.2, 1, "a share is a part of one, and more than nothing"),
    # What goes on.
    "nitrogen of a year": Plausible("g/m2", 0, 100, 1, 50, "no grass takes up 100 g/m2 in a year, and most lawns get 5 to 35"),
    "nitrogen of one feed": Plausible("g/m2", 0, 25, 0.5, 10, "more than 5 g/m2 at once burns leaves or is washed out"),
    "rate of a product": Plausible("kg/100 m2", 0.01, 500, 0.2, 100, "a feed goes on by the kilogram to 100 m2"),
    "rate of lime": Plausible("g/m2", 1, 2000, 20, 800, "lime goes on by the handful to a square metre, some tonnes to the hectare"),
    "rate of seed": Plausible("g/m2", 0.1, 500, 0.5, 120, "seed of grass goes on by the gram to a square metre, a handful at most"),
    "depth of sand": Plausible("mm", 0.1, 150, 0.5, 40, "sand is spread in millimetres, so that the leaf still stands out of it"),
    "mass of sand": Plausible("kg/m2", 0.1, 200, 0.5, 20, "a millimetre of sand weighs about 1.5 kg/m2"),
    "depth of water": Plausible("mm", 0, 500, 0, 100, "a watering is counted in millimetres"),
    "volume on an area": Plausible("L/m2", 0, 500, 0, 100, "what is strewn or poured on a lawn is some litres to a square metre"),
    "share of a nutrient": Plausible("%", 0, 100, 0, 65, "no product is more than itself, and the strongest feeds hold about 60 %"),
    "part of a whole": Plausible("%", 0, 100, 0, 100, "a part is no more than the whole"),
    "part by mass": Plausible("1", 0.05, 1, 0.2, 0.95, "an element is a part of its oxide's mass"),
    "share of what evaporates": Plausible("1", 0.02, 3, 0.2, 1.5, "turf uses about as much water as evaporates, seldom twice as much"),
    "share of soil water": Plausible("1", 0.01, 1, 0.1, 0.8, "a lawn is watered after some of the soil's water is used and before all of it is"),
    # What is done to the soil.
    "depth in the ground": Plausible("mm", 0, 1000, 0, 400, "tines, blades and spades of a lawn reach a hand or two deep"),
    "spacing": Plausible("mm", 1, 2000, 3, 500, "holes, slits and rows of a lawn stand a finger to a stride apart"),
    "thickness of a tine or blade": Plausible("mm", 0.3, 100, 0.5, 30, "what cuts or pricks a lawn is as thin as a coin or as wide as a thumb"),
    "width of a gate": Plausible("mm", 100, 20_000, 400, 5000, "a gate lets a person through, or a truck"),
    "width of a strip": Plausible("m", 0.01, 200, 0.1, 50, "a strip that is left out is a few strides wide"),
    "holes to an area": Plausible("/m2", 1, 20_000, 20, 3000, "tines make some hundred holes in a square metre"),
    "insects in an area": Plausible("/m2", 0.1, 2000, 1, 500, "so many grubs do not fit under a square metre of turf"),
    "share of water in soil": Plausible("1", 0.005, 0.6, 0.02, 0.3, "soil is mostly solid: sand holds 0.05 to 0.1 of its depth for plants, clay 0.2"),
    "intake of soil": Plausible("mm/h", 0.01, 5000, 0.5, 500, "wet clay takes in a millimetre in an hour, coarse sand some hundred"),
    "depth of roots": Plausible("mm", 10, 3000, 50, 1000, "a lawn drinks from the upper hand or two of soil"),
    "depth of a soil thermometer": Plausible("mm", 1, 5000, 20, 500, "soil temperature for turf is read within a hand's depth"),
    "diffusivity of soil": Plausible("m2/h", 3.6e-6, 0.36, 0.0004, 0.006, "soils lie between dry sand and wet clay, 0.0007 to 0.004 m2/h"),
    "water between leaves": Plausible("mm", 0, 200, 0, 20, "turf holds back some millimetres of water before it runs off"),
    "acidity of soil": Plausible("1", 1, 13, 3.5, 10, "pH runs from 0 to 14, and no soil reaches either end"),
    # Temperatures and other rules of the season.
    "temperature of a rule": Plausible("°C", -30, 60, -5, 45, "grass meets air and soil from hard frost to a desert's afternoon"),
    "soil temperature of a rule": Plausible("°C", -10, 45, 0, 32, "soil under turf seldom freezes deep and never bakes"),
    "frost reading": Plausible("°C", -10, 10, -1, 5, "frost forms at about 0 °C, by a thermometer in the air a little above it"),
    "night of a rule": Plausible("°C", -20, 40, 5, 30, "seed of ryegrass and waking grass go by mild nights"),
    "heat of a rule": Plausible("°C", 10, 60, 18, 45, "heat is what harms turf: above a warm day, below what was ever measured"),
    "offset of a site": Plausible("K", -15, 15, -6, 6, "a wall or a hollow is some degrees warmer or colder than open ground"),
    "share at a site": Plausible("1", 0.02, 5, 0.3, 1.6, "shade and wind change what evaporates by a half, not by ten times"),
    "spread of nights": Plausible("K", 0.1, 20, 0.5, 8, "nights of a month lie some degrees about their mean"),
    "spread to the range": Plausible("1", 0, 2, 0, 0.6, "nights vary by a small part of the yearly range"),
    "likeness of nights": Plausible("1", 0, 0.98, 0.2, 0.95, "one night is like the last, but not the same"),
    "spread of years": Plausible("K", 0, 20, 0, 4, "whole seasons differ by a degree or two"),
    "step of reading": Plausible("K", 0, 5, 0, 1, "a thermometer is read to a degree or finer"),
    "turn of summer": Plausible("K", 0, 20, 0.1, 5, "high summer is within a degree or two of the year's highest mean"),
    "days of sleep": Plausible("day", 1, 365, 20, 250, "a dormancy is a part of a year"),
    "days of a season": Plausible("day", 1, 120, 5, 60, "a season runs some weeks early or late, never months"),
    "change of soil in a week": Plausible("K", 0, 10, 0.1, 1.5, "soil warms by a degree or so in a week of spring"),
    "weeks of a year": Plausible("week", 0, 52, 0, 30, "a year has 52 weeks"),
    "rain against need": Plausible("1", 0.01, 5, 0.1, 2, "a summer is moist where rain makes up a good part of what evaporates"),
    "times what evaporates": Plausible("1", 0, 20, 0.5, 6, "it is wet where rain is some times what evaporates"),
    "times the recovery": Plausible("1", 1, 20, 1.5, 10, "a recovery that is stretched more than that is none"),
    "rain of a wet day": Plausible("mm/day", 0, 1000, 0.5, 60, "a wet season has some millimetres a day"),
    "runs in a morning": Plausible("1", 1, 20, 1, 8, "a sprinkler is rested a few times in a morning"),
    # Places and their months.
    "latitude": Plausible("deg", -90, 90, -60, 66, "the poles are at 90 degrees, and no lawn is kept near them"),
    "longitude": Plausible("deg", -180, 180, -180, 180, "half round the world is 180 degrees"),
    "elevation": Plausible("m", -430, 6000, 0, 2600, "the shore of the Dead Sea lies at -430 m, and nobody lives much above 5000 m"),
    "temperature of a month": Plausible("°C", -90, 60, -35, 46, "no air colder than -90 °C or hotter than 60 °C was ever measured"),
    "rain of a month": Plausible("mm", 0, RAINIEST_MONTH_MM, 0, 1200, "the rainiest month on record had 9300 mm, at Cherrapunji in July 1861"),
    "pan evaporation": Plausible("mm", 0, 60, 0, 20, "a pan in a desert loses about 15 mm in a day"),
    "hours of sunshine": Plausible("h", 0, 24, 0, 16, "a day has 24 hours"),
    "humidity": Plausible("%", 0, 100, 5, 98, "air holds no more than all the vapour it can"),
    "days of a month": Plausible("day", 0, 31, 0, 31, "a month has at most 31 days"),
    "spread of a month": Plausible("°C", 0, 40, 0.5, 10, "minima of a month lie some degrees about their mean"),
    "step of a record": Plausible("°C", 0.001, 1, 0.01, 1, "temperatures are printed to a degree, a tenth or a hundredth"),
    "year of a record": Plausible("1", 1700, 2100, 1880, 2100, "stations with a screened thermometer begin about 1880"),
    "year of a text": Plausible("1", 1700, 2100, 1900, 2100, "what is older is no guide to turf"),
    "years of a month": Plausible("1", 1, 300, 3, 60, "a mean is of some years"),
    "edge of a country": Plausible("deg", -90, 90, -90, 90, "the poles are at 90 degrees"),
    "side of a country": Plausible("deg", -180, 180, -180, 180, "half round the world is 180 degrees"),
    # The practice: what it buys, drives and charges.
    "mass of a pack": Plausible("kg", 0.001, 50_000, 0.05, 2000, "a pack is from a sachet to a loose tonne or two"),
    "volume of a pack": Plausible("L", 0.001, 50_000, 0.05, 2000, "a pack is from a bottle to a loose cubic metre or two"),
    "width of work": Plausible("m", 0.01, 30, 0.1, 6, "a machine for lawns is narrower than the gate it comes through"),
    "speed of work": Plausible("km/h", 0.01, 60, 0.05, 15, "a machine is walked behind or ridden slowly"),
    "overlap": Plausible("%", 0, 99, 0, 50, "passes that go over each other whole get nowhere"),
    "time at work": Plausible("%", 0.1, 100, 5, 100, "no machine works more than all of its time"),
    "minutes of setting up": Plausible("min", 0, 600, 0, 180, "what takes more than a morning to set up is a job of its own"),
    "minutes of work": Plausible("min", 0, 10000, 0, 600, "what takes longer than a long day is told as several steps"),
    "people on a job": Plausible("1", 1, 50, 1, 12, "a lawn has room for a handful of people"),
    "price of a pack": Plausible(MONEY, 0, 1_000_000, 0, 3000, "a pack for lawns costs less than a machine"),
    "price of an hour": Plausible(MONEY, 0, 1_000_000, 0, 600, "an hour of work or of a machine costs less than a day's hire of both"),
    "price of a day": Plausible(MONEY, 0, 1_000_000, 0, 5000, "a machine that costs more for a day is bought"),
    "price of work": Plausible(MONEY, 0, 1_000_000, 0, 8000, "100 m2 of lawn can be laid anew for less"),
    "price of a cubic metre": Plausible(MONEY, 0, 1_000_000, 0, 2000, "carting and tipping costs less than good soil"),
    "volume of a bag": Plausible("L", 0.5, 10_000, 10, 2000, "a person carries a bag, or a truck lifts it"),
    "volume of a trailer": Plausible("m3", 0.01, 200, 0.2, 40, "a truck with sides holds some 40 m3"),
    "tax on a sale": Plausible("%", 0, 100, 0, 30, "no sales tax is far above a quarter"),
    "deposit": Plausible("%", 0, 100, 0, 75, "a deposit is a part of the price"),
    "days to pay": Plausible("day", 0, 365, 0, 90, "an invoice is due within weeks"),
    "days of an estimate": Plausible("day", 1, 365, 3, 180, "prices do not hold for a year"),
    "days ahead": Plausible("day", 0, 120, 0, 60, "what is booked earlier is forgotten"),
    # Plans and their days.
    "days that it lasts": Plausible("day", 1, 120, 1, 60, "what was made ready for a job is no longer ready when the grass has grown again"),
    "day of a plan": Plausible("day", -180, 365, -120, 365, "a plan runs over one season before and after its day"),
    "last day of a plan": Plausible("day", -180, 400, -120, 250, "a plan runs over one season before and after its day"),
    "days waited": Plausible("day", 0, 400, 0, 120, "a step that waits longer is another plan's"),
    "day of aftercare": Plausible("day", 0, 180, 0, 180, "a lawn is handed back within half a year"),
    "times a day": Plausible("1", 1, 6, 1, 5, "a lawn is watered a few times a day at most"),
    "days between": Plausible("day", 1, 14, 1, 14, "new grass is not left dry for weeks"),
    "weeks between": Plausible("week", 1, 52, 1, 52, "a year has 52 weeks"),
    "times a year": Plausible("1", 1, 52, 1, 30, "a year has 52 weeks"),
    "levels": Plausible("1", 1, 3, 1, 3, "there are three levels between hard and none"),
    "decimals": Plausible("1", 0, 6, 0, 5, "nobody measures a lawn to a millionth"),
    "hours": Plausible("h", 0, 500, 0, 96, "what is said in minutes or hours is done within days"),
    "hours of a day": Plausible("h", 0, 24, 0, 18, "a day has 24 hours"),
    "times": Plausible("1", 0, 500, 0, 60, "nothing on a lawn is done or counted so many times"),
}
# Figures that carry a name of the author's own, as "kind.record.name"; the first pattern that fits and has the unit's kind of quantity.
NAMED: tuple[tuple[str, str], ...] = (
    ("*.*feed*nitrogen*", "nitrogen of one feed"), ("*.*nitrogen-one-dressing*", "nitrogen of one feed"), ("*.*nitrogen*", "nitrogen of a year"),
    ("*.*light-dressing*", "nitrogen of one feed"), ("*.*phosphate-one-dressing*", "nitrogen of one feed"), ("renovations.*.feed-*", "nitrogen of one feed"),
    ("tasks.lime.*", "rate of lime"), ("*.*lime*", "rate of lime"), ("*.*pattern*", "rate of a product"), ("*.granule*", "rate of a product"),
    ("*.*full-rate*", "rate of a product"), ("*.*rate", "rate of seed"), ("*.mass-one-dressing", "mass of sand"),
    ("tasks.topdress.depth*", "depth of sand"), ("tasks.level.depth*", "depth of sand"), ("*.*water-in-depth*", "depth of water"),
    ("*.*weekly-depth*", "depth of water"), ("*.*watering*", "depth of water"), ("*.*rain*", "depth of water"), ("*.*thatch*", "depth of thatch"),
    ("*.*spacing*", "spacing"), ("*.*diameter*", "spacing"), ("*.*gap*", "spacing"), ("*.*depth*", "depth in the ground"),
    ("*.*thickness*", "depth in the ground"), ("*.*height*", "height of grass"), ("*.*low-cut*", "height of grass"), ("tasks.mow.*", "height of grass"),
    ("*.*gate*", "width of a gate"), ("*.*strip*", "width of a strip"), ("*.*holes*", "holes to an area"), ("*.*count", "insects in an area"),
    ("*.*in-phosphate", "part by mass"), ("*.*in-potash", "part by mass"), ("*.*crop-coefficient*", "share of what evaporates"),
    ("*.*frost*", "frost reading"), ("*.*soil*", "soil temperature of a rule"), ("*.*night-temperature*", "night of a rule"),
    ("*.*heat*", "heat of a rule"), ("*.*alkaline*", "acidity of soil"), ("*.*neutral*", "acidity of soil"), ("*.*sour*", "acidity of soil"),
    ("*.*sun*", "hours of a day"), ("tasks.*", "times"),
)  # fmt: skip
# And where no pattern fits, by the unit it is written in, or by its kind of quantity.
BY_UNIT = {"h": "hours", "min": "hours", "s": "hours"}
OF_QUANTITY: dict[str, Plausible] = {
    "a length": Plausible("m", 0, 20, 0, 10, "what is measured on a lawn is a few strides long"),
    "a time": Plausible("day", 0, 1830, 0, 800, "what is done to a lawn is over in some years"),
    "a temperature": PLAUSIBLE["temperature of a rule"],
    "a share": Plausible("%", 0, 900, 0, 100, "a part is seldom more than the whole, and never ten times as much"),
    "a speed": Plausible("km/h", 0, 200, 0, 60, "wind and wheels on a lawn are slower"),
    "a flow": Plausible("L/min", 0, 5000, 0, 500, "a garden tap gives 10 to 40 L/min"),
    "a pressure": Plausible("kPa", 0, 5000, 0, 1200, "a town main has 300 to 800 kPa"),
    "a mass per area": Plausible("kg/m2", 0, 200, 0, 30, "what is spread on a lawn lies centimetres deep at most"),
    "a volume per area": PLAUSIBLE["volume on an area"],
    "a number per area": Plausible("/m2", 0, 100_000, 0, 20_000, "so many do not fit on a square metre"),
    "a count": PLAUSIBLE["times"],
}


@cache
def meant_by(name: str, given: Unit) -> Plausible | None:
    """What a figure is held to that an author named: by its name, else its unit, else its kind of quantity; None where nothing tells.

    name: "tasks.core.depth". given: the unit it is written in.
    """
    for pattern, kind in NAMED:
        if fnmatchcase(name.replace("_", "-"), pattern) and unit(PLAUSIBLE[kind].unit).kind == given.kind:
            return PLAUSIBLE[kind]
    if given.spelling in BY_UNIT:
        return PLAUSIBLE[BY_UNIT[given.spelling]]
    # Parts per million may be of anything, and a count may be written in them.
    return None if given.kind == "a share" and given.spelling != "%" else OF_QUANTITY.get(given.kind)
