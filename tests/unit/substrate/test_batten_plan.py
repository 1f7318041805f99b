"""The whole plan on slopes small enough to follow by hand."""

from dataclasses import replace

import pytest

from gaugerod.basis.errors import InputRefused
from gaugerod.basis.finding import Verdict
from gaugerod.laying.ask import EdgeKind
from gaugerod.rules.batten_joints import CloseJoints
from gaugerod.rules.battens import BattenedCovering
from gaugerod.substrate.battens.answer import Arrangement, Battens, Proof
from gaugerod.substrate.battens.ask import BattenMark, BattensAsk, EvenRafters, MeasuredRafters, Nailing
from gaugerod.substrate.battens.plan import plan_battens
from tests.scenario.battened_slopes import asked, gable, hipped_house, limit_mm, rooflight, slope

SINGLE_LAP = BattenedCovering.TILE_SINGLE_LAP


def test_a_gable_gets_a_pattern_of_four_that_repeats() -> None:
    even = EvenRafters(first_mm=100.0, spacing_mm=600.0)
    battens = plan_battens(
        asked(gable(width_mm=8_600.0, courses=30, gauge_mm=345.0, rafters=even), covering=SINGLE_LAP)
    )
    (laid,) = battens.slopes
    assert (Arrangement.REPEATING, 4) == (laid.arrangement, laid.repeats_every)
    assert ["A", "B", "C", "D"] * 7 + ["A", "B"] == [line.letter for line in laid.lines]
    assert Proof.LEAST_REPEATING == battens.cutting.proof
    assert 0.02 > battens.cutting.waste_ratio
    assert not any(finding.verdict is Verdict.OUTSIDE for finding in battens.findings)


def test_battens_as_long_as_one_stock_length_are_not_joined() -> None:
    """4 800 mm between the stops: one length each, nothing left."""
    battens = plan_battens(asked(gable(width_mm=4_875.0, courses=9, gauge_mm=345.0), covering=SINGLE_LAP))
    assert (1, 0) == (battens.slopes[0].repeats_every, battens.slopes[0].joints_count)
    assert [(4800, 9)] == [(each.stock_mm, each.count) for each in battens.cutting.buy]
    assert Proof.LEAST == battens.cutting.proof


def three_rafters_for_four_battens() -> Battens:
    """3.6 m on seven rafters out of 2.4 m: every batten is joined once, on rafter 3, 4 or 5."""
    each = gable(width_mm=3_600.0, courses=12, gauge_mm=345.0, rafters=EvenRafters(first_mm=0.0, spacing_mm=600.0))
    ask = replace(asked(each, covering=SINGLE_LAP), stock=(limit_mm(2400.0),), kerf=limit_mm(0.0))
    return plan_battens(replace(ask, stops=replace(ask.stops, verge=limit_mm(0.0))))


def test_where_no_strict_plan_exists_it_says_why_and_what_is_on_offer() -> None:
    battens = three_rafters_for_four_battens()
    (laid,) = battens.slopes
    assert Arrangement.NONE == laid.arrangement
    assert (
        "No plan keeps the rule of not more than 1 joint on one rafter in any 4 battens: every batten must be joined, only "
        "rafters 3, 4, 5 can take a joint, and they are not enough for 4 battens to be joined on different ones."
    ) == laid.why
    longer, nearer = laid.relaxed
    assert ("battens 3600 mm long besides the stock", True) == (longer.change, longer.keeps_rules)
    assert not nearer.keeps_rules
    assert "not more than 1 joined on one rafter in any 3 consecutive battens" == nearer.change
    assert "1 short" in nearer.breaks
    assert (48_000, 20) == (nearer.bought_mm, nearer.lengths_count)


def test_no_strict_plan_is_a_finding_and_nothing_is_bought_for_it() -> None:
    battens = three_rafters_for_four_battens()
    found = [f for f in battens.findings if f.rule == "batten plan"]
    assert [Verdict.NOT_COVERED] == [finding.verdict for finding in found]
    assert 0 == battens.cutting.bought_mm


def flush_gable(*, bays: int, courses: int, stock_mm: float) -> BattensAsk:
    """Plain tiles at 100 mm on rafters at 600 mm, the first and last right at the ends; no kerf."""
    even = EvenRafters(first_mm=0.0, spacing_mm=600.0)
    each = gable(width_mm=600.0 * bays, courses=courses, gauge_mm=100.0, rafters=even)
    ask = replace(asked(each), stock=(limit_mm(stock_mm),), kerf=limit_mm(0.0))
    return replace(ask, stops=replace(ask.stops, verge=limit_mm(0.0)))


def test_at_a_close_gauge_three_rafters_are_enough_for_nine_battens_and_not_for_twelve() -> None:
    """3.6 m out of lengths of 2.4 m: a joint on one of 3 rafters in each batten, and 3 in 12 on each rafter."""
    (nine,) = plan_battens(flush_gable(bays=6, courses=9, stock_mm=2400.0)).slopes
    (twelve,) = plan_battens(flush_gable(bays=6, courses=12, stock_mm=2400.0)).slopes
    assert 9 == nine.joints_count
    assert Arrangement.NONE == twelve.arrangement
    assert (
        "No plan was found that keeps the rule of not more than 3 joints on one rafter in any 12 battens" in twelve.why
    )


def test_at_a_close_gauge_the_other_reading_is_on_offer() -> None:
    """2.4 m out of lengths of 1.2 m: three battens with their joint on the same rafter, three in a row."""
    ask = flush_gable(bays=4, courses=3, stock_mm=1200.0)
    (laid,) = plan_battens(ask).slopes
    assert ["joints on neighbouring battens, up to 3 in a row", "battens 2400 mm long besides the stock"] == [
        relaxed.change for relaxed in laid.relaxed if relaxed.keeps_rules
    ]
    together = plan_battens(replace(ask, close_joints=CloseJoints.TOGETHER))
    assert 3 == together.slopes[0].joints_count
    assert [("joints beside one another", "house")] == [
        (finding.rule, finding.citation.basis.value)
        for finding in together.findings
        if finding.verdict is Verdict.OUTSIDE and "verge" not in finding.rule
    ]


def test_a_batten_that_cannot_be_made_up_at_all_says_so() -> None:
    far = MeasuredRafters(at_mm=(0.0, 1_600.0, 3_200.0, 4_800.0, 6_400.0))
    ask = replace(asked(gable(width_mm=6_400.0, courses=5, gauge_mm=345.0, rafters=far)), stock=(limit_mm(3000.0),))
    (laid,) = plan_battens(ask).slopes
    assert "Batten 1 cannot be made up at all" in laid.why
    assert all(relaxed.keeps_rules for relaxed in laid.relaxed)


def test_rafters_too_far_apart_are_not_covered_and_still_planned() -> None:
    far = EvenRafters(first_mm=100.0, spacing_mm=650.0)
    battens = plan_battens(asked(gable(width_mm=7_000.0, courses=5, gauge_mm=345.0, rafters=far)))
    assert Verdict.NOT_COVERED == battens.findings[0].verdict
    assert battens.slopes[0].section is None
    assert () == battens.nails
    assert battens.slopes[0].lines


def test_the_top_of_a_hip_is_one_piece_and_a_finding_of_its_own() -> None:
    battens = plan_battens(asked(*hipped_house(length_mm=9000.0, width_mm=9000.0, pitch_deg=40.0, gauge_mm=100.0)))
    top = battens.slopes[0].lines[-1].stretches[0]
    assert 1200 > top.pieces_mm[0]
    short = [finding for finding in battens.findings if finding.rule == "batten length" and finding.limit is None]
    assert 4 == len(short)
    assert top.pieces_mm[0] == short[0].proposed


def test_nails_one_at_each_support_and_two_at_a_joint() -> None:
    """Five rafters, two battens in one piece each: ten nails of 65 mm."""
    each = gable(width_mm=2_700.0, courses=2, gauge_mm=345.0, rafters=EvenRafters(first_mm=150.0, spacing_mm=600.0))
    (nails,) = plan_battens(asked(each)).nails
    assert (10, 65.0, 3.35) == (nails.count, nails.length_mm, nails.shank_mm)
    two = gable(width_mm=7_500.0, courses=2, gauge_mm=345.0, rafters=EvenRafters(first_mm=150.0, spacing_mm=600.0))
    battens = plan_battens(asked(two))
    assert 2 * 13 + battens.slopes[0].joints_count == battens.nails[0].count


def test_counter_battens_lengthen_the_nails_and_have_their_own() -> None:
    """Five rafters of 750 mm: 3.75 m, and four fixings up each (0, 250, 500, 750)."""
    each = gable(width_mm=2_700.0, courses=2, gauge_mm=345.0, rafters=EvenRafters(first_mm=150.0, spacing_mm=600.0))
    ask = replace(asked(each), nailing=Nailing(gun=True, counter_batten_depth_mm=38.0, counter_batten_width_mm=50.0))
    battens = plan_battens(ask)
    counter = battens.slopes[0].counter_battens
    assert counter is not None
    assert (3750.0, 20) == (counter.length_mm, counter.fixings_count)
    assert [("battens", 105.0), ("counter-battens", 80.0)] == [(nails.what, nails.length_mm) for nails in battens.nails]


def test_counter_battens_stop_at_an_opening() -> None:
    points = ((0.0, 0.0), (3_000.0, 0.0), (3_000.0, 3_000.0), (0.0, 3_000.0))
    kinds = (EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.RIDGE, EdgeKind.VERGE)
    lit = slope(points, *kinds, openings=(rooflight(left_mm=1000.0, sill_mm=1000.0, width_mm=800.0, height_mm=500.0),),
                rafters=MeasuredRafters(at_mm=(0.0, 600.0, 1200.0, 1800.0, 2400.0, 3000.0)))  # fmt: skip
    ask = replace(asked(lit), nailing=Nailing(counter_batten_depth_mm=25.0, counter_batten_width_mm=50.0))
    counter = plan_battens(ask).slopes[0].counter_battens
    assert counter is not None
    assert pytest.approx(6 * 3000.0 - 500.0) == counter.length_mm


def test_slopes_alike_share_one_plan_and_one_delivery() -> None:
    front = gable(width_mm=8_000.0, courses=12, gauge_mm=345.0)
    battens = plan_battens(asked(front, replace(front, where="front")))
    assert battens.slopes[0].lines == battens.slopes[1].lines
    assert 2 * battens.slopes[0].net_mm == battens.cutting.net_mm


def test_a_gable_a_little_out_of_square_repeats_all_the_same() -> None:
    """The right verge leans out 40 mm: the end pieces are cut to the longest, and what is left after trimming is 1.2 m or more."""
    points = ((0.0, 0.0), (9_000.0, 0.0), (9_040.0, 4_200.0), (0.0, 4_200.0))
    kinds = (EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.RIDGE, EdgeKind.VERGE)
    (laid,) = plan_battens(asked(slope(points, *kinds, gauge_mm=300.0), covering=SINGLE_LAP)).slopes
    assert (Arrangement.REPEATING, 4) == (laid.arrangement, laid.repeats_every)
    assert "Their ends differ by up to 34 mm: cut to the longest, trim in place." in laid.why
    for line in laid.lines:
        (stretch,) = line.stretches
        last_mm = stretch.ends_mm[1][0] - laid.rafters_mm[stretch.joints[-1] - 1]
        assert 1200 <= last_mm <= stretch.pieces_mm[-1] <= last_mm + 40


def test_battens_fanned_across_a_gable_repeat_all_the_same() -> None:
    each = gable(width_mm=8_600.0, courses=12, gauge_mm=345.0, rafters=EvenRafters(first_mm=100.0, spacing_mm=600.0))
    marks = tuple(
        BattenMark(name=mark.name, at_mm=((0.0, mark.at_mm[0][1]), (8_600.0, mark.at_mm[0][1] * 1.005)))
        for mark in each.marks
    )
    (laid,) = plan_battens(asked(replace(each, marks=marks), covering=SINGLE_LAP)).slopes
    assert 4 == laid.repeats_every


def test_the_method_says_what_to_start_each_course_with() -> None:
    battens = plan_battens(asked(gable(width_mm=11_400.0, courses=30, gauge_mm=345.0), covering=SINGLE_LAP))
    (first,) = [line for line in battens.method if "course A" in line]
    start = battens.slopes[0].lines[0].stretches[0]
    assert f"start with {start.pieces_mm[0] / 1000:.3f} m at the left, a joint on rafter {start.joints[0]}" in first


def test_every_fault_of_the_ask_is_told_at_once() -> None:
    each = gable(width_mm=8_000.0, courses=4, gauge_mm=345.0, rafters=EvenRafters(first_mm=0.0, spacing_mm=0.0))
    backwards = replace(
        each, where="front", marks=tuple(reversed(each.marks)), rafters=MeasuredRafters(at_mm=(600.0, 0.0))
    )
    nan = replace(each, where="left", rafters=MeasuredRafters(at_mm=(float("nan"),)), marks=())
    ask = replace(
        asked(each, backwards, nan),
        kerf=limit_mm(-1.0),
        stock=(limit_mm(float("inf")),),
        nailing=Nailing(counter_batten_depth_mm=25.0),
    )
    with pytest.raises(InputRefused) as refused:
        plan_battens(ask)
    assert {
        "stock", "kerf", "counter_batten", "rear.rafters.spacing", "front.rafters", "front.marks", "left.rafters", "left.marks",
    } == {fault.field for fault in refused.value.faults}  # fmt: skip


def test_no_slopes_and_no_stock_are_refused() -> None:
    with pytest.raises(InputRefused, match="slopes"):
        plan_battens(replace(asked(), stock=()))


def test_the_reading_of_the_close_rule_is_the_safer_unless_asked() -> None:
    assert CloseJoints.APART == asked().close_joints
