"""Does a lead lining of a stated width reach under the cut units, and where do its welts stand against the batten ends?

Source: a lining dressed from welt to welt (geometry, house); the usual welt, and what is turned back for it, are the edition's.
Scope: open valleys lined with sheet lead, as wide on one side as on the other. How far a welt must lie under the cut units no
source read here says: a welt nearer or further than the usual is *not covered*.
"""

from gaugerod.basis.citation import house
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.standards.battens import BattenFigure, batten_figure
from gaugerod.standards.edition import Edition
from gaugerod.standards.valleys import ValleyFigure, valley_figure

RULE = "valley lining"
UNDER_THE_CUTS = house("the welts of a lining stand under the cut units, past the clear width")


def welt_from_line_mm(*, girth_mm: float, edition: Edition) -> float:
    """How far each welt stands from the valley line: half the width, less what is turned back. mm; below nothing: no room."""
    return girth_mm / 2 - valley_figure(edition, ValleyFigure.WELT).value


def valley_lining(*, where: str, girth_mm: float, clear_mm: float, edition: Edition) -> Finding:
    """The welts of a lining this wide against the cut edges, and against the welts that the battens are cut for (mm).

    Raises NothingToSetOut for figures that are no measurements. Source and scope: see the head of this page.

    >>> [valley_lining(where="valley", girth_mm=girth_mm, clear_mm=125.0, edition=Edition.GB).verdict.value
    ...  for girth_mm in (174.9, 175.0, 450.0, 600.0)]
    ['outside', 'not-covered', 'within', 'not-covered']
    """
    for value in (girth_mm, clear_mm):
        refuse_unless_above_nothing(rule=RULE, where=where, value=value, unit="mm")
    welt_mm = welt_from_line_mm(girth_mm=girth_mm, edition=edition)
    usual = batten_figure(edition, BattenFigure.VALLEY_WELT_FROM_LINE)
    if welt_mm < clear_mm / 2 - TOUCH:
        return Finding(
            rule=RULE,
            where=where,
            proposed=welt_mm,
            limit=clear_mm / 2,
            unit="mm",
            sense=Sense.AT_LEAST,
            citation=UNDER_THE_CUTS,
            says=f"The lining is {girth_mm:g} mm wide, so its welts stop {misfit(clear_mm / 2 - welt_mm)} short of the cut units: "
            "water runs off its edge onto the boards. Use wider lead.",
        )
    if welt_mm > usual.value + TOUCH:
        says = (
            f"The welts of this lining stand {misfit(welt_mm - usual.value)} further from the line than the {usual.value:g} mm "
            "that the battens are cut for: cut their ends back by as much, and look at the cut list again."
        )
    elif welt_mm < usual.value - TOUCH:
        says = (
            f"The welts of this lining stand {misfit(usual.value - welt_mm)} nearer the line than the usual {usual.value:g} mm. "
            "How far they must lie under the cut units no source read here says: ask a lead worker."
        )
    else:
        return Finding(
            rule=RULE,
            where=where,
            proposed=welt_mm,
            limit=usual.value,
            unit="mm",
            sense=Sense.AT_LEAST,
            citation=usual.citation,
            says="The welts stand where the battens are cut for them.",
        )
    return not_covered(rule=RULE, where=where, proposed=welt_mm, unit="mm", citation=usual.citation, says=says)
