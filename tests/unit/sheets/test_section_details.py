"""Eaves and top in section: to scale, legible, with the slope's own figures."""

from dataclasses import replace
from itertools import combinations
from math import cos, dist, radians

import pytest

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.model import TopKind
from gaugerod.job.result import SlopeResult
from gaugerod.sheets.drawing import Pen
from gaugerod.sheets.lettering import words_box
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.section_details import eaves_section, top_section
from gaugerod.sheets.slope_frame import Span, lanes
from tests.scenario.by_hand import TILE, result_by_hand


def slope_at(pitch_deg: float, *, unit: LengthUnit = LengthUnit.MM, top: TopKind = TopKind.RIDGE) -> SlopeResult:
    slope = result_by_hand(unit=unit).slopes[0]
    return replace(slope, slope=replace(slope.slope, pitch_deg=pitch_deg, top=top))


def texts(placed: Placed) -> list[str]:
    return [words.text for words in placed.drawing.words]


def test_the_eaves_say_their_figures() -> None:
    placed = eaves_section(slope_at(35.0), TILE, unit=LengthUnit.MM)
    assert {"overhang 50", "first batten 347", "gap 323", "hanging length 397", "lap at least 96.3", "41 level"} <= set(
        texts(placed)
    )


def test_the_top_says_how_far_the_ridge_reaches_only_where_that_is_known() -> None:
    known = top_section(slope_at(35.0), TILE, ridge_cover_mm=125.0, unit=LengthUnit.MM)
    unknown = top_section(slope_at(35.0), TILE, ridge_cover_mm=None, unit=LengthUnit.MM)
    assert "ridge reaches down 125" in texts(known)
    assert Pen.CUT in {path.pen for path in known.drawing.paths}
    assert Pen.CUT not in {path.pen for path in unknown.drawing.paths}
    assert "below apex 40" in texts(unknown)


@pytest.mark.parametrize("pitch_deg", [12.5, 35.0, 60.0])
def test_battens_stand_at_their_true_distance_up_the_slope(pitch_deg: float) -> None:
    placed = eaves_section(slope_at(pitch_deg), TILE, unit=LengthUnit.MM)
    first, second = next(path for path in placed.drawing.paths if path.pen is Pen.SECTION_BATTEN).runs_mm
    assert pytest.approx(323.0) == dist(first[1], second[1])
    assert pytest.approx(347.0 * cos(radians(pitch_deg))) == first[1][0]


@pytest.mark.parametrize("unit", list(LengthUnit))
@pytest.mark.parametrize("pitch_deg", [12.5, 25.0, 35.0, 45.0, 60.0])
def test_sections_stay_on_their_paper(pitch_deg: float, unit: LengthUnit) -> None:
    slope = slope_at(pitch_deg, unit=unit)
    for placed in (
        eaves_section(slope, TILE, unit=unit),
        top_section(slope, TILE, ridge_cover_mm=125.0, unit=unit),
    ):
        for words in placed.drawing.words:
            box = words_box(words, placed.paper)
            assert box.left_mm >= 0.0, words.text
            assert box.bottom_mm >= 0.0, words.text
            assert box.right_mm <= placed.paper.width_mm, words.text
            assert box.top_mm <= placed.paper.height_mm, words.text


def test_a_wall_or_mono_ridge_has_no_other_side() -> None:
    def crown(top: TopKind) -> int:
        placed = top_section(slope_at(35.0, top=top), TILE, ridge_cover_mm=125.0, unit=LengthUnit.MM)
        return len(next(path for path in placed.drawing.paths if path.pen is Pen.CUT).runs_mm[0])

    assert {TopKind.RIDGE: 3, TopKind.MONO_RIDGE: 2, TopKind.ABUTMENT: 2} == {top: crown(top) for top in TopKind}


def test_spans_share_a_lane_only_where_they_meet_end_to_end() -> None:
    spans = [
        Span(from_mm=0.0, to_mm=300.0, text="a"),
        Span(from_mm=300.0, to_mm=600.0, text="b"),
        Span(from_mm=200.0, to_mm=400.0, text="c"),
        Span(from_mm=610.0, to_mm=620.0, text="too long for its span"),
    ]
    chosen = lanes(spans, scale_ratio=10.0)
    assert (0, 0, 1) == chosen[:3]
    taken = [(lane, span.taken_mm(10.0)) for lane, span in zip(chosen, spans, strict=True)]
    assert all(
        one_lane != other_lane or one[1] <= other[0] or other[1] <= one[0]
        for (one_lane, one), (other_lane, other) in combinations(taken, 2)
    )
