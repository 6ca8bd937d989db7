"""The sentence of every reason, by its code: the one place where a reason is worded.

`{name}` stands for a number or a reason within it. `{week.when}` is a week as people say it, "early November", and exactly its number and
first day; `{share.about}` a share in a word, "about half", and exactly its hundredths (`rough_words.py`). Where that is not enough, a sentence
is `Told`: one for people, and one with every number, for files, a terminal and whoever asks a page for it.
"""

from typing import NamedTuple


class Told(NamedTuple):
    """A reason for people, and with every number that decided."""

    plain: str
    exact: str


SENTENCES: dict[str, str | Told] = {
    # Joints between reasons, and nothing where nothing is to be said.
    "and": " and ", "semicolon": "; ", "comma": ", ", "next-sentence": " ", "nothing": "",
    # A window and its three dates.
    "window-from": "From {day}{undecided}: {why}.",
    "window-preferred": "Best from {first} to {last}: {why}.",
    "window-until": "Until {day}{undecided}: {why}.",
    "between-days": ", undecided between {earliest} and {latest}",
    "never-closed": "no rule closes it at any time of the year",
    "whole-degrees": (
        "Temperatures here were printed in whole degrees, so a date that half a degree would shift is undecided; go by the lawn and the soil."
    ),
    "second-best": "Second best: seed sown now meets weeds and then summer.",
    "little-growth": Told(
        "There is little growth here, at best {best.about} of what the grass can do, so it takes longer to close than elsewhere.",
        "There is little growth here, at best {best} of what the grass can do, so it takes longer to close than elsewhere.",
    ),
    # This year, measured so far.
    "measured-then-usual": "Measured to {until}, usual weather after that.",
    "opens-earlier": "It opens {days} earlier than in a usual year.", "opens-later": "It opens {days} later than in a usual year.",
    "closes-earlier": "It closes {days} earlier than in a usual year.", "closes-later": "It closes {days} later than in a usual year.",
    "thermometer": "Soil temperature is estimated from the air; a thermometer at {depth} decides.",
    # Where a day stands to the window of a plan.
    "no-window-here": "No window here: {why}.",
    "no-window-for-winter": "No window here: a usual winter kills it.",
    "never-grows-strongly": "the grass never grows strongly here",
    "grows-enough": "The grass grows strongly enough to root and to close.",
    "grows-enough-all-year": "The grass grows strongly enough all year.",
    "becomes-strong-enough": "growth becomes strong enough to root and to close",
    "becomes-too-slow": "growth becomes too slow to root and to close",
    "one-day": "1 day", "several-days": "{days} days",
    "before-window": "{days} before the window opens on {day}: {why}.",
    "after-window": "{days} after the window closed on {day}: {why}.",
    # Growth.
    "share-of-swing": "{share} of the way from the year's low to its best",
    "share-of-best": "{share.about} of the most this place gives",
    "growth-rising": Told(
        "growth is rising and reaches {reached}, at a mean of {mean}",
        "growth is rising and in {week.when} reaches {reached} (growth potential {potential}, best {best}), at a mean of {mean}",
    ),
    "warmth-rising": Told(
        "it has warmed {share.about} of the way from winter to summer, to a mean of {mean}",
        "in {week.when} the mean, {mean}, has come {share} of the way from its lowest, {lowest}, to its highest, {highest} (growth potential "
        "{potential}, best {best})",
    ),
    "greened-up": "turf that lay dormant has greened up: the soil has warmed to {soil}, past {mark}",
    "closes-in-time": "it now closes in {weeks} weeks; what {needs} weeks of full growth close must not take more than {most}",
    "never-closes": Told(
        "it needs {needs} weeks of full growth to close, and here that takes more than {most} weeks or never comes before growth falls",
        "it needs {needs} weeks of full growth to close, counted from a growth potential of {full}, and here, where {best} is the best, that "
        "takes more than {most} weeks or never comes before growth falls",
    ),
    "deep-winter-past": "deep winter is past: the mean has risen {rise} from its lowest",
    "before-deep-winter": "it needs {weeks} weeks of growing weather before the depth of winter in {week.when}",
    "before-growth-falls": Told(
        "it needs {weeks} weeks of growing weather before growth slows too far, in {week.when}",
        "it needs {weeks} weeks of growing weather before growth falls back below {reached} in {week.when} (growth potential {potential}, best {best})",
    ),
    "too-slow-all-year": "growth is too slow all year",
    "before-soil-cold": "the soil cools below {mark} in {week.when}",
    "before-soil-cold-for-seed": "seed needs {days} days to come up, and in {week.when} the soil cools below {mark}",
    "too-cold-all-year": "the soil is never warm enough long enough: seed wants {mark} or more",
    "killed-by-winter": "winter kills it here: the coldest night of a usual year is about {coldest}, and it does not last below {least}",
    "winter-may-kill": (
        "A usual winter may kill some of it here: the coldest night of a usual year is about {coldest}, and damage begins at about {begins}."
    ),
    "winter-first": "{why}",
    "weed-by-law": "By law, in {where}: {text}{ask}",
    "ask-first": " Ask first: {who}",
    "hot-then": "in a usual year the afternoons reach {maximum} on average in the four weeks from then",
    # Frost.
    "of-frost": "frost", "of-ground-frost": "ground-frost",
    "frost-past": Told(
        "the risk of a {kind} night in the {weeks} weeks that follow is small",
        "from {week.when} the chance of a {kind} night in the {weeks} weeks that follow is {chance}, no longer above {risk}",
    ),
    "before-frost": Told(
        "begun later, it would meet too great a risk of a {kind} night in the {weeks} weeks that follow",
        "begun later, a {kind} night in the {weeks} weeks that follow becomes likelier than {risk}",
    ),
    "frost-all-year": Told(
        "no {weeks} weeks of the year are safe enough from a {kind} night",
        "no {weeks} weeks of the year keep the chance of a {kind} night at or below {risk}; the safest still carry {safest}",
    ),
    # Heat and high summer.
    "heat-past": "not in the heat: the daily mean is down to {mean}, no longer above {limit}",
    "before-heat": "it must have recovered before the daily mean passes {limit} in {week.when}",
    "heat-all-year": (
        "the daily mean does not stay at or below {limit} for {weeks} weeks; it runs from {lowest} to {highest} through the year"
    ),
    "summer-past": "the height of summer is past: the mean has come down {fall} from its highest, {highest} in {week.when}",
    "before-summer": "it must have recovered before the height of summer begins in {week.when}",
    "no-cooler-season": "the temperature hardly changes through the year, so no season is cooler than the rest",
    "dry-start": "It opens in dry weather, with {rain} of rain a week against {evaporates} that evaporates: water every day, or wait for the best weeks.",
    # Rain.
    "wet-past": "the wet season is past: rain is down to {rain} a week, against {evaporates} that evaporates",
    "before-wet": Told(
        "it needs {weeks} weeks to close before the wet season begins in {week.when}",
        "it needs {weeks} weeks to close before the wet season begins in {week.when}, with over {rain} of rain a week and {ratio} times what evaporates",
    ),
    "wet-all-year": "it is too wet all year",
    # The best date.
    "preferred-in-spring": (
        "the lawn stays green in winter, so early in spring: from {week.when} the mean has come {share.about} of the way up to summer, and the "
        "whole season is ahead"
    ),
    "preferred-after-dormancy": (
        "after {dormant} weeks of dormancy the turf has roots to make again before it is opened up, and summer rain is {moist.about} of what "
        "evaporates: from {week.when} the mean has come {share.about} of the way up to summer"
    ),
    "preferred-early": "early: the soil has reached {mark}, at which seed sprouts, and the most weeks lie between it and summer",
    "preferred-before-cold": "{least} to {most} weeks of growing weather are left before the soil cools below {mark} in {week.when}",
    "preferred-in-strong-growth": Told(
        "the heat is over, and growth stays strong until {week.when}",
        "the heat is over, and growth is still at {share} or more of its best until {week.when}",
    ),
    "preferred-at-optimum": "the mean has come down to {optimum}, at which this grass grows best",
    "best-while-soil-warm": "as early as the rules allow, in {week.when}, while the soil at {soil} still sprouts seed fast",
    # No window.
    "no-growing-season": Told(
        "this place gives the grass no real growing season",
        "this place gives the grass no real growing season: its growth potential never passes {best} (a window needs {least})",
    ),
    "never-allowed": "{why}",
    "too-short": (
        "the weather leaves only {days} days, from {first} to {last}, and a window shorter than {shortest} weeks is not worth planning on: "
        "{opens}, but {closes}"
    ),
    "no-common-day": "the rules leave no common day: {allowed}",
    "rule-allows": "{rule} allows {weeks}",
    "weeks-to": "{first.when} to {last.when}",
    "rule-growing": "growing", "rule-recovery": "recovery", "rule-frost": "frost", "rule-heat": "heat", "rule-high-summer": "high summer",
    "rule-wet-season": "wet season", "rule-spring": "spring", "rule-green": "green-up", "rule-cold": "cold",
    "rule-cool-nights": "cool nights", "rule-summer-over": "end of summer", "rule-warming": "warming",
    "rule-cooling": "cooling", "rule-soil-warm-enough": "soil warm enough", "rule-soil-not-too-warm": "soil not too warm",
    "undecided-warmer": (
        "{why}; undecided, because temperatures here were printed in whole degrees, and half a degree warmer would give a window from "
        "{first} to {last}"
    ),
    "undecided-cooler": (
        "{why}; undecided, because temperatures here were printed in whole degrees, and half a degree cooler would give a window from "
        "{first} to {last}"
    ),
    "no-seed-into-warm": (
        "a warm-season lawn thickens by its own runners, not by seed over the top; sowing ryegrass into it for winter colour is another job"
    ),
    "not-oversown": "this grass is not oversown for winter; its page says why",
    "not-advised": "{why}",
    "not-into-cool": "a cool-season lawn stays green in winter anyway; thickening it is called overseeding",
    "no-soil-figure": "the book's tasks give no soil temperature for it",
    # Winter ryegrass, and the pre-emergent.
    "nights-cooled": "nights have cooled to {night}, no longer above {mark}, so the turf slows and seedlings get light",
    "nights-never-cool": "nights never cool to {mark}; the lowest mean is {lowest}",
    "summer-behind": "summer is behind it: the mean is down to {mean}, from {highest} at its highest",
    "soil-warmed": "the soil has warmed to {soil}, and the barrier must stand before summer grass sprouts at about {usual}",
    "soil-never-warms": "the soil never warms to {mark}; its highest is {highest}",
    "summer-grass-sprouts": "in {week.when} the soil passes {mark}, and summer grass sprouts",
    "summer-grass-any-time": "the soil never cools to {mark}, its lowest is {lowest}, so summer grass may sprout at any time",
    "in-place-by": "it should be in place before the soil reaches {usual}, at which most services say summer grass sprouts",
    "turned-at-lowest": "the mean has turned at its lowest, {mean}, in {week.when}",
    "turned-at-highest": "the mean has turned at its highest, {mean}, in {week.when}",
    "never-turns": "the temperature never turns",
    # What happens in a year.
    "stays-green-cool": "cool-season grass stays green through winter",
    "stays-green": "the soil never falls below {mark} (its lowest is {lowest}), so the lawn stays green",
    "never-greens-up": "the soil never warms to {mark}",
    "greens-up": "the soil has warmed to {soil}; dormant turf greens up at about {mark}",
    "no-transition": "only warm-season turf that was sown with ryegrass changes over in spring",
    "nights-never-cross": "nights never cross {mark}: they run from {lowest} to {highest}",
    "nights-warmed": "nights have warmed to {night}: from {mark} warm-season turf takes over from winter ryegrass",
    "at-its-best": Told(
        "growth is near the most this place gives",
        "growth is at {share} or more of the most this place gives (a growth potential of {best})",
    ),
    "nothing-grows": "nothing grows here",
    "growth-never-falls": Told(
        "growth never falls far",
        "growth never falls far: its lowest is {least}, its best {best}",
    ),
    "slows-down": Told(
        "in {week.when} growth falls to {share.about} of the most this place gives and can no longer close an opened surface",
        "in {week.when} growth falls to {share} of the most this place gives (growth potential {potential}) and can no longer close an "
        "opened surface",
    ),
    "soil-dormant": "the soil is at or below {mark}; its lowest is {lowest}",
    "never-dormant": "the soil never falls to {mark}; its lowest is {lowest}",
    "a-renovation": "renovation", "a-light-renovation": "a light renovation",
    "never-slows": "growth never slows too far to close over",
    "last-safe": "the last day for {job}: {why}",
    # Feeding and watering.
    "no-ceiling": "the book's tasks give no ceiling for one dressing",
    "no-nitrogen-to-give": "there is no nitrogen to give",
    "product-without-nitrogen": "the product holds no nitrogen",
    "never-fit-to-feed": "growth is too slow, too hot or too wet all year",
    "one-feed": "{yearly} of nitrogen in a year, in one feed: {which} is {ceiling}",
    "feeds": "{yearly} of nitrogen in a year, in {feeds} feeds of {each}: {which} is {ceiling}",
    "ceiling": "the ceiling for one dressing",
    "ceiling-soluble": "the ceiling for one dressing of a feed with little slow release",
    "light-dressing": "the dressing advised on {soil}",
    "soil-holds": "{soil} holds {depth} that the grass may use: {available} of the {roots} that roots reach, {depletion} of it",
    "soil-takes-in": "{held}; it takes in only {rate} an hour, so one morning gives {depth}",
    # Frosts of a year.
    "a-frost": "frost", "a-ground-frost": "ground frost", "evens": "evens", "one-year-in": "one year in {years}",
    "no-more-frost": "after it the chance of any more {kind} before summer is {odds} or less",
    "no-frost-before-summer": "the chance of a {kind} before summer is never more than {odds}",
    "first-frost": "by then, after summer, a {kind} has become likelier than {odds}",
    "never-a-frost": "a {kind} never becomes likelier than {odds}",
}
