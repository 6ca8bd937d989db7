"""One number where a value could be several."""

from generator.calculators.calculate import Value


def single(value: Value) -> float:
    """The number that a result is, in any unit: only what a person types may be a list of readings."""
    assert not isinstance(value, tuple), "no result is a list"
    return value
