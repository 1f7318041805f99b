"""The roof on plan: slopes numbered with their pitch and area, hips, valleys and ridges with their true length."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit
from gaugerod.geometry.pitch import atan2_deg
from gaugerod.geometry.polygon import Point, bounding_box_mm, holds_point
from gaugerod.geometry.roof_faces import RoofEdge, RoofForm, RoofLine
from gaugerod.sheets.drawing import Anchor, Drawing, Letter, Paper, Path, Pen, Words, largest_scale_ratio
from gaugerod.sheets.lengths_shown import bare_length
from gaugerod.sheets.placed import Placed

_MARGIN_MM = 12.0
_FIGURES_MM, _LINE_MM = 2.4, 2.6
"""Letters of a slope's figures and of a line's, on paper."""
_LETTER_RATIO = 0.602
"""Width of a letter to its size, in the one face of drawings."""
_PENS = {RoofEdge.HIP: Pen.HIP, RoofEdge.VALLEY: Pen.VALLEY}


def roof_plan_drawing(
    form: RoofForm, *, name: str, unit: LengthUnit, room_width_mm: float, room_height_mm: float
) -> Placed:
    """The plan as large as the room allows at a standard scale."""
    low, high = bounding_box_mm([point for ring in form.eaves_line_mm for point in ring])
    ratio = largest_scale_ratio(
        model_width_mm=high[0] - low[0],
        model_height_mm=high[1] - low[1],
        width_mm=room_width_mm - 2 * _MARGIN_MM,
        height_mm=room_height_mm - 2 * _MARGIN_MM,
    )
    spare_mm = room_width_mm - (high[0] - low[0]) / ratio
    return Placed(
        drawing=Drawing(
            title=f"Roof plan, {name}",
            says=_said(form, name, unit),
            paths=tuple(_paths(form)),
            words=(*_slope_words(form, ratio), *_line_words(form, unit, ratio), *_eaves_words(form, unit)),
        ),
        paper=Paper(
            width_mm=room_width_mm,
            height_mm=(high[1] - low[1]) / ratio + 2 * _MARGIN_MM,
            scale_ratio=ratio,
            origin_paper_mm=(spare_mm / 2 - low[0] / ratio, _MARGIN_MM - low[1] / ratio),
        ),
    )


def _said(form: RoofForm, name: str, unit: LengthUnit) -> str:
    slopes = "; ".join(
        f"slope {slope.number + 1} {slope.pitch_deg:.1f}°, {slope.area_mm2 / 1e6:.2f} m²" for slope in form.slopes
    )
    lines = ", ".join(f"{line.kind.value} {bare_length(line.length_mm, unit)}" for line in form.lines)
    return f"Plan of {name}: {slopes}. {lines}."


def _paths(form: RoofForm) -> Iterator[Path]:
    yield Path(pen=Pen.SURFACE, runs_mm=tuple(slope.plan_mm for slope in form.slopes), closed=True)
    for line in form.lines:
        yield Path(pen=_PENS.get(line.kind, Pen.RIDGE), runs_mm=((line.foot_mm[:2], line.head_mm[:2]),))
    yield Path(pen=Pen.OUTLINE, runs_mm=form.eaves_line_mm, closed=True)


def _slope_words(form: RoofForm, scale_ratio: float) -> Iterator[Words]:
    """The number of every slope; pitch and area under it where they fit inside."""
    for slope in form.slopes:
        at_mm = _inside(slope.plan_mm)
        yield Words(at_mm=at_mm, text=str(slope.number + 1), letter=Letter.KEY, size_paper_mm=5.0, anchor=Anchor.MIDDLE,
                    shift_paper_mm=(0.0, 1.0))  # fmt: skip
        figures = f"{slope.pitch_deg:.1f}°, {slope.area_mm2 / 1e6:.1f} m²"
        half_mm = _wide_mm(figures, _FIGURES_MM) * scale_ratio / 2
        corners = [
            (at_mm[0] + x * half_mm, at_mm[1] + y * scale_ratio) for x in (-1, 1) for y in (-3.0, -3.0 + _FIGURES_MM)
        ]
        if all(holds_point(slope.plan_mm, corner) for corner in corners):
            yield Words(
                at_mm=at_mm,
                text=figures,
                letter=Letter.NAME,
                size_paper_mm=_FIGURES_MM,
                anchor=Anchor.MIDDLE,
                shift_paper_mm=(0.0, -3.0),
            )


def _wide_mm(text: str, size_mm: float) -> float:
    """How wide it is on paper: every letter of the one face is as wide."""
    return len(text) * size_mm * _LETTER_RATIO


def _inside(corners: tuple[Point, ...]) -> Point:
    """The middle of its area on plan."""
    area = sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(corners, (*corners[1:], corners[0]), strict=True))
    parts = [
        ((x0 + x1) * (x0 * y1 - x1 * y0), (y0 + y1) * (x0 * y1 - x1 * y0))
        for (x0, y0), (x1, y1) in zip(corners, (*corners[1:], corners[0]), strict=True)
    ]
    return (sum(x for x, _ in parts) / (3 * area), sum(y for _, y in parts) / (3 * area))


def _line_words(form: RoofForm, unit: LengthUnit, scale_ratio: float) -> Iterator[Words]:
    """Kind and true length along every line; the length alone, or nothing, where the line is too short for them."""
    for line in form.lines:
        length = bare_length(line.length_mm, unit)
        for text in (f"{line.kind.value} {length}", length):
            if _wide_mm(text, _LINE_MM) <= line.plan_length_mm / scale_ratio:
                yield _along(line, text)
                break


def _along(line: RoofLine, text: str) -> Words:
    (x0, y0, _), (x1, y1, _) = line.foot_mm, line.head_mm
    turned = atan2_deg(y1 - y0, x1 - x0)
    if turned > 90:
        turned -= 180
    elif turned <= -90:
        turned += 180
    return Words(
        at_mm=((x0 + x1) / 2, (y0 + y1) / 2),
        text=text,
        letter=Letter.EDGE,
        size_paper_mm=_LINE_MM,
        anchor=Anchor.MIDDLE,
        turned_deg=turned,
    )


def _eaves_words(form: RoofForm, unit: LengthUnit) -> Iterator[Words]:
    """The length of every side of the eaves and verge line, outside it."""
    for ring in form.eaves_line_mm:
        for (x0, y0), (x1, y1) in zip(ring, (*ring[1:], ring[0]), strict=True):
            turned = atan2_deg(y1 - y0, x1 - x0)
            flipped = turned > 90 or turned <= -90
            yield Words(
                at_mm=((x0 + x1) / 2, (y0 + y1) / 2),
                text=bare_length(((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5, unit),
                letter=Letter.VALUE,
                size_paper_mm=2.8,
                anchor=Anchor.MIDDLE,
                shift_paper_mm=_outside(x1 - x0, y1 - y0),
                turned_deg=turned - 180 if flipped and turned > 0 else turned + 180 if flipped else turned,
            )


def _outside(dx: float, dy: float) -> tuple[float, float]:
    """Five paper millimetres to the right of the way walked, which is outside."""
    long = (dx * dx + dy * dy) ** 0.5
    return (5.0 * dy / long, -5.0 * dx / long - 1.0)
