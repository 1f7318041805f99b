"""How much paper words take, so that no two labels are put on the same spot.

Drawings are lettered in one fixed-width face, so a width is a count of letters.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from gaugerod.geometry.pitch import cos_deg, sin_deg
from gaugerod.sheets.drawing import Anchor, Paper, Words

LETTER_WIDTH_RATIO = 0.6021
"""Advance of every letter over the em of the fixed-width face drawings are lettered in (1233 / 2048)."""
RISE_RATIO = 0.76
"""Height of capitals and figures, over the em, with a hair of air."""
DROP_RATIO = 0.24
"""Depth of letters below the line, over the em."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """The room words take on the paper, from its lower left corner, in mm."""

    left_mm: float
    bottom_mm: float
    right_mm: float
    top_mm: float

    def overlaps(self, other: "Box") -> bool:
        """Do the two boxes share any paper?"""
        return (
            self.left_mm < other.right_mm
            and other.left_mm < self.right_mm
            and self.bottom_mm < other.top_mm
            and other.bottom_mm < self.top_mm
        )


def words_width_mm(text: str, size_paper_mm: float) -> float:
    """The width words take, in paper mm.

    >>> round(words_width_mm("4905", 3.0), 3)
    7.225
    """
    return len(text) * LETTER_WIDTH_RATIO * size_paper_mm


def words_box(words: Words, paper: Paper) -> Box:
    """Where words stand on the paper: the upright box round them, turned or not."""
    width_mm = words_width_mm(words.text, words.size_paper_mm)
    start_mm = {Anchor.START: 0.0, Anchor.MIDDLE: -width_mm / 2, Anchor.END: -width_mm}[words.anchor]
    along, across = cos_deg(words.turned_deg), sin_deg(words.turned_deg)
    corners = [
        (right * along - up * across, right * across + up * along)
        for right in (start_mm, start_mm + width_mm)
        for up in (-DROP_RATIO * words.size_paper_mm, RISE_RATIO * words.size_paper_mm)
    ]
    x_mm = paper.origin_paper_mm[0] + words.at_mm[0] / paper.scale_ratio + words.shift_paper_mm[0]
    y_mm = paper.origin_paper_mm[1] + words.at_mm[1] / paper.scale_ratio + words.shift_paper_mm[1]
    return Box(
        left_mm=x_mm + min(right for right, _ in corners),
        bottom_mm=y_mm + min(up for _, up in corners),
        right_mm=x_mm + max(right for right, _ in corners),
        top_mm=y_mm + max(up for _, up in corners),
    )


def spread_mm(
    wished_mm: Sequence[float], rooms_mm: Sequence[float], *, from_mm: float, to_mm: float
) -> tuple[float, ...]:
    """Centres for labels in one lane: as near as can be to where each is wished, in the given order, none
    overlapping. ``rooms_mm`` is the length of lane each label takes; wishes run upwards. All stand between
    ``from_mm`` and ``to_mm``; where the lane is too short for them they run on past ``to_mm``.

    Labels that would touch are gathered into one block that stands on the mean of its wishes.

    >>> spread_mm((10.0, 11.0, 30.0), (4.0, 4.0, 4.0), from_mm=0.0, to_mm=31.0)
    (8.5, 12.5, 29.0)
    """
    blocks: list[_Block] = []
    for wished, room in zip(wished_mm, rooms_mm, strict=True):
        block = _Block(count=1, room_mm=room, start_sum_mm=wished - room / 2)
        while blocks and blocks[-1].start_mm + blocks[-1].room_mm > block.start_mm:
            block = blocks.pop().followed_by(block)
        blocks.append(block)
    centres: list[float] = []
    edge = from_mm
    ahead_mm = sum(rooms_mm)
    for block in blocks:
        edge = max(edge, min(block.start_mm, to_mm - ahead_mm))
        for room in rooms_mm[len(centres) : len(centres) + block.count]:
            centres.append(edge + room / 2)
            edge += room
            ahead_mm -= room
    return tuple(centres)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Block:
    """Labels standing shoulder to shoulder; ``start_sum_mm`` sums where each would have the block start."""

    count: int
    room_mm: float
    start_sum_mm: float

    @property
    def start_mm(self) -> float:
        return self.start_sum_mm / self.count

    def followed_by(self, after: "_Block") -> "_Block":
        return _Block(
            count=self.count + after.count,
            room_mm=self.room_mm + after.room_mm,
            start_sum_mm=self.start_sum_mm + after.start_sum_mm - after.count * self.room_mm,
        )
