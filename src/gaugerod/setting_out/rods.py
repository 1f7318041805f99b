"""The rods: a plan turned into marks at every station."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from gaugerod.basis.rounding import count_below, nearest_count
from gaugerod.setting_out.courses import CoursesAsk, Rod, Strategy
from gaugerod.setting_out.equal_gauge import Spans
from gaugerod.setting_out.marked_limits import Ends, GaugeLimits, exact_length_mm
from gaugerod.setting_out.marks import Marks, equal_marks, marks_above_kept
from gaugerod.setting_out.remedies import Plan


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A station to set out: its length, and the battens already nailed there (none: set out from the eaves)."""

    at_mm: Fraction
    length_mm: Fraction
    kept_mm: tuple[Fraction, ...] = ()

    def start_mm(self, *, hanging_length_mm: Fraction, overhang_mm: Fraction) -> Fraction:
        """The batten the equal gauges start from: the last one kept, or the first one at the eaves."""
        return self.kept_mm[-1] if self.kept_mm else hanging_length_mm - overhang_mm


def spans_of(*, places: Sequence[Place], hanging_length_mm: Fraction, ends: Ends) -> tuple[Fraction, ...]:
    """From the starting batten to the top batten at each place. mm."""
    return tuple(
        place.length_mm
        - ends.top_mm
        - place.start_mm(hanging_length_mm=hanging_length_mm, overhang_mm=ends.overhang_mm)
        for place in places
    )


def make_rods(
    *,
    ask: CoursesAsk,
    places: Sequence[Place],
    plan: Plan,
    spans: Spans,
    wished: Ends,
    moved: Ends,
    limits: GaugeLimits,
) -> tuple[Rod, ...]:
    """One rod for each place, its marks to the division and exact."""
    hanging_mm = exact_length_mm(ask.hanging_length_mm)
    wished_spans_mm = spans_of(places=places, hanging_length_mm=hanging_mm, ends=wished)
    rods = []
    for place, span_mm in zip(places, wished_spans_mm, strict=True):
        start_mm = place.start_mm(hanging_length_mm=hanging_mm, overhang_mm=moved.overhang_mm)
        gauge_mm = plan.gauge_mm(span_mm=span_mm, spans=spans)
        marks = _marks(ask=ask, place=place, start_mm=start_mm, gauge_mm=gauge_mm, count=plan.count, limits=limits)
        if plan.strategy is Strategy.PARALLEL:
            top_mm = place.length_mm - moved.top_mm
            marks = _top_mark_at(marks, start_mm=start_mm, top_mm=top_mm, limits=limits, ask=ask)
        rods.append(_rod(ask=ask, place=place, gauge_mm=float(gauge_mm), marks=marks))
    return tuple(rods)


def kept_rods(*, ask: CoursesAsk, places: Sequence[Place]) -> tuple[Rod, ...]:
    """The rods when every batten is nailed already and none is to be added. Two battens or more."""
    return tuple(
        _rod(
            ask=ask,
            place=place,
            gauge_mm=float((place.kept_mm[-1] - place.kept_mm[0]) / (len(place.kept_mm) - 1)),
            marks=Marks(rounded_mm=(), exact_mm=()),
        )
        for place in places
    )


def _marks(
    *, ask: CoursesAsk, place: Place, start_mm: Fraction, gauge_mm: Fraction, count: int, limits: GaugeLimits
) -> Marks:
    if place.kept_mm:
        return marks_above_kept(kept_mm=start_mm, gauge_mm=gauge_mm, count=count, limits=limits, division=ask.division)
    return equal_marks(start_mm=start_mm, gauge_mm=gauge_mm, count=count, division=ask.division)


def _top_mark_at(marks: Marks, *, start_mm: Fraction, top_mm: Fraction, limits: GaugeLimits, ask: CoursesAsk) -> Marks:
    """The same battens with the top one brought down to the ridge line."""
    below_mm = exact_length_mm(marks.rounded_mm[-2]) if len(marks.rounded_mm) > 1 else start_mm
    highest = count_below(below_mm + limits.greatest_mm, ask.division)
    mark = min(nearest_count(top_mm, ask.division), highest)
    return Marks(
        rounded_mm=(*marks.rounded_mm[:-1], mark * float(ask.division.step_mm)),
        exact_mm=(*marks.exact_mm[:-1], float(top_mm)),
    )


def _rod(*, ask: CoursesAsk, place: Place, gauge_mm: float, marks: Marks) -> Rod:
    kept_mm = tuple(map(float, place.kept_mm))
    marks_mm = (*kept_mm, *marks.rounded_mm)
    return Rod(
        at_mm=float(place.at_mm),
        length_mm=float(place.length_mm),
        gauge_mm=gauge_mm,
        marks_mm=marks_mm,
        exact_mm=(*kept_mm, *marks.exact_mm),
        overhang_mm=ask.hanging_length_mm - marks_mm[0],
        below_apex_mm=float(place.length_mm) - marks_mm[-1],
        kept_count=len(kept_mm),
    )
