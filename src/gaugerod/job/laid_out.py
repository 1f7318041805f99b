"""From courses and perps to every unit on the slope."""

from collections.abc import Iterator

from gaugerod.basis.citation import house
from gaugerod.coverings.single_lap import Bond
from gaugerod.geometry.moved_edges import moved_outline_mm
from gaugerod.geometry.taped_slope import SlopeShape
from gaugerod.job.model import Covering, Slope, TopKind
from gaugerod.job.result import Laid
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
from gaugerod.laying.cutting import cut_units
from gaugerod.laying.lay import lay
from gaugerod.setting_out.across import Across
from gaugerod.setting_out.courses import Courses, Rod, Strategy

NIB_CITATION = house(
    "nibs and nail holes are taken at a quarter of the width from each side; check them on the tile in your hand"
)


def laid_out(slope: Slope, shape: SlopeShape, covering: Covering, courses: Courses, across: Across) -> Laid:
    """Every unit of the slope, and every piece to saw. The outline is that of the covering, out to its overhangs."""
    kinds = slope.outline.kinds if slope.outline is not None else _kinds_of_taped(slope)
    names = _names(kinds)
    moves = [
        _moved_mm(kind, on_right=_goes_up(shape, index), courses=courses, across=across)
        for index, kind in enumerate(kinds)
    ]
    points, came_from = moved_outline_mm(shape.outline_mm, moves)
    ask = LayingAsk(
        where=slope.name,
        outline=Ring(points_mm=points, edges=tuple(Edge(name=names[index], kind=kinds[index]) for index in came_from)),
        openings=tuple(_opening_rings(slope)),
        courses=_courses(covering, courses, across),
        head=_line(courses.rods, [rod.length_mm for rod in courses.rods]),
        unit=_unit(covering),
    )
    laying = lay(ask)
    return Laid(ask=ask, laying=laying, pieces=cut_units(ask, laying))


def _kinds_of_taped(slope: Slope) -> tuple[EdgeKind, ...]:
    top = EdgeKind.ABUTMENT if slope.top is TopKind.ABUTMENT else EdgeKind.RIDGE
    return (EdgeKind.EAVES, EdgeKind(slope.right.value), top, EdgeKind(slope.left.value))


def _goes_up(shape: SlopeShape, index: int) -> bool:
    """Walked counter-clockwise, the sides on the right go up and those on the left come down."""
    points = shape.outline_mm
    return points[(index + 1) % len(points)][1] > points[index][1]


def _names(kinds: tuple[EdgeKind, ...]) -> list[str]:
    """Each edge by its kind, numbered where there is more than one of it."""
    names = []
    for index, kind in enumerate(kinds):
        same = [at for at, other in enumerate(kinds) if other is kind]
        names.append(kind.value if len(same) == 1 else f"{kind.value} {same.index(index) + 1}")
    return names


def _moved_mm(kind: EdgeKind, *, on_right: bool, courses: Courses, across: Across) -> float:
    """How far the covering reaches past this edge of the roof structure; below nothing where it stays short of it."""
    match kind:
        case EdgeKind.EAVES:
            return courses.overhang_mm
        case EdgeKind.VERGE | EdgeKind.ABUTMENT:
            return across.right_overhang_mm if on_right else across.left_overhang_mm
        case EdgeKind.RIDGE | EdgeKind.HIP | EdgeKind.VALLEY | EdgeKind.OPENING:
            return 0.0


def _opening_rings(slope: Slope) -> Iterator[Ring]:
    for opening in slope.openings:
        left, right = opening.from_left_mm, opening.right_mm
        low, high = opening.up_slope_mm, opening.head_mm
        yield Ring(
            points_mm=((left, low), (left, high), (right, high), (right, low)),
            edges=(Edge(name=opening.name, kind=EdgeKind.OPENING),) * 4,
        )


def _courses(covering: Covering, courses: Courses, across: Across) -> tuple[Course, ...]:
    hanging_mm = covering.hanging_length_mm or covering.length_mm
    laid = []
    for index in range(courses.count):
        tails_mm = [rod.exact_mm[index] - hanging_mm for rod in courses.rods]
        if courses.strategy is Strategy.PARALLEL and index == courses.count - 1:
            # A cut top course keeps its tail on the line of the courses; only its head is lost.
            tails_mm = [rod.exact_mm[index - 1] + rod.gauge_mm - hanging_mm for rod in courses.rods]
        laid.append(
            Course(
                tail=_line(courses.rods, tails_mm),
                perps=_perps(across, courses, bond_row=index % 2),
                unit_length_mm=covering.length_mm,
            )
        )
    return tuple(laid)


def _line(rods: tuple[Rod, ...], heights_mm: list[float]) -> CourseLine:
    """The straight line through the outermost rods."""
    first, last = rods[0], rods[-1]
    if first.at_mm == last.at_mm:
        return CourseLine(at_mm=heights_mm[0])
    rise = (heights_mm[-1] - heights_mm[0]) / (last.at_mm - first.at_mm)
    return CourseLine(at_mm=heights_mm[0] - rise * first.at_mm, rise_ratio=rise)


def _perps(across: Across, courses: Courses, *, bond_row: int) -> Perps:
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
        top_mm=courses.rods[0].length_mm,
    )


def _unit(covering: Covering) -> Unit:
    """The unit as it is sawn. Where nibs and holes are is a house assumption: records do not say."""
    nib_mm = covering.length_mm - (covering.hanging_length_mm or covering.length_mm)
    quarter_mm = covering.width_mm / 4
    return Unit(
        width_mm=covering.width_mm,
        lap_side=LapSide.RIGHT,
        offcut_rule=OffcutRule.IN_PLACE,
        nibs=tuple(Spot(from_head_mm=nib_mm, from_left_mm=x_mm) for x_mm in (quarter_mm, 3 * quarter_mm)),
        holes=tuple(Spot(from_head_mm=nib_mm + 10.0, from_left_mm=x_mm) for x_mm in (quarter_mm, 3 * quarter_mm)),
        unit_and_a_half=covering.unit_and_a_half,
    )
