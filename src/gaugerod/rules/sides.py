"""Where the covering ends at the left and right of the slope: past a verge, short of a wall.

Source: verge 38 to 50 mm, an independent consultant's trade article (published); abutment 5 to 15 mm, house.
Scope: bedded verges, measured past the wall or undercloak face; walls under a step-and-cover flashing.
"""

from gaugerod.basis.band import Band
from gaugerod.basis.finding import Finding
from gaugerod.rules.band_findings import within_band


def verge_overhang(*, where: str, overhang_mm: float, band: Band) -> tuple[Finding, Finding]:
    """The verge overhang (mm) against its band.

    Raises NothingToSetOut for an overhang that is no measurement. Source and scope: see the head of this page.

    >>> from gaugerod.standards.defaults import verge_overhang_band
    >>> from gaugerod.standards.edition import Edition
    >>> band = verge_overhang_band(Edition.GB)
    >>> [f.verdict.value for f in verge_overhang(where="rear, left", overhang_mm=44.0, band=band)]
    ['within', 'within']
    >>> [f.verdict.value for f in verge_overhang(where="rear, left", overhang_mm=37.9, band=band)]
    ['outside', 'within']
    """
    return within_band(
        rule="verge overhang",
        where=where,
        length_mm=overhang_mm,
        band=band,
        too_little="Water stains the wall.",
        too_much="The verge is at risk from wind.",
    )


def abutment_set_back(*, where: str, set_back_mm: float, band: Band) -> tuple[Finding, Finding]:
    """The clear gap between the last unit and the wall (mm) against its band.

    Raises NothingToSetOut for a set-back that is no measurement. Source and scope: see the head of this page.

    >>> from gaugerod.standards.defaults import abutment_set_back_band
    >>> from gaugerod.standards.edition import Edition
    >>> band = abutment_set_back_band(Edition.GB)
    >>> [f.verdict.value for f in abutment_set_back(where="rear, right", set_back_mm=10.0, band=band)]
    ['within', 'within']
    >>> [f.verdict.value for f in abutment_set_back(where="rear, right", set_back_mm=15.1, band=band)]
    ['within', 'outside']
    """
    return within_band(
        rule="abutment set-back",
        where=where,
        length_mm=set_back_mm,
        band=band,
        too_little="The units bear on the wall when it moves or they swell with water.",
        too_much="The flashing covers the last unit by less than it should.",
    )
