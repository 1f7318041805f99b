"""Every line and opening once, in order, with its air; faults all together; findings once each."""

from dataclasses import replace
from math import inf, nan

import pytest

from gaugerod.basis.errors import InputRefused
from gaugerod.basis.finding import Verdict
from gaugerod.basis.working import Step
from gaugerod.edges.ask import EdgeOpening, LineKind
from gaugerod.edges.make_edges import make_edges
from gaugerod.edges.wished import (
    AirUnit,
    AirUnitsWished,
    EavesWished,
    EdgesWished,
    LineUnit,
    OpeningMade,
    RidgeMade,
    RidgeWished,
    VergeMade,
    VergeWished,
)
from gaugerod.rules.ventilation import OpeningsNeeded
from gaugerod.substrate.ventilation.openings import Ventilation
from tests.scenario.edged_roofs import edges_ask, items, line, vent

LINES = tuple(line(kind) for kind in LineKind)
UNIT = LineUnit(length_mm=460.0, cover_mm=450.0)
RIDGE = RidgeWished(made=RidgeMade.DRY, ridge=UNIT)
NO_NEED = OpeningsNeeded(
    eaves=None, high=None, instead_high=None, batten_low=None, batten_high=None, clear_void=None, findings=()
)
CHIMNEY = EdgeOpening(
    name="chimney", slope="rear", width_mm=600.0, height_mm=700.0, made=OpeningMade.CHIMNEY, courses_count=2
)


def test_every_line_and_opening_is_there_once_in_order() -> None:
    made = make_edges(replace(edges_ask(*LINES, wished=EdgesWished(ridge=RIDGE)), openings=(CHIMNEY,)))
    assert [each.name for each in LINES] == [each.name for each in made.edges[:-1]]
    assert CHIMNEY == made.edges[-1].opening
    assert len(LINES) + 1 == made.working.value
    assert [each.working for each in made.edges] == list(made.working.parts)


def test_what_is_not_said_takes_nothing() -> None:
    told = [each for each in make_edges(edges_ask(*LINES, wished=EdgesWished())).edges if each.line is not None]
    for edge in told:
        assert ("", (), (), ()) == (edge.made, edge.parts, edge.lead, edge.findings)
        assert len(edge.says) == 1
        assert "[edges." in edge.says[0]


def test_air_units_stand_with_the_edge_they_go_along() -> None:
    low = Ventilation(
        where="rear",
        needed=NO_NEED,
        low=(vent("eaves", slot_mm=25.0),),
        high=(),
        instead=(),
        findings=(),
        says=(),
        working=Step(name="", formula="", inputs={}, value=0.0, unit="mm2"),
    )
    strip = AirUnit(title="strip", area_mm2=10_000.0, length_mm=1000.0)
    wished = EdgesWished(eaves=EavesWished(tray_length_mm=1500.0), air=AirUnitsWished(low=strip, high=strip))
    made = make_edges(edges_ask(line(LineKind.EAVES), line(LineKind.RIDGE), wished=wished, air=(low,)))
    eaves, ridge = made.edges
    assert ["eaves-tray", "air-unit-low"] == items(eaves)
    assert () == ridge.parts
    assert "air units" in [finding.rule for finding in eaves.findings]
    assert "rear, eaves: air units" in [step.name for step in eaves.working.parts]
    assert ["air at high level"] == [each.where for each in made.findings if each not in eaves.findings]


def test_findings_come_once_each() -> None:
    made = make_edges(edges_ask(*LINES, wished=EdgesWished(ridge=RIDGE, verge=VergeWished(made=VergeMade.BEDDED))))
    assert len(set(made.findings)) == len(made.findings)
    assert {finding for edge in made.edges for finding in edge.findings} <= set(made.findings)


def test_a_line_the_covering_stops_short_of_takes_nothing_and_is_found() -> None:
    short = line(LineKind.EAVES, length_mm=20.0, past_ends_mm=-20.0)
    (edge,) = make_edges(edges_ask(short, wished=EdgesWished(eaves=EavesWished(tray_length_mm=1500.0)))).edges
    assert () == edge.parts
    assert [Verdict.NOT_COVERED] == [each.verdict for each in edge.findings]


@pytest.mark.parametrize("wrong", [nan, inf, 0.0, -1.0])
def test_every_fault_is_told_at_once(wrong: float) -> None:
    unit = replace(UNIT, length_mm=wrong, mass_kg=wrong, fixings_count=-1)
    wished = EdgesWished(
        ridge=RidgeWished(made=RidgeMade.DRY, ridge=unit, hip=replace(UNIT, cover_mm=460.1)),
        verge=VergeWished(made=VergeMade.BEDDED, undercloak_length_mm=wrong, bed_mm=wrong),
        eaves=EavesWished(tray_length_mm=wrong),
        air=AirUnitsWished(low=AirUnit(title="strip", area_mm2=wrong, length_mm=wrong)),
    )
    with pytest.raises(InputRefused) as refused:
        make_edges(edges_ask(line(LineKind.VERGE, length_mm=wrong), wished=wished))
    fields = [fault.field for fault in refused.value.faults]
    for field in (
        "rear, verge.length",
        "edges.ridge.unit.length",
        "edges.ridge.unit.fixings",
        "edges.ridge.unit.mass",
        "edges.ridge.hip_unit.cover",
        "edges.verge.undercloak",
        "edges.verge.bed",
        "edges.eaves.tray_length",
        "edges.air.low.area",
        "edges.air.low.length",
    ):
        assert field in fields


@pytest.mark.parametrize(
    ("wished", "field"),
    [
        (EavesWished(gap_mm=-0.1), "edges.eaves.gap"),
        (EavesWished(gap_mm=nan), "edges.eaves.gap"),
        (EavesWished(tray_length_mm=100.0), "edges.eaves.tray_length"),
    ],
)
def test_eaves_that_cannot_be_are_refused(wished: EavesWished, field: str) -> None:
    with pytest.raises(InputRefused) as refused:
        make_edges(edges_ask(line(LineKind.EAVES), wished=EdgesWished(eaves=wished)))
    assert [field] == [fault.field for fault in refused.value.faults]


def test_a_line_past_its_ends_by_no_length_and_with_fewer_courses_than_none_is_refused() -> None:
    wrong = line(LineKind.VERGE, past_ends_mm=nan, courses_count=(-1,))
    with pytest.raises(InputRefused) as refused:
        make_edges(edges_ask(wrong, wished=EdgesWished()))
    assert ["rear, verge.past_ends", "rear, verge.courses"] == [fault.field for fault in refused.value.faults]
