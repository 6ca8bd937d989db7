"""What a calculator works with: one number, or a list of readings."""

Value = float | tuple[float, ...]


def single(value: Value) -> float:
    """The number that a value is, in any unit: only what a person types may be a list of readings, and no result is."""
    assert not isinstance(value, tuple), "this is one number, never a list"
    return value


def readings(value: Value) -> tuple[float, ...]:
    """The numbers of a value, in any unit."""
    return value if isinstance(value, tuple) else (value,)
