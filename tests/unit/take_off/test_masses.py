"""Mass on the roof and off it: all slopes, lead and edges; unknown where a slope is not weighed."""

import pytest

from gaugerod.take_off.answer import Masses
from gaugerod.take_off.masses import mass_findings, masses
from tests.scenario.take_off_asks import ask, edge, edges, laid, lead, load, part

UNKNOWN = Masses(new_least_kg=None, new_greatest_kg=None, old_least_kg=None, old_greatest_kg=None)


def test_nothing_weighed_nothing_told_and_nothing_found() -> None:
    assert UNKNOWN == masses(ask())
    assert [] == list(mass_findings(ask()))


def test_areas_by_masses_with_lead_and_edges_on_top() -> None:
    roof = edges(edge("ridge", part("ridge-unit", 20.0, mass_kg=90.0), lead_pieces=(lead(),)))
    asked = ask(loads=(load(old=(60.0, 70.0)),), edges=roof)
    found = masses(asked)
    lead_kg = 2 * 1.5 * 0.3 * 20.41
    assert 20 * 45 + 90 + lead_kg == pytest.approx(found.new_least_kg)
    assert 20 * 50 + 90 + lead_kg == pytest.approx(found.new_greatest_kg)
    assert (1200.0, 1400.0) == (found.old_least_kg, found.old_greatest_kg)
    assert [] == list(mass_findings(asked))


def test_one_slope_that_nobody_knows_leaves_the_whole_unknown() -> None:
    slopes = (laid("front"), laid("rear"))
    both = masses(ask(*slopes, loads=(load("front"), load("rear", total=None, old=(60.0, 70.0)))))
    assert UNKNOWN == both


@pytest.mark.parametrize("missing", ["slopes", "not_laid", "not_set_out"])
def test_a_slope_that_is_not_weighed_is_named_and_no_mass_is_told(missing: str) -> None:
    asked = ask(laid("front"), laid("rear")) if missing == "slopes" else ask(laid("front"), **{missing: ("rear",)})
    asked = ask(
        *asked.slopes, loads=(load("front", old=(60.0, 70.0)),), not_laid=asked.not_laid, not_set_out=asked.not_set_out
    )
    assert UNKNOWN == masses(asked)
    (finding,) = mass_findings(asked)
    assert ("rear", None, "kg") == (finding.where, finding.limit, finding.unit)


def test_edge_parts_of_unknown_mass_are_named() -> None:
    roof = edges(edge("verge", part("undercloak", 5.0), part("ridge-unit", 20.0, mass_kg=90.0), part("mortar", 12.0)))
    (finding,) = mass_findings(ask(loads=(load(),), edges=roof))
    assert "No mass is known for these, and the mass on the roof leaves them out: mortar; undercloak." == finding.says
    assert 20 * 45 + 90 == masses(ask(loads=(load(),), edges=roof)).new_least_kg
