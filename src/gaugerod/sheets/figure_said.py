"""A figure of a finding, or its limit, in the unit it is read in."""

from gaugerod.basis.finding import Finding, Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.lengths_shown import fine_length


def figure_said(value: float | None, *, finding: Finding, unit: LengthUnit, of_limit: bool) -> str:
    """A figure of a finding in its unit. The proposed one is never rounded towards its limit's good side."""
    if value is None:
        return "none" if of_limit else "not known"
    sense = {Sense.AT_LEAST: "≥ ", Sense.AT_MOST: "≤ "}[finding.sense] if of_limit else ""
    if finding.unit == "mm":
        towards = None if of_limit else finding.sense
        shown = fine_length(value, unit, towards=towards)
        if unit is LengthUnit.FT_IN:
            shown += f"\n({fine_length(value, LengthUnit.MM, towards=towards)})"
        return sense + shown
    word = {"deg": "°", "degrees": "°", "count": "", "ratio": ""}.get(finding.unit, f" {finding.unit}")
    return f"{sense}{value:.5g}{word}"
