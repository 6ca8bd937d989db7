"""Where the `swardbook` command begins: before anything that takes long to load, so that Ctrl-C ends it quietly from the first moment."""

import gc
import signal


def main() -> None:
    """The command. Until it has loaded, Ctrl-C ends it as the system does; from then on each command says what it left."""
    # A command lives for seconds and what it reads it keeps; looking through a million records for rings of them was a seventh of a build.
    gc.disable()
    before = signal.getsignal(signal.SIGINT)
    if before is signal.default_int_handler:
        signal.signal(signal.SIGINT, signal.SIG_DFL)
    from generator.cli import main as command

    signal.signal(signal.SIGINT, before)
    try:
        command()
    finally:
        gc.freeze()  # Nor at the end, where Python would look through all of them once more.
