"""Eaves and top of different widths: perps fanned inside the shunt, or square with the side cut to the rake."""

import pytest

from gaugerod.basis.finding import Verdict
from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.across import Across
from gaugerod.setting_out.set_across import set_out_across
from tests.unit.setting_out.across_asked import HIP, asked, opening

WHOLE_MM = 7440.0


def raking(across: Across) -> dict[str, float | None]:
    return {finding.where: finding.proposed for finding in across.findings if "raking" in finding.where}


def test_a_slope_that_is_true_has_one_line_of_perps() -> None:
    across = set_out_across(asked(WHOLE_MM))
    assert [line.line for line in across.perp_lines] == ["eaves"]
    assert not across.fanned


def test_the_same_units_fan_over_a_top_line_a_little_narrower() -> None:
    across = set_out_across(asked(WHOLE_MM, top=(0.0, WHOLE_MM - 24.0)))
    eaves, top = across.perp_lines
    assert across.fanned
    assert (eaves.cover_mm, top.cover_mm) == pytest.approx((300.0, 299.0))
    assert (top.left_reach_mm, top.right_reach_mm) == pytest.approx((45.0, 45.0))
    assert len(eaves.marks_mm) == len(top.marks_mm)
    assert top.exact_mm[0] == pytest.approx(3 * 299.0 - 45.0)


def test_fanned_perps_say_how_far_they_lean() -> None:
    across = set_out_across(asked(WHOLE_MM, top=(0.0, WHOLE_MM - 24.0)))
    lean = next(finding for finding in across.findings if finding.rule == "perps square to the eaves")
    # The last perp is 24 units in, and each of them is 1 mm closer at the top.
    assert lean.proposed == pytest.approx(24.0)
    assert lean.verdict is Verdict.NOT_COVERED


@pytest.mark.parametrize(
    ("narrower_mm", "fanned"),
    [(68.9, True), (69.0, True), (69.1, False)],
    ids=["just below", "at", "just above"],
)
def test_perps_fan_as_far_as_the_shunt_reaches_and_no_further(narrower_mm: float, *, fanned: bool) -> None:
    # Both sides rake alike: the perps may lean by half the shunt of the units between the first perp and the last,
    # 23 × 6 / 2.
    across = set_out_across(asked(WHOLE_MM, top=(narrower_mm, WHOLE_MM + narrower_mm)))
    assert across.fanned == fanned


def test_a_top_line_past_the_shunt_is_cut_to_the_rake_and_says_how_wide() -> None:
    across = set_out_across(asked(WHOLE_MM, top=(0.0, WHOLE_MM - 200.0)))
    assert not across.fanned
    assert raking(across) == pytest.approx({"rear, raking right": 100.0})
    assert "from 100 mm to 300 mm" in across.why
    eaves, top = across.perp_lines
    assert top.cover_mm == eaves.cover_mm
    assert top.exact_mm[:-1] == pytest.approx(eaves.exact_mm[: len(top.exact_mm) - 1])


def test_a_rake_that_crosses_a_perp_leaves_pieces_of_every_width() -> None:
    across = set_out_across(asked(WHOLE_MM, top=(500.0, WHOLE_MM)))
    assert raking(across) == {"rear, raking left": 0.0}
    narrow = next(finding for finding in across.findings if "raking" in finding.where)
    assert narrow.verdict is Verdict.OUTSIDE
    assert "neighbour" in narrow.says


def test_a_rake_that_leaves_half_a_unit_or_more_is_within() -> None:
    across = set_out_across(asked(WHOLE_MM, top=(0.0, WHOLE_MM - 150.0)))
    assert [finding.verdict for finding in across.findings if "raking" in finding.where] == [Verdict.WITHIN]


def test_hips_and_valleys_leave_the_perps_square_to_the_eaves() -> None:
    across = set_out_across(asked(WHOLE_MM, left=HIP, right=HIP, top=(2000.0, 5440.0)))
    eaves, top = across.perp_lines
    assert (across.fanned, eaves.cover_mm, top.cover_mm) == (False, 300.0, 300.0)
    assert raking(across) == {}
    assert set(top.exact_mm[:-1]) <= set(eaves.exact_mm)
    assert min(top.marks_mm) > 2000.0
    assert top.marks_mm[-1] == 5440.0


def test_fanned_perps_keep_the_pieces_beside_an_opening_wide_enough() -> None:
    ask = asked(WHOLE_MM, top=(0.0, WHOLE_MM - 24.0), openings=(opening("rooflight", 2400.0),))
    across = set_out_across(ask)
    narrow = [finding for finding in across.findings if finding.rule == "least piece"]
    assert across.fanned
    assert [finding.where for finding in narrow] == ["rear, eaves", "rear, top"]
    assert {finding.verdict for finding in narrow} == {Verdict.WITHIN}


def test_in_broken_bond_both_courses_are_looked_at_along_the_rake() -> None:
    across = set_out_across(asked(WHOLE_MM, top=(0.0, WHOLE_MM - 100.0), bond=Bond.BROKEN, half_unit=True))
    # The whole unit comes down to 200, the half one from 150 to 50.
    assert raking(across) == pytest.approx({"rear, raking right": 50.0})
