"""Rolls used as they come: each laid to its end, and the next carries on from there."""

from collections.abc import Sequence

from gaugerod.substrate.underlay.roll_pieces import Part, joints_needed, part_length_mm, pieces_of

Rolls = tuple[tuple[Part, ...], ...]
"""The pieces of each roll."""


def run_on(parts: Sequence[Part], *, roll_mm: int) -> Rolls:
    """The parts in the order given. Where the rest of a roll makes no piece worth laying, a new roll is begun.

    Scope: every part can be made of pieces no longer than a roll.
    """
    rolls: list[list[Part]] = [[]]
    room_mm = roll_mm
    waiting = list(reversed(parts))
    while waiting:
        part = waiting.pop()
        pieces = pieces_of(part, room_mm=room_mm, joints_count=1)
        taken = next(
            (each for each in pieces if all(joints_needed(rest, roll_mm) is not None for rest in each.left)), None
        )
        if taken is None:
            waiting.append(part)
            rolls.append([])
            room_mm = roll_mm
            continue
        rolls[-1].append(taken.piece)
        room_mm -= part_length_mm(taken.piece)
        waiting.extend(taken.left)
    return tuple(map(tuple, rolls))
