"""One slope planned: its rafters, its batten lines, and the joints of each of them, before anything is sawn."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil

from gaugerod.basis.finding import TOUCH
from gaugerod.laying.ask import EdgeKind
from gaugerod.rules.batten_joints import Stagger, stagger_rule, widest_gauge_mm
from gaugerod.rules.battens import BattenSection, least_batten_section
from gaugerod.standards.battens import BattenFigure, batten_figure
from gaugerod.standards.table import OffTable
from gaugerod.substrate.battens.any_pattern import any_pattern
from gaugerod.substrate.battens.ask import BattenedSlope, BattensAsk
from gaugerod.substrate.battens.course_by_course import (
    TASTES_COUNT,
    CourseJoints,
    CourseWays,
    PiecePrice,
    Stuck,
    joints_course_by_course,
)
from gaugerod.substrate.battens.cutting import cut_longest_first
from gaugerod.substrate.battens.exact_cutting import Cut, cost_of
from gaugerod.substrate.battens.lines import Span, spans_of
from gaugerod.substrate.battens.repeating import Repeating, best_repeating
from gaugerod.substrate.battens.supports import ends_mm, rafters_mm, widest_spacing_mm
from gaugerod.substrate.battens.ways import PieceRules, Ways, ways_of

LONGEST_PATTERN_COUNT = 4
"""A pattern of so many courses joins each rafter once in four: within the rule of every gauge."""


TRIM_MM = 50.0
"""Battens whose ends differ by no more are planned alike (house): the width of a batten, as far as one trims in place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """What the joints of one slope are chosen on. ``spacing_mm`` is None where there are not two rafters."""

    slope: BattenedSlope
    rafters_mm: tuple[float, ...]
    spacing_mm: float | None
    section: BattenSection | None
    gauge_mm: float
    spans: tuple[tuple[Span, ...], ...]
    courses: tuple[CourseWays, ...]
    rules: PieceRules
    trim_mm: float
    """By how much the ends of battens alike differ: their end pieces are cut to the longest and trimmed in place."""

    @property
    def alike(self) -> Ways | None:
        """The ways of every batten, where each is one stretch like all the others; else None."""
        first = self.courses[0].stretches
        same = len(first) == 1 and all(course.stretches == first for course in self.courses)
        return first[0] if same else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """The joints of every batten of one slope, or where no way was found. ``repeating`` where its battens are all alike."""

    ground: Ground
    joints: tuple[CourseJoints, ...] | Stuck
    stagger: Stagger
    repeating: Repeating | None

    @property
    def pieces_mm(self) -> list[int]:
        """Every piece of the slope."""
        if isinstance(self.joints, Stuck):
            return []
        return pieces_of(self.ground.courses, self.joints)


def pieces_of(courses: Sequence[CourseWays], joints: Sequence[CourseJoints]) -> list[int]:
    """Every piece of these battens, joined like this. mm."""
    return [
        length_mm
        for course, each in zip(courses, joints, strict=True)
        for ways, places in zip(course.stretches, each, strict=True)
        for length_mm in ways.pieces_mm(places)
    ]


def stock_of(ask: BattensAsk) -> tuple[int, ...]:
    """The stock lengths in whole millimetres, down: no piece is longer than what it is cut from."""
    return tuple(sorted({int(length.value + TOUCH) for length in ask.stock}))


def ground_of(ask: BattensAsk, slope: BattenedSlope, *, stock_mm: Sequence[int]) -> Ground:
    """The lines of the slope's battens and the ways of each, with pieces no longer than the longest stock."""
    left_mm, right_mm = ends_mm(slope.outline.points_mm)
    at_mm = rafters_mm(slope.rafters, left_mm=left_mm, right_mm=right_mm)
    spacing_mm = widest_spacing_mm(at_mm)
    section = None
    if spacing_mm is not None:
        found = least_batten_section(covering=ask.covering, rafter_spacing_mm=spacing_mm, edition=ask.edition)
        section = None if isinstance(found, OffTable) else found
    rules = PieceRules(
        least_mm=int(batten_figure(ask.edition, BattenFigure.LENGTH_LEAST).value),
        greatest_mm=max(stock_mm),
        supports_count=int(batten_figure(ask.edition, BattenFigure.SUPPORTS_LEAST).value),
        same_support_mm=batten_figure(ask.edition, BattenFigure.SAME_SUPPORT).value,
    )
    width_mm = 0.0 if section is None else section.width_mm
    spans = tuple(spans_of(slope, mark, batten_width_mm=width_mm, stops=ask.stops) for mark in slope.marks)
    common = _common_span(spans, at_mm)
    trim_mm = 0.0 if common is None else common[1]
    known: dict[tuple[object, ...], Ways] = {}
    return Ground(
        slope=slope,
        rafters_mm=at_mm,
        spacing_mm=spacing_mm,
        section=section,
        gauge_mm=widest_gauge_mm(
            [[mark.at_mm[station][1] for mark in slope.marks] for station in range(len(slope.marks[0].at_mm))]
        ),
        spans=spans,
        # What is trimmed in place must leave the least length.
        courses=tuple(
            _course(
                number,
                each if common is None else (common[0],),
                at_mm,
                rules=replace(rules, least_mm=rules.least_mm + ceil(trim_mm - TOUCH)),
                known=known,
            )
            for number, each in enumerate(spans)
        ),
        rules=rules,
        trim_mm=trim_mm,
    )


def _common_span(spans: Sequence[Sequence[Span]], at_mm: Sequence[float]) -> tuple[Span, float] | None:
    """The longest of battens that are alike but for a little at their ends, and how much that is; None where they differ.

    A gable out of square, or battens fanned across it, differ like this.
    """
    if not spans or any(len(each) != 1 for each in spans):
        return None
    lines = [each[0] for each in spans]
    lefts, rights = [span.left.at_mm for span in lines], [span.right.at_mm for span in lines]
    left_mm, right_mm = min(lefts), max(rights)
    spread_mm = max(max(lefts) - left_mm, right_mm - min(rights))
    kinds = {(span.left.kind, span.right.kind) for span in lines}
    between = [at for at in at_mm if left_mm <= at <= max(lefts) or min(rights) <= at <= right_mm]
    trimmed = all(kind in {EdgeKind.VERGE, EdgeKind.ABUTMENT} for both in kinds for kind in both)
    if len(kinds) > 1 or (spread_mm > TOUCH and (between or not trimmed or spread_mm > TRIM_MM)):
        return None
    ratio = max(span.along_ratio for span in lines)
    longest = lines[0]._replace(
        left=lines[0].left._replace(at_mm=left_mm), right=lines[0].right._replace(at_mm=right_mm), along_ratio=ratio
    )
    return longest, spread_mm


def _course(
    number: int,
    spans: Sequence[Span],
    at_mm: Sequence[float],
    *,
    rules: PieceRules,
    known: dict[tuple[object, ...], Ways],
) -> CourseWays:
    """One batten. Stretches alike share their ways."""
    stretches = []
    for span in spans:
        key = (span.left[:2], span.right[:2], span.along_ratio)
        if key not in known:
            known[key] = ways_of(span, at_mm, rules)
        stretches.append(known[key])
    crossed = frozenset(rafter for ways in stretches for rafter in ways.rafters[1:-1])
    return CourseWays(number, tuple(stretches), crossed)


def rule_of(ask: BattensAsk, ground: Ground) -> Stagger:
    """The rule on joints of this slope. One batten alone has no gauge: the stricter rule."""
    gauge_mm = ground.gauge_mm or batten_figure(ask.edition, BattenFigure.WIDE_GAUGE_OVER).value * 2
    return stagger_rule(gauge_mm=gauge_mm, edition=ask.edition, close_joints=ask.close_joints)


def planned(ask: BattensAsk, ground: Ground, *, known: dict[tuple[object, ...], Repeating | None]) -> Planned:
    """The joints of one slope.

    First as for a wide gauge, one in any four, which is also within the rule of a close one and easy to remember; where
    that cannot be done at a close gauge, by the rule of the close gauge.
    """
    stock_mm = stock_of(ask)
    wide = stagger_rule(
        gauge_mm=batten_figure(ask.edition, BattenFigure.WIDE_GAUGE_OVER).value * 2, edition=ask.edition
    )
    price = PiecePrice(stock_mm=stock_mm, least_piece_mm=ground.rules.least_mm, kerf_mm=ask.kerf.value)
    found = joints_course_by_course(ground.courses, stagger=wide, price=price)
    repeating = _repeating(ask, ground, stock_mm, repeat_count=wide.window_count, known=known)
    if ground.alike is not None and not (repeating is not None and repeating.proved):
        found = _to_every_taste(ask, ground, found, stagger=wide, price=price)
    if repeating is not None and not _buys_less(ask, ground, found, repeating):
        every = len(repeating.courses)
        joints = tuple((repeating.courses[course.number % every],) for course in ground.courses)
        return Planned(ground=ground, joints=joints, stagger=wide, repeating=repeating)
    if isinstance(found, Stuck) and not found.impossible:
        found = _any_repeating(ground, wide) or found
    rule = rule_of(ask, ground)
    if isinstance(found, Stuck) and not found.impossible and rule != wide:
        by_rule = joints_course_by_course(ground.courses, stagger=rule, price=price)
        if isinstance(by_rule, Stuck):
            by_rule = _any_repeating(ground, rule) or by_rule
        return Planned(ground=ground, joints=by_rule, stagger=rule, repeating=None)
    return Planned(ground=ground, joints=found, stagger=wide, repeating=None)


def _to_every_taste(
    ask: BattensAsk,
    ground: Ground,
    found: tuple[CourseJoints, ...] | Stuck,
    *,
    stagger: Stagger,
    price: PiecePrice,
) -> tuple[CourseJoints, ...] | Stuck:
    """The best of several mixtures of lengths: battens alike have few lengths, so much hangs on which."""
    if isinstance(found, Stuck):
        return found
    tried = [found]
    for taste in range(1, TASTES_COUNT):
        other = joints_course_by_course(ground.courses, stagger=stagger, price=replace(price, taste=taste))
        if not isinstance(other, Stuck):
            tried.append(other)
    stock_mm = stock_of(ask)
    return min(tried, key=lambda joints: cost_of(cuts_of(pieces_of(ground.courses, joints), ask, stock_mm=stock_mm)))


def _buys_less(ask: BattensAsk, ground: Ground, joints: tuple[CourseJoints, ...] | Stuck, repeating: Repeating) -> bool:
    """Do battens joined course by course buy fewer metres? Then the pattern that repeats would cost something."""
    if isinstance(joints, Stuck):
        return False
    cuts = cuts_of(pieces_of(ground.courses, joints), ask, stock_mm=stock_of(ask))
    return sum(cut.stock_mm for cut in cuts) < sum(cut.stock_mm for cut in repeating.cuts)


def _any_repeating(ground: Ground, stagger: Stagger) -> tuple[CourseJoints, ...] | None:
    """Any repeating pattern at all, where every batten is alike: the longest that keeps the rule, whatever it buys."""
    if ground.alike is None:
        return None
    courses = len(ground.courses)
    for every in range(min(LONGEST_PATTERN_COUNT, courses), 1, -1):
        if ceil(min(stagger.window_count, courses) / every) > stagger.joints_count:
            return None
        pattern = any_pattern(ground.alike, repeat_count=every)
        if pattern is not None:
            return tuple((pattern[course.number % every],) for course in ground.courses)
    return None


def _repeating(
    ask: BattensAsk,
    ground: Ground,
    stock_mm: Sequence[int],
    *,
    repeat_count: int,
    known: dict[tuple[object, ...], Repeating | None],
) -> Repeating | None:
    """The best repeating pattern where every batten is alike; slopes alike are planned once."""
    ways = ground.alike
    if ways is None:
        return None
    key = (ways, len(ground.courses))
    if key not in known:
        known[key] = best_repeating(
            ways,
            courses_count=len(ground.courses),
            repeat_count=repeat_count,
            stock_mm=stock_mm,
            kerf_mm=ask.kerf.value,
        )
    return known[key]


def cuts_of(pieces_mm: Sequence[int], ask: BattensAsk, *, stock_mm: Sequence[int]) -> tuple[Cut, ...]:
    """Any pieces cut from these stock lengths."""
    return cut_longest_first(pieces_mm, stock_mm=stock_mm, kerf_mm=ask.kerf.value)
