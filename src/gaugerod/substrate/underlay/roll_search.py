"""The fewest rolls, and among those the fewest side laps: every way of filling a roll is tried, best first.

Each new joint costs one side lap and nothing else, since a piece ends at the far edge of a rafter and the next starts a side
lap before it. So fewest rolls, then fewest joints, is the least waste. Rolls are alike, so the longest part left
may be said to have a piece in the roll being filled; a roll may not waste more than all rolls together can spare.
"""

from collections.abc import Iterator, Sequence
from dataclasses import KW_ONLY, dataclass, field

from gaugerod.substrate.underlay.roll_pieces import (
    Part,
    joints_needed,
    part_length_mm,
    pieces_of,
    total_length_mm,
)
from gaugerod.substrate.underlay.run_on import Rolls, run_on

STEPS_COUNT = 5_000
"""Tries before a question is left open: a fraction of a second. Then the plan found is given as not proven (house)."""
QUESTIONS_LEFT_OPEN_COUNT = 4
"""With so many rolls no more numbers of joints are tried after this many were left open (house)."""


@dataclass(frozen=True, slots=True)
class Found:
    """The pieces by roll. ``rolls_proven`` and ``joints_proven``: can there be no fewer?"""

    rolls: Rolls
    _: KW_ONLY
    rolls_proven: bool
    joints_proven: bool


class _Spent(Exception):  # noqa: N818  a signal of the search to itself
    """The steps of one question are used up."""


def fewest_rolls(parts: Sequence[Part], *, roll_mm: int) -> Found | None:
    """The parts cut from the fewest rolls with the fewest joints; None when some part cannot be made of such rolls."""
    if any(joints_needed(part, roll_mm) is None for part in parts):
        return None
    ordered = tuple(sorted(parts, key=_longest_first))
    known = min((run_on(order, roll_mm=roll_mm) for order in (tuple(parts), ordered)), key=_waste)
    rolls_proven = True
    for rolls_count in range(-(-total_length_mm(ordered) // roll_mm), len(known)):
        rolls, settled = _with_rolls(ordered, rolls_count, roll_mm=roll_mm, below_count=None)
        if rolls is not None:
            return Found(rolls, rolls_proven=rolls_proven, joints_proven=settled)
        rolls_proven = rolls_proven and settled
    fewer, settled = _with_rolls(ordered, len(known), roll_mm=roll_mm, below_count=_joints_count(known, ordered))
    return Found(known if fewer is None else fewer, rolls_proven=rolls_proven, joints_proven=settled)


def _waste(rolls: Rolls) -> tuple[int, int]:
    return len(rolls), sum(map(len, rolls))


def _joints_count(rolls: Rolls, parts: Sequence[Part]) -> int:
    return sum(map(len, rolls)) - len(parts)


def _with_rolls(
    parts: tuple[Part, ...], rolls_count: int, *, roll_mm: int, below_count: int | None
) -> tuple[Rolls | None, bool]:
    """The plan with the fewest joints in so many rolls, fewer than ``below_count``, and whether every question was settled."""
    side_lap_mm = max((part[0].side_lap_mm for part in parts), default=1)
    spare_mm = rolls_count * roll_mm - total_length_mm(parts)
    needed_count = sum(joints_needed(part, roll_mm) or 0 for part in parts)
    most_count = min(spare_mm // side_lap_mm, sum(len(part[0].places_mm) for part in parts))
    above_count = most_count + 1 if below_count is None else min(most_count + 1, below_count)
    left_open = 0
    for joints_count in range(needed_count, above_count):
        try:
            rolls = _Search(roll_mm).rolls(parts, rolls_count, joints_count)
        except _Spent:
            left_open += 1
            if left_open == QUESTIONS_LEFT_OPEN_COUNT:
                break
            continue
        if rolls is not None:
            return rolls, not left_open
    return None, not left_open


def _longest_first(part: Part) -> tuple[int, Part]:
    return -part_length_mm(part), part


@dataclass(slots=True)
class _Search:
    """One question: do these parts go into so many rolls with so many joints?"""

    roll_mm: int
    steps_count: int = 0
    dead: set[tuple[tuple[Part, ...], int, int]] = field(default_factory=set)

    def rolls(self, parts: tuple[Part, ...], rolls_count: int, joints_count: int) -> Rolls | None:
        """The pieces of each roll, or None when there is no such way."""
        if not parts:
            return ()
        key = (parts, rolls_count, joints_count)
        spare_mm = self._spare_mm(parts, rolls_count, joints_count)
        if spare_mm < 0 or key in self.dead:
            return None
        for pieces, left, joints in self._fillings(parts, joints_count, spare_mm=spare_mm):
            rest = self.rolls(tuple(sorted(left, key=_longest_first)), rolls_count - 1, joints_count - joints)
            if rest is not None:
                return (pieces, *rest)
        self.dead.add(key)
        return None

    def _spare_mm(self, parts: tuple[Part, ...], rolls_count: int, joints_count: int) -> int:
        """What the rolls hold over the parts and the joints these cannot do without; below nothing where they hold too little."""
        spare_mm = rolls_count * self.roll_mm - total_length_mm(parts)
        for part in parts:
            if part_length_mm(part) <= self.roll_mm:
                break
            needed_count = joints_needed(part, self.roll_mm)
            if needed_count is None or needed_count > joints_count:
                return -1
            joints_count -= needed_count
            spare_mm -= needed_count * part[0].side_lap_mm
        return spare_mm

    def _fillings(
        self, parts: tuple[Part, ...], joints_count: int, *, spare_mm: int
    ) -> Iterator[tuple[tuple[Part, ...], tuple[Part, ...], int]]:
        """Every way to fill one roll with a piece of the longest part and of others: pieces, what is left, joints."""
        for taken in pieces_of(parts[0], room_mm=self.roll_mm, joints_count=joints_count):
            self._step()
            room_mm = self.roll_mm - part_length_mm(taken.piece)
            others = self._others(parts[1:], room_mm, joints_count - taken.joints_count, spare_mm=spare_mm)
            for pieces, left, joints in others:
                yield (taken.piece, *pieces), (*taken.left, *left), taken.joints_count + joints

    def _others(
        self, parts: tuple[Part, ...], room_mm: int, joints_count: int, *, spare_mm: int
    ) -> Iterator[tuple[tuple[Part, ...], tuple[Part, ...], int]]:
        for at, part in enumerate(parts):
            if at and part == parts[at - 1]:
                continue
            for taken in pieces_of(part, room_mm=room_mm, joints_count=joints_count):
                self._step()
                fewer = joints_count - taken.joints_count
                rest_mm = room_mm - part_length_mm(taken.piece)
                for pieces, left, joints in self._others(parts[at + 1 :], rest_mm, fewer, spare_mm=spare_mm):
                    joined = (*parts[:at], *taken.left, *left)
                    yield (taken.piece, *pieces), joined, taken.joints_count + joints
        if room_mm <= spare_mm:
            yield (), parts, 0

    def _step(self) -> None:
        self.steps_count += 1
        if self.steps_count > STEPS_COUNT:
            raise _Spent
