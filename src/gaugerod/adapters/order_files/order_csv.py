"""The order as CSV: one line to an item, with the quotation's figures where there are prices."""

import csv
import io
from decimal import Decimal

from gaugerod.adapters.order_files.read_prices import plain_cell
from gaugerod.take_off.answer import OrderLine, TakeOff
from gaugerod.take_off.cost import exact
from gaugerod.take_off.money import MaterialCost, Quotation

HEADING = (
    "trade", "item", "what", "unit", "measured", "allowances", "order", "pack_size", "packs", "pallets", "bought", "mass_kg",
)  # fmt: skip
PRICED = ("price", "per", "amount")


def order_csv(take_off: TakeOff, quotation: Quotation | None = None) -> bytes:
    """The order, UTF-8 with a mark so that a spreadsheet knows; words that look like a formula are marked as words."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(HEADING if quotation is None else (*HEADING, *PRICED))
    costs = {} if quotation is None else {each.line.measured.item: each for each in quotation.materials}
    for line in take_off.lines:
        row = _row(line)
        writer.writerow(row if quotation is None else (*row, *_priced(costs.get(line.measured.item))))
    return out.getvalue().encode("utf-8-sig")


def _row(line: OrderLine) -> tuple[str, ...]:
    measured, packed = line.measured, line.packed
    return (
        measured.trade.value,
        plain_cell(measured.item),
        plain_cell(measured.what),
        measured.unit,
        str(exact(measured.net)),
        plain_cell("; ".join(each.name for each in line.allowances)),
        str(exact(line.order)),
        "" if packed is None else str(exact(packed.pack_size)),
        "" if packed is None else str(packed.packs_count),
        "" if packed is None or packed.pallets_count is None else str(packed.pallets_count),
        str(exact(line.bought)),
        "" if line.mass_kg is None else str(exact(line.mass_kg)),
    )


def _priced(cost: MaterialCost | None) -> tuple[str, str, str]:
    if cost is None or cost.price is None or cost.amount is None:
        return "", "", ""
    return _plain(cost.price.amount), _plain(cost.price.per), str(cost.amount)


def _plain(amount: Decimal) -> str:
    return f"{amount:f}"
