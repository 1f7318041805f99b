"""Every line of the roof that an edge is made along: with its true length, once, though two slopes may meet in it.

The slopes of a building are joined by its geometry. Slopes measured one by one are joined where the job says so
(``[[edges.shared]]``); else each counts its own, and a finding tells where two may be one.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import hypot

from gaugerod.basis.citation import house
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.edges.ask import EdgeLine, Hand, LineKind
from gaugerod.edges.wished import SharedLine
from gaugerod.geometry.pitch import atan2_deg, cos_deg, sin_deg
from gaugerod.geometry.roof_faces import RoofEdge
from gaugerod.job.laid_out import goes_up, structure_ring
from gaugerod.job.model import TopKind
from gaugerod.job.outlined import sides_worth_laying
from gaugerod.job.past_edges import heads_below_top_mm, past_edge_mm
from gaugerod.job.result import RoofResult, SlopeResult
from gaugerod.laying.ask import EdgeKind, Ring
from gaugerod.laying.cells import LINE_PLAY_MM

SAME_LENGTH_MM = 10.0
"""Two slopes' measures of one line may differ by this much (house); the longer is taken either way."""
ONE_LINE = house("a line in which two slopes meet is counted once, at the longer of its two measures")
_TOP_OF_TAPED = 2
"""A slope by tape has its eaves first, then its right side, its top, its left side."""
_MEETING = {RoofEdge.HIP, RoofEdge.VALLEY, RoofEdge.RIDGE}


@dataclass(frozen=True, slots=True, kw_only=True)
class SlopeEdge:
    """One edge of one slope, not yet joined to that of its neighbour. ``meets`` is the slope beyond; empty: none known."""

    slope: str
    name: str
    kind: LineKind
    meets: str
    goes_up: bool
    length_mm: float
    laid_mm: float
    slope_deg: float
    courses_count: int
    short_mm: float = 0.0
    from_eaves: bool = True


def edge_lines(
    slopes: Sequence[SlopeResult], roofs: Sequence[RoofResult], shared: Sequence[SharedLine]
) -> tuple[tuple[EdgeLine, ...], tuple[Finding, ...]]:
    """The lines, slope by slope, each pair where its first slope stands; and what could not be told of them. mm."""
    edges = [edge for slope in slopes for edge in _edges_of(slope, roofs)]
    findings: list[Finding] = []
    for one, other in _said_to_meet(edges, shared, findings):
        edges[one] = replace(edges[one], meets=edges[other].slope)
        edges[other] = replace(edges[other], meets=edges[one].slope)
    return tuple(_lines(edges)), tuple(findings)


def _edges_of(slope: SlopeResult, roofs: Sequence[RoofResult]) -> Iterator[SlopeEdge]:
    ring = structure_ring(slope.slope, slope.shape)
    meets = _beyond(slope, roofs)
    laid = {} if slope.laid is None else _lengths_mm(slope.laid.ask.outline)
    for index, (edge, (start, stop)) in enumerate(zip(ring.edges, _sides(ring), strict=True)):
        drawn_mm = hypot(stop[0] - start[0], stop[1] - start[1])
        if drawn_mm <= LINE_PLAY_MM:
            continue
        length_mm = _as_taped_mm(slope, index, drawn_mm)
        yield SlopeEdge(
            slope=slope.slope.name,
            name=edge.name,
            kind=_kind(slope, edge.kind, start, stop),
            meets=meets[index] if meets else "",
            goes_up=goes_up(slope.shape, index),
            length_mm=length_mm,
            laid_mm=_laid_mm(slope, edge.kind, (start[1], stop[1]), drawn_mm, laid.get(edge.name))
            + length_mm
            - drawn_mm,
            slope_deg=_rise_deg(start, stop, slope.slope.pitch_deg),
            courses_count=_courses_count(slope, start[1], stop[1]),
            short_mm=_short_mm(slope, edge.name, _kind(slope, edge.kind, start, stop)),
            from_eaves=_at_its_foot(ring, index, up=goes_up(slope.shape, index)) is EdgeKind.EAVES,
        )


def _at_its_foot(ring: Ring, index: int, *, up: bool) -> EdgeKind:
    """What kind the edge is that the foot of this one stands on: the one before it where it goes up, else the one after."""
    return ring.edges[index - 1 if up else (index + 1) % len(ring.edges)].kind


def _laid_mm(
    slope: SlopeResult,
    kind: EdgeKind,
    heights_mm: tuple[float, float],
    drawn_mm: float,
    covered_mm: float | None,
) -> float:
    """How long what lies along an edge is: as long as the covering there; a valley's lining from the tail line to its head,
    for the covering is cut back from it.
    """
    if covered_mm is None or kind is not EdgeKind.VALLEY:
        return drawn_mm if covered_mm is None else covered_mm
    low_mm, high_mm = sorted(heights_mm)
    if low_mm > LINE_PLAY_MM or high_mm - low_mm <= LINE_PLAY_MM:
        return drawn_mm
    return drawn_mm * (1.0 + slope.courses.overhang_mm / (high_mm - low_mm))


def _short_mm(slope: SlopeResult, name: str, kind: LineKind) -> float:
    """How far the covering stops short of a wall."""
    if kind is LineKind.TOP_ABUTMENT:
        return heads_below_top_mm(slope) or 0.0
    past_mm = past_edge_mm(slope, name) if kind is LineKind.SIDE_ABUTMENT else None
    return -past_mm if past_mm is not None and past_mm < 0 else 0.0


def _as_taped_mm(slope: SlopeResult, index: int, drawn_mm: float) -> float:
    """The line along the top of a slope by tape was measured too: the longer of that and what the other figures give."""
    taped_mm = slope.slope.taped.ridge_mm
    along_the_top = slope.slope.outline is None and index == _TOP_OF_TAPED
    return max(drawn_mm, taped_mm) if along_the_top and taped_mm is not None else drawn_mm


def _beyond(slope: SlopeResult, roofs: Sequence[RoofResult]) -> list[str]:
    """For each edge of a building's slope the slope beyond it; empty for one measured by itself."""
    for roof in roofs:
        if slope.slope.name in roof.slope_names:
            formed = roof.form.slopes[roof.slope_names.index(slope.slope.name)]
            sides = [formed.sides[at] for at in sides_worth_laying(formed)]
            return [
                roof.slope_names[side.slope] if side.kind in _MEETING and side.slope is not None else ""
                for side in sides
            ]
    return []


def _sides(ring: Ring) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    return list(pairwise((*ring.points_mm, ring.points_mm[0])))


def _lengths_mm(ring: Ring) -> dict[str, float]:
    """The length of each edge by its name; the parts of one that steps, together."""
    lengths: dict[str, float] = {}
    for edge, ((x0, y0), (x1, y1)) in zip(ring.edges, _sides(ring), strict=True):
        lengths[edge.name] = lengths.get(edge.name, 0.0) + hypot(x1 - x0, y1 - y0)
    return lengths


def _kind(slope: SlopeResult, kind: EdgeKind, start: tuple[float, float], stop: tuple[float, float]) -> LineKind:
    if kind is EdgeKind.RIDGE:
        return LineKind.MONO_RIDGE if slope.slope.top is TopKind.MONO_RIDGE else LineKind.RIDGE
    if kind is EdgeKind.ABUTMENT:
        along_the_top = start[0] - stop[0] > max(stop[1] - start[1], start[1] - stop[1])
        return LineKind.TOP_ABUTMENT if along_the_top else LineKind.SIDE_ABUTMENT
    return LineKind(kind.value)


def _rise_deg(start: tuple[float, float], stop: tuple[float, float], pitch_deg: float) -> float:
    """How steeply an edge that lies in a slope of this pitch rises."""
    up_mm = max(stop[1] - start[1], start[1] - stop[1])
    return atan2_deg(up_mm * sin_deg(pitch_deg), hypot(stop[0] - start[0], up_mm * cos_deg(pitch_deg)))


def _courses_count(slope: SlopeResult, low_mm: float, high_mm: float) -> int:
    """The courses that end between two heights up the slope: what shows of each counts from its tail line to the next."""
    bottom_mm, top_mm = sorted((low_mm, high_mm))
    tails = tails_mm(slope)
    return sum(
        1
        for tail_mm, next_mm in pairwise(tails)
        if min(next_mm, top_mm) - max(tail_mm, bottom_mm) > LINE_PLAY_MM
        or (tail_mm == tails[0] and tail_mm <= bottom_mm < next_mm - LINE_PLAY_MM and top_mm - bottom_mm > LINE_PLAY_MM)
    )


def tails_mm(slope: SlopeResult) -> list[float]:
    """The tail of every course, the short one at the top among them, and the head of the last, up the slope at its left
    rod. mm.
    """
    rod = slope.courses.rods[0]
    if slope.laid is not None:
        *tails, head_mm = (line.height_mm(rod.at_mm) for line in slope.laid.ask.lines)
    else:
        first_mm = -slope.courses.overhang_mm
        tails, head_mm = [first_mm + mark_mm - rod.marks_mm[0] for mark_mm in rod.marks_mm], rod.length_mm
    short = None if slope.double_lap is None else slope.double_lap.rods[0].short
    return [*tails, head_mm] if short is None else [*tails, short.tail_mm, head_mm]


def _said_to_meet(
    edges: Sequence[SlopeEdge], shared: Sequence[SharedLine], findings: list[Finding]
) -> Iterator[tuple[int, int]]:
    """The places of the two edges of every line the job says is shared: of opposite hands, and nearest in length."""
    taken: set[int] = set()
    for line in shared:
        first, second = (_free(edges, taken, name, line.kind) for name in line.slopes)
        pairs = [(at, other) for at in first for other in second if at != other]
        if not pairs:
            continue
        one, other = min(pairs, key=lambda pair: _least_alike(edges[pair[0]], edges[pair[1]]))
        taken |= {one, other}
        if _difference_mm(edges[one], edges[other]) > SAME_LENGTH_MM:
            findings.append(_differ(edges[one], edges[other]))
        yield one, other


def _least_alike(one: SlopeEdge, other: SlopeEdge) -> tuple[bool, float]:
    """The right-hand hip of one slope meets the left-hand hip of the next, and so do valleys; then by length."""
    same_hand = one.kind is not LineKind.RIDGE and one.goes_up is other.goes_up
    return same_hand, _difference_mm(one, other)


def _free(edges: Sequence[SlopeEdge], taken: set[int], slope: str, kind: str) -> list[int]:
    return [
        at
        for at, edge in enumerate(edges)
        if at not in taken and edge.slope == slope and edge.kind.value == kind and not edge.meets
    ]


def _difference_mm(one: SlopeEdge, other: SlopeEdge) -> float:
    return max(one.length_mm, other.length_mm) - min(one.length_mm, other.length_mm)


def _differ(one: SlopeEdge, other: SlopeEdge) -> Finding:
    return not_covered(
        rule="shared line",
        where=f"{one.slope} and {other.slope}, {one.kind.value}",
        proposed=_difference_mm(one, other),
        unit="mm",
        citation=ONE_LINE,
        says=f"The two slopes measure this line {_difference_mm(one, other):.0f} mm apart. The longer is counted. "
        "Measure it again before you order.",
    )


def _lines(edges: Sequence[SlopeEdge]) -> Iterator[EdgeLine]:
    joined: set[int] = set()
    named: dict[str, int] = {}
    for at, edge in enumerate(edges):
        if at in joined:
            continue
        partner = _partner(edges, at, joined)
        if partner is None:
            yield _line((edge,), f"{edge.slope}, {edge.name}")
            continue
        joined |= {at, partner}
        pair = (edge, edges[partner])
        left, right = pair if pair[0].goes_up else (pair[1], pair[0])
        name = f"{left.slope} and {right.slope}, {edge.kind.value}"
        named[name] = named.get(name, 0) + 1
        yield _line((left, right), name if named[name] == 1 else f"{name} {named[name]}")


def _partner(edges: Sequence[SlopeEdge], at: int, joined: set[int]) -> int | None:
    """The place of the edge of the slope beyond that is this same line."""
    edge = edges[at]
    found = [
        other
        for other, each in enumerate(edges)
        if other != at and other not in joined and each.kind is edge.kind and each.slope == edge.meets
        and each.meets == edge.slope
    ]  # fmt: skip
    return min(found, key=lambda other: _difference_mm(edge, edges[other]), default=None)


def _line(pair: tuple[SlopeEdge, ...], name: str) -> EdgeLine:
    longest = max(pair, key=lambda edge: edge.length_mm)
    past_mm = max(edge.laid_mm - edge.length_mm for edge in pair)
    return EdgeLine(
        name=name,
        kind=longest.kind,
        slopes=tuple(edge.slope for edge in pair),
        length_mm=longest.length_mm,
        past_ends_mm=past_mm,
        slope_deg=longest.slope_deg,
        courses_count=tuple(edge.courses_count for edge in pair),
        short_mm=longest.short_mm,
        hand=_hand(longest),
        from_eaves=any(edge.from_eaves for edge in pair),
    )


def _hand(edge: SlopeEdge) -> Hand | None:
    if edge.kind is not LineKind.VERGE:
        return None
    return Hand.RIGHT if edge.goes_up else Hand.LEFT


def perhaps_one(lines: Sequence[EdgeLine], kinds: frozenset[LineKind]) -> Iterator[Finding]:
    """Lines of two slopes, alike in kind and length, that the job does not say are one: told, and counted twice."""
    alone = [line for line in lines if line.kind in kinds and not line.of_two]
    for at, line in enumerate(alone):
        for other in alone[at + 1 :]:
            apart_mm = max(line.length_mm, other.length_mm) - min(line.length_mm, other.length_mm)
            if line.kind is other.kind and line.slopes != other.slopes and apart_mm <= SAME_LENGTH_MM:
                yield not_covered(
                    rule="shared line",
                    where=f"{line.name}; {other.name}",
                    proposed=apart_mm,
                    unit="mm",
                    citation=ONE_LINE,
                    says=f"The {line.kind.value}s of these two slopes are as long as each other. Where they are one line, say so "
                    "in [[edges.shared]]; until then each is counted by itself.",
                )
