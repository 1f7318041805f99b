"""Units along a ridge or hip: is none cut too short, and is each held by more than mortar?

Source: a national housebuilder's site standard (cuts); roof tile trade association, technical library (fixing); published.
Scope: ridge, mono-ridge and hip units laid end to end. Small ridges and hips of low porches and bays may be let off the
second rule, subject to wind: that is for whoever signs the roof off.
"""

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.standards.edges import EdgeFigure, edge_figure
from gaugerod.standards.edition import Edition

CUT_RULE = "cut ridge or hip unit"
GABLE_RULE = "cut ridge unit at a gable"
FIXING_RULE = "fixing of ridge and hip units"
_BOTH_ENDS = 2


def unit_cut_least(*, where: str, cover_mm: float, edition: Edition) -> Limit:
    """The least that a cut unit may cover: half of what a whole one does (mm).

    Raises NothingToSetOut for a cover that is no measurement. Source and scope: see the head of this page.

    >>> unit_cut_least(where="ridge", cover_mm=450.0, edition=Edition.GB).value
    225.0
    """
    refuse_unless_above_nothing(rule=CUT_RULE, where=where, value=cover_mm, unit="mm")
    share = edge_figure(edition, EdgeFigure.LINE_UNIT_CUT_LEAST)
    return Limit(value=share.value * cover_mm, unit="mm", citation=share.citation)


def unit_cut(*, where: str, cut_mm: float, cover_mm: float, edition: Edition) -> Finding:
    """What a cut unit covers (mm) against half of a whole one.

    Raises NothingToSetOut for figures that are no measurements. Source and scope: see the head of this page.

    >>> unit_cut(where="ridge", cut_mm=300.0, cover_mm=450.0, edition=Edition.GB).verdict.value
    'within'
    >>> [unit_cut(where="ridge", cut_mm=cut_mm, cover_mm=450.0, edition=Edition.GB).verdict.value
    ...  for cut_mm in (225.0, 224.9)]
    ['within', 'outside']
    """
    refuse_unless_above_nothing(rule=CUT_RULE, where=where, value=cut_mm, unit="mm")
    least = unit_cut_least(where=where, cover_mm=cover_mm, edition=edition)
    return Finding(
        rule=CUT_RULE,
        where=where,
        proposed=cut_mm,
        limit=least.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=least.citation,
        says=(
            f"No unit is cut to less than {least.value:g} mm, half of what a whole one covers."
            if cut_mm >= least.value - TOUCH
            else f"The line is shorter than half a unit: the one that lies here is cut {misfit(least.value - cut_mm)} too short. "
            "Fix it as well as the maker says, or use a shorter unit."
        ),
    )


def cuts_off_the_gable(*, where: str, whole_count: int, edition: Edition) -> Finding:
    """Are there whole units for both ends, so that no cut one comes to a gable? *Not covered* where there are fewer.

    Which ends stand over a gable is not known here. Raises NothingToSetOut for fewer than no units. Source and scope: see
    the head of this page.

    >>> [cuts_off_the_gable(where="ridge", whole_count=count, edition=Edition.GB).verdict.value for count in (2, 1)]
    ['within', 'not-covered']
    """
    if whole_count < 0:
        raise NothingToSetOut(f"{GABLE_RULE}, {where}: {whole_count} units cannot be")
    citation = edge_figure(edition, EdgeFigure.LINE_UNIT_CUT_LEAST).citation
    if whole_count < _BOTH_ENDS:
        return not_covered(
            rule=GABLE_RULE,
            where=where,
            proposed=float(whole_count),
            unit="count",
            citation=citation,
            says=f"With {_whole(whole_count)} a cut one comes to an end of the line. The source keeps cut units "
            "off a gable end: if both ends stand over gables, ask for units that need no cut here.",
        )
    return Finding(
        rule=GABLE_RULE,
        where=where,
        proposed=float(whole_count),
        limit=float(_BOTH_ENDS),
        unit="count",
        sense=Sense.AT_LEAST,
        citation=citation,
        says="There is a whole unit for each end; the cut ones lie between.",
    )


def unit_fixings(*, where: str, fixings_count: int, edition: Edition) -> Finding:
    """The mechanical fixings of each unit against the least: mortar alone is not accepted.

    Raises NothingToSetOut for fewer than none. Source and scope: see the head of this page.

    >>> [unit_fixings(where="ridge", fixings_count=count, edition=Edition.GB).verdict.value for count in (2, 1, 0)]
    ['within', 'within', 'outside']
    """
    if fixings_count < 0:
        raise NothingToSetOut(f"{FIXING_RULE}, {where}: {fixings_count} fixings cannot be")
    least = edge_figure(edition, EdgeFigure.LINE_UNIT_FIXINGS_LEAST)
    held = fixings_count >= least.value
    return Finding(
        rule=FIXING_RULE,
        where=where,
        proposed=float(fixings_count),
        limit=least.value,
        unit="count",
        sense=Sense.AT_LEAST,
        citation=least.citation,
        says=(
            "Each unit has a screw, nail or clip; mortar by itself would not be accepted."
            if held
            else "No screw, nail or clip holds the units: mortar by itself is not accepted, and a dry unit lies loose. "
            "Fix each one mechanically. Small ridges of low porches and bays may be let off where the wind allows."
        ),
    )


def _whole(count: int) -> str:
    return "no whole unit" if count == 0 else "only one whole unit"
