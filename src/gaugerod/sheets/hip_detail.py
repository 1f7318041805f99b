"""A hip in section, square to it and seen from its foot: the covering of both slopes, and what lies over or under it."""

from collections.abc import Iterator
from typing import assert_never

from gaugerod.basis.finding import Sense
from gaugerod.edges.answer import LeadPieces, LeadUse, MadeEdge
from gaugerod.edges.wished import HipMade, RidgeMade
from gaugerod.geometry.roof_faces import RoofLine
from gaugerod.job.result import Result
from gaugerod.sheets.drawing import Path, Pen
from gaugerod.sheets.edge_detail import SET_OUT, Detail, Leaf, Measure, box, closed, line, pointing
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.sheets.ridge_detail import beds, over_the_line, unit_said
from gaugerod.standards.edges import EdgeFigure, edge_figure
from gaugerod.standards.lead import LeadFigure, lead_figure

_SHOWN_MM, _REACH_MM, _BATTEN_MM, _THICK_MM, _STAND_OFF_MM = 230.0, 120.0, 25.0, 16.0, 50.0
_HIP_WIDE_MM, _HIP_DEEP_MM, _JACK_MM = 40.0, 150.0, 75.0


def roof_line(result: Result, edge: MadeEdge) -> RoofLine | None:
    """The line of the roof form an edge is made along; None for slopes measured one by one."""
    if edge.line is None:
        return None
    for roof in result.roofs:
        for found in roof.form.lines:
            slopes = (roof.slope_names[found.left], roof.slope_names[found.right])
            if found.kind.value == edge.line.kind.value and slopes == edge.line.slopes:
                return found
    return None


def hip_detail(result: Result, edge: MadeEdge) -> Detail | None:
    """One hip. None where the angle between its slopes is not known: only a building's plan gives it."""
    found, wished = roof_line(result, edge), result.job.edges.ridge
    if found is None or wished is None:
        return None
    left = Leaf(rise_deg=-found.backing_left_deg, left=True)
    right = Leaf(rise_deg=-found.backing_right_deg)
    mitred = wished.hips is HipMade.MITRED
    soakers = next((pieces for pieces in edge.lead if pieces.use is LeadUse.SOAKER), None)
    paths = list(_slopes(left, right, mitred=mitred))
    measures = [
        *_sides(result, edge, left, right),
        pointing((0.0, -50.0), "between the slopes", f"{found.dihedral_deg:.1f}°", source=SET_OUT),
    ]
    match wished.hips:
        case HipMade.UNITS:
            if wished.made is RidgeMade.BEDDED:
                mortar = beds((left, right), edition=result.job.edition, reach_mm=_REACH_MM, high_mm=_STAND_OFF_MM)
                paths.insert(0, mortar)
            paths += over_the_line((left, right), made=wished.made, reach_mm=_REACH_MM, high_mm=_STAND_OFF_MM)
            measures += unit_said(edge, result, leaf=left, high_mm=_STAND_OFF_MM, reach_mm=_REACH_MM)
        case HipMade.BONNET:
            paths += _bonnet(left, right)
            count = edge_figure(result.job.edition, EdgeFigure.BONNETS_EACH_COURSE)
            at = left.at(_REACH_MM / 2, _STAND_OFF_MM)
            measures.append(pointing(at, "bonnet", "one to a course", source=str(count.citation), left=True))
            if wished.made is RidgeMade.BEDDED:
                measures.append(pointing(left.at(_REACH_MM - 30.0, _STAND_OFF_MM - 6.0), "bedded in mortar", left=True))
        case HipMade.MITRED:
            paths += _soaker(left, right, soakers)
            measures += _soaker_said(right, result, soakers)
        case _ as unreachable:
            assert_never(unreachable)
    only = "rafters, battens, thickness of the covering"
    return Detail(
        title=f"{edge.name} in section, square to the hip",
        paths=tuple(paths),
        measures=tuple(measures),
        only_drawn=only if mitred else f"{only}, the unit and how far it reaches",
    )


def _slopes(left: Leaf, right: Leaf, *, mitred: bool) -> Iterator[Path]:
    """The hip rafter, the layers of both slopes; the covering cut to meet where the hip is mitred."""
    deep_mm = _HIP_WIDE_MM / 2
    yield closed(
        Pen.TIMBER,
        (
            (-deep_mm, -_HIP_DEEP_MM),
            (deep_mm, -_HIP_DEEP_MM),
            right.at_plumb(deep_mm, 0.0),
            (0.0, 0.0),
            left.at_plumb(deep_mm, 0.0),
        ),
    )
    for leaf in (left, right):
        beside_mm = deep_mm + 2.0
        jack = (
            leaf.at_plumb(beside_mm, -_JACK_MM),
            leaf.at(_SHOWN_MM, -_JACK_MM),
            leaf.at(_SHOWN_MM, 0.0),
            leaf.at_plumb(beside_mm, 0.0),
        )
        yield closed(Pen.TIMBER, jack)
        high_mm = _BATTEN_MM + _THICK_MM
        battens = leaf.block(from_mm=26.0, to_mm=_SHOWN_MM, low_mm=0.0, high_mm=_BATTEN_MM)
        yield closed(Pen.SECTION_BATTEN, battens)
        ring = (
            leaf.plumb_cut(to_mm=_SHOWN_MM, low_mm=_BATTEN_MM, high_mm=high_mm)
            if mitred
            else leaf.block(from_mm=6.0, to_mm=_SHOWN_MM, low_mm=_BATTEN_MM, high_mm=high_mm)
        )
        yield closed(Pen.UNIT, ring)


def _sides(result: Result, edge: MadeEdge, left: Leaf, right: Leaf) -> Iterator[Measure]:
    names = () if edge.line is None else edge.line.slopes
    pitches = {slope.slope.name: slope.slope.pitch_deg for slope in result.slopes}
    for name, leaf in zip(names, (left, right), strict=True):
        at = leaf.at(0.85 * _SHOWN_MM, _BATTEN_MM + _THICK_MM)
        said = f"pitch {pitches[name]:.1f}°" if name in pitches else ""
        yield pointing(at, name, said, source=SET_OUT if said else "", left=leaf.left)


def _bonnet(left: Leaf, right: Leaf) -> Iterator[Path]:
    """A bonnet lies in its course, on the covering of both slopes and nailed through its head; nothing runs under it."""
    crown_mm = max(leaf.plumb_mm(_STAND_OFF_MM) for leaf in (left, right))
    low_mm = _BATTEN_MM + _THICK_MM
    yield closed(
        Pen.UNIT,
        (
            left.at(_REACH_MM, low_mm),
            (0.0, crown_mm),
            right.at(_REACH_MM, low_mm),
            right.at(_REACH_MM, low_mm + 12.0),
            (0.0, crown_mm + 15.0),
            left.at(_REACH_MM, low_mm + 12.0),
        ),
    )
    yield line(Pen.CUT, ((0.0, crown_mm + 18.0), (0.0, -60.0)))


def _soaker(left: Leaf, right: Leaf, soakers: LeadPieces | None) -> Iterator[Path]:
    """A soaker lies over the hip, on the battens, under the covering of both slopes."""
    if soakers is None:
        return
    under_mm, n_mm = soakers.width_mm / 2, _BATTEN_MM
    crown_mm = max(leaf.plumb_mm(n_mm) for leaf in (left, right))
    yield closed(Pen.SECTION_BATTEN, box(-12.5, -12.5, 25.0, crown_mm + 8.0))
    yield line(Pen.CUT, (left.from_line(under_mm, n_mm), (0.0, crown_mm), right.from_line(under_mm, n_mm)))


def _soaker_said(leaf: Leaf, result: Result, soakers: LeadPieces | None) -> Iterator[Measure]:
    if soakers is None:
        return
    under = lead_figure(result.job.edition, LeadFigure.HIP_SOAKER_UNDER)
    yield Measure(
        from_mm=leaf.from_line(0.0, _BATTEN_MM + _THICK_MM + 10.0),
        to_mm=leaf.from_line(soakers.width_mm / 2, _BATTEN_MM + _THICK_MM + 10.0),
        name="soaker under each slope",
        value=fine_length(soakers.width_mm / 2, result.job.show_lengths_in, towards=Sense.AT_LEAST),
        source=str(under.citation),
    )
