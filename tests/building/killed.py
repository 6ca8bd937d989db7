"""Builds small sites one after the other in a process that is killed at any moment, again and again. Run as a program: it forks.

    python -m tests.building.killed SITE KILLS exchange|no_exchange
"""

import json
import os
import random
import signal
import sys
import time
from collections import Counter
from itertools import count
from pathlib import Path

from generator.building.exchange import exchange
from generator.building.swap import replace_site
from generator.building.target import Target
from generator.commands.stopping import stoppable
from tests.building.small_sites import edition, no_exchange
from tests.building.watcher import Watched, look

SIGNALS = (signal.SIGKILL, signal.SIGTERM, signal.SIGINT)
UNEXPECTED = 98
LONGEST_LIFE_S = 0.03  # A few builds: so that most signals meet one that is moving in.
MOST_BUILDS = 100  # in such a life


def main(site: Path, kills: int, way: str) -> None:
    exchanged = {"exchange": exchange, "no_exchange": no_exchange}[way]
    draw = random.Random(kills)
    replace_site(Target(site), edition(0), exchanged)
    numbers, ends, gone = count(1), Counter(), 0
    with Watched(site) as seen:
        for number in range(kills):
            ends[killed(site, exchanged, SIGNALS[number % 3], draw.uniform(0, LONGEST_LIFE_S), numbers)] += 1
            gone += look(site)[1] is not None
            replace_site(Target(site), edition(next(numbers)), exchanged)
    print(json.dumps({
        "kills": kills, "ends": ends, "missing_after_a_kill": gone, "looks": seen.looks, "wrong": seen.wrong,
        "whole": look(site)[1] is None, "left": sorted(each.name for each in site.parent.iterdir() if each != site),
    }))  # fmt: skip


def killed(site: Path, exchanged, number: int, life_s: float, numbers) -> int:
    """Builds until it is killed; returns how it ended, as a shell counts."""
    signal.pthread_sigmask(signal.SIG_BLOCK, SIGNALS[1:])  # until the child listens
    child = os.fork()
    if child == 0:
        os._exit(built_until_stopped(site, exchanged, numbers))
    signal.pthread_sigmask(signal.SIG_UNBLOCK, SIGNALS[1:])
    for _ in range(MOST_BUILDS):  # The child has taken numbers of its own.
        next(numbers)
    time.sleep(life_s)
    os.kill(child, number)
    _, status = os.waitpid(child, 0)
    return os.waitstatus_to_exitcode(status)


def built_until_stopped(site: Path, exchanged, numbers) -> int:
    """The exit code of a command that builds on and on until a signal ends it."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stderr.fileno())
    try:
        with stoppable(lambda: ""):
            signal.pthread_sigmask(signal.SIG_UNBLOCK, SIGNALS[1:])
            while True:
                replace_site(Target(site), edition(next(numbers)), exchanged)
    except SystemExit as ended:
        return ended.code
    except BaseException as error:  # Never back into the parent's own code.
        return UNEXPECTED + isinstance(error, Exception)


if __name__ == "__main__":
    main(Path(sys.argv[1]), int(sys.argv[2]), sys.argv[3])
