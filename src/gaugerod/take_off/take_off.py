"""The one entry: measured quantities, then allowances, then whole units, packs and pallets."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.citation import house
from gaugerod.basis.errors import InputRefused
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.basis.working import Step
from gaugerod.take_off.allowances import allowances
from gaugerod.take_off.answer import Measured, OrderLine, TakeOff, Trade
from gaugerod.take_off.ask import TakeOffAsk
from gaugerod.take_off.ask_faults import ask_faults
from gaugerod.take_off.beneath import beneath_measured
from gaugerod.take_off.compared import waste_compared
from gaugerod.take_off.covering import covering_measured
from gaugerod.take_off.edge_parts import edges_measured
from gaugerod.take_off.left_out import left_out
from gaugerod.take_off.masses import mass_findings, masses
from gaugerod.take_off.ordered import ordered
from gaugerod.take_off.packs import packed

UNIT_BY_UNIT = house("the covering is counted unit by unit as it is laid, so a slope that is not laid is not counted")


def take_off(ask: TakeOffAsk) -> TakeOff:
    """The whole take-off: no line is less than what lies on the roof.

    Source: the plans of each part; allowances the edition's or the job's own (``standards.waste``).
    Scope: slopes that were laid; parts that were worked out. What is left out is told in ``not_counted``.
    Raises InputRefused with every fault of the figures.
    """
    faults = tuple(ask_faults(ask))
    if faults:
        raise InputRefused(faults)
    measured = [*covering_measured(ask), *beneath_measured(ask), *edges_measured(ask.edges)]
    lines = tuple(_line(ask, each) for each in sorted(measured, key=lambda each: list(Trade).index(each.trade)))
    return TakeOff(
        lines=lines,
        compared=() if ask.not_laid or ask.not_set_out else tuple(waste_compared(ask)),
        masses=masses(ask),
        not_counted=tuple(left_out(ask, lines)),
        findings=(*_not_laid(ask), *mass_findings(ask)),
        working=_working(lines),
    )


def _line(ask: TakeOffAsk, measured: Measured) -> OrderLine:
    added = tuple(allowances(ask, measured))
    pack = next((pack for pack in ask.wished.packs if pack.item == measured.item), None)
    needed = measured.net + sum(allowance.amount for allowance in added)
    order = ordered(needed, measured.unit, loose=pack is None)
    bought = None if pack is None else packed(order, pack)
    comes = order if bought is None else bought.packs_count * bought.pack_size
    each_kg = measured.each_kg
    return OrderLine(
        measured=measured,
        allowances=added,
        order=order,
        packed=bought,
        mass_kg=None if each_kg is None else comes * each_kg,
    )


def _not_laid(ask: TakeOffAsk) -> Iterator[Finding]:
    for name in ask.not_laid:
        yield not_covered(
            rule="take-off",
            where=name,
            proposed=None,
            unit="pieces",
            citation=UNIT_BY_UNIT,
            says="This slope was not laid out unit by unit, so nothing of it is in the order: see why in its own findings.",
        )


def _working(lines: Sequence[OrderLine]) -> Step:
    return Step(
        name="take-off",
        formula="measured quantity + allowances, rounded up",
        inputs={"lines": float(len(lines))},
        value=float(len(lines)),
        unit="lines",
        parts=tuple(
            Step(
                name=line.measured.what,
                formula=f"{line.measured.how}; {', '.join(each.name for each in line.allowances) or 'nothing added'}",
                inputs={f"measured ({line.measured.unit})": line.measured.net},
                value=line.order,
                unit=line.measured.unit,
                citation=line.allowances[0].citation if line.allowances else line.measured.citation,
            )
            for line in lines
        ),
    )
