"""Lanes of labels beside a drawing: each label stands as near as can be to what it measures, none on another.

A label is a name over a value. Upright lanes run beside the model, level lanes above or below it; a thin
leader joins each label to its point.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from gaugerod.sheets.drawing import Anchor, Leader, Letter, Pen, Point, Words
from gaugerod.sheets.lettering import spread_mm, words_width_mm

NAME_SIZE_MM = 2.3
VALUE_SIZE_MM = 3.3
LABEL_HEIGHT_MM = 7.0
"""A name over a value, with air around."""
LABEL_GAP_MM = 3.5
"""Between labels side by side in a level lane: more than a space, so that no two read as one."""
LEADER_MM = 5.0
"""From a lane's line to its labels, across which the leaders run."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """What one dimension says, and the model point it belongs to."""

    at_mm: Point
    name: str
    value: str

    @property
    def width_mm(self) -> float:
        """Its width on paper."""
        return max(words_width_mm(self.name, NAME_SIZE_MM), words_width_mm(self.value, VALUE_SIZE_MM))


@dataclass(frozen=True, slots=True, kw_only=True)
class Lane:
    """Labels, their leaders and the lane's own line, as drawn."""

    words: tuple[Words, ...] = ()
    leaders: tuple[Leader, ...] = ()


def upright_lane_width_mm(labels: Sequence[Label]) -> float:
    """The paper an upright lane takes beside the model, from its line outwards."""
    return max((label.width_mm for label in labels), default=0.0) + LEADER_MM + 1.0 if labels else 0.0


def upright_lane(
    labels: Sequence[Label],
    *,
    side: Literal["left", "right"],
    line_x_mm: float,
    off_paper_mm: float,
    between_paper_mm: tuple[float, float],
    scale_ratio: float,
) -> Lane:
    """Labels beside the model, bottom to top, off a dimension line that stands ``off_paper_mm`` outside
    model x ``line_x_mm``; ``between_paper_mm`` bounds them, from the model's y = 0.
    """
    if not labels:
        return Lane()
    outwards = -1.0 if side == "left" else 1.0
    anchor = Anchor.END if side == "left" else Anchor.START
    labels = sorted(labels, key=lambda label: label.at_mm[1])
    wished = [label.at_mm[1] / scale_ratio for label in labels]
    centres = spread_mm(wished, [LABEL_HEIGHT_MM] * len(labels), from_mm=between_paper_mm[0], to_mm=between_paper_mm[1])
    words: list[Words] = []
    ends = ((line_x_mm, labels[0].at_mm[1]), (line_x_mm, labels[-1].at_mm[1]))
    line_shift = (outwards * off_paper_mm, 0.0)
    leaders = [Leader(pen=Pen.DIMENSION, points_mm=ends, shifts_paper_mm=(line_shift, line_shift))]
    for label, wish, centre in zip(labels, wished, centres, strict=True):
        at_mm = (line_x_mm, label.at_mm[1])
        lift = centre - wish
        text_x = outwards * (off_paper_mm + LEADER_MM)
        words += _name_and_value(label, at_mm, anchor=anchor, shift=(text_x, lift))
        leaders.append(
            Leader(
                pen=Pen.LEADER,
                points_mm=(at_mm,) * 3,
                shifts_paper_mm=(
                    (outwards * (off_paper_mm - 0.9), 0.0),
                    (outwards * (off_paper_mm + 0.9), 0.0),
                    (outwards * (off_paper_mm + LEADER_MM - 0.8), lift),
                ),
            )
        )
    return Lane(words=tuple(words), leaders=tuple(leaders))


def level_lane_fits(labels: Sequence[Label], *, room_mm: float) -> bool:
    """Can these labels stand side by side in this much paper?"""
    return sum(label.width_mm + LABEL_GAP_MM for label in labels) <= room_mm


def split_to_fit(labels: Sequence[Label], *, room_mm: float) -> list[list[Label]]:
    """The labels, left to right, in as many level lanes as the paper asks for."""
    lanes: list[list[Label]] = []
    for label in sorted(labels, key=lambda label: label.at_mm[0]):
        if lanes and level_lane_fits([*lanes[-1], label], room_mm=room_mm):
            lanes[-1].append(label)
        else:
            lanes.append([label])
    return lanes


def level_lane(
    labels: Sequence[Label],
    *,
    side: Literal["above", "below"],
    line_y_mm: float,
    line_from_mm: float | None,
    off_paper_mm: float,
    between_paper_mm: tuple[float, float],
    scale_ratio: float,
) -> Lane:
    """Labels above or below the model, left to right, off a dimension line that stands ``off_paper_mm``
    outside model y ``line_y_mm``; ``between_paper_mm`` bounds them, from the model's x = 0.
    """
    if not labels:
        return Lane()
    upwards = -1.0 if side == "below" else 1.0
    labels = sorted(labels, key=lambda label: label.at_mm[0])
    wished = [label.at_mm[0] / scale_ratio for label in labels]
    centres = spread_mm(
        wished,
        [label.width_mm + LABEL_GAP_MM for label in labels],
        from_mm=between_paper_mm[0],
        to_mm=between_paper_mm[1],
    )
    middle_y = upwards * (off_paper_mm + LEADER_MM - 1.5 + LABEL_HEIGHT_MM / 2)
    words: list[Words] = []
    leaders = []
    if line_from_mm is not None:
        start: Point = (min(line_from_mm, labels[0].at_mm[0]), line_y_mm)
        end: Point = (labels[-1].at_mm[0], line_y_mm)
        shift_mm = (0.0, upwards * off_paper_mm)
        leaders.append(Leader(pen=Pen.DIMENSION, points_mm=(start, end), shifts_paper_mm=(shift_mm, shift_mm)))
    for label, wish, centre in zip(labels, wished, centres, strict=True):
        at_mm = (label.at_mm[0], line_y_mm)
        shift = centre - wish
        words += _name_and_value(label, at_mm, anchor=Anchor.MIDDLE, shift=(shift, middle_y))
        leaders.append(
            Leader(
                pen=Pen.LEADER,
                points_mm=(at_mm,) * 3,
                shifts_paper_mm=(
                    (0.0, upwards * (off_paper_mm - 0.9)),
                    (0.0, upwards * (off_paper_mm + 0.9)),
                    (shift, upwards * (off_paper_mm + LEADER_MM - 2.0)),
                ),
            )
        )
    return Lane(words=tuple(words), leaders=tuple(leaders))


LEVEL_LANE_MM = LEADER_MM - 1.5 + LABEL_HEIGHT_MM
"""The paper a level lane takes, from its line outwards."""


def _name_and_value(label: Label, at_mm: Point, *, anchor: Anchor, shift: tuple[float, float]) -> tuple[Words, Words]:
    right_mm, up_mm = shift
    name = Words(
        at_mm=at_mm,
        text=label.name,
        letter=Letter.NAME,
        size_paper_mm=NAME_SIZE_MM,
        anchor=anchor,
        shift_paper_mm=(right_mm, up_mm + 0.9),
    )
    value = Words(
        at_mm=at_mm,
        text=label.value,
        letter=Letter.VALUE,
        size_paper_mm=VALUE_SIZE_MM,
        anchor=anchor,
        shift_paper_mm=(right_mm, up_mm - 2.4),
    )
    return name, value
