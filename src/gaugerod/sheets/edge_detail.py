"""A section of an edge before it has a scale, and how it is laid on paper: lines to measure by, their words in lanes beside."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from gaugerod.geometry.pitch import cos_deg, sin_deg
from gaugerod.geometry.polygon import bounding_box_mm
from gaugerod.sheets.dimension_lanes import LABEL_HEIGHT_MM, Label, upright_lane, upright_lane_width_mm
from gaugerod.sheets.drawing import STANDARD_SCALES, Drawing, Leader, Paper, Path, Pen, Point, Words
from gaugerod.sheets.placed import Placed

_EDGE_MM = 2.0
_OFF_MM = 2.0
_TICK_MM = 1.0
WIDTH_MM, HEIGHT_MM = 181.0, 66.0
"""The paper a detail has on a sheet: as wide as the text of the narrowest."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """One length shown in a detail, from a point to another, with its name and what it is; ``left``: told on that side.

    A measure from a point to itself only points: at a timber, a fixing, a bed.
    """

    from_mm: Point
    to_mm: Point
    name: str
    value: str
    left: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Detail:
    """What a detail shows, x to the right and y up, mm. ``only_drawn`` names what is not to be measured off it."""

    title: str
    paths: tuple[Path, ...]
    measures: tuple[Measure, ...]
    only_drawn: str


def detail_placed(detail: Detail, *, width_mm: float = WIDTH_MM, height_mm: float = HEIGHT_MM) -> Placed:
    """The detail at the largest standard scale at which it and its words fit the room."""
    sides = {True: _labels(detail, left=True), False: _labels(detail, left=False)}
    drawn = [point for path in detail.paths for run in path.runs_mm for point in run]
    measured = [point for each in detail.measures for point in (each.from_mm, each.to_mm)]
    low, high = bounding_box_mm([*drawn, *measured])
    lane_mm = {left: upright_lane_width_mm(labels) + _OFF_MM for left, labels in sides.items()}
    tall_mm = max(len(labels) for labels in sides.values()) * LABEL_HEIGHT_MM
    room = (width_mm - lane_mm[True] - lane_mm[False] - 2 * _EDGE_MM, height_mm - 2 * _EDGE_MM)
    ratio = next(
        (
            ratio
            for ratio in STANDARD_SCALES
            if high[0] - low[0] <= ratio * room[0] and high[1] - low[1] <= ratio * room[1]
        ),
        STANDARD_SCALES[-1],
    )
    drawn_mm = (high[1] - low[1]) / ratio
    paper_height_mm = max(drawn_mm, tall_mm) + 2 * _EDGE_MM
    spare_mm = (paper_height_mm - 2 * _EDGE_MM - drawn_mm) / 2
    paper = Paper(
        width_mm=width_mm,
        height_mm=paper_height_mm,
        scale_ratio=ratio,
        origin_paper_mm=(
            _EDGE_MM + lane_mm[True] + (room[0] - (high[0] - low[0]) / ratio) / 2 - low[0] / ratio,
            _EDGE_MM + spare_mm - low[1] / ratio,
        ),
    )
    words: list[Words] = []
    leaders: list[Leader] = list(_ticked(detail.measures, ratio))
    for left, labels in sides.items():
        lane = upright_lane(
            labels,
            side="left" if left else "right",
            line_x_mm=low[0] if left else high[0],
            off_paper_mm=_OFF_MM,
            between_paper_mm=(low[1] / ratio - spare_mm, high[1] / ratio + spare_mm),
            scale_ratio=ratio,
        )
        words += lane.words
        leaders += lane.leaders
        leaders += (_pointer(label.at_mm, low[0] if left else high[0]) for label in labels)
    said = "; ".join(f"{each.name} {each.value}".strip() for each in detail.measures)
    return Placed(
        drawing=Drawing(
            title=detail.title,
            says=f"{detail.title}: {said}. Only drawn: {detail.only_drawn}.",
            paths=detail.paths,
            words=tuple(words),
            leaders=tuple(leaders),
        ),
        paper=paper,
    )


def _labels(detail: Detail, *, left: bool) -> list[Label]:
    return [
        Label(at_mm=_middle(each), name=each.name, value=each.value) for each in detail.measures if each.left is left
    ]


def _middle(measure: Measure) -> Point:
    (x0, y0), (x1, y1) = measure.from_mm, measure.to_mm
    return ((x0 + x1) / 2, (y0 + y1) / 2)


def _ticked(measures: Sequence[Measure], ratio: int) -> Iterator[Leader]:
    """A line from end to end of what is measured, with a tick at each."""
    for each in measures:
        if each.from_mm == each.to_mm:
            continue
        yield _straight(each.from_mm, each.to_mm, Pen.DIMENSION)
        for x, y in (each.from_mm, each.to_mm):
            tick_mm = _TICK_MM * ratio
            yield _straight((x - tick_mm, y - tick_mm), (x + tick_mm, y + tick_mm), Pen.DIMENSION)


def _pointer(at_mm: Point, x_mm: float) -> Leader:
    """From what is measured, level, to its lane."""
    return _straight(at_mm, (x_mm, at_mm[1]), Pen.LEADER)


def _straight(start: Point, end: Point, pen: Pen) -> Leader:
    return Leader(pen=pen, points_mm=(start, end), shifts_paper_mm=((0.0, 0.0), (0.0, 0.0)))


def closed(pen: Pen, *rings: Sequence[Point]) -> Path:
    """Rings drawn with one pen."""
    return Path(pen=pen, runs_mm=tuple(tuple(ring) for ring in rings), closed=True)


def line(pen: Pen, *runs: Sequence[Point]) -> Path:
    """Lines drawn with one pen."""
    return Path(pen=pen, runs_mm=tuple(tuple(run) for run in runs))


def box(x_mm: float, y_mm: float, width_mm: float, height_mm: float) -> tuple[Point, ...]:
    """A rectangle from its lower left corner."""
    return (
        (x_mm, y_mm),
        (x_mm + width_mm, y_mm),
        (x_mm + width_mm, y_mm + height_mm),
        (x_mm, y_mm + height_mm),
    )


def mirrored(points: Sequence[Point]) -> tuple[Point, ...]:
    """The same points on the other side of x = 0."""
    return tuple((-x, y) for x, y in points)


def falling(*, pitch_deg: float, from_mm: float, to_mm: float, low_mm: float, high_mm: float) -> tuple[Point, ...]:
    """A block lying on a slope that falls to the right from the origin: from and to along it, low and high square off it."""
    along, off = cos_deg(pitch_deg), sin_deg(pitch_deg)

    def at(s_mm: float, n_mm: float) -> Point:
        return (s_mm * along + n_mm * off, -s_mm * off + n_mm * along)

    return (at(from_mm, low_mm), at(to_mm, low_mm), at(to_mm, high_mm), at(from_mm, high_mm))
