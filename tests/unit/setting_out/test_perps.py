"""Perp marks: cumulative, rounded once, inside the shunt."""

import pytest

from gaugerod.basis.finding import Verdict
from gaugerod.basis.rounding import Division
from gaugerod.setting_out.perps import runs_mm
from gaugerod.setting_out.set_across import set_out_across
from tests.unit.setting_out.across_asked import WALL, asked


def test_perps_stand_after_every_three_units_and_the_end_of_the_run_closes_them() -> None:
    line = set_out_across(asked(7440.0)).perp_lines[0]
    # 45 mm past the verge to begin with; then 3 × 300 each; the run ends 45 mm past the other verge.
    assert line.marks_mm == (855.0, 1755.0, 2655.0, 3555.0, 4455.0, 5355.0, 6255.0, 7155.0, 7485.0)
    assert line.exact_mm == pytest.approx(line.marks_mm)


@pytest.mark.parametrize(("every", "first_mm"), [(1, 255.0), (2, 555.0), (5, 1455.0)])
def test_perps_follow_how_many_units_are_asked(every: int, first_mm: float) -> None:
    assert set_out_across(asked(7440.0, every_count=every)).perp_lines[0].marks_mm[0] == first_mm


def test_where_every_run_is_longer_than_the_slope_only_its_end_is_marked() -> None:
    line = set_out_across(asked(840.0, every_count=10)).perp_lines[0]
    assert len(line.marks_mm) == 1
    assert line.exact_mm == pytest.approx((840.0 + line.right_reach_mm,))


def test_marks_are_to_a_sixteenth_of_an_inch_when_asked() -> None:
    line = set_out_across(asked(7445.0, division=Division.SIXTEENTH)).perp_lines[0]
    sixteenths = [mark_mm / 25.4 * 16 for mark_mm in line.marks_mm]
    assert sixteenths == pytest.approx([round(count) for count in sixteenths])


def test_rounding_keeps_runs_inside_the_shunt_when_it_can() -> None:
    # Closed 300.4 and open 300.6: three units are 901.2 to 901.8, so no whole mm is right; one unit never is.
    broken = set_out_across(asked(7440.0, cover_mm=(300.4, 300.6))).findings
    outside = [finding for finding in broken if finding.rule == "perps as marked"]
    assert {finding.verdict for finding in outside} == {Verdict.OUTSIDE}
    # Five units are 1502 to 1503, and every run is one or the other.
    five = set_out_across(asked(7440.0, cover_mm=(300.4, 300.6), every_count=5))
    assert [finding for finding in five.findings if finding.rule == "perps as marked"] == []
    assert set(runs_mm(five.perp_lines[0])) <= {1502.0, 1503.0}


def test_no_mark_is_a_whole_division_out_so_no_error_adds_up() -> None:
    line = set_out_across(asked(30_000.0, cover_mm=(300.5, 300.5))).perp_lines[0]
    off_mm = [abs(mark - exact) for mark, exact in zip(line.marks_mm, line.exact_mm, strict=True)]
    assert max(off_mm) < 1.0


def test_the_end_of_the_run_is_marked_inside_its_band() -> None:
    for tenths in range(10):
        across = set_out_across(asked(7500.0 + tenths / 10, right=WALL))
        assert -15.0 <= across.perp_lines[0].marks_mm[-1] - (7500.0 + tenths / 10) <= -5.0
