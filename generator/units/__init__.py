"""Units of the trade: one allow-list, mapped to pint; and quantities as people type them."""

from generator.units.dimension import NUMBER, Dimension
from generator.units.reading import QuantityError, american_words, read_list, read_quantity, show, units_script
from generator.units.registry import (
    Unit,
    UnitError,
    from_si,
    kind_of,
    like,
    to_si,
    unit,
    unit_table,
    units,
)

__all__ = [
    "NUMBER",
    "Dimension",
    "QuantityError",
    "Unit",
    "UnitError",
    "american_words",
    "from_si",
    "kind_of",
    "like",
    "read_list",
    "read_quantity",
    "show",
    "to_si",
    "unit",
    "unit_table",
    "units",
    "units_script",
]
