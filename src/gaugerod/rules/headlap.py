"""Does each tile lap the one below by enough, and not by too much?

Source: the tile's own record; beside it NHBC Standards 7.2.19 (published): 75 mm or the maker's figure.
Scope: single-lap tiles. A lap may be increased, never reduced.
"""

from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unreal
from gaugerod.standards.defaults import single_lap_headlap_least
from gaugerod.standards.edition import Edition


def headlap(*, where: str, headlap_mm: float, tile: SingleLapTile, edition: Edition) -> tuple[Finding, Finding]:
    """The smallest lap on the slope (length − gauge, mm) against the record's least, then the edition's default.

    A lap of nothing or less is outside. Raises NothingToSetOut for a lap that is no measurement.
    Source and scope: see the head of this page.

    >>> from gaugerod.coverings.catalogue import covering
    >>> tile = covering("flat-interlocking-420x330")
    >>> [f.verdict.value for f in headlap(where="rear", headlap_mm=80.0, tile=tile, edition=Edition.GB)]
    ['within', 'within']
    >>> [f.verdict.value for f in headlap(where="rear", headlap_mm=75.0, tile=tile, edition=Edition.GB)]
    ['within', 'within']
    >>> [f.verdict.value for f in headlap(where="rear", headlap_mm=74.9, tile=tile, edition=Edition.GB)]
    ['outside', 'outside']
    """
    refuse_unreal(rule="headlap", where=where, value=headlap_mm, unit="mm")
    enough = headlap_mm >= tile.headlap_min_mm - TOUCH
    against_record = Finding(
        rule="headlap",
        where=where,
        proposed=headlap_mm,
        limit=tile.headlap_min_mm,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=tile.citation,
        says=(
            f"Every lap is at least the tile's least, {tile.headlap_min_mm:g} mm."
            if enough
            else f"The lap is {misfit(tile.headlap_min_mm - headlap_mm)} short of the tile's least. Close the gauge up."
        ),
    )
    return against_record, _against_default(where=where, headlap_mm=headlap_mm, tile=tile, edition=edition)


def greatest_headlap(*, where: str, headlap_mm: float, tile: SingleLapTile) -> Finding:
    """The greatest lap on the slope (mm) against the record's greatest: beyond it heads foul or nail holes show.

    Raises NothingToSetOut for a lap that is no measurement. Source: the tile's record. Scope: single-lap tiles.

    >>> from gaugerod.coverings.catalogue import covering
    >>> tile = covering("small-clay-300x230-narrow-gauge")
    >>> [greatest_headlap(where="rear", headlap_mm=lap, tile=tile).verdict.value for lap in (80.0, 85.0, 85.1)]
    ['within', 'within', 'outside']
    """
    refuse_unreal(rule="greatest headlap", where=where, value=headlap_mm, unit="mm")
    if tile.headlap_max_mm is None:
        return not_covered(
            rule="greatest headlap",
            where=where,
            proposed=headlap_mm,
            unit="mm",
            citation=tile.citation,
            says="The record gives no greatest lap. Try two tiles at this lap: they must seat and keep their holes.",
        )
    few_enough = headlap_mm <= tile.headlap_max_mm + TOUCH
    return Finding(
        rule="greatest headlap",
        where=where,
        proposed=headlap_mm,
        limit=tile.headlap_max_mm,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=tile.citation,
        says=(
            f"No lap is over the tile's greatest, {tile.headlap_max_mm:g} mm."
            if few_enough
            else f"The lap is {misfit(headlap_mm - tile.headlap_max_mm)} over the tile's greatest: it will not seat."
        ),
    )


def _against_default(*, where: str, headlap_mm: float, tile: SingleLapTile, edition: Edition) -> Finding:
    least = single_lap_headlap_least(edition)
    enough = headlap_mm >= least.value - TOUCH
    if not enough and headlap_mm >= tile.headlap_min_mm - TOUCH:
        return not_covered(
            rule="headlap default",
            where=where,
            proposed=headlap_mm,
            unit="mm",
            citation=least.citation,
            says=(
                f"The default is {least.value:g} mm or the maker's figure. The record allows "
                f"{tile.headlap_min_mm:g} mm: have the maker's written figure before it is laid."
            ),
        )
    return Finding(
        rule="headlap default",
        where=where,
        proposed=headlap_mm,
        limit=least.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=least.citation,
        says=(
            f"Every lap is at least the default, {least.value:g} mm."
            if enough
            else f"The lap is {misfit(least.value - headlap_mm)} short of the default, and of the tile's own least too."
        ),
    )
