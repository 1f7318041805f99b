"""Soakers: one piece of lead to each course, under the units and up the wall, or under both slopes at a mitred hip.

Source: length = gauge + headlap + 25 mm, width = 75 mm up the wall + 100 mm under the covering (leadwork detail sheets).
At a mitred hip the soaker lies along the hip, which runs aslant to the courses: there each of its lengths is as much longer as the
hip is longer than the way straight up the slope (geometry).
Scope: the greatest gauge of the slope; where courses differ, as with random slates, the soakers are long enough for all.
"""

from math import ceil

from gaugerod.basis.citation import Citation
from gaugerod.basis.finding import Finding
from gaugerod.basis.limit import Limit
from gaugerod.edges.answer import LeadPieces, LeadUse
from gaugerod.edges.ask import EdgeLine, EdgesAsk, EdgeSlope
from gaugerod.edges.lead_runs import lead_named, single_pieces
from gaugerod.edges.parts import courses_said, mm
from gaugerod.geometry.pitch import sin_deg
from gaugerod.rules.lead import soaker_length
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadFigure, lead_figure


def soaker_length_mm(slope: EdgeSlope, edition: Edition) -> float:
    """Gauge + headlap + 25, whole millimetres up."""
    past = lead_figure(edition, LeadFigure.SOAKER_PAST_GAUGE_AND_LAP)
    return float(ceil(slope.gauge_mm + slope.headlap_mm + past.value - 1e-6))


def hip_soaker_length_mm(slope: EdgeSlope, *, hip_deg: float, edition: Edition) -> float:
    """The same along a hip that rises at this many degrees: what it lies over up the slope is longer along the hip. mm.

    Source: geometry, both ways climb alike. Scope: hips that rise; those of a flatter slope rise less than its pitch.

    >>> level = EdgeSlope(name="rear", pitch_deg=35.0, gauge_mm=204.0, headlap_mm=92.0, courses_count=19)
    >>> soaker_length_mm(level, Edition.GB), hip_soaker_length_mm(level, hip_deg=26.34, edition=Edition.GB)
    (321.0, 415.0)
    >>> hip_soaker_length_mm(level, hip_deg=35.0, edition=Edition.GB)
    321.0
    """
    past = lead_figure(edition, LeadFigure.SOAKER_PAST_GAUGE_AND_LAP)
    up_mm = slope.gauge_mm + slope.headlap_mm + past.value
    return float(ceil(up_mm * sin_deg(slope.pitch_deg) / sin_deg(hip_deg) - 1e-6))


def wall_soakers(slope: EdgeSlope, *, count: int, up: Limit, edition: Edition, short_mm: float = 0.0) -> LeadPieces:
    """The soakers of one side of a slope against a wall, one to a course. ``up``: how much of each up the wall.

    ``short_mm``: how far the covering stops short of the wall, which a soaker bridges before it lies under anything.
    """
    under = lead_figure(edition, LeadFigure.SOAKER_UNDER)
    clear_mm = float(ceil(short_mm - 1e-6))
    clear = f" + {clear_mm:g} mm to the covering" if clear_mm else ""
    return _soakers(
        slope,
        count=count,
        length_mm=soaker_length_mm(slope, edition),
        length_how="",
        width_mm=up.value + clear_mm + under.value,
        width_how=f"{up.value:g} mm up the wall{clear} + {under.value:g} mm under the covering",
        width_citations=(up.citation, under.citation),
        edition=edition,
    )


def mitred_hip_soakers(ask: EdgesAsk, line: EdgeLine) -> tuple[LeadPieces, ...]:
    """The soakers of a mitred hip: one to each course, dressed over the hip under both slopes."""
    under = lead_figure(ask.edition, LeadFigure.HIP_SOAKER_UNDER)
    count = max(line.courses_count)
    if count == 0:
        return ()
    lengths = {
        name: hip_soaker_length_mm(ask.slope(name), hip_deg=line.slope_deg, edition=ask.edition) for name in line.slopes
    }
    longest = max(lengths, key=lambda name: lengths[name])
    return (
        _soakers(
            ask.slope(longest),
            count=count,
            length_mm=lengths[longest],
            length_how=f", made longer along the hip: {mm(lengths[longest])}",
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
    length_mm: float,
    length_how: str,
    width_mm: float,
    width_how: str,
    width_citations: tuple[Citation, ...],
    edition: Edition,
) -> LeadPieces:
    past = lead_figure(edition, LeadFigure.SOAKER_PAST_GAUGE_AND_LAP)
    code = lead_figure(edition, LeadFigure.SOAKER_CODE)
    return single_pieces(
        use=LeadUse.SOAKER,
        lead=lead_named(edition, int(code.value)),
        count=count,
        length_mm=length_mm,
        width_mm=width_mm,
        how=(
            f"one to each of {courses_said(count, [slope])}; length: gauge {mm(slope.gauge_mm)} + headlap {mm(slope.headlap_mm)} + "
            f"{past.value:g} mm{length_how}; width: {width_how}"
        ),
        citations=(code.citation, past.citation, *width_citations),
    )
