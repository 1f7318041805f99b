"""Soakers: one piece of lead to each course, under the units and up the wall, or under both slopes at a mitred hip.

Source: length = gauge + headlap + 25 mm, width = 75 mm up the wall + 100 mm under the covering (leadwork detail sheets).
Scope: the greatest gauge of the slope; where courses differ, as with random slates, the soakers are long enough for all.
"""

from math import ceil

from gaugerod.basis.citation import Citation
from gaugerod.basis.finding import Finding
from gaugerod.basis.limit import Limit
from gaugerod.edges.answer import LeadPieces, LeadUse
from gaugerod.edges.ask import EdgeLine, EdgesAsk, EdgeSlope
from gaugerod.edges.lead_runs import lead_named, single_pieces
from gaugerod.edges.parts import mm
from gaugerod.rules.lead import soaker_length
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadFigure, lead_figure


def soaker_length_mm(slope: EdgeSlope, edition: Edition) -> float:
    """Gauge + headlap + 25, whole millimetres up."""
    past = lead_figure(edition, LeadFigure.SOAKER_PAST_GAUGE_AND_LAP)
    return float(ceil(slope.gauge_mm + slope.headlap_mm + past.value - 1e-6))


def wall_soakers(slope: EdgeSlope, *, count: int, up: Limit, edition: Edition) -> LeadPieces:
    """The soakers of one side of a slope against a wall, one to a course. ``up``: how much of each up the wall."""
    under = lead_figure(edition, LeadFigure.SOAKER_UNDER)
    return _soakers(
        slope,
        count=count,
        width_mm=up.value + under.value,
        width_how=f"{up.value:g} mm up the wall + {under.value:g} mm under the covering",
        width_citations=(up.citation, under.citation),
        edition=edition,
    )


def mitred_hip_soakers(ask: EdgesAsk, line: EdgeLine) -> tuple[LeadPieces, ...]:
    """The soakers of a mitred hip: one to each course, dressed over the hip under both slopes."""
    under = lead_figure(ask.edition, LeadFigure.HIP_SOAKER_UNDER)
    slopes = [ask.slope(name) for name in line.slopes]
    longest = max(slopes, key=lambda slope: soaker_length_mm(slope, ask.edition))
    count = max(line.courses_count)
    if count == 0:
        return ()
    return (
        _soakers(
            longest,
            count=count,
            width_mm=2 * under.value,
            width_how=f"{under.value:g} mm under each slope",
            width_citations=(under.citation,),
            edition=ask.edition,
        ),
    )


def soaker_findings(where: str, soakers: LeadPieces, edition: Edition) -> tuple[Finding, ...]:
    """Their length against what there is for pieces of this code."""
    return soaker_length(where=where, length_mm=soakers.length_mm, edition=edition)


def _soakers(
    slope: EdgeSlope,
    *,
    count: int,
    width_mm: float,
    width_how: str,
    width_citations: tuple[Citation, ...],
    edition: Edition,
) -> LeadPieces:
    past = lead_figure(edition, LeadFigure.SOAKER_PAST_GAUGE_AND_LAP)
    code = lead_figure(edition, LeadFigure.SOAKER_CODE)
    length_mm = soaker_length_mm(slope, edition)
    return single_pieces(
        use=LeadUse.SOAKER,
        lead=lead_named(edition, int(code.value)),
        count=count,
        length_mm=length_mm,
        width_mm=width_mm,
        how=(
            f"one to each of {count} courses; length: gauge {mm(slope.gauge_mm)} + headlap {mm(slope.headlap_mm)} + "
            f"{past.value:g} mm; width: {width_how}"
        ),
        citations=(code.citation, past.citation, *width_citations),
    )
