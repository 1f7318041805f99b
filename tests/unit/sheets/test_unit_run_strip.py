"""The strip of a ridge or hip: every unit to scale, in its order, told in words and in a picture."""

from dataclasses import replace
from itertools import combinations

import pytest

from gaugerod.basis.lengths import LengthUnit
from gaugerod.edges.answer import MadeEdge, UnitRun
from gaugerod.edges.ask import LineKind
from gaugerod.sheets.drawing import Pen
from gaugerod.sheets.lettering import words_box
from gaugerod.sheets.unit_run_strip import alike_runs, run_said, run_strip
from tests.scenario.edged import ridge

RUN = UnitRun(units_count=6, whole_count=4, cut_mm=(300.0, 300.0), cover_mm=430.0, length_mm=2320.0)
ONE = UnitRun(units_count=1, whole_count=0, cut_mm=(316.0,), cover_mm=430.0, length_mm=316.0)
LONG = UnitRun(units_count=60, whole_count=58, cut_mm=(250.0, 250.0), cover_mm=430.0, length_mm=25440.0)


def edge(kind: LineKind = LineKind.RIDGE, *, name: str = "rear, ridge", run: UnitRun = RUN) -> MadeEdge:
    made = ridge()
    assert made.line is not None
    return replace(made, name=name, run=run, line=replace(made.line, kind=kind, name=name))


def test_the_order_and_the_joints_are_told() -> None:
    said = run_said(edge(), RUN, unit=LengthUnit.MM)
    assert (
        "From the end you start at: 2 whole, then 2 cut 300 mm long each, then 2 whole. "
        "Joints (mm): 430, 860, 1160, 1460, 1890, 2320." == said
    )
    hip = run_said(edge(LineKind.HIP), RUN, unit=LengthUnit.MM)
    assert hip.startswith("From the foot: 3 whole, then 2 cut 300 mm long each, then 1 whole. ")


def test_a_cut_unit_is_sawn_longer_than_it_covers_by_its_lap() -> None:
    run = replace(RUN, lap_mm=20.0)
    assert "then 2 cut 320 mm long each, to cover 300 mm, then 2 whole. " in run_said(edge(), run, unit=LengthUnit.MM)
    words = [each.text for each in run_strip(edge(), run, unit=LengthUnit.MM).drawing.words]
    assert "2 × 320 mm long" in words
    assert not any("300 mm" in each for each in words)


def test_every_unit_is_drawn_as_long_as_it_covers() -> None:
    placed = run_strip(edge(), RUN, unit=LengthUnit.MM)
    drawn = {path.pen: [run[1][0] - run[0][0] for run in path.runs_mm] for path in placed.drawing.paths}
    assert {Pen.UNIT: [430.0] * 4, Pen.NAILED: [300.0] * 2} == {
        pen: pytest.approx(lengths) for pen, lengths in drawn.items()
    }
    assert ["2 whole", "2 CUT", "2 whole"] == [
        words.text for words in placed.drawing.words if words.text[:2] == "2 " and "×" not in words.text
    ]
    assert placed.drawing.says.startswith("rear, ridge, 6 units. From the end")


@pytest.mark.parametrize("kind", [LineKind.RIDGE, LineKind.HIP])
@pytest.mark.parametrize("unit", list(LengthUnit))
@pytest.mark.parametrize("run", [RUN, ONE, LONG])
@pytest.mark.parametrize("width_mm", [112.0, 181.0])
def test_words_and_lines_stay_on_the_paper_and_off_each_other(
    run: UnitRun, unit: LengthUnit, kind: LineKind, width_mm: float
) -> None:
    placed = run_strip(edge(kind, run=run), run, unit=unit, width_mm=width_mm)
    boxes = [words_box(words, placed.paper) for words in placed.drawing.words]
    for one, other in combinations(boxes, 2):
        assert not one.overlaps(other)
    for box in boxes:
        assert 0.0 <= box.left_mm
        assert box.right_mm <= placed.paper.width_mm
        assert 0.0 <= box.bottom_mm
        assert box.top_mm <= placed.paper.height_mm
    x_mm, _ = placed.paper.origin_paper_mm
    assert x_mm >= 0.0
    assert x_mm + run.length_mm / placed.paper.scale_ratio <= placed.paper.width_mm


def test_runs_that_read_the_same_are_told_once_though_measured_a_hair_apart() -> None:
    near = replace(RUN, length_mm=2320.0 + 1e-9, cut_mm=(300.0 + 1e-9, 300.0 + 1e-9))
    edges = (
        edge(name="a"),
        edge(name="b", run=near),
        edge(LineKind.HIP, name="c"),
        replace(edge(name="d"), run=None),
    )
    assert [("a", "b"), ("c",)] == [names for _, _, names in alike_runs(edges, unit=LengthUnit.MM)]
