"""Numbers and letters beside lines across a slope: as many as stand clear of each other."""

from collections.abc import Sequence

from gaugerod.sheets.drawing import Anchor, Letter, Point, Words

LEAST_SIZE_MM = 1.6
"""Letters no smaller than this on paper."""
_ROOM_RATIO = 1.1
_STEPS = (1, 5, 10, 20, 50)


def size_between_mm(gap_mm: float, *, scale_ratio: float, greatest_mm: float) -> float:
    """The size of letters that stand on lines so far apart, no smaller than can be read. mm."""
    return min(greatest_mm, max(LEAST_SIZE_MM, gap_mm / scale_ratio / _ROOM_RATIO))


def shown_of(places_mm: Sequence[float], *, size_mm: float, scale_ratio: float) -> tuple[int, ...]:
    """Which of these lines are numbered: the first, the last, and every one, fifth, tenth … that stands clear of them.

    >>> shown_of([0.0, 100.0, 200.0, 300.0, 400.0, 500.0, 600.0], size_mm=2.0, scale_ratio=100.0)
    (0, 4, 6)
    """
    last, room_mm = len(places_mm) - 1, _ROOM_RATIO * size_mm * scale_ratio
    if last < 1:
        return tuple(range(len(places_mm)))
    gap_mm = (places_mm[last] - places_mm[0]) / last
    every = next((step for step in _STEPS if step * gap_mm >= room_mm), len(places_mm))
    # Lines that stand a little nearer than the mean are still told apart.
    least_mm = 0.9 * room_mm
    kept = [0]
    for index in range(every - 1, last, every):
        if places_mm[index] - places_mm[kept[-1]] >= least_mm and places_mm[last] - places_mm[index] >= least_mm:
            kept.append(index)
    return (*kept, last) if places_mm[last] - places_mm[kept[-1]] >= least_mm else tuple(kept)


def beside(at_mm: Point, text: str, *, size_mm: float, off_mm: float = 1.0, letter: Letter = Letter.NAME) -> Words:
    """A number or letter at the left of a point, level with it."""
    return Words(
        at_mm=at_mm,
        text=text,
        letter=letter,
        size_paper_mm=size_mm,
        anchor=Anchor.END,
        shift_paper_mm=(-off_mm, -0.36 * size_mm),
    )
