"""Shared equations: their units agree, and they say where they come from."""

import pytest

from generator.formula import check, to_javascript
from generator.season.equations.every_equation import EQUATIONS
from generator.units import unit


@pytest.mark.parametrize("equation", EQUATIONS.values(), ids=lambda equation: equation.id)
def test_units_agree_and_the_source_is_given(equation):
    names = {name: unit(spelling) for name, spelling in equation.inputs.items()}
    names |= {name: unit(constant.unit) for name, constant in equation.constants.items()}
    check(equation.formula, names, unit(equation.result_unit))
    assert set(equation.formula.names) == set(names)
    assert equation.source and equation.where and equation.limits and equation.title


@pytest.mark.parametrize("equation", EQUATIONS.values(), ids=lambda equation: equation.id)
def test_the_browser_gets_the_same_text(equation):
    assert to_javascript(equation.formula)
