"""What the practice's file says of its products and gear can be so: an analysis of at most a whole, packs that can be lifted."""

from collections.abc import Iterator
from math import fsum

from generator.book.book import PartialBook
from generator.book.fields.plausible import PLAUSIBLE
from generator.book.records.practice import Practice, Product
from generator.checks.check import Check
from generator.findings import Finding

NUTRIENTS = {"nitrogen_percent": "N", "phosphate_percent": "P2O5", "potash_percent": "K2O"}
# From dry peat to iron sulphate with room to spare.
LIGHTEST_KG_PER_L, HEAVIEST_KG_PER_L = 0.02, 6


def nitrogen_at_full_rate(product: Product) -> float | None:
    """What the rate on the bag brings [g/m2]; a kilogram to 100 m2 is 10 g/m2."""
    if product.full_rate_kg_per_100_m2 is None or product.nitrogen_percent is None:
        return None
    return product.full_rate_kg_per_100_m2 * 10 * product.nitrogen_percent / 100


def _check(book: PartialBook) -> Iterator[Finding]:
    if book.practice is None:
        return
    for id, product in book.practice.products.items():
        for key, what, instead in _product(product):
            yield Finding(book.where("practice", "practice", "products", id, key), what, instead)
    yield from _trailer(book, book.practice)


def _product(product: Product) -> Iterator[tuple[str, str, str]]:
    given = {key: value for key in NUTRIENTS if (value := getattr(product, key)) is not None}
    whole = fsum(given.values())
    if whole > 100:
        names = " + ".join(NUTRIENTS[key] for key in given)
        yield list(given)[-1], f"{names} are {whole:g} %, and no product is more than itself", "give what its bag prints, as parts of 100"
    mass, volume = product.pack_mass_kg, product.pack_volume_l
    if mass is not None and volume is not None and not LIGHTEST_KG_PER_L <= mass / volume <= HEAVIEST_KG_PER_L:
        what = f"{mass:g} kg in {volume:g} L are {mass / volume:.3g} kg a litre"
        yield "pack_volume_l", what, "give what one pack holds, in kilograms and in litres: sand has 1.6 kg a litre"
    nitrogen, most = nitrogen_at_full_rate(product), PLAUSIBLE["nitrogen of one feed"]
    if nitrogen is not None and not most.allows(nitrogen):
        what = f"at this rate {product.nitrogen_percent:g} % are {nitrogen:g} g/m2 of nitrogen at once: {most.reason(nitrogen)}"
        yield "full_rate_kg_per_100_m2", what, f"give kilograms to 100 m2 that bring {most.possible}"


def _trailer(book: PartialBook, practice: Practice) -> Iterator[Finding]:
    bag, trailer = practice.spoil_bag_l, practice.trailer_volume_m3
    if bag is not None and trailer is not None and bag > trailer * 1000:
        what = f"a bag of {bag:g} L does not go into a trailer of {trailer:g} m3"
        yield Finding(book.where("practice", "practice", "spoil_bag_l"), what, "give the bag in litres and the trailer in cubic metres")


CHECK = Check("practice-figures", "What the practice's file says of its products and gear can be so.", ("practice",), _check)
