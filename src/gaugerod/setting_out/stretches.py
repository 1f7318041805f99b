"""The stretches of course beside openings: from one side of an opening to what stands next to it at its height.

A stretch narrower than one unit has no perp in it: each of its courses is one unit cut to the stretch, wherever the
perps of the slope fall. Every other stretch follows the perps.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from gaugerod.basis.finding import TOUCH
from gaugerod.setting_out.across import AcrossAsk, CourseEnd, Side, SideKind
from gaugerod.setting_out.stations import Opening


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """The course from one side of ``opening`` to ``beside``: a side of the slope, or another opening.

    ``end``     which end of the course the opening stops: its right end, left of the opening
    ``run_mm``  from the opening to the end of the roof structure, or to the opening beside it
    """

    opening: Opening
    beside: Side | Opening
    end: CourseEnd
    run_mm: float

    @property
    def at(self) -> str:
        """The side of the opening, by name."""
        return f"{self.opening.name} {'left' if self.end is CourseEnd.RIGHT else 'right'}"

    @property
    def at_mm(self) -> float:
        """The side of the opening, along x."""
        return self.opening.from_left_mm if self.end is CourseEnd.RIGHT else self.opening.right_mm

    @property
    def beside_name(self) -> str:
        """What stands next to the opening, by name."""
        if isinstance(self.beside, Opening):
            return self.beside.name
        return f"the {'left' if self.end is CourseEnd.RIGHT else 'right'} {self.beside.kind.value}"

    @property
    def least_mm(self) -> float:
        """The least width the covering may have here."""
        return self.run_mm + (0.0 if isinstance(self.beside, Opening) else self.beside.reach.least_mm)

    @property
    def beside_all_of_it(self) -> bool:
        """Does what stands beside the opening stand there over its whole height?"""
        if isinstance(self.beside, Side):
            return True
        return self.beside.up_slope_mm <= self.opening.up_slope_mm and self.beside.head_mm >= self.opening.head_mm

    def one_unit(self, unit_width_mm: float) -> bool:
        """Is it covered by one unit alone? Never towards a hip or valley, where the width differs in every course."""
        if isinstance(self.beside, Side) and self.beside.kind in {SideKind.HIP, SideKind.VALLEY}:
            return False
        return self.least_mm < unit_width_mm - TOUCH

    def roomy(self, *, unit_width_mm: float, cover_open_mm: float) -> bool:
        """Has it three units, so that a narrow piece at one end never needs the unit at the other?"""
        return self.least_mm >= unit_width_mm + 2 * cover_open_mm


def stretches(ask: AcrossAsk) -> tuple[Stretch, ...]:
    """Left and right of every opening, openings from the left."""
    ordered = sorted(ask.openings, key=lambda each: (each.from_left_mm, each.up_slope_mm))
    return tuple(stretch for opening in ordered for stretch in (_left_of(ask, opening), _right_of(ask, opening)))


def one_unit_stretches(ask: AcrossAsk) -> Iterator[Stretch]:
    """The stretches one unit covers, each once: one between two openings is told at the left one."""
    found = [stretch for stretch in stretches(ask) if stretch.one_unit(ask.unit_width_mm)]
    for stretch in found:
        told = any(
            other.opening is stretch.beside and other.beside is stretch.opening and other.end is CourseEnd.LEFT
            for other in found
        )
        if not told:
            yield stretch


def _left_of(ask: AcrossAsk, opening: Opening) -> Stretch:
    beside = max(
        (each for each in _at_its_height(ask, opening) if each.right_mm <= opening.from_left_mm + TOUCH),
        key=lambda each: each.right_mm,
        default=None,
    )
    side, side_mm = _side_beside(ask, opening, CourseEnd.LEFT)
    if beside is not None and beside.right_mm >= side_mm:
        return Stretch(
            opening=opening, beside=beside, end=CourseEnd.RIGHT, run_mm=opening.from_left_mm - beside.right_mm
        )
    return Stretch(opening=opening, beside=side, end=CourseEnd.RIGHT, run_mm=opening.from_left_mm - side_mm)


def _right_of(ask: AcrossAsk, opening: Opening) -> Stretch:
    beside = min(
        (each for each in _at_its_height(ask, opening) if each.from_left_mm >= opening.right_mm - TOUCH),
        key=lambda each: each.from_left_mm,
        default=None,
    )
    side, side_mm = _side_beside(ask, opening, CourseEnd.RIGHT)
    if beside is not None and beside.from_left_mm <= side_mm:
        return Stretch(
            opening=opening, beside=beside, end=CourseEnd.LEFT, run_mm=beside.from_left_mm - opening.right_mm
        )
    return Stretch(opening=opening, beside=side, end=CourseEnd.LEFT, run_mm=side_mm - opening.right_mm)


def _side_beside(ask: AcrossAsk, opening: Opening, end: CourseEnd) -> tuple[Side, float]:
    """The side of the slope next to the opening, left or right of it, among those that stand at its height."""
    on_left = end is CourseEnd.LEFT
    main = (ask.left, 0.0, ask.left_high_mm) if on_left else (ask.right, ask.eaves_width_mm, ask.right_high_mm)
    sides = [(main[0], main[1])] if opening.up_slope_mm < main[2] - TOUCH else []
    sides += [
        (edge.side, edge.at_mm)
        for edge in ask.upper
        if edge.end is end and edge.low_mm < opening.head_mm - TOUCH and edge.high_mm > opening.up_slope_mm + TOUCH
    ]
    if on_left:
        beside = [each for each in sides if each[1] <= opening.from_left_mm + TOUCH]
        return max(beside, key=lambda each: each[1], default=main[:2])
    beside = [each for each in sides if each[1] >= opening.right_mm - TOUCH]
    return min(beside, key=lambda each: each[1], default=main[:2])


def _at_its_height(ask: AcrossAsk, opening: Opening) -> Iterator[Opening]:
    for each in ask.openings:
        if each is not opening and each.up_slope_mm < opening.head_mm and each.head_mm > opening.up_slope_mm:
            yield each
