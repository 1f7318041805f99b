"""The plan on its grid: walls, corners and the lines of the roof, in units of the drawing."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.lengths import LengthUnit
from gaugerod.geometry.pitch import atan2_deg, length_mm
from gaugerod.geometry.polygon import Point, signed_area_mm2
from gaugerod.geometry.roof_faces import RoofEdge, RoofForm
from gaugerod.sheets.lengths_shown import bare_length, unit_heading
from gaugerod.web.pages.plan.context import CornerShown, PlanShown, WallShown
from gaugerod.web.pages.plan.outline_typed import OutlineTyped, Stands
from gaugerod.web.pages.plan.window import WIDTH, Window, run, window_about

_WORDS_OFF = 3.4
"""How far the middle of a wall's words stands off it, in units of the drawing."""
_LETTER = 2.1
"""Room for one letter of them."""


def plan_shown(
    typed: OutlineTyped, corners: Sequence[Point], form: RoofForm | None, *, before: Window | None, unit: LengthUnit
) -> PlanShown:
    """The drawing to tap on. ``before`` is its window so far, which it keeps while everything is seen."""
    window = window_about(corners, before=before)

    def lines(kind: RoofEdge) -> str:
        drawn = () if form is None else (line for line in form.lines if line.kind is kind)
        return "".join(run((window.at(line.foot_mm), window.at(line.head_mm))) for line in drawn)

    return PlanShown(
        says=_says(typed, corners, unit),
        width=WIDTH,
        height=round(window.high_mm / window.mm_per_unit, 2),
        grid=window.grid(),
        eaves="" if form is None else "".join(f"{run([*map(window.at, ring)])}Z" for ring in form.eaves_line_mm),
        hips=lines(RoofEdge.HIP),
        ridges=lines(RoofEdge.RIDGE),
        valleys=lines(RoofEdge.VALLEY),
        corners=tuple(CornerShown(number=at, x=x, y=y) for at, (x, y) in enumerate(map(window.at, corners), 1)),
        walls=tuple(_walls(typed, corners, window, unit)),
        mm_per_unit=window.mm_per_unit,
        left_mm=window.left_mm,
        top_mm=window.top_mm,
        square_m=f"{window.square_mm / 1000:g}",
        snap_mm=window.snap_mm,
        window=window.written(),
    )


def _walls(typed: OutlineTyped, corners: Sequence[Point], window: Window, unit: LengthUnit) -> Iterator[WallShown]:
    """Every wall, its words outside it; while only two corners stand, the one between them."""
    count = len(corners)
    outside = -1.0 if count > 2 and signed_area_mm2(corners) < 0 else 1.0
    for at in range(count if count > 2 else count - 1):
        start, end = corners[at], corners[(at + 1) % count]
        (x, y), (to_x, to_y) = window.at(start), window.at(end)
        stands = typed.walls[at].stands if at < len(typed.walls) else Stands.SLOPE
        long = length_mm(to_x - x, to_y - y)
        says = _words(at + 1, bare_length(length_mm(end[0] - start[0], end[1] - start[1]), unit), stands, room=long)
        turned = atan2_deg(to_y - y, to_x - x)
        upright = turned - 180 if turned > 90 else turned + 180 if turned <= -90 else turned
        off = outside * _WORDS_OFF / long if long else 0.0
        yield WallShown(
            number=at + 1,
            stands=stands.value,
            x=x,
            y=y,
            to_x=to_x,
            to_y=to_y,
            says=says,
            words_x=round((x + to_x) / 2 - (to_y - y) * off, 2),
            words_y=round((y + to_y) / 2 + (to_x - x) * off, 2),
            turned_deg=round(upright, 2) + 0.0,
        )


def _words(number: int, length: str, stands: Stands, *, room: float) -> str:
    """As much of them as there is room for along the wall: a gable is always named."""
    gable = " gable" if stands is Stands.GABLE else ""
    for words in (f"{number}: {length}{gable}", f"{number}:{gable}" if gable else ""):
        if words and len(words) * _LETTER <= room:
            return words
    return gable.strip()


def _says(typed: OutlineTyped, corners: Sequence[Point], unit: LengthUnit) -> str:
    """The drawing in words."""
    if len(corners) < 3:
        return "An empty grid." if not corners else f"A grid with {len(corners)} corners; an outline needs three."
    walls = (
        f"wall {at + 1} {bare_length(length_mm(end[0] - start[0], end[1] - start[1]), unit)}, {wall.stands.value}"
        for at, (wall, start, end) in enumerate(zip(typed.walls, corners, (*corners[1:], corners[0]), strict=False))
    )
    return f"Plan of the building, lengths in {unit_heading(unit)}: {'; '.join(walls)}."
