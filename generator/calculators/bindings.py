"""What fills in a calculator's input: a field of the grass, the place, its season, the practice or the plan, and where it came from.

Whoever asks says what is chosen (`chosen.Chosen`); an expression that needs what was not chosen is `Unchosen`, and its input stays at
the usual start. The same expressions stand in a plan's `fill` and in a calculator's `binds`.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import replace

from generator.book.fields.sourced import Record
from generator.book.records.calculator import Calculator
from generator.book.records.grass import Grass
from generator.book.records.practice import Machine, Practice, PricedOperation, Product, SeasonGroupFigures
from generator.book.records.step import Quantity
from generator.calculators.chosen import Chosen
from generator.calculators.filled_value import BindError, Bound, Missing, Unchosen, as_bound, check_named, field_of, unit_of_field, words_of
from generator.calculators.season_fields import of_place, of_span, of_week
from generator.findings import suggestion
from generator.units import UnitError, from_si, unit

# Where a value comes from that the inspection measured.
MEASURED_HERE = "measured on this lawn"
_LITERAL = re.compile(r"(?P<number>[0-9]+(?:\.[0-9]+)?)(?: (?P<unit>\S.*))?")
# Where a grass carries its own figure in place of its group's.
_OWN = {"growth_optimum": "optimum", "growth_base": "base"}


def parts_of(expression: str) -> tuple[str, ...]:
    """The alternatives of an expression: 'grass.seed_rate or 20 g/m2' has two."""
    return tuple(part.strip() for part in expression.split(" or "))


def filled(expressions: Mapping[str, str], context: Chosen) -> dict[str, Bound]:
    """What each expression stands for, by input name; those that nothing chosen gives are left out.

    Raises BindError for one that names nothing.
    """
    found = {}
    for name, expression in expressions.items():
        try:
            found[name] = bound_value(expression, context)
        except Missing:
            continue
    return found


def bindings(calculator: Calculator) -> dict[str, str]:
    """What each bound input is filled in from, as an expression for `bound_value`."""
    return {name: asked.binds for name, asked in calculator.inputs.items() if asked.binds}


def filled_in(quantity: Quantity, chosen: Chosen, calculator: Calculator) -> dict[str, Bound]:
    """What a step or a sheet fills in of its calculator, and what the calculator's other inputs are bound to, by input."""
    return filled({**bindings(calculator), **quantity.fill}, replace(chosen, machine=quantity.machine))


def practice_filled(practice: Practice, calculator: Calculator) -> dict[str, Bound]:
    """The practice's own figures, where an input is bound to one; what it does not give stays at the usual start."""
    return filled(bindings(calculator), Chosen(practice=practice))


def bound_value(expression: str, context: Chosen) -> Bound:
    """What a `fill` or `binds` expression stands for.

    expression: a value, '5 mm'; a field of the
    - grass: 'grass.topdressing_depth', or an end of a range, 'grass.nitrogen_per_year.high';
    - grass's season group, the grass's own figure first: 'group.crop_coefficient';
    - place: 'place.latitude'; week of the day in the season of the grass at the place: 'week.rain', see `season_fields.WEEK`;
      two dates there: 'span.days', 'span.degree_days_at_first', see `season_fields.SPAN`;
    - practice: 'practice.hourly_price', 'practice.feed.nitrogen_percent' (the product chosen, else the practice's own feed),
      'practice.product.price' (the product chosen), 'practice.products.fine-granule.price', and so for 'machine' and 'machines',
      'operation' and 'operations';
    - plan: 'renovation.feed-later', one of its figures; shared step: 'step.water-in.depth', of one watering;
    - task: 'task.one-watering-on-sand', one of the figures of the task whose page it is;
    - inspection: 'inspection.thatch-depth', what a question of the sheet measured on this lawn;
    or several parted by ' or ', of which the first that is given counts.
    Raises Missing when every part exists but none is given here (Unchosen when a choice could give it), BindError for a part that
    names nothing.
    """
    missing: list[Missing] = []
    for part in parts_of(expression):
        try:
            return _bound(part, context)
        except Missing as error:
            missing.append(error)
    kind = Unchosen if any(isinstance(error, Unchosen) for error in missing) else Missing
    raise kind(" and ".join(error.what for error in missing), missing[0].instead, next((e.unit for e in missing if e.unit), None))


def _bound(part: str, context: Chosen) -> Bound:
    kind, _, path = part.partition(".")
    if kind not in _KINDS or not path:
        return _literal(part, context)
    return _KINDS[kind](part, path.split("."), context)


def _literal(part: str, context: Chosen) -> Bound:
    found = _LITERAL.fullmatch(part)
    if not found:
        raise BindError(
            f"'{part}' is neither a value nor a field", "write a value with its unit, such as '5 mm', or a field, such as 'grass.seed_rate'"
        )
    try:
        spelling = unit(found["unit"] or "1").spelling
    except UnitError as error:
        raise BindError(error.what, error.instead) from error
    return Bound(float(found["number"]), spelling, f"set by {context.told_by}")


def _of_plan(part: str, names: list[str], context: Chosen) -> Bound:
    figures = context.renovation.figures if context.renovation else {}
    name = ".".join(names)
    if name not in figures:
        known = f"the plan's figures are {', '.join(figures)}" if figures else "give the plan `figures`, or write a value"
        raise BindError(f"'{part}' is not among this plan's figures", suggestion(name, figures, known))
    figure = figures[name]
    return Bound(figure.default, figure.unit, "set by this plan")


def _of_task(part: str, names: list[str], context: Chosen) -> Bound:
    name = ".".join(names)
    if context.task is None:
        raise BindError(f"'{part}' belongs on a task's page", "write a value, or a field such as 'grass.seed_rate'")
    figures = context.task.figures
    if name not in figures:
        known = f"its figures are {', '.join(figures)}" if figures else "give the task `figures`, or write a value"
        raise BindError(f"'{part}' is not among this task's figures", suggestion(name, figures, known))
    return Bound(figures[name].default, figures[name].unit, f"from this task's figures, {name.replace('-', ' ')}")


def _of_step(part: str, names: list[str], context: Chosen) -> Bound:
    """The depth of one watering of a shared step."""
    if len(names) != 2 or names[1] != "depth":
        raise BindError(f"'{part}' names no field of a step", "write 'step.NAME.depth', for the depth of one of its waterings")
    if context.steps is None:
        raise Unchosen(f"'{part}' needs the book's steps", "give the book steps", "mm")
    watered = {id: (step, step.watering.depth) for id, step in context.steps.items() if step.watering is not None}
    if names[0] not in watered:
        known = f"the steps that water are {', '.join(watered)}" if watered else "no step of this book waters"
        raise BindError(f"step '{names[0]}' waters nothing or is not in data/steps", suggestion(names[0], watered, known))
    step, depth = watered[names[0]]
    return bound_value(depth, context)._replace(where_from=f"from our step: {step.title}")


def _of_grass(part: str, names: list[str], context: Chosen) -> Bound:
    grass = context.grass
    if grass is None:
        check_named(part, Grass, names[0])
        raise Unchosen(f"'{part}' needs a grass", "choose a grass")
    if names[-1] in ("low", "high"):
        # The ends of a range carry no unit of their own.
        return Bound(field_of(part, grass, names), field_of(part, grass, names[:-1]).unit, f"from this grass's {words_of(names[-2])}")
    return as_bound(part, field_of(part, grass, names), names[-1], f"this grass's {words_of(names[-1])}")


def _of_group(part: str, names: list[str], context: Chosen) -> Bound:
    check_named(part, SeasonGroupFigures, names[0])
    grass = context.grass
    own = getattr(grass.season, _OWN[names[0]]) if grass and names[0] in _OWN else None
    if own is not None:
        return as_bound(part, own, names[0], f"this grass's {words_of(names[0])}")
    if grass is None or context.groups is None:
        raise Unchosen(f"'{part}' needs a grass", "choose a grass")
    figures = getattr(context.groups, grass.season_group)
    return as_bound(part, field_of(part, figures, names), names[-1], f"the {grass.season_group}-season group's {words_of(names[-1])}")


def _of_practice(part: str, names: list[str], context: Chosen) -> Bound:
    if names[0] in _THINGS:
        return _of_thing(part, names, context)
    if names[0] not in Practice.model_fields or len(names) > 1:
        known = [name for name in Practice.model_fields if unit_of_field(name)] + list(_THINGS)
        raise BindError(f"'{part}' names no field", suggestion(names[0], known, "write 'practice.feed.nitrogen_percent'"))
    if context.practice is None:
        raise Unchosen(f"'{part}' needs a practice", "give the book a practice", unit_of_field(names[0]))
    return as_bound(part, field_of(part, context.practice, names), names[0], f"the practice's {words_of(names[0])}")


# The word in an expression -> the practice's table that it is looked up in.
_THINGS = {
    "feed": "products", "product": "products", "products": "products", "machine": "machines", "machines": "machines",
    "operation": "operations", "operations": "operations",
}
_RECORDS: dict[str, type[Record]] = {"products": Product, "machines": Machine, "operations": PricedOperation}
_WRITE = {
    "products": "write 'practice.feed.nitrogen_percent' or 'practice.products.NAME.pack_mass_kg'",
    "machines": "write 'practice.machine.speed_km_per_h' or 'practice.machines.NAME.speed_km_per_h'",
    "operations": "write 'practice.operation.minimum_price' or 'practice.operations.TASK.minimum_price'",
}


def _of_thing(part: str, names: list[str], context: Chosen) -> Bound:
    """A field of a product, machine or operation: named here, chosen by whoever asks, or the practice's own feed."""
    word, table, field = names[0], _THINGS[names[0]], names[-1]
    named = word == table
    if len(names) != (3 if named else 2):
        raise BindError(f"'{part}' names no field of {table}", _WRITE[table])
    check_named(part, _RECORDS[table], field)
    if context.practice is None:
        raise Unchosen(f"'{part}' needs a practice", "give the book a practice", unit_of_field(field))
    chosen = {"products": context.product, "machines": context.machine, "operations": context.operation}[table]
    id = names[1] if named else chosen or (context.practice.feed if word == "feed" else None)
    if id is None:
        thing = table.removesuffix("s")
        a_thing = f"{'an' if thing[0] in 'aeiou' else 'a'} {thing}"
        raise Unchosen(f"'{part}' needs {a_thing}", f"choose {a_thing}", unit_of_field(field))
    things = getattr(context.practice, table)
    if id not in things:
        known = f"the {table} are {', '.join(things)}"
        raise BindError(f"{table.removesuffix('s')} '{id}' is not in practice.yml", suggestion(id, things, known))
    return as_bound(part, field_of(part, things[id], [field]), field, f"{getattr(things[id], 'name', 'our prices for ' + id)}, {words_of(field)}")


def asked_of_inspection(expression: str) -> str | None:
    """The question of the inspection whose measure comes before all else in an expression; None where there is none."""
    kind, _, name = parts_of(expression)[0].partition(".")
    return name if kind == "inspection" and name else None


def _of_inspection(part: str, names: list[str], context: Chosen) -> Bound:
    questions = {each.id: each.unit for each in context.sheet.questions if each.unit} if context.sheet else {}
    if context.sheet and (len(names) != 1 or names[0] not in questions):
        known = f"what it measures is {', '.join(questions)}"
        raise BindError(f"'{part}' names nothing that the inspection measures", suggestion(names[0], questions, known))
    spelling = questions.get(names[0])
    if spelling is None or names[0] not in context.measured:
        raise Unchosen(f"'{part}' needs a measure of this lawn", "answer it on the inspection sheet", spelling)
    return Bound(from_si(context.measured[names[0]], unit(spelling)), spelling, MEASURED_HERE)


_KINDS: dict[str, Callable[[str, list[str], Chosen], Bound]] = {
    "grass": _of_grass, "group": _of_group, "place": of_place, "week": of_week, "practice": _of_practice, "renovation": _of_plan,
    "step": _of_step, "task": _of_task, "span": of_span, "inspection": _of_inspection,
}
