"""From what a unit needs at the least to what is driven, clipped and bought for it."""

from collections.abc import Collection
from typing import NamedTuple

from gaugerod.laying.ask import EdgeKind
from gaugerod.rules.fixings import LeastFixing

NUMBERS = ("no", "one", "two", "three", "four", "five", "six")
WORDS = (
    ("nail", "nails"),
    ("tail clip", "tail clips"),
    ("eaves clip", "eaves clips"),
    ("verge clip", "verge clips"),
    ("hook", "hooks"),
    ("bond to the neighbour", "bonds to the neighbour"),
    ("nail or clip", "nails or clips"),
)
"""Each kind of fixing in the order of ``Held``: one, several."""


class Held(NamedTuple):
    """What holds one unit. ``either_count``: fixings of any kind, nail, clip or adhesive, as the maker says.

    Eaves and verge clips are told from the tail clips of the field, for they are made differently.
    """

    nails_count: int = 0
    tail_clips_count: int = 0
    eaves_clips_count: int = 0
    verge_clips_count: int = 0
    hooks_count: int = 0
    bonds_count: int = 0
    either_count: int = 0

    @property
    def in_all_count(self) -> int:
        """How many fixings."""
        return sum(self)

    @property
    def clips_count(self) -> int:
        """Clips of every kind."""
        return self.tail_clips_count + self.eaves_clips_count + self.verge_clips_count

    def __str__(self) -> str:
        """In words.

        >>> print(Held(nails_count=2)); print(Held(nails_count=1, verge_clips_count=1)); print(Held())
        two nails
        one nail, one verge clip
        hung on its nibs, not fixed
        """
        said = [_counted(count, *words) for count, words in zip(self, WORDS, strict=True) if count]
        return ", ".join(said) or "hung on its nibs, not fixed"


def held(least: LeastFixing, *, holes_count: int | None, why: Collection[EdgeKind]) -> Held:
    """How a unit is held: the nails, tail clips and hooks it must have, and what is left to choose.

    That is nails while there are holes for them, then clips: at eaves and verge those made for there. Where the holes
    are not known it is left open. ``holes_count``: of the unit, as many as wanted where it is holed on site.

    >>> perimeter = LeastFixing(nails_count=1, fixings_count=2)
    >>> print(held(perimeter, holes_count=2, why=(EdgeKind.VERGE,)))
    two nails
    >>> print(held(perimeter, holes_count=1, why=(EdgeKind.VERGE,)))
    one nail, one verge clip
    >>> print(held(perimeter, holes_count=None, why=(EdgeKind.VERGE,)))
    one nail, one nail or clip
    """
    nails, clips, hooks = least.nails_count, least.clips_count, least.hooks_count
    left = least.in_all_count - nails - clips - hooks
    eaves = verge = either = 0
    if holes_count is None:
        either = left
    else:
        more = min(left, max(holes_count - nails, 0))
        nails, left = nails + more, left - more
        if EdgeKind.EAVES in why:
            eaves = left
        elif EdgeKind.VERGE in why:
            verge = left
        else:
            clips += left
    return Held(nails, clips, eaves, verge, hooks, 0, either)


BONDED_AND_CLIPPED = Held(tail_clips_count=1, bonds_count=1)
"""A piece under half, or one with neither nib nor hole left: bonded to its neighbour, and clipped."""


def _counted(count: int, one: str, several: str) -> str:
    number = NUMBERS[count] if count < len(NUMBERS) else str(count)
    return f"{number} {one if count == 1 else several}"
