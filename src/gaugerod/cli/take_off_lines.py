"""The take-off and the order for the terminal: measured, added, to order, packed; and first of all what is left out."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.finding import Finding, Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.cli.lines import finding_lines, wrapped
from gaugerod.job.result import Result
from gaugerod.setting_out.said import counted
from gaugerod.sheets.money_said import money_said
from gaugerod.sheets.order_left_out import left_out
from gaugerod.sheets.order_tables import trade_said
from gaugerod.sheets.quantity_said import mass_said, masses_between, quantity_said
from gaugerod.take_off.answer import OrderLine, Packed, TakeOff
from gaugerod.take_off.money import Quotation

_INDENT = "    "


def take_off_lines(result: Result) -> list[str]:
    """Every line as it was measured and as it is to be ordered, the comparison, the masses, and what to read."""
    taken, unit = result.take_off, result.job.show_lengths_in
    lines = [f"{result.job.title}: {result.job.covering.title}", f"rules: edition {result.job.edition.value}"]
    lines.extend(_left_out(result))
    if taken is not None:
        lines.extend(_by_trade(taken, unit))
        lines.extend(_compared(taken))
        lines.extend(_masses(taken))
    lines.extend(finding_lines(_findings(result)))
    lines.append("  Of the edges and the order, and all that is outside. gaugerod set-out tells the rest.")
    lines.extend(["", *wrapped(result.cautions[-1])])
    return lines


def order_lines(result: Result) -> list[str]:
    """What to buy, line by line, and what it leaves out."""
    taken, unit = result.take_off, result.job.show_lengths_in
    lines = [f"{result.job.title}: {result.job.covering.title}", *_left_out(result)]
    for trade, of_trade in () if taken is None else taken.by_trade:
        lines.extend(["", trade_said(trade)])
        for line in of_trade:
            lines.extend(wrapped(f"{line.measured.what}: {_to_buy(line, unit)}", first="  "))
    return lines


def quotation_lines(quotation: Quotation) -> list[str]:
    """The totals, and what is not in them."""
    money = quotation.money
    tax = "no tax is counted" if quotation.tax is None else money_said(quotation.tax, money)
    name = money.tax_name or "tax"
    lines = [
        "",
        "In money",
        f"  materials        {money_said(quotation.materials_total, money)}",
        f"  labour           {money_said(quotation.labour_total, money)}",
        f"  before tax       {money_said(quotation.net_total, money)}",
        f"  {name[:16]:16} {tax}",
        f"  TOTAL            {money_said(quotation.total, money)}",
    ]
    if quotation.not_priced:
        lines.append(f"  NOT in the total: {counted(len(quotation.not_priced), 'thing')} without a price")
        for each in quotation.not_priced:
            lines.extend(wrapped(each, first="    ·  "))
    if quotation.not_used:
        lines.extend(wrapped(f"On the list, and not in this order: {', '.join(quotation.not_used)}.", first="  "))
    return lines


def _left_out(result: Result) -> Iterator[str]:
    said = left_out(result)
    if result.take_off is None:
        said = ("No slope was laid, so nothing is counted.",)
    if said:
        yield ""
        yield f"NOT in this order: {counted(len(said), 'thing')}"
        for each in said:
            yield from wrapped(each, first="  ·  ")


def _by_trade(taken: TakeOff, unit: LengthUnit) -> Iterator[str]:
    for trade, of_trade in taken.by_trade:
        yield from ("", trade_said(trade))
        for line in of_trade:
            yield from wrapped(f"{line.measured.item}: {line.measured.what}", first="  ")
            yield from wrapped(_measured(line, unit), first=_INDENT)


def _measured(line: OrderLine, unit: LengthUnit) -> str:
    """As measured, what is added, what is to order."""
    measured = line.measured
    added = [f" + {quantity_said(each.amount, measured.unit, unit)} for {each.name}" for each in line.allowances]
    shown = f"{quantity_said(measured.net, measured.unit, unit)} measured ({measured.how}){''.join(added)}"
    return f"{shown}; to order: {_to_buy(line, unit)}"


def _to_buy(line: OrderLine, unit: LengthUnit) -> str:
    of = line.measured.unit
    said = [quantity_said(line.order, of, unit, up=True)]
    if line.packed is not None:
        said.append(_packed(line.packed, of, unit))
    if line.mass_kg is not None and of != "kg":
        said.append(mass_said(line.mass_kg))
    return ", ".join(said)


def _packed(packed: Packed, of: str, unit: LengthUnit) -> str:
    pallets = "" if packed.pallets_count is None else f" on {counted(packed.pallets_count, 'pallet')}"
    over = f", {quantity_said(packed.over, of, unit)} over" if packed.over > 0 else ""
    return f"{counted(packed.packs_count, 'pack')} of {quantity_said(packed.pack_size, of, unit)}{pallets}{over}"


def _compared(taken: TakeOff) -> Iterator[str]:
    if taken.compared:
        yield from ("", "Counted from the cuts, or by a flat percentage")
    for each in taken.compared:
        yield from wrapped(each.says, first="  ")
        cuts = (
            f"{counted(each.cuts_count, 'piece')} to saw; {counted(each.offcuts_saved_count, 'unit')} saved by offcuts."
        )
        yield from wrapped(f"{cuts} The percentage: {each.flat_citation}.", first="  ")


def _masses(taken: TakeOff) -> Iterator[str]:
    masses = taken.masses
    yield from ("", "Onto the roof, and off it")
    yield f"  new: {masses_between(masses.new_least_kg, masses.new_greatest_kg)}"
    yield f"  old: {masses_between(masses.old_least_kg, masses.old_greatest_kg)}"


def _findings(result: Result) -> Sequence[Finding]:
    """Those of the edges and the take-off; and whatever is outside anywhere, for it may change the order."""
    own = [*(() if result.edges is None else result.edges.findings), *_of_take_off(result)]
    outside = (finding for finding in result.findings if finding.verdict is Verdict.OUTSIDE)
    return list(dict.fromkeys((*outside, *own)))


def _of_take_off(result: Result) -> Sequence[Finding]:
    return () if result.take_off is None else result.take_off.findings
