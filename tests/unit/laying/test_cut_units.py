"""Cuts through whole units, laps and all."""

from collections import Counter
from dataclasses import replace

import pytest
from shapely import Polygon
from shapely.affinity import translate

from gaugerod.geometry.polygon import signed_area_mm2
from gaugerod.laying.ask import EdgeKind, LapSide
from gaugerod.laying.cut_unit import CutUnit, Remedy
from gaugerod.laying.cutting import cut_units
from gaugerod.laying.lay import lay
from tests.scenario.laid_slopes import HIPPED, PLAIN_TILE, mirrored, slope

SQUARE = [(0.0, 0.0), (1650.0, 0.0), (1650.0, 1000.0), (0.0, 1000.0)]
HEADS_FREE = [(0.0, 0.0), (1650.0, 0.0), (1650.0, 2000.0), (0.0, 2000.0)]


def test_half_bond_at_square_verges_cuts_along_the_whole_length() -> None:
    ask = slope(SQUARE, gauge_mm=345.0, unit_length_mm=345.0)
    pieces = [piece for piece in cut_units(ask, lay(ask)) if piece.course == 1]
    assert [piece.index for piece in pieces] == [0, 10]
    for piece in pieces:
        (cut,) = piece.cuts
        assert (cut.length_mm, cut.angle_deg) == pytest.approx((345.0, 90.0))
        assert piece.shows_ratio == pytest.approx(0.5)
        assert piece.remedy is Remedy.AS_CUT


def test_nothing_is_cut_on_a_rectangle_that_fits() -> None:
    ask = slope(SQUARE, bond_mm=0.0, unit_length_mm=100.0)
    assert cut_units(ask, lay(ask)) == ()


def test_heads_that_reach_past_the_top_edge_are_cut_square_though_they_show_whole() -> None:
    ask = slope(SQUARE, bond_mm=0.0)
    pieces = cut_units(ask, lay(ask))
    assert Counter(piece.course for piece in pieces) == {8: 10, 9: 10}
    assert {piece.shows_ratio for piece in pieces} == {1.0}
    assert {cut.angle_deg for piece in pieces for cut in piece.cuts} == {0.0}
    assert {round(cut.length_mm, 6) for piece in pieces for cut in piece.cuts} == {165.0}


def test_a_hip_cuts_a_unit_over_its_whole_length_at_the_hip_s_own_angle() -> None:
    ask = slope(HIPPED)
    left = [piece for piece in cut_units(ask, lay(ask)) if {cut.edge.name for cut in piece.cuts} == {"left hip"}]
    assert len(left) > 28
    for piece in left:
        (cut,) = piece.cuts
        assert cut.angle_deg == pytest.approx(51.8428, abs=1e-4)  # 2800 up over 2200 along
        assert cut.edge.kind is EdgeKind.HIP


def test_the_right_hip_mirrors_the_left_one() -> None:
    ask = slope(HIPPED)
    right = [cut for piece in cut_units(ask, lay(ask)) for cut in piece.cuts if cut.edge.name == "right hip"]
    assert {round(cut.angle_deg, 3) for cut in right} == {round(180.0 - 51.8428, 3)}


def test_a_unit_that_shows_whole_loses_its_corner_under_the_lap_at_a_hip() -> None:
    ask = slope(HIPPED)
    laying = lay(ask)
    trimmed = [piece for piece in cut_units(ask, laying) if piece.shows_ratio == 1.0 and piece.course < 20]
    cut_cells = {(cut.course, cut.index) for cut in laying.cuts}
    assert trimmed
    assert not {(piece.course, piece.index) for piece in trimmed} & cut_cells


def test_every_cut_cell_is_a_piece_to_saw() -> None:
    ask = slope(HIPPED)
    laying = lay(ask)
    pieces = cut_units(ask, laying)
    assert {(cut.course, cut.index) for cut in laying.cuts} <= {(piece.course, piece.index) for piece in pieces}
    assert [piece.number for piece in pieces] == list(range(1, len(pieces) + 1))


def outline_of(piece: CutUnit) -> Polygon:
    return Polygon(piece.rings_mm[0], piece.rings_mm[1:])


@pytest.mark.parametrize("lap_side", list(LapSide))
def test_the_outline_is_the_unit_s_rectangle_inside_the_slope(lap_side: LapSide) -> None:
    hole = [(1500.0, 700.0), (2400.0, 700.0), (2300.0, 1555.0), (1555.0, 1600.0)]
    tile = replace(PLAIN_TILE, width_mm=330.0, lap_side=lap_side)
    ask = slope(HIPPED, openings=[hole], unit=tile, cover_mm=300.0, gauge_mm=345.0, unit_length_mm=420.0)
    roof = Polygon(HIPPED.points_mm, [hole])
    for piece in cut_units(ask, lay(ask)):
        left = ask.courses[piece.course].perps.first_mm + piece.index * 300.0
        left -= 30.0 if lap_side is LapSide.LEFT else 0.0
        tail = ask.courses[piece.course].tail.at_mm
        rectangle = Polygon([(left, tail), (left + 330.0, tail), (left + 330.0, tail + 420.0), (left, tail + 420.0)])
        parts = rectangle.intersection(roof)
        assert parts.contains(outline_of(piece).buffer(-1e-6))
        assert piece.area_mm2 == pytest.approx(outline_of(piece).area)
        own = translate(Polygon(piece.own_rings_mm[0], piece.own_rings_mm[1:]), left, tail)
        assert own.symmetric_difference(outline_of(piece)).area < 1e-3
        ends = [point for cut in piece.cuts for point in (cut.start_mm, cut.end_mm)]
        boundary = translate(roof.boundary, -left, -tail)
        assert max(boundary.distance(Polygon([end, end, end]).boundary) for end in ends) < 1e-6


def test_cut_lengths_sum_to_the_boundary_inside_the_unit() -> None:
    ask = slope(HIPPED, unit_length_mm=265.0)
    roof = Polygon(HIPPED.points_mm)
    for piece in cut_units(ask, lay(ask)):
        left = ask.courses[piece.course].perps.first_mm + piece.index * 165.0
        tail = ask.courses[piece.course].tail.at_mm
        rectangle = Polygon([(left, tail), (left + 165.0, tail), (left + 165.0, tail + 265.0), (left, tail + 265.0)])
        inside = rectangle.buffer(-1e-7).intersection(roof.boundary)
        assert sum(cut.length_mm for cut in piece.cuts) == pytest.approx(inside.length, abs=1e-4)


def test_a_unit_split_by_an_opening_is_two_pieces_each_with_its_own_cuts() -> None:
    hole = [(50.0, 150.0), (100.0, 150.0), (100.0, 850.0), (50.0, 850.0)]
    ask = slope(HEADS_FREE, openings=[hole], bond_mm=0.0)
    pieces = [piece for piece in cut_units(ask, lay(ask)) if piece.course == 3]
    assert [piece.shows_mm2 for piece in sorted(pieces, key=lambda it: it.shows_mm2)] == pytest.approx([5000.0, 6500.0])
    assert [len(piece.cuts) for piece in pieces] == [1, 1]
    assert [piece.cuts[0].length_mm for piece in pieces] == pytest.approx([265.0, 265.0])


def test_a_vent_through_a_unit_is_a_hole_in_the_piece() -> None:
    hole = [(30.0, 20.0), (60.0, 20.0), (60.0, 50.0), (30.0, 50.0)]
    ask = slope(HEADS_FREE, openings=[hole], bond_mm=0.0)
    (piece,) = [piece for piece in cut_units(ask, lay(ask)) if piece.course == 0]
    assert len(piece.rings_mm) == 2
    assert piece.area_mm2 == pytest.approx(165.0 * 265.0 - 900.0)
    assert len(piece.cuts) == 4


def test_a_verge_cut_that_keeps_the_left_third_keeps_the_left_nib_and_hole() -> None:
    ask = slope([(0.0, 0.0), (1555.0, 0.0), (1555.0, 2000.0), (0.0, 2000.0)], bond_mm=0.0)
    piece = cut_units(ask, lay(ask))[0]
    assert set(piece.own_rings_mm[0]) == {(0.0, 265.0), (0.0, 0.0), (70.0, 0.0), (70.0, 265.0)}
    assert (piece.nibs_kept_count, piece.holes_kept_count) == (1, 1)


@pytest.mark.parametrize(("kept_mm", "holes"), [(49.999, 0), (50.0, 1), (50.001, 1)])
def test_a_hole_nearer_than_ten_millimetres_to_the_cut_does_not_count(kept_mm: float, holes: int) -> None:
    right = 1485.0 + kept_mm
    ask = slope([(0.0, 0.0), (right, 0.0), (right, 2000.0), (0.0, 2000.0)], bond_mm=0.0)
    assert cut_units(ask, lay(ask))[0].holes_kept_count == holes


def test_fanned_courses_cut_units_that_lie_square_to_their_own_tails() -> None:
    ask = slope(HIPPED, rise_ratio=0.004, first_lean_ratio=0.004, first_tail_mm=-100.0, spare_courses=2)
    pieces = cut_units(ask, lay(ask))
    clean = [piece for piece in pieces if len(piece.cuts) == 1 and piece.cuts[0].edge.name == "left hip"]
    assert {round(piece.cuts[0].angle_deg, 4) for piece in clean} == {round(51.8428 - 0.2292, 4)}
    assert all(signed_area_mm2(piece.own_rings_mm[0]) == pytest.approx(piece.area_mm2) for piece in clean)


def test_a_mirrored_slope_has_the_same_pieces() -> None:
    hole = [(1500.0, 700.0), (2400.0, 700.0), (2300.0, 1555.0), (1555.0, 1600.0)]
    ask = slope(HIPPED, openings=[hole])
    one, other = (
        sorted(
            (piece.course, round(piece.area_mm2, 3), round(piece.shows_mm2, 3), piece.nibs_kept_count,
             piece.holes_kept_count, piece.remedy) for piece in cut_units(way, lay(way))
        )
        for way in (ask, mirrored(ask))
    )  # fmt: skip
    assert one == other
