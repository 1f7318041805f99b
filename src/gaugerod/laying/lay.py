"""Lay one slope: every course swept once, its edges followed, its units counted."""

from collections.abc import Sequence
from itertools import pairwise

from gaugerod.geometry.polygon import signed_area_mm2
from gaugerod.laying.ask import LayingAsk
from gaugerod.laying.cells import RowLaid
from gaugerod.laying.crossings import crossings, sides_by_row, sides_of
from gaugerod.laying.laid import CourseLaid, Laying, Run, Small
from gaugerod.laying.rows import Row


def lay(ask: LayingAsk) -> Laying:
    r"""Every unit of one slope: whole ones as runs, cut ones with the outline of what shows, and what is left out.

    A unit counts by what it *shows*, its cell: cover by gauge. So the pieces cover the slope once, without gap. The
    cut through the whole unit, laps and all, follows in ``cut_units``. Work grows with the edges, not with the area.

    Scope: a unit that would show nothing is not laid, even where its head would reach in under the course above.

    >>> from gaugerod.laying.ask import *
    >>> eaves, verge = Edge(name="eaves", kind=EdgeKind.EAVES), Edge(name="verge", kind=EdgeKind.VERGE)
    >>> outline = Ring(points_mm=((0, 0), (1000, 0), (1000, 300), (0, 300)), edges=(eaves, verge, eaves, verge))
    >>> courses = tuple(Course(tail=CourseLine(at_mm=100.0 * row), unit_length_mm=265.0,
    ...                        perps=Perps(first_mm=-82.5 * (row % 2), cover_mm=165.0)) for row in range(3))
    >>> tile = Unit(width_mm=165.0, lap_side=LapSide.LEFT, offcut_rule=OffcutRule.IN_PLACE)
    >>> laying = lay(LayingAsk(where="rear", outline=outline, openings=(), courses=courses,
    ...                        head=CourseLine(at_mm=300.0), unit=tile))
    >>> laying.whole_count, laying.cut_count, [round(cut.area_mm2) for cut in laying.cuts]
    (17, 4, [1000, 8250, 9250, 1000])
    """
    rings = [ring.points_mm for ring in (ask.outline, *ask.openings)]
    ends_mm = (min(x for x, _ in rings[0]), max(x for x, _ in rings[0]))
    lines = list(pairwise(ask.lines))
    rows = []
    for number, active in enumerate(sides_by_row(sides_of(ask), lines, ends_mm=ends_mm)):
        tail, head = lines[number]
        laid = RowLaid(number, Row(tail=tail, head=head, perps=ask.courses[number].perps), rings, ends_mm)
        if active:
            laid.sweep(crossings(laid.row, active))
            laid.leave_to_side_lap(ask.unit)
        rows.append(laid)
    return _summed(ask, rows, slope_area_mm2=sum(map(signed_area_mm2, rings)))


def _summed(ask: LayingAsk, rows: Sequence[RowLaid], *, slope_area_mm2: float) -> Laying:
    cuts = [cut for laid in rows for cut in laid.cuts]
    lapped = [cut for laid in rows for cut in laid.lapped]
    slivers = [area for laid in rows for area in laid.slivers_mm2]
    nicks = [area for laid in rows for area in laid.nicks_mm2]
    courses = tuple(_course_laid(laid) for laid in rows)
    covered_mm2 = sum(course.area_mm2 for course in courses)
    cut_mm2, lapped_mm2 = sum(cut.area_mm2 for cut in cuts), sum(cut.area_mm2 for cut in lapped)
    return Laying(
        where=ask.where,
        runs=tuple(Run(course=laid.course, first=first, count=count) for laid in rows for first, count in laid.whole),
        cuts=tuple(cuts),
        lapped=tuple(lapped),
        courses=courses,
        whole_count=sum(course.whole_count for course in courses),
        whole_area_mm2=covered_mm2 - cut_mm2 - lapped_mm2,
        cut_area_mm2=cut_mm2,
        lapped_area_mm2=lapped_mm2,
        slivers=Small(count=len(slivers), area_mm2=sum(slivers)),
        nicks=Small(count=len(nicks), area_mm2=sum(nicks)),
        slope_area_mm2=slope_area_mm2,
        bare_mm2=slope_area_mm2 - covered_mm2 - sum(slivers) + sum(nicks),
    )


def _course_laid(laid: RowLaid) -> CourseLaid:
    area_mm2 = sum(laid.row.area_mm2(first, first + count) for first, count in laid.whole)
    area_mm2 += sum(cut.area_mm2 for cut in laid.cuts) + sum(cut.area_mm2 for cut in laid.lapped)
    return CourseLaid(
        whole_count=sum(count for _, count in laid.whole),
        cut_count=len(laid.cuts),
        area_mm2=area_mm2,
        length_mm=area_mm2 / laid.mean_gauge_mm,
    )
