"""Areas by offsets against an outside reference: numpy's own integration, of curves that it knows exactly."""

import random

import numpy as np
import pytest
from numpy.polynomial import Polynomial

from generator.calculators.calculate import calculate
from tests.our_book import book

OFFSETS = book().calculators["area-offsets"]


def areas(widths, spacing: float) -> dict[str, float]:
    run = calculate(OFFSETS, {"widths": [float(width) for width in widths], "spacing": float(spacing)})
    assert not run.problems, run.problems
    return {name: amount.si for name, amount in run.results.items()}


def lawn(chance: random.Random, degree: int) -> tuple[Polynomial, float]:
    """A curve of this degree as the width of a lawn, and the lawn's length [m]; lifted so that no width is under 1 m."""
    length = chance.uniform(5, 60)
    curve = Polynomial([chance.uniform(-8, 8) for _ in range(degree + 1)], domain=[0, length], window=[-1, 1])
    return curve + 1 - min(curve(np.linspace(0, length, 400))) + 1, length


@pytest.mark.parametrize("seed", range(50))
def test_simpson_is_exact_for_a_cubic_edge(seed):
    """Simpson's rule takes a cubic whole, so the calculator must meet numpy's antiderivative to the last digits."""
    chance = random.Random(seed)
    curve, length = lawn(chance, degree=3)
    places = np.linspace(0, length, 2 * chance.randint(1, 12) + 1)
    primitive = curve.integ()
    assert areas(curve(places), places[1])["simpson_area"] == pytest.approx(primitive(length) - primitive(0), rel=1e-11)


def test_simpson_is_not_exact_for_a_fourth_power():
    """x**4 from 0 to 2 holds 32/5; Simpson through 0, 1 and 2 makes it (0 + 4 + 16) / 3: the test above can fail."""
    assert areas([0, 1, 16], 1)["simpson_area"] == pytest.approx(20 / 3)


@pytest.mark.parametrize("seed", range(50))
def test_trapezoids_agree_with_numpy(seed):
    chance = random.Random(seed)
    spacing = chance.uniform(0.2, 10)
    widths = [chance.uniform(0, 40) for _ in range(chance.randint(2, 60))]
    assert areas(widths, spacing)["area"] == pytest.approx(np.trapezoid(widths, dx=spacing), rel=1e-12)


@pytest.mark.parametrize("seed", range(50))
def test_a_step_left_over_is_straight(seed):
    """With an even number of widths the last step has no partner: numpy's parabolas up to it, and a trapezium for it."""
    chance = random.Random(seed)
    widths = [chance.uniform(0, 40) for _ in range(2 * chance.randint(2, 20))]
    expected = np.trapezoid(widths[-2:])
    for start in range(0, len(widths) - 2, 2):
        parabola = Polynomial.fit([0, 1, 2], widths[start : start + 3], 2).integ()
        expected += parabola(2) - parabola(0)
    assert areas(widths, 1)["simpson_area"] == pytest.approx(expected, rel=1e-10)
