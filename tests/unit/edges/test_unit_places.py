"""Where the units of a run go: whole ones at both ends of a ridge, at the foot and head of a hip."""

from itertools import pairwise

import pytest

from gaugerod.edges.answer import UnitRun
from gaugerod.edges.ask import LineKind
from gaugerod.edges.unit_places import joint_marks_mm, unit_covers_mm
from gaugerod.edges.unit_run import unit_run
from gaugerod.edges.wished import LineUnit
from gaugerod.standards.edition import Edition

RIDGE_LENGTHS_MM = (200.0, 430.0, 431.0, 700.0, 860.0, 4600.0, 7485.0, 12345.6)
KINDS = (LineKind.RIDGE, LineKind.MONO_RIDGE, LineKind.HIP)


def run_of(length_mm: float) -> UnitRun:
    unit = LineUnit(length_mm=450.0, cover_mm=430.0)
    return unit_run(where="ridge", length_mm=length_mm, unit=unit, edition=Edition.GB)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("length_mm", RIDGE_LENGTHS_MM)
def test_every_unit_has_its_place_and_together_they_reach_the_end(length_mm: float, kind: LineKind) -> None:
    run = run_of(length_mm)
    covers, marks = unit_covers_mm(run, kind=kind), joint_marks_mm(run, kind=kind)
    assert sorted((*(run.cover_mm,) * run.whole_count, *run.cut_mm)) == sorted(covers)
    assert run.units_count == len(marks)
    assert length_mm == pytest.approx(marks[-1], abs=1e-6)
    assert list(covers) == pytest.approx([end - start for start, end in pairwise((0.0, *marks))])


@pytest.mark.parametrize("length_mm", [length for length in RIDGE_LENGTHS_MM if length >= 1290.0])
def test_a_cut_unit_stands_at_no_end_where_there_are_two_whole_ones(length_mm: float) -> None:
    run = run_of(length_mm)
    assert run.whole_count >= 2
    for kind in KINDS:
        covers = unit_covers_mm(run, kind=kind)
        assert (run.cover_mm, run.cover_mm) == (covers[0], covers[-1])


def test_the_cut_ones_of_a_hip_come_just_below_the_last_at_the_top() -> None:
    covers = unit_covers_mm(run_of(4600.0), kind=LineKind.HIP)
    assert (430.0, 430.0, 300.0, 430.0) == covers[-4:]


def test_with_one_whole_unit_it_goes_first_and_with_none_there_are_cuts_alone() -> None:
    assert (430.0, 270.0) == unit_covers_mm(run_of(700.0), kind=LineKind.HIP)
    assert (430.0, 270.0) == unit_covers_mm(run_of(700.0), kind=LineKind.RIDGE)
    assert (200.0,) == unit_covers_mm(run_of(200.0), kind=LineKind.RIDGE)


def test_marks_gather_no_error_over_many_units() -> None:
    run = UnitRun(units_count=1000, whole_count=1000, cut_mm=(), cover_mm=0.1, length_mm=100.0)
    assert joint_marks_mm(run, kind=LineKind.RIDGE)[-1] == pytest.approx(100.0, abs=1e-9)
