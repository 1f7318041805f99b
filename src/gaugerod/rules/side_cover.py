"""How far a flashing that steps and covers lies on the tiles.

Source: 150 to 200 mm (leadwork detail sheets, published). Scope: step-and-cover flashings beside walls and chimneys.
"""

from gaugerod.basis.finding import TOUCH, Finding, Sense
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadFigure, lead_figure

RULE = "side cover of a flashing"


def side_cover(*, where: str, cover_mm: float, edition: Edition) -> tuple[Finding, Finding]:
    """Its cover on the tiles against the least and the greatest, mm.

    >>> def verdicts(cover_mm: float) -> list[str]:
    ...     return [f.verdict.value for f in side_cover(where="wall", cover_mm=cover_mm, edition=Edition.GB)]
    >>> verdicts(149.9), verdicts(150.0), verdicts(200.0), verdicts(200.1)
    (['outside', 'within'], ['within', 'within'], ['within', 'within'], ['within', 'outside'])
    """
    refuse_unless_above_nothing(rule=RULE, where=where, value=cover_mm, unit="mm")
    least, greatest = (
        lead_figure(edition, which) for which in (LeadFigure.SIDE_COVER_LEAST, LeadFigure.SIDE_COVER_GREATEST)
    )
    return (
        Finding(
            rule=RULE,
            where=where,
            proposed=cover_mm,
            limit=least.value,
            unit="mm",
            sense=Sense.AT_LEAST,
            citation=least.citation,
            says=(
                f"The flashing lies {cover_mm:g} mm on the tiles."
                if cover_mm >= least.value - TOUCH
                else f"The flashing lies {misfit(least.value - cover_mm)} too little on the tiles: driven water gets under."
            ),
        ),
        Finding(
            rule=RULE,
            where=where,
            proposed=cover_mm,
            limit=greatest.value,
            unit="mm",
            sense=Sense.AT_MOST,
            citation=greatest.citation,
            says=(
                "Its free edge is clipped."
                if cover_mm <= greatest.value + TOUCH
                else f"The flashing lies {misfit(cover_mm - greatest.value)} more on the tiles: the wind lifts its edge."
            ),
        ),
    )
