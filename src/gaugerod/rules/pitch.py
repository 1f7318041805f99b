"""Is the slope steep enough for this tile?

Source: the tile's own record; beside it NHBC Standards 7.2.19 (published): 30 degrees, lower only with evidence.
Scope: single-lap tiles, pitch above 0 and below 90 degrees.
"""

from gaugerod.basis.citation import house
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.standards.defaults import single_lap_pitch_least
from gaugerod.standards.edition import Edition


def pitch(*, where: str, pitch_deg: float, tile: SingleLapTile, edition: Edition) -> tuple[Finding, Finding]:
    """The pitch against the tile's least, then against the pitch below which evidence is asked for.

    Raises NothingToSetOut for a pitch that is no slope. Source and scope: see the head of this page.

    >>> from gaugerod.coverings.catalogue import covering
    >>> tile = covering("flat-interlocking-420x330")
    >>> [f.verdict.value for f in pitch(where="rear", pitch_deg=35.0, tile=tile, edition=Edition.GB)]
    ['within', 'within']
    >>> [f.verdict.value for f in pitch(where="rear", pitch_deg=30.0, tile=tile, edition=Edition.GB)]
    ['within', 'within']
    >>> [f.verdict.value for f in pitch(where="rear", pitch_deg=29.9, tile=tile, edition=Edition.GB)]
    ['outside', 'outside']
    """
    refuse_unless_above_nothing(rule="pitch", where=where, value=pitch_deg, unit="degrees")
    if pitch_deg >= 90:
        raise NothingToSetOut(f"pitch, {where}: {pitch_deg:g} degrees is no roof slope")
    return (
        _against_record(where=where, pitch_deg=pitch_deg, tile=tile),
        _against_default(where=where, pitch_deg=pitch_deg, tile=tile, edition=edition),
    )


def _against_record(*, where: str, pitch_deg: float, tile: SingleLapTile) -> Finding:
    least_deg = tile.pitch_min_deg
    if least_deg is None:
        return not_covered(
            rule="pitch",
            where=where,
            proposed=pitch_deg,
            unit="deg",
            citation=house("the record gives no least pitch"),
            says="The tile's record gives no least pitch. Ask the maker whether it may be laid at this pitch.",
        )
    enough = pitch_deg >= least_deg - TOUCH
    return Finding(
        rule="pitch",
        where=where,
        proposed=pitch_deg,
        limit=least_deg,
        unit="deg",
        sense=Sense.AT_LEAST,
        citation=tile.citation,
        says=(
            f"The slope is at or above the tile's least pitch, {least_deg:g}°."
            if enough
            else f"The slope is {misfit(least_deg - pitch_deg, unit='°')} too flat for this tile. Choose another."
        ),
    )


def _against_default(*, where: str, pitch_deg: float, tile: SingleLapTile, edition: Edition) -> Finding:
    least = single_lap_pitch_least(edition)
    steep_enough = pitch_deg >= least.value - TOUCH
    if not steep_enough and tile.pitch_min_deg is not None and pitch_deg >= tile.pitch_min_deg - TOUCH:
        return not_covered(
            rule="pitch default",
            where=where,
            proposed=pitch_deg,
            unit="deg",
            citation=least.citation,
            says=(
                f"Below {least.value:g}° a single-lap tile needs evidence of performance. The record allows "
                f"{tile.pitch_min_deg:g}°: have the maker's written figure for pitch and lap before it is laid."
            ),
        )
    return Finding(
        rule="pitch default",
        where=where,
        proposed=pitch_deg,
        limit=least.value,
        unit="deg",
        sense=Sense.AT_LEAST,
        citation=least.citation,
        says=(
            f"At or above {least.value:g}° no further evidence is asked for."
            if steep_enough
            else f"Below {least.value:g}° a single-lap tile needs evidence of performance, and the record gives none."
        ),
    )
