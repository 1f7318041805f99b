"""A plan of a slope on its paper: as large as the room allows, with lanes of dimensions on every side of it."""

from collections.abc import Sequence
from dataclasses import dataclass

from gaugerod.sheets.dimension_lanes import (
    LABEL_HEIGHT_MM,
    LEVEL_LANE_MM,
    Label,
    Lane,
    level_lane,
    split_to_fit,
    upright_lane,
    upright_lane_width_mm,
)
from gaugerod.sheets.drawing import Paper, Point, largest_scale_ratio

_RIGHT_LINE_MM = 3.0
_AIR_MM = 4.0
"""Between the slope and the lanes above and below it; the end labels of the upright lanes may use it."""
_LANE_STEP_MM = LEVEL_LANE_MM + 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """What is measured on each side of a plan. ``below`` has its lanes one under the other.

    ``numbers_mm``  paper kept for numbers between the plan and its left lane; ``under_mm`` between it and the lanes below
    """

    left: tuple[Label, ...] = ()
    right: tuple[Label, ...] = ()
    above: tuple[Label, ...] = ()
    below: tuple[tuple[Label, ...], ...] = ()
    numbers_mm: float = 0.0
    under_mm: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanFrame:
    """The paper, and the lanes round the plan.

    ``slack_mm``  by how much the paper was stretched above and below so that the upright lanes have room
    """

    paper: Paper
    low_mm: Point
    high_mm: Point
    beside: Beside
    slack_mm: float

    def lanes(self) -> tuple[Lane, ...]:
        """Left and right, above, then each lane below."""
        return (*self._upright(), *self._level())

    def _upright(self) -> tuple[Lane, Lane]:
        ratio = self.paper.scale_ratio
        between_mm = (
            self.low_mm[1] / ratio - _AIR_MM - self.slack_mm,
            self.high_mm[1] / ratio + _AIR_MM + self.slack_mm,
        )
        return (
            upright_lane(
                self.beside.left,
                side="left",
                line_x_mm=self.low_mm[0],
                off_paper_mm=self.beside.numbers_mm,
                between_paper_mm=between_mm,
                scale_ratio=ratio,
            ),
            upright_lane(
                self.beside.right,
                side="right",
                line_x_mm=self.high_mm[0],
                off_paper_mm=_RIGHT_LINE_MM,
                between_paper_mm=between_mm,
                scale_ratio=ratio,
            ),
        )

    def _level(self) -> list[Lane]:
        between_mm = (-self.paper.origin_paper_mm[0], self.paper.width_mm - self.paper.origin_paper_mm[0])
        off_mm = _AIR_MM + self.slack_mm
        above = level_lane(
            self.beside.above,
            side="above",
            line_y_mm=self.high_mm[1],
            line_from_mm=None,
            off_paper_mm=off_mm,
            between_paper_mm=between_mm,
            scale_ratio=self.paper.scale_ratio,
        )
        return [above] + [
            level_lane(
                labels,
                side="below",
                line_y_mm=self.low_mm[1],
                line_from_mm=0.0,
                off_paper_mm=off_mm + self.beside.under_mm + number * _LANE_STEP_MM,
                between_paper_mm=between_mm,
                scale_ratio=self.paper.scale_ratio,
            )
            for number, labels in enumerate(self.beside.below)
        ]


def lanes_below(*several: Sequence[Label], room_width_mm: float) -> tuple[tuple[Label, ...], ...]:
    """Labels under a plan in as many lanes as the paper asks for; each lot begins a lane of its own."""
    return tuple(tuple(lane) for labels in several for lane in split_to_fit(labels, room_mm=room_width_mm))


def plan_frame(
    *, low_mm: Point, high_mm: Point, beside: Beside, room_width_mm: float, room_height_mm: float
) -> PlanFrame:
    """The plan from its least to its greatest corner at the largest standard scale the room allows."""
    left_mm = beside.numbers_mm + upright_lane_width_mm(beside.left)
    right_mm = _RIGHT_LINE_MM + upright_lane_width_mm(beside.right)
    top_mm = _AIR_MM + (LEVEL_LANE_MM if beside.above else 0.0)
    bottom_mm = _AIR_MM + beside.under_mm + len(beside.below) * _LANE_STEP_MM
    wide_mm, up_mm = high_mm[0] - low_mm[0], high_mm[1] - low_mm[1]
    across_mm = room_width_mm - left_mm - right_mm
    ratio = largest_scale_ratio(
        model_width_mm=wide_mm,
        model_height_mm=up_mm,
        width_mm=across_mm,
        height_mm=room_height_mm - top_mm - bottom_mm,
    )
    drawn_mm = up_mm / ratio
    upright_mm = max(len(beside.left), len(beside.right)) * LABEL_HEIGHT_MM
    slack_mm = max(0.0, upright_mm - drawn_mm - 2 * _AIR_MM) / 2
    spare_mm = across_mm - wide_mm / ratio
    paper = Paper(
        width_mm=room_width_mm,
        height_mm=drawn_mm + top_mm + bottom_mm + 2 * slack_mm,
        scale_ratio=ratio,
        origin_paper_mm=(left_mm + spare_mm / 2 - low_mm[0] / ratio, bottom_mm + slack_mm - low_mm[1] / ratio),
    )
    return PlanFrame(paper=paper, low_mm=low_mm, high_mm=high_mm, beside=beside, slack_mm=slack_mm)
