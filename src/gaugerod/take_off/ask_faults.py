"""What cannot be in the figures of a take-off: every fault of the ask, found together."""

from collections import Counter
from collections.abc import Iterator
from math import isfinite

from gaugerod.basis.errors import Fault
from gaugerod.basis.limit import Limit
from gaugerod.take_off.ask import LaidSlope, TakeOffAsk
from gaugerod.take_off.wished import OrderWished, Pack

_ABOVE_NOTHING = "above nothing"
_COUNT = "Count them again."
_MEASURE = "Measure it again."


def ask_faults(ask: TakeOffAsk) -> Iterator[Fault]:
    """Faults of the slopes as laid, and of what is wished of the order."""
    for slope in ask.slopes:
        yield from _slope(slope)
    yield from _wished(ask.wished)


def _slope(slope: LaidSlope) -> Iterator[Fault]:
    measures = (("area", slope.area_mm2, "mm²"), ("gauge", slope.gauge_mm, "mm"), ("cover", slope.cover_mm, "mm"))
    for name, value, unit in measures:
        if value is not None and not (isfinite(value) and value > 0):
            yield Fault(f"{slope.name}.{name}", f"{value:g} {unit}", _ABOVE_NOTHING, _MEASURE)
    counts = (("whole", slope.whole_count), ("halves", slope.half_count))
    for name, count in (*counts, *((extra.name, extra.units_count) for extra in slope.extra)):
        if count < 0:
            yield Fault(f"{slope.name}.{name}", str(count), "none or more", _COUNT)
    for run_mm in slope.course_runs_mm:
        if not (isfinite(run_mm) and run_mm >= 0):
            yield Fault(f"{slope.name}.course_runs", f"{run_mm:g} mm", "nothing or more", _MEASURE)


def _wished(wished: OrderWished) -> Iterator[Fault]:
    yield from _per_cent("order.breakage", wished.breakage)
    yield from _per_cent("order.flat_waste", wished.flat_waste)
    for pack in wished.packs:
        yield from _pack(pack)
    for item, times in Counter(pack.item for pack in wished.packs).items():
        if times > 1:
            yield Fault("order.pack.item", item, "one pack for each item", "Leave one of them out.")


def _per_cent(field: str, share: Limit | None) -> Iterator[Fault]:
    if share is not None and not (isfinite(share.value) and share.value >= 0):
        yield Fault(field, f"{share.value:g} per cent", "nothing or more", "Give it in per cent.")


def _pack(pack: Pack) -> Iterator[Fault]:
    if not (isfinite(pack.size) and pack.size > 0):
        yield Fault(f"order.pack.{pack.item}.size", f"{pack.size:g}", _ABOVE_NOTHING, _COUNT)
    if pack.pallet_packs_count is not None and pack.pallet_packs_count < 1:
        yield Fault(f"order.pack.{pack.item}.pallet", str(pack.pallet_packs_count), "one pack or more", _COUNT)
