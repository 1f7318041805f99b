"""The course under the eaves and the short course at the top, laid like any other so that their units can be counted.

They are no part of what shows, so the laying of the slope leaves them out; but each of their units is fixed.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from gaugerod.fixing.ask import Units
from gaugerod.laying.ask import Course, CourseLine, LayingAsk, Perps
from gaugerod.laying.cutting import cut_units
from gaugerod.laying.lay import lay
from gaugerod.setting_out.double_lap_extras import DoubleLapExtras

UNDER_EAVES = "under the eaves"
SHORT = "short course at the top"


def under_eaves_units(ask: LayingAsk, *, length_mm: float) -> Units:
    """The course under the first one, its joints those of the second: every unit of it that reaches past the eaves. mm.

    Scope: an outline with one eaves line; eaves higher up have their own course there, which is not counted here.
    """
    first = ask.courses[0]
    above = ask.courses[1].tail if len(ask.courses) > 1 else ask.head
    return _one_course(
        ask,
        name=UNDER_EAVES,
        course=Course(tail=first.tail, perps=_next_perps(ask, of=0), unit_length_mm=length_mm),
        head=above,
    )


def short_course_units(ask: LayingAsk, extras: DoubleLapExtras) -> Units | None:
    """The short course between the last full one and the ridge; None where the ridge laps without it."""
    shorts = [(rod.at_mm, rod.short) for rod in extras.rods if rod.short is not None]
    if len(shorts) < len(extras.rods):
        return None
    tail = _line([(at_mm, short.tail_mm) for at_mm, short in shorts])
    course = Course(
        tail=tail,
        perps=_next_perps(ask, of=len(ask.courses) - 1),
        unit_length_mm=max(short.length_mm for _, short in shorts),
    )
    xs = [x for x, _ in ask.outline.points_mm]
    if any(ask.head.height_mm(x) <= tail.height_mm(x) for x in (min(xs), max(xs))):
        return None
    return _one_course(ask, name=SHORT, course=course, head=ask.head)


def extra_units(ask: LayingAsk, *, extras: DoubleLapExtras) -> Iterator[Units]:
    """Both, for plain tiles and sized slates."""
    yield under_eaves_units(ask, length_mm=extras.under_eaves_length_mm)
    short = short_course_units(ask, extras)
    if short is not None:
        yield short


def _one_course(ask: LayingAsk, *, name: str, course: Course, head: CourseLine) -> Units:
    one = replace(ask, courses=(course,), head=head)
    laying = lay(one)
    return Units(name=name, ask=one, laying=laying, pieces=cut_units(one, laying))


def _next_perps(ask: LayingAsk, *, of: int) -> Perps:
    """The joints of the course beside course ``of``: half bond, so those of the one two along are its own again."""
    beside = of + 1 if of == 0 else of - 1
    if 0 <= beside < len(ask.courses):
        return ask.courses[beside].perps
    own = ask.courses[of].perps
    return replace(
        own,
        first_mm=own.first_mm - own.cover_mm / 2,
        first_lean_ratio=own.first_lean_ratio - own.cover_lean_ratio / 2,
    )


def _line(points: Sequence[tuple[float, float]]) -> CourseLine:
    """The straight line through the outermost of these places."""
    (x0, y0), (x1, y1) = points[0], points[-1]
    rise_ratio = 0.0 if x0 == x1 else (y1 - y0) / (x1 - x0)
    return CourseLine(at_mm=y0 - rise_ratio * x0, rise_ratio=rise_ratio)
