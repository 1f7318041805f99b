"""A figure of a finding, or its limit, in the unit it is read in."""

import re

from gaugerod.basis.finding import Finding, Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.lengths_shown import fine_length

_UNITS = {"deg": "°", "degrees": "°", "count": "", "ratio": "", "percent": " %"}
_POWERS = str.maketrans({"2": "²", "3": "³"})
_YES_OR_NO = "yes or no"


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
    if finding.unit == _YES_OR_NO:
        return "yes" if value else "no"
    return f"{sense}{value:.5g}{_unit_said(finding.unit)}"


def _unit_said(unit: str) -> str:
    """A unit as it is read: powers raised.

    >>> _unit_said("l/m2 per spell"), _unit_said("m3/(m2.h) at 50 Pa"), _unit_said("deg")
    (' l/m² per spell', ' m³/(m²·h) at 50 Pa', '°')
    """
    if unit in _UNITS:
        return _UNITS[unit]
    raised = re.sub(r"(?<=m)[23]", lambda power: power[0].translate(_POWERS), unit)
    return f" {raised.replace('.', '·')}"
