"""Ventilation just below, at and just above each boundary; what the sources leave open."""

from dataclasses import replace

import pytest

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.coverings.underlay import Resistance
from gaugerod.rules.ventilation import (
    BuildingSize,
    Ceiling,
    Insulated,
    OpeningsNeeded,
    VentConditions,
    openings_needed,
)
from gaugerod.standards.edition import Edition

FELT = VentConditions(
    pitch_deg=30.0, underlay=Resistance.HIGH, air_permeable=False, insulated=Insulated.AT_CEILING, ceiling=Ceiling.NORMAL,
    building=BuildingSize.DWELLING, covering_air_open=True, span_mm=8000.0, mono=False, through_flow=True,
)  # fmt: skip


def needed(conditions: VentConditions) -> OpeningsNeeded:
    return openings_needed(where="roof", conditions=conditions, edition=Edition.GB)


def eaves_mm(conditions: VentConditions) -> float | None:
    opening = needed(conditions).eaves
    return None if opening is None else opening.value


def high_mm(conditions: VentConditions) -> float | None:
    opening = needed(conditions).high
    return None if opening is None else opening.value


def test_low_pitch_is_15_degrees_and_less() -> None:
    assert [25.0, 25.0, 10.0] == [eaves_mm(replace(FELT, pitch_deg=pitch)) for pitch in (14.9, 15.0, 15.1)]


def test_steep_is_35_degrees_and_over_and_wide_10_metres_and_over() -> None:
    assert [None, 5.0, 5.0] == [high_mm(replace(FELT, pitch_deg=pitch)) for pitch in (34.9, 35.0, 35.1)]
    assert [None, 5.0, 5.0] == [high_mm(replace(FELT, span_mm=span)) for span in (9999.0, 10000.0, 10001.0)]


def test_a_figure_on_a_boundary_is_said_to_be_and_no_other() -> None:
    for conditions, count in (
        (replace(FELT, pitch_deg=15.0), 1),
        (replace(FELT, pitch_deg=15.1), 0),
        (replace(FELT, pitch_deg=35.0, span_mm=10000.0), 2),
        (replace(FELT, pitch_deg=34.9, span_mm=9999.0), 0),
        (replace(FELT, pitch_deg=15.0, underlay=Resistance.LOW), 0),
    ):
        assert count == sum("guides differ" in finding.says for finding in needed(conditions).findings)


def test_a_span_that_is_not_known_is_taken_as_wide_and_said_so() -> None:
    unknown = replace(FELT, span_mm=None)
    assert 5.0 == high_mm(unknown)
    assert [Verdict.NOT_COVERED] == [finding.verdict for finding in needed(unknown).findings]


def test_larger_building_with_a_normal_ceiling_stands_on_memory() -> None:
    opening = needed(replace(FELT, underlay=Resistance.LOW, building=BuildingSize.LARGER)).eaves
    assert opening is not None
    assert (10.0, "memory") == (opening.value, opening.citation.basis.value)


def test_close_slates_over_low_resistance_ventilate_the_batten_space() -> None:
    close = needed(replace(FELT, underlay=Resistance.LOW, covering_air_open=False))
    assert close.batten_low is not None
    assert close.batten_high is not None
    assert (25.0, 5.0) == (close.batten_low.value, close.batten_high.value)
    assert needed(replace(FELT, covering_air_open=False)).batten_low is None


def test_low_resistance_at_low_pitch_and_along_the_slope_are_said_to_be_open() -> None:
    low = replace(FELT, underlay=Resistance.LOW)
    assert [] == list(needed(replace(low, pitch_deg=15.1)).findings)
    assert [Verdict.NOT_COVERED] == [finding.verdict for finding in needed(replace(low, pitch_deg=15.0)).findings]
    warm = needed(replace(low, insulated=Insulated.ALONG_SLOPE))
    assert [Verdict.NOT_COVERED] == [finding.verdict for finding in warm.findings]
    assert warm.eaves is not None
    assert 25.0 == warm.eaves.value


def test_the_ridge_stands_for_the_eaves_only_where_no_other_source_asks_for_it() -> None:
    sealed = replace(FELT, underlay=Resistance.LOW, ceiling=Ceiling.WELL_SEALED)
    assert needed(sealed).instead_high is not None
    assert needed(replace(sealed, mono=True)).instead_high is None
    assert 5.0 == high_mm(replace(sealed, mono=True))
    assert needed(FELT).instead_high is None


@pytest.mark.parametrize("figure", [float("nan"), float("inf"), -1.0, 0.0])
def test_figures_that_cannot_be_are_refused(figure: float) -> None:
    with pytest.raises(NothingToSetOut):
        needed(replace(FELT, pitch_deg=figure))
    with pytest.raises(NothingToSetOut):
        needed(replace(FELT, span_mm=figure))
