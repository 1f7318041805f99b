"""The wishes of a job with every blank filled in from the edition, each with its source."""

from dataclasses import dataclass

from gaugerod.basis.band import Band
from gaugerod.basis.citation import Citation, house
from gaugerod.basis.finding import Finding
from gaugerod.basis.lengths import LengthUnit
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division
from gaugerod.geometry.pitch import cos_deg
from gaugerod.job.model import Job, OverhangMeasured, Slope, TopKind
from gaugerod.rules.ridge_cover import top_band_narrowed
from gaugerod.setting_out.across import Side, SideKind
from gaugerod.setting_out.stations import Station
from gaugerod.standards.defaults import (
    abutment_set_back_band,
    eaves_overhang_band,
    ridge_cover_least,
    top_batten_band,
    top_flashing_cover_least,
    verge_overhang_band,
)

RAKING_CUT = house("geometry: the covering is cut to the line of the hip or valley")


@dataclass(frozen=True, slots=True, kw_only=True)
class TopWished:
    """Where the top batten may go. ``kept``: does some place in the band let the ridge cover the top course?"""

    band: Band
    kept: bool
    findings: tuple[Finding, ...]


def overhang_on_slope(job: Job, slope: Slope) -> Band:
    """The eaves overhang band with the tape laid on the slope.

    One measured on the level is longer on the slope: o / cos(pitch). Source: geometry.
    """
    band = job.wishes.eaves_overhang or eaves_overhang_band(job.edition)
    match job.wishes.overhang_measured:
        case OverhangMeasured.ON_SLOPE:
            return band
        case OverhangMeasured.LEVEL:
            share = cos_deg(slope.pitch_deg)
            return Band(
                least_mm=band.least_mm / share,
                greatest_mm=band.greatest_mm / share,
                citation=Citation(
                    source=f"{band.citation.source}; measured on the level, so divided by the cosine of the pitch",
                    basis=band.citation.basis,
                ),
            )


def overhang_on_the_level_mm(*, overhang_mm: float, pitch_deg: float) -> float:
    """An overhang measured on the slope, as it measures on the level: o × cos(pitch)."""
    return overhang_mm * cos_deg(pitch_deg)


def top_batten(job: Job, slope: Slope, *, head_to_nib_mm: float) -> TopWished:
    """The band for the top batten below the apex, narrowed so that the ridge covers the top course by its lap."""
    band = job.wishes.top_batten_from_apex or top_batten_band(job.edition)
    narrowed = top_band_narrowed(
        where=slope.name,
        band=band,
        ridge_cover_mm=job.wishes.ridge_cover_mm,
        head_to_nib_mm=head_to_nib_mm,
        least=least_top_cover(job, slope),
    )
    if narrowed.band is None:
        highest = Band(least_mm=band.least_mm, greatest_mm=band.least_mm, citation=band.citation)
        return TopWished(band=highest, kept=False, findings=narrowed.findings)
    return TopWished(band=narrowed.band, kept=True, findings=narrowed.findings)


def least_top_cover(job: Job, slope: Slope) -> Limit:
    """How much of the top course the ridge, or the flashing at a wall, must cover."""
    match slope.top:
        case TopKind.RIDGE | TopKind.MONO_RIDGE:
            return ridge_cover_least(job.edition)
        case TopKind.ABUTMENT:
            return top_flashing_cover_least(job.edition)


def side(job: Job, kind: SideKind, *, high_point: bool) -> Side:
    """One side of the slope: how far the covering reaches past it, or stays short of it."""
    match kind:
        case SideKind.VERGE:
            reach = job.wishes.verge_overhang or verge_overhang_band(job.edition)
        case SideKind.ABUTMENT:
            set_back = job.wishes.abutment_set_back or abutment_set_back_band(job.edition)
            reach = Band(least_mm=-set_back.greatest_mm, greatest_mm=-set_back.least_mm, citation=set_back.citation)
        case SideKind.HIP | SideKind.VALLEY:
            reach = Band(least_mm=0.0, greatest_mm=0.0, citation=RAKING_CUT)
    return Side(kind=kind, reach=reach, high_point=high_point and kind is SideKind.VERGE)


def division_of(unit: LengthUnit) -> Division:
    """What marks are rounded to: a millimetre, or a sixteenth where lengths are shown in feet and inches."""
    return Division.SIXTEENTH if unit is LengthUnit.FT_IN else Division.MILLIMETRE


def stations_of(slope: Slope) -> tuple[Station, ...]:
    """Where the rafters were measured."""
    return tuple(Station(at_mm=at_mm, length_mm=length_mm) for at_mm, length_mm in slope.taped.rafters)
