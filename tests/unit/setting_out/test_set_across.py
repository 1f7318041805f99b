"""Perps across the slope: each way of ending, each threshold, with sums a roofer can do on the back of a batten."""

from dataclasses import replace

import pytest

from gaugerod.basis.band import Band
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.across import Fit
from gaugerod.setting_out.set_across import set_out_across
from tests.unit.setting_out.across_asked import CROWNED, EXAMPLE, HIP, VERGE, WALL, asked, fits, opening, piece

# 25 whole units at mid-shunt: 24 × 300 + 330 = 7530, with both overhangs at 45: 7440 of roof.
WHOLE_MM = 7440.0


def test_whole_units_at_mid_shunt_leave_the_overhangs_in_the_middle() -> None:
    across = set_out_across(asked(WHOLE_MM))
    assert (across.units_count, across.cover_mm) == (25, 300.0)
    assert (across.left_overhang_mm, across.right_overhang_mm) == (45.0, 45.0)
    assert [each.fit for each in across.pieces] == [Fit.WHOLE, Fit.WHOLE]
    assert across.least_piece_mm is None
    assert across.alternatives == ()


def test_the_full_width_of_the_last_unit_is_counted() -> None:
    across = set_out_across(asked(WHOLE_MM))
    laid_mm = WHOLE_MM + across.left_overhang_mm + across.right_overhang_mm
    assert laid_mm == pytest.approx(24 * across.cover_mm + 330.0)
    assert [each.width_mm for each in across.pieces] == [330.0, 330.0]


def test_overhangs_move_inside_their_bands_before_the_cover_leaves_mid_shunt() -> None:
    across = set_out_across(asked(WHOLE_MM - 8.0))
    assert across.cover_mm == 300.0
    assert (across.left_overhang_mm, across.right_overhang_mm) == pytest.approx((49.0, 49.0))


def test_the_cover_opens_when_the_bands_are_used_up() -> None:
    across = set_out_across(asked(WHOLE_MM + 34.0))
    assert (across.left_overhang_mm, across.right_overhang_mm) == pytest.approx((40.0, 40.0))
    assert across.cover_mm == pytest.approx(301.0)


@pytest.mark.parametrize(
    ("past_mm", "cut"),
    [(-0.01, False), (0.0, False), (0.01, True)],
    ids=["just below", "at", "just above"],
)
def test_whole_units_serve_up_to_the_shunt_fully_open_and_no_further(past_mm: float, *, cut: bool) -> None:
    # 24 × 303 + 330 with the least overhangs, 40 and 40.
    across = set_out_across(asked(24 * 303.0 + 330.0 - 80.0 + past_mm))
    assert (Fit.CUT in fits(across, "left") + fits(across, "right")) == cut
    assert across.cover_mm <= 303.0 + 1e-6


@pytest.mark.parametrize(("past_mm", "cut"), [(0.01, False), (0.0, False), (-0.01, True)])
def test_whole_units_serve_down_to_the_shunt_fully_closed_and_no_further(past_mm: float, *, cut: bool) -> None:
    across = set_out_across(asked(24 * 297.0 + 330.0 - 100.0 + past_mm))
    assert (Fit.CUT in fits(across, "left") + fits(across, "right")) == cut
    assert across.cover_mm >= 297.0 - 1e-6


# Derived arithmetic: n units of one cover across a width, cover 1 % either side of nominal, the width of a unit taken
# as its cover. Here the last unit laps 3 mm past its cover, so 3 mm more is asked for; the overhangs are nothing.
FLUSH = replace(VERGE, reach=Band(0.0, 0.0, EXAMPLE))


@pytest.mark.parametrize(
    ("verge_to_verge_mm", "nominal_mm", "units", "off_nominal_mm"),
    [(8127.0, 300.0, 27, 1.0), (4510.0, 300.0, 15, 2.0 / 3.0), (905.0, 300.0, 3, 5.0 / 3.0)],
)
def test_derived_rows_that_whole_units_fill(
    verge_to_verge_mm: float, nominal_mm: float, units: int, off_nominal_mm: float
) -> None:
    cover_mm = nominal_mm + off_nominal_mm
    ask = asked(verge_to_verge_mm + 3.0, left=FLUSH, right=FLUSH, unit_width_mm=cover_mm + 3.0)
    across = set_out_across(ask)
    assert across.units_count == units
    assert across.cover_mm == pytest.approx(cover_mm)
    assert across.least_piece_mm is None


@pytest.mark.parametrize(("verge_to_verge_mm", "nominal_mm"), [(8000.0, 300.0), (9999.0, 330.0)])
def test_derived_rows_that_need_a_cut(verge_to_verge_mm: float, nominal_mm: float) -> None:
    shunt_mm = 3.0
    ask = asked(
        verge_to_verge_mm + 3.0,
        left=FLUSH,
        right=FLUSH,
        cover_mm=(nominal_mm - shunt_mm, nominal_mm + shunt_mm),
        unit_width_mm=nominal_mm + shunt_mm,
    )
    across = set_out_across(ask)
    assert across.least_piece_mm is not None
    assert across.least_piece_mm >= across.cover_mm / 2


def test_a_half_unit_fills_what_whole_units_cannot() -> None:
    across = set_out_across(asked(WHOLE_MM + 150.0, half_unit=True))
    assert sorted(each.fit for each in across.pieces) == [Fit.HALF, Fit.WHOLE]
    assert across.least_piece_mm is None
    # Without the companion the half is cut from a whole unit, and said to be.
    assert set_out_across(asked(WHOLE_MM + 150.0)).least_piece_mm is not None


def test_a_whole_unit_goes_to_the_verge_and_the_cut_to_the_wall() -> None:
    across = set_out_across(asked(7600.0, right=WALL))
    assert fits(across, "left") == [Fit.WHOLE]
    assert fits(across, "right") == [Fit.CUT]
    assert -15.0 <= across.right_overhang_mm <= -5.0
    turned = set_out_across(asked(7600.0, left=WALL))
    assert (fits(turned, "left"), fits(turned, "right")) == ([Fit.CUT], [Fit.WHOLE])


@pytest.mark.parametrize("width_mm", [7480.0, 7520.0, 7560.0, 7600.0, 7650.0, 7700.0])
def test_no_piece_is_under_half_where_cutting_both_sides_avoids_it(width_mm: float) -> None:
    across = set_out_across(asked(width_mm))
    assert min(each.cover_mm for each in across.pieces) >= across.cover_mm / 2 - 1e-6
    assert all(finding.verdict is Verdict.WITHIN for finding in across.findings)


def test_broken_bond_starts_whole_and_half_in_turn() -> None:
    across = set_out_across(asked(WHOLE_MM, bond=Bond.BROKEN, half_unit=True))
    assert fits(across, "left") == [Fit.WHOLE, Fit.HALF]
    assert piece(across, "left", 1).cover_mm == 150.0
    assert piece(across, "left", 1).width_mm == 180.0
    assert across.least_piece_mm is None


def test_broken_bond_without_half_units_cuts_them_in_half_exactly() -> None:
    across = set_out_across(asked(WHOLE_MM, bond=Bond.BROKEN))
    assert fits(across, "right") == [Fit.WHOLE, Fit.CUT]
    assert across.least_piece_mm == pytest.approx(150.0)
    assert all(finding.verdict is Verdict.WITHIN for finding in across.findings)


def test_broken_bond_that_does_not_fit_names_the_widest_least_piece() -> None:
    across = set_out_across(asked(2700.0, bond=Bond.BROKEN, half_unit=True))
    narrow = next(finding for finding in across.findings if finding.rule == "least piece")
    assert narrow.verdict is Verdict.OUTSIDE
    assert narrow.proposed == across.least_piece_mm
    assert "courses" in narrow.says
    assert "neighbour" in narrow.says


def test_a_unit_and_a_half_leaves_no_narrow_piece() -> None:
    across = set_out_across(asked(2700.0, bond=Bond.BROKEN, half_unit=True, unit_and_a_half=True))
    assert all(finding.verdict is Verdict.WITHIN for finding in across.findings)
    larger = [each for each in across.pieces if each.cover_mm > across.cover_mm + 1e-6]
    assert larger != []
    assert all(each.cover_mm < 1.5 * across.cover_mm for each in larger)
    assert any("unit-and-a-half" in finding.says for finding in across.findings)


def test_an_opening_side_gets_no_sliver_where_the_perps_can_move() -> None:
    # A whole unit at the left verge puts perps at 255 + j × 300; an opening from 2400 on would leave 15 mm of cover.
    across = set_out_across(asked(WHOLE_MM, openings=(opening("rooflight", 2400.0),)))
    assert min(each.cover_mm for each in across.pieces) >= across.cover_mm / 2 - 1e-6
    assert {each.at for each in across.pieces} == {"left", "right", "rooflight left", "rooflight right"}


def test_beside_an_opening_near_the_verge_one_unit_is_cut_to_the_stretch() -> None:
    across = set_out_across(asked(WHOLE_MM, openings=(opening("chimney", 100.0),)))
    alone = piece(across, "chimney left to the left verge")
    assert alone.width_mm == pytest.approx(100.0 + across.left_overhang_mm)
    assert alone.fit is Fit.CUT
    assert "chimney left" not in {each.at for each in across.pieces}


def test_an_opening_against_the_wall_leaves_no_stretch_beside_it() -> None:
    across = set_out_across(asked(WHOLE_MM, left=WALL, openings=(opening("chimney", 0.0),)))
    assert {each.at for each in across.pieces} == {"left", "right", "chimney right"}


def test_a_profiled_tile_finishes_on_a_crown_at_both_verges() -> None:
    # Crowns 60 mm from each edge: cut there, the left piece covers c − 60 and the right piece too.
    width_mm = 24 * 300.0 + 330.0 - 120.0 - 90.0
    across = set_out_across(asked(width_mm, left=CROWNED, right=CROWNED, high_points_mm=(60.0, 270.0)))
    assert [each.fit for each in across.pieces] == [Fit.HIGH_POINT, Fit.HIGH_POINT]
    assert [each.cover_mm for each in across.pieces] == pytest.approx([240.0, 240.0])
    crowns = [finding for finding in across.findings if finding.rule == "high point at the verge"]
    assert [finding.verdict for finding in crowns] == [Verdict.WITHIN, Verdict.WITHIN]


def test_a_whole_unit_whose_edge_is_a_crown_finishes_on_it() -> None:
    across = set_out_across(asked(WHOLE_MM, left=CROWNED, right=CROWNED, high_points_mm=(0.0, 330.0)))
    assert [each.fit for each in across.pieces] == [Fit.WHOLE, Fit.WHOLE]
    assert all(finding.verdict is Verdict.WITHIN for finding in across.findings)


def test_a_crown_goes_before_a_whole_unit() -> None:
    across = set_out_across(asked(WHOLE_MM, left=CROWNED, high_points_mm=(90.0,)))
    assert fits(across, "left") == [Fit.HIGH_POINT]
    assert piece(across, "left").cover_mm == pytest.approx(across.cover_mm - 90.0)


def test_no_sliver_is_cut_to_finish_on_a_crown() -> None:
    """One crown near the right edge of the unit: cut on it, a left-hand verge piece would cover 8 to 14 mm."""
    ask = replace(
        asked(31700.0, left=CROWNED, right=CROWNED, high_points_mm=(190.0,), cover_mm=(198.0, 204.0)),
        unit_width_mm=230.0,
    )
    across = set_out_across(ask)
    assert min(piece.cover_mm for piece in across.pieces) >= across.cover_mm / 2
    crowns = {
        finding.where: finding.verdict for finding in across.findings if finding.rule == "high point at the verge"
    }
    assert crowns == {"rear, left": Verdict.OUTSIDE, "rear, right": Verdict.WITHIN}


def test_in_broken_bond_both_courses_want_a_crown() -> None:
    # Two rolls half a unit apart at 300 mm cover: 60 in, and 150 further.
    ask = asked(
        WHOLE_MM, left=CROWNED, right=WALL, high_points_mm=(60.0, 210.0), bond=Bond.BROKEN, unit_and_a_half=True
    )
    across = set_out_across(ask)
    assert fits(across, "left") == [Fit.HIGH_POINT, Fit.HIGH_POINT]
    assert across.cover_mm == pytest.approx(300.0)


def test_a_crown_that_cannot_be_had_is_said_to_be_missed() -> None:
    # One fixed overhang each, no shunt: only one of the two sides can finish on a crown.
    fixed = replace(CROWNED, reach=Band(45.0, 45.0, EXAMPLE))
    ask = asked(WHOLE_MM + 77.0, left=fixed, right=fixed, high_points_mm=(60.0,), cover_mm=(300.0, 300.0))
    crowns = [finding for finding in set_out_across(ask).findings if finding.rule == "high point at the verge"]
    assert sorted(finding.proposed or 0.0 for finding in crowns) == [0.0, 1.0]
    assert {finding.verdict for finding in crowns} == {Verdict.WITHIN, Verdict.OUTSIDE}


def test_crowns_not_measured_are_not_covered() -> None:
    findings = set_out_across(asked(WHOLE_MM, left=CROWNED)).findings
    crown = next(finding for finding in findings if finding.rule == "high point at the verge")
    assert crown.verdict is Verdict.NOT_COVERED


def test_a_hip_puts_no_condition_on_the_perps_and_says_so() -> None:
    across = set_out_across(asked(WHOLE_MM, left=HIP))
    assert fits(across, "left") == []
    assert fits(across, "right") == [Fit.WHOLE]
    assert across.cover_mm == 300.0
    hip = next(finding for finding in across.findings if finding.verdict is Verdict.NOT_COVERED)
    assert hip.where == "rear, left"


def test_a_slope_just_one_unit_wide_is_one_whole_unit() -> None:
    across = set_out_across(asked(330.0 - 90.0))
    assert across.units_count == 1
    assert fits(across, "left") == [Fit.WHOLE]


@pytest.mark.parametrize(("width_mm", "stands"), [(229.9, False), (230.0, True), (230.1, True)])
def test_a_slope_narrower_than_one_unit_has_no_perps(width_mm: float, *, stands: bool) -> None:
    # 230 and the greatest overhangs, 50 and 50, are one unit of 330.
    if stands:
        assert set_out_across(asked(width_mm)).units_count == 1
    else:
        with pytest.raises(NothingToSetOut, match="narrower than one unit of 330 mm"):
            set_out_across(asked(width_mm))


def test_the_sentence_tells_units_cover_and_ends() -> None:
    assert set_out_across(asked(WHOLE_MM)).why == (
        "25 units to the course at 300 mm cover, mid-shunt, whole at the left, whole at the right."
    )


def test_the_working_adds_up_to_the_laid_width() -> None:
    across = set_out_across(asked(WHOLE_MM))
    assert across.working.value == pytest.approx(7530.0)
    inputs = across.working.inputs
    assert (inputs["left piece (mm)"], inputs["units between"], inputs["lap (mm)"]) == (300.0, 23.0, 30.0)


def test_the_same_ask_always_gets_the_same_answer() -> None:
    ask = asked(7520.0, bond=Bond.BROKEN, openings=(opening("a", 1200.0), opening("b", 4000.0)))
    assert set_out_across(ask) == set_out_across(ask)
