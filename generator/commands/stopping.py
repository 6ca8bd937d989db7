"""Ctrl-C, and whoever else asks a command to end: it puts things in order first, and says in one line what stands."""

import signal
from collections.abc import Callable, Iterator
from contextlib import contextmanager

import click

SIGNALS = [getattr(signal, name) for name in ("SIGINT", "SIGTERM", "SIGHUP") if hasattr(signal, name)]
STOPPED = 128  # and the number of the signal: what a shell gives for a command that a signal ended


class Stopped(BaseException):
    """Somebody asked the command to end."""

    def __init__(self, number: int) -> None:
        self.number = number


@contextmanager
def stoppable(stands: Callable[[], str]) -> Iterator[None]:
    """What is done in here ends in order when the command is asked to end. stands: says what stands then, as a sentence."""

    def stop(number: int, _: object) -> None:
        raise Stopped(number)

    before = {number: signal.getsignal(number) for number in SIGNALS}
    asked = [number for number in SIGNALS if before[number] is not signal.SIG_IGN]  # As a shell has them ignored, they stay.
    for number in asked:
        signal.signal(number, stop)
    try:
        yield
    except Stopped as stopped:
        for number in asked:
            signal.signal(number, signal.SIG_IGN)
        click.echo(f"Stopped. {stands()}", err=True)
        raise SystemExit(STOPPED + stopped.number) from None
    finally:
        for number in asked:
            signal.signal(number, before[number])
