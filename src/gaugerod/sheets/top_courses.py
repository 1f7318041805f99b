"""The top of a slope as a detail draws it: rafter, battens and courses of its left rod, where they were set out."""

from dataclasses import dataclass, replace

from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.job.model import Covering
from gaugerod.job.result import SlopeResult
from gaugerod.sheets.drawing import Path, Pen
from gaugerod.sheets.edge_detail import Leaf, closed
from gaugerod.sheets.section_units import BATTEN_HIGH_MM, SectionUnits, section_units
from gaugerod.sheets.slope_frame import SlopeFrame

RAFTER_MM = 75.0


@dataclass(frozen=True, slots=True, kw_only=True)
class TopCourses:
    """The units of a rod measured from its top: nothing there, down the slope below nothing. ``left``: it rises to the right.

    ``heads_known``  is it known where the heads come to? Not where a tile's hanging length is not known
    """

    held: SectionUnits
    pitch_deg: float
    left: bool
    heads_known: bool

    @property
    def leaf(self) -> Leaf:
        """The slope, falling away from its top."""
        return Leaf(rise_deg=-self.pitch_deg, left=self.left)

    @property
    def mark_mm(self) -> float:
        """The top mark, down the slope."""
        return -self.held.units[-1].mark_mm

    @property
    def head_mm(self) -> float:
        """The head of the top unit, down the slope; below nothing where it passes the top."""
        return -self.held.units[-1].head_mm

    @property
    def lapped_mm(self) -> float | None:
        """Down to where a lap over the unit that counts ends: the top one, or in double lap the one below it."""
        if not self.heads_known or len(self.held.units) < self.held.over_count:
            return None
        return self.held.lost_mm - self.held.units[-self.held.over_count].head_mm

    def clear_mm(self, to_mm: float) -> float:
        """Off the rafter, just clear of every unit from the top so far down the slope."""
        tails = [-each.tail_mm for each in self.held.units if 0.0 < -each.tail_mm < to_mm]
        return max(self._surface_mm(down_mm) for down_mm in (*tails, 0.0, to_mm)) + 2.0

    def _surface_mm(self, down_mm: float) -> float:
        here = [each for each in self.held.units if each.tail_mm <= -down_mm <= max(each.head_mm, 0.0)]
        return max((each.underside_mm(-down_mm) for each in here), default=BATTEN_HIGH_MM) + self.held.thick_mm

    def paths(self, *, shown_mm: float) -> list[Path]:
        """The rafter, cut plumb at the top, and the courses on it, broken off so far down."""
        leaf, frame = self.leaf, SlopeFrame(pitch_deg=self.pitch_deg)
        shown = [each for each in self.held.units if each.head_mm > -shown_mm]
        courses = self.held.paths(frame, shown, from_mm=-shown_mm, to_mm=0.0)
        return [
            closed(Pen.TIMBER, leaf.plumb_cut(to_mm=shown_mm, low_mm=-RAFTER_MM, high_mm=0.0)),
            *(courses if self.left else (_mirrored(path) for path in courses)),
        ]


def top_courses(slope: SlopeResult, covering: Covering, *, left: bool) -> TopCourses:
    """The top of one slope, on the left of x = 0 or on its right."""
    rafter_mm = slope.courses.rods[0].length_mm
    held = section_units(slope, covering)
    return TopCourses(
        held=replace(
            held,
            units=tuple(
                replace(
                    each,
                    tail_mm=each.tail_mm - rafter_mm,
                    head_mm=each.head_mm - rafter_mm,
                    mark_mm=each.mark_mm - rafter_mm,
                )
                for each in held.units
            ),
        ),
        pitch_deg=slope.slope.pitch_deg,
        left=left,
        heads_known=not isinstance(covering, SingleLapTile) or covering.hanging_length_mm is not None,
    )


def _mirrored(path: Path) -> Path:
    return replace(path, runs_mm=tuple(tuple((-x, y) for x, y in run) for run in path.runs_mm))
