"""Lists as a practice may hand them over after years of spreadsheets, and as somebody who means harm would."""

import json
import random
from dataclasses import dataclass

NAMES = ("client", "grass", "place", "area", "site", "plan", "on")
KEPT_NAMES = ("work", "date", "start", "lawn", "grass", "area", "product", "amount", "nitrogen_percent", "wind_speed", "temperature", "rain", "remarks")
ODD = (
    "", " ", "'", '"', '""', "=1+1", "@SUM(A1)", "\t=1", "-1", "\u202eabc", "\u200b", "\ufeff", "\uff1d1", "é", "ß", "İ", "日本", "😀", "a" * 5000, "A" * 70000, "0", "-0",
    "1e30 m2", "1e-300 m2", "1e308 ha", "1e999", "nan", "inf", "-5 m2", "9" * 79, "1/0", "30 m x 1e300 m", "5,000 m2", "1.234,5 m2", "½ ha", "２４０ m2",
    "9999-12-31", "0001-01-01", "1899-12-31", "2200-01-01", "2026-02-30", "20261012", "2026-W10-1", "12/10/2026", "2026-10-12T00:00Z", "null", "~", "true", "{}", "[]",
    "../../etc/passwd", "%s%n", "{0}", "\x00", "\x1b[31m", "\r", "\n", "a\nb", "a,b", "a;b", "\\", "couch'", "NULL", "#REF!", "\u2028", "\x85",
)  # fmt: skip
ENCODINGS = ("utf-8", "utf-8", "utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "latin-1", "cp1252", "utf-32", "shift_jis")
LINE_ENDS = ("\n", "\r\n", "\r", "\n\r", "\n\n", "\u2028")
SEPARATORS = (",", ",", ",", ";", "\t", "|", ":", ", ")


@dataclass(frozen=True)
class Known:
    """Ids that a book has, so that some values are right."""

    grasses: tuple[str, ...]
    places: tuple[str, ...]
    plans: tuple[str, ...]


def hostile_list(draw: random.Random, known: Known, kept: bool = False) -> tuple[str, bytes, tuple[str, ...]]:
    """A file's name and bytes, and options to go with it."""
    good = _kept_value if kept else _lawn_value
    names = list(KEPT_NAMES if kept else NAMES)
    oddness = draw.choice((0.0, 0.0, 0.02, 0.1))

    def value(name: str) -> str:
        return draw.choice(ODD) if draw.random() < oddness else good(draw, name, known)

    rows = [{name: value(name) for name in names} for _ in range(draw.choice((0, 1, 1, 2, 3, 3, 8)))]
    if not kept and draw.random() < 0.3:
        return "lawns.yml", _torn(draw, _encoded(draw, _yaml(draw, rows))), ()
    separator = draw.choice(SEPARATORS) if draw.random() < 0.5 else ","
    if draw.random() < 0.3:
        draw.shuffle(names)
    if draw.random() < 0.15:
        names[draw.randrange(len(names))] = draw.choice((*names, *ODD))
    if draw.random() < 0.1:
        names = names[: draw.randrange(len(names))]
    lines = [names, *([row.get(name, "") for name in names] for row in rows)]
    if draw.random() < 0.1:
        lines.append(["x"] * draw.choice((1, 40, 3000)))
    text = draw.choice(LINE_ENDS[:3] if draw.random() < 0.9 else LINE_ENDS).join(separator.join(_quoted(draw, cell, separator) for cell in line) for line in lines)
    options = ("--separator", draw.choice((";", "tab", "|", ",", "\t", "x", ""))) if draw.random() < 0.15 else ()
    return draw.choice(("list.csv", "list.CSV", "list.csv", "a list.csv", "l\nist.csv")), _torn(draw, _encoded(draw, text)), options


def _lawn_value(draw: random.Random, name: str, known: Known) -> str:
    match name:
        case "client":
            return f"TL-{draw.randrange(1000):03}"
        case "grass":
            return draw.choice(known.grasses)
        case "place":
            return draw.choice(known.places)
        case "area":
            return draw.choice((f"{draw.randrange(1, 2000)} m2", f"{draw.randrange(10, 9000)} ft2", str(draw.random() * 500), "0.01 m2", "9999999 m2", "0,5 ha"))
        case "site":
            return draw.choice(("open", "open", "wall", "hollow", "shade", ""))
        case "plan":
            return draw.choice((*known.plans, "", "", "", "", "", ""))
    return draw.choice(("", "", f"{draw.randrange(1900, 2200)}-{draw.randrange(1, 13):02}-{draw.randrange(1, 29):02}"))


def _kept_value(draw: random.Random, name: str, known: Known) -> str:
    match name:
        case "work":
            return draw.choice(("feed", "spray"))
        case "date":
            return f"{draw.randrange(1, 9999):04}-{draw.randrange(1, 13):02}-{draw.randrange(1, 29):02}"
        case "amount":
            return f"{draw.random() * 50:.3f} kg"
        case "nitrogen_percent":
            return f"{draw.randrange(46)} %"
        case "temperature":
            return f"{draw.randrange(-9, 40)} °C"
        case "start":
            return f"{draw.randrange(24)}:{draw.randrange(60):02}"
        case "lawn":
            return f"TL-{draw.randrange(9)}"
        case "product":
            return "Made-up feed"
    return _lawn_value(draw, name, known) if name in NAMES else ""


def _yaml(draw: random.Random, rows: list[dict[str, str]]) -> str:
    given = [{name: value for name, value in row.items() if value} for row in rows]
    match draw.randrange(6):
        case 0:
            return json.dumps(given)
        case 1:
            return "".join(f"- {{{', '.join(f'{name}: {value}' for name, value in row.items())}}}\n" for row in given)
        case 2:
            return "&a\n" + "".join(f"- &b{number} {json.dumps(row)}\n- *b{number}\n" for number, row in enumerate(given)) + draw.choice(("- *a", "- <<: *a", "- !!python/object:os.system x", "- *c", ""))
    return "".join(f"- {json.dumps(row, ensure_ascii=False)}\n" for row in given)


def _quoted(draw: random.Random, cell: str, separator: str) -> str:
    chance = draw.random()
    if chance < 0.003:
        return f'"{cell}'
    if chance < 0.006:
        return f'{cell}"'
    needs = any(sign in cell for sign in (separator, '"', "\n", "\r"))
    return '"' + cell.replace('"', '""') + '"' if needs or chance < 0.2 else cell


def _encoded(draw: random.Random, text: str) -> bytes:
    return text.encode(draw.choice(ENCODINGS) if draw.random() < 0.3 else "utf-8", errors="replace")


def _torn(draw: random.Random, content: bytes) -> bytes:
    """Most as they are; some cut short, some with a few bytes changed or put in, as a broken disk or a careless program leaves them."""
    chance = draw.random()
    if chance < 0.85 or not content:
        return content
    if chance < 0.9:
        return content[: draw.randrange(len(content))]
    for _ in range(draw.randrange(1, 6)):
        at = draw.randrange(len(content))
        content = content[:at] + draw.choice((b"\xff", b"\0", b'"', b",", b";", b"\r", b"\n", b"\xc3", b"=", b"- ")) + content[at + draw.randrange(2) :]
    return content
