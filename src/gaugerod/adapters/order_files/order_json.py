"""The order, and the quotation where there are prices, as one JSON document. Money stands as text, exact."""

import json
from decimal import Decimal
from typing import Annotated, TypedDict

from gaugerod.take_off.answer import OrderLine, TakeOff
from gaugerod.take_off.money import LabourCost, MaterialCost, Quotation


class OrderLineDocument(TypedDict):
    """One line of the order."""

    trade: Annotated[str, "the part of the job"]
    item: Annotated[str, "its stable name"]
    what: Annotated[str, "in words"]
    unit: Annotated[str, "what it is counted in"]
    measured: Annotated[float, "as it lies on the roof"]
    allowances: Annotated[list[dict[str, object]], "name, amount, source, basis"]
    order: Annotated[float, "with allowances, whole pieces"]
    packs: Annotated[int | None, "whole packs; null: loose"]
    pallets: Annotated[int | None, "whole pallets; null: not known"]
    bought: Annotated[float, "what comes to the site"]
    mass_kg: Annotated[float | None, "of what is bought; null: not known"]


def order_document(take_off: TakeOff, quotation: Quotation | None = None) -> dict[str, object]:
    """The whole order as plain JSON."""
    return {
        "lines": [_line(line) for line in take_off.lines],
        "not_counted": list(take_off.not_counted),
        "quotation": None if quotation is None else _quotation(quotation),
    }


def order_json(take_off: TakeOff, quotation: Quotation | None = None) -> bytes:
    """The same as text."""
    text = json.dumps(order_document(take_off, quotation), indent=2, ensure_ascii=False, allow_nan=False)
    return f"{text}\n".encode()


def _line(line: OrderLine) -> OrderLineDocument:
    measured, packed = line.measured, line.packed
    return {
        "trade": measured.trade.value,
        "item": measured.item,
        "what": measured.what,
        "unit": measured.unit,
        "measured": round(measured.net, 4),
        "allowances": [
            {
                "name": each.name,
                "amount": round(each.amount, 4),
                "source": each.citation.source,
                "basis": each.citation.basis.value,
            }
            for each in line.allowances
        ],
        "order": round(line.order, 4),
        "packs": None if packed is None else packed.packs_count,
        "pallets": None if packed is None else packed.pallets_count,
        "bought": round(line.bought, 4),
        "mass_kg": None if line.mass_kg is None else round(line.mass_kg, 3),
    }


def _quotation(quotation: Quotation) -> dict[str, object]:
    return {
        "currency": quotation.money.currency,
        "materials": [_material(each) for each in quotation.materials],
        "work": [_work(each) for each in quotation.labour],
        "materials_total": str(quotation.materials_total),
        "work_total": str(quotation.labour_total),
        "net_total": str(quotation.net_total),
        "tax_name": quotation.money.tax_name,
        "tax_percent": _text(quotation.money.tax_percent),
        "tax": _text(quotation.tax),
        "total": str(quotation.total),
        "not_priced": list(quotation.not_priced),
        "not_used": list(quotation.not_used),
    }


def _material(cost: MaterialCost) -> dict[str, object]:
    price = cost.price
    return {
        "item": cost.line.measured.item,
        "quantity": str(cost.quantity),
        "unit": cost.line.measured.unit,
        "price": _text(None if price is None else price.amount),
        "per": _text(None if price is None else price.per),
        "amount": _text(cost.amount),
    }


def _work(cost: LabourCost) -> dict[str, object]:
    return {
        "task": cost.task.task,
        "what": cost.task.what,
        "quantity": str(cost.quantity),
        "unit": cost.task.unit,
        "rate": _text(None if cost.rate is None else cost.rate.amount),
        "amount": _text(cost.amount),
    }


def _text(amount: Decimal | None) -> str | None:
    """The amount in plain digits: never as a power of ten."""
    return None if amount is None else f"{amount:f}"
