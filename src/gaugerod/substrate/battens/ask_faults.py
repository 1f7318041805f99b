"""What is wrong with an ask for battens, all of it at once."""

from collections.abc import Iterator
from itertools import pairwise
from math import isfinite
from typing import assert_never

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.basis.finding import TOUCH
from gaugerod.geometry.outline_faults import outline_faults
from gaugerod.substrate.battens.ask import BattenedSlope, BattensAsk, EvenRafters, MeasuredRafters

MOST_RAFTERS_COUNT = 2_000
"""No slope has more: a spacing that gives them is a slip of the unit."""


def refuse_faults(ask: BattensAsk) -> None:
    """Raise InputRefused with every fault of the ask."""
    faults = [*_lengths(ask), *(fault for slope in ask.slopes for fault in _slope(slope))]
    if not ask.slopes:
        faults.append(Fault("slopes", "none", "one slope or more", "Set out a slope first."))
    if faults:
        raise InputRefused(faults)


def _lengths(ask: BattensAsk) -> Iterator[Fault]:
    if not ask.stock:
        yield Fault("stock", "none", "one length or more", "Write the lengths that can be had.")
    for length in ask.stock:
        if not (isfinite(length.value) and length.value > 0):
            yield _fault("stock", length.value, "a length above nothing")
    stops = ask.stops
    for field, limit in (
        ("kerf", ask.kerf),
        ("stops.verge", stops.verge),
        ("stops.valley", stops.valley),
        ("stops.valley_welt", stops.valley_welt),
        ("stops.abutment", stops.abutment),
    ):
        if not (isfinite(limit.value) and limit.value >= 0):
            yield _fault(field, limit.value, "nothing or more")
    for field, length_mm in (
        ("counter_batten_depth", ask.nailing.counter_batten_depth_mm),
        ("counter_batten_width", ask.nailing.counter_batten_width_mm),
    ):
        if length_mm is not None and not (isfinite(length_mm) and length_mm > 0):
            yield _fault(field, length_mm, "a length above nothing")
    if (ask.nailing.counter_batten_depth_mm is None) != (ask.nailing.counter_batten_width_mm is None):
        yield _fault("counter_batten", "half its section", "width and depth, or neither")


def _slope(slope: BattenedSlope) -> Iterator[Fault]:
    where = slope.where
    yield from outline_faults(
        slope.outline.points_mm, holes=[opening.points_mm for opening in slope.openings], field=f"{where}.outline"
    )
    for ring in (slope.outline, *slope.openings):
        if len(ring.edges) != len(ring.points_mm):
            given = f"{len(ring.points_mm)} points, {len(ring.edges)} edges"
            yield Fault(f"{where}.edges", given, "one edge for each point", "Name every edge.")
    yield from _rafters(slope)
    if not slope.marks:
        yield Fault(f"{where}.marks", "none", "one batten or more", "Set out the courses first.")
    stations = {tuple(x for x, _ in mark.at_mm) for mark in slope.marks}
    if len(stations) > 1 or () in stations:
        yield _fault(f"{where}.marks", "different stations", "every batten marked at the same stations")
        return
    if any(not isfinite(length) for mark in slope.marks for point in mark.at_mm for length in point):
        yield _fault(f"{where}.marks", "nan or inf", "lengths")
    elif any(not right - left > TOUCH for xs in stations for left, right in pairwise(xs)):
        yield _fault(f"{where}.marks", "out of order", "stations from left to right")
    elif any(
        not above[1] - below[1] > TOUCH
        for lower, upper in pairwise(slope.marks)
        for below, above in zip(lower.at_mm, upper.at_mm, strict=True)
    ):
        yield _fault(f"{where}.marks", "out of order", "each batten above the one before it")


def _rafters(slope: BattenedSlope) -> Iterator[Fault]:
    field = f"{slope.where}.rafters"
    match slope.rafters:
        case EvenRafters(first_mm=first_mm, spacing_mm=spacing_mm, last_mm=last_mm):
            if not (isfinite(spacing_mm) and spacing_mm > 0):
                yield _fault(f"{field}.spacing", spacing_mm, "a length above nothing")
                return
            if not all(isfinite(at_mm) for at_mm in (first_mm, 0.0 if last_mm is None else last_mm)):
                yield _fault(field, "nan or inf", "lengths")
                return
            if last_mm is not None and last_mm <= first_mm + TOUCH:
                yield _fault(f"{field}.last", last_mm, "right of the first rafter")
            xs = [x for x, _ in slope.outline.points_mm if isfinite(x)] or [0.0]
            if (max(xs) - first_mm) / spacing_mm > MOST_RAFTERS_COUNT:
                yield _fault(f"{field}.spacing", spacing_mm, "rafters a stride apart, not a finger")
        case MeasuredRafters(at_mm=at_mm):
            if not at_mm:
                yield _fault(field, "none", "one rafter or more")
            if not all(map(isfinite, at_mm)):
                yield _fault(field, "nan or inf", "lengths")
            elif any(not right - left > TOUCH for left, right in pairwise(at_mm)):
                yield _fault(field, "out of order", "each rafter right of the one before it")
        case _ as unreachable:
            assert_never(unreachable)


def _fault(field: str, given: object, allowed: str) -> Fault:
    return Fault(field=field, given=str(given), allowed=allowed, do="Measure it again and write it with its unit.")
