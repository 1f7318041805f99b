"""The units of the left rod as a section draws them: under the eaves, course over course, up to the short course.

Tails, heads and marks are this slope's own. Each unit rests on its batten and, at its tail, on the unit below.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import assert_never

from gaugerod.basis.finding import TOUCH
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.job.model import Covering
from gaugerod.job.result import SlopeResult
from gaugerod.sheets.drawing import Path, Pen, Point
from gaugerod.sheets.slope_frame import SlopeFrame

BATTEN_HIGH_MM = 25.0
_BATTEN_WIDTH_MM, _NIB_MM = 50.0, 12.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionUnit:
    """One unit on the rod, up from the fascia. ``lift_mm``: its underside at the tail, off the rafter."""

    tail_mm: float
    head_mm: float
    mark_mm: float
    lift_mm: float

    def underside_mm(self, s_mm: float) -> float:
        """Off the rafter, at s: straight from its tail over the batten at its mark."""
        tilt_ratio = (self.lift_mm - BATTEN_HIGH_MM) / (self.mark_mm - self.tail_mm)
        return BATTEN_HIGH_MM + tilt_ratio * (self.mark_mm - s_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionUnits:
    """All units of a rod, eaves to top, and how this covering is drawn.

    ``under_eaves``  is the lowest of them the course under the eaves?
    ``short``        is the highest of them the short course?
    ``over_count``   over which unit below a lap is counted: 1 single lap, 2 double lap
    ``lost_mm``      of a unit's length at its head, not counted for the lap
    """

    units: tuple[SectionUnit, ...]
    under_eaves: bool
    short: bool
    over_count: int
    thick_mm: float
    lost_mm: float
    nailed: bool
    nibs: bool

    @property
    def full(self) -> tuple[SectionUnit, ...]:
        """The courses that are counted, from the eaves."""
        return self.units[int(self.under_eaves) : len(self.units) - int(self.short)]

    @property
    def over_mm(self) -> float:
        """Off the rafter, clear above every unit."""
        return BATTEN_HIGH_MM + (self.over_count + 2) * self.thick_mm

    def paths(
        self, frame: SlopeFrame, shown: Sequence[SectionUnit], *, from_mm: float, to_mm: float
    ) -> tuple[Path, ...]:
        """The battens, units, nibs and nails of these units, units broken off outside the two lines."""
        rings = [_ring(frame, unit, self.thick_mm, from_mm=from_mm, to_mm=to_mm) for unit in shown]
        here = [unit for unit in shown if from_mm < unit.mark_mm < to_mm]
        if self.nibs:
            rings += [_nib(frame, unit) for unit in here]
        paths = [
            Path(pen=Pen.SECTION_BATTEN, runs_mm=tuple(self._batten(frame, unit) for unit in here), closed=True),
            Path(pen=Pen.UNIT, runs_mm=tuple(rings), closed=True),
        ]
        if self.nailed:
            high_mm = BATTEN_HIGH_MM + 1.6 * self.thick_mm
            nails = ((frame.at(each.mark_mm, high_mm), frame.at(each.mark_mm, BATTEN_HIGH_MM / 4)) for each in here)
            paths.append(Path(pen=Pen.CUT, runs_mm=tuple(nails)))
        return tuple(paths)

    def _batten(self, frame: SlopeFrame, unit: SectionUnit) -> tuple[Point, ...]:
        """Under the mark: the mark is its top edge for tiles, the line of the nails, in its middle, for slates."""
        top_mm = unit.mark_mm + (_BATTEN_WIDTH_MM / 2 if self.nailed else 0.0)
        return frame.block(from_mm=top_mm - _BATTEN_WIDTH_MM, to_mm=top_mm, low_mm=0.0, high_mm=BATTEN_HIGH_MM)


def section_units(slope: SlopeResult, covering: Covering) -> SectionUnits:
    """The units of the left rod."""
    match covering:
        case SingleLapTile():
            thick_mm, lost_mm, nailed, nibs = 12.0, 0.0, False, covering.hanging_length_mm is not None
        case PlainTile():
            thick_mm, lost_mm, nailed, nibs = 12.0, 0.0, False, covering.nibs
        case SizedSlate() | RandomSlates():
            thick_mm, lost_mm, nailed, nibs = 7.0, covering.lost_at_head_mm, True, False
        case _ as unreachable:
            assert_never(unreachable)
    lying = _lying(slope, covering)
    extras = None if slope.double_lap is None else slope.double_lap.rods[0]
    return SectionUnits(
        units=_stacked(lying, thick_mm=thick_mm),
        under_eaves=not isinstance(covering, SingleLapTile),
        short=extras is not None and extras.short is not None,
        over_count=1 if isinstance(covering, SingleLapTile) else 2,
        thick_mm=thick_mm,
        lost_mm=lost_mm,
        nailed=nailed,
        nibs=nibs,
    )


_Lying = tuple[float, float, float]
"""Tail, head and mark."""


def _lying(slope: SlopeResult, covering: Covering) -> list[_Lying]:
    """Tail, head and mark of every unit of the left rod, eaves to top."""
    marks_mm = slope.courses.rods[0].marks_mm
    if slope.diminishing is not None:
        plan, dim = slope.diminishing, slope.diminishing.rods[0]
        lengths = {course: g.length_mm for g in plan.groups for course in range(g.first_course, g.last_course + 1)}
        lengths |= dict(dim.cut_lengths_mm)
        return [
            (dim.tails_mm[0], dim.tails_mm[0] + plan.under_eaves_length_mm, dim.under_eaves_mark_mm),
            *(
                (tail, tail + lengths[course], mark)
                for course, (tail, mark) in enumerate(zip(dim.tails_mm, dim.marks_mm, strict=True), 1)
            ),
        ]
    if isinstance(covering, RandomSlates):
        raise TypeError("random slates are laid by a plan of diminishing courses")
    if slope.double_lap is not None:
        rod = slope.double_lap.rods[0]
        under_mm = rod.tails_mm[0] + slope.double_lap.under_eaves_length_mm
        lying = [(rod.tails_mm[0], under_mm, rod.under_eaves_mark_mm)]
        lying += [(tail, tail + covering.length_mm, mark) for tail, mark in zip(rod.tails_mm, marks_mm, strict=True)]
        if rod.short is not None:
            lying.append((rod.short.tail_mm, rod.short.tail_mm + rod.short.length_mm, rod.short.mark_mm))
        return lying
    return _hung(slope, covering)


def _hung(slope: SlopeResult, covering: Covering) -> list[_Lying]:
    """Single lap: hung by the nibs. A top course cut at its head keeps its tail on the line of the gauges below."""
    if not isinstance(covering, SingleLapTile):
        raise TypeError("only single-lap tiles are laid without the extras of double lap")
    rod = slope.courses.rods[0]
    hanging_mm = hanging_length_mm(covering)
    lying = [(mark - hanging_mm, mark + covering.length_mm - hanging_mm, mark) for mark in rod.marks_mm]
    if slope.courses.top_course_cut_mm is not None and len(lying) > 1:
        _, head_mm, mark_mm = lying[-1]
        lying[-1] = (lying[-2][0] + rod.gauge_mm, head_mm, mark_mm)
    return lying


def hanging_length_mm(covering: SingleLapTile) -> float:
    """The hanging length, mm; with none known there is no nib to draw and the whole length hangs."""
    return covering.length_mm if covering.hanging_length_mm is None else covering.hanging_length_mm


def _stacked(lying: Sequence[_Lying], *, thick_mm: float) -> tuple[SectionUnit, ...]:
    """Each with its tail on the unit below; the lowest tilted as the ones above it are."""
    tails = [tail for tail, _, _ in lying]
    gap_mm = next((upper - tails[0] for upper in tails if upper - tails[0] > TOUCH), lying[0][1] - lying[0][0])
    lowest_tail_mm, _, lowest_mark_mm = lying[0]
    lift_mm = BATTEN_HIGH_MM + thick_mm / gap_mm * (lowest_mark_mm - lowest_tail_mm)
    units: list[SectionUnit] = []
    for tail_mm, head_mm, mark_mm in lying:
        if units:
            lift_mm = units[-1].underside_mm(tail_mm) + thick_mm
        units.append(SectionUnit(tail_mm=tail_mm, head_mm=head_mm, mark_mm=mark_mm, lift_mm=lift_mm))
    return tuple(units)


def _ring(frame: SlopeFrame, unit: SectionUnit, thick_mm: float, *, from_mm: float, to_mm: float) -> tuple[Point, ...]:
    low_mm, high_mm = max(unit.tail_mm, from_mm), min(unit.head_mm, to_mm)
    low_n, high_n = unit.underside_mm(low_mm), unit.underside_mm(high_mm)
    return (
        frame.at(low_mm, low_n),
        frame.at(high_mm, high_n),
        frame.at(high_mm, high_n + thick_mm),
        frame.at(low_mm, low_n + thick_mm),
    )


def _nib(frame: SlopeFrame, unit: SectionUnit) -> tuple[Point, ...]:
    """Behind the batten's top edge."""
    to_mm = min(unit.mark_mm + _NIB_MM, unit.head_mm)
    return frame.block(from_mm=unit.mark_mm, to_mm=to_mm, low_mm=BATTEN_HIGH_MM - _NIB_MM, high_mm=BATTEN_HIGH_MM)
