"""The slope for a narrow screen: nothing runs out of it, whatever the unit."""

import pytest

from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.lettering import words_box
from gaugerod.sheets.pocket_drawing import pocket_drawing
from tests.scenario.by_hand import CHIMNEY, ROOFLIGHT, result_by_hand

ROOM_MM = 84.0


@pytest.mark.parametrize("unit", list(LengthUnit))
@pytest.mark.parametrize("eaves_mm", [900.0, 7460.0, 31_000.0])
def test_no_word_runs_out_of_the_room(unit: LengthUnit, eaves_mm: float) -> None:
    openings = () if eaves_mm < 7000 else (ROOFLIGHT,) if eaves_mm < 10_000 else (ROOFLIGHT, CHIMNEY)
    stations = ((0.0, 4905.0), (eaves_mm, 4918.0))
    result = result_by_hand(eaves_mm=eaves_mm, stations=stations, openings=openings, unit=unit)
    placed = pocket_drawing(result.slopes[0], unit=unit, room_width_mm=ROOM_MM)
    for words in placed.drawing.words:
        box = words_box(words, placed.paper)
        assert box.left_mm >= 0.0, words.text
        assert box.bottom_mm >= 0.0, words.text
        assert box.right_mm <= ROOM_MM, words.text
        assert box.top_mm <= placed.paper.height_mm, words.text


def test_what_does_not_fit_on_one_line_stands_on_two() -> None:
    result = result_by_hand(unit=LengthUnit.FT_IN)
    placed = pocket_drawing(result.slopes[0], unit=LengthUnit.FT_IN, room_width_mm=60.0)
    texts = [words.text for words in placed.drawing.words]
    assert any(text.startswith("past fascia") for text in texts)
    assert any(text.startswith("left") for text in texts)
