"""What somebody may type after a command, by slip or by malice."""

import random
from collections.abc import Iterator

WORDS = (
    "", " ", "=", "==", "x=", "=x", "é" * 10_000, "x" * 10_000, "core", "core=", "core=2026-10-14", "core=9999-12-31", "core=0001-01-01", "2026-10-13=8 mm", "2026-10-13=1e400 mm",
    "2026-10-13=-1 mm", "9999-12-31=8 mm", "thatch-depth=30 mm", "thatch-depth=1e300 mm", "thatch-depth=nan", "area=1e30 m2", "area=0", "area=-1", "area=nan", "area=1e-300 m2",
    "area=240 m2", "area=240 m2\n", "depth=5 mm", "depth=1e308 m", "packs=2", "low=2 °C", "low=-1e300 °C", "low=nan", "wind=1e999", "leaf=dry", "leaf=\u202e", "10-12", "02-30", "2026-10-12",
    "20261012", "9999-12-31", "0001-01-01", "240 m2", "1e30 m2", "0", "-5", "nan", "inf", "\ud800", "\x1b[31m", "a\nb", "../..", "/", "{0}", "%s", "日本", "-", "--", "--x",
    "5,000 m2", "1/0", "couch", "sydney", "hollow", "scarify", "sand-tonne",
)  # fmt: skip
OPTIONS = {
    "plan": ("--grass", "--place", "--area", "--on", "--site", "--done", "--without", "--inspection", "--rain", "--first-on"),
    "calc": ("--grass", "--place", "--on", "--until", "--product", "--machine", "--operation", "--solve"),
    "hold": ("--grass",), "season": ("--site",),
}
FLAGS = {"plan": ("--json",), "calc": ("--json", "--us", "--list"), "hold": ("--json", "--list"), "season": ("--json",)}
START = {
    "plan": ("warm-below-ground", "--grass", "couch", "--place", "sydney", "--area", "240 m2", "--on", "2026-10-12"),
    "hold": ("scarify",), "season": ("couch", "sydney"),
}


def hostile_arguments(draw: random.Random, calculators: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """Commands with what follows them, without end."""
    while True:
        command = draw.choice(("plan", "plan", "calc", "calc", "calc", "hold", "season"))
        words = list(START.get(command, (draw.choice(calculators),)))
        if draw.random() < 0.3:
            words[draw.randrange(len(words))] = draw.choice(WORDS)
        for _ in range(draw.randrange(5)):
            chance = draw.random()
            if chance < 0.5:
                words += [draw.choice(OPTIONS[command]), draw.choice(WORDS)]
            elif chance < 0.65:
                words.append(draw.choice(FLAGS[command]))
            else:
                words.append(draw.choice(WORDS))
        yield command, *words
