"""The roof over the outline as far as it is typed: closed and drawn; or what keeps it open; or what a person must choose."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot
from typing import Any

from markupsafe import Markup

from gaugerod.basis.errors import Fault, InputRefused, RoofAsks, RoofWillNotClose
from gaugerod.basis.lengths import LengthUnit
from gaugerod.geometry.polygon import Point
from gaugerod.geometry.roof_faces import RoofForm, RoofSlope
from gaugerod.job.buildings import formed
from gaugerod.job.model import Building
from gaugerod.sheets.roof_plan_drawing import roof_plan_drawing
from gaugerod.sheets.roof_sheet import line_table
from gaugerod.sheets.sheet import Heading
from gaugerod.web.blocks import TableShown, parts_shown
from gaugerod.web.drawn import POCKET_MM, WIDE_MM, markup
from gaugerod.web.pages.plan.context import AskShown, RoofShown, Said
from gaugerod.wiring import building_from_table


@dataclass(frozen=True, slots=True, kw_only=True)
class RoofSoFar:
    """The building with its roof; or the faults; or the question; or why no roof closes."""

    building: Building | None = None
    form: RoofForm | None = None
    faults: tuple[Fault, ...] = ()
    asks: RoofAsks | None = None
    why: str = ""


def roof_so_far(table: dict[str, Any]) -> RoofSoFar:
    """Close the roof over the building of this table."""
    try:
        building = building_from_table(table)
    except InputRefused as refused:
        return RoofSoFar(faults=refused.faults)
    try:
        return RoofSoFar(building=building, form=formed(building).form)
    except InputRefused as refused:
        return RoofSoFar(building=building, faults=refused.faults)
    except RoofAsks as asks:
        return RoofSoFar(building=building, asks=asks)
    except RoofWillNotClose as open_:
        return RoofSoFar(building=building, why=f"{str(open_)[:1].upper()}{str(open_)[1:]}.")


def ask_shown(asks: RoofAsks, corners: Sequence[Point]) -> AskShown:
    """The question, with the walls that meet nearest to the place it is about. ``corners`` as they are typed."""
    x_mm, y_mm = asks.where_mm
    at = min(range(len(corners)), key=lambda index: hypot(corners[index][0] - x_mm, corners[index][1] - y_mm))
    walls = (at or len(corners), at + 1)
    question = f"{asks.question[:1].upper()}{asks.question[1:]}"
    return AskShown(question=question, walls=walls, choices=asks.choices)


def roof_shown(name: str, form: RoofForm, *, walls: Sequence[int], unit: LengthUnit) -> RoofShown:
    """The roof as drawn on its sheet, its slopes and its lines. ``walls[i]`` is the typed wall at place i of the table."""
    wide = roof_plan_drawing(form, name=name, unit=unit, room_width_mm=WIDE_MM[0], room_height_mm=WIDE_MM[1])
    lines = parts_shown((Heading(text="Hips, valleys and ridges"), line_table(form, unit)))
    return RoofShown(
        line=f"{roof_line(form)} measured on the slope.",
        wide=markup(wide),
        pocket=pocket_roof(name, form, unit=unit),
        slopes=TableShown(
            caption="Slopes",
            headings=("slope", "over wall", "pitch", "m²", "round it, from the eaves"),
            rows=tuple(_slope_row(slope, walls) for slope in form.slopes),
        ),
        lines=lines[0].tables[0] if lines else TableShown(caption="", headings=(), rows=()),
        says=tuple(Said(verdict=finding.verdict.value, says=finding.says) for finding in form.findings),
    )


def pocket_roof(name: str, form: RoofForm, *, unit: LengthUnit) -> Markup:
    """The roof on plan as it fits on a phone, or in a list."""
    return markup(roof_plan_drawing(form, name=name, unit=unit, room_width_mm=POCKET_MM, room_height_mm=POCKET_MM))


def roof_line(form: RoofForm) -> str:
    """What the roof is made of, and its area."""
    counted = (
        (len(form.slopes), "slope"), (len(form.hips), "hip"), (len(form.valleys), "valley"), (len(form.ridges), "ridge"),
        (len(form.gables), "gable"),
    )  # fmt: skip
    parts = [f"{count} {word if count == 1 else f'{word}s'}" for count, word in counted if count]
    return ", ".join((*parts, f"{form.area_mm2 / 1e6:.2f} m²"))


def _slope_row(slope: RoofSlope, walls: Sequence[int]) -> tuple[str, ...]:
    named = [str(walls[at] + 1 if at < len(walls) else at + 1) for at in slope.walls]
    edges = ", ".join(side.kind.value.replace("-", " ") for side in slope.sides)
    area = f"{slope.area_mm2 / 1e6:.2f}"
    return (str(slope.number + 1), ", ".join(named), f"{slope.pitch_deg:.1f}°", area, edges)
