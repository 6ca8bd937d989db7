"""How much of everything a job takes: each step's calculators for this lawn, and from them what to buy and carry away. Twin: job work."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from math import ceil

from generator.book.records.calculator import Calculator
from generator.book.records.practice import Practice, Product
from generator.book.records.step import Purchase, Quantity, Step
from generator.calculators.bindings import filled_in
from generator.calculators.calculate import Amount, Calculation, calculate
from generator.calculators.chosen import Chosen
from generator.calculators.single_value import single
from generator.formula import plain_sum
from generator.jobs.job_sentences import NOT_FOR_GRASS
from generator.units import Unit, to_si, unit

AREA = "area"
LAWN = "this lawn"
FEED_TASK = "feed"
# The calculator that counts bags and loads; a book without one has the volume alone.
SPOIL_LOADS = "spoil-loads"
SPOIL_COUNTS = {"bag_volume": "bags", "trailer_volume": "trailer_loads"}  # what one holds -> how many
SNAP = 1e-9  # Four full packs stay four, as in the formula language.


@dataclass(frozen=True)
class Worked:
    """A calculator at a step, worked out for this lawn.

    filled: input -> where its value comes from, for those that were not left at the usual start. needs_label: the product's
    label has to be read first, so there is no answer for the product yet.
    """

    quantity: Quantity
    run: Calculation
    filled: Mapping[str, str]
    needs_label: bool

    @property
    def results(self) -> Mapping[str, Amount]:
        """What can be said of this lawn: nothing where it starts from what is still to be measured."""
        return {} if self.quantity.measured else self.run.results

    @property
    def said(self) -> list[str]:
        """What the calculator warns of, for this lawn."""
        return [] if self.quantity.measured else [said.sentence for said in self.run.warnings if said.about is None]


@dataclass(frozen=True)
class Purchased:
    """One line of the shopping list.

    product: id in practice.yml, or None for what the practice has no product for. amount: [kg], [m3] or another SI unit, over
    all steps. packs, price_each and cost: None where the product names no pack or price. pack_si: what one holds, as `amount`.
    note: why there is no product for it, or None.
    """

    name: str
    product: str | None
    amount: Amount
    packs: int | None
    price_each: float | None
    steps: tuple[str, ...]
    pack_si: float | None = None
    note: str | None = None

    @property
    def cost(self) -> float | None:
        return None if self.packs is None or self.price_each is None else self.packs * self.price_each


@dataclass(frozen=True)
class Spoil:
    """What has to be carried away. volume_m3: as loose as it comes; bags, trailer_loads: None where the practice does not say what one holds."""

    volume_m3: float
    bags: int | None
    trailer_loads: int | None


@dataclass(frozen=True)
class Stock:
    """The practice's products, as one grass needs them. grass: its id, which seed is kept under; grass_name: for people."""

    practice: Practice
    grass: str
    grass_name: str


def worked(step: Step, chosen: Chosen, calculators: Mapping[str, Calculator], area_m2: float) -> tuple[Worked, ...]:
    """Every calculator of a step, with the lawn's area, what the plan fills in, and what its inputs are bound to.

    area_m2: of grass [m2]. Raises BindError for a `fill` that names nothing.
    """
    return tuple(_worked(each, chosen, calculators[each.calculator], area_m2) for each in step.quantities)


def _worked(quantity: Quantity, chosen: Chosen, calculator: Calculator, area_m2: float) -> Worked:
    found = filled_in(quantity, chosen, calculator)
    given = {name: to_si(each.value, unit(each.unit)) for name, each in found.items()}
    where_from = {name: each.where_from for name, each in found.items()}
    if takes_the_lawn(quantity, calculator):
        given[AREA], where_from[AREA] = area_m2, LAWN
    run = calculate(calculator, given)
    return Worked(quantity, run, where_from, any(problem.code == "missing" for problem in run.problems))


def takes_the_lawn(quantity: Quantity, calculator: Calculator) -> bool:
    """True where the calculator asks for an area and the plan leaves it to the lawn."""
    return AREA in calculator.inputs and AREA not in quantity.fill


def passes(step: Step, quantities: tuple[Worked, ...]) -> int:
    """How often the machine goes over the lawn: a result of the step's calculators, once where the step names none or it has no answer."""
    found = next((each.run.results[step.passes] for each in quantities if step.passes and step.passes in each.run.results), None)
    return 1 if found is None else round(single(found.si))


def line_key(buy: Purchase, step: Step, stock: Stock, amount_kind: str) -> str:
    """What a purchase is added up under: the product, or the task and the kind of amount where the practice has none."""
    return product_of(buy, step, stock) or f"{_bought_for(buy, step)} {amount_kind}"


def shopping(worked_steps: Iterable[tuple[Step, tuple[Worked, ...]]], stock: Stock) -> tuple[Purchased, ...]:
    """What has to be bought, each product once over all steps, in packs rounded up.
    """
    lines: dict[str, list[tuple[Step, Purchase, Amount, str | None, str]]] = {}
    for step, each in ((step, each) for step, several in worked_steps for each in several):
        buy = each.quantity.buy
        amount = each.run.results.get(buy.result) if buy else None
        if buy is None or amount is None:
            continue
        id = product_of(buy, step, stock)
        name = stock.practice.products[id].name if id else step.title or step.id
        lines.setdefault(line_key(buy, step, stock, amount.unit.kind), []).append((step, buy, amount, id, name))
    return tuple(_line(parts, stock) for parts in lines.values())


def _line(parts: list[tuple[Step, Purchase, Amount, str | None, str]], stock: Stock) -> Purchased:
    # Said as the step says it whose task it is bought for: sand for holes with the sand that goes on top.
    step, buy, first, id, name = next((part for part in parts if part[0].task == _bought_for(part[1], part[0])), parts[0])
    total = Amount(plain_sum(single(amount.si) for _, _, amount, _, _ in parts), first.unit, first.us_unit, first.decimals)
    product = stock.practice.products[id] if id else None
    pack = pack_si(product, total.unit) if product else None
    packs = None if pack is None else ceil(single(total.si) / pack - SNAP)
    return Purchased(name, id, total, packs, product.price if product else None, tuple(step.id for step, *_ in parts), pack, None if id else no_product(buy, step, stock))


def product_of(buy: Purchase, step: Step, stock: Stock) -> str | None:
    """Id of the product that is bought: the one named, the practice's feed for a feed, else its first for the task that is for this
    grass, one that names the grass before one that names none.
    """
    if buy.product is not None:
        return buy.product
    task = _bought_for(buy, step)
    if task == FEED_TASK:
        return stock.practice.feed
    fitting = [(id, product) for id, product in _for_task(task, stock) if not product.for_grasses or stock.grass in product.for_grasses]
    return min(fitting, key=lambda each: not each[1].for_grasses, default=(None, None))[0]


def no_product(buy: Purchase, step: Step, stock: Stock) -> str:
    """Why a line has no product and no price."""
    if any(True for _ in _for_task(_bought_for(buy, step), stock)):
        return NOT_FOR_GRASS["no-product-for-grass"].format(grass=stock.grass_name)
    return NOT_FOR_GRASS["no-product"]


def _bought_for(buy: Purchase, step: Step) -> str | None:
    return buy.task or step.task


def _for_task(task: str | None, stock: Stock) -> Iterator[tuple[str, Product]]:
    return ((id, product) for id, product in stock.practice.products.items() if task in product.for_tasks)


def pack_si(product: Product, wanted: Unit) -> float | None:
    """The pack in SI units of what is bought [kg or m3]; None where the product is not sold in that kind of pack."""
    if product.pack_mass_kg and wanted.dimension == unit("kg").dimension:
        return product.pack_mass_kg
    if product.pack_volume_l and wanted.dimension == unit("L").dimension:
        return to_si(product.pack_volume_l, unit("L"))
    return None


def spoil(worked_steps: Iterable[tuple[Step, tuple[Worked, ...]]], practice: Practice, calculators: Mapping[str, Calculator]) -> Spoil:
    """What has to be carried away, over all steps.

    A sum of the calculators' volumes [m3]; bags and loads by the calculator SPOIL_LOADS, for what the practice says one holds.
    """
    volume_m3 = plain_sum(
        single(each.run.results[spoil].si)
        for _, several in worked_steps for each in several if (spoil := each.quantity.spoil) and spoil in each.run.results
    )
    if SPOIL_LOADS not in calculators:
        return Spoil(volume_m3, None, None)
    holds = spoil_holds(practice)
    found = calculate(calculators[SPOIL_LOADS], {"volume": volume_m3, **holds}).results
    return Spoil(volume_m3, *(round(single(found[result].si)) if name in holds else None for name, result in SPOIL_COUNTS.items()))


def spoil_holds(practice: Practice) -> dict[str, float]:
    """Input of the calculator SPOIL_LOADS -> what one bag or trailer of the practice holds [m3], for those that it says."""
    holds = {"bag_volume": practice.spoil_bag_l and to_si(practice.spoil_bag_l, unit("L")), "trailer_volume": practice.trailer_volume_m3}
    return {name: volume for name, volume in holds.items() if volume}
