"""A plan put to a lawn and a day: which steps, when, how much of everything, at what price."""
