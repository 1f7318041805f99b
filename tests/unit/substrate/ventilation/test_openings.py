"""The openings of one roof along its edges."""

from dataclasses import replace

import pytest

from gaugerod.basis.errors import InputRefused
from gaugerod.basis.finding import Verdict
from gaugerod.coverings.underlay import Resistance
from gaugerod.rules.ventilation import BuildingSize, Ceiling, Insulated, VentConditions
from gaugerod.standards.edition import Edition
from gaugerod.substrate.ventilation.openings import VentedEdge, VentilationAsk, ventilate

FELT = VentConditions(
    pitch_deg=40.0, underlay=Resistance.HIGH, air_permeable=False, insulated=Insulated.AT_CEILING, ceiling=Ceiling.NORMAL,
    building=BuildingSize.DWELLING, covering_air_open=True, span_mm=8000.0, mono=False, through_flow=True,
)  # fmt: skip
HOUSE = VentilationAsk(
    where="house",
    eaves=(VentedEdge(name="front eaves", length_mm=9000.0), VentedEdge(name="rear eaves", length_mm=7000.0)),
    tops=(VentedEdge(name="ridge", length_mm=6000.0),),
    conditions=FELT,
    edition=Edition.GB,
)


def test_each_eaves_and_the_ridge_have_their_own_opening() -> None:
    roof = ventilate(HOUSE)
    assert [("front eaves", 90000.0), ("rear eaves", 70000.0)] == [
        (each.edge.name, each.total_mm2) for each in roof.low
    ]
    assert [("ridge", 5000.0, 30000.0)] == [
        (each.edge.name, each.per_metre_mm2_per_m, each.total_mm2) for each in roof.high
    ]
    assert (160000.0, 30000.0) == (roof.low_total_mm2, roof.high_total_mm2)
    assert 190000.0 == roof.working.value
    assert "net free area" in roof.says[-1]


def test_low_resistance_over_a_sealed_ceiling_may_breathe_at_the_ridge_instead() -> None:
    sealed = replace(FELT, underlay=Resistance.LOW, ceiling=Ceiling.WELL_SEALED)
    roof = ventilate(replace(HOUSE, conditions=sealed))
    assert [3.0, 3.0] == [each.slot_mm for each in roof.low]
    assert [5.0] == [each.slot_mm for each in roof.instead]
    assert () == roof.high
    assert any(line.startswith("Or, in place of") for line in roof.says)


def test_close_slates_have_openings_into_the_batten_space_as_well() -> None:
    close = replace(FELT, underlay=Resistance.LOW, covering_air_open=False)
    roof = ventilate(replace(HOUSE, conditions=close))
    assert {("the roof space", 7.0), ("the space between counter-battens", 25.0)} == {
        (each.serves, each.slot_mm) for each in roof.low
    }
    assert [("the space between counter-battens", 5.0)] == [(each.serves, each.slot_mm) for each in roof.high]


def test_where_all_hips_meet_in_a_point_the_high_level_is_left_to_a_person() -> None:
    roof = ventilate(replace(HOUSE, tops=()))
    assert [Verdict.NOT_COVERED] == [finding.verdict for finding in roof.findings]
    assert not any("No opening at high level" in line for line in roof.says)
    assert any("No opening at high level" in line for line in ventilate(
        replace(HOUSE, tops=(), conditions=replace(FELT, pitch_deg=30.0))
    ).says)  # fmt: skip


def test_a_warm_roof_keeps_its_void_clear() -> None:
    roof = ventilate(replace(HOUSE, conditions=replace(FELT, insulated=Insulated.ALONG_SLOPE)))
    assert any("50 mm clear" in line for line in roof.says)


@pytest.mark.parametrize("length_mm", [float("nan"), float("inf"), -1.0, 0.0])
def test_edges_have_a_length(length_mm: float) -> None:
    with pytest.raises(InputRefused, match=r"house\.ridge"):
        replace(HOUSE, tops=(VentedEdge(name="ridge", length_mm=length_mm),))


def test_a_roof_has_eaves() -> None:
    with pytest.raises(InputRefused, match=r"house\.eaves"):
        replace(HOUSE, eaves=())


def test_longer_edges_take_more_in_proportion() -> None:
    double = replace(
        HOUSE, eaves=tuple(VentedEdge(name=edge.name, length_mm=edge.length_mm * 2) for edge in HOUSE.eaves)
    )
    assert ventilate(HOUSE).low_total_mm2 * 2 == ventilate(double).low_total_mm2
