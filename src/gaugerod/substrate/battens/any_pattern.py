"""Is there any repeating pattern at all for battens alike? Exact for any number of pieces, by a sweep over the rafters.

Of any so many consecutive battens no two may be joined on the same rafter. If any such plan exists for battens alike, its
first courses repeated are one too: so when this finds none, there is none.
"""

from gaugerod.substrate.battens.ways import Ways

Joints = tuple[int, ...]


def any_pattern(ways: Ways, *, repeat_count: int) -> tuple[Joints, ...] | None:
    """The joints of so many courses, no two joined on the same rafter; None where there are none.

    From left to right each rafter is given to one of the courses or to none. What matters of the courses so far is
    only where each was joined last, whichever course it is.
    """
    ends = [dict(steps) for steps in ways.steps]
    furthest = [max(steps, default=0) for steps in ends]
    reached: dict[Joints, tuple[Joints, ...]] = {(0,) * repeat_count: ((),) * repeat_count}
    for place in range(1, ways.last):
        onward: dict[Joints, tuple[Joints, ...]] = {}
        for lasts, joints in reached.items():
            onward.setdefault(lasts, joints)
            for course, last in enumerate(lasts):
                if place in ends[last] and (course == 0 or lasts[course - 1] != last):
                    moved = sorted(
                        ((place, (*joints[at], place)) if at == course else (lasts[at], joints[at]))
                        for at in range(repeat_count)
                    )
                    onward.setdefault(tuple(at for at, _ in moved), tuple(each for _, each in moved))
        reached = {lasts: joints for lasts, joints in onward.items() if all(furthest[last] > place for last in lasts)}
    return next((joints for lasts, joints in reached.items() if all(ways.last in ends[last] for last in lasts)), None)


def places_that_can_be_joined(ways: Ways) -> list[int]:
    """Every place that is a joint in some way of making up the stretch, whatever the battens below it."""
    from_left = {0}
    for start, steps in enumerate(ways.steps):
        if start in from_left:
            from_left.update(end for end, _ in steps)
    to_right = {ways.last}
    for start in range(ways.last - 1, -1, -1):
        if any(end in to_right for end, _ in ways.steps[start]):
            to_right.add(start)
    return sorted((from_left & to_right) - {0, ways.last})
