"""Does an outline walked wall by wall close? By how much it misses, and which walls to measure again."""

from gaugerod.basis.finding import Finding, Sense, not_covered
from gaugerod.geometry.tape_contradictions import MISFIT_CITATION, MISFIT_MM
from gaugerod.geometry.walked_outline import WalkedOutline

_NEARLY_ALONG = 0.9
"""Cosine of the angle within which a wall runs the way that the walk misses (house choice, some 26°)."""


def closing_finding(walk: WalkedOutline, *, where: str) -> Finding:
    """How far the walk ends from its first corner, held against what tape figures should agree to.

    Not covered where lengths were found by closing and nothing measured is left to check them by.
    Source: setting of this program, as for tape figures.

    >>> from gaugerod.geometry.walked_outline import WalkedWall, walk_outline
    >>> sides = [WalkedWall(length_mm=long_mm, turn_deg=90.0) for long_mm in (9000.0, 6000.0, 9000.0, 5960.0)]
    >>> closing_finding(walk_outline(sides), where="house").says[:98]
    'Walked round, the outline ends 40.0 mm from its first corner. Measure again first: wall 2, wall 4.'
    """
    error_mm = walk.closing_error_mm
    if not walk.checked:
        return not_covered(
            rule="outline closes", where=where, proposed=None, unit="mm", citation=MISFIT_CITATION,
            says=f"The outline closes by itself: {_found(walk)}. Nothing measured is left to check it by; measure every "
            "wall to know that it closes.",
        )  # fmt: skip
    if error_mm <= MISFIT_MM:
        says = f"Walked round, the outline closes to {error_mm:.1f} mm."
        if walk.found:
            says += f" By closing: {_found(walk)}."
    else:
        says = (
            f"Walked round, the outline ends {error_mm:.1f} mm from its first corner.{_suspects(walk)} "
            f"Until then the last wall is drawn straight to the first corner, {walk.walls_mm[-1]:.1f} mm long."
        )
    return Finding(
        rule="outline closes", where=where, proposed=error_mm, limit=MISFIT_MM, unit="mm", sense=Sense.AT_MOST,
        citation=MISFIT_CITATION, says=says,
    )  # fmt: skip


def _found(walk: WalkedOutline) -> str:
    walls = walk.found or (len(walk.walls_mm) - 1,)
    return ", ".join(f"wall {at + 1} is {walk.walls_mm[at]:.1f} mm" for at in walls)


def _suspects(walk: WalkedOutline) -> str:
    """The walls that run the way the walk misses, as far as they were measured.

    A walk that misses by more than its shortest wall was hardly measured wrong: a turn is (house choice).
    """
    missed_x, missed_y = walk.missed_mm
    named = []
    for at, (x, y) in enumerate(walk.corners_mm):
        to_x, to_y = walk.corners_mm[(at + 1) % len(walk.corners_mm)]
        along = ((to_x - x) * missed_x + (to_y - y) * missed_y) / (walk.closing_error_mm * (walk.walls_mm[at] or 1.0))
        if at not in walk.found and not -_NEARLY_ALONG < along < _NEARLY_ALONG:
            named.append(f"wall {at + 1}")
    turns = " Look at the turns first: one may be the wrong way." if walk.closing_error_mm > min(walk.walls_mm) else ""
    return turns + (f" Measure again first: {', '.join(named)}." if named else " Measure the walls again.")
