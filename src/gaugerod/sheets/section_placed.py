"""A section laid on its paper: at the largest standard scale at which it fits, its dimensions included."""

from dataclasses import dataclass

from gaugerod.geometry.polygon import bounding_box_mm
from gaugerod.sheets.drawing import STANDARD_SCALES, Anchor, Drawing, Leader, Letter, Paper, Path, Point, Words
from gaugerod.sheets.lettering import words_box
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.slope_frame import SlopeFrame, Span

_TEXT_MM = 2.7
_EDGE_MM = 2.0
"""Paper kept round the section."""


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


def said(at_mm: Point, text: str, *, anchor: Anchor, shift: tuple[float, float]) -> Words:
    """Level words of a section."""
    return Words(
        at_mm=at_mm,
        text=text,
        letter=Letter.DIMENSION,
        size_paper_mm=_TEXT_MM,
        anchor=anchor,
        shift_paper_mm=shift,
    )


def section_placed(section: Section, *, width_mm: float, height_mm: float) -> Placed:
    """The section on a paper as wide as its room and as high as it needs."""
    for ratio in STANDARD_SCALES:
        dimensions = section.frame.dimensions(
            section.spans, over_mm=section.over_mm, under_mm=section.under_mm, scale_ratio=ratio
        )
        words = (*dimensions.words, *section.words)
        leaders = (*dimensions.leaders, *section.leaders)
        (left_mm, low_mm), (right_mm, high_mm) = _extent_paper_mm(section.paths, leaders, words, scale_ratio=ratio)
        if right_mm - left_mm + 2 * _EDGE_MM <= width_mm and high_mm - low_mm + 2 * _EDGE_MM <= height_mm:
            break
    paper = Paper(
        width_mm=width_mm,
        height_mm=high_mm - low_mm + 2 * _EDGE_MM,
        scale_ratio=ratio,
        origin_paper_mm=((width_mm - right_mm - left_mm) / 2, _EDGE_MM - low_mm),
    )
    drawing = Drawing(
        title=section.title,
        says=f"{section.title}: {'; '.join(span.text for span in section.spans)}. Timber and thickness are only drawn.",
        paths=section.paths,
        words=words,
        leaders=leaders,
    )
    return Placed(drawing=drawing, paper=paper)


def _extent_paper_mm(
    paths: tuple[Path, ...], leaders: tuple[Leader, ...], words: tuple[Words, ...], *, scale_ratio: float
) -> tuple[Point, Point]:
    """Least and greatest corner of everything drawn, on paper, from the section's own origin."""
    origin = Paper(width_mm=0.0, height_mm=0.0, scale_ratio=scale_ratio, origin_paper_mm=(0.0, 0.0))
    boxes = [words_box(each, origin) for each in words]
    return bounding_box_mm(
        (
            *((x / scale_ratio, y / scale_ratio) for path in paths for run in path.runs_mm for x, y in run),
            *(
                (x / scale_ratio + right, y / scale_ratio + up)
                for leader in leaders
                for (x, y), (right, up) in zip(leader.points_mm, leader.shifts_paper_mm, strict=True)
            ),
            *((box.left_mm, box.bottom_mm) for box in boxes),
            *((box.right_mm, box.top_mm) for box in boxes),
        )
    )
