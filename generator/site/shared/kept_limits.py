"""How long a text may be that a reader's device keeps: the fields of a page stop there, and the scripts keep no more [signs]."""

# answer: to the inspection, to a question of hold or go, or a place of the sheet's head; measure: one without the unit that goes beside it; quoted: the work of a quote.
LONGEST = {"answer": 60, "measure": 40, "job": 40, "entry": 200, "piece": 80, "sizes": 160, "quoted": 2000}
