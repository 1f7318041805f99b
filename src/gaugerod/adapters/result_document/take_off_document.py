"""What to order, and what the record says besides, as the result document tells it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugerod.adapters.result_document.rounded import fine
from gaugerod.job.record_wished import RecordWished
from gaugerod.take_off.answer import OrderLine, Packed, TakeOff, WasteCompared

if TYPE_CHECKING:  # the shapes are for the schema: no document needs them made
    from gaugerod.adapters.result_document.take_off_shape import (
        OrderDocument,
        OrderLineDocument,
        PackedDocument,
        RecordDocument,
        WasteComparedDocument,
    )


def take_off_document(take_off: TakeOff) -> list[OrderLineDocument]:
    """Every line of the order."""
    return [_line(line) for line in take_off.lines]


def order_document(take_off: TakeOff) -> OrderDocument:
    """What is to be known of the order beside its lines."""
    masses = take_off.masses
    return {
        "compared": [_compared(each) for each in take_off.compared],
        "masses": {
            "new_least_kg": _fine_or_none(masses.new_least_kg),
            "new_greatest_kg": _fine_or_none(masses.new_greatest_kg),
            "old_least_kg": _fine_or_none(masses.old_least_kg),
            "old_greatest_kg": _fine_or_none(masses.old_greatest_kg),
        },
        "not_counted": list(take_off.not_counted),
    }


def record_document(record: RecordWished) -> RecordDocument:
    """What is written into the record."""
    return {
        "site": record.site,
        "laid_by": record.laid_by,
        "measured_by": record.measured_by,
        "handed_to": record.handed_to,
        "deviations": [
            {
                "what": each.what,
                "accepted_by": each.accepted_by,
                "rule": each.rule,
                "where": each.where,
                "on": each.on,
            }
            for each in record.deviations
        ],
    }


def _line(line: OrderLine) -> OrderLineDocument:
    measured, citation = line.measured, line.measured.citation
    return {
        "item": measured.item,
        "what": measured.what,
        "trade": measured.trade.value,
        "unit": measured.unit,
        "net": fine(measured.net),
        "by_slope": [{"where": where, "net": fine(net)} for where, net in measured.by_slope],
        "how": measured.how,
        "allowances": [
            {
                "name": each.name,
                "amount": fine(each.amount),
                "source": each.citation.source,
                "basis": each.citation.basis.value,
            }
            for each in line.allowances
        ],
        "order": fine(line.order),
        "packed": None if line.packed is None else _packed(line.packed),
        "bought": fine(line.bought),
        "mass_kg": _fine_or_none(line.mass_kg),
        "source": None if citation is None else citation.source,
        "basis": None if citation is None else citation.basis.value,
    }


def _packed(packed: Packed) -> PackedDocument:
    return {
        "pack_size": fine(packed.pack_size),
        "packs": packed.packs_count,
        "pallet_packs": packed.pallet_packs_count,
        "pallets": packed.pallets_count,
        "over": fine(packed.over),
    }


def _compared(compared: WasteCompared) -> WasteComparedDocument:
    return {
        "item": compared.item,
        "net_by_area": fine(compared.net_by_area_count),
        "flat_ratio": fine(compared.flat_ratio),
        "flat": compared.flat_count,
        "counted": compared.counted_count,
        "difference": compared.difference_count,
        "cuts": compared.cuts_count,
        "offcuts_saved": compared.offcuts_saved_count,
        "says": compared.says,
        "source": compared.flat_citation.source,
        "basis": compared.flat_citation.basis.value,
    }


def _fine_or_none(number: float | None) -> float | None:
    return None if number is None else fine(number)
