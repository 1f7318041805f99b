"""Is the gauge inside the tile's range?

Source: the tile's own record; greatest gauge = length − least headlap, least gauge = length − greatest headlap.
Scope: single-lap tiles on battens; batten and tile move together, so the nib does not enter.
"""

from gaugerod.basis.citation import Citation
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing


def gauge(
    *, where: str, least_gauge_mm: float, greatest_gauge_mm: float, tile: SingleLapTile
) -> tuple[Finding, Finding]:
    """The widest gap between battens (mm) against the greatest gauge, and the closest against the least.

    Raises NothingToSetOut for gaps that are not above nothing, or that run backwards.
    Source and scope: see the head of this page.

    >>> from gaugerod.coverings.catalogue import covering
    >>> tile = covering("flat-interlocking-420x330")
    >>> [f.verdict.value for f in gauge(where="rear", least_gauge_mm=340.0, greatest_gauge_mm=341.0, tile=tile)]
    ['within', 'within']
    >>> [f.verdict.value for f in gauge(where="rear", least_gauge_mm=295.0, greatest_gauge_mm=345.0, tile=tile)]
    ['within', 'within']
    >>> [f.verdict.value for f in gauge(where="rear", least_gauge_mm=294.0, greatest_gauge_mm=346.0, tile=tile)]
    ['outside', 'outside']
    """
    for figure in (least_gauge_mm, greatest_gauge_mm):
        refuse_unless_above_nothing(rule="gauge", where=where, value=figure, unit="mm")
    if least_gauge_mm > greatest_gauge_mm + TOUCH:
        raise NothingToSetOut(f"gauge, {where}: least {least_gauge_mm:g} mm is over greatest {greatest_gauge_mm:g} mm")
    return (
        _greatest(where=where, gauge_mm=greatest_gauge_mm, tile=tile),
        _least(where=where, gauge_mm=least_gauge_mm, tile=tile),
    )


def gauge_citation(tile: SingleLapTile) -> Citation:
    """Where the gauge range comes from: the record's length and laps."""
    return Citation(source=f"length − headlap of the record ({tile.citation.source})", basis=tile.citation.basis)


def _greatest(*, where: str, gauge_mm: float, tile: SingleLapTile) -> Finding:
    inside = gauge_mm <= tile.gauge_max_mm + TOUCH
    return Finding(
        rule="greatest gauge",
        where=where,
        proposed=gauge_mm,
        limit=tile.gauge_max_mm,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=gauge_citation(tile),
        says=(
            f"No gap between battens is over {tile.gauge_max_mm:g} mm."
            if inside
            else f"A gap is {misfit(gauge_mm - tile.gauge_max_mm)} too wide, so the lap there is short by as much."
        ),
    )


def _least(*, where: str, gauge_mm: float, tile: SingleLapTile) -> Finding:
    least_mm = tile.gauge_min_mm
    if least_mm is None:
        return not_covered(
            rule="least gauge",
            where=where,
            proposed=gauge_mm,
            unit="mm",
            citation=gauge_citation(tile),
            says="The record gives no greatest lap, so no least gauge. Try two tiles at this gauge before nailing.",
        )
    inside = gauge_mm >= least_mm - TOUCH
    return Finding(
        rule="least gauge",
        where=where,
        proposed=gauge_mm,
        limit=least_mm,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=gauge_citation(tile),
        says=(
            f"No gap between battens is under {least_mm:g} mm."
            if inside
            else f"A gap is {misfit(least_mm - gauge_mm)} too close: the heads foul and the tiles will not seat."
        ),
    )
