"""The offcut plan: sound against shapely, and the greatest saving against integer programming."""

from collections import Counter
from dataclasses import replace
from itertools import combinations

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp
from shapely import Polygon, box
from shapely.affinity import translate

from gaugerod.laying.ask import LayingAsk, OffcutRule
from gaugerod.laying.cut_unit import CutUnit
from gaugerod.laying.cutting import cut_units
from gaugerod.laying.lay import lay
from gaugerod.laying.offcuts import KERF_MM, _Reaches, from_wider_units, plan_offcuts
from tests.property.random_laying import random_slopes

FAST = settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much]
)
SLOW = settings(FAST, max_examples=1500)


def check_that_pairs_fit(ask: LayingAsk) -> None:
    pieces = cut_units(ask, lay(ask))
    plan = plan_offcuts([pieces], unit=ask.unit)
    used = Counter(at for use in plan.uses for at in (use.first, use.second))
    assert set(used.values()) <= {1}
    assert sum(count for _, count in plan.by_edges) == plan.saved_count
    for use in plan.uses:
        first, second = pieces[use.first], pieces[use.second]
        assert first.length_mm == second.length_mm
        assert not {use.first, use.second} & from_wider_units(pieces)
        unit = box(0.0, 0.0, ask.unit.width_mm, first.length_mm).buffer(1e-6)
        laid = [
            translate(Polygon(piece.own_rings_mm[0]), shift_mm)
            for piece, shift_mm in ((first, use.first_shift_mm), (second, use.second_shift_mm))
        ]
        assert laid[0].distance(laid[1]) >= KERF_MM - 1e-6
        assert all(unit.covers(it) for it in laid)
        if ask.unit.offcut_rule is OffcutRule.IN_PLACE:
            assert (use.first_shift_mm, use.second_shift_mm) == (0.0, 0.0)


@FAST
@given(random_slopes())
def test_two_pieces_of_a_pair_lie_apart_inside_one_unit(ask: LayingAsk) -> None:
    check_that_pairs_fit(ask)


@pytest.mark.slow
@SLOW
@given(random_slopes())
def test_two_pieces_of_a_pair_lie_apart_inside_one_unit_many_times(ask: LayingAsk) -> None:
    check_that_pairs_fit(ask)


def most_by_integer_programming(count: int, pairs: list[tuple[int, int]]) -> int:
    if not pairs:
        return 0
    once = np.zeros((count, len(pairs)))
    for at, pair in enumerate(pairs):
        once[pair, at] = 1.0
    solved = milp(-np.ones(len(pairs)), constraints=LinearConstraint(once, ub=np.ones(count)),
                  integrality=np.ones(len(pairs), dtype=np.int_), bounds=Bounds(0, 1))  # fmt: skip
    assert solved.fun is not None
    return round(-solved.fun)


def some_pieces(ask: LayingAsk, start: int) -> list[CutUnit]:
    """Up to 40 pieces, from anywhere on the slope."""
    pieces = cut_units(ask, lay(ask))
    first = start % max(len(pieces) - 39, 1)
    return list(pieces[first : first + 40])


@FAST
@given(random_slopes(), st.integers(0, 10**6))
def test_no_choice_of_pairs_saves_more(ask: LayingAsk, start: int) -> None:
    some = some_pieces(ask, start)
    pieces = [piece for at, piece in enumerate(some) if at not in from_wider_units(some)]
    partners = _Reaches(pieces, ask.unit, KERF_MM).partners()
    pairs = [(one, other) for one, other in combinations(range(len(pieces)), 2) if partners[one] >> other & 1]
    assert all((partners[one] >> other & 1) == (partners[other] >> one & 1) for one, other in pairs)
    assert most_by_integer_programming(len(pieces), pairs) == plan_offcuts([pieces], unit=ask.unit).saved_count


@FAST
@given(random_slopes(), st.integers(0, 10**6))
def test_no_two_pieces_that_a_saw_could_part_are_overlooked(ask: LayingAsk, start: int) -> None:
    """Pieces without a notch, in place: if shapely finds them apart, a saw line parts them. A tenth of a mm is
    given, for cuts of fanned courses that are taken as parallel.
    """
    pieces = [piece for piece in some_pieces(ask, start) if is_convex(piece)]
    partners = _Reaches(pieces, replace(ask.unit, offcut_rule=OffcutRule.IN_PLACE), -0.1).partners()
    for one, other in combinations(range(len(pieces)), 2):
        if pieces[one].length_mm == pieces[other].length_mm:
            apart = Polygon(pieces[one].own_rings_mm[0]).distance(Polygon(pieces[other].own_rings_mm[0])) > 1e-3
            assert not apart or partners[one] >> other & 1


def is_convex(piece: CutUnit) -> bool:
    outline = Polygon(piece.own_rings_mm[0])
    return outline.convex_hull.area - outline.area < 1e-3
