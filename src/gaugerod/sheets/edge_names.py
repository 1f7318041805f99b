"""The name of each edge, written along it just inside the slope, clear of the openings; a hip's outside, clear of battens."""

from collections.abc import Iterable, Iterator, Sequence

from gaugerod.geometry.pitch import atan2_deg, length_mm
from gaugerod.job.result import SlopeResult
from gaugerod.laying.ask import EdgeKind
from gaugerod.setting_out.stations import Opening
from gaugerod.sheets.drawing import Anchor, Letter, Paper, Point, Words
from gaugerod.sheets.lettering import Box, words_box, words_width_mm

_SIZE_MM = 2.8
_INSIDE_MM = 4.2
"""Paper from the edge to the middle of the letters."""
_OUTSIDE_MM = 2.6
"""The same, outside."""

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
    """Each edge named where its word is clear of openings and other names; unnamed where no place is free."""
    taken = [opening_box(opening, paper) for opening in slope.slope.openings]
    return words_along(named_edges(slope), paper=paper, taken=taken)


def words_along(edges: Iterable[tuple[str, Point, Point]], *, paper: Paper, taken: Sequence[Box]) -> tuple[Words, ...]:
    """Words along edges, each just inside its own and clear of what is taken; left out where no place is free."""
    taken = list(taken)
    named: list[Words] = []
    for name, start, end in edges:
        for words in _places(name, start, end, scale_ratio=paper.scale_ratio):
            box = words_box(words, paper)
            if not any(box.overlaps(other) for other in taken):
                taken.append(box)
                named.append(words)
                break
    return tuple(named)


def _places(name: str, start: Point, end: Point, *, scale_ratio: float) -> Iterator[Words]:
    """The word along the edge: in its middle first, then nearer one end or the other; nowhere on too short an edge."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    long_mm = length_mm(dx, dy)
    if (words_width_mm(name, _SIZE_MM) + 2.0) * scale_ratio > long_mm:
        return
    angle_deg = atan2_deg(dy, dx)
    turned_deg = _upright_deg(angle_deg)
    # Letters stand on their line, so the line is half their height nearer the edge, or further where they are turned over.
    lower_mm = 0.36 * _SIZE_MM * (-1.0 if turned_deg == angle_deg else 1.0)
    inside_mm = (_INSIDE_MM + lower_mm) * scale_ratio
    if name == EdgeKind.HIP.value:
        # It leans over the slope, so beside it the paper is free; inside, every batten would run through the word.
        inside_mm = (lower_mm - _OUTSIDE_MM) * scale_ratio
    for share in (0.5, 0.35, 0.65, 0.2, 0.8):
        yield Words(
            at_mm=(
                start[0] + share * dx - dy / long_mm * inside_mm,
                start[1] + share * dy + dx / long_mm * inside_mm,
            ),
            text=name,
            letter=Letter.EDGE,
            size_paper_mm=_SIZE_MM,
            anchor=Anchor.MIDDLE,
            turned_deg=turned_deg,
        )


def opening_box(opening: Opening, paper: Paper) -> Box:
    """The paper an opening takes."""
    x_mm, y_mm = paper.origin_paper_mm
    return Box(
        left_mm=x_mm + opening.from_left_mm / paper.scale_ratio,
        bottom_mm=y_mm + opening.up_slope_mm / paper.scale_ratio,
        right_mm=x_mm + opening.right_mm / paper.scale_ratio,
        top_mm=y_mm + opening.head_mm / paper.scale_ratio,
    )


def _upright_deg(angle_deg: float) -> float:
    """The same line, read from below or from the right.

    >>> _upright_deg(180.0), _upright_deg(-90.0), _upright_deg(60.0)
    (0.0, 90.0, 60.0)
    """
    if angle_deg > _PAST_UPRIGHT_DEG:
        return angle_deg - 180.0
    return angle_deg + 180.0 if angle_deg <= _PAST_UPRIGHT_DEG - 180.0 else angle_deg
