"""The battens as they will lie: every line with its ends, joints, pieces and the letter of its pattern."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from gaugerod.geometry.polygon import Point
from gaugerod.substrate.battens.answer import BattenLine, Stretch
from gaugerod.substrate.battens.course_by_course import CourseJoints
from gaugerod.substrate.battens.lines import Span, height_mm
from gaugerod.substrate.battens.planned import Ground
from gaugerod.substrate.battens.ways import Ways, supports_up_to


def lines_of(ground: Ground, joints: Sequence[CourseJoints]) -> tuple[BattenLine, ...]:
    """Every batten from the eaves up, lettered in the order in which their joints first appear."""
    letters: dict[tuple[int, ...], str] = {}
    lines = []
    for course, places in zip(ground.courses, joints, strict=True):
        mark, spans = ground.slope.marks[course.number], ground.spans[course.number]
        stretches = tuple(
            _stretch(ground, mark.at_mm, span, ways, each)
            for span, ways, each in zip(spans, course.stretches, places, strict=True)
        )
        joined = tuple(joint for stretch in stretches for joint in stretch.joints)
        letter = letters.setdefault(joined, letter_of(len(letters))) if joined else ""
        lines.append(BattenLine(name=mark.name, letter=letter, stretches=stretches))
    return tuple(lines)


def _stretch(ground: Ground, line: Sequence[Point], span: Span, ways: Ways, places: tuple[int, ...]) -> Stretch:
    crossed = ways.rafters[1:-1]
    joints = tuple(ways.rafters[place] for place in places)
    places_mm = [span.left.at_mm, *(ground.rafters_mm[rafter] for rafter in crossed), span.right.at_mm]
    under = supports_up_to(span, places_mm, ground.rafters_mm, ground.rules)
    cuts = (0, *places, ways.last)
    ends = (span.left, span.right)
    return Stretch(
        ends_mm=(_on(line, ends[0].at_mm), _on(line, ends[1].at_mm)),
        stops_at=(ends[0].kind, ends[1].kind),
        joints=tuple(rafter + 1 for rafter in joints),
        joints_mm=tuple(_on(line, ground.rafters_mm[rafter]) for rafter in joints),
        pieces_mm=ways.pieces_mm(places),
        supports=tuple(under[end] - (under[start - 1] if start else 0) for start, end in pairwise(cuts)),
        crossed=tuple(rafter + 1 for rafter in crossed),
    )


def _on(line: Sequence[Point], at_mm: float) -> Point:
    return at_mm, height_mm(line, at_mm)


def letter_of(number: int) -> str:
    """A, B … Z, AA, AB …

    >>> [letter_of(number) for number in (0, 25, 26, 27, 702)]
    ['A', 'Z', 'AA', 'AB', 'AAA']
    """
    letters = ""
    number += 1
    while number:
        number, rest = divmod(number - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters


def joined_by_rafter(lines: Sequence[BattenLine], *, rafters_count: int) -> Iterator[list[bool]]:
    """For each rafter: whether each batten that crosses it is joined there, from the eaves up."""
    for rafter in range(1, rafters_count + 1):
        yield [
            any(rafter in stretch.joints for stretch in line.stretches)
            for line in lines
            if any(rafter in stretch.crossed for stretch in line.stretches)
        ]


def repeats_every(lines: Sequence[BattenLine], *, most_count: int) -> int | None:
    """After how many courses the letters repeat, where every batten is one stretch and they do; the fewest such."""
    if any(len(line.stretches) != 1 or line.stretches[0].pieces_mm == () for line in lines):
        return None
    kinds = [line.stretches[0].pieces_mm for line in lines]
    return next(
        (
            every
            for every in range(1, most_count + 1)
            if all(kinds[at] == kinds[at - every] for at in range(every, len(kinds)))
        ),
        None,
    )
