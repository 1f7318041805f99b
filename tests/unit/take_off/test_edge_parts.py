"""Parts of edges gathered over the whole roof; lead by code and width; what is worked out beneath."""

import pytest

from gaugerod.edges.answer import LeadUse, PartUnit
from gaugerod.take_off.answer import Trade
from gaugerod.take_off.edge_parts import edges_measured
from tests.scenario.take_off_asks import edge, edges, lead, part


def test_no_edges_no_parts() -> None:
    assert [] == list(edges_measured(None))
    assert [] == list(edges_measured(edges()))


def test_like_parts_of_all_edges_come_together_and_each_edge_is_named() -> None:
    roof = edges(
        edge("front ridge", part("ridge-unit", 20.0, mass_kg=90.0), part("ridge-batten", 9.0, PartUnit.METRES)),
        edge("rear ridge", part("ridge-unit", 5.0, mass_kg=22.5)),
    )
    batten, units = edges_measured(roof)
    assert ("ridge-unit", 25.0, "pieces", Trade.EDGES) == (units.item, units.net, units.unit, units.trade)
    assert (("front ridge", 20.0), ("rear ridge", 5.0)) == units.by_slope
    assert 4.5 == units.each_kg
    assert ("ridge-batten", 9.0, "m", "counted") == (batten.item, batten.net, batten.unit, batten.how)


def test_one_mass_that_is_not_known_leaves_all_of_that_item_unknown() -> None:
    roof = edges(edge("a", part("ridge-unit", 20.0, mass_kg=90.0)), edge("b", part("ridge-unit", 5.0)))
    assert [None] == [each.each_kg for each in edges_measured(roof)]


def test_parts_of_one_item_that_differ_in_size_stand_apart() -> None:
    kits = [part("opening-kit", 1.0, what=f"kit {size}") for size in ("780 × 1180", "550 × 980", "780 × 1180")]
    roof = edges(*(edge(f"light {at}", kit) for at, kit in enumerate(kits)))
    assert [("opening-kit-1", "kit 550 × 980", 1.0), ("opening-kit-2", "kit 780 × 1180", 2.0)] == [
        (each.item, each.what, each.net) for each in edges_measured(roof)
    ]


def test_air_units_are_a_trade_of_their_own() -> None:
    found = edges_measured(edges(edge("eaves", part("air-unit-low", 8.0), part("air-unit-high", 4.0))))
    assert {Trade.AIR} == {each.trade for each in found}


def test_lead_is_bought_by_code_and_width_in_kilograms_and_its_metres_are_said() -> None:
    roof = edges(
        edge("wall", lead_pieces=(lead(), lead(LeadUse.COVER_FLASHING, count=1, length_mm=800.0))),
        edge("stack", lead_pieces=(lead(code=5, kg_m2=25.4), lead(width_mm=150.0, count=1))),
    )
    found = list(edges_measured(roof))
    assert ["lead-code-4-150", "lead-code-4-300", "lead-code-5-300"] == [each.item for each in found]
    of_wall = found[1]
    # (2 × 1.5 m + 0.8 m) × 0.3 m × 20.41 kg/m²
    assert 23.2674 == pytest.approx(of_wall.net)
    assert (1.0, "kg") == (of_wall.each_kg, of_wall.unit)
    assert "sheet lead code 4, 300 mm wide, 3.80 m: apron, cover flashing" == of_wall.what
    assert "3 pieces, laps counted, at 20.41 kg/m²" == of_wall.how
    assert "1 piece, laps counted, at 20.41 kg/m²" == found[0].how
    assert roof.lead_kg == pytest.approx(sum(each.net for each in found))
