"""The underlay of one slope: edges, runs, laps, strips, what is said and what is found."""

from dataclasses import replace

import pytest

from gaugerod.basis.citation import house
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Finding, Verdict
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division
from gaugerod.coverings.underlay import LabelRating, Support
from gaugerod.laying.ask import EdgeKind
from gaugerod.rules.underlay_wind import UpliftSite
from gaugerod.substrate.underlay.answer import LapBetween, LapOnBatten, StripKind, UnderlayPlan
from gaugerod.substrate.underlay.ask import LapRemedy, RidgeMade
from gaugerod.substrate.underlay.lay_underlay import lay_underlay
from tests.scenario.underlaid_slopes import MEMBRANE, level_rods, rectangle, ring, rod, underlay_ask

SITE = UpliftSite(zone=1, altitude_m=50.0, ridge_height_m=9.0, on_hill_or_cliff=False, ceiling_sealed=True)


def found(plan: UnderlayPlan, rule: str) -> list[Finding]:
    return [finding for finding in plan.findings if finding.rule == rule]


def kinds(*, bottom: EdgeKind = EdgeKind.EAVES, top: EdgeKind = EdgeKind.RIDGE, side: EdgeKind = EdgeKind.VERGE) -> tuple[
    EdgeKind, ...
]:  # fmt: skip
    return (bottom, side, top, side)


@pytest.mark.parametrize(
    ("ridge", "pitch_deg", "past_mm"),
    [
        (RidgeMade.DRY_VENTILATED, 35.0, -30.0),
        (RidgeMade.BEDDED, 34.9, 150.0),
        (RidgeMade.BEDDED, 35.0, 100.0),
        (RidgeMade.MONO, 35.0, 150.0),
    ],
)  # fmt: skip
def test_the_top_goes_as_far_as_the_ridge_asks(ridge: RidgeMade, pitch_deg: float, past_mm: float) -> None:
    plan = lay_underlay(underlay_ask(ridge=ridge, pitch_deg=pitch_deg))
    assert 5000.0 + past_mm == max(y for _, y in plan.reach_mm)


@pytest.mark.parametrize(
    ("side", "past_mm"),
    [(EdgeKind.VERGE, 0.0), (EdgeKind.HIP, 150.0), (EdgeKind.ABUTMENT, 100.0), (EdgeKind.VALLEY, -150.0)],
)  # fmt: skip
def test_each_side_is_passed_or_kept_from_by_its_kind(side: EdgeKind, past_mm: float) -> None:
    plan = lay_underlay(underlay_ask(outline=rectangle(kinds=kinds(side=side))))
    assert (0.0 - past_mm, 9000.0 + past_mm) == plan.runs[0].spans_mm[0]


def test_sources_that_differ_at_the_ridge_are_both_shown() -> None:
    (dry,) = found(lay_underlay(underlay_ask()), "underlay at the ridge")
    assert (30.0, 5.0) == (dry.proposed, dry.limit)
    (mono,) = found(lay_underlay(underlay_ask(ridge=RidgeMade.MONO)), "underlay at the ridge")
    assert (150.0, 100.0) == (mono.proposed, mono.limit)
    assert [] == found(lay_underlay(underlay_ask(ridge=RidgeMade.BEDDED)), "underlay at the ridge")


def test_a_lap_between_battens_is_widened_to_the_next_one() -> None:
    # Upper edge of the first run at 1000; a lap of 100 holds no batten of 50 whose top edge is at 690 or 1035. The one at
    # 1035 leaves 900 to 985 clear, and an extra one goes in the middle of that.
    plan = lay_underlay(underlay_ask(rods=level_rods(first_mm=345.0, gauge_mm=345.0)))
    lap = plan.laps[0]
    assert isinstance(lap.place, LapBetween)
    assert (640.0, 360.0) == (lap.low_mm, lap.place.widened_mm)
    (first, *_) = found(plan, "underlay lap on a batten")
    assert "an extra batten, top edge at 967 mm" in first.says
    assert "tape" in first.says
    assert Verdict.WITHIN is first.verdict


def test_a_lap_that_holds_a_batten_is_left_at_the_least() -> None:
    for first_mm in (950.0, 951.0, 1000.0):
        lap = lay_underlay(underlay_ask(rods=level_rods(first_mm=first_mm, gauge_mm=345.0, count=11))).laps[0]
        assert LapOnBatten(batten=1) == lap.place
        assert 100.0 == lap.lap_mm
    for first_mm in (949.0, 1001.0):
        lap = lay_underlay(underlay_ask(rods=level_rods(first_mm=first_mm, gauge_mm=345.0, count=11))).laps[0]
        assert isinstance(lap.place, LapBetween)


def test_a_batten_that_fans_off_the_lap_does_not_hold_it() -> None:
    level = rod((960.0, 1700.0), at_mm=0.0)
    fanned = rod((940.0, 1690.0), at_mm=9000.0)
    lap = lay_underlay(underlay_ask(rods=(level, fanned))).laps[0]
    assert isinstance(lap.place, LapBetween)
    assert LapRemedy.WIDEN is lap.place.remedy
    assert 890.0 == lap.low_mm


def test_a_lap_over_half_the_roll_gives_way_to_an_extra_batten() -> None:
    near = lay_underlay(underlay_ask(rods=(rod((550.0, 1400.0)),))).laps[0]
    far = lay_underlay(underlay_ask(rods=(rod((549.0, 1400.0)),))).laps[0]
    assert isinstance(near.place, LapBetween)
    assert isinstance(far.place, LapBetween)
    assert (LapRemedy.WIDEN, 500.0) == (near.place.remedy, near.lap_mm)
    assert (LapRemedy.EXTRA_BATTEN, 100.0, 975.0) == (far.place.remedy, far.lap_mm, far.place.extra_batten_mm)


def test_where_a_batten_pokes_into_the_lap_and_leaves_no_room_it_is_taped() -> None:
    ask = underlay_ask(rods=(rod((930.0, 1700.0)),), between_battens=LapRemedy.EXTRA_BATTEN, batten_width_mm=80.0)
    lap = lay_underlay(ask).laps[0]
    assert isinstance(lap.place, LapBetween)
    assert (LapRemedy.TAPE, None) == (lap.place.remedy, lap.place.extra_batten_mm)
    assert 9000.0 == lay_underlay(ask).remedies[0].tape_length_mm


def test_what_each_remedy_takes_is_told_the_one_taken_first() -> None:
    plan = lay_underlay(underlay_ask(between_battens=LapRemedy.EXTRA_BATTEN))
    between = [lap for lap in plan.laps if isinstance(lap.place, LapBetween)]
    extra, widen, tape = plan.remedies
    assert (LapRemedy.EXTRA_BATTEN, LapRemedy.WIDEN, LapRemedy.TAPE) == (extra.remedy, widen.remedy, tape.remedy)
    assert (len(plan.runs), plan.laid_area_mm2) == (extra.runs_count, extra.laid_area_mm2)
    assert 9000.0 * len(between) == extra.extra_batten_length_mm
    assert 9000.0 * len(between) == tape.tape_length_mm
    assert (0.0, 0.0) == (widen.extra_batten_length_mm, widen.tape_length_mm)
    assert widen.laid_area_mm2 > extra.laid_area_mm2
    assert 3 == sum(line.startswith("Laps between battens") for line in plan.says)


def test_nothing_is_told_of_remedies_where_every_lap_lies_on_a_batten() -> None:
    close = lay_underlay(underlay_ask(rods=level_rods(first_mm=100.0, gauge_mm=50.0, count=98)))
    assert all(isinstance(lap.place, LapOnBatten) for lap in close.laps)
    assert () == close.remedies


def test_without_battens_the_laps_are_not_held_against_them() -> None:
    plan = lay_underlay(underlay_ask(rods=()))
    assert [None] * len(plan.laps) == [lap.place for lap in plan.laps]
    assert not plan.wind_held
    assert [Verdict.NOT_COVERED] == [finding.verdict for finding in found(plan, "underlay lap on a batten")]


def test_a_stated_lap_is_taken_when_larger_and_never_when_smaller() -> None:
    assert 140.0 == lay_underlay(underlay_ask(rods=(), lap_mm=140.0)).laps[0].lap_mm
    assert 100.0 == lay_underlay(underlay_ask(rods=(), lap_mm=60.0)).laps[0].lap_mm


def test_below_the_table_no_run_is_placed_unless_a_lap_is_stated() -> None:
    flat = lay_underlay(underlay_ask(pitch_deg=12.4))
    assert () == flat.runs
    assert () == flat.demands
    assert Verdict.NOT_COVERED is found(flat, "underlay lap")[0].verdict
    stated = lay_underlay(underlay_ask(pitch_deg=12.4, lap_mm=300.0))
    assert stated.runs
    assert Verdict.NOT_COVERED is found(stated, "underlay lap")[0].verdict


def test_lower_edges_are_marks_a_tape_can_be_read_to() -> None:
    rods = (rod((955.5, 1300.5, 1645.3)),)
    plan = lay_underlay(underlay_ask(rods=rods, division=Division.MILLIMETRE, batten_width_mm=37.7))
    assert all(run.low_mm == int(run.low_mm) for run in plan.runs)
    inches = lay_underlay(underlay_ask(rods=rods, division=Division.SIXTEENTH))
    assert all(
        pytest.approx(0.0, abs=1e-6) == run.low_mm / (25.4 / 16) - round(run.low_mm / (25.4 / 16))
        for run in inches.runs
    )
    assert all(lap.lap_mm >= 100.0 for lap in (*plan.laps, *inches.laps))


@pytest.mark.parametrize(
    ("reach_mm", "verdict"),
    [(149.9, Verdict.OUTSIDE), (150.0, Verdict.WITHIN), (150.1, Verdict.WITHIN), (None, Verdict.NOT_COVERED)],
)  # fmt: skip
def test_the_eaves_carrier_reaches_up_far_enough(reach_mm: float | None, verdict: Verdict) -> None:
    plan = lay_underlay(underlay_ask(carrier_reach_mm=reach_mm))
    assert [verdict] == [finding.verdict for finding in found(plan, "eaves carrier lap")]


def test_a_valley_strip_is_laid_first_full_length_and_in_one_piece() -> None:
    outline = ring(((0.0, 0.0), (6000.0, 0.0), (6000.0, 4000.0), (3000.0, 4000.0)),
                   (EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.RIDGE, EdgeKind.VALLEY))  # fmt: skip
    plan = lay_underlay(underlay_ask(outline=outline))
    strip = next(strip for strip in plan.strips if strip.kind is StripKind.VALLEY)
    assert (5000.0, 600.0) == (strip.length_mm, strip.width_mm)
    assert ("rear, strip down valley 4", 5000.0, ()) == (
        plan.demands[0].name, plan.demands[0].to_mm, plan.demands[0].breaks_mm,
    )  # fmt: skip
    elsewhere = lay_underlay(underlay_ask(outline=outline, valley_strips_elsewhere=frozenset({"valley 4"})))
    assert plan.demands[1:] == elsewhere.demands
    assert any("bitumen" in line for line in plan.says)


def test_a_valley_strip_too_narrow_to_lap_is_refused() -> None:
    outline = rectangle(kinds=kinds(side=EdgeKind.VALLEY))
    assert lay_underlay(underlay_ask(outline=outline, valley_strip_width_mm=300.0)).runs
    with pytest.raises(NothingToSetOut, match="it takes 300 mm"):
        lay_underlay(underlay_ask(outline=outline, valley_strip_width_mm=299.0))


def test_a_slope_smaller_than_its_strips_is_refused() -> None:
    with pytest.raises(NothingToSetOut, match="too small"):
        lay_underlay(underlay_ask(outline=rectangle(width_mm=200.0, kinds=kinds(side=EdgeKind.VALLEY)), rods=()))


def test_a_roll_that_is_mostly_lap_is_refused() -> None:
    narrow = replace(MEMBRANE, roll_width_mm=199.0)
    with pytest.raises(NothingToSetOut, match="mostly lap"):
        lay_underlay(underlay_ask(record=narrow))


def test_figures_of_the_wrong_size_are_refused_before_they_are_worked_out() -> None:
    with pytest.raises(NothingToSetOut, match="1000 runs"):
        lay_underlay(underlay_ask(outline=rectangle(length_mm=5e6), rods=()))


def test_draped_over_rafters_or_on_a_deck() -> None:
    assert [(10.0, 15.0)] == [(f.proposed, f.limit) for f in found(lay_underlay(underlay_ask()), "underlay drape")]
    taut = lay_underlay(underlay_ask(counter_battens=True))
    assert [] == found(taut, "underlay drape")
    deck = lay_underlay(underlay_ask(support=Support.BOARDS))
    assert [Verdict.NOT_COVERED] == [finding.verdict for finding in found(deck, "underlay drape")]
    assert 75.0 == deck.least_lap_mm


def test_the_label_is_held_against_the_zone_with_laps_held() -> None:
    rated = replace(MEMBRANE, ratings=(LabelRating(resistance_pa=820.0, gauge_mm=345.0, lap_restrained=True),))
    assert Verdict.WITHIN is found(lay_underlay(underlay_ask(record=rated, site=SITE)), "underlay uplift")[0].verdict
    unset = lay_underlay(underlay_ask(record=rated, site=SITE, rods=()))
    assert Verdict.NOT_COVERED is found(unset, "underlay uplift")[0].verdict
    nowhere = lay_underlay(underlay_ask(record=rated))
    assert Verdict.NOT_COVERED is found(nowhere, "underlay uplift")[0].verdict


def test_the_sources_that_part_on_air_permeable_part_in_what_is_done() -> None:
    def says(air: float) -> list[str]:
        airy = Limit(value=air, unit="m3/(m2.h) at 50 Pa", citation=house("label"))
        plan = lay_underlay(underlay_ask(record=replace(MEMBRANE, air_permeability=airy)))
        return [line for line in plan.says if "air-permeable" in line.lower()]

    assert (0, 2, 1) == (len(says(19.9)), len(says(20.0)), len(says(34.0)))


def test_low_resistance_on_boards_is_said_to_count_as_high() -> None:
    assert any("counts as high" in line for line in lay_underlay(underlay_ask(support=Support.BOARDS)).says)


def test_rafters_not_given_leave_the_runs_unjoined() -> None:
    plan = lay_underlay(underlay_ask(rafters_mm=()))
    assert {()} == {demand.breaks_mm for demand in plan.demands}
    assert [Verdict.NOT_COVERED] == [finding.verdict for finding in found(plan, "underlay side lap")]
    given = lay_underlay(underlay_ask())
    assert (19.0, 619.0) == given.demands[0].breaks_mm[:2]


def test_the_area_as_laid_is_that_of_the_sheets() -> None:
    plan = lay_underlay(underlay_ask(rods=()))
    # Runs from 0 to 1000 and on by 900, cut off 30 mm below the apex at 4970: five whole and one of 470.
    assert 9000.0 * (5 * 1000.0 + 470.0) == plan.laid_area_mm2
    assert 9000.0 * 4970.0 == plan.reach_area_mm2
    assert plan.working.value == pytest.approx(plan.laid_area_mm2 / 1e6)
