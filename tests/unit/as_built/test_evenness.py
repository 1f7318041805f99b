"""Run-out, courses forced in and stretched, and lines out of parallel, at their thresholds."""

import pytest

from gaugerod.as_built.check_roof import check_roof
from gaugerod.as_built.evenness import Spacing
from gaugerod.as_built.roof_check import RoofCheck
from gaugerod.basis.citation import Basis
from gaugerod.basis.finding import Finding, Verdict
from tests.scenario.roofs_as_built import at_gaps, battens, roof


def found(check: RoofCheck, rule: str) -> Finding:
    return next(finding for finding in check.findings if finding.rule == rule)


def rules(check: RoofCheck) -> set[str]:
    return {finding.rule for finding in check.findings}


@pytest.mark.parametrize(("out_mm", "verdict"), [(9.9, "within"), (10.0, "within"), (10.1, "outside")])
def test_run_out_is_held_against_a_house_tolerance(out_mm: float, verdict: str) -> None:
    # The middle batten of five stands so far below its place in equal gauges of 300.
    half = out_mm / 2
    check = check_roof(roof(battens(*at_gaps(300 - half, 300 - half, 300 + half, 300 + half))))
    finding = found(check, "gauge run-out")
    assert verdict == finding.verdict.value
    assert pytest.approx(out_mm) == finding.proposed
    assert Basis.HOUSE is finding.citation.basis


@pytest.mark.parametrize(
    ("gap_mm", "spacing"),
    [(279.9, Spacing.FORCED_IN), (280.0, Spacing.FORCED_IN), (288.0, Spacing.EVEN), (287.9, Spacing.FORCED_IN)],
)
def test_a_gap_a_tenth_closer_than_the_usual_320_was_forced_in(gap_mm: float, spacing: Spacing) -> None:
    check = check_roof(roof(battens(*at_gaps(320, 320, gap_mm, 320, 320))))
    assert spacing is check.rods[0].even.gaps[2].spacing
    assert (spacing is Spacing.FORCED_IN) == ("course forced in" in rules(check))


def test_a_gap_under_the_least_gauge_is_held_against_the_record() -> None:
    # 400 − 120 = 280 is the least gauge.
    check = check_roof(roof(battens(*at_gaps(320, 320, 270, 320, 320))))
    finding = found(check, "course forced in")
    assert (270.0, 280.0) == (finding.proposed, finding.limit)
    assert Verdict.OUTSIDE is finding.verdict
    assert check.leaks == ()
    assert check.strip_back is None


def test_a_close_top_gap_may_be_a_cut_course_and_is_only_asked_about() -> None:
    check = check_roof(roof(battens(*at_gaps(320, 320, 320, 200))))
    assert Spacing.TOP is check.rods[0].even.gaps[-1].spacing
    assert Verdict.NOT_COVERED is found(check, "top gap").verdict


@pytest.mark.parametrize(("gap_mm", "stretched"), [(308.0, False), (308.1, True)])
def test_a_gap_a_tenth_wider_than_the_usual_280_was_stretched(gap_mm: float, *, stretched: bool) -> None:
    check = check_roof(roof(battens(*at_gaps(280, 280, gap_mm, 280, 280))))
    assert stretched == ("course stretched" in rules(check))
    assert check.leaks == ()


def test_a_fan_that_shares_the_taper_is_parallel_enough() -> None:
    left, right = battens(*at_gaps(310, 310, 310, 310)), battens(*at_gaps(315, 315, 315, 315), at_mm=6000.0)
    check = check_roof(roof(left, right))
    assert [0.0, 5.0, 10.0, 15.0, 20.0] == [line.out_of_parallel_mm for line in check.lines]
    assert [0.0, 5.0, 5.0, 5.0, 5.0] == [line.opens_mm for line in check.lines]
    assert Verdict.WITHIN is found(check, "courses parallel").verdict
    assert Verdict.WITHIN is found(check, "top batten parallel to the ridge").verdict


@pytest.mark.parametrize(("opens_mm", "verdict"), [(2.0, "within"), (2.1, "outside")])
def test_one_course_may_open_by_its_fair_share_and_the_house_tolerance(opens_mm: float, verdict: str) -> None:
    left = battens(*at_gaps(310, 310, 310, 310))
    right = battens(*at_gaps(310, 310 + opens_mm, 310 - opens_mm, 310), at_mm=6000.0)
    assert verdict == found(check_roof(roof(left, right)), "courses parallel").verdict.value


@pytest.mark.parametrize(("out_mm", "verdict"), [(10.0, "within"), (10.1, "outside")])
def test_the_top_batten_is_held_against_the_ridge(out_mm: float, verdict: str) -> None:
    left = battens(*at_gaps(310, 310, 310), below_apex_mm=30.0)
    right = battens(*at_gaps(310, 310, 310), at_mm=6000.0, below_apex_mm=30.0 + out_mm)
    assert verdict == found(check_roof(roof(left, right)), "top batten parallel to the ridge").verdict.value


def test_one_place_alone_says_nothing_of_parallel() -> None:
    check = check_roof(roof(battens(*at_gaps(310, 310))))
    assert {"courses parallel", "top batten parallel to the ridge"}.isdisjoint(rules(check))


def test_a_gauge_under_the_records_least_is_a_rule_and_a_tenth_off_the_usual_is_advice() -> None:
    # 270 is under the least gauge of 280; 287 is a tenth closer than the usual 320 and inside the record.
    ruled = check_roof(roof(battens(*at_gaps(320, 320, 270, 320, 320))))
    advised = check_roof(roof(battens(*at_gaps(320, 320, 287, 320, 320))))
    assert "course forced in" in {finding.rule for finding in ruled.outside}
    assert "course forced in" in {finding.rule for finding in advised.advice}
    assert () == advised.outside
    assert set(advised.findings) == {*advised.by_rule, *advised.advice}
