"""The perps against mixed-integer programming: another solver, with its own model of the roof, finds the same optimum.

The model names each edge's neighbouring perp and way of ending by yes-or-no unknowns, and leaves the rest to the
solver. First it looks for the fewest cuts with no piece under half a unit; if there is no such layout, for the widest
least piece; then for the cover nearest mid-shunt.
"""

from dataclasses import dataclass, field

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis.errors import UnsatisfiedAssumption
from scipy.optimize import Bounds, LinearConstraint, milp

from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.across import Across, AcrossAsk, Fit, SideKind
from gaugerod.setting_out.set_across import set_out_across
from tests.property.random_across import square_slopes

FIRST, COVER, LEFT, RIGHT, LEAST, OFF = range(6)
OPTIMAL, INFEASIBLE = 0, 2
NEAR_MM = 1e-4
"""The solver's own roundness."""


@dataclass
class Model:
    """Conditions as rows of numbers: least ≤ row · unknowns ≤ greatest."""

    ask: AcrossAsk
    unknowns: int = 6
    rows: list[tuple[dict[int, float], float, float]] = field(default_factory=list)
    cuts: dict[int, float] = field(default_factory=dict)

    def yes_or_no(self) -> int:
        self.unknowns += 1
        return self.unknowns - 1

    def when(self, chosen: int, row: dict[int, float], *, at_least: float) -> None:
        """row · unknowns ≥ at_least, when chosen; slack of 3 m when not."""
        self.rows.append(({**row, chosen: -3_000.0}, at_least - 3_000.0, np.inf))

    def edge(self, row: dict[int, float], fixed_mm: float, *, weight: float, narrow: bool) -> None:
        """An edge whose piece is row · unknowns + fixed, less a whole number of covers. Exactly one ending holds."""
        choices: list[int] = []
        spans = self.ask.eaves_width_mm + 400.0
        for perp in range(-1, int(spans / self.ask.cover_closed_mm) + 2):
            if not self._could_be(row, fixed_mm, perp):
                continue
            sign = row[FIRST]
            piece = {**row, COVER: row.get(COVER, 0.0) + sign * perp}
            for low, high, small, cuts in self._endings(narrow=narrow):
                chosen = self.yes_or_no()
                choices.append(chosen)
                self.when(chosen, {**piece, COVER: piece[COVER] - low}, at_least=-fixed_mm)
                negative = {key: -value for key, value in piece.items()}
                self.when(chosen, {**negative, COVER: high - piece[COVER]}, at_least=fixed_mm)
                if small is not None:
                    self.when(chosen, {**piece, COVER: piece[COVER] - small, LEAST: -1.0}, at_least=-fixed_mm)
                self.cuts[chosen] = weight * cuts
        self.rows.append((dict.fromkeys(choices, 1.0), 1.0, 1.0))

    def _could_be(self, row: dict[int, float], fixed_mm: float, perp: int) -> bool:
        """Rough: is the perp within two covers of the edge for some layout?"""
        at_mm = perp * self.ask.cover_open_mm, perp * self.ask.cover_closed_mm
        edge_mm = -fixed_mm if row[FIRST] > 0 else fixed_mm
        slack_mm = 2.5 * self.ask.cover_open_mm + 100.0
        return min(at_mm) - slack_mm <= edge_mm <= max(at_mm) + slack_mm

    def _endings(self, *, narrow: bool) -> list[tuple[float, float, float | None, int]]:
        """Least and greatest piece in covers, what to take off it for the narrow piece, cuts in a pair of courses."""
        if self.ask.bond is Bond.STRAIGHT:
            halves = [(0.5, 0.5, 0.0, 0)] if self.ask.half_unit else []
            return [(1.0, 1.0, 0.0, 0), *halves, (0.0 if narrow else 0.5, 1.0, 0.0, 1)]
        one = 0 if self.ask.half_unit else 1
        exact: list[tuple[float, float, float | None, int]] = [(1.0, 1.0, 0.5, one), (0.5, 0.5, 0.0, one)]
        return [*exact, (0.5, 1.0, 0.5, 2), (0.0, 0.5, 0.0, 2)] if narrow else exact

    def solve(self, aim: dict[int, float]) -> np.ndarray | None:
        """The unknowns at the least of aim · unknowns; None when nothing satisfies all conditions.

        The solver takes a yes of 0.999999 for one, which is millimetres here. So each answer is solved again with its
        yes and no made exact, and ruled out when it does not stand.
        """
        while True:
            rough = self._solved(aim, fixed=None)
            if rough is None:
                return None
            exact = self._solved(aim, fixed=np.round(rough[6:]))
            if exact is not None:
                return exact
            chosen = {6 + index: 1.0 for index in np.flatnonzero(np.round(rough[6:])).tolist()}
            self.rows.append((chosen, -np.inf, len(chosen) - 1.0))

    def _solved(self, aim: dict[int, float], *, fixed: np.ndarray | None) -> np.ndarray | None:
        matrix = np.zeros((len(self.rows), self.unknowns))
        for index, (row, _, _) in enumerate(self.rows):
            for key, value in row.items():
                matrix[index, key] += value
        ask, cost = self.ask, np.zeros(self.unknowns)
        for key, value in aim.items():
            cost[key] = value
        low, high = np.zeros(self.unknowns), np.ones(self.unknowns)
        low[:6] = [-500.0, ask.cover_closed_mm, ask.left.reach.least_mm, ask.right.reach.least_mm, 0.0, 0.0]
        most = (ask.cover_open_mm, ask.left.reach.greatest_mm, ask.right.reach.greatest_mm)
        high[:6] = [1000.0, *most, 1000.0, 1000.0]
        if fixed is not None:
            low[6:] = high[6:] = fixed
        kinds = np.array([0] * 6 + [0 if fixed is not None else 1] * (self.unknowns - 6))
        for presolve in (True, False):  # the solver stumbles now and then over what its own presolve has left
            found = milp(
                cost,
                integrality=kinds,
                bounds=Bounds(low, high),
                constraints=LinearConstraint(matrix, [row[1] for row in self.rows], [row[2] for row in self.rows]),
                options={"mip_rel_gap": 0.0, "presolve": presolve},
            )
            if found.status in {OPTIMAL, INFEASIBLE}:
                return None if found.x is None else np.asarray(found.x)
        raise UnsatisfiedAssumption  # an error of the solver's own says nothing about the perps


def model_of(ask: AcrossAsk, *, narrow: bool) -> Model:
    model = Model(ask=ask)
    weights = {SideKind.VERGE: 100.0, SideKind.ABUTMENT: 1.0}
    lap_mm = -ask.unit_width_mm  # the last unit's full width: the piece is what is left of it with its lap taken off
    # The first perp is the one next to the left edge: its piece is first + left reach, in one cover.
    model.rows.append(({FIRST: 1.0, LEFT: 1.0}, 0.0, np.inf))
    model.rows.append(({FIRST: -1.0, LEFT: -1.0, COVER: 1.0}, 0.0, np.inf))
    model.edge({FIRST: 1.0, LEFT: 1.0}, 0.0, weight=weights[ask.left.kind], narrow=narrow)
    model.edge(
        {FIRST: -1.0, RIGHT: 1.0, COVER: 1.0},
        ask.eaves_width_mm + lap_mm,
        weight=weights[ask.right.kind],
        narrow=narrow,
    )
    for opening in ask.openings:
        model.edge({FIRST: -1.0, COVER: 1.0}, opening.from_left_mm + lap_mm, weight=0.0, narrow=narrow)
        model.edge({FIRST: 1.0}, -opening.right_mm, weight=0.0, narrow=narrow)
    mid_mm = (ask.cover_closed_mm + ask.cover_open_mm) / 2
    model.rows.append(({OFF: 1.0, COVER: -1.0}, -mid_mm, np.inf))
    model.rows.append(({OFF: 1.0, COVER: 1.0}, mid_mm, np.inf))
    return model


def oracle(ask: AcrossAsk) -> tuple[float | None, float, float]:
    """The widest least piece when one under half is unavoidable, the cuts (verges in hundreds), and off mid-shunt."""
    model, least_mm = model_of(ask, narrow=False), None
    best = model.solve(model.cuts)
    if best is None:
        model = model_of(ask, narrow=True)
        widest = model.solve({LEAST: -1.0})
        assert widest is not None
        least_mm = float(widest[LEAST])
        model.rows.append(({LEAST: 1.0}, least_mm - NEAR_MM / 10, np.inf))
        best = model.solve(model.cuts)
        assert best is not None
    cuts = round(sum(weight * best[chosen] for chosen, weight in model.cuts.items()))
    model.rows.append((dict(model.cuts), -np.inf, cuts + 0.1))
    nearest = model.solve({OFF: 1.0})
    assert nearest is not None
    return least_mm, float(cuts), float(nearest[OFF])


def cuts_of(ask: AcrossAsk, across: Across) -> float:
    kinds = {"left": ask.left.kind, "right": ask.right.kind}
    return sum(
        100.0 if kinds[piece.at] is SideKind.VERGE else 1.0
        for piece in across.pieces
        if piece.at in kinds and piece.fit is Fit.CUT
    )


def check(ask: AcrossAsk) -> None:
    across = set_out_across(ask)
    least_mm, cuts, off_mm = oracle(ask)
    narrow_mm = min(piece.cover_mm for piece in across.pieces)
    if least_mm is None:
        assert narrow_mm >= across.cover_mm / 2 - 1e-6
    else:
        assert least_mm == pytest.approx(narrow_mm, abs=NEAR_MM)
    mid_mm = (ask.cover_closed_mm + ask.cover_open_mm) / 2
    assert cuts == cuts_of(ask, across)
    assert off_mm == pytest.approx(abs(across.cover_mm - mid_mm), abs=NEAR_MM)


@settings(max_examples=40, deadline=None)
@given(ask=square_slopes())
def test_the_perps_are_the_best_there_are(ask: AcrossAsk) -> None:
    check(ask)


@pytest.mark.slow
@settings(max_examples=1000, deadline=None)
@given(ask=square_slopes(most_openings=2))
def test_the_perps_are_the_best_there_are_on_a_thousand_slopes(ask: AcrossAsk) -> None:
    check(ask)
