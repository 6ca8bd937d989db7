"""Calculators: made ready, run, turned round, and filled in from what is chosen."""
