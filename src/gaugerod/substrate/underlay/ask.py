"""What the underlay of one slope depends on.

Axes: x along the eaves from the left, y up the slope from the outer face of the fascia, both in the slope's own plane, mm.
The outline is that of the roof structure; how far the underlay reaches past each edge is worked out here.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from enum import StrEnum
from itertools import pairwise
from math import isfinite

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.basis.rounding import Division
from gaugerod.coverings.underlay import Support, UnderlayRecord
from gaugerod.geometry.outline_faults import outline_faults
from gaugerod.laying.ask import Ring
from gaugerod.rules.underlay_wind import UpliftSite
from gaugerod.setting_out.courses import Rod
from gaugerod.standards.edition import Edition


class RidgeMade(StrEnum):
    """How the ridge is made: bedded in mortar, dry and ventilated, or the top edge of a slope with none behind it."""

    BEDDED = "bedded"
    DRY_VENTILATED = "dry-ventilated"
    MONO = "mono"


class LapRemedy(StrEnum):
    """What is done where a lap falls between battens.

    ``widen``         the upper run is brought down until a batten lies on the lap
    ``extra-batten``  a batten is added on the lap
    ``tape``          the lap is taped or sealed
    """

    WIDEN = "widen"
    EXTRA_BATTEN = "extra-batten"
    TAPE = "tape"


@dataclass(frozen=True, slots=True, kw_only=True)
class UnderlayAsk:
    """One slope to underlay.

    ``rods``              the battens' top edges at each station; empty: not set out, then laps are not held against them
    ``batten_width_mm``   along the slope
    ``rafters_mm``        the middle of every rafter, left to right; empty: not known, then no side laps are planned
    ``rafter_width_mm``   None: the edition's default
    ``lap_mm``            a horizontal lap stated by the maker; None: the edition's least. A smaller one is not taken
    ``carrier_reach_mm``  how far the tray or strip at the eaves reaches up the slope from the fascia face; None: not known
    ``valley_strip_width_mm``  None: the edition's default
    ``valley_strips_elsewhere``  names of valley edges whose strip is counted with the slope on the other side
    """

    where: str
    outline: Ring
    pitch_deg: float
    rods: tuple[Rod, ...]
    batten_width_mm: float
    rafters_mm: tuple[float, ...]
    record: UnderlayRecord
    support: Support
    counter_battens: bool
    ridge: RidgeMade
    division: Division
    edition: Edition
    rafter_width_mm: float | None = None
    lap_mm: float | None = None
    between_battens: LapRemedy = LapRemedy.WIDEN
    carrier_reach_mm: float | None = None
    valley_strip_width_mm: float | None = None
    valley_strips_elsewhere: frozenset[str] = frozenset()
    site: UpliftSite = field(default_factory=UpliftSite)

    def __post_init__(self) -> None:
        faults = [*_outline(self), *_figures(self), *_rafters(self), *_rods(self)]
        if faults:
            raise InputRefused(faults)


def _outline(ask: UnderlayAsk) -> Iterator[Fault]:
    yield from outline_faults(ask.outline.points_mm, field=f"{ask.where}.outline")
    if len(ask.outline.edges) != len(ask.outline.points_mm):
        given = f"{len(ask.outline.points_mm)} points, {len(ask.outline.edges)} edges"
        yield Fault(f"{ask.where}.edges", given, "one edge for each point", "Name every edge.")
    names = [edge.name for edge in ask.outline.edges]
    for name in sorted({name for name in names if names.count(name) > 1}):
        yield Fault(f"{ask.where}.edges", name, "a name for each edge", "Number the edges that are alike.")


def _figures(ask: UnderlayAsk) -> Iterator[Fault]:
    figures = (
        ("batten_width", ask.batten_width_mm),
        ("roll_width", ask.record.roll_width_mm),
        ("roll_length", ask.record.roll_length_mm),
        ("rafter_width", ask.rafter_width_mm),
        ("lap", ask.lap_mm),
        ("carrier_reach", ask.carrier_reach_mm),
        ("valley_strip_width", ask.valley_strip_width_mm),
    )
    for name, length_mm in figures:
        if length_mm is not None and not (isfinite(length_mm) and length_mm > 0):
            yield Fault(f"{ask.where}.{name}", f"{length_mm:g} mm", "above nothing", "Measure it again.")
    if not 0 < ask.pitch_deg < 90:
        yield Fault(f"{ask.where}.pitch", f"{ask.pitch_deg:g}°", "above 0° and below 90°", "Measure the pitch again.")
    lap_mm = ask.lap_mm
    if lap_mm is not None and isfinite(lap_mm) and lap_mm * 2 > ask.record.roll_width_mm:
        allowed = f"at most half the roll's width, {ask.record.roll_width_mm / 2:g} mm"
        yield Fault(f"{ask.where}.lap", f"{lap_mm:g} mm", allowed, "Check the lap and the width of the roll.")


def _rafters(ask: UnderlayAsk) -> Iterator[Fault]:
    for at, (left, right) in enumerate(pairwise((float("-inf"), *ask.rafters_mm))):
        if not (isfinite(right) and right > left):
            given = f"{right:g} mm"
            yield Fault(f"{ask.where}.rafters[{at}]", given, "places from left to right", "Measure the rafters again.")


def _rods(ask: UnderlayAsk) -> Iterator[Fault]:
    for at, rod in enumerate(ask.rods):
        if len(rod.marks_mm) != len(ask.rods[0].marks_mm):
            given, allowed = f"{len(rod.marks_mm)} marks", f"{len(ask.rods[0].marks_mm)}, as on the first rod"
            yield Fault(f"{ask.where}.rods[{at}]", given, allowed, "Mark the same battens at every station.")
        if not all(isfinite(mark) for mark in rod.marks_mm) or any(low >= high for low, high in pairwise(rod.marks_mm)):
            yield Fault(f"{ask.where}.rods[{at}]", "marks out of order", "marks going up", "Set the courses out again.")
    for at, (left, right) in enumerate(pairwise(ask.rods), 1):
        if not right.at_mm > left.at_mm:
            yield Fault(
                f"{ask.where}.rods[{at}]", f"{right.at_mm:g} mm", "stations from left to right", "Put them in order."
            )
