"""The slope to scale: everything on it, nothing on top of anything else."""

from dataclasses import replace
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugerod.basis.lengths import LengthUnit
from gaugerod.setting_out.across import SideKind
from gaugerod.setting_out.stations import Opening
from gaugerod.sheets.drawing import STANDARD_SCALES, Letter, Path, Pen
from gaugerod.sheets.lettering import words_box
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.slope_drawing import slope_drawing
from gaugerod.sheets.slope_lines import inside_parts
from tests.scenario.by_hand import CHIMNEY, ROOFLIGHT, result_by_hand

FOUR_STATIONS = ((0.0, 9000.0), (4000.0, 9010.0), (9000.0, 9004.0), (14000.0, 8990.0))
L_SHAPE = ((0.0, 0.0), (30.0, 0.0), (30.0, 10.0), (10.0, 10.0), (10.0, 20.0), (0.0, 20.0))


def drawn(
    *,
    eaves_mm: float = 7460.0,
    stations: tuple[tuple[float, float], ...] = ((0.0, 4905.0), (7460.0, 4918.0)),
    openings: tuple[Opening, ...] = (ROOFLIGHT,),
    unit: LengthUnit = LengthUnit.MM,
    room_width_mm: float = 182.0,
    room_height_mm: float = 150.0,
) -> Placed:
    result = result_by_hand(eaves_mm=eaves_mm, stations=stations, openings=openings, unit=unit)
    return slope_drawing(result.slopes[0], unit=unit, room_width_mm=room_width_mm, room_height_mm=room_height_mm)


def path(placed: Placed, pen: Pen) -> Path:
    return next(each for each in placed.drawing.paths if each.pen is pen)


def texts(placed: Placed) -> set[str]:
    return {words.text for words in placed.drawing.words}


def overlapping(placed: Placed) -> list[tuple[str, str]]:
    boxes = [
        (words.text, words_box(words, placed.paper)) for words in placed.drawing.words if words.letter is not Letter.KEY
    ]
    return [(one, other) for (one, a), (other, b) in combinations(boxes, 2) if a.overlaps(b)]


def off_paper(placed: Placed) -> list[str]:
    paper = placed.paper
    return [
        words.text
        for words in placed.drawing.words
        for box in [words_box(words, paper)]
        if box.left_mm < -0.01 or box.bottom_mm < -0.01 or box.right_mm > paper.width_mm or box.top_mm > paper.height_mm
    ]


@pytest.mark.parametrize("unit", list(LengthUnit))
@pytest.mark.parametrize(
    ("eaves_mm", "stations", "openings"),
    [
        (7460.0, ((0.0, 4905.0), (7460.0, 4918.0)), (ROOFLIGHT,)),
        (2000.0, ((0.0, 1800.0), (2000.0, 1800.0)), ()),
        (1200.0, ((0.0, 7000.0), (1200.0, 7010.0)), ()),
        (14000.0, FOUR_STATIONS, (ROOFLIGHT, CHIMNEY)),
        (14000.0, ((0.0, 2000.0), (14000.0, 2005.0)), (replace(ROOFLIGHT, up_slope_mm=500.0),)),
        (30000.0, ((0.0, 12000.0), (30000.0, 12100.0)), tuple(
            replace(ROOFLIGHT, from_left_mm=1000.0 + 3000.0 * index) for index in range(9)
        )),
    ],
    ids=["usual", "small", "narrow", "large", "low", "nine-rooflights"],
)  # fmt: skip
def test_no_label_stands_on_another_or_runs_off_the_paper(
    eaves_mm: float, stations: tuple[tuple[float, float], ...], openings: tuple[Opening, ...], unit: LengthUnit
) -> None:
    placed = drawn(eaves_mm=eaves_mm, stations=stations, openings=openings, unit=unit)
    assert [] == overlapping(placed)
    assert [] == off_paper(placed)
    assert placed.paper.scale_ratio in STANDARD_SCALES


@given(
    eaves_mm=st.floats(800.0, 40000.0),
    rafter_mm=st.floats(1200.0, 15000.0),
    taper_mm=st.floats(-60.0, 60.0),
    unit=st.sampled_from(LengthUnit),
    room_width_mm=st.floats(170.0, 260.0),
)
def test_no_label_stands_on_another_on_any_slope(
    eaves_mm: float, rafter_mm: float, taper_mm: float, unit: LengthUnit, room_width_mm: float
) -> None:
    placed = drawn(
        eaves_mm=eaves_mm,
        stations=((0.0, rafter_mm), (eaves_mm / 2, rafter_mm + taper_mm), (eaves_mm, rafter_mm)),
        openings=(),
        unit=unit,
        room_width_mm=room_width_mm,
    )
    assert [] == overlapping(placed)
    assert [] == off_paper(placed)


def test_every_batten_is_drawn_and_every_fifth_heavier() -> None:
    placed = drawn(openings=())
    heights = sorted(line[0][1] for pen in (Pen.BATTEN, Pen.FIFTH_BATTEN) for line in path(placed, pen).runs_mm)
    marks_mm = result_by_hand().slopes[0].courses.rods[0].marks_mm
    assert len(marks_mm) == len(heights)
    assert len(marks_mm) // 5 == len(path(placed, Pen.FIFTH_BATTEN).runs_mm)
    assert heights == pytest.approx(marks_mm, abs=0.1)


def test_dimensions_say_what_the_result_says() -> None:
    assert {"347", "4865", "4905", "4918", "4878", "50", "322.7", "323.6", "7460", "45", "300", "2400", "3180", "1600",
            "2780", "eaves", "ridge", "verge", "rod 1", "rod 2"} <= texts(drawn())  # fmt: skip


def test_another_mark_draws_another_figure() -> None:
    slope = result_by_hand().slopes[0]
    rod = slope.courses.rods[0]
    moved = replace(rod, marks_mm=(351.0, *rod.marks_mm[1:]))
    changed = replace(slope, courses=replace(slope.courses, rods=(moved, *slope.courses.rods[1:])))
    placed = slope_drawing(changed, unit=LengthUnit.MM, room_width_mm=182.0, room_height_mm=150.0)
    assert "351" in texts(placed)


def test_a_square_slope_shows_its_rod_once() -> None:
    placed = drawn(stations=((0.0, 4905.0), (7460.0, 4905.0)), openings=())
    assert 1 == [words.text for words in placed.drawing.words].count("first batten")


def test_a_slope_with_no_cover_width_is_drawn_without_perps() -> None:
    slope = replace(result_by_hand().slopes[0], across=None)
    placed = slope_drawing(slope, unit=LengthUnit.MM, room_width_mm=182.0, room_height_mm=150.0)
    assert Pen.PERP not in {each.pen for each in placed.drawing.paths}
    assert "cover of one" not in texts(placed)


def test_a_hip_has_no_reach_to_show() -> None:
    slope = result_by_hand().slopes[0]
    hipped = replace(slope, slope=replace(slope.slope, left=SideKind.HIP, right=SideKind.VALLEY))
    placed = slope_drawing(hipped, unit=LengthUnit.MM, room_width_mm=182.0, room_height_mm=150.0)
    assert "past the end" in texts(drawn())
    assert "past the end" not in texts(placed)


def test_the_picture_is_told_in_words() -> None:
    says = drawn().drawing.says
    assert "15 battens, the first at 347" in says
    assert "rooflight" in says


@pytest.mark.parametrize(("room_height_mm", "expected"), [(90.0, "1:125"), (150.0, "1:75")])
def test_less_paper_takes_a_smaller_scale(room_height_mm: float, expected: str) -> None:
    assert expected == drawn(room_height_mm=room_height_mm).scale_said


def test_a_line_over_a_notched_outline_is_drawn_only_inside_it() -> None:
    assert [((0.0, 15.0), (10.0, 15.0))] == inside_parts((-5.0, 15.0), (40.0, 15.0), L_SHAPE)
    assert [((0.0, 5.0), (30.0, 5.0))] == inside_parts((-5.0, 5.0), (40.0, 5.0), L_SHAPE)
    assert [] == inside_parts((-5.0, 25.0), (40.0, 25.0), L_SHAPE)
