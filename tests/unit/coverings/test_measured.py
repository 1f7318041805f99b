"""Measure your own: figures in, a record out, or the reason why not."""

from dataclasses import replace
from math import inf, nan

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.errors import InputRefused
from gaugerod.coverings.measured import Measured, TenMeasured, TestLay, measure
from gaugerod.coverings.single_lap import Form, Material, SingleLapTile

WHOLE = TestLay(
    form=Form.FLAT,
    material=Material.CONCRETE,
    length_mm=420.0,
    width_mm=330.0,
    hanging_length_mm=398.0,
    lap_mm=75.0,
    gauge_at_lap_mm=345.0,
    closest_gauge_mm=295.0,
    ten_closed_mm=2976.0,  # nine covers of 294 and one whole width of 330
    ten_open_mm=3030.0,  # nine covers of 300 and one whole width of 330
    mass_kg=4.7,
    pitch_min_deg=30.0,
)


def measured(lay: TestLay) -> Measured:
    return measure(lay, name="own", title="Own tile")


def record_of(lay: TestLay) -> SingleLapTile:
    record = measured(lay).record
    assert record is not None
    return record


def faults_of(lay: TestLay) -> dict[str, str]:
    with pytest.raises(InputRefused) as refused:
        measured(lay)
    return {fault.field: fault.do for fault in refused.value.faults}


def test_a_whole_test_lay_makes_a_whole_record() -> None:
    found = measured(WHOLE)
    tile = record_of(WHOLE)
    assert (345.0, 295.0) == (tile.gauge_max_mm, tile.gauge_min_mm)
    assert (294.0, 300.0) == (tile.cover_closed_mm, tile.cover_open_mm)
    assert ((), ()) == (found.missing, found.says)
    assert (Basis.HOUSE, "measured on the tiles to be laid") == (tile.citation.basis, tile.citation.source)


def test_the_record_says_which_figures_were_measured_and_that_the_pitch_was_told() -> None:
    tile = record_of(WHOLE)
    assert "hanging_length_mm" in tile.measured
    assert "pitch_min_deg" not in tile.measured


def test_edge_to_edge_ten_units_are_ten_covers() -> None:
    lay = replace(WHOLE, ten_measured=TenMeasured.EDGE_TO_EDGE, ten_closed_mm=2940.0, ten_open_mm=3000.0)
    assert (294.0, 300.0) == (record_of(lay).cover_closed_mm, record_of(lay).cover_open_mm)


def test_gauge_and_lap_give_the_length_where_no_rule_was_used() -> None:
    assert 420.0 == record_of(replace(WHOLE, length_mm=None)).length_mm


def test_where_rule_and_lay_differ_a_little_the_shorter_is_used_and_said() -> None:
    lay = replace(WHOLE, gauge_at_lap_mm=342.0)
    assert (417.0, 342.0) == (record_of(lay).length_mm, record_of(lay).gauge_max_mm)
    assert "The shorter is used" in measured(lay).says[0]
    longer = replace(WHOLE, gauge_at_lap_mm=348.0)
    assert 345.0 == record_of(longer).gauge_max_mm


@pytest.mark.parametrize("gauge_mm", [341.9, 348.1])
def test_where_they_differ_by_more_both_are_refused_with_the_misfit(gauge_mm: float) -> None:
    assert "3.1 mm apart" in faults_of(replace(WHOLE, gauge_at_lap_mm=gauge_mm))["gauge_at_lap"]


@pytest.mark.parametrize(
    ("lay", "field", "prevents"),
    [
        (replace(WHOLE, hanging_length_mm=None), "hanging_length", "first batten"),
        (replace(WHOLE, closest_gauge_mm=None), "closest_gauge", "no least gauge"),
        (replace(WHOLE, ten_open_mm=None), "ten_closed and ten_open", "perps"),
        (replace(WHOLE, pitch_min_deg=None), "pitch_min", "ask the maker"),
        (replace(WHOLE, mass_kg=None), "mass", "load"),
        (replace(WHOLE, form=Form.PROFILED), "high_points", "crown"),
    ],
)
def test_a_figure_not_measured_leaves_a_record_and_says_what_it_prevents(
    lay: TestLay, field: str, prevents: str
) -> None:
    found = measured(lay)
    assert found.record is not None
    assert [field] == [missing for missing, _ in found.missing]
    assert prevents in found.missing[0][1]


@pytest.mark.parametrize(
    ("lay", "field"),
    [
        (replace(WHOLE, lap_mm=None), "lap"),
        (replace(WHOLE, width_mm=None), "width"),
        (replace(WHOLE, length_mm=None, gauge_at_lap_mm=None, closest_gauge_mm=None), "length"),
    ],
)
def test_without_length_lap_or_width_there_is_no_record_and_the_reason_is_given(lay: TestLay, field: str) -> None:
    found = measured(lay)
    assert found.record is None
    assert () == found.measured
    assert "no record" in dict(found.missing)[field]


@pytest.mark.parametrize("figure", [nan, inf, -1.0, 0.0])
def test_a_figure_that_cannot_be_is_refused(figure: float) -> None:
    assert {"width", "mass", "pitch_min"} == faults_of(
        replace(WHOLE, width_mm=figure, mass_kg=figure, pitch_min_deg=figure)
    ).keys()


@pytest.mark.parametrize(
    ("lay", "field", "misfit"),
    [
        (replace(WHOLE, closest_gauge_mm=346.0), "closest_gauge", "1.0 mm wider"),
        (replace(WHOLE, ten_closed_mm=3040.0), "ten_closed", "10.0 mm wider"),
        (replace(WHOLE, ten_open_mm=3310.0), "ten_open", "10.0 mm too wide"),
        (replace(WHOLE, ten_closed_mm=320.0), "ten_closed", "10.0 mm too narrow"),
        (replace(WHOLE, hanging_length_mm=425.0), "hanging_length", "5.0 mm too long"),
    ],
)
def test_figures_that_contradict_each_other_are_refused_with_the_misfit(lay: TestLay, field: str, misfit: str) -> None:
    assert misfit in faults_of(lay)[field]


def test_all_contradictions_are_told_together() -> None:
    lay = replace(WHOLE, gauge_at_lap_mm=300.0, ten_open_mm=3310.0, hanging_length_mm=500.0)
    assert {"gauge_at_lap", "ten_open", "hanging_length"} <= faults_of(lay).keys()


def test_the_lap_cannot_reach_the_length() -> None:
    lay = replace(WHOLE, lap_mm=420.0, gauge_at_lap_mm=None, closest_gauge_mm=None)
    assert {"covering.headlap_min"} == faults_of(lay).keys()
