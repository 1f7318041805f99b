"""The convex region and the least total of misses, against a general linear-programming library."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import linprog

from gaugerod.geometry.convex_region import HalfPlane, Wish, nearest, region

BOX = ((0.0, 0.0), (10.0, 10.0))
numbers = st.integers(-5, 5).map(float)


def test_a_box_is_its_own_region() -> None:
    assert ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)) == region([], within=BOX)


def test_nothing_is_left_of_contradicting_conditions() -> None:
    assert () == region([HalfPlane(1.0, 0.0, 6.0), HalfPlane(-1.0, 0.0, -5.0)], within=BOX)


def test_a_region_as_thin_as_a_line_is_kept() -> None:
    corners = region([HalfPlane(1.0, 0.0, 5.0), HalfPlane(-1.0, 0.0, -5.0)], within=BOX)
    assert {5.0} == {x for x, _ in corners}


@settings(max_examples=150, deadline=None)
@given(
    conditions=st.lists(st.tuples(numbers, numbers, st.integers(-20, 20).map(float)), max_size=5),
    wishes=st.lists(st.tuples(numbers, numbers, st.integers(-20, 20).map(float)), min_size=1, max_size=4),
)
def test_the_least_total_of_misses_is_the_least(
    conditions: list[tuple[float, float, float]], wishes: list[tuple[float, float, float]]
) -> None:
    corners = region([HalfPlane(*each) for each in conditions], within=BOX)
    over, under = len(wishes), 2 * len(wishes)
    cost = [0.0, 0.0] + [1.0] * under
    equal = np.zeros((over, 2 + under))
    for row, (a, b, _) in enumerate(wishes):
        equal[row, [0, 1, 2 + row, 2 + over + row]] = a, b, -1.0, 1.0
    held = np.array([[-a, -b] + [0.0] * under for a, b, _ in conditions]) if conditions else None
    found = linprog(
        cost,
        A_ub=held,
        b_ub=[-c for _, _, c in conditions] if conditions else None,
        A_eq=equal,
        b_eq=[c for _, _, c in wishes],
        bounds=[(0, 10), (0, 10)] + [(0, None)] * under,
    )
    assert (found.status == 0) == bool(corners)
    if corners:
        assert found.fun == pytest.approx(nearest(corners, [Wish(*each) for each in wishes])[0], abs=1e-6)
