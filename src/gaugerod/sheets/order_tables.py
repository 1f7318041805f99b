"""The order in tables: every line by its trade, the two ways of counting, quantities slope by slope, and the sources."""

from collections.abc import Iterator, Sequence
from typing import assert_never

from gaugerod.basis.lengths import LengthUnit
from gaugerod.setting_out.said import counted
from gaugerod.sheets.quantity_said import mass_said, quantity_said
from gaugerod.sheets.sheet import Block, Column, ColumnKind, Heading, Prose, Table
from gaugerod.take_off.answer import OrderLine, Packed, TakeOff, Trade

_FIGURES = ColumnKind.FIGURES


def trade_said(trade: Trade) -> str:
    """The part of the job, as the heading over its lines.

    >>> trade_said(Trade.AIR)
    'Openings for air'
    """
    match trade:
        case Trade.COVERING | Trade.UNDERLAY | Trade.BATTENS | Trade.FIXINGS | Trade.EDGES | Trade.LEAD:
            return trade.value.capitalize()
        case Trade.AIR:
            return "Openings for air"
        case _ as unreachable:
            assert_never(unreachable)


def order_tables(taken: TakeOff, *, unit: LengthUnit) -> Iterator[Block]:
    """A table for each part of the job that has lines, in the order it is bought."""
    for trade, of_trade in taken.by_trade:
        yield Heading(text=trade_said(trade), kept_mm=34.0)
        yield Table(
            columns=(
                Column(heading="What, how it was measured, and what is added", share_ratio=3.0),
                Column(heading="Measured", kind=_FIGURES, share_ratio=0.9),
                Column(heading="To order", kind=ColumnKind.MARK, share_ratio=1.0),
                Column(heading="In packs", share_ratio=1.1),
                Column(heading="Mass", kind=_FIGURES, share_ratio=0.8),
                Column(heading="", kind=ColumnKind.TICK),
            ),
            rows=tuple(_row(line, unit) for line in of_trade),
        )


def _row(line: OrderLine, unit: LengthUnit) -> tuple[str, ...]:
    measured = line.measured
    added = [f"+ {quantity_said(each.amount, measured.unit, unit)} {each.name}" for each in line.allowances]
    return (
        "\n".join(
            [_first_up(measured.what), f"{_first_up(measured.how)}.", *([_first_up("; ".join(added))] if added else [])]
        ),
        _on_two_lines(quantity_said(measured.net, measured.unit, unit)),
        quantity_said(line.order, measured.unit, LengthUnit.MM, up=True),
        "–" if line.packed is None else _packs(line.packed, measured.unit, unit),
        "not known" if line.mass_kg is None else mass_said(line.mass_kg),
        "☐",
    )


def _packs(packed: Packed, unit_of_line: str, unit: LengthUnit) -> str:
    """Packs, pallets, and what is left over."""
    lines = [f"{counted(packed.packs_count, 'pack')} of {quantity_said(packed.pack_size, unit_of_line, unit)}"]
    if packed.pallets_count is not None:
        lines.append(f"on {counted(packed.pallets_count, 'pallet')}")
    if packed.over > 0:
        lines.append(f"{quantity_said(packed.over, unit_of_line, unit)} over")
    return "\n".join(lines)


def _first_up(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}".removesuffix(".")


def _on_two_lines(said: str) -> str:
    return said.replace(" (", "\n(")


def compared_blocks(taken: TakeOff) -> Iterator[Block]:
    """The covering counted from the cuts, held against a flat percentage."""
    if not taken.compared:
        return
    yield Heading(text="Counted from the cuts, or by a flat percentage", kept_mm=40.0)
    yield Table(
        columns=(
            Column(heading="What, and the source of the percentage (how sure)", share_ratio=2.6),
            Column(heading="by area, net", kind=_FIGURES),
            Column(heading="flat", kind=_FIGURES),
            Column(heading="would order", kind=_FIGURES),
            Column(heading="from the cuts", kind=_FIGURES),
            Column(heading="difference", kind=_FIGURES),
        ),
        rows=tuple(
            (
                f"{item_said(taken, each.item)}\nSource: {each.flat_citation}",
                f"{each.net_by_area_count:.1f}",
                f"+ {each.flat_ratio * 100:g} %",
                str(each.flat_count),
                str(each.counted_count),
                f"{each.difference_count:+d}".replace("-", "−"),
            )
            for each in taken.compared
        ),
    )
    for each in taken.compared:
        yield Prose(
            text=f"{each.says} {counted(each.cuts_count, 'piece')} to saw; {counted(each.offcuts_saved_count, 'unit')} saved by "
            "using offcuts again."
        )


def item_said(taken: TakeOff, item: str) -> str:
    """An item as its line of the order calls it."""
    line = taken.line(item)
    return _first_up(item.replace("-", " ") if line is None else line.measured.what)


def by_slope_table(taken: TakeOff, *, unit: LengthUnit) -> Table | None:
    """What of each item lies where, before anything is added; None where nothing can be told apart."""
    rows: list[tuple[str, str, str]] = []
    for line in taken.lines:
        measured = line.measured
        parts = [(place, quantity) for place, quantity in measured.by_slope if quantity]
        for at, (place, quantity) in enumerate(parts):
            rows.append(
                (
                    f"{_first_up(measured.what)}\n{measured.item}" if at == 0 else "",
                    place,
                    quantity_said(quantity, measured.unit, unit),
                )
            )
        if len(parts) > 1:
            rows.append(("", "together", quantity_said(measured.net, measured.unit, unit)))
    if not rows:
        return None
    return Table(
        columns=(
            Column(heading="What, and its name in packs and price lists", share_ratio=2.4),
            Column(heading="Where", share_ratio=1.6),
            Column(heading="Measured, nothing added", kind=_FIGURES),
        ),
        rows=tuple(rows),
    )


def source_table(lines: Sequence[OrderLine]) -> Table | None:
    """Where each allowance, and each figure behind a quantity, comes from; each source once with everything it is used for."""
    used: dict[tuple[str, str], list[str]] = {}
    for line in lines:
        what = line.measured.what
        if line.measured.citation is not None:
            used.setdefault(("measured", str(line.measured.citation)), []).append(what)
        for each in line.allowances:
            used.setdefault((each.name, str(each.citation)), []).append(what)
    if not used:
        return None
    return Table(
        columns=(
            Column(heading="For", share_ratio=0.9),
            Column(heading="Of, and its source (how sure)", share_ratio=4.0),
        ),
        rows=tuple(
            (_first_up(name), f"{_first_up('; '.join(dict.fromkeys(of)))}\nSource: {source}")
            for (name, source), of in used.items()
        ),
    )
