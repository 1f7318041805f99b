"""A take-off and a quotation made by hand, on the demo as it was really set out: what the sheets of the order are tried on."""

from dataclasses import replace
from decimal import Decimal
from functools import cache
from importlib.resources import files
from math import ceil

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.basis.citation import Citation, common_practice, house
from gaugerod.basis.finding import Finding, Sense, not_covered
from gaugerod.basis.working import Step
from gaugerod.job.record_wished import Deviation, RecordWished
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out
from gaugerod.take_off.answer import (
    Allowance,
    Masses,
    Measured,
    OrderLine,
    Packed,
    TakeOff,
    Trade,
    WasteCompared,
)
from gaugerod.take_off.money import LabourCost, MaterialCost, Price, Quotation, Rate, Task
from gaugerod.take_off.wished import MoneySettings

BREAKAGE = common_practice("breakage in carting and handling")
FLAT = common_practice("a flat percentage for cuts and breakage")
LEAD_LAPS = house("laps and trimming of sheet lead")
POUNDS = MoneySettings(currency="£", places=2, tax_name="VAT", tax_percent=Decimal(20))


@cache
def example(name: str) -> Result:
    """An example of the job file, set out once."""
    text = files("gaugerod.adapters.job_file").joinpath("examples", f"{name}.toml").read_text("utf-8")
    return set_out(read_job_text(text.encode()))


@cache
def taken_off(name: str = "demo") -> Result:
    """An example with a take-off made by hand from its own slopes."""
    result = example(name)
    taken = take_off(result)
    # The order worked out by the program itself is left out, with what was found of it.
    others = set() if result.take_off is None else set(result.take_off.findings)
    kept = (finding for finding in result.findings if finding not in others)
    return replace(result, take_off=taken, findings=tuple(dict.fromkeys((*kept, *taken.findings))))


@cache
def recorded(name: str = "demo") -> Result:
    """An example with its take-off, what is written into its record, and something outside that was accepted and something
    that was not."""
    result = taken_off(name)
    where = result.slopes[0].slope.name
    outside = (short("verge overhang", f"{where}, left, upper eaves"), short("ridge fixing", where))
    record = RecordWished(
        site="The yard, behind the old bakehouse",
        laid_by="the night shift",
        handed_to="the owner",
        deviations=(
            Deviation(
                what="The verge stands 2 mm short at its top, where the wall leans.",
                accepted_by="the owner",
                rule="verge overhang",
                where=f"{where}, left, upper eaves",
                on="the last Friday of May",
            ),
            Deviation(what="Old gutter kept.", accepted_by="the owner"),
        ),
    )
    return replace(result, job=replace(result.job, record=record), findings=(*result.findings, *outside))


def short(rule: str, where: str) -> Finding:
    """A finding outside its limit."""
    return Finding(
        rule=rule,
        where=where,
        proposed=36.0,
        limit=38.0,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=house("example"),
        says=f"The {rule} is 2 mm short of 38 mm.",
    )


def take_off(result: Result) -> TakeOff:
    """The take-off of a result, from its whole units and pieces."""
    laid = [(slope.slope.name, slope.laid) for slope in result.slopes if slope.laid is not None]
    by_slope = tuple((name, float(each.whole_units_count + len(each.pieces))) for name, each in laid)
    net = sum(count for _, count in by_slope)
    covering = Measured(
        item="tile",
        what=result.job.covering.title,
        trade=Trade.COVERING,
        unit="pieces",
        net=net,
        by_slope=by_slope,
        how="whole units, and one for each piece to saw",
        each_kg=4.9,
    )
    area_mm2 = sum(slope.shape.area_mm2 for slope in result.slopes)
    ridge = Measured(
        item="ridge-unit",
        what="ridge unit, 450 mm long",
        trade=Trade.EDGES,
        unit="pieces",
        net=17.0,
        by_slope=(("rear, ridge", 17.0),),
        how="laid length over the cover of one",
        each_kg=None,
    )
    lead = Measured(
        item="lead-code-4-150",
        what="sheet lead, code 4, 150 mm wide, 5.2 m",
        trade=Trade.LEAD,
        unit="kg",
        net=15.86,
        by_slope=(("rear, right abutment", 12.36), ("rooflight", 3.5)),
        how="pieces with their laps, by the mass of the sheet",
        citation=house("mass of sheet lead"),
    )
    batten = Measured(
        item="counter-batten",
        what="counter-batten 38 × 25 mm",
        trade=Trade.BATTENS,
        unit="m",
        net=93.25,
        by_slope=(("rear", 93.25),),
        how="one up each rafter",
    )
    lines = (
        _line(covering, ceil(net * 0.02), BREAKAGE, pack_size=30.0, on_pallet_count=10),
        _line(batten, 4.66, house("off-cuts"), pack_size=None),
        _line(ridge, 0, BREAKAGE, pack_size=None),
        _line(lead, 0.8, LEAD_LAPS, pack_size=None),
    )
    counted_count, by_area_count = int(lines[0].order), area_mm2 / (324.0 * 298.0)
    flat_count = ceil(by_area_count * 1.1)
    return TakeOff(
        lines=lines,
        compared=(
            WasteCompared(
                item="tile",
                net_by_area_count=by_area_count,
                flat_ratio=0.1,
                flat_citation=FLAT,
                flat_count=flat_count,
                counted_count=counted_count,
                cuts_count=int(sum(len(each.pieces) for _, each in laid)),
                offcuts_saved_count=3,
                says=f"The cuts need {counted_count}; a flat 10 per cent would order {flat_count}.",
            ),
        ),
        masses=Masses(new_least_kg=1830.2, new_greatest_kg=1912.7, old_least_kg=1790.0, old_greatest_kg=1960.5),
        not_counted=("Mortar is not counted: how the ridge is held is not said.",),
        findings=(
            not_covered(
                rule="mass of an item",
                where="ridge-unit",
                proposed=None,
                unit="kg",
                citation=house("no record gives it"),
                says="The mass of a ridge unit is not known; the order's mass leaves it out.",
            ),
        ),
        working=Step("take-off", "lines of the order", {}, float(len(lines)), ""),
    )


def _line(
    measured: Measured, added: float, citation: Citation, *, pack_size: float | None, on_pallet_count: int = 1
) -> OrderLine:
    order = measured.net + added
    packed = None
    if pack_size is not None:
        packs_count = ceil(order / pack_size)
        packed = Packed(
            pack_size=pack_size,
            packs_count=packs_count,
            pallet_packs_count=on_pallet_count,
            pallets_count=ceil(packs_count / on_pallet_count),
            over=packs_count * pack_size - order,
        )
    return OrderLine(
        measured=measured,
        allowances=(
            Allowance(name="breakage" if measured.unit == "pieces" else "off-cuts", amount=added, citation=citation),
        )
        if added
        else (),
        order=order,
        packed=packed,
        mass_kg=order if measured.unit == "kg" else None if measured.each_kg is None else measured.each_kg * order,
    )


@cache
def quoted(name: str = "demo") -> tuple[Result, Quotation]:
    """A result with its order in money; ridge units and one task have no price."""
    result = taken_off(name)
    assert result.take_off is not None
    prices = {
        "tile": Price(item="tile", unit="pieces", amount=Decimal("1340.5"), per=Decimal(1000)),
        "counter-batten": Price(item="counter-batten", unit="m", amount=Decimal("0.855")),
        "lead-code-4-150": Price(item="lead-code-4-150", unit="kg", amount=Decimal("4.20"), note="cut to width"),
    }
    materials = []
    for line in result.take_off.lines:
        price = prices.get(line.measured.item)
        quantity = Decimal(str(round(line.bought, 3)))
        amount = None if price is None else (quantity / price.per * price.amount).quantize(Decimal("0.01"))
        materials.append(MaterialCost(line=line, price=price, quantity=quantity, amount=amount))
    lay = Task(task="lay-covering", what="lay the covering", unit="m2", quantity=36.6)
    ridge = Task(task="ridge", what="ridge", unit="m", quantity=7.5)
    rate = Rate(task="lay-covering", unit="m2", amount=Decimal(38))
    labour = (
        LabourCost(task=lay, rate=rate, quantity=Decimal("36.6"), amount=Decimal("1390.80")),
        LabourCost(task=ridge, rate=None, quantity=Decimal("7.5"), amount=None),
    )
    materials_total = sum((each.amount for each in materials if each.amount is not None), Decimal(0))
    labour_total = Decimal("1390.80")
    net_total = materials_total + labour_total
    tax = (net_total * Decimal("0.2")).quantize(Decimal("0.01"))
    return result, Quotation(
        materials=tuple(materials),
        labour=labour,
        money=POUNDS,
        materials_total=materials_total,
        labour_total=labour_total,
        net_total=net_total,
        tax=tax,
        total=net_total + tax,
        not_priced=("ridge unit, 450 mm long", "ridge"),
        not_used=("scaffold",),
    )
