"""The fewest courses and the least move of the ends, proven against a general integer-programming library (scipy, HiGHS)."""

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from gaugerod.setting_out.equal_gauge import Spans, fewest_gauges, least_shift
from gaugerod.setting_out.marked_limits import GaugeLimits

MOST_GAUGES = 400


def milp_least_shift(
    spans: Spans, limits: GaugeLimits, *, shorten: float, lengthen: float
) -> tuple[float, float] | None:
    """Least |shift| over whole N: spans + shift between N × least and N × greatest. Variables: N, shift up, shift down."""
    least = float(limits.least_mm or 0)
    rows = [
        [-float(limits.greatest_mm), 1, -1],  # longest + shift − N × greatest ≤ 0
        [least, -1, 1],  # N × least − shortest − shift ≤ 0
    ]
    upper = [-float(spans.greatest_mm), float(spans.least_mm)]
    found = milp(
        c=[0, 1, 1],
        constraints=LinearConstraint(np.array(rows), -np.inf, upper),
        integrality=[1, 0, 0],
        bounds=Bounds([1, 0, 0], [MOST_GAUGES, lengthen, shorten]),
        options={"mip_rel_gap": 0},
    )
    return None if found.x is None else (float(found.x[1] + found.x[2]), round(float(found.x[0])))


lengths = st.integers(100, 9000)


@settings(max_examples=150, deadline=None)
@given(
    shortest=lengths,
    taper=st.sampled_from([0, 0, 0, 4, 20]),
    greatest=st.integers(60, 400),
    width=st.integers(0, 30),
    shorten=st.integers(0, 30),
    lengthen=st.integers(0, 30),
)
def test_the_least_move_of_the_ends_is_the_least(
    *, shortest: int, taper: int, greatest: int, width: int, shorten: int, lengthen: int
) -> None:
    assume(greatest - width > 20)
    spans = Spans(least_mm=Fraction(shortest), greatest_mm=Fraction(shortest + taper))
    limits = GaugeLimits(least_mm=Fraction(greatest - width), greatest_mm=Fraction(greatest))
    ours = least_shift(spans=spans, limits=limits, shorten_mm=Fraction(shorten), lengthen_mm=Fraction(lengthen))
    theirs = milp_least_shift(spans, limits, shorten=shorten, lengthen=lengthen)
    assert (theirs is None) == (ours is None)
    if ours is not None and theirs is not None:
        assert theirs[0] == pytest.approx(float(abs(ours.shift_mm)), abs=1e-4)


@settings(max_examples=150, deadline=None)
@given(
    span=st.fractions(min_value=10, max_value=9000, max_denominator=40),
    greatest=st.fractions(min_value=50, max_value=400, max_denominator=16),
)
def test_the_fewest_gauges_are_the_fewest(span: Fraction, greatest: Fraction) -> None:
    found = milp(
        c=[1],
        constraints=LinearConstraint(np.array([[float(greatest)]]), float(span) - 1e-9, np.inf),
        integrality=[1],
        bounds=Bounds([1], [MOST_GAUGES]),
    )
    assert found.x is not None
    assert round(float(found.x[0])) == fewest_gauges(span_mm=span, gauge_max_mm=greatest)
