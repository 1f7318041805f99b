"""Is the pitch steep enough for a mitred hip?

Source: a supplier-hosted slate manual: not below 30 degrees, nor in exposed sites (published).
Scope: mitred hips in slate. How exposed the site is does not enter here: the sentence says it.
"""

from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.standards.edges import EdgeFigure, edge_figure
from gaugerod.standards.edition import Edition

RULE = "mitred hip"


def mitred_hip(*, where: str, pitch_deg: float, slated: bool, edition: Edition) -> Finding:
    """The pitch of the flatter slope against the least for a mitred hip; *not covered* for anything but slate.

    Raises NothingToSetOut for a pitch that is no measurement. Source and scope: see the head of this page.

    >>> [mitred_hip(where="hip", pitch_deg=pitch_deg, slated=True, edition=Edition.GB).verdict.value
    ...  for pitch_deg in (40.0, 30.0, 29.9)]
    ['within', 'within', 'outside']
    >>> mitred_hip(where="hip", pitch_deg=40.0, slated=False, edition=Edition.GB).verdict.value
    'not-covered'
    """
    refuse_unless_above_nothing(rule=RULE, where=where, value=pitch_deg, unit="degrees")
    least = edge_figure(edition, EdgeFigure.MITRED_HIP_PITCH_LEAST)
    if not slated:
        return not_covered(
            rule=RULE,
            where=where,
            proposed=pitch_deg,
            unit="deg",
            citation=least.citation,
            says=f"The rule for mitred hips, {least.value:g}° or steeper and no exposed site, is for slate. "
            "Ask the maker of the tiles.",
        )
    return Finding(
        rule=RULE,
        where=where,
        proposed=pitch_deg,
        limit=least.value,
        unit="deg",
        sense=Sense.AT_LEAST,
        citation=least.citation,
        says=(
            "Steep enough for a mitred hip. The same source keeps mitred hips off exposed sites: judge the site."
            if pitch_deg >= least.value - TOUCH
            else f"The flatter slope is {misfit(least.value - pitch_deg, unit='°')} too flat for a mitred hip: water gets in at "
            "the joint. Lay hip units. On exposed sites a mitred hip does not do either."
        ),
    )
