"""The three answers of a rule, just below, at and just above its limit."""

import pytest

from gaugerod.basis.citation import Basis, house
from gaugerod.basis.finding import TOUCH, Finding, Sense, Verdict, not_covered

NAN, INF = float("nan"), float("inf")


def finding(*, proposed: float | None, limit: float | None, sense: Sense) -> Finding:
    return Finding(
        rule="headlap",
        where="rear",
        proposed=proposed,
        limit=limit,
        unit="mm",
        sense=sense,
        citation=house("example"),
        says="Says what to do.",
    )


@pytest.mark.parametrize(
    ("proposed_mm", "sense", "expected"),
    [
        (74.999, Sense.AT_LEAST, Verdict.OUTSIDE),
        (75.0, Sense.AT_LEAST, Verdict.WITHIN),
        (75.001, Sense.AT_LEAST, Verdict.WITHIN),
        (74.999, Sense.AT_MOST, Verdict.WITHIN),
        (75.0, Sense.AT_MOST, Verdict.WITHIN),
        (75.001, Sense.AT_MOST, Verdict.OUTSIDE),
        (0.0, Sense.AT_LEAST, Verdict.OUTSIDE),
        (-75.0, Sense.AT_LEAST, Verdict.OUTSIDE),
        (INF, Sense.AT_MOST, Verdict.OUTSIDE),
        (-INF, Sense.AT_LEAST, Verdict.OUTSIDE),
    ],
)
def test_the_limit_itself_is_allowed_and_the_wrong_side_of_it_is_not(
    proposed_mm: float, sense: Sense, expected: Verdict
) -> None:
    assert expected is finding(proposed=proposed_mm, limit=75.0, sense=sense).verdict


@pytest.mark.parametrize(("sense", "sign"), [(Sense.AT_LEAST, -1), (Sense.AT_MOST, 1)])
def test_float_noise_never_turns_a_verdict_and_anything_more_does(sense: Sense, sign: int) -> None:
    assert Verdict.WITHIN is finding(proposed=75.0 + sign * TOUCH / 2, limit=75.0, sense=sense).verdict
    assert Verdict.OUTSIDE is finding(proposed=75.0 + sign * TOUCH * 2, limit=75.0, sense=sense).verdict


@pytest.mark.parametrize("sense", list(Sense))
@pytest.mark.parametrize(("proposed", "limit"), [(NAN, 75.0), (75.0, NAN), (NAN, NAN)])
def test_what_is_no_number_is_never_within(proposed: float, limit: float, sense: Sense) -> None:
    assert Verdict.OUTSIDE is finding(proposed=proposed, limit=limit, sense=sense).verdict


@pytest.mark.parametrize(("proposed", "limit"), [(None, 75.0), (75.0, None), (None, None)])
def test_without_a_value_or_a_limit_the_rule_does_not_reach(proposed: float | None, limit: float | None) -> None:
    assert Verdict.NOT_COVERED is finding(proposed=proposed, limit=limit, sense=Sense.AT_LEAST).verdict


def test_not_covered_keeps_what_was_proposed_and_says_why() -> None:
    found = not_covered(rule="wind", where="rear", proposed=1.2, unit="kPa", citation=house("scope"), says="Too high.")
    assert (Verdict.NOT_COVERED, 1.2, "Too high.") == (found.verdict, found.proposed, found.says)
    assert Basis.HOUSE is found.citation.basis
