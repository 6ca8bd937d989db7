"""An SI value printed back in a unit. Twin: quantity."""

import math
from decimal import ROUND_HALF_UP, Decimal

from generator.units.known_units import Unit, from_si
from generator.units.refusals import refusal


def show(si: float, wanted: Unit, significant_figures: int = 3, with_unit: bool = True) -> str:
    """An SI value printed in a unit: show(0.0125, unit('mm')) -> '12.5 mm'.

    Rounds half away from zero; trailing zeros after the point are left out. `read_quantity`
    reads the text back. Raises QuantityError for a value that is not finite.
    """
    value = from_si(si, wanted)
    if not math.isfinite(value):
        raise refusal("too-large", "nothing-to-show")
    figures = _figures(value, significant_figures)
    if not with_unit or wanted.spelling == "1":
        return figures
    return f"{figures} {wanted.spelling}"


def _figures(value: float, significant_figures: int) -> str:
    exact = abs(Decimal(value))
    if not exact:
        return "0"
    step = Decimal(1).scaleb(exact.adjusted() - significant_figures + 1)
    text = f"{exact.quantize(step, ROUND_HALF_UP):f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return f"-{text}" if value < 0 else text
