"""The name of each edge, written along it just inside the slope, clear of the openings."""

from gaugerod.geometry.pitch import atan2_deg, length_mm
from gaugerod.job.result import SlopeResult
from gaugerod.sheets.drawing import Anchor, Letter, Paper, Point, Words
from gaugerod.sheets.lettering import words_width_mm

_SIZE_MM = 2.8
_INSIDE_MM = 4.2
"""Paper from the edge to the middle of the letters."""


_PAST_UPRIGHT_DEG = 100.0
"""A side that leans a little past upright is still read from the right."""


def named_edges(slope: SlopeResult) -> tuple[tuple[str, Point, Point], ...]:
    """Every edge of the roof structure with its name, counter-clockwise from the eaves."""
    corners = slope.shape.outline_mm
    if slope.slope.outline is not None:
        names = tuple(kind.value for kind in slope.slope.outline.kinds)
    else:
        names = (slope.slope.bottom.value, slope.slope.right.value, slope.slope.top.value, slope.slope.left.value)
    return tuple(zip(names, corners, (*corners[1:], corners[0]), strict=True))


def edge_names(slope: SlopeResult, *, paper: Paper) -> tuple[Words, ...]:
    """Each edge named where its word meets no opening; unnamed where it is too short or no place is free."""
    words = (_along(name, start, end, slope=slope, paper=paper) for name, start, end in named_edges(slope))
    return tuple(each for each in words if each is not None)


def _along(name: str, start: Point, end: Point, *, slope: SlopeResult, paper: Paper) -> Words | None:
    dx, dy = end[0] - start[0], end[1] - start[1]
    long_mm = length_mm(dx, dy)
    word_mm = (words_width_mm(name, _SIZE_MM) + 2.0) * paper.scale_ratio
    if word_mm > long_mm:
        return None
    inside_mm = _INSIDE_MM * paper.scale_ratio
    inwards = (-dy / long_mm * inside_mm, dx / long_mm * inside_mm)
    half_mm = (
        (word_mm * (dx if dx > 0 else -dx) / long_mm + inside_mm) / 2,
        (word_mm * (dy if dy > 0 else -dy) / long_mm + inside_mm) / 2,
    )
    turned_deg = _upright_deg(atan2_deg(dy, dx))
    below = 0.36 * _SIZE_MM * paper.scale_ratio
    flip = 1.0 if _upright_deg(turned_deg) == atan2_deg(dy, dx) else -1.0
    letters_down = (dy / long_mm * below * flip, -dx / long_mm * below * flip)
    for share in (0.5, 0.35, 0.65, 0.2, 0.8):
        middle = (start[0] + share * dx + inwards[0], start[1] + share * dy + inwards[1])
        if not _meets_opening(middle, half_mm, slope):
            return Words(
                at_mm=(middle[0] + letters_down[0], middle[1] + letters_down[1]),
                text=name,
                letter=Letter.EDGE,
                size_paper_mm=_SIZE_MM,
                anchor=Anchor.MIDDLE,
                turned_deg=turned_deg,
            )
    return None


def _upright_deg(angle_deg: float) -> float:
    """The same line, read from below or from the right.

    >>> _upright_deg(180.0), _upright_deg(-90.0), _upright_deg(60.0)
    (0.0, 90.0, 60.0)
    """
    if angle_deg > _PAST_UPRIGHT_DEG:
        return angle_deg - 180.0
    return angle_deg + 180.0 if angle_deg <= _PAST_UPRIGHT_DEG - 180.0 else angle_deg


def _meets_opening(middle: Point, half_mm: tuple[float, float], slope: SlopeResult) -> bool:
    return any(
        opening.from_left_mm < middle[0] + half_mm[0]
        and middle[0] - half_mm[0] < opening.right_mm
        and opening.up_slope_mm < middle[1] + half_mm[1]
        and middle[1] - half_mm[1] < opening.head_mm
        for opening in slope.slope.openings
    )
