"""Where each unit of a run goes: the cover of every one in the order they are laid, and the joints as marks from one end.

Source: cut units are kept off the gable end (a national housebuilder's site standard, published); that a ridge has them in the
middle, and a hip below the last unit at its head, is chosen here. Scope: runs of ``edges.unit_run``; lengths along the line, mm.
"""

from fractions import Fraction

from gaugerod.edges.answer import UnitRun
from gaugerod.edges.ask import LineKind

_BOTH_ENDS = 2


def unit_covers_mm(run: UnitRun, *, kind: LineKind) -> tuple[float, ...]:
    """What each unit covers, from the foot of a hip, or the end of a ridge that is started at.

    With fewer than two whole units a cut one stands at an end: ``rules.ridge_units.cuts_off_the_gable`` says so.

    >>> run = UnitRun(units_count=6, whole_count=4, cut_mm=(300.0, 300.0), cover_mm=430.0, length_mm=2320.0)
    >>> unit_covers_mm(run, kind=LineKind.RIDGE)
    (430.0, 430.0, 300.0, 300.0, 430.0, 430.0)
    >>> unit_covers_mm(run, kind=LineKind.HIP)
    (430.0, 430.0, 430.0, 300.0, 300.0, 430.0)
    >>> one = UnitRun(units_count=2, whole_count=1, cut_mm=(300.0,), cover_mm=430.0, length_mm=730.0)
    >>> unit_covers_mm(one, kind=LineKind.HIP), unit_covers_mm(one, kind=LineKind.RIDGE)
    ((430.0, 300.0), (430.0, 300.0))
    """
    if run.whole_count < _BOTH_ENDS:
        before = run.whole_count
    elif kind is LineKind.HIP:
        before = run.whole_count - 1
    else:
        before = (run.whole_count + 1) // 2
    whole = (run.cover_mm,)
    return (*whole * before, *run.cut_mm, *whole * (run.whole_count - before))


def joint_marks_mm(run: UnitRun, *, kind: LineKind) -> tuple[float, ...]:
    """Where each unit ends, from where the first begins: the last is the end of the line.

    >>> run = UnitRun(units_count=3, whole_count=2, cut_mm=(300.0,), cover_mm=430.0, length_mm=1160.0)
    >>> joint_marks_mm(run, kind=LineKind.RIDGE)
    (430.0, 730.0, 1160.0)
    >>> joint_marks_mm(run, kind=LineKind.HIP)
    (430.0, 730.0, 1160.0)
    """
    reached, marks = Fraction(0), []
    for cover_mm in unit_covers_mm(run, kind=kind):
        reached += Fraction(cover_mm)
        marks.append(float(reached))
    return tuple(marks)
