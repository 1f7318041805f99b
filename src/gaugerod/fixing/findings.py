"""What the rules say of the fixing of one slope, and what they do not reach."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.citation import Basis, Citation, house
from gaugerod.basis.finding import Finding, Sense, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap import RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import Form, Material, SingleLapTile
from gaugerod.fixing.ask import FixingAsk
from gaugerod.fixing.nails import NailChosen, nailed_of
from gaugerod.fixing.plan import HeldCourse, KindCount, Region
from gaugerod.laying.ask import EdgeKind
from gaugerod.laying.cut_unit import Remedy
from gaugerod.rules.fixings import FieldRule, PerimeterRule, SlateHeld
from gaugerod.rules.nails import (
    hook_findings,
    penetration_findings,
    shank_findings,
    slate_hole_findings,
    slate_hole_from_side_mm,
)
from gaugerod.setting_out.said import counted
from gaugerod.standards.fixings import FixingFigure, fixing_figure

WIND = Citation(
    source="merchant page on BS 5534 fixing: the least by rule; wind to BS EN 1991-1-4 by the method of BS 5534 governs",
    basis=Basis.PUBLISHED,
)
MAKER_KNOWS = house("nothing is guessed: nail holes and clips are the maker's")
SMALL = Citation(
    source="merchant page on BS 5534 fixing: small cut pieces avoided, else bonded to the neighbour",
    basis=Basis.PUBLISHED,
)
DRILLED = house("a cut tile is drilled for the nail it has no hole for, clear of the cut")
RIVETED = Citation(
    source="fibre-cement slates: two nails and a disc rivet at the tail, as recalled", basis=Basis.MEMORY
)
AVERAGE = house("random slates are counted by their average width")
LOWER_EDGES = house("one course under the eaves and one short course at the highest ridge are counted")


def findings_of(
    ask: FixingAsk,
    *,
    field: FieldRule,
    perimeter: PerimeterRule,
    courses: Sequence[HeldCourse],
    kinds: Sequence[KindCount],
    nail: NailChosen | None,
) -> Iterator[Finding]:
    """Every finding on the fixing of one slope."""
    yield _wind(ask)
    yield from _field(ask, field)
    yield _perimeter(ask, perimeter, kinds)
    yield from _openings(ask, perimeter)
    yield from _maker(ask, kinds)
    yield from _pieces(ask, field, courses)
    yield from _nails(ask, nail)
    yield from _slates(ask)
    yield from _levels(ask)


def _wind(ask: FixingAsk) -> Finding:
    return not_covered(
        rule="fixing against wind",
        where=ask.where,
        proposed=None,
        unit="count",
        citation=WIND,
        says=(
            "This is the least by rule, and no wind calculation. The maker's fixing specification for this site, or a wind "
            "calculation, may ask for more fixings, in wider bands along the edges; it goes before this."
        ),
    )


def _field(ask: FixingAsk, field: FieldRule) -> Iterator[Finding]:
    if field.every_count > 1:
        every = field.limits[0]
        yield Finding(
            rule="nailed courses",
            where=ask.where,
            proposed=float(field.every_count),
            limit=every.value,
            unit="count",
            sense=Sense.AT_MOST,
            citation=every.citation,
            says=f"In the field {field.name}, counted from the eaves; the tiles between hang on their nibs.",
        )
        return
    each = Limit(value=float(field.least.in_all_count), unit="count", citation=field.limits[0].citation)
    yield Finding(
        rule="field fixings",
        where=ask.where,
        proposed=each.value,
        limit=each.value,
        unit="count",
        sense=Sense.AT_LEAST,
        citation=each.citation,
        says=f"At {ask.pitch_deg:g}°: {field.name}.",
    )


def _perimeter(ask: FixingAsk, perimeter: PerimeterRule, kinds: Sequence[KindCount]) -> Finding:
    fixings = perimeter.limits[0]
    least = min((kind.held.in_all_count for kind in kinds if kind.region is Region.PERIMETER), default=None)
    count = sum(kind.units_count for kind in kinds if kind.region is Region.PERIMETER)
    held_to = " The source speaks of tiles; slates are held to it here." if ask.is_slate else ""
    return Finding(
        rule="perimeter fixings",
        where=ask.where,
        proposed=None if least is None else float(least),
        limit=fixings.value,
        unit="count",
        sense=Sense.AT_LEAST,
        citation=fixings.citation,
        says=(
            f"{count} units along the edges, each held by {fixings.value:g} fixings or more; one of the two may be a clip, "
            f"adhesive or a dry-verge cap.{held_to}"
        ),
    )


def _openings(ask: FixingAsk, perimeter: PerimeterRule) -> Iterator[Finding]:
    if any(edge.kind is EdgeKind.OPENING for edge in ask.full.ask.edges):
        limit = perimeter.opening_courses
        yield Finding(
            rule="courses fixed at openings",
            where=ask.where,
            proposed=limit.value,
            limit=limit.value,
            unit="count",
            sense=Sense.AT_LEAST,
            citation=limit.citation,
            says=f"Above and below each opening {limit.value:g} {'course is' if limit.value == 1 else 'courses are'} perimeter.",
        )


def _maker(ask: FixingAsk, kinds: Sequence[KindCount]) -> Iterator[Finding]:
    """What only the maker of the tile can tell: its nail holes and its clips."""
    covering = ask.covering
    if isinstance(covering, SingleLapTile) and ask.nail_holes_count is None:
        profile = "" if covering.form is Form.FLAT else f" of this {covering.form.value} tile"
        yield not_covered(
            rule="nail holes",
            where=ask.where,
            proposed=None,
            unit="count",
            citation=MAKER_KNOWS,
            says=(
                f"The nail holes{profile} are not known: where a fixing may be a nail or a clip it is counted as either, and "
                "one nail where a nail must be. Count the holes of one tile and state them as nail_holes."
            ),
        )
    elif ask.nail_holes_count is not None and not ask.is_slate:
        needed = max((kind.held.nails_count for kind in kinds), default=0)
        if needed:
            yield Finding(
                rule="nail holes",
                where=ask.where,
                proposed=float(ask.nail_holes_count),
                limit=float(needed),
                unit="count",
                sense=Sense.AT_LEAST,
                citation=fixing_figure(ask.edition, FixingFigure.SINGLE_LAP_NAILS_EACH).citation,
                says="A hole for every nail."
                if ask.nail_holes_count >= needed
                else "Fewer holes than nails: ask the maker whether the tile may be drilled; else another tile.",
            )
    clips = sum(kind.held.clips_count * kind.units_count for kind in kinds)
    if clips:
        yield not_covered(
            rule="clips",
            where=ask.where,
            proposed=float(clips),
            unit="count",
            citation=MAKER_KNOWS,
            says=f"{counted(clips, 'clip')} counted; which clip fits the tile, its batten and its place is the maker's to say.",
        )


def _pieces(ask: FixingAsk, field: FieldRule, courses: Sequence[HeldCourse]) -> Iterator[Finding]:
    pieces = [piece for course in courses for piece in course.pieces]
    bonded = sum(piece.remedy is Remedy.BOND_AND_CLIP for piece in pieces)
    if bonded:
        nailed = field.every_count == 1 and field.least.nails_count and not ask.is_slate
        steep = " At this pitch every tile is to be nailed, and these are not." if nailed else ""
        yield not_covered(
            rule="small pieces",
            where=ask.where,
            proposed=float(bonded),
            unit="count",
            citation=SMALL,
            says=(
                f"{counted(bonded, 'small piece')} to bond to the neighbour and to clip: adhesive and clip as their maker says. "
                f"Wider units, or joints moved along, do without them.{steep}"
            ),
        )
    drilled = sum(piece.short_count > 0 for piece in pieces)
    if drilled:
        yield not_covered(
            rule="holes lost to the cut",
            where=ask.where,
            proposed=float(drilled),
            unit="count",
            citation=DRILLED,
            says=(
                f"{counted(drilled, 'cut tile')} with fewer holes left than nails needed (where the holes are is assumed): drill "
                "clear of the cut, never with a hammer action, or bond and clip."
            ),
        )


def _nails(ask: FixingAsk, nail: NailChosen | None) -> Iterator[Finding]:
    if nail is None:
        return
    yield from shank_findings(where=ask.where, shank_mm=nail.shank_mm, nailed=nailed_of(ask), edition=ask.edition)
    if nail.penetration_mm is not None:
        yield from penetration_findings(where=ask.where, penetration_mm=nail.penetration_mm, edition=ask.edition)
        return
    yield not_covered(
        rule="nail penetration",
        where=ask.where,
        proposed=None,
        unit="mm",
        citation=MAKER_KNOWS,
        says=(
            "How thick the unit is where the nail goes through is not known, so no nail length is told. Measure it, or take "
            "the nail its maker names: 20 mm into the batten by one source, 15 mm by another."
        ),
    )


def _slates(ask: FixingAsk) -> Iterator[Finding]:
    if not ask.is_slate:
        return
    if ask.slates_held_by is SlateHeld.HOOKS:
        thickness_mm = ask.thickness_mm
        if thickness_mm is None and isinstance(ask.covering, SizedSlate):
            thickness_mm = ask.covering.thickness_mm
        yield from hook_findings(
            where=ask.where,
            pitch_deg=ask.pitch_deg,
            wire_mm=ask.hook_wire_mm or fixing_figure(ask.edition, FixingFigure.SLATE_HOOK_WIRE_LEAST).value,
            thickness_mm=thickness_mm,
            edition=ask.edition,
        )
    yield from slate_hole_findings(
        where=ask.where, from_side_mm=slate_hole_from_side_mm(ask.edition), edition=ask.edition
    )
    custom = fixing_figure(ask.edition, FixingFigure.SLATE_NAILED_TWICE_COURSE_EVERY)
    yield not_covered(
        rule="single head nails on boards",
        where=ask.where,
        proposed=None,
        unit="count",
        citation=custom.citation,
        says=(
            f"Another custom, on boards: one head nail to a slate, every {custom.value:g}rd course nailed twice. Not taken "
            "here: two nails hold more."
        ),
    )
    if ask.covering.material is Material.FIBRE_CEMENT:
        yield not_covered(
            rule="fibre-cement slates",
            where=ask.where,
            proposed=None,
            unit="count",
            citation=RIVETED,
            says="Nails only are counted: rivets at the tails of fibre-cement slates are the maker's to say.",
        )
    if isinstance(ask.covering, RandomSlates):
        yield not_covered(
            rule="count of random slates",
            where=ask.where,
            proposed=None,
            unit="count",
            citation=AVERAGE,
            says="Slates and nails are counted by the average width of the stack: narrower slates take more nails.",
        )


def _levels(ask: FixingAsk) -> Iterator[Finding]:
    """Eaves and tops at more than one height: the courses under and over them are not counted."""
    heights: dict[EdgeKind, set[int]] = {EdgeKind.EAVES: set(), EdgeKind.RIDGE: set()}
    points = ask.full.ask.outline.points_mm
    for at, edge in enumerate(ask.full.ask.outline.edges):
        if edge.kind in heights:
            heights[edge.kind].add(
                round(min(points[at][1], points[(at + 1) % len(points)][1]) / ask.full.ask.unit.width_mm)
            )
    if ask.extra and any(len(found) > 1 for found in heights.values()):
        yield not_covered(
            rule="eaves and tops at several heights",
            where=ask.where,
            proposed=None,
            unit="count",
            citation=LOWER_EDGES,
            says="Short courses at the other eaves and tops are not counted: fix each of their units twice as well.",
        )
