"""Every kind of window of one grass at one site, and what whole degrees leave undecided where there is none."""

from collections.abc import Callable
from dataclasses import replace
from typing import Literal

from generator.season.engine_rules import GrassSeason, OversowingRules, PreEmergentRules, WindowRules
from generator.season.growth import yearly_growth
from generator.season.reasons import Day, because
from generator.season.windows.limits import Year
from generator.season.windows.main_windows import Windows, windows
from generator.season.windows.other_windows import NO_FIGURE, NOT_INTO_COOL, NOT_OVERSOWN, oversowing, pre_emergent

WindowKind = Literal["renovation", "overseeding", "light_renovation", "oversowing", "pre_emergent"]
ByKind = dict[WindowKind, Windows]

NO_SEED_INTO_WARM = because("no-seed-into-warm")

# Reasons that no temperature would change.
BY_NATURE = (NO_SEED_INTO_WARM, NOT_OVERSOWN, NOT_INTO_COOL, NO_FIGURE)


def windows_by_kind(
    year: Year, grass: GrassSeason, rules: WindowRules, sowing: OversowingRules, before_weeds: PreEmergentRules | None
) -> ByKind:
    """The windows of each kind, or the reason why there is none. Every series of `year` is 365 days from 1 January."""
    return {
        "renovation": windows(year, rules, grass, grass.recovery_weeks, sown=True),
        "overseeding": windows(year, rules, grass, rules.seedling_weeks[0], sown=True) if grass.group == "cool" else Windows((), NO_SEED_INTO_WARM),
        "light_renovation": windows(year, rules, grass, grass.light_recovery_weeks, sown=False),
        "oversowing": oversowing(year, grass.oversown, rules, sowing),
        "pre_emergent": pre_emergent(year, before_weeds, rules.turn_k),
    }


def with_doubts(found: ByKind, year: Year, grass: GrassSeason, windows_of: Callable[[Year], ByKind]) -> ByKind:
    """The same, but saying of a missing window that half a printed degree would give one.

    windows_of: the windows of each kind for another year.
    Only where normals are printed in whole degrees. Frost is left as it stands.
    """
    doubtful = {kind: each.why_none for kind, each in found.items() if each.why_none is not None and each.why_none not in BY_NATURE}
    if year.weather.temperature_step_c < 1 or not doubtful:
        return found
    half = year.weather.temperature_step_c / 2
    answer = dict(found)
    for shift, code in ((half, "undecided-warmer"), (-half, "undecided-cooler")):
        moved = year.weather.moved(shift)
        other = windows_of(replace(year, weather=moved, growth=yearly_growth(moved.days.mean_c, grass.growth_key)))
        for kind, why in doubtful.items():
            if other[kind].windows and not answer[kind].undecided:
                window = other[kind].windows[0]
                answer[kind] = Windows((), because(code, why=why, first=Day(window.first), last=Day(window.last)), undecided=True)
    return answer
