"""Which figures of tasks the season engine reads, by task and name: what each means, which says what it may be."""

from generator.book.fields.sourced import Measured

_READING = Measured("soil temperature of a rule")
_DRESSING = Measured("nitrogen of one feed")
_SHARE = Measured("part of a whole")

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
