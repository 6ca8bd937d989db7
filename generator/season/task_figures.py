"""Which figures of tasks the season engine reads, by task and name: the unit it takes them in, and what each may be."""

from generator.book.fields.sourced import Measured

_READING = Measured("°C", -60, 60)
_DRESSING = Measured("g/m2", 0, 1000)
_SHARE = Measured("%", 0, 100)

PRE_EMERGENT_SOIL = ("pre-emergent", "soil-temperature-at-application")
FEED_CEILING = ("feed", "nitrogen-one-dressing-ceiling")
SOLUBLE_FEED_CEILING = ("feed", "soluble-nitrogen-one-dressing-ceiling")
SLOW_RELEASE_SHARE = ("feed", "slow-release-share")
LIGHT_DRESSING = ("feed", "light-dressing-on-sand")
LARGEST_SHARE_REMOVED = ("mow", "largest-share-removed")

TASK_FIGURES: dict[tuple[str, str], Measured] = {
    PRE_EMERGENT_SOIL: _READING, FEED_CEILING: _DRESSING, SOLUBLE_FEED_CEILING: _DRESSING, SLOW_RELEASE_SHARE: _SHARE,
    LIGHT_DRESSING: _DRESSING, LARGEST_SHARE_REMOVED: _SHARE,
}  # fmt: skip
