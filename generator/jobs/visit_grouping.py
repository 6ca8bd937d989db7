"""The weeks of so many visits that serve a year's works best: whole numbers in, weeks out, and nothing of lawns.

The measure: as few works as can be are left without a visit, and of all that leave no fewer, the works are moved by as few weeks in
all. The year is a ring. Between one visit and the next, each work goes to the nearer of the two that it may go to, so that the cost of a
choice is a sum over neighbours, and the least is found exactly (dynamic programming over neighbours). Twin: visit grouping.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import fsum

from generator.season.calendar_days import WEEKS

# One work left without a visit counts for more than all that could be moved.
LEFT = 100_000
NEVER = 10**12


@dataclass(frozen=True)
class Movable:
    """A work: the week that it falls due (0 for the first), and how many weeks it may go ahead of it and after it."""

    week: int
    earlier: int
    later: int


def moved(work: Movable, visit: int, year: int = WEEKS) -> int | None:
    """By how many weeks a work is moved to a visit's week, below 0 for earlier; None where it may not go there."""
    later, earlier = (visit - work.week) % year, (work.week - visit) % year
    fitting = [*([later] if later <= work.later else ()), *([-earlier] if earlier <= work.earlier else ())]
    return min(fitting, key=abs, default=None)


def nearest(work: Movable, visits: Sequence[int], year: int = WEEKS) -> tuple[int, int] | None:
    """The visit's week that a work goes to, and by how many weeks it is moved; the earlier of two as near; None for a work that is left."""
    fitting = [(visit, by) for visit in visits if (by := moved(work, visit, year)) is not None]
    return min(fitting, key=lambda each: (abs(each[1]), each[1]), default=None)


def best_visits(works: Sequence[Movable], most: int, year: int = WEEKS) -> tuple[tuple[int, ...], ...]:
    """For 1 visit, for 2, and so on up to `most`: the weeks of the best visits, in order; fewer where more of them would serve no better."""
    if not works or most < 1:
        return ((),) * max(most, 0)
    # Between these weeks the cost goes up or down evenly, so that one of them is as good as any.
    weeks = sorted({(work.week + by) % year for work in works for by in (-work.earlier, 0, work.later)})
    costs = _costs(works, weeks, year)
    best: list[tuple[int, tuple[int, ...]]] = [(NEVER, ())] * most
    for first in range(len(weeks)):
        for number, found in enumerate(_from(first, costs, min(most, len(weeks) - first))):
            if found[0] < best[number][0]:
                best[number] = found
    for number in range(1, most):
        if best[number][0] >= best[number - 1][0]:
            best[number] = best[number - 1]
    return tuple(tuple(weeks[at] for at in chosen) for _, chosen in best)


def _costs(works: Sequence[Movable], weeks: Sequence[int], year: int) -> list[list[int]]:
    """[this visit][the next one]: what the works due after this one, up to the next one, come to. The next one of a lone visit is itself."""
    found = []
    for this in weeks:
        after = [((work.week - this - 1) % year + 1, work) for work in works]
        found.append([
            int(fsum(_cost(work, since, span - since) for since, work in after if since <= span))
            for span in ((other - this - 1) % year + 1 for other in weeks)
        ])
    return found


def _cost(work: Movable, since: int, until: int) -> int:
    """since, until: weeks from the visit before it, and to the visit after it."""
    return min(since if since <= work.earlier else LEFT, until if until <= work.later else LEFT)


def _from(first: int, costs: list[list[int]], most: int) -> list[tuple[int, tuple[int, ...]]]:
    """For 1 to `most` visits, the first of them at `first` and no other before it: the least cost, and which visits."""
    count = len(costs)
    sums = {first: 0}
    ways: dict[int, tuple[int, ...]] = {first: (first,)}
    found: list[tuple[int, tuple[int, ...]]] = []
    for _ in range(most):
        last = min(sums, key=lambda at: (sums[at] + costs[at][first], at))
        found.append((sums[last] + costs[last][first], ways[last]))
        longer: dict[int, int] = {}
        longer_ways: dict[int, tuple[int, ...]] = {}
        for then in range(first + 1, count):
            before = min((at for at in sums if at < then), key=lambda at: (sums[at] + costs[at][then], at), default=None)
            if before is not None:
                longer[then], longer_ways[then] = sums[before] + costs[before][then], (*ways[before], then)
        if not longer:
            break
        sums, ways = longer, longer_ways
    return found
