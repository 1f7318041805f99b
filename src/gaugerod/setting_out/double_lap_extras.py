"""What double lap adds to the courses: the course under the eaves, the short course at the top, nail holes, laps."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class ShortCourse:
    """The course between the top full course and the ridge: tops tiles, or slates cut at the head.

    ``mark_mm``    batten top edge or nail line, up from the fascia face
    ``length_mm``  of its units
    ``above_mm``   its mark above the mark of the top full course
    """

    mark_mm: float
    tail_mm: float
    length_mm: float
    above_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class DoubleLapRod:
    """What double lap adds to one rod. ``laps_mm``: each course over the second below, eaves to ridge.

    The first lap is that of the second course over the under-eaves course. The last is that of the ridge, when it is
    known how far it reaches.
    """

    at_mm: float
    tails_mm: tuple[float, ...]
    under_eaves_mark_mm: float
    short: ShortCourse | None
    laps_mm: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DoubleLapExtras:
    """What double lap adds to the courses.

    ``marks_are``               what a mark is: ``top edge of batten`` or ``nail line``
    ``under_eaves_length_mm``   of the tiles or slates under the first course
    ``holing_mm``               tail to nail hole of slates; None for tiles
    ``greatest_headlap_mm``     the greatest lap of one full course over another
    """

    marks_are: str
    under_eaves_length_mm: float
    holing_mm: float | None
    greatest_headlap_mm: float
    rods: tuple[DoubleLapRod, ...]
