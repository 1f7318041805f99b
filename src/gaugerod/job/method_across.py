"""The steps across the slope: perps, the course, the cuts at its ends."""

from collections.abc import Iterator
from typing import assert_never

from gaugerod.basis.fine_lengths import fine_length
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.coverings.single_lap import Bond
from gaugerod.job.across_slope import AcrossSlope
from gaugerod.job.model import Slope
from gaugerod.setting_out.across import Across, Fit, SideKind
from gaugerod.setting_out.double_lap_across import MadeOf


def across_steps(slope: Slope, over: AcrossSlope, *, unit: LengthUnit) -> Iterator[str]:
    """Perps, the course and its ends. Random slates have none: what to do instead."""
    across = over.across
    if across is None:
        yield from (finding.says for finding in over.findings)
        return
    marks = ", ".join(write_length(mark_mm, unit) for mark_mm in across.perp_lines[0].marks_mm[:3])
    yield (
        f"Perps: along the eaves, from the left end of the roof structure, mark {marks} and on as the perp table says, every "
        f"{across.perps_every_count} units. {_a_mark_is(across)} Mark the top line the same way and strike the perps up the slope."
    )
    yield (
        f"Lay {across.units_count} units to the course at {fine_length(across.perp_lines[0].cover_mm, unit)} cover, "
        f"{_reach(slope.left, across.left_overhang_mm, unit)} on the left, "
        f"{_reach(slope.right, across.right_overhang_mm, unit)} on the right."
    )
    if across.upper:
        told = "; ".join(
            f"{each.edge.name}, {_reach(each.edge.side.kind, each.overhang_mm, unit)}" for each in across.upper
        )
        yield f"Higher up, where the courses end at another line: {told}."
    if across.bond is Bond.BROKEN:
        yield "Broken bond: start every other course half a unit over."
    yield from _verge_pieces(over, unit) if over.verge_pieces else _cuts(across, unit)


def _a_mark_is(across: Across) -> str:
    """Which edge of which unit: read off the other one, every unit would lie a lap out."""
    courses = "" if across.bond is Bond.STRAIGHT else " of courses 1, 3, 5 …"
    return (
        f"A mark is the left edge of a unit{courses}, lap and all; the last mark is where the course ends on the right."
    )


def _verge_pieces(over: AcrossSlope, unit: LengthUnit) -> Iterator[str]:
    words = {MadeOf.WHOLE: "one unit", MadeOf.UNIT_AND_A_HALF: "a unit-and-a-half", MadeOf.HALF: "a half unit"}
    told = "; ".join(
        f"{piece.at}, {'odd' if piece.bond_row == 0 else 'even'} courses, {words[piece.made_of]} "
        f"{write_length(piece.width_mm, unit)} wide"
        for piece in over.verge_pieces
    )
    yield f"At the verges: {told}."


def _cuts(across: Across, unit: LengthUnit) -> Iterator[str]:
    cuts = [piece for piece in across.pieces if piece.fit in {Fit.CUT, Fit.HIGH_POINT}]
    if cuts:
        told = "; ".join(
            f"{piece.at}, {_course_word(across, piece.bond_row)}, {write_length(piece.width_mm, unit)} wide"
            for piece in cuts
        )
        yield f"Cut: {told}. Cut wet or with extraction, off the slope where you can."


def _reach(kind: SideKind, reach_mm: float, unit: LengthUnit) -> str:
    match kind:
        case SideKind.VERGE:
            return f"{write_length(reach_mm, unit)} past the verge"
        case SideKind.ABUTMENT:
            return f"{write_length(-reach_mm, unit)} clear of the wall"
        case SideKind.HIP | SideKind.VALLEY:
            return f"cut to the {kind.value}"
        case _ as unreachable:
            assert_never(unreachable)


def _course_word(across: Across, bond_row: int) -> str:
    if across.bond is Bond.STRAIGHT:
        return "every course"
    return "odd courses" if bond_row == 0 else "even courses"
