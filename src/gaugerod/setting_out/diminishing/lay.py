"""The chosen courses laid on the slope: margins, tails, nail lines, and the section that proves every lap."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.rounding import count_above, count_below
from gaugerod.coverings.double_lap import Nailing
from gaugerod.setting_out.diminishing.answer import DiminishingRod
from gaugerod.setting_out.diminishing.ask import DiminishingAsk
from gaugerod.setting_out.diminishing.choose import Need
from gaugerod.setting_out.diminishing.stack import Supply
from gaugerod.setting_out.section_laid import LaidCourse, LapOver, refuse_short_laps
from gaugerod.setting_out.stations import Station


@dataclass(frozen=True, slots=True, kw_only=True)
class Slope:
    """The fixed lines of one station, in divisions up from the fascia face.

    ``tail_divisions``   tail of the first course, below nothing
    ``edge_divisions``   lower edge of the ridge
    ``apex_divisions``   as high as a head may come
    """

    station: Station
    tail_divisions: int
    edge_divisions: int
    apex_divisions: int

    @property
    def cover_divisions(self) -> int:
        """From the tail of the first course to the lower edge of the ridge."""
        return self.edge_divisions - self.tail_divisions


def slope_at(ask: DiminishingAsk, station: Station, *, overhang_divisions: int) -> Slope:
    """The fixed lines of a station: the ridge edge rounded up and the apex down, so that neither costs any lap."""
    return Slope(
        station=station,
        tail_divisions=-overhang_divisions,
        edge_divisions=count_above(station.length_mm - ask.ridge_cover_mm, ask.division),
        apex_divisions=count_below(station.length_mm - ask.apex_clear.value, ask.division),
    )


def margins_divisions(courses: Sequence[Supply], *, cover_divisions: int, least_batten_divisions: int) -> list[int]:
    """What each course shows, adding up to the cover exactly. What the gauges reach too far is given back as lap.

    It is shared as evenly as the drops allow, an odd division going to the upper courses, so that no margin is taller
    than the one below it and the battens of every drop still clear one another.

    Raises NothingToSetOut when the courses cannot take it all.
    """
    gauges = [course.gauge_divisions for course in courses]
    surplus = sum(gauges) - cover_divisions
    may_give = _may_give(courses, least_batten_divisions)
    if sum(may_give) < surplus:
        raise NothingToSetOut(
            "the rafters differ too much for one plan: at the shortest the courses would show nothing, or two battens "
            "would meet. Set this slope out in two parts"
        )
    each = 0
    while sum(min(each + 1, give) for give in may_give) <= surplus:
        each += 1
        if each >= may_give[-1]:
            break
    given = [min(each, give) for give in may_give]
    odd = surplus - sum(given)
    return [
        gauge - give - (index >= len(gauges) - odd)
        for index, (gauge, give) in enumerate(zip(gauges, given, strict=True))
    ]


def _may_give(courses: Sequence[Supply], least_batten_divisions: int) -> list[int]:
    """The most each course may give back: it must show something, and no more than any course above it, which must
    leave room for two battens where the length drops.
    """
    most = courses[-1].gauge_divisions - 1
    may_give = [most]
    for upper, lower in pairwise(reversed(courses)):
        drop = lower.length_divisions - upper.length_divisions
        if drop:
            most = min(most, lower.gauge_divisions - drop - least_batten_divisions)
        may_give.append(most)
    return may_give[::-1]


def rod_for(
    ask: DiminishingAsk, need: Need, slope: Slope, courses: Sequence[Supply], *, under_eaves: int
) -> DiminishingRod:
    """One station's rod. The section is laid course over course first: a lap below the least withdraws the plan.

    ``under_eaves`` is the length of the under-eaves slate, in divisions.
    """
    margins = margins_divisions(
        courses, cover_divisions=slope.cover_divisions, least_batten_divisions=need.least_batten_divisions
    )
    tails = [slope.tail_divisions + sum(margins[:index]) for index in range(len(courses))]
    heads = [
        min(tail + course.length_divisions, slope.apex_divisions) for tail, course in zip(tails, courses, strict=True)
    ]
    step_mm = float(ask.division.step_mm)
    section = _section(slope, tails, heads, lost=need.lost_divisions, under_eaves=under_eaves, step_mm=step_mm)
    laps = refuse_short_laps(section, lap_over=LapOver.SECOND_BELOW, least_mm=ask.headlap.value)
    refuse_short_laps(section[-2:], lap_over=LapOver.NEXT_BELOW, least_mm=ask.ridge_lap.value)
    marks = _nail_lines(ask, heads, under_eaves_head=slope.tail_divisions + under_eaves, lost=need.lost_divisions)
    under_eaves_mark = min(
        slope.tail_divisions + under_eaves - count_above(ask.slates.hole_below_mm, ask.division),
        marks[0] - need.least_batten_divisions,
    )
    return DiminishingRod(
        at_mm=slope.station.at_mm,
        rafter_mm=slope.station.length_mm,
        overhang_mm=-slope.tail_divisions * step_mm,
        under_eaves_mark_mm=under_eaves_mark * step_mm,
        marks_mm=tuple(mark * step_mm for mark in marks),
        tails_mm=tuple(tail * step_mm for tail in tails),
        margins_mm=tuple(margin * step_mm for margin in margins),
        laps_mm=tuple(lap.lap_mm for lap in laps),
        cut_lengths_mm=tuple(
            (number, (head - tail) * step_mm)
            for number, (tail, head, course) in enumerate(zip(tails, heads, courses, strict=True), start=1)
            if head - tail < course.length_divisions
        ),
    )


def _section(
    slope: Slope, tails: Sequence[int], heads: Sequence[int], *, lost: int, under_eaves: int, step_mm: float
) -> list[LaidCourse]:
    lines = [(slope.tail_divisions, slope.tail_divisions + under_eaves), *zip(tails, heads, strict=True)]
    names = ["under-eaves", *(str(number) for number in range(1, len(tails) + 1))]
    section = [
        LaidCourse(name=name, tail_mm=tail * step_mm, head_mm=(head - lost) * step_mm)
        for name, (tail, head) in zip(names, lines, strict=True)
    ]
    ridge = LaidCourse(name="ridge", tail_mm=slope.edge_divisions * step_mm, head_mm=slope.station.length_mm)
    return [*section, ridge]


def _nail_lines(ask: DiminishingAsk, heads: Sequence[int], *, under_eaves_head: int, lost: int) -> list[int]:
    """Head-fixed: the hole, below the slate's own head. Centre-nailed: just clear of the head of the course below."""
    if ask.slates.nailing is Nailing.HEAD:
        return [head - lost for head in heads]
    clear = count_above(ask.nail_clear.value, ask.division)
    return [below + clear for below in (under_eaves_head, *heads[:-1])]
