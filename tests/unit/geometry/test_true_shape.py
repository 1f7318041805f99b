"""The true shape of a taped slope, checked against plain coordinates."""

from math import hypot, inf

import pytest

from gaugerod.basis.finding import Verdict
from gaugerod.geometry.taped_slope import SlopeShape, TapedSlope
from gaugerod.geometry.true_shape import end_rafters_mm, true_shape

EAVES, RAFTER = 7460.0, 4905.0
DIAGONAL = hypot(EAVES, RAFTER)


def shape(
    *,
    rafters: tuple[tuple[float, float], ...] = ((0.0, RAFTER), (EAVES, RAFTER)),
    ridge: float | None = None,
    from_left: float | None = None,
    from_right: float | None = None,
) -> SlopeShape:
    taped = TapedSlope(
        eaves_mm=EAVES,
        rafters=rafters,
        ridge_mm=ridge,
        diagonal_from_left_mm=from_left,
        diagonal_from_right_mm=from_right,
    )
    return true_shape(taped, where="rear")


def outside(found: SlopeShape) -> list[str]:
    return [finding.says for finding in found.findings if finding.verdict is Verdict.OUTSIDE]


def test_two_equal_rafters_make_a_rectangle() -> None:
    assert ((0.0, 0.0), (EAVES, 0.0), (EAVES, RAFTER), (0.0, RAFTER)) == shape().outline_mm
    assert pytest.approx(EAVES * RAFTER) == shape().area_mm2


def test_without_a_diagonal_squareness_is_not_covered() -> None:
    assert [(Verdict.NOT_COVERED, "square check")] == [(f.verdict, f.rule) for f in shape().findings]


@pytest.mark.parametrize("lean_mm", [-120.0, -1.0, 0.0, 35.0, 400.0])
def test_diagonals_give_back_the_corners_they_were_taken_from(lean_mm: float) -> None:
    left, right = (lean_mm, 4900.0), (EAVES - 40.0, 4950.0)
    found = shape(
        rafters=((0.0, hypot(*left)), (EAVES, hypot(right[0] - EAVES, right[1]))),
        ridge=hypot(right[0] - left[0], right[1] - left[1]),
        from_left=hypot(*right),
        from_right=hypot(left[0] - EAVES, left[1]),
    )
    assert [] == outside(found)
    assert left == pytest.approx(found.outline_mm[3])
    assert right == pytest.approx(found.outline_mm[2])
    assert lean_mm == pytest.approx(found.out_of_square_mm)


@pytest.mark.parametrize(("given", "named"), [("from_left", 2), ("from_right", 3)])
def test_one_diagonal_and_the_ridge_settle_both_sides(given: str, named: int) -> None:
    left, right = (60.0, 4900.0), (EAVES + 25.0, 4930.0)
    taped = TapedSlope(
        eaves_mm=EAVES,
        rafters=((0.0, hypot(*left)), (EAVES, hypot(right[0] - EAVES, right[1]))),
        ridge_mm=hypot(right[0] - left[0], right[1] - left[1]),
        diagonal_from_left_mm=hypot(*right) if given == "from_left" else None,
        diagonal_from_right_mm=hypot(left[0] - EAVES, left[1]) if given == "from_right" else None,
    )
    found = true_shape(taped, where="rear")
    assert [left, right][named == 2] == pytest.approx(found.outline_mm[named])
    assert left == pytest.approx(found.outline_mm[3])
    assert right == pytest.approx(found.outline_mm[2])


@pytest.mark.parametrize(
    ("wrong", "named"),
    [
        (
            {"from_left": DIAGONAL + 100},
            "the diagonal from the left end of the eaves (9028.1 mm; the other five make it 8928.1",
        ),
        ({"from_right": DIAGONAL - 200}, "the diagonal from the right end of the eaves (8728.1 mm"),
        ({"ridge": EAVES + 100}, "the ridge (7560.0 mm; the other five make it 7460.0 mm)"),
        ({"rafters": ((0.0, RAFTER + 100), (EAVES, RAFTER))}, "the left-hand rafter (5005.0 mm"),
        ({"rafters": ((0.0, RAFTER), (EAVES, RAFTER - 50))}, "the right-hand rafter (4855.0 mm"),
    ],
)
def test_a_slip_of_the_tape_is_named(wrong: dict[str, object], named: str) -> None:
    taken: dict[str, object] = {"ridge": EAVES, "from_left": DIAGONAL, "from_right": DIAGONAL, **wrong}
    found = shape(**taken)  # type: ignore[arg-type] # a row of the table above
    assert 1 == len(outside(found))
    assert named in outside(found)[0]
    assert 0.0 == found.out_of_square_mm


@pytest.mark.parametrize(("longer_mm", "expected"), [(9.9, 0), (10.0, 0), (10.1, 1), (-10.1, 1), (-9.9, 0)])
def test_the_ridge_may_miss_square_sides_by_ten_millimetres(longer_mm: float, expected: int) -> None:
    assert expected == len(outside(shape(ridge=EAVES + longer_mm)))


def test_lengths_that_cannot_meet_say_by_how_much() -> None:
    found = shape(from_left=EAVES + RAFTER + 500)
    assert "out by 500.0 mm at the least" in outside(found)[0]


def test_a_rafter_out_of_line_is_named() -> None:
    found = shape(rafters=((0.0, 4905.0), (2000.0, 4910.0), (3000.0, 4950.0), (EAVES, 4920.0)))
    assert "The rafter 3000.0 mm from the left (4950.0 mm) is 39.0 mm longer" in outside(found)[0]


def test_a_slip_at_an_end_is_named_where_all_others_lie_straight() -> None:
    found = shape(rafters=((0.0, 4960.0), (2000.0, 4905.0), (4000.0, 4905.0), (EAVES, 4905.0)))
    assert "The rafter 0.0 mm from the left (4960.0 mm) is 55.0 mm longer than the others make it" in outside(found)[0]


@pytest.mark.parametrize("middle_mm", [4950.0, 4860.0])
def test_with_three_rafters_the_middle_one_is_off_the_line_and_none_is_blamed_alone(middle_mm: float) -> None:
    (says,) = outside(shape(rafters=((0.0, 4905.0), (3000.0, middle_mm), (EAVES, 4930.0))))
    assert "The rafter 3000.0 mm from the left" in says
    assert "no one rafter alone is to blame" in says


def test_a_bowed_ridge_is_called_bowed_at_its_middle() -> None:
    bow = ((0.0, 4900.0), (1800.0, 4930.0), (3600.0, 4940.0), (5400.0, 4930.0), (EAVES, 4900.0))
    (says,) = outside(shape(rafters=bow))
    assert "The rafter 3600.0 mm from the left (4940.0 mm) is 40.0 mm longer than a straight line" in says
    assert "bowed" in says


def test_rafters_measured_inside_the_ends_are_carried_to_the_ends() -> None:
    taped = TapedSlope(eaves_mm=6000.0, rafters=((1000.0, 4010.0), (5000.0, 4050.0)))
    assert (4000.0, 4060.0) == end_rafters_mm(taped)


def test_one_rafter_counts_for_the_whole_slope() -> None:
    assert (4000.0, 4000.0) == end_rafters_mm(TapedSlope(eaves_mm=6000.0, rafters=((3000.0, 4000.0),)))


def test_a_diagonal_without_end_is_a_contradiction_not_a_crash() -> None:
    assert 1 == len(outside(shape(from_left=inf)))
