"""Every fault of the measurements, told together by the fields of the file."""

from dataclasses import replace
from math import inf, nan

import pytest

from gaugerod.as_built.ask import BattensMeasured, MarginsMeasured, RoofAsk
from gaugerod.as_built.check_roof import check_roof
from gaugerod.basis.errors import InputRefused, NothingToSetOut
from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap_catalogue import plain_tile, sized_slate
from tests.scenario.roofs_as_built import EXAMPLE, TILE, at_gaps, battens, roof

GOOD = battens(*at_gaps(320, 320))


def faults_of(ask: RoofAsk) -> list[str]:
    with pytest.raises(InputRefused) as refused:
        check_roof(ask)
    return [fault.field for fault in refused.value.faults]


def test_no_place_at_all_is_refused() -> None:
    assert ["rod"] == faults_of(roof())


@pytest.mark.parametrize("wrong_mm", [nan, inf, -1.0, 0.0, 100_000.1])
def test_a_length_that_is_none_is_refused_wherever_it_stands(wrong_mm: float) -> None:
    rod = BattensMeasured(at_mm=0.0, length_mm=wrong_mm, marks_mm=(330.0, wrong_mm, 970.0))
    assert ["rod[0].rafter", "rod[0].marks[1]"] == faults_of(roof(rod))


@pytest.mark.parametrize("at_mm", [nan, inf, -0.1, 100_000.1])
def test_a_place_off_the_roof_is_refused(at_mm: float) -> None:
    assert ["rod[0].at"] == faults_of(roof(replace(GOOD, at_mm=at_mm)))


def test_places_out_of_order_and_unlike_counts_are_told_together() -> None:
    second = battens(*at_gaps(320), at_mm=0.0)
    assert ["rod[1]", "rod[1].at"] == faults_of(roof(GOOD, second))


def test_battens_out_of_order_or_past_the_apex_are_refused() -> None:
    rod = BattensMeasured(at_mm=0.0, length_mm=900.0, marks_mm=(330.0, 330.0, 970.0))
    assert ["rod[0].marks[1]", "rod[0].marks"] == faults_of(roof(rod))


def test_a_lap_needs_two_courses_and_a_double_lap_three() -> None:
    assert ["rod[0].marks"] == faults_of(roof(battens(330.0)))
    two = battens(*at_gaps(100, first_mm=204.0))
    assert ["rod[0].marks"] == faults_of(roof(two, covering=plain_tile("clay-plain-265x165")))


def test_slates_cannot_be_told_from_their_battens() -> None:
    assert ["rod[0].marks"] == faults_of(roof(GOOD, covering=sized_slate("slate-500x250"), pitch_deg=30.0))


def test_an_overhang_longer_than_the_tile_hangs_is_refused() -> None:
    rod = MarginsMeasured(at_mm=0.0, length_mm=1000.0, overhang_mm=380.0, margins_mm=(320.0,))
    assert ["rod[0].overhang"] == faults_of(roof(rod))


def test_a_slate_no_table_answers_for_needs_its_lap_stated() -> None:
    rod = MarginsMeasured(at_mm=0.0, length_mm=1500.0, overhang_mm=50.0, margins_mm=(200.0, 200.0))
    assert ["roof.headlap"] == faults_of(roof(rod, covering=sized_slate("slate-500x250"), pitch_deg=21.0))


def test_a_single_lap_tile_has_its_lap_in_its_record() -> None:
    assert ["roof.headlap"] == faults_of(replace(roof(GOOD), headlap=Limit(value=80.0, unit="mm", citation=EXAMPLE)))


def test_a_stated_lap_of_slates_is_the_one_held() -> None:
    rod = MarginsMeasured(at_mm=0.0, length_mm=1500.0, overhang_mm=50.0, margins_mm=(200.0, 200.0))
    flat = roof(rod, covering=sized_slate("slate-500x250"), pitch_deg=21.0, finished=False)
    check = check_roof(replace(flat, headlap=Limit(value=110.0, unit="mm", citation=EXAMPLE)))
    assert [10.0] == [lap.short_by_mm for lap in check.rods[0].laps]
    assert "headlap of the edition" in {finding.rule for finding in check.findings}


def test_a_tile_whose_hanging_length_is_not_known_cannot_be_checked() -> None:
    with pytest.raises(NothingToSetOut, match="hanging length"):
        check_roof(roof(GOOD, covering=replace(TILE, hanging_length_mm=None)))
