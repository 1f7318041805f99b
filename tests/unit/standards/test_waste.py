"""The allowances: each with its figure, in per cent, and how sure it is."""

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.standards.edition import Edition
from gaugerod.standards.waste import WasteFigure, waste_figure

FIGURES = {
    WasteFigure.FLAT_SIZED_SLATES: (2.5, Basis.PUBLISHED),
    WasteFigure.FLAT_RANDOM_SLATES: (5.0, Basis.PUBLISHED),
    WasteFigure.FLAT_TILES: (5.0, Basis.COMMON_PRACTICE),
    WasteFigure.FLAT_MANY_HIPS_LEAST: (7.5, Basis.COMMON_PRACTICE),
    WasteFigure.FLAT_MANY_HIPS_GREATEST: (10.0, Basis.COMMON_PRACTICE),
    WasteFigure.BREAKAGE: (2.0, Basis.HOUSE),
    WasteFigure.FIXINGS_DROPPED: (5.0, Basis.HOUSE),
    WasteFigure.LINE_UNITS_BREAKAGE: (2.0, Basis.HOUSE),
    WasteFigure.MORTAR_LOST: (10.0, Basis.HOUSE),
    WasteFigure.TIMBER_BY_THE_METRE: (10.0, Basis.COMMON_PRACTICE),
    WasteFigure.ROLLS_BY_THE_METRE: (5.0, Basis.HOUSE),
}


@pytest.mark.parametrize("which", list(WasteFigure))
def test_every_allowance(which: WasteFigure) -> None:
    limit = waste_figure(Edition.GB, which)
    assert (*FIGURES[which], "percent") == (limit.value, limit.citation.basis, limit.unit)
    assert limit.citation.source
