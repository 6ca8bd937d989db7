"""Every kind of window of one grass at one site, and what whole degrees leave undecided where there is none."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Literal, get_args

from generator.season.engine_rules import GrassSeason, OversowingRules, PreEmergentRules, WindowRules
from generator.season.growth import yearly_growth
from generator.season.reasons import Day, Reason, because
from generator.season.windows.limits import Year
from generator.season.windows.main_windows import Windows, windows
from generator.season.windows.other_windows import NO_FIGURE, NOT_INTO_COOL, NOT_OVERSOWN, oversowing, pre_emergent
from generator.season.winter import killed_by_winter

WindowKind = Literal["renovation", "overseeding", "light_renovation", "oversowing", "pre_emergent"]
KINDS: tuple[WindowKind, ...] = get_args(WindowKind)

NO_SEED_INTO_WARM = because("no-seed-into-warm")

# Reasons that no temperature would change.
BY_NATURE = (NO_SEED_INTO_WARM, NOT_OVERSOWN, NOT_INTO_COOL, NO_FIGURE)


class ByKind(Mapping[WindowKind, Windows]):
    """The windows of each kind of a year, or the reason why there is none; each kind is worked out when it is first asked for.

    not_advised: why a kind is not done in that country. Where normals are printed in whole degrees, a missing window says if half a printed
    degree would give one; frost is left as it stands.
    """

    def __init__(
        self, year: Year, grass: GrassSeason, rules: WindowRules, sowing: OversowingRules, before_weeds: PreEmergentRules | None,
        not_advised: Mapping[WindowKind, Reason],
    ) -> None:
        self._year, self._grass, self._rules = year, grass, rules
        self._sowing, self._before_weeds = sowing, before_weeds
        self._found = {kind: Windows((), why) for kind, why in not_advised.items()}

    def __getitem__(self, kind: WindowKind) -> Windows:
        if kind not in self._found:
            if kind not in KINDS:
                raise KeyError(kind)
            killed = killed_by_winter(self._year.weather, self._grass)
            self._found[kind] = Windows((), killed) if killed else self._with_doubt(kind, self._of(self._year, kind))
        return self._found[kind]

    def __iter__(self) -> Iterator[WindowKind]:
        return iter(KINDS)

    def __len__(self) -> int:
        return len(KINDS)

    def _of(self, year: Year, kind: WindowKind) -> Windows:
        grass, rules = self._grass, self._rules
        match kind:
            case "renovation":
                return windows(year, rules, grass, grass.recovery_weeks, sown=True)
            case "overseeding":
                return windows(year, rules, grass, rules.seedling_weeks[0], sown=True) if grass.group == "cool" else Windows((), NO_SEED_INTO_WARM)
            case "light_renovation":
                return windows(year, rules, grass, grass.light_recovery_weeks, sown=False)
            case "oversowing":
                return oversowing(year, grass.oversown, rules, self._sowing)
            case "pre_emergent":
                return pre_emergent(year, self._before_weeds, rules.turn_k)

    def _with_doubt(self, kind: WindowKind, found: Windows) -> Windows:
        why = found.why_none
        if why is None or why in BY_NATURE or self._year.weather.temperature_step_c < 1:
            return found
        half = self._year.weather.temperature_step_c / 2
        for shift, code in ((half, "undecided-warmer"), (-half, "undecided-cooler")):
            moved = self._of(self._moved(shift), kind).windows
            if moved:
                return Windows((), because(code, why=why, first=Day(moved[0].first), last=Day(moved[0].last)), undecided=True)
        return found

    def _moved(self, shift_k: float) -> Year:
        """The year with its temperatures moved [K]."""
        moved = self._year.weather.moved(shift_k)
        return replace(self._year, weather=moved, growth=yearly_growth(moved.days.mean_c, self._grass.growth_key))
