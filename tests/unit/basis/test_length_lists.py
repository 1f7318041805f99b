"""Many lengths in one text: parted where the gap is clear, told where it could be one length or two."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugerod.basis.length_lists import parted_lengths
from gaugerod.basis.lengths import read_length_mm

MARKS_MM, MARGINS_MM = 100_000.0, 2_000.0


@pytest.mark.parametrize(
    ("text", "texts"),
    [
        ("348\n687\n1028", ("348", "687", "1028")),
        ("348\r\n687\r\n", ("348", "687")),
        ("348 687 1028", ("348", "687", "1028")),
        ("348, 687, 1028,", ("348", "687", "1028")),
        ("348; 687\t1028", ("348", "687", "1028")),
        ("348,5, 687,5", ("348,5", "687,5")),
        ("348.5  687", ("348.5", "687")),
        ("0.348 m 0.687 m", ("0.348 m", "0.687 m")),
        ("348mm 687mm", ("348mm", "687mm")),
        ("1 m 20 cm", ("1 m 20 cm",)),
        ("1 234 mm", ("1 234 mm",)),
        ("1' 1 5/8\"\n2' 3\"", ("1' 1 5/8\"", "2' 3\"")),
        ("1' 1 5/8\", 2' 3\"", ("1' 1 5/8\"", "2' 3\"")),
        ("", ()),
        (" \n ,\n;", ()),
        ("seven", ("seven",)),
        ("4.905 5.250", ("4.905", "5.250")),
        ("1,234 mm", ("1,234 mm",)),
    ],
)
def test_clear_gaps_part_the_lengths(text: str, texts: tuple[str, ...]) -> None:
    found = parted_lengths(text, greatest_mm=MARKS_MM)
    assert (texts, ()) == (found.texts, found.unclear)


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("1 032", "could be 1032, or 1 and 032"),
        ("99 687 1032", "could be 99687, or 99 and 687"),
        ("100 000", "could be 100000, or 100 and 000"),
        ("348,687,1032", "has no blank after its commas"),
        ("1' 1\" 2' 3\"", "put each on its own line"),
        ("6 3/8", "put each on its own line"),
        ("1 m 20", "put each on its own line"),
        ("348 -20", "put each on its own line"),
    ],
)
def test_what_could_be_one_length_or_two_is_told_with_what_to_write(text: str, hint: str) -> None:
    found = parted_lengths(text, greatest_mm=MARKS_MM)
    assert (text,) == found.texts
    (unclear,) = found.unclear
    assert hint in unclear.reason


@pytest.mark.parametrize(("text", "clear"), [("1 999", False), ("2 000", False), ("2 001", True), ("99 100 98", True)])
def test_a_number_over_the_greatest_can_only_be_two(text: str, *, clear: bool) -> None:
    assert clear == (() == parted_lengths(text, greatest_mm=MARGINS_MM).unclear)


@given(
    st.lists(st.integers(min_value=1000, max_value=99_999), min_size=1, max_size=30),
    st.sampled_from(["\n", ", ", "; ", " "]),
)
def test_marks_of_four_figures_come_back_as_they_were_written(marks: list[int], gap: str) -> None:
    found = parted_lengths(gap.join(str(mark) for mark in marks), greatest_mm=MARKS_MM)
    assert () == found.unclear
    assert marks == [read_length_mm(text) for text in found.texts]


@given(st.text(max_size=80))
def test_nothing_typed_is_dropped(text: str) -> None:
    found = parted_lengths(text, greatest_mm=MARKS_MM)
    kept = "".join("".join(found.texts).split())
    assert [each for each in kept if each.isdigit()] == [each for each in text if each.isdigit()]
