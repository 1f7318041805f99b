"""Units along a line: each count checked by hand, each threshold just below, at and just above."""

from math import inf, nan

import pytest

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.edges.answer import UnitRun
from gaugerod.edges.unit_run import unit_run
from gaugerod.edges.wished import LineUnit
from gaugerod.standards.edition import Edition

UNREAL = [nan, inf, -inf, 0.0, -1.0]


def run(length_mm: float, *, cover_mm: float = 450.0) -> UnitRun:
    unit = LineUnit(length_mm=460.0, cover_mm=cover_mm)
    return unit_run(where="ridge", length_mm=length_mm, unit=unit, edition=Edition.GB)


@pytest.mark.parametrize(
    ("length_mm", "whole_count", "cut_mm"),
    [
        (4500.0, 10, ()),  # ten to the millimetre
        (4499.0, 9, (449.0,)),
        (4725.0, 10, (225.0,)),  # half a unit left over is a cut unit
        (4724.0, 9, (337.0, 337.0)),  # a millimetre under half: 450 + 224 shared
        (4726.0, 10, (226.0,)),
        (4501.0, 9, (225.5, 225.5)),  # a millimetre left over: 451 shared
        (450.0, 1, ()),
        (451.0, 0, (225.5, 225.5)),
        (449.0, 0, (449.0,)),  # a line shorter than one unit
        (225.0, 0, (225.0,)),
        (224.0, 0, (224.0,)),  # shorter than half of one: nothing can be shared
    ],
)
def test_the_units_are_those_counted_by_hand(length_mm: float, whole_count: int, cut_mm: tuple[float, ...]) -> None:
    units = run(length_mm)
    assert (whole_count, cut_mm) == (units.whole_count, units.cut_mm)
    assert whole_count + len(cut_mm) == units.units_count
    assert (length_mm, 450.0) == (units.length_mm, units.cover_mm)


def test_a_line_that_float_noise_makes_short_takes_no_cut_unit() -> None:
    assert (30, ()) == (
        run(30 * 450.1 - 1e-9, cover_mm=450.1).whole_count,
        run(30 * 450.1 + 1e-9, cover_mm=450.1).cut_mm,
    )


@pytest.mark.parametrize("wrong", UNREAL)
def test_no_run_is_made_of_what_is_no_measurement(wrong: float) -> None:
    with pytest.raises(NothingToSetOut, match="units along a line, ridge"):
        run(wrong)
    with pytest.raises(NothingToSetOut, match="cut ridge or hip unit, ridge"):
        run(4500.0, cover_mm=wrong)
