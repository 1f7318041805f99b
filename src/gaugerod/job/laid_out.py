"""From courses and perps to every unit on the slope."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import assert_never

from gaugerod.basis.citation import house
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import Bond, SingleLapTile
from gaugerod.geometry.moved_edges import moved_outline_mm
from gaugerod.geometry.taped_slope import SlopeShape
from gaugerod.job.across_slope import AcrossSlope
from gaugerod.job.model import Covering, Job, Slope, TopKind
from gaugerod.job.result import Laid
from gaugerod.job.up_slope import UpSlope
from gaugerod.job.upper_edges import edge_names, overhang_at_mm
from gaugerod.job.verge_laid import as_the_verge_asks, width_mm
from gaugerod.job.wished import side
from gaugerod.laying.ask import (
    Course,
    CourseLine,
    Edge,
    EdgeKind,
    LapSide,
    LayingAsk,
    OffcutRule,
    Perps,
    Ring,
    Spot,
    Unit,
    fanned_perps,
)
from gaugerod.laying.cells import LINE_PLAY_MM
from gaugerod.laying.cut_unit import CutUnit, Remedy
from gaugerod.laying.cutting import cut_units
from gaugerod.laying.laid import Laying
from gaugerod.laying.lay import lay
from gaugerod.setting_out.across import Across, SideKind
from gaugerod.setting_out.courses import Rod
from gaugerod.standards.valleys import ValleyFigure, valley_figure

NIB_CITATION = house(
    "nibs and nail holes are taken at a quarter of the width from each side; check them on the tile in your hand"
)


def laid_out(job: Job, slope: Slope, shape: SlopeShape, up: UpSlope, over: AcrossSlope) -> Laid | None:
    """Every unit of the slope, and every piece to saw. The outline is that of the covering, out to its overhangs.

    None where the width of a unit is not known. Random slates are laid with their average width.
    """
    across, covering = over.across, job.covering
    width = _widths(covering, across, top_mm=up.courses.rods[0].length_mm)
    if width is None:
        return None
    kinds = slope.outline.kinds if slope.outline is not None else _kinds_of_taped(slope)
    names = edge_names(shape.outline_mm, kinds)
    moves = [
        0.0
        if _is_top(shape, index)
        else _moved_mm(job, slope, kind, index, on_right=goes_up(shape, index), up=up, across=across)
        for index, kind in enumerate(kinds)
    ]
    points, came_from = moved_outline_mm(shape.outline_mm, moves)
    ask = LayingAsk(
        where=slope.name,
        outline=Ring(points_mm=points, edges=tuple(Edge(name=names[index], kind=kinds[index]) for index in came_from)),
        openings=tuple(opening_rings(slope)),
        courses=_courses(up, width),
        head=_line(up.courses.rods, [rod.length_mm for rod in up.courses.rods]),
        unit=width.unit,
    )
    laying = lay(ask)
    sawn = worth_sawing(cut_units(ask, laying), width.unit)
    pieces = tuple(as_the_verge_asks(tuple(sawn), over.verge_pieces, unit_width_mm=width.unit.width_mm))
    halves = half_units(pieces, covering, cover_mm=width.perps[0].cover_mm)
    return Laid(
        ask=ask,
        laying=laying,
        pieces=tuple(piece for piece in pieces if piece.number not in halves),
        whole_units_count=_whole_units_count(laying, pieces),
        half_units_count=len(halves),
    )


def _whole_units_count(laying: Laying, pieces: Sequence[CutUnit]) -> int:
    """The units of the slope less those that are sawn or laid as halves, and those whose neighbour is laid wide for both."""
    laid = {(cut.course, cut.index) for cut in laying.cuts}
    laid |= {(run.course, run.first + along) for run in laying.runs for along in range(run.count)}
    for piece in pieces:
        laid.discard((piece.course, piece.index))
        if piece.remedy in {Remedy.UNIT_AND_A_HALF, Remedy.DOUBLE}:
            laid.discard((piece.course, piece.neighbour))
    return len(laid)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Widths:
    """The unit as it is sawn, and the joints of each bond row."""

    unit: Unit
    perps: tuple[Perps, ...]


def _widths(covering: Covering, across: Across | None, *, top_mm: float) -> _Widths | None:
    match covering:
        case RandomSlates():
            cover_mm = average_width_mm(covering) + covering.joint_mm
            unit = Unit(
                width_mm=cover_mm - covering.joint_mm, lap_side=LapSide.RIGHT, offcut_rule=OffcutRule.ALONG, random=True
            )
            rows = (Perps(first_mm=0.0, cover_mm=cover_mm), Perps(first_mm=cover_mm / 2, cover_mm=cover_mm))
            return _Widths(unit=unit, perps=rows)
        case SingleLapTile() | PlainTile() | SizedSlate():
            if across is None:
                return None
            return _Widths(
                unit=_unit(covering), perps=tuple(_perps(across, bond_row=row, top_mm=top_mm) for row in (0, 1))
            )
        case _ as unreachable:
            assert_never(unreachable)


def laid_cover_mm(covering: Covering, across: Across | None) -> float | None:
    """What one unit covers across the slope, on average for random slates. None: no cover is set out."""
    if isinstance(covering, RandomSlates):
        return average_width_mm(covering) + covering.joint_mm
    return None if across is None else across.cover_mm


def average_width_mm(slates: RandomSlates) -> float:
    """The average width over all heaps; a heap measured by the run only counts where its slates were counted too.

    Where no heap says, half the average length is taken (common practice: slates are about half as wide as long).
    """
    counted = [heap for heap in slates.heaps if heap.slates_count and heap.average_width_mm]
    if not counted:
        return sum(heap.length_mm for heap in slates.heaps) / len(slates.heaps) / 2
    total = sum(heap.slates_count or 0 for heap in counted)
    return sum((heap.slates_count or 0) * (heap.average_width_mm or 0.0) for heap in counted) / total


def _kinds_of_taped(slope: Slope) -> tuple[EdgeKind, ...]:
    top = EdgeKind.ABUTMENT if slope.top is TopKind.ABUTMENT else EdgeKind.RIDGE
    return (EdgeKind.EAVES, EdgeKind(slope.right.value), top, EdgeKind(slope.left.value))


def goes_up(shape: SlopeShape, index: int) -> bool:
    """Walked counter-clockwise, the sides on the right go up and those on the left come down."""
    points = shape.outline_mm
    return points[(index + 1) % len(points)][1] > points[index][1]


def structure_ring(slope: Slope, shape: SlopeShape) -> Ring:
    """The outline of the roof structure itself, every edge named and of its kind."""
    kinds = slope.outline.kinds if slope.outline is not None else _kinds_of_taped(slope)
    names = edge_names(shape.outline_mm, kinds)
    edges = tuple(Edge(name=name, kind=kind) for name, kind in zip(names, kinds, strict=True))
    return Ring(points_mm=shape.outline_mm, edges=edges)


def _is_top(shape: SlopeShape, index: int) -> bool:
    """Does this edge run along the top, right to left, rather than up a side? The covering ends there."""
    (x_mm, y_mm), (next_x_mm, next_y_mm) = (
        shape.outline_mm[index],
        shape.outline_mm[(index + 1) % len(shape.outline_mm)],
    )
    return x_mm - next_x_mm > abs(next_y_mm - y_mm)


def _moved_mm(
    job: Job, slope: Slope, kind: EdgeKind, index: int, *, on_right: bool, up: UpSlope, across: Across | None
) -> float:
    """How far the covering reaches past this edge of the roof structure; below nothing where it stays short of it.

    A verge or wall that the perps were not set out to, as a raking one or beside random slates, takes the middle of its
    band.
    """
    match kind:
        case EdgeKind.EAVES:
            return up.courses.overhang_mm
        case EdgeKind.VERGE | EdgeKind.ABUTMENT:
            if across is not None and slope.outline is None:
                return across.right_overhang_mm if on_right else across.left_overhang_mm
            set_out_mm = None if across is None else overhang_at_mm(slope, across, index)
            return side(job, SideKind(kind.value), high_point=False).reach.aim_mm if set_out_mm is None else set_out_mm
        case EdgeKind.VALLEY:
            return -valley_half_mm(job)
        case EdgeKind.RIDGE | EdgeKind.HIP | EdgeKind.OPENING:
            return 0.0


def valley_half_mm(job: Job) -> float:
    """How far from the line of a valley the covering is cut on each slope: half its clear width; nothing where it was not said
    how valleys are made. The width is as stated, or the usual, which is no less than the least at any pitch.
    """
    wished = job.edges.valley
    if wished is None:
        return 0.0
    clear_mm = (
        valley_figure(job.edition, ValleyFigure.CLEAR_USUAL).value if wished.clear_mm is None else wished.clear_mm
    )
    return clear_mm / 2


def opening_rings(slope: Slope) -> Iterator[Ring]:
    """The outline of every opening, clockwise."""
    for opening in slope.openings:
        left, right = opening.from_left_mm, opening.right_mm
        low, high = opening.up_slope_mm, opening.head_mm
        yield Ring(
            points_mm=((left, low), (left, high), (right, high), (right, low)),
            edges=(Edge(name=opening.name, kind=EdgeKind.OPENING),) * 4,
        )


def _courses(up: UpSlope, width: _Widths) -> tuple[Course, ...]:
    return tuple(
        Course(
            tail=_line(up.courses.rods, list(tails)),
            perps=width.perps[index % 2],
            unit_length_mm=up.unit_lengths_mm[index],
        )
        for index, tails in enumerate(up.tails_mm)
    )


def _line(rods: tuple[Rod, ...], heights_mm: list[float]) -> CourseLine:
    """The straight line through the outermost rods."""
    first, last = rods[0], rods[-1]
    if first.at_mm == last.at_mm:
        return CourseLine(at_mm=heights_mm[0])
    rise = (heights_mm[-1] - heights_mm[0]) / (last.at_mm - first.at_mm)
    return CourseLine(at_mm=heights_mm[0] - rise * first.at_mm, rise_ratio=rise)


def _perps(across: Across, *, bond_row: int, top_mm: float) -> Perps:
    over = bond_row / 2 if across.bond is Bond.BROKEN else 0.0
    eaves, top = across.perp_lines[0], across.perp_lines[-1]
    eaves_first_mm = eaves.first_mm + over * eaves.cover_mm
    if not across.fanned:
        return Perps(first_mm=eaves_first_mm, cover_mm=eaves.cover_mm)
    return fanned_perps(
        eaves_first_mm=eaves_first_mm,
        eaves_cover_mm=eaves.cover_mm,
        top_first_mm=top.first_mm + over * top.cover_mm,
        top_cover_mm=top.cover_mm,
        top_mm=top_mm,
    )


def _unit(covering: SingleLapTile | PlainTile | SizedSlate) -> Unit:
    """The unit as it is sawn. Where nibs and holes are is a house assumption: records do not say."""
    quarter_mm = covering.width_mm / 4
    nibs: tuple[float, ...]
    holes: tuple[float, ...]
    match covering:
        case SingleLapTile():
            nib_mm = covering.length_mm - (covering.hanging_length_mm or covering.length_mm)
            wide, rule = covering.unit_and_a_half, OffcutRule.IN_PLACE
            nibs, holes = (nib_mm,), (nib_mm + 10.0,)
        case PlainTile():
            nib_mm = covering.length_mm - (covering.hanging_length_mm or covering.length_mm)
            wide, rule = covering.unit_and_a_half, OffcutRule.IN_PLACE
            nibs, holes = ((nib_mm,) if covering.nibs else ()), (nib_mm + 10.0,)
        case SizedSlate():
            # Slates are holed on site, so no hole ties a piece to its place.
            wide, rule = covering.slate_and_a_half, OffcutRule.ALONG
            nibs, holes = (), ()
    across_mm = (quarter_mm, 3 * quarter_mm)
    return Unit(
        width_mm=covering.width_mm,
        lap_side=LapSide.RIGHT,
        offcut_rule=rule,
        nibs=tuple(Spot(from_head_mm=head, from_left_mm=x_mm) for head in nibs for x_mm in across_mm),
        holes=tuple(Spot(from_head_mm=head, from_left_mm=x_mm) for head in holes for x_mm in across_mm),
        unit_and_a_half=wide,
    )


SQUARE_WITHIN_DEG = 0.5
"""A cut nearer than this to square across the course is that of a half unit as made (house choice)."""


def half_units(pieces: Sequence[CutUnit], covering: Covering, *, cover_mm: float) -> frozenset[int]:
    """The numbers of the pieces that are half units as made, where there are such: cut square, half a cover and the lap."""
    if not (isinstance(covering, SingleLapTile | PlainTile) and covering.half_unit):
        return frozenset()
    half_mm = covering.width_mm - cover_mm / 2
    return frozenset(
        piece.number
        for piece in pieces
        if piece.remedy is not Remedy.UNIT_AND_A_HALF
        and half_mm - LINE_PLAY_MM <= width_mm(piece) <= half_mm + LINE_PLAY_MM
        and all(90 - SQUARE_WITHIN_DEG <= cut.angle_deg <= 90 + SQUARE_WITHIN_DEG for cut in piece.cuts)
    )


def worth_sawing(pieces: Sequence[CutUnit], unit: Unit) -> Iterator[CutUnit]:
    """The pieces whose cuts take off more than a unit set to the line would save."""
    for piece in pieces:
        whole_mm2 = unit.width_mm * piece.length_mm
        cut_mm = sum(cut.length_mm for cut in piece.cuts)
        if cut_mm > 0 and whole_mm2 - piece.area_mm2 <= LINE_PLAY_MM * cut_mm:
            continue
        yield piece
