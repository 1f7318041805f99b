"""Units counted by region, reason and way of holding; every fixing added up."""

from collections import Counter
from collections.abc import Iterable, Sequence

from gaugerod.fixing.held import Held
from gaugerod.fixing.plan import HeldCourse, KindCount, Region
from gaugerod.fixing.why import Why


def kinds_of(courses: Iterable[HeldCourse]) -> tuple[KindCount, ...]:
    """How many units are held in each way: the field first, then by the edges that make them perimeter."""
    counts: Counter[tuple[Why, Held]] = Counter()
    for course in courses:
        for run in course.runs:
            counts[run.why, run.held] += run.count
        for piece in course.pieces:
            counts[piece.why, piece.held] += 1
    return tuple(
        KindCount(region=Region.PERIMETER if why else Region.FIELD, why=why, held=held, units_count=count)
        for (why, held), count in sorted(counts.items())
    )


def total_of(kinds: Sequence[KindCount]) -> Held:
    """Every fixing of the slope, kind by kind."""
    return Held(*(sum(kind.held[at] * kind.units_count for kind in kinds) for at in range(len(Held._fields))))
