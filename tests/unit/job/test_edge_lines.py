from dataclasses import replace
from functools import cache

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.basis.finding import Verdict
from gaugerod.edges.ask import EdgeLine, Hand, LineKind
from gaugerod.edges.wished import EdgesWished, LineUnit, RidgeMade, RidgeWished, SharedLine
from gaugerod.job.edge_lines import edge_lines
from gaugerod.job.edges_asks import edges_ask
from gaugerod.job.result import Beneath, Result
from gaugerod.job.set_out import set_out
from tests.scenario.beneath_results import beneath_result

HEAD = """
[job]
title = "Byre"
exposure = "moderate"
[covering]
from = "flat-interlocking-420x330"
"""
SLOPE = """
[[slope]]
name = "{name}"
pitch = "35°"
across = "6.000 m"
rafters = ["{rafter}"]
ridge = "{ridge}"
left = "verge"
right = "{right}"
bottom = "eaves"
top = "{top}"
"""


@cache
def byre(*, ridge: str = "6.000 m", top: str = "ridge", right: str = "verge") -> Result:
    """Two slopes measured one by one. The ridge of the second is taped as ``ridge``."""
    front = SLOPE.format(name="front", rafter="4.9 m", ridge="6.000 m", right=right, top=top)
    back = SLOPE.format(name="back", rafter="4.9 m", ridge=ridge, right=right, top=top)
    return set_out(read_job_text((HEAD + front + back).encode()))


def lines_of(result: Result, *shared: SharedLine) -> tuple[EdgeLine, ...]:
    return edge_lines(result.slopes, result.roofs, shared)[0]


def of_kind(lines: tuple[EdgeLine, ...], kind: LineKind) -> list[EdgeLine]:
    return [line for line in lines if line.kind is kind]


RIDGE = SharedLine(slopes=("front", "back"), kind="ridge")


def test_each_slope_by_itself_has_a_ridge_of_its_own() -> None:
    assert [("front",), ("back",)] == [line.slopes for line in of_kind(lines_of(byre()), LineKind.RIDGE)]


def test_a_verge_is_on_the_left_or_the_right_of_its_slope_seen_from_the_eaves() -> None:
    lines = lines_of(byre())
    assert [
        ("front, right verge", Hand.RIGHT),
        ("front, left verge", Hand.LEFT),
        ("back, right verge", Hand.RIGHT),
        ("back, left verge", Hand.LEFT),
    ] == [(line.name, line.hand) for line in of_kind(lines, LineKind.VERGE)]
    assert {None} == {line.hand for line in lines if line.kind is not LineKind.VERGE}


def test_the_hand_is_that_of_the_side_the_job_names() -> None:
    (verge, _) = of_kind(lines_of(byre(right="abutment")), LineKind.VERGE)
    assert ("front, verge", Hand.LEFT) == (verge.name, verge.hand)


def test_a_ridge_said_to_be_shared_is_one_line() -> None:
    (ridge,) = of_kind(lines_of(byre(), RIDGE), LineKind.RIDGE)
    assert {"front", "back"} == set(ridge.slopes)
    assert ridge.of_two
    assert 6000.0 == ridge.length_mm


def test_of_two_measures_of_one_ridge_the_longer_counts_and_a_difference_is_told() -> None:
    result = byre(ridge="6.040 m")
    lines, found = edge_lines(result.slopes, result.roofs, (RIDGE,))
    (ridge,) = of_kind(lines, LineKind.RIDGE)
    assert pytest.approx(6040.0, abs=0.5) == ridge.length_mm
    assert ["shared line"] == [finding.rule for finding in found]
    assert Verdict.NOT_COVERED is found[0].verdict
    assert "40 mm apart" in found[0].says


def test_measures_within_the_tape_are_one_without_a_word() -> None:
    result = byre(ridge="6.008 m")
    assert () == edge_lines(result.slopes, result.roofs, (RIDGE,))[1]


def test_like_ridges_that_nobody_calls_one_are_told_once_their_units_are_counted() -> None:
    result = byre()
    ridge = RidgeWished(made=RidgeMade.DRY, ridge=LineUnit(length_mm=450, cover_mm=450))
    job = replace(result.job, edges=EdgesWished(ridge=ridge))
    found = edges_ask(job, result.slopes, result.roofs, Beneath())[1]
    assert ["front, ridge; back, ridge"] == [finding.where for finding in found]
    shared = replace(job, edges=EdgesWished(ridge=ridge, shared=(RIDGE,)))
    assert () == edges_ask(shared, result.slopes, result.roofs, Beneath())[1]
    assert () == edges_ask(result.job, result.slopes, result.roofs, Beneath())[1]


def test_the_ridge_is_laid_out_over_both_verges() -> None:
    result = byre()
    across = result.slopes[0].across
    assert across is not None
    ridge = of_kind(lines_of(result), LineKind.RIDGE)[0]
    assert pytest.approx(6000 + across.left_overhang_mm + across.right_overhang_mm) == ridge.laid_mm


def test_a_verge_runs_down_to_the_tail_at_its_own_pitch_and_ends_every_course() -> None:
    result = byre()
    verge = of_kind(lines_of(result), LineKind.VERGE)[0]
    assert pytest.approx(4900 + result.slopes[0].courses.overhang_mm) == verge.laid_mm
    assert pytest.approx(35.0) == verge.slope_deg
    assert (result.slopes[0].courses.count,) == verge.courses_count


def test_a_wall_at_the_side_and_one_along_the_top_are_told_apart() -> None:
    lines = lines_of(byre(top="abutment", right="abutment"))
    assert 2 == len(of_kind(lines, LineKind.TOP_ABUTMENT))
    assert 2 == len(of_kind(lines, LineKind.SIDE_ABUTMENT))
    assert [] == of_kind(lines, LineKind.RIDGE)


def test_a_mono_ridge_is_no_ridge() -> None:
    lines = lines_of(byre(top="mono-ridge"))
    assert 2 == len(of_kind(lines, LineKind.MONO_RIDGE))


def test_hips_valleys_and_ridges_of_a_building_come_once_each() -> None:
    result = beneath_result("hipped-house")
    (roof,) = result.roofs
    lines = lines_of(result)
    for kind, those in (
        (LineKind.HIP, roof.form.hips),
        (LineKind.VALLEY, roof.form.valleys),
        (LineKind.RIDGE, roof.form.ridges),
    ):
        found = of_kind(lines, kind)
        assert sorted(round(line.length_mm, 3) for line in those) == sorted(round(line.length_mm, 3) for line in found)
        assert all(line.of_two for line in found)
        assert pytest.approx(sorted(line.slope_deg for line in those)) == sorted(line.slope_deg for line in found)


def test_the_slope_on_the_left_of_a_hip_stands_first() -> None:
    result = beneath_result("hipped-house")
    (roof,) = result.roofs
    said = {line.slopes for line in of_kind(lines_of(result), LineKind.HIP)}
    assert {(roof.slope_names[hip.left], roof.slope_names[hip.right]) for hip in roof.form.hips} == said


def test_every_name_is_its_own() -> None:
    for name in ("demo", "hipped-house", "plain-tiles", "slates", "random-slates"):
        names = [line.name for line in lines_of(beneath_result(name))]
        assert len(names) == len(set(names))


def test_lengths_of_all_edges_are_those_of_the_outlines() -> None:
    result = beneath_result("hipped-house")
    outline_mm = sum(
        ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
        for slope in result.slopes
        for (x0, y0), (x1, y1) in zip(
            slope.shape.outline_mm, (*slope.shape.outline_mm[1:], slope.shape.outline_mm[0]), strict=True
        )
    )
    assert pytest.approx(outline_mm) == sum(line.length_mm * len(line.slopes) for line in lines_of(result))


def test_the_short_course_at_the_top_ends_at_a_side_too() -> None:
    """Soakers, bonnets and verge tiles go to it as to any other: its tail is marked on the rod."""
    result = beneath_result("plain-tiles")
    (slope, *_) = result.slopes
    assert slope.double_lap is not None
    assert slope.double_lap.rods[0].short is not None
    sides = [line for line in lines_of(result) if line.kind in {LineKind.VERGE, LineKind.SIDE_ABUTMENT}]
    assert sides
    for line in sides:
        assert (slope.courses.count + 1,) == line.courses_count


L_SHAPED = """
[job]
title = "Byre"
exposure = "moderate"
[covering]
from = "flat-interlocking-420x330"
[[building]]
name = "byre"
outline = [["0 m", "0 m"], ["12 m", "0 m"], ["12 m", "7 m"], ["5 m", "7 m"], ["5 m", "10 m"], ["0 m", "10 m"]]
pitch = ["35°", "gable", "35°", "35°", "gable", "35°"]
rafter_spacing = "600 mm"
[edges.ridge]
made = "bedded"
unit = { length = "450 mm" }
hip_unit = { length = "450 mm" }
"""


def test_a_hip_that_runs_from_ridge_to_ridge_has_no_foot_at_the_eaves_and_no_iron() -> None:
    result = set_out(read_job_text(L_SHAPED.encode()))
    assert result.edges is not None
    hips = [edge for edge in result.edges.edges if edge.line is not None and edge.line.kind is LineKind.HIP]
    from_eaves = {edge.line.from_eaves: [part.item for part in edge.parts] for edge in hips if edge.line is not None}
    assert {True, False} == set(from_eaves)
    assert "hip-iron" in from_eaves[True]
    assert "hip-iron" not in from_eaves[False]
