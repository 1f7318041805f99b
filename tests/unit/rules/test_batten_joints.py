"""The rules on length, supports and joints: each threshold just below, at, just above."""

import pytest

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.rules.batten_joints import CloseJoints, batten_piece, joint_stagger, stagger_rule
from gaugerod.standards.edition import Edition

GB = Edition.GB


@pytest.mark.parametrize("gauge_mm", [float("nan"), float("inf"), -1.0, 0.0])
def test_no_rule_for_a_gauge_that_cannot_be(gauge_mm: float) -> None:
    with pytest.raises(NothingToSetOut, match="joint stagger"):
        stagger_rule(gauge_mm=gauge_mm, edition=GB)


@pytest.mark.parametrize(
    ("gauge_mm", "rule"), [(88.0, (3, 12)), (199.9, (3, 12)), (200.0, (3, 12)), (200.1, (1, 4)), (345.0, (1, 4))]
)
def test_the_rule_changes_over_200_mm(gauge_mm: float, rule: tuple[int, int]) -> None:
    found = stagger_rule(gauge_mm=gauge_mm, edition=GB)
    assert rule == (found.joints_count, found.window_count)


def joints(text: str) -> list[bool]:
    return [letter == "j" for letter in text]


@pytest.mark.parametrize(("before", "may"), [("j---", True), ("-j--", False), ("--j-", False), ("---j", False)])
def test_over_200_mm_the_fourth_batten_up_may_be_joined_again(before: str, may: bool) -> None:  # noqa: FBT001
    assert may == stagger_rule(gauge_mm=345.0, edition=GB).allows([*joints(before[1:]), True])


def test_at_200_mm_three_in_twelve_and_no_more() -> None:
    rule = stagger_rule(gauge_mm=200.0, edition=GB)
    assert rule.allows(joints("j----j-----j"))
    assert not rule.allows(joints("j-j--j-----j"))
    assert rule.allows(joints("j-j--j------j"))


def test_neighbours_are_kept_apart_unless_the_other_reading_is_asked_for() -> None:
    apart, together = (
        stagger_rule(gauge_mm=100.0, edition=GB, close_joints=reading)
        for reading in (CloseJoints.APART, CloseJoints.TOGETHER)
    )
    assert not apart.allows(joints("jj"))
    assert together.allows(joints("jjj"))
    assert not together.allows(joints("jjjj"))


def test_both_readings_of_the_close_rule_are_shown() -> None:
    found = joint_stagger(where="rear", rafters=[joints("jj-----------")], gauge_mm=100.0, edition=GB)
    assert [
        ("joint stagger", Verdict.WITHIN, "published"),
        ("joints beside one another", Verdict.OUTSIDE, "house"),
        ("joints beside one another", Verdict.WITHIN, "published"),
    ] == [(finding.rule, finding.verdict, finding.citation.basis.value) for finding in found]


@pytest.mark.parametrize(
    ("row", "verdict"), [("j--j", Verdict.OUTSIDE), ("j---j", Verdict.WITHIN), ("", Verdict.WITHIN)]
)
def test_over_200_mm_two_joints_in_four_are_outside(row: str, verdict: Verdict) -> None:
    (found,) = joint_stagger(where="rear", rafters=[joints(row)], gauge_mm=345.0, edition=GB)
    assert verdict == found.verdict


@pytest.mark.parametrize(
    ("length_mm", "supports", "verdicts"),
    [
        (1199.9, 3, [Verdict.OUTSIDE, Verdict.WITHIN]),
        (1200.0, 2, [Verdict.WITHIN, Verdict.OUTSIDE]),
        (1200.1, 3, [Verdict.WITHIN, Verdict.WITHIN]),
    ],
)
def test_a_batten_is_1200_mm_or_more_on_three_supports(
    length_mm: float, supports: int, verdicts: list[Verdict]
) -> None:
    found = batten_piece(where="rear", length_mm=length_mm, supports_count=supports, edition=GB)
    assert verdicts == [finding.verdict for finding in found]


def test_a_length_that_is_no_measurement_is_refused() -> None:
    with pytest.raises(NothingToSetOut, match="batten length"):
        batten_piece(where="rear", length_mm=float("nan"), supports_count=3, edition=GB)
