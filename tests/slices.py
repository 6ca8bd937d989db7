"""What of many like cases each run takes, and what waits for the long one."""

from collections.abc import Iterable
from typing import Any

import pytest


def first(count: int, cases: Iterable[Any]) -> list[Any]:
    """Cases for `parametrize`: so many at each run, the others in `make soak`."""
    return [case if at < count else later(case) for at, case in enumerate(cases)]


def every(step: int, cases: Iterable[Any]) -> list[Any]:
    """Cases for `parametrize`: one in so many at each run, the others in `make soak`."""
    return [later(case) if at % step else case for at, case in enumerate(cases)]


def later(case: Any) -> Any:
    """One case, alone or with its several values, in `make soak` only."""
    return pytest.param(*(case if isinstance(case, tuple) else (case,)), marks=pytest.mark.soak)
