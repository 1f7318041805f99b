"""Two results compared by their marks: what to strike out on the rod and what to strike instead.

Marks are told apart by their number, counted from the eaves (battens) or from the left (perps), as they are counted on the
roof. All are measured from the same datum in both results, the fascia face or the left end, so their places compare.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import zip_longest

from gaugerod.job.result import Result, SlopeResult
from gaugerod.setting_out.courses import Rod


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedMark:
    """A mark that is not where it was. ``number_count`` from 1; None in ``was_mm`` is a new mark, in ``is_mm`` one gone."""

    number_count: int
    was_mm: float | None
    is_mm: float | None

    @property
    def moved_mm(self) -> float | None:
        """How far it moved, up the slope or to the right; None for a mark that is new or gone."""
        return None if self.was_mm is None or self.is_mm is None else self.is_mm - self.was_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedLine:
    """A line of marks of which some moved: a rod, or the perps along the eaves or the top.

    ``at_mm``  where the rod stands now, from the left; None for perps
    ``line``   ``rod``, or which line of perps
    """

    line: str
    at_mm: float | None
    marks: tuple[MovedMark, ...]

    @property
    def furthest_mm(self) -> float:
        """The size of the greatest move; 0 when marks only came or went."""
        return max((abs(mark.moved_mm) for mark in self.marks if mark.moved_mm is not None), default=0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedSlope:
    """A slope set out in both results, with the lines of marks that moved."""

    name: str
    lines: tuple[MovedLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedMarks:
    """What is different on the roof. ``gone`` and ``new``: slopes set out in only one of the two results."""

    slopes: tuple[MovedSlope, ...]
    gone: tuple[str, ...]
    new: tuple[str, ...]

    @property
    def nothing_moved(self) -> bool:
        """Is every mark where it was?"""
        return not (self.slopes or self.gone or self.new)


def moved_marks(one: Result, other: Result) -> MovedMarks:
    """Which marks moved from the one result to the other, and by how much. Slopes are told apart by their names."""
    was = {slope.slope.name: slope for slope in one.slopes}
    now = {slope.slope.name: slope for slope in other.slopes}
    moved = (
        MovedSlope(name=name, lines=(*_rods(was[name], now[name]), *_perps(was[name], now[name])))
        for name in was
        if name in now
    )
    return MovedMarks(
        slopes=tuple(slope for slope in moved if slope.lines),
        gone=tuple(name for name in was if name not in now),
        new=tuple(name for name in now if name not in was),
    )


def _rods(was: SlopeResult, now: SlopeResult) -> Iterator[MovedLine]:
    for old, new in _rods_met(was.courses.rods, now.courses.rods):
        rod = new or old
        marks = _marks(old.marks_mm if old else (), new.marks_mm if new else ())
        if rod is not None and marks:
            yield MovedLine(line="rod", at_mm=rod.at_mm, marks=marks)


def _rods_met(was: Sequence[Rod], now: Sequence[Rod]) -> Iterator[tuple[Rod | None, Rod | None]]:
    """The rods of both results in pairs: left to right when there are as many, otherwise by their place."""
    if len(was) == len(now):
        yield from zip(was, now, strict=True)
        return
    old, new = ({rod.at_mm: rod for rod in rods} for rods in (was, now))
    for at_mm in sorted({*old, *new}):
        yield old.get(at_mm), new.get(at_mm)


def _perps(was: SlopeResult, now: SlopeResult) -> Iterator[MovedLine]:
    old, new = (
        {line.line: line.marks_mm for line in slope.across.perp_lines} if slope.across is not None else {}
        for slope in (was, now)
    )
    for name in dict.fromkeys([*old, *new]):
        marks = _marks(old.get(name, ()), new.get(name, ()))
        if marks:
            yield MovedLine(line=name, at_mm=None, marks=marks)


def _marks(was_mm: tuple[float, ...], now_mm: tuple[float, ...]) -> tuple[MovedMark, ...]:
    """Marks are whole divisions, so the same mark is the same number to the last bit."""
    pairs = enumerate(zip_longest(was_mm, now_mm), start=1)
    return tuple(MovedMark(number_count=number, was_mm=was, is_mm=now) for number, (was, now) in pairs if was != now)
