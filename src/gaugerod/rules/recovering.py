"""Does the new covering change the mass on the roof by more than the frame should bear unchecked?

Source: Approved Document A, 15 per cent heavier is significant (memory); a council's note, 10 per cent heavier or lighter
(published). Both are settings. Scope: re-covering a roof that stands; a new frame is designed for its covering.
"""

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import TOUCH, Finding, Sense, Verdict, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.standards.roof_masses import MassBand

RULE = "re-covering"


def recovering(*, where: str, new: MassBand, old: MassBand, warn: Limit, significant: Limit) -> tuple[Finding, ...]:
    """The change of mass, per cent of the old, against both thresholds; then how much lighter, against the lower one.

    Where the masses are only known as bands, the verdict is *not covered* as long as the bands allow both.
    Raises NothingToSetOut for masses that are no measurements. Source and scope: see the head of this page.

    >>> from gaugerod.basis.citation import house
    >>> def known(mass_kg_m2: float) -> MassBand:
    ...     return MassBand(least_kg_m2=mass_kg_m2, greatest_kg_m2=mass_kg_m2, citation=house("weighed"))
    >>> ten, fifteen = (Limit(value=value, unit="percent", citation=house("example")) for value in (10.0, 15.0))
    >>> def verdicts(new_kg_m2: float) -> list[str]:
    ...     found = recovering(where="rear", new=known(new_kg_m2), old=known(40.0), warn=ten, significant=fifteen)
    ...     return [finding.verdict.value for finding in found]
    >>> verdicts(44.0), verdicts(46.0)
    (['within', 'within', 'within'], ['within', 'outside', 'within'])
    >>> verdicts(46.1), verdicts(35.9)
    (['outside', 'outside', 'within'], ['within', 'within', 'outside'])
    """
    for band in (new, old):
        if not 0 < band.least_kg_m2 <= band.greatest_kg_m2 < float("inf"):
            raise NothingToSetOut(f"{RULE}, {where}: {band.least_kg_m2:g} to {band.greatest_kg_m2:g} kg/m² is no mass")
    heavier = (
        _change_percent(new.least_kg_m2, old.greatest_kg_m2),
        _change_percent(new.greatest_kg_m2, old.least_kg_m2),
    )
    lighter = (-heavier[1], -heavier[0])
    return (
        _finding(where, "heavier", heavier, significant, "Have the frame checked, and tell building control."),
        _finding(where, "heavier", heavier, warn, "Ask building control whether the frame must be checked."),
        _finding(where, "lighter", lighter, warn, "The wind lifts a lighter roof more easily: check its holding down."),
    )


def _change_percent(new_kg_m2: float, old_kg_m2: float) -> float:
    return (new_kg_m2 / old_kg_m2 - 1) * 100


def _finding(where: str, way: str, change: tuple[float, float], limit: Limit, do: str) -> Finding:
    """``change`` is the least and the greatest change this way that the masses allow, per cent."""
    least, greatest = change
    if least <= limit.value + TOUCH < greatest - TOUCH:
        return not_covered(
            rule=f"{RULE}, {way}",
            where=where,
            proposed=greatest,
            unit=limit.unit,
            citation=limit.citation,
            says=(
                f"Between {least:.0f} and {greatest:.0f} per cent {way}, as far as the masses are known: that may or may not "
                f"pass {limit.value:g} per cent. Weigh some old units and some new ones."
            ),
        )
    finding = Finding(
        rule=f"{RULE}, {way}",
        where=where,
        proposed=greatest,
        limit=limit.value,
        unit=limit.unit,
        sense=Sense.AT_MOST,
        citation=limit.citation,
        says=f"At most {limit.value:g} per cent {way}.",
    )
    if finding.verdict is Verdict.WITHIN:
        return finding
    return Finding(
        rule=finding.rule, where=where, proposed=greatest, limit=limit.value, unit=limit.unit, sense=Sense.AT_MOST,
        citation=limit.citation, says=f"{greatest:.1f} per cent {way}, over {limit.value:g} per cent. {do}",
    )  # fmt: skip
