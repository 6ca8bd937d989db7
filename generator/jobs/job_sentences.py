"""What a job's page says of it, for the page as it is built and for the script that writes another job: templates with named places."""

SENTENCES = {
    "frost": "Any frost in the four weeks from then: {chance}.",
    "before": "Before the day",
    "week": "Week {number}, from {day}",
    "times": "{name}, {times} times",
    "inside": "Inside the window.",
    "no_window": "No window here.",
    "too_early": "Outside the window: {days} too early.",
    "too_late": "Outside the window: {days} too late.",
    "open_all_year": "The window is open all year.",
    "window": "The window: {first} to {last}{best}.",
    "best": ", best about {day}",
    "settles": "{title}: done on {done}, it needs {days} here. That makes the first possible day of the job {first}.",
    "later": "{days} later than planned",
    "earlier": "{days} earlier than planned",
    "set_by_hand": "{by}: set by you.",
    "moved_by": "{by}, because of “{title}”.",
    "late_tick": "Done on {day}, it would move what waits for it, {count} in all:",
    "stage_sum": "{count}, {done} done",
    "overdue": "{day}. Overdue: ring today.",
    "late_steps": "Past its day and not ticked, {count} in all: {list}. Tick what was done, or move the job.",
    "late_many": "Past its day and not ticked, {count} in all: {list}, and {more} more. Tick what was done, or move the job.",
    "settles_in_time": "{by}, so that it settles in time.",
    "usual": "Usual here at that time: daily mean ",
    "usual_growth": ", growth {growth}, frost on {frost} of nights.",
    "included": "Included in the price: {list}.",
    "spoil": "To carry away, loose: ",
    "spoil_counts": ", which is {counts}.",
    "left_open": "Done only if needed, so not in this price or on the lists yet: {list}.",
    "open": "Not in the price or on the lists until it is said to be needed.",
    "if_needed": "if needed",
    "settings": "Set: ",
    "over_times": "Over it {times} times. ",
    "from_to": "{start}–\u200b{end}",
    "day_clock": "day {day}, {clock}",
    "long_day": "That is too long for one day. Bring more people, or spread it over several days.",
    "not_set": "time not set",
    "untimed": "Without a set time, so not in that sum: {list}.",
    "crew": "Times are for {people}.",
    "person": "1 person",
    "persons": "{people} people",
    "wet": "Wet weather: decide by {time}, before line {number}.",
    "wet_leaf": "On a wet leaf, do not begin {list}.",
    "wet_soil": "On wet ground, do not begin {list}.",
    "wet_rain": "With heavy rain forecast, do not begin {list}.",
    "wet_after": "After line {number}, at {time}, nothing left waits for dry weather.",
    "listed": "{list} or {last}",
    "from_label": "type in the rate from the label.",
    "measured": "measure it on the day and type it in.",
}
# Why a plan, a step or a product is not there for a grass.
NOT_FOR_GRASS = {
    "plan-group": "{plan} is for {wanted}-season grass; {grass} is {found}-season.",
    "plan-habit": "{plan} is for grass that grows {wanted}; {grass} grows {found}.",
    "plan-task": "{plan} needs a grass that takes {task}; {how}",
    "plan-figure": "{plan} needs {figure}; the book has none for {grass}.",
    "step-habit": "Only for grass that grows {wanted}; {grass} grows {found}.",
    "step-level": "Only for grass that takes it {levels}; {grass} takes it {level}.",
    "step-not-needed": "Not needed on this lawn.",
    "no-product-for-grass": "No product for {grass} in the practice's file, so it has no price.",
    "no-product": "The practice's file has no product for this, so it has no price.",
}
# What a plan may need of a grass, by the field that holds it.
NEEDED_FIGURES = {
    "seed_rate": "a seed rate for a new lawn", "overseed_rate": "a seed rate over a living lawn",
    "establishment.from_seed": "a way to start it from seed", "establishment.from_runners": "a way to start it from runners",
}
# What is said of who does a step; nothing of a step that the practice's own hands do.
WHO = {"hands": "", "client": "The client does this.", "office": "Done from the office."}
# A machine is set no finer.
SETTING_DECIMALS = 2
WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
# Longer than this is no day's work, whoever goes; an assumption of ours.
LONGEST_DAY_MINUTES = 660
# Work of up to so long is told in minutes.
LONGEST_IN_MINUTES = 90
