"""The rolls of underlay against an integer programme solved by HiGHS: as few rolls, and as few side laps with them."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from random import Random

import numpy as np
import pytest
from hypothesis import given, reject, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.standards.edition import Edition
from gaugerod.standards.underlay import UnderlayFigure, underlay_figure
from gaugerod.substrate.underlay.answer import Demand
from gaugerod.substrate.underlay.cut_rolls import RollCuts, cut_rolls

GB = Edition.GB
SIDE_LAP_MM = int(underlay_figure(GB, UnderlayFigure.SIDE_LAP_LEAST).value)
LEAST_MM = int(underlay_figure(GB, UnderlayFigure.PIECE_LEAST).value)


def fewest(demands: Sequence[Demand], *, roll_mm: int, rolls_count: int) -> tuple[int, int] | None:
    """Rolls and side laps by a flow along each run: one arc for each piece and roll; None with so few rolls."""
    arcs = [
        (run, roll, first, last, length_mm)
        for run, demand in enumerate(demands)
        for first, last, length_mm in pieces(demand)
        for roll in range(rolls_count)
    ]
    columns = len(arcs) + rolls_count
    rows: list[np.ndarray[tuple[int], np.dtype[np.float64]]] = []
    low: list[float] = []
    high: list[float] = []
    for run, demand in enumerate(demands):
        ends = len(demand.breaks_mm) + 1
        for place in range(ends + 1):
            row = np.zeros(columns)
            for at, (of, _, first, last, _) in enumerate(arcs):
                if of == run:
                    row[at] = (first == place) - (last == place)
            rows.append(row)
            flow = (place == 0) - (place == ends)
            low.append(flow)
            high.append(flow)
    for roll in range(rolls_count):
        row = np.zeros(columns)
        for at, (_, of, _, _, length_mm) in enumerate(arcs):
            row[at] = length_mm if of == roll else 0
        row[len(arcs) + roll] = -roll_mm
        rows.append(row)
        low.append(-np.inf)
        high.append(0)
    cost = np.concatenate([np.ones(len(arcs)), np.full(rolls_count, 1000.0)])
    solved = milp(
        cost,
        constraints=LinearConstraint(np.array(rows), low, high),
        integrality=[1] * columns,
        bounds=Bounds(0, 1),
        options={"mip_rel_gap": 0.0},
    )
    if solved.x is None:
        return None
    used = np.round(solved.x)
    return int(used[len(arcs) :].sum()), int(used[: len(arcs)].sum()) - len(demands)


def pieces(demand: Demand) -> list[tuple[int, int, int]]:
    """First and last place, and the length to cut, of every piece that is worth laying."""
    places = (demand.from_mm, *demand.breaks_mm, demand.to_mm)
    found = []
    for first in range(len(places)):
        for last in range(first + 1, len(places)):
            length_mm = round(places[last] - places[first]) + (SIDE_LAP_MM if first else 0)
            if (first, last) == (0, len(places) - 1) or length_mm >= LEAST_MM:
                found.append((first, last, length_mm))
    return found


@st.composite
def jobs(draw: st.DrawFn) -> tuple[list[Demand], int]:
    """A few runs over rafters, even or not, some alike, and a roll that is often shorter than a run."""
    runs: list[Demand] = []
    alike = draw(st.sets(st.integers(1, 3)))
    for number in range(draw(st.integers(min_value=1, max_value=4))):
        if number and number in alike:
            runs.append(replace(runs[-1], name=f"run {number}"))
            continue
        gaps = draw(st.lists(st.integers(4, 14), min_size=1, max_size=5))
        places = [sum(gaps[:at]) * 100.0 for at in range(1, len(gaps) + 1)]
        runs.append(Demand(name=f"run {number}", from_mm=0.0, to_mm=places[-1], breaks_mm=tuple(places[:-1])))
    return runs, draw(st.integers(12, 60)) * 100


def check_rolls(cuts: RollCuts, demands: Sequence[Demand], roll_mm: int) -> None:
    """Every run covered from end to end, every joint a side lap over a rafter, no roll overdrawn."""
    for roll in cuts.rolls:
        assert roll.left_mm >= 0
        assert roll_mm == sum(piece.length_mm for piece in roll.pieces) + roll.left_mm
    for demand in demands:
        own = sorted(
            (piece for roll in cuts.rolls for piece in roll.pieces if piece.name == demand.name),
            key=lambda piece: piece.from_mm,
        )
        assert demand.from_mm == own[0].from_mm
        assert demand.to_mm <= own[-1].to_mm
        for left, right in pairwise(own):
            assert SIDE_LAP_MM == right.side_lap_mm == left.to_mm - right.from_mm
            assert left.to_mm in demand.breaks_mm


def check_against_oracle(job: tuple[list[Demand], int]) -> None:
    demands, roll_mm = job
    try:
        cuts = cut_rolls(demands, roll_length_mm=float(roll_mm), edition=GB)
    except NothingToSetOut:
        assert fewest(demands, roll_mm=roll_mm, rolls_count=8) is None
        return
    check_rolls(cuts, demands, roll_mm)
    if not cuts.proven:
        assert roll_mm < max(demand.to_mm for demand in demands), "only rolls shorter than a run are too hard"
        return
    assert (cuts.rolls_count, cuts.side_laps_count) == fewest(demands, roll_mm=roll_mm, rolls_count=cuts.rolls_count)


@settings(max_examples=60, deadline=None)
@given(jobs())
def test_no_plan_takes_fewer_rolls_or_side_laps(job: tuple[list[Demand], int]) -> None:
    check_against_oracle(job)


@pytest.mark.slow
@settings(max_examples=2000, deadline=None)
@given(jobs())
def test_no_plan_takes_fewer_rolls_or_side_laps_in_thousands(job: tuple[list[Demand], int]) -> None:
    check_against_oracle(job)


@settings(max_examples=40, deadline=None)
@given(jobs(), st.randoms(use_true_random=False))
def test_the_order_of_the_runs_is_irrelevant(job: tuple[list[Demand], int], shuffle: Random) -> None:
    demands, roll_mm = job
    turned = list(demands)
    shuffle.shuffle(turned)
    counts: list[tuple[int, int] | None] = []
    for order in (demands, turned):
        try:
            cuts = cut_rolls(order, roll_length_mm=float(roll_mm), edition=GB)
        except NothingToSetOut:
            counts.append(None)
            continue
        counts.append((cuts.rolls_count, cuts.side_laps_count))
        if not cuts.proven:
            reject()
    assert counts[0] == counts[1]
