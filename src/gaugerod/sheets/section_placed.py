"""A section laid on its paper: at the largest standard scale at which it fits, its dimensions included."""

from dataclasses import dataclass

from gaugerod.geometry.polygon import bounding_box_mm
from gaugerod.sheets.drawing import STANDARD_SCALES, Drawing, Leader, Letter, Paper, Path, Point, Words
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.slope_frame import SlopeFrame, Span

_TEXT_MM = 2.7
_EDGE_MM, _FOOT_MM = 1.0, 9.5
"""Paper kept round the section, and below it for words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """What a section shows, in its own axes, before it has a scale.

    ``over_mm`` and ``under_mm`` are where the dimensions over the covering and under the rafter begin.
    """

    title: str
    frame: SlopeFrame
    paths: tuple[Path, ...]
    spans: tuple[Span, ...]
    words: tuple[Words, ...]
    leaders: tuple[Leader, ...]
    over_mm: float
    under_mm: float


def said(at_mm: Point, text: str, *, shift: tuple[float, float]) -> Words:
    """Level words of a section."""
    return Words(at_mm=at_mm, text=text, letter=Letter.DIMENSION, size_paper_mm=_TEXT_MM, shift_paper_mm=shift)


def section_placed(section: Section, *, width_mm: float, height_mm: float) -> Placed:
    """The section on a paper as wide as its room and as high as it needs."""
    for ratio in STANDARD_SCALES:
        dimensions = section.frame.dimensions(
            section.spans, over_mm=section.over_mm, under_mm=section.under_mm, scale_ratio=ratio
        )
        points = (*(point for path in section.paths for run in path.runs_mm for point in run), *dimensions.reach_mm)
        (low_x, low_y), (high_x, high_y) = bounding_box_mm(points)
        wide_mm = (high_x - low_x) / ratio + 2 * _EDGE_MM
        high_mm = (high_y - low_y) / ratio + _EDGE_MM + _FOOT_MM
        if wide_mm <= width_mm and high_mm <= height_mm:
            break
    paper = Paper(
        width_mm=width_mm,
        height_mm=high_mm,
        scale_ratio=ratio,
        origin_paper_mm=((width_mm - wide_mm) / 2 + _EDGE_MM - low_x / ratio, _FOOT_MM - low_y / ratio),
    )
    drawing = Drawing(
        title=section.title,
        says=f"{section.title}: {'; '.join(span.text for span in section.spans)}. Timber and thickness are only drawn.",
        paths=section.paths,
        words=(*dimensions.words, *section.words),
        leaders=(*dimensions.leaders, *section.leaders),
    )
    return Placed(drawing=drawing, paper=paper)
