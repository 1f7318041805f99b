"""Courses round the corners of a building: slopes that share a hip or valley are set out together.

The lines one sees are the tails. Those of two slopes meet at their hip when they lie at the same heights, so all slopes of
a group share one drop d of the lowest tails below the fascia's edge and one rise z to the course:

    overhang  o_i = d / sin(pitch_i)        gauge  G_i = z / sin(pitch_i)
    first batten  hanging length − o_i      top batten  N_i gauges above it, in its band below that slope's own apex

Every condition is a straight line in d and z, so for given numbers of courses the best d and z follow exactly
(``convex_region``). Fewest courses come first, then the least movement of overhangs and ridge allowances. Where no d and
z let whole courses arrive under every ridge, the lower ridges take a cut top course, and then the highest too, always
with room for its batten; where even the gauge ranges cannot be brought to one rise, or no batten finds room, the slopes
are set out apart and the step at the corner is told.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice, product
from math import ceil, floor

from gaugerod.geometry.convex_region import HalfPlane, Wish, nearest, region
from gaugerod.geometry.pitch import sin_deg
from gaugerod.setting_out.courses import CoursesAsk
from gaugerod.setting_out.marked_limits import end_bands, exact_length_mm, gauge_limits
from gaugerod.setting_out.remedies import BATTEN_WIDTH_MM

TOUCH_MM = 1e-6
ROOM_FOR_BATTEN_MM = float(BATTEN_WIDTH_MM) + 2.0
"""From the batten below to that of a cut top course: a batten's width, and what rounding takes off both marks."""
MOST_TRIED_COUNT = 4000
"""How many combinations of course numbers are weighed before the lower ridges are left to a cut course (house)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CornerSlope:
    """A slope of the group: its ask (one rafter length, eaves to its highest ridge) and its pitch."""

    name: str
    ask: CoursesAsk
    pitch_deg: float

    @property
    def sine(self) -> float:
        """Rise for each unit up the slope."""
        return sin_deg(self.pitch_deg)

    @property
    def rafter_mm(self) -> float:
        """Eaves to apex, up the slope."""
        return self.ask.stations[0].length_mm

    @property
    def gauge_mm(self) -> tuple[float, float]:
        """Least and greatest gauge, as they can be marked."""
        limits = gauge_limits(
            gauge_min_mm=self.ask.gauge_min_mm, gauge_max_mm=self.ask.gauge_max_mm, division=self.ask.division
        )
        return float(limits.least_mm or 0), float(limits.greatest_mm)

    @property
    def overhang_mm(self) -> tuple[float, float]:
        """Least and greatest overhang, as they can be marked."""
        ends = end_bands(ask=self.ask, lengths_mm=(exact_length_mm(self.rafter_mm),))
        return float(ends.least.overhang_mm), float(ends.greatest.overhang_mm)

    @property
    def below_apex_mm(self) -> tuple[float, float]:
        """Least and greatest allowance for the top batten, as they can be marked."""
        ends = end_bands(ask=self.ask, lengths_mm=(exact_length_mm(self.rafter_mm),))
        return float(ends.least.top_mm), float(ends.greatest.top_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class Shared:
    """How one slope is set out with the others: first batten, gauge, number of gauges, and where its top batten goes.

    ``cut_top``  the top course is cut at the head, as the shared lines do not arrive in this ridge's band
    """

    name: str
    first_mm: float
    gauge_mm: float
    gauges_count: int
    top_mm: float
    cut_top: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Together:
    """The answer for one group. ``meets`` is False when its slopes could not be brought to one rise.

    ``step_mm`` is then how far their lines part, course for course, where they meet at a corner.
    """

    shared: tuple[Shared, ...]
    meets: bool
    step_mm: float
    says: str


def set_together(slopes: Sequence[CornerSlope]) -> Together:
    """One solve for slopes that meet at corners.

    Source: plane geometry; the order of what gives way is a house rule.
    Scope: level eaves at one height, single rafter length to each slope, units hung on battens.
    """
    tallest = max(range(len(slopes)), key=lambda index: slopes[index].rafter_mm * slopes[index].sine)
    for whole in (frozenset(range(len(slopes))), frozenset({tallest}), frozenset[int]()):
        solved = _best(slopes, whole=whole)
        if solved is not None:
            return _answer(slopes, solved, whole=whole)
    return Together(shared=(), meets=False, step_mm=step_at_corner_mm(slopes), says=_apart(slopes))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Solved:
    drop_mm: float
    rise_mm: float
    counts: tuple[int, ...]


def _best(slopes: Sequence[CornerSlope], *, whole: frozenset[int]) -> _Solved | None:
    """The least total of courses, then the least movement, over every combination of course numbers.

    ``whole``: the slopes whose top course must not be cut. Slopes that are alike have one number of courses.
    """
    shared = _shared_conditions(slopes)
    box = _box(slopes)
    if box is None:
        return None
    rises = [rise for _, rise in region(shared, within=box)]
    if not rises:
        return None
    alike = _alike(slopes, whole)
    ranges = [
        _counts(slopes[group[0]], cut=group[0] not in whole, least_rise_mm=min(rises), greatest_rise_mm=max(rises))
        for group in alike
    ]
    found: tuple[tuple[int, float], _Solved] | None = None
    for counts in islice(product(*ranges), MOST_TRIED_COUNT):
        total = sum(count * len(group) for count, group in zip(counts, alike, strict=True))
        if found is not None and total > found[0][0]:
            continue
        by_slope = {index: count for count, group in zip(counts, alike, strict=True) for index in group}
        tops = [
            condition
            for count, group in zip(counts, alike, strict=True)
            for condition in _top_conditions(slopes[group[0]], count, cut=group[0] not in whole)
        ]
        corners = region([*shared, *tops], within=box)
        if not corners:
            continue
        departure, (drop_mm, rise_mm) = nearest(corners, list(_wishes(slopes, by_slope)))
        if found is None or (total, departure) < found[0]:
            in_order = tuple(by_slope[index] for index in range(len(slopes)))
            found = (total, departure), _Solved(drop_mm=drop_mm, rise_mm=rise_mm, counts=in_order)
    return None if found is None else found[1]


def _alike(slopes: Sequence[CornerSlope], whole: frozenset[int]) -> list[list[int]]:
    """The slopes in groups that every condition treats alike: one ask but for its name, and one pitch."""
    groups: dict[tuple[object, ...], list[int]] = {}
    for index, slope in enumerate(slopes):
        ends = (slope.overhang_mm, slope.below_apex_mm, slope.gauge_mm, slope.ask.hanging_length_mm)
        key = (round(slope.rafter_mm, 6), round(slope.pitch_deg, 9), *ends, index in whole)
        groups.setdefault(key, []).append(index)
    return list(groups.values())


def _box(slopes: Sequence[CornerSlope]) -> tuple[tuple[float, float], tuple[float, float]] | None:
    """Greatest drop and rise of any slope: a box around all that could be."""
    drop_mm = max(slope.overhang_mm[1] * slope.sine for slope in slopes)
    rise_mm = max(slope.gauge_mm[1] * slope.sine for slope in slopes)
    return ((0.0, 0.0), (drop_mm, rise_mm)) if drop_mm > 0 and rise_mm > 0 else None


def _shared_conditions(slopes: Sequence[CornerSlope]) -> list[HalfPlane]:
    """Overhangs in their bands, gauges in their ranges. In d and z."""
    conditions = []
    for slope in slopes:
        sine = slope.sine
        conditions.append(HalfPlane(1.0, 0.0, slope.overhang_mm[0] * sine - TOUCH_MM))
        conditions.append(HalfPlane(-1.0, 0.0, -slope.overhang_mm[1] * sine - TOUCH_MM))
        conditions.append(HalfPlane(0.0, 1.0, slope.gauge_mm[0] * sine))
        conditions.append(HalfPlane(0.0, -1.0, -slope.gauge_mm[1] * sine))
    return conditions


def _top_conditions(slope: CornerSlope, count: int, *, cut: bool) -> list[HalfPlane]:
    """The top batten, hanging·sin − d + N·z up in height, inside its band below this slope's apex.

    With the top course ``cut`` the lines may pass the band, as long as the batten below leaves the top one room in it.
    """
    hung_mm, sine = slope.ask.hanging_length_mm, slope.sine
    lowest = (slope.rafter_mm - slope.below_apex_mm[1] - hung_mm) * sine
    highest = (slope.rafter_mm - slope.below_apex_mm[0] - hung_mm) * sine
    reaches = HalfPlane(-1.0, float(count), lowest - TOUCH_MM)
    if cut:
        return [reaches, HalfPlane(1.0, -float(count - 1), -(highest - ROOM_FOR_BATTEN_MM * sine))]
    return [reaches, HalfPlane(1.0, -float(count), -highest - TOUCH_MM)]


def _counts(slope: CornerSlope, *, cut: bool, least_rise_mm: float, greatest_rise_mm: float) -> range:
    """Every number of gauges that could reach this slope's top band, or pass it where the top course may be cut."""
    first_least_mm = slope.ask.hanging_length_mm - slope.overhang_mm[1]
    first_most_mm = slope.ask.hanging_length_mm - slope.overhang_mm[0]
    shortest = (slope.rafter_mm - slope.below_apex_mm[1] - first_most_mm) * slope.sine
    longest = (slope.rafter_mm - slope.below_apex_mm[0] - first_least_mm) * slope.sine
    fewest = max(1, ceil(shortest / greatest_rise_mm - TOUCH_MM))
    most = floor(longest / least_rise_mm + TOUCH_MM) if least_rise_mm > 0 else fewest + 2
    return range(fewest, max(most, fewest) + (2 if cut else 1))


def _wishes(slopes: Sequence[CornerSlope], counts: dict[int, int]) -> Iterator[Wish]:
    """Overhang and ridge allowance in the middle of their bands, each miss in mm along the slope."""
    for index, slope in enumerate(slopes):
        sine, ask = slope.sine, slope.ask
        yield Wish(1.0 / sine, 0.0, ask.overhang.aim_mm)
        yield Wish(-1.0 / sine, counts[index] / sine, slope.rafter_mm - ask.top.aim_mm - ask.hanging_length_mm)


def _answer(slopes: Sequence[CornerSlope], solved: _Solved, *, whole: frozenset[int]) -> Together:
    shared = []
    for index, (slope, count) in enumerate(zip(slopes, solved.counts, strict=True)):
        first_mm = slope.ask.hanging_length_mm - solved.drop_mm / slope.sine
        gauge_mm = solved.rise_mm / slope.sine
        top_mm = line_mm = first_mm + count * gauge_mm
        if index not in whole:
            low_mm = max(slope.rafter_mm - slope.below_apex_mm[1], line_mm - gauge_mm + ROOM_FOR_BATTEN_MM)
            high_mm = min(slope.rafter_mm - slope.below_apex_mm[0], line_mm)
            top_mm = min(max(slope.rafter_mm - slope.ask.top.aim_mm, low_mm), high_mm)
        shared.append(_one(slope, first_mm, gauge_mm, count, top_mm, cut_top=line_mm - top_mm > TOUCH_MM))
    return Together(shared=tuple(shared), meets=True, step_mm=0.0, says=_meeting(slopes, shared))


def _one(slope: CornerSlope, first_mm: float, gauge_mm: float, count: int, top_mm: float, *, cut_top: bool) -> Shared:
    return Shared(
        name=slope.name, first_mm=first_mm, gauge_mm=gauge_mm, gauges_count=count, top_mm=top_mm, cut_top=cut_top
    )


def _meeting(slopes: Sequence[CornerSlope], shared: Sequence[Shared]) -> str:
    names = ", ".join(slope.name for slope in slopes)
    pitches = {round(slope.pitch_deg, 6) for slope in slopes}
    same = "with the same marks" if len(pitches) == 1 else "each with its own gauge for one rise to the course"
    said = f"Slopes {names} are coursed together {same}, so the lines meet at every hip and valley."
    cut = [each.name for each in shared if each.cut_top]
    if cut:
        said += f" The shared lines do not arrive under the ridge of {', '.join(cut)}: the top course there is cut at its head."
    return said


def step_at_corner_mm(slopes: Sequence[CornerSlope]) -> float:
    """How far apart two lines of the same number come with every course, at the least: the gap between rise ranges."""
    highest_least = max(slope.gauge_mm[0] * slope.sine for slope in slopes)
    lowest_greatest = min(slope.gauge_mm[1] * slope.sine for slope in slopes)
    return max(0.0, highest_least - lowest_greatest)


def _tails_part_mm(slopes: Sequence[CornerSlope]) -> float:
    """How far the lowest tails stay apart in height, at the least: the gap between the drops their overhangs allow."""
    highest_least = max(slope.overhang_mm[0] * slope.sine for slope in slopes)
    lowest_greatest = min(slope.overhang_mm[1] * slope.sine for slope in slopes)
    return max(0.0, highest_least - lowest_greatest)


def _apart(slopes: Sequence[CornerSlope]) -> str:
    names = " and ".join(slope.name for slope in slopes)
    step_mm = step_at_corner_mm(slopes)
    if step_mm > 0:
        return (
            f"The lines of {names} cannot meet at their corners: no gauge inside its range gives them one rise to the "
            f"course. They part by {step_mm:.1f} mm in height with every course at the least. Each is set out by itself; "
            f"expect the bond to break at the hip or valley, and cut and cover it there."
        )
    part_mm = _tails_part_mm(slopes)
    if part_mm > TOUCH_MM:
        return (
            f"The lines of {names} cannot meet at their corners: no overhang inside its band brings their lowest tails to one "
            f"height. All the way up the lines part by {part_mm:.1f} mm in height at the least, unless an overhang is given "
            f"that leaves its band. Each is set out by itself; expect the lines to step at the hip or valley."
        )
    return (
        f"The lines of {names} cannot meet at their corners: with overhangs and ridge allowances inside their bands no one "
        f"rise to the course serves. Each is set out by itself; expect the lines to step at the hip or valley."
    )
