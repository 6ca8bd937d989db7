"""What a keeper saw on one day, as days by which the season runs late or early, and what that does to a day ahead.

Days are plain numbers here: days of the engine's year, counted from the turn that begins the half-year.
"""

from generator.season.equations.equation import Equation, EquationConstant

A_DAY = EquationConstant(1, "day", "one day, to make a time a plain number")
A_YEAR = EquationConstant(365, "day", "the year of the soil's wave")
LEAST_STEP = EquationConstant(0.0001, "K", "where soil stands still from one day to the next")

SEEN_EQUATIONS: dict[str, Equation] = {each.id: each for each in (
    Equation(
        id="seen-depth-lag",
        title="Days by which soil lags at another depth",
        text="(depth - told_depth) * sqrt(a_year / (4 * pi * diffusivity)) / a_day",
        inputs={"depth": "mm", "told_depth": "mm", "diffusivity": "m2/h"},
        result_unit="1",
        source="assumption",
        where="the wave of the year in a deep uniform soil, as the soil curve takes it",
        limits="The day's own wave is not in it: a reading near the surface is to be taken in the morning.",
        constants={"a_day": A_DAY, "a_year": A_YEAR},
    ),
    Equation(
        id="seen-soil-day",
        title="The day on which soil usually has a reading",
        text="sum(max(0, min(1, (reading - soil) * rising / max((next_soil - soil) * rising, least_step))))",
        inputs={"reading": "°C", "rising": "1"},
        lists={"soil": "°C", "next_soil": "°C"},
        result_unit="1",
        source="assumption",
        where="the days of the half-year on which usual soil has not yet come as far, the last of them in part",
        limits="Before the first day of the half-year it gives 0, after the last one the number of its days.",
        constants={"least_step": LEAST_STEP},
    ),
    Equation(
        id="seen-days-later",
        title="Days by which the season runs late",
        text="max(-most, min(most, seen - usual))",
        inputs={"seen": "1", "usual": "1", "most": "1"},
        result_unit="1",
        source="assumption",
        where="the day on which it was seen, less the day on which it usually is",
        limits="No more than a season may run late or early; early is below 0.",
    ),
    Equation(
        id="seen-move",
        title="Whole days by which a day of the season moves",
        text="max(-earlier, min(later, round(days * exp(-abs(ahead) / fade))))",
        inputs={"days": "1", "ahead": "1", "fade": "1", "earlier": "1", "later": "1"},
        result_unit="1",
        source="assumption",
        where="what was seen fades with the days between; other rules leave only so much room",
        limits="It knows nothing of the weather to come, which is taken as usual.",
    ),
)}
