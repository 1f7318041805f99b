"""Units for the ventilation openings: strips and single vents, at the eaves and at a ridge two slopes share."""

from dataclasses import replace
from math import inf, nan

import pytest

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.basis.working import Step
from gaugerod.edges.air_openings import Level, air_openings
from gaugerod.edges.air_units import AirAtLine, air_units, air_units_count
from gaugerod.edges.ask import EdgeLine, EdgesAsk, LineKind
from gaugerod.edges.wished import AirUnit, AirUnitsWished, EdgesWished
from gaugerod.rules.ventilation import OpeningsNeeded
from gaugerod.substrate.ventilation.openings import Ventilation, VentOpening
from tests.scenario.edged_roofs import edges_ask, line, vent

STRIP = AirUnit(title="over-fascia strip", area_mm2=10_000.0, length_mm=1000.0)
VENT = AirUnit(title="ridge vent", area_mm2=16_000.0)
RIDGE = line(LineKind.RIDGE)
EAVES = line(LineKind.EAVES)
NONE_NEEDED = OpeningsNeeded(
    eaves=None, high=None, instead_high=None, batten_low=None, batten_high=None, clear_void=None, findings=()
)


def air(
    slope: str,
    *,
    low: tuple[VentOpening, ...] = (),
    high: tuple[VentOpening, ...] = (),
    instead: tuple[VentOpening, ...] = (),
) -> Ventilation:
    return Ventilation(
        where=slope,
        needed=NONE_NEEDED,
        low=low,
        high=high,
        instead=instead,
        findings=(),
        says=(),
        working=Step(name="", formula="", inputs={}, value=0.0, unit="mm2"),
    )


def roof(*wanted: Ventilation, lines: tuple[EdgeLine, ...] = (RIDGE, EAVES), low: AirUnit | None = STRIP,
         high: AirUnit | None = VENT) -> EdgesAsk:  # fmt: skip
    return edges_ask(*lines, wished=EdgesWished(air=AirUnitsWished(low=low, high=high)), air=wanted)


def at(ask: EdgesAsk, name: str) -> AirAtLine:
    return air_units(ask)[0][name]


def net(found: AirAtLine) -> list[tuple[str, float]]:
    return [(part.item, part.net) for part in found.parts]


def test_strips_go_the_whole_length_of_the_eaves() -> None:
    found = at(roof(air("rear", low=(vent("eaves", slot_mm=10.0),))), "rear, eaves")
    assert [("air-unit-low", 9.0)] == net(found)
    assert [Verdict.WITHIN] == [each.verdict for each in found.findings]


@pytest.mark.parametrize(
    ("slot_mm", "verdict"), [(9.9, Verdict.WITHIN), (10.0, Verdict.WITHIN), (10.1, Verdict.OUTSIDE)]
)
def test_a_strip_that_gives_less_than_is_asked_for_is_outside(slot_mm: float, verdict: Verdict) -> None:
    """10000 mm² in each metre is a slot of 10 mm."""
    found = at(roof(air("rear", low=(vent("eaves", slot_mm=slot_mm),))), "rear, eaves")
    assert [(verdict, 10.0, slot_mm)] == [(each.verdict, each.proposed, each.limit) for each in found.findings]


@pytest.mark.parametrize(("length_mm", "area_mm2"), [(1250.0, 10_000.0), (2000.0, 16_000.0)])
def test_a_strip_gives_its_area_over_its_own_length(length_mm: float, area_mm2: float) -> None:
    strip = AirUnit(title="strip", area_mm2=area_mm2, length_mm=length_mm)
    found = at(roof(air("rear", low=(vent("eaves", slot_mm=10.0),)), low=strip), "rear, eaves")
    assert [(Verdict.OUTSIDE, 8.0)] == [(each.verdict, each.proposed) for each in found.findings]


def test_single_vents_go_by_their_area() -> None:
    found = at(roof(air("rear", high=(vent("ridge", slot_mm=5.0),))), RIDGE.name)
    assert [("air-unit-high", 3.0)] == net(found)  # 45000 mm² by 16000
    assert () == found.findings
    assert "one about every 3000 mm" in found.says[0]


def test_a_ridge_two_slopes_share_has_one_opening_the_wider() -> None:
    both = roof(
        air("front", high=(vent("ridge", slot_mm=5.0),)),
        air("rear", high=(vent("ridge", slot_mm=7.0, length_mm=9010.0),)),
    )
    (opening,) = air_openings(both)
    assert (7.0, 9010.0, ("front", "rear"), Level.HIGH) == (
        opening.slot_mm,
        opening.length_mm,
        opening.slopes,
        opening.level,
    )
    assert [("air-unit-high", 4.0)] == net(at(both, RIDGE.name))  # 63070 mm² by 16000
    assert any("serves both" in said for said in at(both, RIDGE.name).says)


def test_openings_into_two_spaces_are_two() -> None:
    two = (vent("eaves", slot_mm=10.0), vent("eaves", slot_mm=5.0, serves="the space between counter-battens"))
    assert [("air-unit-low", 9.0), ("air-unit-low", 9.0)] == net(at(roof(air("rear", low=two)), "rear, eaves"))


INSTEAD = air("rear", low=(vent("eaves", slot_mm=3.0),), instead=(vent("ridge", slot_mm=5.0),))


def test_openings_instead_are_counted_only_where_the_eaves_have_no_units() -> None:
    both = roof(INSTEAD)
    assert [] == net(at(both, RIDGE.name))
    assert "Units are counted at the eaves" in at(both, RIDGE.name).says[0]
    high_only = roof(INSTEAD, low=None)
    assert [("air-unit-high", 3.0)] == net(at(high_only, RIDGE.name))
    assert any("in place of openings at the eaves" in said for said in at(high_only, RIDGE.name).says)
    assert {RIDGE.name} == air_units(high_only)[0].keys()


def test_with_no_units_given_none_are_counted() -> None:
    assert ({}, ()) == air_units(roof(INSTEAD, low=None, high=None))


def test_two_ridges_of_one_slope_each_have_their_own() -> None:
    short = replace(RIDGE, name="front and rear, ridge 2", length_mm=4000.0)
    two = (vent("ridge", slot_mm=5.0, length_mm=4000.0), vent("ridge 2", slot_mm=5.0))
    found, _ = air_units(roof(air("rear", high=two), lines=(RIDGE, short, EAVES)))
    assert [("air-unit-high", 3.0)] == net(found[RIDGE.name])
    assert [("air-unit-high", 2.0)] == net(found[short.name])  # 20000 mm² by 16000


def test_an_opening_at_no_line_of_the_roof_is_not_counted_and_that_is_found() -> None:
    at_lines, found = air_units(roof(air("rear", low=(vent("lower eaves", slot_mm=10.0),)), high=None))
    assert {} == at_lines
    assert [(Verdict.NOT_COVERED, "rear, lower eaves")] == [(each.verdict, each.where) for each in found]


def test_units_that_no_opening_asks_for_are_found() -> None:
    _, found = air_units(roof())
    assert ["air at low level", "air at high level"] == [each.where for each in found]


@pytest.mark.parametrize("wrong", [nan, inf, -inf, 0.0, -1.0])
def test_no_units_are_counted_of_what_is_no_measurement(wrong: float) -> None:
    for unit, slot_mm, length_mm in (
        (STRIP, wrong, 9000.0),
        (STRIP, 10.0, wrong),
        (replace(STRIP, length_mm=wrong), 10.0, 9000.0),
        (replace(VENT, area_mm2=wrong), 10.0, 9000.0),
    ):
        with pytest.raises(NothingToSetOut, match="air units, eaves"):
            air_units_count(where="eaves", unit=unit, slot_mm=slot_mm, length_mm=length_mm)
