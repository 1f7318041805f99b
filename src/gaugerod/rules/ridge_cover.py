"""Does the ridge, or the flashing at a top edge, cover the heads of the top course by enough?

Source: the least cover is the edition's (under a ridge 75 mm, under a flashing 150: published); the rest is geometry:
the head of the top unit lies t − n below the apex, so the cover over it is C − t + n, where C is how far the ridge
reaches down the slope, t the top edge of the top batten below the apex, n the head of the unit above its batten.
Scope: units hung whole on the top batten; lengths in mm down the slope from the apex.
"""

from dataclasses import dataclass

from gaugerod.basis.band import Band
from gaugerod.basis.citation import Citation
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing, refuse_unreal

_UNKNOWN_REACH = (
    "How far the ridge, or the flashing at a wall, reaches down the slope was not given, so its cover over the top course "
    "is not checked. Measure it from the apex down the slope, and check on the roof."
)
_UNKNOWN_HEAD = "The hanging length is not known, so where the heads of the top course come to is not known either."


@dataclass(frozen=True, slots=True, kw_only=True)
class TopBand:
    """The band for the top batten once the ridge's cover is kept. ``band`` is None when nothing keeps it."""

    band: Band | None
    findings: tuple[Finding, ...]


def ridge_cover(
    *,
    where: str,
    ridge_cover_mm: float | None,
    top_batten_below_apex_mm: float,
    head_to_nib_mm: float | None,
    least: Limit,
) -> Finding:
    """The cover over the heads of the top course, C − t + n (mm), against the least.

    Raises NothingToSetOut for figures that are no measurements. Source and scope: see the head of this page.

    >>> from gaugerod.standards.defaults import ridge_cover_least
    >>> from gaugerod.standards.edition import Edition
    >>> least = ridge_cover_least(Edition.GB)
    >>> finding = ridge_cover(where="rear", ridge_cover_mm=110.0, top_batten_below_apex_mm=40.0, head_to_nib_mm=22.0,
    ...                       least=least)
    >>> finding.proposed, finding.verdict.value
    (92.0, 'within')
    >>> ridge_cover(where="rear", ridge_cover_mm=110.0, top_batten_below_apex_mm=57.0, head_to_nib_mm=22.0,
    ...             least=least).verdict.value
    'within'
    >>> ridge_cover(where="rear", ridge_cover_mm=110.0, top_batten_below_apex_mm=57.1, head_to_nib_mm=22.0,
    ...             least=least).verdict.value
    'outside'
    """
    refuse_unreal(rule="ridge cover", where=where, value=top_batten_below_apex_mm, unit="mm")
    if ridge_cover_mm is None or head_to_nib_mm is None:
        return _not_known(where, ridge_cover_mm, least.citation)
    _refuse_unreal_sizes(where, ridge_cover_mm, head_to_nib_mm)
    cover_mm = ridge_cover_mm - top_batten_below_apex_mm + head_to_nib_mm
    enough = cover_mm >= least.value - TOUCH
    return Finding(
        rule="ridge cover",
        where=where,
        proposed=cover_mm,
        limit=least.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=least.citation,
        says=(
            f"The heads of the top course are covered by {cover_mm:.0f} mm."
            if enough
            else f"The heads of the top course are covered by {misfit(least.value - cover_mm)} too little. "
            "Raise the top batten, or use a ridge or flashing that reaches further down."
        ),
    )


def top_band_narrowed(
    *, where: str, band: Band, ridge_cover_mm: float | None, head_to_nib_mm: float | None, least: Limit
) -> TopBand:
    """The band for the top batten below the apex, cut down to t ≤ C − least + n to keep the ridge's cover.

    Where the reach of the ridge or the head of the unit is not known the band stays as it is, and a finding says so.
    Raises NothingToSetOut for figures that are no measurements. Source and scope: see the head of this page.

    >>> from gaugerod.standards.defaults import ridge_cover_least, top_batten_band
    >>> from gaugerod.standards.edition import Edition
    >>> band, least = top_batten_band(Edition.GB), ridge_cover_least(Edition.GB)
    >>> narrowed = top_band_narrowed(where="rear", band=band, ridge_cover_mm=95.0, head_to_nib_mm=22.0, least=least)
    >>> narrowed.band.least_mm, narrowed.band.greatest_mm
    (25.0, 42.0)
    >>> top_band_narrowed(where="rear", band=band, ridge_cover_mm=77.9, head_to_nib_mm=22.0, least=least).band is None
    True
    """
    if ridge_cover_mm is None or head_to_nib_mm is None:
        return TopBand(band=band, findings=(_not_known(where, ridge_cover_mm, least.citation),))
    _refuse_unreal_sizes(where, ridge_cover_mm, head_to_nib_mm)
    lowest_mm = ridge_cover_mm - least.value + head_to_nib_mm
    if lowest_mm >= band.greatest_mm - TOUCH:
        return TopBand(band=band, findings=())
    if lowest_mm < band.least_mm - TOUCH:
        return TopBand(band=None, findings=(_no_band_left(where, band, lowest_mm, ridge_cover_mm, least),))
    kept = f"at most {lowest_mm:g} mm so that the ridge covers the top course by {least.value:g} mm"
    narrowed = Band(
        least_mm=band.least_mm,
        greatest_mm=max(lowest_mm, band.least_mm),  # they may cross by float noise
        citation=Citation(source=f"{band.citation.source}; {kept}", basis=band.citation.basis),
    )
    return TopBand(band=narrowed, findings=())


def _no_band_left(where: str, band: Band, lowest_mm: float, ridge_cover_mm: float, least: Limit) -> Finding:
    return Finding(
        rule="top batten",
        where=where,
        proposed=band.least_mm,
        limit=lowest_mm,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=least.citation,
        says=(
            f"With the top batten {band.least_mm:g} mm below the apex this ridge or flashing still covers the top course by "
            f"less than {least.value:g} mm. It must reach {misfit(ridge_cover_mm + band.least_mm - lowest_mm)} down the slope."
        ),
    )


def _not_known(where: str, ridge_cover_mm: float | None, citation: Citation) -> Finding:
    return not_covered(
        rule="ridge cover",
        where=where,
        proposed=None,
        unit="mm",
        citation=citation,
        says=_UNKNOWN_REACH if ridge_cover_mm is None else _UNKNOWN_HEAD,
    )


def _refuse_unreal_sizes(where: str, ridge_cover_mm: float, head_to_nib_mm: float) -> None:
    refuse_unless_above_nothing(rule="ridge cover", where=where, value=ridge_cover_mm, unit="mm")
    refuse_unreal(rule="ridge cover", where=where, value=head_to_nib_mm, unit="mm")
