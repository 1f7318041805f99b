"""Every unit drawn: numbers of pieces keep clear of each other, and those left out stand in the list."""

from importlib.resources import files
from itertools import combinations

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.job.set_out import set_out
from gaugerod.sheets.laying_drawing import laying_drawing
from gaugerod.sheets.lettering import words_box


@pytest.mark.parametrize("name", ["demo", "slates", "random-slates", "hipped-house"])
@pytest.mark.parametrize("room_width_mm", [182.0, 269.0])
def test_piece_numbers_keep_clear_of_each_other_and_on_the_paper(name: str, room_width_mm: float) -> None:
    job = files("gaugerod.adapters.job_file").joinpath("examples", f"{name}.toml").read_bytes()
    found = set_out(read_job_text(job))
    for slope in found.slopes:
        assert slope.laid is not None
        placed = laying_drawing(
            slope,
            slope.laid,
            unit=found.job.show_lengths_in,
            room_width_mm=room_width_mm,
            room_height_mm=room_width_mm * 1.2,
        )
        numbers = {str(piece.number) for piece in slope.laid.pieces}
        boxes = [words_box(words, placed.paper) for words in placed.drawing.words if words.size_paper_mm <= 2.2]
        assert not [pair for pair in combinations(boxes, 2) if pair[0].overlaps(pair[1])]
        assert all(0.0 <= box.left_mm and box.right_mm <= placed.paper.width_mm for box in boxes)
        shown = {words.text for words in placed.drawing.words} & numbers
        # Large paper has room for a good part of them even where a whole course is cut to a strip.
        assert room_width_mm < 200.0 or 3 * len(shown) >= len(numbers)
