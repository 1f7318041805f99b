"""Rolls: whole, joined over rafters, several slopes at once, and what is said of them."""

import pytest

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.standards.edition import Edition
from gaugerod.substrate.underlay.answer import Demand
from gaugerod.substrate.underlay.cut_rolls import RollCuts, cut_rolls
from gaugerod.substrate.underlay.lay_underlay import lay_underlay
from tests.scenario.underlaid_slopes import rectangle, underlay_ask


def run(number: int, length_mm: float, *breaks_mm: float) -> Demand:
    return Demand(name=f"run {number}", from_mm=0.0, to_mm=length_mm, breaks_mm=breaks_mm)


def cut(*runs: Demand, roll_mm: float) -> RollCuts:
    return cut_rolls(runs, roll_length_mm=roll_mm, edition=Edition.GB)


def test_no_run_takes_no_roll() -> None:
    assert (0, 0, True) == (
        cut(roll_mm=50000.0).rolls_count,
        cut(roll_mm=50000.0).side_laps_count,
        cut(roll_mm=1.0).proven,
    )


def test_a_run_as_long_as_the_roll_is_one_piece_and_a_longer_one_is_joined() -> None:
    assert (1, 0) == (cut(run(1, 5000.0, 2019.0), roll_mm=5000.0).rolls_count, 0)
    joined = cut(run(1, 5001.0, 2019.0), roll_mm=5000.0)
    assert (2, 1) == (joined.rolls_count, joined.side_laps_count)
    pieces = sorted(piece.from_mm for roll in joined.rolls for piece in roll.pieces)
    assert [0.0, 1919.0] == pieces


def test_a_run_longer_than_the_roll_with_no_rafter_to_join_over_is_refused() -> None:
    with pytest.raises(NothingToSetOut, match="run 1"):
        cut(run(1, 5001.0), roll_mm=5000.0)


def test_no_piece_is_shorter_than_is_worth_laying() -> None:
    # The only rafter leaves a piece of 999 mm; one more millimetre and it may be joined there.
    with pytest.raises(NothingToSetOut):
        cut(run(1, 5000.0, 999.0), roll_mm=4900.0)
    assert 1 == cut(run(1, 5000.0, 1000.0), roll_mm=4900.0).side_laps_count


def test_the_rolls_of_two_slopes_go_together() -> None:
    plan = lay_underlay(underlay_ask(rods=()))
    alone = cut(*plan.demands, roll_mm=50000.0)
    both = cut(*plan.demands, *lay_underlay(underlay_ask(where="front", rods=())).demands, roll_mm=50000.0)
    assert (2, 3) == (alone.rolls_count, both.rolls_count)
    assert both.proven
    assert "No plan takes fewer." in both.says[0]


def test_everything_cut_and_left_makes_the_rolls() -> None:
    plan = lay_underlay(underlay_ask(outline=rectangle(width_mm=20000.0)))
    cuts = cut(*plan.demands, roll_mm=25000.0)
    used_mm = cuts.net_length_mm + 100.0 * cuts.side_laps_count
    assert cuts.rolls_count * 25000.0 == used_mm + cuts.left_mm
    assert float(cuts.rolls_count) == cuts.working.value


def test_too_hard_a_question_is_left_open_and_said_so() -> None:
    runs = [run(number, 24300.0, *(19.0 + 600.0 * at for at in range(1, 40))) for number in range(30)]
    cuts = cut(*runs, roll_mm=15000.0)
    assert not cuts.proven
    assert "not settled" in cuts.says[0]
