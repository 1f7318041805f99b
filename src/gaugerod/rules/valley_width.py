"""Is the open valley wide enough, so that leaves and water run free between the cut tiles?

Source: NHBC Standards 2020 7.2.21 (published); for preformed liners a consultant's case study on valleys (published).
Scope: open valleys lined with lead, a preformed liner or valley tiles. Swept and laced valleys have no clear width.
"""

from collections.abc import Iterator

from gaugerod.basis.finding import TOUCH, Finding, Sense
from gaugerod.basis.limit import Limit
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.standards.edition import Edition
from gaugerod.standards.valleys import ValleyFigure, valley_figure

RULE = "valley width"


def valley_clear_least(*, where: str, pitch_deg: float, edition: Edition) -> Limit:
    """The least clear width of a valley by the pitch of the flatter slope, mm: more below 30 degrees.

    Raises NothingToSetOut for a pitch that is no measurement. Source and scope: see the head of this page.

    >>> [valley_clear_least(where="valley", pitch_deg=pitch, edition=Edition.GB).value for pitch in (29.9, 30.0)]
    [125.0, 100.0]
    """
    refuse_unless_above_nothing(rule=RULE, where=where, value=pitch_deg, unit="degrees")
    low = pitch_deg < valley_figure(edition, ValleyFigure.LOW_PITCH_BELOW).value - TOUCH
    return valley_figure(edition, ValleyFigure.CLEAR_LEAST_LOW_PITCH if low else ValleyFigure.CLEAR_LEAST)


def valley_width(
    *, where: str, clear_mm: float, pitch_deg: float, preformed: bool, edition: Edition
) -> tuple[Finding, ...]:
    """The clear width (mm) against the least for the flatter slope's pitch, and for a preformed liner the greatest.

    Raises NothingToSetOut for figures that are no measurements. Source and scope: see the head of this page.

    >>> def verdicts(clear_mm: float, pitch_deg: float, preformed: bool = False) -> list[str]:
    ...     return [f.verdict.value for f in valley_width(where="valley", clear_mm=clear_mm, pitch_deg=pitch_deg,
    ...                                                   preformed=preformed, edition=Edition.GB)]
    >>> verdicts(100.0, 30.0), verdicts(100.0, 29.9), verdicts(150.1, 35.0, preformed=True)
    (['within'], ['outside'], ['within', 'outside'])
    """
    refuse_unless_above_nothing(rule=RULE, where=where, value=clear_mm, unit="mm")
    return tuple(_findings(where, clear_mm, pitch_deg, preformed=preformed, edition=edition))


def _findings(where: str, clear_mm: float, pitch_deg: float, *, preformed: bool, edition: Edition) -> Iterator[Finding]:
    least = valley_clear_least(where=where, pitch_deg=pitch_deg, edition=edition)
    yield Finding(
        rule=RULE,
        where=where,
        proposed=clear_mm,
        limit=least.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=least.citation,
        says=(
            f"The valley is {clear_mm:g} mm clear."
            if clear_mm >= least.value - TOUCH
            else f"The valley is {misfit(least.value - clear_mm)} too narrow: leaves lodge in it and water backs up under the "
            "cut tiles. Cut them further back."
        ),
    )
    if preformed:
        greatest = valley_figure(edition, ValleyFigure.LINER_CLEAR_GREATEST)
        yield Finding(
            rule=f"{RULE}, preformed liner",
            where=where,
            proposed=clear_mm,
            limit=greatest.value,
            unit="mm",
            sense=Sense.AT_MOST,
            citation=greatest.citation,
            says=(
                "A preformed liner is made for a valley this wide; its maker's figure comes first."
                if clear_mm <= greatest.value + TOUCH
                else f"The valley is {misfit(clear_mm - greatest.value)} wider than preformed liners are made for: the cut "
                "tiles may end inside the liner's edge. Ask its maker, or line the valley with lead."
            ),
        )
