"""Cutting: exact on few lengths, quick on many; held against each other and against counting by hand."""

from itertools import product

import pytest

from gaugerod.substrate.battens.cutting import cut_longest_first
from gaugerod.substrate.battens.exact_cutting import OF_A_MM, Cut, ExactCutting, cost_of
from gaugerod.substrate.battens.piece_values import best_values
from gaugerod.substrate.battens.whole_cutting import left_over_mm

STOCK = (3600, 4200, 4800, 5100)


def exact(lengths_mm: tuple[int, ...], demand: tuple[int, ...], *, kerf_mm: float) -> list[Cut]:
    cutting = ExactCutting(lengths_mm, STOCK, kerf_mm, 100_000)
    allowed = sum(demand) * max(STOCK) * OF_A_MM + sum(demand)
    best = cutting.cuts_within(demand, allowed)
    assert best is not None
    while (better := cutting.cuts_within(demand, cost_of(best) - 1)) is not None:
        best = better
    assert cutting.steps_left > 0
    return best


def test_two_halves_fill_a_length_only_where_the_saw_takes_nothing() -> None:
    assert [Cut(4800, (2400, 2400))] == exact((2400,), (2,), kerf_mm=0.0)
    assert [Cut(5100, (2400, 2400))] == exact((2400,), (2,), kerf_mm=3.0)


@pytest.mark.parametrize("kerf_mm", [0.0, 3.0])
def test_exact_cutting_never_buys_more_than_the_quick_one(kerf_mm: float) -> None:
    for demand in product(range(4), repeat=4):
        if not any(demand):
            continue
        lengths = (3000, 2400, 1800, 1350)
        pieces = [length for length, number in zip(lengths, demand, strict=True) for _ in range(number)]
        quick = cut_longest_first(pieces, stock_mm=STOCK, kerf_mm=kerf_mm)
        assert sorted(pieces) == sorted(piece for cut in quick for piece in cut.pieces_mm)
        assert cost_of(exact(lengths, demand, kerf_mm=kerf_mm)) <= cost_of(quick)


def test_the_best_values_never_say_more_than_the_cost() -> None:
    contents = [(5, ((0, 1),)), (5, ((1, 1), (2, 1))), (4, ((1, 1),)), (5, ((2, 2),)), (3, ((2, 1),))]
    for demand in product(range(4), repeat=3):
        values = best_values(demand, contents)
        assert all(sum(values[at] * many for at, many in pieces) <= cost + 1e-9 for cost, pieces in contents)


def test_what_is_left_of_a_length() -> None:
    assert (0.0, 597.0) == tuple(left_over_mm(Cut(4800, (piece,)), kerf_mm=3.0) for piece in (4798, 4200))
