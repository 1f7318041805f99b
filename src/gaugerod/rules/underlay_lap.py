"""Do the runs of underlay lap each other by enough?

Source: BS 5534 by pitch and support, as quoted by an independent consultant (published); beside it the simplifications of
a tile trade body and of a supplier (published), which disagree with the table and with each other. The table answers.
Scope: horizontal laps at 12.5 degrees and over; below, not covered.
"""

from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing, refuse_unreal
from gaugerod.standards.edition import Edition
from gaugerod.standards.table import OffTable
from gaugerod.standards.underlay import LapStatement, underlay_lap_least, underlay_lap_statements

RULE = "underlay lap"


def underlay_lap(
    *, where: str, lap_mm: float | None, pitch_deg: float, fully_supported: bool, edition: Edition
) -> tuple[Finding, ...]:
    """The smallest horizontal lap (mm) against the table, then against what other sources say. None: there is no lap.

    Raises NothingToSetOut for figures that are no measurements. Source and scope: see the head of this page.

    >>> found = underlay_lap(where="rear", lap_mm=100.0, pitch_deg=35.0, fully_supported=False, edition=Edition.GB)
    >>> [finding.verdict.value for finding in found]
    ['within', 'within', 'within']
    >>> found = underlay_lap(where="rear", lap_mm=100.0, pitch_deg=34.9, fully_supported=False, edition=Edition.GB)
    >>> [finding.verdict.value for finding in found]
    ['outside', 'not-covered', 'within']
    """
    refuse_unless_above_nothing(rule=RULE, where=where, value=pitch_deg, unit="degrees")
    if lap_mm is not None:
        refuse_unreal(rule=RULE, where=where, value=lap_mm, unit="mm")
    least = underlay_lap_least(edition, pitch_deg=pitch_deg, fully_supported=fully_supported)
    stated = underlay_lap_statements(edition, pitch_deg=pitch_deg, fully_supported=fully_supported)
    if isinstance(least, OffTable):
        says = f"At {pitch_deg:g}° no table gives the lap: {least.says}. Have the underlay's maker state it."
        first = not_covered(rule=RULE, where=where, proposed=lap_mm, unit="mm", citation=least.citation, says=says)
    else:
        first = _against_table(where, lap_mm, least)
    return first, *(_against_statement(where, lap_mm, statement) for statement in stated)


def _against_table(where: str, lap_mm: float | None, least: Limit) -> Finding:
    short_mm = 0.0 if lap_mm is None else least.value - lap_mm
    return Finding(
        rule=RULE,
        where=where,
        proposed=least.value if lap_mm is None else lap_mm,
        limit=least.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=least.citation,
        says=(
            f"Runs lap by {least.value:g} mm or more at this pitch and support."
            if short_mm <= TOUCH
            else f"The lap is {misfit(short_mm)} short: water driven up between the runs gets in. Lap them by more."
        ),
    )


def _against_statement(where: str, lap_mm: float | None, statement: LapStatement) -> Finding:
    says = f"This source simplifies: {statement.says}."
    if lap_mm is None or lap_mm >= statement.lap_mm - TOUCH:
        return Finding(
            rule=f"{RULE}, simplified",
            where=where,
            proposed=statement.lap_mm if lap_mm is None else lap_mm,
            limit=statement.lap_mm,
            unit="mm",
            sense=Sense.AT_LEAST,
            citation=statement.citation,
            says=says,
        )
    return not_covered(
        rule=f"{RULE}, simplified",
        where=where,
        proposed=lap_mm,
        unit="mm",
        citation=statement.citation,
        says=f"{says} {lap_mm:g} mm is less than that. The table of BS 5534 answers here; the sources differ.",
    )
