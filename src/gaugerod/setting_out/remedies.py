"""Which way to set the courses out: equal, fanned, the top course cut along the ridge, or the ends moved.

What is wished comes first. When a station then leaves the gauge range, two remedies are weighed in mm of
departure from what is wished, and the lesser is taken: battens parallel to the eaves with the top course cut
(its departure is the taper cut off, with any move of the ends it needs besides), or the ends moved inside
their bands (its departure is how far they move). A draw goes to the parallel battens.
"""

from dataclasses import dataclass
from fractions import Fraction

from gaugerod.basis.citation import Basis, Citation
from gaugerod.setting_out.courses import Strategy
from gaugerod.setting_out.equal_gauge import Spans, fewest_gauges, least_shift, shift_to_fit
from gaugerod.setting_out.marked_limits import EndBands, GaugeLimits

BATTEN_WIDTH_MM = Fraction(38)
"""The narrowest batten for tiles: nearer than this, two battens cannot both be nailed."""

BATTEN_WIDTH_CITATION = Citation(source="BS 5534 Table 3, as in NHBC Standards 7.2.17 Table 9", basis=Basis.PUBLISHED)


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """One way to set out. ``count`` gauges; ``shift_mm`` is how much the moved ends lengthen every span.

    ``span_mm`` is what the gauges divide: each station's own span, or, with battens ``parallel`` to the eaves,
    the longest one for all stations alike.
    """

    strategy: Strategy
    count: int
    shift_mm: Fraction
    departure_mm: Fraction

    def gauge_mm(self, *, span_mm: Fraction, spans: Spans) -> Fraction:
        """The equal gauge at a station with this span (as wished, before the shift)."""
        divided_mm = spans.greatest_mm if self.strategy is Strategy.PARALLEL else span_mm
        return (divided_mm + self.shift_mm) / self.count


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """The plan taken, the other remedies that would serve, and the same ends moved to save a whole course."""

    taken: Plan
    others: tuple[Plan, ...]


def choose(*, spans: Spans, limits: GaugeLimits, ends: EndBands) -> Choice:
    """The plan with the least departure from what is wished. Spans above zero."""
    fewest = fewest_gauges(span_mm=spans.greatest_mm, gauge_max_mm=limits.greatest_mm)
    if limits.hold(spans.greatest_mm / fewest) and limits.hold(spans.least_mm / fewest):
        taken = Plan(strategy=_level(spans), count=fewest, shift_mm=Fraction(0), departure_mm=Fraction(0))
        return Choice(taken=taken, others=_course_saved(spans=spans, limits=limits, ends=ends, count=fewest))
    remedies = sorted(
        (*_parallel(spans=spans, limits=limits, ends=ends), *_flexed(spans=spans, limits=limits, ends=ends)),
        key=lambda plan: plan.departure_mm,
    )
    if remedies:
        return Choice(taken=remedies[0], others=tuple(remedies[1:]))
    return Choice(
        taken=Plan(strategy=Strategy.NONE, count=fewest, shift_mm=Fraction(0), departure_mm=Fraction(0)), others=()
    )


def _level(spans: Spans) -> Strategy:
    return Strategy.FANNED if spans.taper_mm else Strategy.EQUAL


def _parallel(*, spans: Spans, limits: GaugeLimits, ends: EndBands) -> tuple[Plan, ...]:
    """Set out the longest station; elsewhere the top batten comes down with the ridge and the top course is cut."""
    if not spans.taper_mm:
        return ()
    longest = Spans(least_mm=spans.greatest_mm, greatest_mm=spans.greatest_mm)
    shift = least_shift(spans=longest, limits=limits, shorten_mm=ends.shorten_mm, lengthen_mm=ends.lengthen_mm)
    if shift is None or (longest.greatest_mm + shift.shift_mm) / shift.count - spans.taper_mm < BATTEN_WIDTH_MM:
        return ()
    departure_mm = spans.taper_mm + abs(shift.shift_mm)
    return (Plan(strategy=Strategy.PARALLEL, count=shift.count, shift_mm=shift.shift_mm, departure_mm=departure_mm),)


def _flexed(*, spans: Spans, limits: GaugeLimits, ends: EndBands) -> tuple[Plan, ...]:
    shift = least_shift(spans=spans, limits=limits, shorten_mm=ends.shorten_mm, lengthen_mm=ends.lengthen_mm)
    if shift is None:
        return ()
    return (
        Plan(strategy=Strategy.FLEXED, count=shift.count, shift_mm=shift.shift_mm, departure_mm=abs(shift.shift_mm)),
    )


def _course_saved(*, spans: Spans, limits: GaugeLimits, ends: EndBands, count: int) -> tuple[Plan, ...]:
    """One course fewer by moving the ends inside their bands. Offered, never taken unasked."""
    if count == 1:
        return ()
    shift_mm = shift_to_fit(count=count - 1, spans=spans, limits=limits)
    if shift_mm is None or not -ends.shorten_mm <= shift_mm <= ends.lengthen_mm:
        return ()
    return (Plan(strategy=Strategy.FLEXED, count=count - 1, shift_mm=shift_mm, departure_mm=abs(shift_mm)),)
