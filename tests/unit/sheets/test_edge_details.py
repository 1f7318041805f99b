"""Sections of the edges: every length that is shown is as long in the drawing as its words say."""

from dataclasses import replace
from functools import cache
from itertools import combinations
from math import hypot

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.edges.wished import (
    EdgesWished,
    LineUnit,
    OpeningMade,
    RidgeMade,
    RidgeWished,
    SideMade,
    ValleyMade,
    ValleyWished,
    VergeMade,
    VergeWished,
    WallWished,
)
from gaugerod.job.model import Job
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out
from gaugerod.sheets.edge_detail import HEIGHT_MM, WIDTH_MM, Detail, detail_placed
from gaugerod.sheets.edges_sheet import details
from gaugerod.sheets.lettering import words_box
from gaugerod.wiring import demo_job
from tests.scenario.beneath_results import beneath_result

UNIT = LineUnit(length_mm=450.0, cover_mm=430.0)
BEDDED = EdgesWished(
    ridge=RidgeWished(made=RidgeMade.BEDDED, ridge=UNIT, mono_ridge=UNIT, hip=UNIT),
    verge=VergeWished(made=VergeMade.BEDDED),
    valley=ValleyWished(made=ValleyMade.LEAD),
    wall=WallWished(),
)
DRY = EdgesWished(
    ridge=RidgeWished(made=RidgeMade.DRY, ridge=UNIT, mono_ridge=UNIT, hip=UNIT),
    verge=VergeWished(made=VergeMade.DRY),
    valley=ValleyWished(made=ValleyMade.LINER, liner_length_mm=3000.0, liner_lap_mm=150.0),
    wall=WallWished(beside=SideMade.SOAKERS, splash=True),
)
TOP = """
[job]
title = "Lean-to"
exposure = "moderate"
[covering]
from = "clay-plain-265x165"
[[slope]]
name = "lean-to"
pitch = "40°"
across = "5 m"
rafters = ["3 m"]
left = "abutment"
right = "abutment"
bottom = "eaves"
top = "{top}"
[set_out]
ridge_cover = "150 mm"
"""


@cache
def made(name: str, how: str) -> Result:
    """A job with its edges made, and a chimney in every opening."""
    job: Job = beneath_result(name).job if name in {"hipped-house", "slates"} else demo_job()
    if name in {"abutment", "mono-ridge"}:
        job = read_job_text(TOP.format(top=name).encode())
    slopes = tuple(
        replace(slope, openings_made=tuple((opening.name, OpeningMade.CHIMNEY) for opening in slope.openings))
        for slope in job.slopes
    )
    return set_out(replace(job, edges=BEDDED if how == "bedded" else DRY, slopes=slopes))


CASES = [
    (name, how) for name in ("demo", "hipped-house", "slates", "abutment", "mono-ridge") for how in ("bedded", "dry")
]


def details_of(name: str, how: str) -> list[Detail]:
    return [detail for detail, _ in details(made(name, how))]


@pytest.mark.parametrize(("name", "how"), CASES)
def test_every_length_is_drawn_as_long_as_it_is_said(name: str, how: str) -> None:
    measured = 0
    for detail in details_of(name, how):
        for each in detail.measures:
            if each.from_mm == each.to_mm:
                continue
            long_mm = hypot(each.to_mm[0] - each.from_mm[0], each.to_mm[1] - each.from_mm[1])
            assert float(each.value.split()[0]) == pytest.approx(long_mm, abs=0.51), (detail.title, each.name)
            measured += 1
    assert measured > 0


@pytest.mark.parametrize(("name", "how"), CASES)
def test_words_stand_clear_of_each_other_and_on_the_paper(name: str, how: str) -> None:
    for detail in details_of(name, how):
        placed = detail_placed(detail)
        boxes = [words_box(words, placed.paper) for words in placed.drawing.words]
        for one, other in combinations(boxes, 2):
            assert not one.overlaps(other), detail.title
        for box in boxes:
            assert box.left_mm >= 0, detail.title
            assert box.right_mm <= placed.paper.width_mm
            assert box.bottom_mm >= 0
            assert box.top_mm <= placed.paper.height_mm


@pytest.mark.parametrize(("name", "how"), CASES)
def test_lines_stay_on_the_paper_at_a_standard_scale(name: str, how: str) -> None:
    for detail in details_of(name, how):
        placed = detail_placed(detail)
        assert placed.paper.scale_ratio in {1, 2, 5, 10, 20, 25, 50}
        assert placed.paper.width_mm <= WIDTH_MM
        assert placed.paper.height_mm <= HEIGHT_MM + 1e-9
        x_mm, y_mm = placed.paper.origin_paper_mm
        for path in placed.drawing.paths:
            for run in path.runs_mm:
                for x, y in run:
                    assert -1e-6 <= x_mm + x / placed.paper.scale_ratio <= placed.paper.width_mm + 1e-6
                    assert -1e-6 <= y_mm + y / placed.paper.scale_ratio <= placed.paper.height_mm + 1e-6


@pytest.mark.parametrize(("name", "how"), CASES)
def test_every_drawing_says_in_words_what_it_shows(name: str, how: str) -> None:
    for detail in details_of(name, how):
        says = detail_placed(detail).drawing.says
        assert all(each.name in says for each in detail.measures)
        assert f"Only drawn: {detail.only_drawn}." in says


def kinds(name: str, how: str) -> set[str]:
    return {detail.title.partition(" in section")[0] for detail in details_of(name, how)}


def test_each_kind_of_edge_that_is_made_is_drawn_once() -> None:
    assert {"rear, abutment", "rear, ridge", "rear, verge", "rear, rooflight"} == kinds("demo", "bedded")
    assert {"lean-to, right abutment", "lean-to, top abutment"} == kinds("abutment", "bedded")
    assert {"lean-to, right abutment", "lean-to, ridge"} == kinds("mono-ridge", "bedded")
    house = details(made("hipped-house", "bedded"))
    for_edges = {len(names) for detail, names in house if " hip in section" in detail.title}
    assert {4} == for_edges


def test_nothing_is_drawn_of_an_edge_that_is_not_made() -> None:
    result = made("demo", "bedded")
    bare = set_out(replace(result.job, edges=EdgesWished(), slopes=demo_job().slopes))
    assert [] == list(details(bare))


def test_the_angle_at_a_hip_and_valley_is_that_of_the_roof_form() -> None:
    result = made("hipped-house", "bedded")
    (roof,) = result.roofs
    said = {
        each.value for detail in details_of("hipped-house", "bedded") for each in detail.measures
        if each.name == "between the slopes"
    }  # fmt: skip
    assert {f"{line.dihedral_deg:.1f}°" for line in (*roof.form.hips, *roof.form.valleys)} == said
