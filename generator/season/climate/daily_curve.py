"""Smooth yearly curves through twelve monthly figures.

A monthly mean drawn at mid-month and joined by lines cuts the tops off: the mean of the drawn days is not the mean that
was measured. Here the days of each month average exactly to the month's figure, and 31 December runs into 1 January.
"""

from collections.abc import Sequence
from functools import lru_cache
from math import cos, exp, fsum, pi, sin, sqrt

from generator.season.calendar_days import DAYS, MONTH_LENGTHS, month_days

# Harmonics of the year used. Twelve monthly means fix no more than about six; the rest only serve to keep the curve stiff.
HARMONICS = 12
YEAR_S = DAYS * 86400.0

Matrix = tuple[tuple[float, ...], ...]


def daily_curve(monthly: Sequence[float]) -> tuple[float, ...]:
    """The smoothest periodic curve whose mean over the days of each month is that month's figure.

    monthly: 12 monthly means in any unit, January first.
    Returns 365 daily values in that unit, 1 January first.

    "Smoothest" means the least total curvature over the year among sums of 12 harmonics.
    Source: the idea of harmonics held to the monthly means: Arguez and Applequist 2013, A harmonic approach for calculating
    daily temperature normals constrained by homogenized monthly temperature normals, J. Atmos. Oceanic Technol. 30.
    The least-curvature choice of the remaining freedom is ours.
    """
    return _apply(_weights(0.0), monthly)


def soil_curve(monthly: Sequence[float], depth_m: float, diffusivity_m2_per_s: float) -> tuple[float, ...]:
    """Mean daily soil temperature at a depth, from the monthly means at its surface.

    monthly: 12 monthly mean air temperatures taken as the surface [°C], January first.
    depth_m: depth below the surface [m]. diffusivity_m2_per_s: thermal diffusivity of the soil [m²/s].
    Returns 365 daily means [°C], 1 January first.

    Each harmonic of the year is damped by exp(-z/d) and comes z/d radians late, d = sqrt(2 D / (2 pi k / year)).
    Source: Hillel 1982, Introduction to Soil Physics, as given by Oklahoma State University's soil physics pages
    (http://soilphysics.okstate.edu/toolkit/temperature/model.htm), for one harmonic; heat conduction is linear, so it
    holds for each. Limits: a uniform soil, no snow, and air standing for the surface; watered turf may differ by 2 °C (our estimate).
    """
    return _apply(_weights(depth_m / sqrt(diffusivity_m2_per_s)), monthly)


def non_negative_daily(monthly: Sequence[float]) -> tuple[float, ...]:
    """As `daily_curve`, for amounts that cannot be negative, such as rain.

    monthly: 12 means per day in any unit, none negative, January first. Returns 365 daily values, 1 January first.

    Where the smooth curve dips below zero (a dry month beside a very wet one) it is held at zero and the month's other
    days are scaled to keep its mean. Exact in the monthly mean, slightly kinked where it was cut.
    """
    curve = [max(0.0, value) for value in daily_curve(monthly)]
    for month, wanted in enumerate(monthly):
        days = month_days(month)
        total = fsum(curve[day] for day in days)
        for day in days:
            curve[day] = curve[day] * wanted * len(days) / total if total else wanted
    return tuple(curve)


def _apply(weights: Matrix, monthly: Sequence[float]) -> tuple[float, ...]:
    return tuple(fsum(weight * value for weight, value in zip(row, monthly, strict=True)) for row in weights)


@lru_cache(maxsize=64)
def _weights(depth_per_root_diffusivity: float) -> Matrix:
    """What each month's figure contributes to each day [365 x 12]; the argument is depth / sqrt(diffusivity) [s^0.5]."""
    coefficients = _coefficients()
    basis = [_basis(day, depth_per_root_diffusivity) for day in range(DAYS)]
    return tuple(
        tuple(fsum(f * c[month] for f, c in zip(row, coefficients, strict=True)) for month in range(12)) for row in basis
    )


def _basis(day: int, depth_per_root_diffusivity: float) -> list[float]:
    """The constant, then cosine and sine of each harmonic at the middle of a day, damped and delayed at depth."""
    values = [1.0]
    for k in range(1, HARMONICS + 1):
        # z/d with d = sqrt(2 D / omega_k)
        delay = depth_per_root_diffusivity * sqrt(pi * k / YEAR_S)
        angle = 2 * pi * k * (day + 0.5) / DAYS - delay
        values += [exp(-delay) * cos(angle), exp(-delay) * sin(angle)]
    return values


@lru_cache(maxsize=1)
def _coefficients() -> Matrix:
    """Coefficients of the least-curvature sum of harmonics, per unit of each month's mean [25 x 12].

    Minimise sum k^4 c_k^2 (curvature) subject to M c = b (monthly means): c = W^-1 M' m, with the Lagrange multipliers m
    and the mean a from  [M W^-1 M', 1; 1', 0] [m; a] = [b; 0], the constant itself being free of curvature.
    """
    months = [
        [fsum(column) / MONTH_LENGTHS[month] for column in zip(*(_basis(day, 0.0) for day in month_days(month)))][1:]
        for month in range(12)
    ]
    inverse_curvature = [1 / (index // 2 + 1) ** 4 for index in range(2 * HARMONICS)]
    system = [
        [fsum(a * w * b for a, w, b in zip(row, inverse_curvature, other)) for other in months] + [1.0] for row in months
    ] + [[1.0] * 12 + [0.0]]
    solved = _solve(system, [[1.0 if row == month else 0.0 for month in range(12)] for row in range(13)])
    waves = [
        tuple(w * fsum(months[m][index] * solved[m][month] for m in range(12)) for month in range(12))
        for index, w in enumerate(inverse_curvature)
    ]
    return (tuple(solved[12]), *waves)


def _solve(matrix: list[list[float]], right: list[list[float]]) -> list[list[float]]:
    """Solve matrix x = right for every column of right, by Gauss-Jordan elimination with row exchange."""
    rows = [list(a) + list(b) for a, b in zip(matrix, right, strict=True)]
    size = len(rows)
    for pivot in range(size):
        best = max(range(pivot, size), key=lambda row: abs(rows[row][pivot]))
        rows[pivot], rows[best] = rows[best], rows[pivot]
        scale = rows[pivot][pivot]
        rows[pivot] = [value / scale for value in rows[pivot]]
        for row in range(size):
            factor = rows[row][pivot]
            if row != pivot and factor:
                rows[row] = [value - factor * p for value, p in zip(rows[row], rows[pivot])]
    return [row[size:] for row in rows]
