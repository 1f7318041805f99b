"""How far the fronts may rise before their lines must be joined anew."""

from collections.abc import Sequence
from math import inf

from gaugerod.geometry.wavefront.corner import Corner, Loop
from gaugerod.geometry.wavefront.front import Front

_STANDS_STILL = 1e-12
"""Run per rise below which two lines neither near nor part."""

# One side as the search reads it: its end corners, its inward normal, its place and run along that normal, and the
# places and runs of its two ends along the side.
_Moving = tuple[Corner, Corner, float, float, float, float, float, float, float, float]


def rise_to_next_event_mm(
    loops: Sequence[Loop], fronts: Sequence[Front], *, height_mm: float, tolerance_mm: float
) -> float:
    """The rise from this height to the next event; infinite when the fronts never meet again."""
    sides = [_moving_side(loop[at - 1], loop[at], fronts, height_mm) for loop in loops for at in range(len(loop))]
    rise_mm = inf
    for side in sides:
        rise_mm = min(rise_mm, _rise_until_gone_mm(side))
    for loop in loops:
        for corner in loop:
            if _is_inner(fronts[corner.before], fronts[corner.after]):
                rise_mm = _rise_until_hit_mm(
                    corner, sides, height_mm=height_mm, tolerance_mm=tolerance_mm, best_mm=rise_mm
                )
    for front in {corner.after for loop in loops for corner in loop}:
        rise_mm = min(rise_mm, fronts[front].until_mm - height_mm)
    return rise_mm


def _moving_side(start: Corner, end: Corner, fronts: Sequence[Front], height_mm: float) -> _Moving:
    front = fronts[start.after]
    nx, ny = front.inward
    start_rise, end_rise = height_mm - start.height_mm, height_mm - end.height_mm
    start_run = start.run_x_ratio * ny - start.run_y_ratio * nx
    end_run = end.run_x_ratio * ny - end.run_y_ratio * nx
    return (
        start, end, nx, ny, front.start_mm + front.run_ratio * height_mm, front.run_ratio,
        start.x_mm * ny - start.y_mm * nx + start_run * start_rise, start_run,
        end.x_mm * ny - end.y_mm * nx + end_run * end_rise, end_run,
    )  # fmt: skip


def _rise_until_gone_mm(side: _Moving) -> float:
    """The rise at which a side has shrunk to nothing."""
    *_, start_mm, start_run, end_mm, end_run = side
    growth = end_run - start_run
    if growth >= -_STANDS_STILL:
        return inf
    return max((start_mm - end_mm) / growth, 0.0)  # a side within the tolerance of nothing is gone now


def _is_inner(before: Front, after: Front) -> bool:
    """Does the line turn outwards here, so that the corner may run into another side?"""
    return before.inward[0] * after.inward[1] - before.inward[1] * after.inward[0] < -_STANDS_STILL


def _rise_until_hit_mm(
    corner: Corner, sides: Sequence[_Moving], *, height_mm: float, tolerance_mm: float, best_mm: float
) -> float:
    """The rise at which an inner corner runs into a side that is not its own, if that is before the best so far."""
    run_x, run_y = corner.run_x_ratio, corner.run_y_ratio
    x_mm = corner.x_mm + run_x * (height_mm - corner.height_mm)
    y_mm = corner.y_mm + run_y * (height_mm - corner.height_mm)
    for start, end, nx, ny, place_mm, run, start_mm, start_run, end_mm, end_run in sides:
        nearing = run - nx * run_x - ny * run_y
        if nearing <= _STANDS_STILL:
            continue
        gap_mm = nx * x_mm + ny * y_mm - place_mm
        if gap_mm < -tolerance_mm or gap_mm >= best_mm * nearing or start is corner or end is corner:
            continue
        rise_mm = max(gap_mm / nearing, 0.0)
        along_mm = x_mm * ny - y_mm * nx + (run_x * ny - run_y * nx) * rise_mm
        if start_mm + start_run * rise_mm - tolerance_mm <= along_mm <= end_mm + end_run * rise_mm + tolerance_mm:
            best_mm = rise_mm
    return best_mm
