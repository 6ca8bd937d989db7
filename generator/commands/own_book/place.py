"""`swardbook place`: a place of one's own, from a weather station's days, from twelve months, or from the nearest station that is known."""

from pathlib import Path
from typing import Any

import click

from generator.book.daily.daily_dates import DATE_ORDERS
from generator.book.daily.daily_reading import AskedOfDays, read_days, told_reads
from generator.book.daily.daily_units import told_units, unit_named, units_for
from generator.book.daily.layout_table import ROLES, Role, layout_table
from generator.book.daily.monthly_reading import read_months
from generator.book.loading.whole_book import read_book
from generator.book.stations.nearest_stations import NearStation, nearest_stations, station_tables
from generator.checks import check_book
from generator.commands.common import book_option
from generator.commands.exit_codes import ExitCode
from generator.commands.own_book.place_asked import PlaceAsked, identifier, twelve
from generator.commands.own_book.place_normals import Whereabouts, from_days, from_months, from_station, near_line, told_normals
from generator.commands.writing import write_out
from generator.files.place_record import PlaceWritten, place_text, source_text
from generator.findings import Finding, one_line, shown, suggestion
from generator.moment import this_year
from generator.season.normals.borrowed_normals import TypedMonths, nearest_place, whole_months
from generator.season.normals.record_normals import NoNormals, normals_of

COLUMNS = ("date", "year", "month", "day", *ROLES)
file_option = click.Path(exists=True, dir_okay=False, path_type=Path)


@click.command()
@book_option
@click.argument("name", required=False)
@click.option("--daily", multiple=True, type=file_option, metavar="FILE", help="Days of a station; again for a further file.")
@click.option("--monthly", type=file_option, metavar="FILE", help="A table of months: month, maximum, minimum, rain; of many years, with a column for the year.")
@click.option("--maximum", metavar="'12 FIGURES'", help="Typed: mean daily maxima of January to December, °C.")
@click.option("--minimum", metavar="'12 FIGURES'", help="Typed: mean daily minima, °C.")
@click.option("--mean", metavar="'12 FIGURES'", help="Typed: mean temperatures, °C, where no more is known.")
@click.option("--rain", metavar="'12 FIGURES'", help="Typed: rain of each month, mm.")
@click.option("--years", metavar="FIRST-LAST", help="The years that typed figures, or a table without a column of years, are the mean of.")
@click.option("--near", metavar="LAT,LON", help="Where the place lies; alone, its figures are those of the nearest station of the tables that come with the book.")
@click.option("--station", metavar="ID", help="With --near: another station of the list.")
@click.option("--latitude", type=float, help="In place of --near; south is negative.")
@click.option("--longitude", type=float, help="In place of --near; west is negative.")
@click.option("--elevation", type=float, help="Height above sea level, m.")
@click.option("--title", help="The name that pages print, where it is not NAME in capitals.")
@click.option("--region", help="State, county or province.")
@click.option("--country", help="Its two capitals, as in data/countries.yml.")
@click.option("--station-name", help="The station's own name.")
@click.option("--station-id", help="The station's number.")
@click.option("--column", multiple=True, metavar="WHAT=NAME", help="Which column holds what: date, year, month, day, maximum, minimum, rain.")
@click.option("--unit", multiple=True, metavar="WHAT=UNIT", help="Units of maximum, minimum, rain: °C, tenths of °C, °F, mm, tenths of mm, in.")
@click.option("--dates", type=click.Choice(DATE_ORDERS), help="How days are written, where the file does not tell.")
@click.option("--leave-out-wrong", is_flag=True, help="Leave out readings that cannot be, and say how many.")
@click.option("--source", metavar="ID", help="An entry of data/sources.yml that these figures are from, in place of the next four.")
@click.option("--service", help="Who measured: the weather service.")
@click.option("--address", help="The service's own page of the record, or 'none'.")
@click.option("--terms", help="Under which terms the service gives it.")
@click.option("--attribution", help="The wording that the service asks for, if it does.")
@click.option("--replace", is_flag=True, help="Write over a place of that name.")
@click.option("--list", "listed", is_flag=True, help="List the layouts and tables that are known; with --near, the nearest stations. Writes nothing.")
def place(root: Path, name: str | None, listed: bool, **given: Any) -> None:
    """Make the place NAME, a file of data/places that passes the check, from what is known of its weather.

    From a daily record (--daily), twelve months (--monthly, or typed), or the nearest station known (--near alone). What is guessed is shown, and
    each guess has an option.
    """
    asked = PlaceAsked(given)
    if listed:
        for line in _near_list(asked) if asked.near else _known():
            click.echo(line)
        return
    if name is None:
        raise click.UsageError("name the place, such as 'swardbook place dunedin --near=-45.87,170.50'; '--list' shows what can be read")
    id = identifier(name)
    file = root / "data" / "places" / f"{id}.yml"
    if not file.parent.is_dir():
        raise click.UsageError(f"{one_line(root)}: no data/places here; go to the folder of a book or name it with --book")
    if file.exists() and not given["replace"]:
        raise click.UsageError(f"there is a place '{id}' already; take another name, or --replace")
    made, source = _made(root, id, name, asked)
    sources = root / "data" / "sources.yml"
    if source is not None:
        before = sources.read_bytes() if sources.exists() else b""
        write_out(sources, before + (b"" if before.endswith(b"\n\n") or not before else b"\n") + source.encode())
        click.echo(f"Wrote its source into {one_line(sources)}")
    write_out(file, place_text(made).encode())
    click.echo(f"Wrote {one_line(file)}")
    findings = [each for each in check_book(root, this_year()).findings if each.where.path in (f"data/places/{id}.yml", "data/sources.yml")]
    _refuse(findings)


def _made(root: Path, id: str, name: str, asked: PlaceAsked) -> tuple[PlaceWritten, str | None]:
    """The place, and the entry of its source where the book has none yet."""
    ways = {"--daily": bool(asked.given["daily"]), "--monthly": asked.given["monthly"] is not None, "typed months": asked.typed}
    several = [way for way, taken in ways.items() if taken]
    if len(several) > 1:
        raise click.UsageError(f"{' and '.join(several)} are two ways to the same figures; take one")
    if ways["--daily"]:
        return _by_days(root, id, name, asked)
    if several:
        return _by_months(root, id, name, asked)
    if asked.near:
        return _by_station(root, name, asked)
    raise click.UsageError("say what is known: --daily FILE, --monthly FILE, typed months, or --near LAT,LON; '--list' shows what can be read")


def _by_days(root: Path, id: str, name: str, asked: PlaceAsked) -> tuple[PlaceWritten, str | None]:
    record, reads, findings = read_days(asked.given["daily"], _asked_of_days(asked))
    for line in told_reads(reads):
        click.echo(line)
    _refuse(findings)
    try:
        normals = normals_of(record)
    except NoNormals as none:
        for reason in none.reasons:
            click.echo(f"{reason}; name further years or files with --daily", err=True)
        raise SystemExit(ExitCode.FINDINGS) from None
    for line in told_normals(normals, record):
        click.echo(line)
    services = [each.head.layout.service for each in reads if each.head.layout]
    at, source = _whereabouts(root, id, name, asked, f"Daily record, {record.first.year} to {record.last.year}", services[0] if services else None)
    files = ", ".join(read.name for read in reads)
    return from_days(at, normals, record, f"Made by 'swardbook place' from the days of {files}. The words are yours to change."), source


def _asked_of_days(asked: PlaceAsked) -> AskedOfDays:
    return AskedOfDays(asked.pairs("column", COLUMNS), _asked_units(asked), asked.given["dates"], asked.given["leave_out_wrong"])


def _asked_units(asked: PlaceAsked) -> dict[Role, str]:
    units: dict[Role, str] = {}
    said = asked.pairs("unit", ROLES)
    for role in ROLES:
        if role in said:
            unit = unit_named(said[role])
            if unit not in units_for(role):
                raise click.UsageError(f"--unit {role}: '{shown(said[role])}' is none of {', '.join(units_for(role))}")
            units[role] = unit
    return units


def _by_months(root: Path, id: str, name: str, asked: PlaceAsked) -> tuple[PlaceWritten, str | None]:
    given, file = asked.given, asked.given["monthly"]
    if file is not None:
        table, findings = read_months(file, _asked_units(asked))
        _refuse(findings)
        click.echo(f"{one_line(file.name)}: a table of months, {told_units(table.units)}")
        of = table.months
        typed, years = TypedMonths(of.get("maximum"), of.get("minimum"), None, of.get("rain")), table.years
    else:
        high, low, mean, rain = (twelve(given[option], option) for option in ("maximum", "minimum", "mean", "rain"))
        typed = TypedMonths(high, low, mean, rain)
        years = None
    years = years or asked.years()
    at, source = _whereabouts(root, id, name, asked, f"Means of the months, {years[0]} to {years[1]}", None)
    book, _ = read_book(root)
    near = nearest_place({other: each for other, each in book.places.items() if other != id}, at.latitude_deg, at.longitude_deg)
    months = whole_months(typed, near)
    if months is None:
        raise click.UsageError("give --maximum and --minimum, or --mean; and --rain in a book that has no other place to take it from")
    for sentence in months.assumed:
        click.echo(f"assumed: {sentence}")
    origin = f"the table {one_line(file.name)}" if file is not None else "figures that were typed"
    return from_months(at, months, years, f"Made by 'swardbook place' from {origin}. The words are yours to change."), source


def _by_station(root: Path, name: str, asked: PlaceAsked) -> tuple[PlaceWritten, str | None]:
    near = _near(asked)
    for number, each in enumerate(near, 1):
        click.echo(near_line(number, each))
    chosen, wanted = near[0], asked.given["station"]
    if wanted is not None:
        ids = [each.station.id for each in near]
        if wanted not in ids:
            told = suggestion(wanted, ids, f"they are {', '.join(ids)}")
            raise click.UsageError(f"--station: '{shown(wanted)}' is none of the nearest; {told}")
        chosen = near[ids.index(wanted)]
    station, table = chosen.station, chosen.station.table
    whole = next((each.station for each in near if each.station.is_whole), None)
    better = f"; the nearest with a whole record of its own is {whole.name}: --station {whole.id}" if whole and not station.is_whole else ""
    click.echo(f"taken: {station.name}{better or '; --station takes another'}")
    latitude, longitude = asked.coordinates()
    entry = dict(table.source)
    source = entry.pop("id")
    at = Whereabouts(
        asked.title(name), asked.given["region"] or station.region, asked.given["country"] or station.country, latitude, longitude, asked.given["elevation"],
        station.name, station.id, source,
    )
    known = source in read_book(root)[0].sources
    return from_station(at, chosen, f"Made by 'swardbook place' from the station {station.id} of the table {table.id}."), None if known else source_text(source, entry)


def _whereabouts(root: Path, id: str, name: str, asked: PlaceAsked, title: str, service: str | None) -> tuple[Whereabouts, str | None]:
    """What no record says: asked for on a terminal, else by options, all that is missing at once."""
    given = asked.given
    source = given["source"]
    if source is not None and source not in (known := read_book(root)[0].sources):
        raise click.UsageError(f"--source: no entry '{shown(source)}' in data/sources.yml; {suggestion(source, known, 'leave it out, and say --service')}")
    answers = asked.complete(of_source=source is None, service=service)
    latitude, longitude = asked.coordinates()
    at = Whereabouts(
        asked.title(name), answers["region"], answers["country"], latitude, longitude, given["elevation"], answers["station_name"], given["station_id"],
        source or f"{id}-record",
    )
    if source is not None:
        return at, None
    address = answers["address"]
    link = {"no_address": "The service gave the record on request."} if address == "none" else {"address": address}
    return at, source_text(f"{id}-record", {
        "title": f"{title}: {answers['station_name']}", "organisation": answers["service"], **link, "read": "whole", "attribution": given["attribution"],
        "licence": answers["terms"],
    })


def _near(asked: PlaceAsked) -> list[NearStation]:
    return nearest_stations(*asked.coordinates(), asked.given["elevation"])


def _near_list(asked: PlaceAsked) -> list[str]:
    return [near_line(number, each) for number, each in enumerate(_near(asked), 1)]


def _known() -> list[str]:
    """The layouts and tables that are known, a line each."""
    lines = ["Daily records of these layouts are known (--daily); of any other, columns are told by their names:"]
    lines += [f"  {each.name}: {each.service}; {each.what}\n    {each.address}" for each in layout_table().layouts.values()]
    lines += ["Tables of stations (--near):"]
    return lines + [f"  {each.id}: {each.source['organisation']}, {each.first_year} to {each.last_year}" for each in station_tables()]


def _refuse(findings: list[Finding]) -> None:
    if findings:
        for finding in findings:
            click.echo(finding, err=True)
        raise SystemExit(ExitCode.FINDINGS)
