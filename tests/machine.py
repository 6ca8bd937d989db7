"""How fast this machine is at the moment, so that a promise of time means the same on every machine and beside any neighbour."""

from time import process_time

YARDSTICK = 2_000_000
# An ordinary desktop of 2022 under Python 3.11 (our estimate, within a fifth).
DESKTOP_SECONDS = 0.12


def slowness() -> float:
    """How many times slower than an ordinary desktop a fixed sum runs here just now; 1 where it is no slower."""
    return max(1.0, min(_yardstick() for _ in range(3)) / DESKTOP_SECONDS)


def _yardstick() -> float:
    began = process_time()
    sum(each * each for each in range(YARDSTICK))
    return process_time() - began
