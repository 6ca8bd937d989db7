"""Units of the trade: one allow-list, mapped to pint; and quantities as people type them."""

from generator.units.bounds import Bounds, bounds_of
from generator.units.dimension import NUMBER, Dimension
from generator.units.known_units import Unit, UnitError, from_si, kind_of, known_unit, like, to_si, unit, unit_table, units
from generator.units.reading import american_words, read_list, read_quantity
from generator.units.refusals import QuantityError
from generator.units.showing import show

__all__ = [
    "NUMBER",
    "Bounds",
    "Dimension",
    "QuantityError",
    "Unit",
    "UnitError",
    "american_words",
    "bounds_of",
    "from_si",
    "kind_of",
    "known_unit",
    "like",
    "read_list",
    "read_quantity",
    "show",
    "to_si",
    "unit",
    "unit_table",
    "units",
]
