"""A section of an edge before it has a scale, and how it is laid on paper: lines to measure by, their words beside."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from gaugerod.geometry.pitch import cos_deg, sin_deg
from gaugerod.geometry.polygon import bounding_box_mm
from gaugerod.sheets.dimension_lanes import LABEL_HEIGHT_MM, NAME_SIZE_MM, VALUE_SIZE_MM
from gaugerod.sheets.drawing import STANDARD_SCALES, Anchor, Drawing, Leader, Letter, Paper, Path, Pen, Point, Words
from gaugerod.sheets.lettering import spread_mm, words_width_mm
from gaugerod.sheets.placed import Placed

_EDGE_MM, _OFF_MM, _LEAD_MM, _TICK_MM = 2.0, 3.0, 6.0, 1.0
"""Paper kept round a detail; between drawing and labels; across which pointers run; half a tick."""
WIDTH_MM, HEIGHT_MM = 181.0, 84.0
"""The paper a detail has on a sheet: as wide as the text of the narrowest."""
_NARROW_MM, _KEY_LINE_MM, _KEY_SIZE_MM = 140.0, 4.4, 3.0
GIVEN, SET_OUT = "given in the job", "set out for this roof"
"""Where a figure comes from that no table states."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """One length shown in a detail, from a point to another, with its name and what it is; ``left``: told on that side.

    A measure from a point to itself only points: at a timber, a fixing, a bed. ``source`` says where its figure comes from;
    empty where it states none.
    """

    from_mm: Point
    to_mm: Point
    name: str
    value: str
    source: str = ""
    left: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Detail:
    """What a detail shows, x to the right and y up, mm. ``only_drawn`` names what is not to be measured off it."""

    title: str
    paths: tuple[Path, ...]
    measures: tuple[Measure, ...]
    only_drawn: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaf:
    """One slope of a section, away from x = 0: s along it, n square off it, outwards. Its ``rise_deg`` is below nothing
    where it falls away, as from a ridge; ``left``: on the left of x = 0.
    """

    rise_deg: float
    left: bool = False

    def at(self, s_mm: float, n_mm: float) -> Point:
        """The point in the section.

        >>> Leaf(rise_deg=0.0).at(100.0, 25.0), Leaf(rise_deg=0.0, left=True).at(100.0, 25.0)
        ((100.0, 25.0), (-100.0, 25.0))
        """
        along, off = cos_deg(self.rise_deg), sin_deg(self.rise_deg)
        x_mm = s_mm * along - n_mm * off
        return (-x_mm if self.left else x_mm, s_mm * off + n_mm * along)

    def plumb_mm(self, n_mm: float) -> float:
        """How high over x = 0 the line n off the slope comes."""
        return n_mm / cos_deg(self.rise_deg)

    def at_plumb(self, x_mm: float, n_mm: float) -> Point:
        """Where a plumb line so far from x = 0, on this side, meets the line n off the slope."""
        return self.at((x_mm + n_mm * sin_deg(self.rise_deg)) / cos_deg(self.rise_deg), n_mm)

    def from_line(self, s_mm: float, n_mm: float) -> Point:
        """A point so far from plumb over x = 0, measured along the slope in the plane n off it."""
        return self.at_plumb(s_mm * cos_deg(self.rise_deg), n_mm)

    def block(self, *, from_mm: float, to_mm: float, low_mm: float, high_mm: float) -> tuple[Point, ...]:
        """A rectangle lying along the slope."""
        return (
            self.at(from_mm, low_mm),
            self.at(to_mm, low_mm),
            self.at(to_mm, high_mm),
            self.at(from_mm, high_mm),
        )

    def plumb_cut(self, *, to_mm: float, low_mm: float, high_mm: float) -> tuple[Point, ...]:
        """The same from x = 0, cut plumb there."""
        return (
            (0.0, self.plumb_mm(low_mm)),
            self.at(to_mm, low_mm),
            self.at(to_mm, high_mm),
            (0.0, self.plumb_mm(high_mm)),
        )


def detail_placed(
    detail: Detail, *, width_mm: float = WIDTH_MM, height_mm: float = HEIGHT_MM, listed: bool = True
) -> Placed:
    """The detail at the largest standard scale at which it and its words fit the room; on narrow paper its measures are
    numbered, and told in a list under it; not ``listed``: whoever shows it tells them, in the same order.
    """
    numbered = width_mm < _NARROW_MM
    key = [f"{at}  {_told(each)}" for at, each in enumerate(detail.measures, 1)] if numbered and listed else []
    labels = [
        _Label(measure=each, name="" if numbered else each.name, value=str(at) if numbered else each.value)
        for at, each in enumerate(detail.measures, 1)
    ]
    sides = {left: [each for each in labels if each.measure.left is left] for left in (True, False)}
    low, high = _extent_mm(detail)
    beside_mm = {left: _beside_mm(here) for left, here in sides.items()}
    key_mm = len(key) * _KEY_LINE_MM
    room = (width_mm - beside_mm[True] - beside_mm[False] - 2 * _EDGE_MM, height_mm - 2 * _EDGE_MM - key_mm)
    ratio = _scale_ratio((high[0] - low[0], high[1] - low[1]), room)
    drawn_mm = (high[1] - low[1]) / ratio
    tall_mm = max(drawn_mm, max(len(here) for here in sides.values()) * LABEL_HEIGHT_MM)
    paper = Paper(
        width_mm=width_mm,
        height_mm=tall_mm + 2 * _EDGE_MM + key_mm,
        scale_ratio=ratio,
        origin_paper_mm=(
            _EDGE_MM + beside_mm[True] + (room[0] - (high[0] - low[0]) / ratio) / 2 - low[0] / ratio,
            _EDGE_MM + key_mm + (tall_mm - drawn_mm) / 2 - low[1] / ratio,
        ),
    )
    words: list[Words] = list(_key_words(key, paper))
    leaders: list[Leader] = list(_ticked(detail.measures, ratio))
    for left, here in sides.items():
        x_mm = low[0] - _OFF_MM * ratio if left else high[0] + _OFF_MM * ratio
        for label, centre_mm in _spread(here, paper, key_mm):
            words += _words(label, (x_mm, centre_mm))
            leaders.append(_pointer(label.measure, (x_mm, centre_mm)))
    return Placed(
        drawing=Drawing(
            title=detail.title,
            says=_says(detail),
            paths=detail.paths,
            words=tuple(words),
            leaders=tuple(leaders),
        ),
        paper=paper,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Label:
    """What stands beside the drawing for a measure: its name and value, or its number alone."""

    measure: Measure
    name: str
    value: str


def _extent_mm(detail: Detail) -> tuple[Point, Point]:
    drawn = [point for path in detail.paths for run in path.runs_mm for point in run]
    measured = [point for each in detail.measures for point in (each.from_mm, each.to_mm)]
    return bounding_box_mm([*drawn, *measured])


def _told(measure: Measure) -> str:
    return f"{measure.name}: {measure.value}" if measure.value else measure.name


def _key_words(key: Sequence[str], paper: Paper) -> Iterator[Words]:
    """The numbered measures in words, under the drawing."""
    x_mm, y_mm = paper.origin_paper_mm
    for at, text in enumerate(reversed(key)):
        yield Words(
            at_mm=(0.0, 0.0),
            text=text,
            letter=Letter.DIMENSION,
            size_paper_mm=_KEY_SIZE_MM,
            shift_paper_mm=(_EDGE_MM - x_mm, _EDGE_MM + 1.0 + at * _KEY_LINE_MM - y_mm),
        )


def _says(detail: Detail) -> str:
    """The picture in words."""
    said = "; ".join(_told(each) for each in detail.measures)
    return f"{detail.title}: {said}. Only drawn: {detail.only_drawn}."


def _scale_ratio(size_mm: Point, room_mm: Point) -> int:
    for ratio in STANDARD_SCALES:
        if size_mm[0] <= ratio * room_mm[0] and size_mm[1] <= ratio * room_mm[1]:
            return ratio
    return STANDARD_SCALES[-1]


def _beside_mm(labels: Sequence[_Label]) -> float:
    """The paper labels take beside the drawing."""
    if not labels:
        return 0.0
    widest = max(
        max(words_width_mm(each.name, NAME_SIZE_MM), words_width_mm(each.value, VALUE_SIZE_MM)) for each in labels
    )
    return widest + _OFF_MM + _LEAD_MM


def _spread(labels: Sequence[_Label], paper: Paper, key_mm: float) -> Iterator[tuple[_Label, float]]:
    """Each label with its middle, in model mm up: near what it measures, none on another."""
    ratio, foot_mm = paper.scale_ratio, -paper.origin_paper_mm[1]
    upwards = sorted(labels, key=lambda label: _height_mm(label.measure))
    centres = spread_mm(
        [_height_mm(each.measure) / ratio for each in upwards],
        [LABEL_HEIGHT_MM] * len(upwards),
        from_mm=foot_mm + _EDGE_MM + key_mm,
        to_mm=foot_mm + paper.height_mm - _EDGE_MM,
    )
    for label, centre in zip(upwards, centres, strict=True):
        yield label, centre * ratio


def _height_mm(measure: Measure) -> float:
    return _middle(measure)[1]


def _middle(measure: Measure) -> Point:
    (x0, y0), (x1, y1) = measure.from_mm, measure.to_mm
    return ((x0 + x1) / 2, (y0 + y1) / 2)


def _words(label: _Label, at_mm: Point) -> Iterator[Words]:
    """The name over the value; either alone stands in the middle."""
    left = label.measure.left
    right_mm = -_LEAD_MM if left else _LEAD_MM
    both = bool(label.name and label.value)
    for text, letter, size_mm, up_mm in (
        (label.name, Letter.NAME, NAME_SIZE_MM, 0.9 if both else -0.6),
        (label.value, Letter.VALUE, VALUE_SIZE_MM, -2.4 if both else -1.2),
    ):
        if text:
            yield Words(
                at_mm=at_mm,
                text=text,
                letter=letter,
                size_paper_mm=size_mm,
                anchor=Anchor.END if left else Anchor.START,
                shift_paper_mm=(right_mm, up_mm),
            )


def _ticked(measures: Sequence[Measure], ratio: int) -> Iterator[Leader]:
    """A line from end to end of what is measured, with a tick at each."""
    for each in measures:
        if each.from_mm == each.to_mm:
            continue
        yield _straight(each.from_mm, each.to_mm, Pen.DIMENSION)
        for x, y in (each.from_mm, each.to_mm):
            tick_mm = _TICK_MM * ratio
            yield _straight((x - tick_mm, y - tick_mm), (x + tick_mm, y + tick_mm), Pen.DIMENSION)


def _pointer(measure: Measure, label_mm: Point) -> Leader:
    """From the middle of what is measured to its label."""
    short_mm = (1.0 if measure.left else -1.0) * (1.0 - _LEAD_MM)
    return Leader(pen=Pen.LEADER, points_mm=(_middle(measure), label_mm), shifts_paper_mm=((0.0, 0.0), (short_mm, 0.0)))


def _straight(start: Point, end: Point, pen: Pen) -> Leader:
    return Leader(pen=pen, points_mm=(start, end), shifts_paper_mm=((0.0, 0.0), (0.0, 0.0)))


def pointing(at_mm: Point, name: str, value: str = "", *, source: str = "", left: bool = False) -> Measure:
    """Words that point at something and measure nothing."""
    return Measure(from_mm=at_mm, to_mm=at_mm, name=name, value=value, source=source, left=left)


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
