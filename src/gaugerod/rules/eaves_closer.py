"""Is a comb filler needed under the tails of a profiled tile, to keep birds and vermin out?

Source: two trade sources that differ: one closes openings from 10 mm, one from 16 mm (published).
Scope: profiled tiles and pantiles. Flat tiles, plain tiles and slates leave no openings of this kind.
"""

from dataclasses import dataclass

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import TOUCH, Finding, Sense
from gaugerod.basis.limit import Limit
from gaugerod.rules.real_figures import refuse_unreal
from gaugerod.standards.edges import EdgeFigure, edge_figure
from gaugerod.standards.edition import Edition

RULE = "openings at the eaves"


@dataclass(frozen=True, slots=True, kw_only=True)
class EavesCloser:
    """Is a comb filler needed, and what does each source say? ``needed`` as soon as one of them asks for it."""

    needed: bool
    findings: tuple[Finding, ...]


def eaves_closer(*, where: str, gap_mm: float, edition: Edition) -> EavesCloser:
    """The open height under the tails (mm) against what each source lets stay open, its own figure no longer.

    Raises NothingToSetOut for a gap that is no measurement, or below nothing. Source and scope: see the head of this page.

    >>> closers = [eaves_closer(where="rear, eaves", gap_mm=gap_mm, edition=Edition.GB) for gap_mm in (9.9, 10.0, 16.0)]
    >>> [closer.needed for closer in closers], closers[1].findings[1].says
    ([False, True, True], 'Sources differ: this one asks for a comb filler from 16 mm, and the gap is 10 mm. One is fitted.')
    """
    refuse_unreal(rule=RULE, where=where, value=gap_mm, unit="mm")
    if gap_mm < 0:
        raise NothingToSetOut(f"{RULE}, {where}: {gap_mm:g} mm is below nothing")
    which = (EdgeFigure.COMB_FILLER_FROM_FIRST, EdgeFigure.COMB_FILLER_FROM_SECOND)
    from_mm = [edge_figure(edition, each) for each in which]
    needed = any(_asks(gap_mm, each) for each in from_mm)
    return EavesCloser(needed=needed, findings=tuple(_against(each, where, gap_mm, closed=needed) for each in from_mm))


def _asks(gap_mm: float, from_mm: Limit) -> bool:
    return gap_mm >= from_mm.value - TOUCH


def _against(from_mm: Limit, where: str, gap_mm: float, *, closed: bool) -> Finding:
    if _asks(gap_mm, from_mm):
        says = f"A comb filler closes the gap of {gap_mm:g} mm; this source asks for one from {from_mm.value:g} mm."
    elif closed:
        says = (
            f"Sources differ: this one asks for a comb filler from {from_mm.value:g} mm, and the gap is {gap_mm:g} mm. "
            "One is fitted."
        )
    else:
        says = f"The gap of {gap_mm:g} mm may stay open; this source asks for a comb filler from {from_mm.value:g} mm."
    return Finding(
        rule=RULE,
        where=where,
        proposed=0.0 if closed else gap_mm,
        limit=from_mm.value,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=from_mm.citation,
        says=says,
    )
