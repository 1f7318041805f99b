"""The chosen courses against an integer programme of the same rules, solved by a library that knows nothing of ours."""

from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from gaugerod.coverings.double_lap import Heap
from gaugerod.setting_out.diminishing.ask import Aim
from gaugerod.setting_out.diminishing.choose import Need, choose_courses
from gaugerod.setting_out.diminishing.stack import Supply

RUN_MM = 7000.0


def supply(*, length: int, courses_ratio: float, lap: int, lost: int) -> Supply:
    return Supply(
        heap=Heap(length_mm=float(length), run_mm=courses_ratio * RUN_MM),
        length_divisions=length,
        usable_divisions=length - lost,
        gauge_divisions=(length - lost - lap) // 2,
        run_mm=courses_ratio * RUN_MM,
        courses_count=int(courses_ratio + 1e-9),
    )


@st.composite
def stacks(draw: st.DrawFn) -> tuple[list[Supply], Need, Aim]:
    lap = draw(st.integers(40, 110))
    lost = draw(st.sampled_from([0, 25, 31]))
    lengths = sorted(draw(st.sets(st.integers(200, 610), min_size=1, max_size=6)), reverse=True)
    quarters = st.integers(0, 22)
    supplies = [
        supply(length=length, courses_ratio=draw(quarters) / 4, lap=lap, lost=lost)
        for length in lengths
        if length - lost - lap >= 2
    ]
    need = Need(
        cover_divisions=draw(st.integers(300, 2600)),
        headlap_divisions=lap,
        lost_divisions=lost,
        least_batten_divisions=draw(st.sampled_from([1, 50, 120])),
        course_run_mm=RUN_MM,
    )
    return supplies, need, draw(st.sampled_from(Aim))


def best_by_integer_programme(supplies: Sequence[Supply], need: Need, aim: Aim) -> tuple[int, int] | None:
    """(courses, surplus) of the best plan, or None.

    Unknowns for each length: its courses n, whether it is used u, whether it is the first (longest) used f.
    """
    size = len(supplies)
    gauges = np.array([one.gauge_divisions for one in supplies])
    there = np.array([one.courses_count for one in supplies])
    cover, far = need.cover_divisions, 20_000
    rows: list[np.ndarray] = []
    lower: list[float] = []
    upper: list[float] = []

    def hold(n: np.ndarray, u: np.ndarray, f: np.ndarray, *, least: float = -np.inf, most: float = np.inf) -> None:
        rows.append(np.concatenate([n, u, f]))
        lower.append(least)
        upper.append(most)

    nothing, one = np.zeros(size), np.eye(size)
    hold(gauges, nothing, nothing, least=cover)
    hold(nothing, nothing, np.ones(size), least=1, most=1)
    for at in range(size):
        hold(one[at], -there[at] * one[at], nothing, most=0)
        hold(one[at], -one[at], nothing, least=0)
        # Take off one course of any length in use, and the ridge is not reached.
        hold(gauges, far * one[at], nothing, most=cover - 1 + gauges[at] + far)
        # The first length is used, and nothing longer is.
        hold(nothing, one[at], -one[at], least=0)
        for longer in range(at):
            hold(nothing, one[longer], one[at], most=1)
        least_length = gauges[at] + need.headlap_divisions + need.lost_divisions
        enough = [index for index in range(size) if supplies[index].length_divisions >= least_length]
        run = sum(supplies[index].run_mm for index in enough) / RUN_MM
        hold(sum((one[index] for index in enough), nothing), nothing, far * one[at], most=run - 1 + far + 1e-9)
        for shorter in range(at + 1, size):
            drop = supplies[at].length_divisions - supplies[shorter].length_divisions
            if gauges[at] - drop < need.least_batten_divisions:
                between = sum((one[index] for index in range(at + 1, shorter)), nothing)
                hold(nothing, one[at] + one[shorter] - between, nothing, most=1)
    sign = -1 if aim is Aim.LEAST_LEFT else 1
    found = milp(
        c=np.concatenate([sign * far * np.ones(size) + gauges, np.zeros(2 * size)]),
        constraints=LinearConstraint(np.array(rows), lower, upper),
        bounds=Bounds(0, np.concatenate([there, np.ones(2 * size)])),
        integrality=np.ones(3 * size, dtype=int),
        options={"mip_rel_gap": 0},
    )
    if found.x is None:
        assert found.status == 2, found.message
        return None
    counts = np.round(found.x[:size]).astype(int)
    return int(counts.sum()), int(gauges @ counts) - cover


def check_against_the_programme(case: tuple[list[Supply], Need, Aim]) -> None:
    supplies, need, aim = case
    if not supplies:
        return
    counts = choose_courses(supplies=supplies, need=need, aim=aim)
    found = None
    if counts is not None:
        reach = sum(one.gauge_divisions * count for one, count in zip(supplies, counts, strict=True))
        found = (sum(counts), reach - need.cover_divisions)
        assert all(count <= one.courses_count for one, count in zip(supplies, counts, strict=True))
    assert best_by_integer_programme(supplies, need, aim) == found


@settings(max_examples=100, deadline=None)
@given(stacks())
def test_the_chosen_courses_are_as_good_as_an_integer_programme_finds(case: tuple[list[Supply], Need, Aim]) -> None:
    check_against_the_programme(case)


@pytest.mark.slow
@settings(max_examples=3000, deadline=None)
@given(stacks())
def test_the_chosen_courses_are_as_good_over_many_stacks(case: tuple[list[Supply], Need, Aim]) -> None:
    check_against_the_programme(case)
