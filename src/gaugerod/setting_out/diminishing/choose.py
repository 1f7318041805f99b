"""How many courses of each length: an exact search over every plan the stack allows.

A plan is a count of courses for each length, longest at the eaves. Each course shows at most its own gauge,
(usable length − lap)/2, so margins never grow upward and the lap holds at every change of length. A plan will do when

* its gauges together reach from the eaves to the lower edge of the ridge,
* without its top course they would not (no course is laid for nothing),
* no length is used beyond its heap,
* the batten of each drop course clears the batten below it, and
* what is left over still makes the under-eaves course.

The search keeps, for every number of courses so far and every length the last of them may have, the set of heights
reached, as the bits of one whole number. Adding a course shifts the set by its gauge. Nothing is left out and nothing
is counted twice, so the best plan found is the best there is.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import assert_never

from gaugerod.setting_out.diminishing.ask import Aim
from gaugerod.setting_out.diminishing.stack import Supply

Heights = dict[int, int]
"""Number of courses so far → the heights they can reach, a bit for each."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """What the plan must do, in divisions.

    ``cover_divisions``         eaves to the lower edge of the ridge
    ``headlap_divisions``       the lap
    ``lost_divisions``          head to hole of head-fixed slates
    ``least_batten_divisions``  least distance between two battens
    ``course_run_mm``           run of slate one course takes
    """

    cover_divisions: int
    headlap_divisions: int
    lost_divisions: int
    least_batten_divisions: int
    course_run_mm: float

    def under_eaves_divisions(self, first: Supply) -> int:
        """Length of the under-eaves slate below a first course of this heap: gauge + lap (+ what its hole loses)."""
        return first.gauge_divisions + self.headlap_divisions + self.lost_divisions

    def under_eaves_run_mm(self, supplies: Sequence[Supply], counts: Sequence[int]) -> float:
        """Run left over, once the plan is laid, of slates long enough for the under-eaves course."""
        first = next(supply for supply, count in zip(supplies, counts, strict=True) if count)
        least = self.under_eaves_divisions(first)
        return sum(
            supply.run_mm - count * self.course_run_mm
            for supply, count in zip(supplies, counts, strict=True)
            if supply.length_divisions >= least
        )

    def drop_allowed(self, lower: Supply, upper: Supply) -> bool:
        """Does the drop from one length to the next leave room between their battens?

        Batten to batten at the drop = margin of the course below − difference of the lengths.
        """
        drop = lower.length_divisions - upper.length_divisions
        return lower.gauge_divisions - drop >= self.least_batten_divisions


@dataclass(frozen=True, slots=True)
class _End:
    """Where a complete plan ends: its last length, its number of courses, and how far past the ridge edge it could go."""

    last: int
    courses: int
    surplus: int


def choose_courses(*, supplies: Sequence[Supply], need: Need, aim: Aim) -> tuple[int, ...] | None:
    """The best count of courses for each length, or None when no plan will do.

    Best for ``least-left``: the most courses, then the least surplus. For ``fewest-courses``: the fewest, then the same.
    """
    if not _reaches(supplies, need):
        return None
    plan = _search(supplies, need, aim, first=None)
    if plan is None or _makes_under_eaves(supplies, need, plan):
        return plan
    # The best plan uses up the slates the under-eaves course is cut from: ask again for each first length in turn,
    # holding that course back.
    plans = [
        found
        for first in range(len(supplies))
        if _reaches(supplies[first:], need) and (found := _search(supplies, need, aim, first=first)) is not None
    ]
    return min(plans, key=lambda found: _rank(aim, sum(found), _surplus(supplies, need, found)), default=None)


def _reaches(supplies: Sequence[Supply], need: Need) -> bool:
    return sum(supply.gauge_divisions * supply.courses_count for supply in supplies) >= need.cover_divisions


def _makes_under_eaves(supplies: Sequence[Supply], need: Need, counts: Sequence[int]) -> bool:
    return need.under_eaves_run_mm(supplies, counts) >= need.course_run_mm - 1e-6


def _surplus(supplies: Sequence[Supply], need: Need, counts: Sequence[int]) -> int:
    reach = sum(supply.gauge_divisions * count for supply, count in zip(supplies, counts, strict=True))
    return reach - need.cover_divisions


def _rank(aim: Aim, courses: int, surplus: int) -> tuple[int, int]:
    match aim:
        case Aim.LEAST_LEFT:
            return -courses, surplus
        case Aim.FEWEST_COURSES:
            return courses, surplus
        case _ as unreachable:
            assert_never(unreachable)


def _search(supplies: Sequence[Supply], need: Need, aim: Aim, *, first: int | None) -> tuple[int, ...] | None:
    """All plans at once. With ``first``: those that begin with this length and hold back the under-eaves course."""
    start: Heights = {0: 1}
    caps = _caps(supplies, need, first)
    below: list[Heights] = []
    ending: list[Heights] = []
    best: _End | None = None
    unfinished = (1 << need.cover_divisions) - 1
    for index, supply in enumerate(supplies):
        under: Heights = dict(start) if first in (None, index) else {}
        for lower in range(index):
            if need.drop_allowed(supplies[lower], supply):
                _join(under, ending[lower])
        below.append(under)
        ending.append({})
        layer = under
        for _ in range(supply.courses_count):
            layer = {courses + 1: reached << supply.gauge_divisions for courses, reached in layer.items()}
            if (cap := caps[index]) is not None:
                layer = {courses: reached for courses, reached in layer.items() if courses <= cap}
            best = _better(aim, best, index, layer, need.cover_divisions)
            layer = {courses: left for courses, reached in layer.items() if (left := reached & unfinished)}
            if not layer:
                break
            _join(ending[index], layer)
    return None if best is None else _walk_back(supplies, need, best, below)


def _caps(supplies: Sequence[Supply], need: Need, first: int | None) -> list[int | None]:
    """The most courses allowed down to each length, so that one course of slates for the under-eaves stays whole."""
    if first is None:
        return [None] * len(supplies)
    least = need.under_eaves_divisions(supplies[first])
    held = [supply for supply in supplies if supply.length_divisions >= least]
    cap = int(sum(supply.run_mm for supply in held) / need.course_run_mm + 1e-9) - 1
    return [cap if supply.length_divisions >= least else None for supply in supplies]


def _join(into: Heights, more: Heights) -> None:
    for courses, reached in more.items():
        into[courses] = into.get(courses, 0) | reached


def _better(aim: Aim, best: _End | None, index: int, layer: Heights, cover: int) -> _End | None:
    for courses, reached in layer.items():
        past = reached >> cover
        if past:
            end = _End(last=index, courses=courses, surplus=(past & -past).bit_length() - 1)
            if best is None or _rank(aim, courses, end.surplus) < _rank(aim, best.courses, best.surplus):
                best = end
    return best


def _walk_back(supplies: Sequence[Supply], need: Need, end: _End, below: Sequence[Heights]) -> tuple[int, ...]:
    """The plan whose height and number of courses the search found: from the ridge down, length by length."""
    counts = [0] * len(supplies)
    index, courses, height = end.last, end.courses, need.cover_divisions + end.surplus
    while True:
        counts[index] = next(_ways(supplies[index], below[index], courses, height))
        courses -= counts[index]
        height -= counts[index] * supplies[index].gauge_divisions
        if courses == 0:
            return tuple(counts)
        index = next(
            lower
            for lower in range(index)
            if need.drop_allowed(supplies[lower], supplies[index])
            and any(_ways(supplies[lower], below[lower], courses, height))
        )


def _ways(supply: Supply, below: Heights, courses: int, height: int) -> Iterator[int]:
    """How many courses of this length can be the last ones up to this height, with what lies below them reached."""
    for count in range(1, supply.courses_count + 1):
        lower = height - count * supply.gauge_divisions
        if lower >= 0 and below.get(courses - count, 0) >> lower & 1:
            yield count
