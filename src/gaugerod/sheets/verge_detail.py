"""A verge in section, square to the slope and seen up it, the roof on the right: a right-hand verge is its mirror."""

from collections.abc import Iterator
from typing import assert_never

from gaugerod.edges.answer import MadeEdge
from gaugerod.edges.wished import VergeMade, VergeWished
from gaugerod.job.result import Result
from gaugerod.sheets.beside_the_covering import past_edge_mm
from gaugerod.sheets.drawing import Path, Pen
from gaugerod.sheets.edge_detail import GIVEN, SET_OUT, Detail, Measure, box, closed, pointing
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.standards.edges import EdgeFigure, edge_figure, verge_bed_statements
from gaugerod.standards.edition import Edition

_WALL_MM, _WALL_DEEP_MM, _SHOWN_MM, _BATTEN_MM, _THICK_MM, _CLOAK_MM = 102.5, 110.0, 260.0, 25.0, 16.0, 6.0


def verge_detail(result: Result, edge: MadeEdge) -> Detail | None:
    """One verge. None where it is not known how far the covering passes it."""
    wished, over_mm = result.job.edges.verge, past_edge_mm(result, edge)
    if wished is None or over_mm is None or over_mm <= 0:
        return None
    edition, unit = result.job.edition, result.job.show_lengths_in
    low_mm = _CLOAK_MM if wished.made is VergeMade.BEDDED else 0.0
    top_mm = low_mm + _BATTEN_MM + _THICK_MM
    end_mm = _batten_end_mm(wished, over_mm, edition)
    shown_mm = max(_SHOWN_MM, end_mm + 80.0)
    paths: list[Path] = [
        closed(Pen.TIMBER, box(0.0, -_WALL_DEEP_MM, _WALL_MM, _WALL_DEEP_MM)),
        closed(Pen.SECTION_BATTEN, box(end_mm, low_mm, shown_mm - end_mm, _BATTEN_MM)),
        closed(Pen.UNIT, box(-over_mm, low_mm + _BATTEN_MM, shown_mm + over_mm, _THICK_MM)),
    ]
    measures = [
        Measure(
            from_mm=(-over_mm, top_mm + 16.0),
            to_mm=(0.0, top_mm + 16.0),
            name="covering past the structure",
            value=fine_length(over_mm, unit),
            source=SET_OUT,
            left=True,
        ),
        pointing((shown_mm - 40.0, low_mm + _BATTEN_MM / 2), "batten"),
    ]
    if wished.made is not VergeMade.BEDDED:
        paths += _hung(wished, over_mm, top_mm)
        measures += _hung_said(wished, over_mm, edition)
        drawn = "what it stands on, the batten and where it ends, thickness of the covering, shape of the unit"
    else:
        paths += _bed(wished, over_mm, edition)
        measures += _bed_said(wished, result, over_mm)
        drawn = "what it stands on, where the batten ends, thickness of covering and undercloak"
    return Detail(title=f"{edge.name} in section", paths=tuple(paths), measures=tuple(measures), only_drawn=drawn)


def bed_wide_mm(wished: VergeWished, edition: Edition) -> float:
    """The width of the bed: the job's, or the widest that any source asks for."""
    if wished.bed_mm is not None:
        return wished.bed_mm
    return max(each.least_mm for each in verge_bed_statements(edition) if each.least_mm is not None)


def _batten_end_mm(wished: VergeWished, over_mm: float, edition: Edition) -> float:
    """From the wall's face: clear of the bed, and no further over the undercloak than the most allowed."""
    if wished.made is not VergeMade.BEDDED:
        return 20.0
    cloak_mm = edge_figure(edition, EdgeFigure.UNDERCLOAK_WIDTH).value
    under_mm = edge_figure(edition, EdgeFigure.UNDERCLOAK_UNDER_BATTEN_GREATEST).value
    return max(cloak_mm - under_mm, bed_wide_mm(wished, edition)) - over_mm


def _bed(wished: VergeWished, over_mm: float, edition: Edition) -> Iterator[Path]:
    cloak_mm = edge_figure(edition, EdgeFigure.UNDERCLOAK_WIDTH).value
    yield closed(Pen.UNIT, box(-over_mm, 0.0, cloak_mm, _CLOAK_MM))
    yield closed(Pen.CUT_UNIT, box(-over_mm, _CLOAK_MM, bed_wide_mm(wished, edition), _BATTEN_MM))


def _bed_said(wished: VergeWished, result: Result, over_mm: float) -> Iterator[Measure]:
    edition, unit = result.job.edition, result.job.show_lengths_in
    cloak = edge_figure(edition, EdgeFigure.UNDERCLOAK_WIDTH)
    bed_mm = bed_wide_mm(wished, edition)
    sources = [str(each.citation) for each in verge_bed_statements(edition)]
    yield Measure(
        from_mm=(-over_mm, -14.0),
        to_mm=(cloak.value - over_mm, -14.0),
        name="undercloak",
        value=fine_length(cloak.value, unit),
        source=str(cloak.citation),
        left=True,
    )
    yield Measure(
        from_mm=(-over_mm, _CLOAK_MM + _BATTEN_MM / 2),
        to_mm=(bed_mm - over_mm, _CLOAK_MM + _BATTEN_MM / 2),
        name="mortar bed",
        value=fine_length(bed_mm, unit),
        source=GIVEN if wished.bed_mm is not None else "; ".join(dict.fromkeys(sources)),
        left=True,
    )


def _hung(wished: VergeWished, over_mm: float, top_mm: float) -> Iterator[Path]:
    """A unit that hangs over the end of each course, or the cloak of the verge tile itself."""
    face_mm = 12.0
    match wished.made:
        case VergeMade.DRY:
            out_mm = -over_mm - 4.0
            yield closed(
                Pen.CUT_UNIT,
                (
                    (out_mm, -40.0),
                    (out_mm - face_mm / 2, -40.0),
                    (out_mm - face_mm / 2, top_mm + 8.0),
                    (out_mm + 70.0, top_mm + 8.0),
                    (out_mm + 70.0, top_mm + 3.0),
                    (out_mm, top_mm + 3.0),
                ),
            )
        case VergeMade.CLOAKED:
            yield closed(Pen.UNIT, box(-over_mm, -45.0, face_mm, top_mm + 45.0))
        case VergeMade.BEDDED:
            return
        case _ as unreachable:
            assert_never(unreachable)


def _hung_said(wished: VergeWished, over_mm: float, edition: Edition) -> Iterator[Measure]:
    dry = wished.made is VergeMade.DRY
    each = edge_figure(
        edition, EdgeFigure.DRY_VERGE_UNITS_EACH_COURSE if dry else EdgeFigure.CLOAKED_VERGE_TILES_EACH_COURSE
    )
    name = "dry-verge unit" if dry else "cloaked verge tile"
    yield pointing((-over_mm - 2.0, -20.0), name, "one to a course", source=str(each.citation), left=True)
