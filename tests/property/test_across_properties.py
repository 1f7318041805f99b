"""Random slopes: piece and cover sums make the laid width, nothing leaves its band, a mirrored slope mirrors."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugerod.basis.band import Band
from gaugerod.basis.finding import Verdict
from gaugerod.basis.rounding import Division
from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.across import Across, AcrossAsk, Fit, Side, SideKind
from gaugerod.setting_out.perps import runs_mm
from gaugerod.setting_out.set_across import set_out_across
from gaugerod.setting_out.stations import Opening
from tests.property.random_across import square_slopes, tenths

NOISE_MM = 1e-6


def piece_mm(across: Across, at: str) -> float:
    """The cover of the piece of bond row 0 there."""
    return next(piece.cover_mm for piece in across.pieces if piece.at == at and piece.bond_row == 0)


def laid_as_counted(ask: AcrossAsk) -> None:
    across = set_out_across(ask)
    left_mm, right_mm = piece_mm(across, "left"), piece_mm(across, "right")
    between_mm = (across.units_count - 2) * across.cover_mm
    lap_mm = ask.unit_width_mm - across.cover_mm
    laid_mm = ask.eaves_width_mm + across.left_overhang_mm + across.right_overhang_mm
    assert laid_mm == pytest.approx(left_mm + between_mm + right_mm + lap_mm, abs=NOISE_MM)


def bands_kept(ask: AcrossAsk) -> None:
    across = set_out_across(ask)
    assert ask.cover_closed_mm - NOISE_MM <= across.cover_mm <= ask.cover_open_mm + NOISE_MM
    assert ask.left.reach.holds(across.left_overhang_mm)
    assert ask.right.reach.holds(across.right_overhang_mm)
    broken = {finding.rule for finding in across.findings if finding.verdict is Verdict.OUTSIDE}
    assert broken <= {"least piece", "perps as marked"}
    narrow = any(piece.cover_mm < across.cover_mm / 2 - NOISE_MM for piece in across.pieces)
    assert ("least piece" in broken) == narrow


def marks_true(ask: AcrossAsk) -> None:
    across = set_out_across(ask)
    step_mm = float(ask.division.step_mm)
    for line in across.perp_lines:
        assert list(line.marks_mm) == sorted(set(line.marks_mm))
        off_mm = [abs(mark_mm - exact_mm) for mark_mm, exact_mm in zip(line.marks_mm, line.exact_mm, strict=True)]
        assert max(off_mm) < step_mm
        assert line.exact_mm[-1] == pytest.approx(ask.eaves_width_mm + line.right_reach_mm)
        said = {finding.rule for finding in across.findings if finding.verdict is Verdict.OUTSIDE}
        every = ask.perps_every_count
        for run_mm in runs_mm(line):
            inside = every * ask.cover_closed_mm - NOISE_MM <= run_mm <= every * ask.cover_open_mm + NOISE_MM
            assert inside or "perps as marked" in said


def mirrored(ask: AcrossAsk) -> AcrossAsk:
    width_mm = ask.eaves_width_mm
    return replace(
        ask,
        top_left_mm=width_mm - ask.top_right_mm,
        top_right_mm=width_mm - ask.top_left_mm,
        left=ask.right,
        right=ask.left,
        high_points_mm=tuple(ask.unit_width_mm - crown_mm for crown_mm in ask.high_points_mm),
        openings=tuple(replace(each, from_left_mm=width_mm - each.right_mm) for each in ask.openings),
    )


def worth(ask: AcrossAsk, across: Across) -> tuple[float, ...]:
    """What a layout is judged by, in order."""
    kinds = {"left": ask.left.kind, "right": ask.right.kind}
    cut = [kinds[piece.at] for piece in across.pieces if piece.at in kinds and piece.fit is Fit.CUT]
    least_mm = min(piece.cover_mm for piece in across.pieces)
    narrow_mm = least_mm if least_mm < across.cover_mm / 2 - NOISE_MM else 0.0
    mid_mm = (ask.cover_closed_mm + ask.cover_open_mm) / 2
    off_mm = max(
        abs(across.left_overhang_mm - ask.left.reach.aim_mm), abs(across.right_overhang_mm - ask.right.reach.aim_mm)
    )
    return (narrow_mm, cut.count(SideKind.VERGE), cut.count(SideKind.ABUTMENT), abs(across.cover_mm - mid_mm), off_mm)


def mirrors(ask: AcrossAsk) -> None:
    turned = mirrored(ask)
    there, back = worth(ask, set_out_across(ask)), worth(turned, set_out_across(turned))
    assert there == pytest.approx(back, abs=1e-5)


@settings(max_examples=100, deadline=None)
@given(ask=square_slopes(most_openings=2, with_larger_units=True))
def test_pieces_and_covers_make_the_laid_width(ask: AcrossAsk) -> None:
    laid_as_counted(replace(ask, unit_and_a_half=False))


@settings(max_examples=100, deadline=None)
@given(ask=square_slopes(most_openings=2, with_larger_units=True))
def test_cover_reaches_and_least_piece_keep_their_limits_or_say_so(ask: AcrossAsk) -> None:
    bands_kept(ask)


@settings(max_examples=100, deadline=None)
@given(ask=square_slopes(most_openings=1, with_larger_units=True))
def test_marks_are_sorted_near_and_inside_the_shunt_or_said_not_to_be(ask: AcrossAsk) -> None:
    marks_true(ask)


@settings(max_examples=100, deadline=None)
@given(ask=square_slopes(most_openings=2, with_larger_units=True))
def test_a_mirrored_slope_is_laid_as_well(ask: AcrossAsk) -> None:
    mirrors(ask)


@settings(max_examples=60, deadline=None)
@given(ask=square_slopes(), crowns=st.lists(tenths(0.0, 150.0), min_size=1, max_size=2, unique=True))
def test_a_mirrored_profile_finds_its_crowns_too(ask: AcrossAsk, crowns: list[float]) -> None:
    left = Side(kind=SideKind.VERGE, reach=Band(38.0, 50.0, ask.cover_citation), high_point=True)
    asked = replace(ask, left=left, right=left, high_points_mm=tuple(crowns), bond=Bond.STRAIGHT)
    turned = mirrored(asked)
    missed, missed_turned = (
        sum(
            finding.proposed or 0.0
            for finding in set_out_across(each).findings
            if finding.rule == "high point at the verge"
        )
        for each in (asked, turned)
    )
    assert missed == missed_turned


@settings(max_examples=60, deadline=None)
@given(ask=square_slopes(most_openings=1), times=st.sampled_from([2, 4, 8]))
def test_a_slope_twice_the_size_is_laid_the_same_twice_the_size(ask: AcrossAsk, times: int) -> None:
    larger = replace(
        ask,
        eaves_width_mm=ask.eaves_width_mm * times,
        top_right_mm=ask.top_right_mm * times,
        left=scaled_side(ask.left, times),
        right=scaled_side(ask.right, times),
        unit_width_mm=ask.unit_width_mm * times,
        cover_closed_mm=ask.cover_closed_mm * times,
        cover_open_mm=ask.cover_open_mm * times,
        openings=tuple(scaled_opening(each, times) for each in ask.openings),
        division=Division.MILLIMETRE,
    )
    small, large = set_out_across(ask), set_out_across(larger)
    assert large.units_count == small.units_count
    assert large.cover_mm == pytest.approx(small.cover_mm * times, abs=1e-4)
    assert [(piece.at, piece.fit) for piece in large.pieces] == [(piece.at, piece.fit) for piece in small.pieces]


def scaled_side(side: Side, times: int) -> Side:
    reach = side.reach
    return replace(side, reach=Band(reach.least_mm * times, reach.greatest_mm * times, reach.citation))


def scaled_opening(opening: Opening, times: int) -> Opening:
    return replace(opening, from_left_mm=opening.from_left_mm * times, width_mm=opening.width_mm * times)


@settings(max_examples=100, deadline=None)
@given(ask=square_slopes(most_openings=1), left_mm=tenths(-60.0, 60.0), right_mm=tenths(-60.0, 60.0))
def test_a_top_out_of_square_is_fanned_inside_the_shunt_or_cut_to_the_rake(
    ask: AcrossAsk, left_mm: float, right_mm: float
) -> None:
    out_of_square = replace(ask, top_left_mm=left_mm, top_right_mm=ask.eaves_width_mm + right_mm)
    across = set_out_across(out_of_square)
    rakes = [finding for finding in across.findings if "raking" in finding.where]
    if across.fanned:
        top = across.perp_lines[-1]
        assert ask.cover_closed_mm - NOISE_MM <= top.cover_mm <= ask.cover_open_mm + NOISE_MM
        assert len(across.perp_lines[0].marks_mm) == len(top.marks_mm)
        assert ask.left.reach.holds(top.left_reach_mm)
        assert ask.right.reach.holds(top.right_reach_mm)
        assert rakes == []
    else:
        assert len(rakes) == (left_mm != 0.0) + (right_mm != 0.0)
        assert {line.cover_mm for line in across.perp_lines} == {across.cover_mm}


@pytest.mark.slow
@settings(max_examples=3000, deadline=None)
@given(ask=square_slopes(most_openings=3, with_larger_units=True))
def test_everything_holds_on_thousands_of_slopes(ask: AcrossAsk) -> None:
    bands_kept(ask)
    marks_true(ask)
    mirrors(ask)
    laid_as_counted(replace(ask, unit_and_a_half=False))
