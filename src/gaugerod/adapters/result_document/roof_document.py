"""The roof over a building, as the result document tells it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugerod.adapters.result_document.rounded import fine, fine_points
from gaugerod.geometry.roof_faces import RoofLine, RoofSlope, UprightFace
from gaugerod.job.model import Building
from gaugerod.job.outlined import slope_name
from gaugerod.job.result import RoofResult

if TYPE_CHECKING:  # the shapes are for the schema: no document needs them made
    from gaugerod.adapters.result_document.roof_shape import (
        RoofDocument,
        RoofLineDocument,
        RoofSlopeDocument,
        UprightDocument,
    )


def roof_document(roof: RoofResult, building: Building) -> RoofDocument:
    """The roof of one building."""
    form = roof.form
    return {
        "name": roof.name,
        "area_m2": fine(form.area_mm2 / 1e6),
        "eaves_line_mm": [fine_points(ring) for ring in form.eaves_line_mm],
        "slopes": [_slope(slope, building) for slope in form.slopes],
        "uprights": [_upright(face) for face in form.uprights],
        "lines": [_line(line, building) for line in form.lines],
        "corners_say": list(roof.corners),
    }


def _slope(slope: RoofSlope, building: Building) -> RoofSlopeDocument:
    return {
        "name": slope_name(building, slope.number),
        "walls": [wall + 1 for wall in slope.walls],
        "pitch_deg": fine(slope.pitch_deg),
        "azimuth_deg": fine(slope.azimuth_deg),
        "area_m2": fine(slope.area_mm2 / 1e6),
        "plan_area_m2": fine(slope.plan_area_mm2 / 1e6),
        "corners_mm": fine_points(slope.space_mm),
        "edges": [side.kind.value for side in slope.sides],
    }


def _upright(face: UprightFace) -> UprightDocument:
    return {
        "kind": face.kind.value,
        "walls": [wall + 1 for wall in face.walls],
        "area_m2": fine(face.area_mm2 / 1e6),
        "corners_mm": fine_points(face.space_mm),
    }


def _line(line: RoofLine, building: Building) -> RoofLineDocument:
    foot, head = fine_points((line.foot_mm, line.head_mm))
    return {
        "kind": line.kind.value,
        "foot_mm": foot,
        "head_mm": head,
        "left": slope_name(building, line.left),
        "right": slope_name(building, line.right),
        "plan_length_mm": fine(line.plan_length_mm),
        "length_mm": fine(line.length_mm),
        "slope_deg": fine(line.slope_deg),
        "dihedral_deg": fine(line.dihedral_deg),
        "backing_left_deg": fine(line.backing_left_deg),
        "backing_right_deg": fine(line.backing_right_deg),
        "cut_left_deg": fine(line.cut_left_deg),
        "cut_right_deg": fine(line.cut_right_deg),
    }
