"""The rod at full size: every mark on a page at its true place."""

import pytest

from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.drawing import Pen
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.rod_strip import OVERLAP_MM, RULER_MM, rod_strip, strip_page, strip_span_mm
from gaugerod.sheets.shared_rods import different_rods
from gaugerod.sheets.sheet import PaperSize, Pictures
from tests.scenario.by_hand import result_by_hand


def pages(size: PaperSize = PaperSize.A4) -> list[Placed]:
    result = result_by_hand()
    sheet = rod_strip(result, result.slopes[0], numbers=(1,), size=size)
    return [placed for block in sheet.blocks if isinstance(block, Pictures) for placed, _ in block.pictures]


def marks_on(placed: Placed) -> list[float]:
    return [line[0][1] for path in placed.drawing.paths if path.pen is Pen.MARK for line in path.runs_mm]


@pytest.mark.parametrize("size", list(PaperSize))
def test_the_pages_carry_every_mark_of_the_rod(size: PaperSize) -> None:
    marks_mm = result_by_hand().slopes[0].courses.rods[0].marks_mm
    assert list(marks_mm) == sorted({mark for page in pages(size) for mark in marks_on(page)})


def test_every_page_is_at_full_size_and_has_a_hundred_millimetre_ruler() -> None:
    for placed in pages():
        assert 1.0 == placed.paper.scale_ratio
        spine = next(
            line
            for path in placed.drawing.paths
            if path.pen is Pen.RULER
            for line in path.runs_mm
            if len(line) == 2 and line[0][0] == line[1][0]
        )
        assert RULER_MM == spine[1][1] - spine[0][1]


def test_the_pages_reach_the_apex_and_overlap() -> None:
    rod = result_by_hand().slopes[0].courses.rods[0]
    span_mm = strip_span_mm(PaperSize.A4)
    assert len(pages()) * span_mm >= rod.length_mm > (len(pages()) - 1) * span_mm
    assert OVERLAP_MM > 0


@pytest.mark.parametrize("size", list(PaperSize))
def test_a_page_fits_its_paper(size: PaperSize) -> None:
    for placed in pages(size):
        assert placed.paper.width_mm <= size.text_width_mm
        assert placed.paper.height_mm <= size.text_height_mm - 9.0


def test_a_tape_reading_is_left_out_where_a_mark_runs_through_it() -> None:
    slope = result_by_hand().slopes[0]
    second = strip_page(slope, 0, page=1, title="two", size=PaperSize.A4, unit=LengthUnit.MM)
    assert 347.0 in marks_on(second)
    readings = {words.text for words in second.drawing.words}
    assert "350" in readings
    near = strip_page(slope, 0, page=2, title="three", size=PaperSize.A4, unit=LengthUnit.MM)
    assert {"500", "550", "600", "650"} <= {words.text for words in near.drawing.words}


def test_stations_with_the_same_marks_share_a_rod() -> None:
    square = result_by_hand(stations=((0.0, 4905.0), (3000.0, 4910.0), (7460.0, 4905.0))).slopes[0]
    assert ((1, 3), (2,)) == different_rods(square)
