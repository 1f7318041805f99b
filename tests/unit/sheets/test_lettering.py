"""Labels keep clear of each other whatever they are wished."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugerod.sheets.drawing import Anchor, Letter, Paper, Words
from gaugerod.sheets.lettering import Box, spread_mm, words_box, words_width_mm

PAPER = Paper(width_mm=100.0, height_mm=50.0, scale_ratio=10.0, origin_paper_mm=(20.0, 5.0))


def words(**changes: object) -> Words:
    figures: dict[str, object] = {"at_mm": (100.0, 50.0), "text": "4905", "letter": Letter.VALUE, "size_paper_mm": 3.0}
    return Words(**(figures | changes))  # type: ignore[arg-type] # the changes are the test's own


def test_a_word_is_as_wide_as_its_letters() -> None:
    assert pytest.approx(4 * 0.6021 * 3.0) == words_width_mm("4905", 3.0)


@pytest.mark.parametrize(("anchor", "left_mm"), [(Anchor.START, 30.0), (Anchor.MIDDLE, 26.3874), (Anchor.END, 22.7748)])
def test_the_anchor_says_which_part_of_the_word_stands_on_the_point(anchor: Anchor, left_mm: float) -> None:
    assert pytest.approx(left_mm) == words_box(words(anchor=anchor), PAPER).left_mm


def test_a_turned_word_takes_as_much_height_as_it_is_long() -> None:
    box = words_box(words(turned_deg=90.0), PAPER)
    assert pytest.approx(words_width_mm("4905", 3.0)) == box.top_mm - box.bottom_mm
    assert pytest.approx(3.0) == box.right_mm - box.left_mm


def test_boxes_that_only_touch_do_not_overlap() -> None:
    box = Box(left_mm=0.0, bottom_mm=0.0, right_mm=2.0, top_mm=2.0)
    assert not box.overlaps(Box(left_mm=2.0, bottom_mm=0.0, right_mm=4.0, top_mm=2.0))
    assert box.overlaps(Box(left_mm=1.9, bottom_mm=1.9, right_mm=4.0, top_mm=4.0))


def test_a_label_alone_stands_where_it_is_wished() -> None:
    assert (10.0,) == spread_mm((10.0,), (4.0,), from_mm=0.0, to_mm=20.0)


def test_no_labels_need_no_lane() -> None:
    assert () == spread_mm((), (), from_mm=0.0, to_mm=20.0)


@given(
    labels=st.lists(st.tuples(st.floats(-50.0, 250.0), st.floats(0.5, 20.0)), min_size=1, max_size=12),
    from_mm=st.floats(-20.0, 20.0),
)
def test_labels_in_a_lane_never_overlap_and_never_leave_a_lane_that_has_room(
    labels: list[tuple[float, float]], from_mm: float
) -> None:
    labels.sort()
    wished, rooms = [wish for wish, _ in labels], [room for _, room in labels]
    to_mm = from_mm + sum(rooms) + 10.0
    centres = spread_mm(wished, rooms, from_mm=from_mm, to_mm=to_mm)
    edges = [(centre - room / 2, centre + room / 2) for centre, room in zip(centres, rooms, strict=True)]
    assert edges[0][0] >= from_mm - 1e-9
    assert edges[-1][1] <= to_mm + 1e-9
    assert all(lower[1] <= upper[0] + 1e-9 for lower, upper in pairwise(edges))


def test_a_lane_too_short_is_run_over_at_its_end_and_still_nothing_overlaps() -> None:
    assert (2.0, 6.0, 10.0) == spread_mm((5.0, 5.0, 5.0), (4.0, 4.0, 4.0), from_mm=0.0, to_mm=8.0)
