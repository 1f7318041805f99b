"""Units along any line: they cover it exactly, none is cut under half where that can be, and a longer line takes no fewer."""

from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugerod.basis.finding import TOUCH
from gaugerod.edges.air_units import air_units_count
from gaugerod.edges.answer import MadeEdge, UnitRun
from gaugerod.edges.ask import LineKind
from gaugerod.edges.eaves import eaves_trays
from gaugerod.edges.over_lines import hip_edge, ridge_edge
from gaugerod.edges.unit_run import unit_run
from gaugerod.edges.wished import AirUnit, EdgesWished, HipMade, LineUnit, RidgeMade, RidgeWished
from gaugerod.standards.edition import Edition
from tests.scenario.edged_roofs import edges_ask, line

LENGTHS_MM = st.floats(min_value=1.0, max_value=60_000.0)
COVERS_MM = st.floats(min_value=100.0, max_value=600.0)
NOT_MUCH_MM = 2 * TOUCH


def run(length_mm: float, cover_mm: float) -> UnitRun:
    unit = LineUnit(length_mm=cover_mm, cover_mm=cover_mm)
    return unit_run(where="ridge", length_mm=length_mm, unit=unit, edition=Edition.GB)


@given(length_mm=LENGTHS_MM, cover_mm=COVERS_MM)
def test_the_units_cover_the_line_exactly(length_mm: float, cover_mm: float) -> None:
    units = run(length_mm, cover_mm)
    covered = units.whole_count * Fraction(cover_mm) + sum((Fraction(cut) for cut in units.cut_mm), Fraction(0))
    assert -NOT_MUCH_MM <= covered - Fraction(length_mm) <= NOT_MUCH_MM
    assert units.whole_count + len(units.cut_mm) == units.units_count


@given(whole_count=st.integers(0, 100), sixteenths=st.integers(0, 7200), cover_sixteenths=st.integers(1600, 9600))
def test_the_units_cover_lengths_in_sixteenths_without_any_miss(
    whole_count: int, sixteenths: int, cover_sixteenths: int
) -> None:
    cover_mm, length_mm = cover_sixteenths / 16, (whole_count * cover_sixteenths + sixteenths + 1) / 16
    units = run(length_mm, cover_mm)
    assert length_mm == units.whole_count * cover_mm + sum(units.cut_mm)


@given(length_mm=LENGTHS_MM, cover_mm=COVERS_MM)
def test_no_unit_is_cut_under_half_unless_the_line_itself_is_shorter(length_mm: float, cover_mm: float) -> None:
    units = run(length_mm, cover_mm)
    if length_mm >= cover_mm / 2:
        assert all(cut >= cover_mm / 2 - NOT_MUCH_MM for cut in units.cut_mm)
    else:
        assert (length_mm,) == units.cut_mm
    assert all(cut < cover_mm for cut in units.cut_mm)
    assert len(units.cut_mm) <= 2


@given(length_mm=LENGTHS_MM, cover_mm=COVERS_MM)
def test_there_is_never_a_unit_more_than_need_be(length_mm: float, cover_mm: float) -> None:
    assert (
        max(1, ceil((Fraction(length_mm) - Fraction(TOUCH)) / Fraction(cover_mm)))
        == run(length_mm, cover_mm).units_count
    )


@given(one_mm=LENGTHS_MM, other_mm=LENGTHS_MM, cover_mm=COVERS_MM)
def test_a_longer_line_takes_no_fewer(one_mm: float, other_mm: float, cover_mm: float) -> None:
    shorter, longer = sorted((one_mm, other_mm))
    assert run(shorter, cover_mm).units_count <= run(longer, cover_mm).units_count


@given(length_mm=LENGTHS_MM, tray_mm=st.floats(min_value=101.0, max_value=3000.0))
def test_trays_reach_and_one_fewer_would_not(length_mm: float, tray_mm: float) -> None:
    count = eaves_trays(where="eaves", length_mm=length_mm, tray_length_mm=tray_mm, edition=Edition.GB)
    gains = Fraction(tray_mm) - 100
    assert count * gains + 100 >= Fraction(length_mm) - Fraction(NOT_MUCH_MM)
    assert count == 1 or (count - 1) * gains + 100 < Fraction(length_mm)


@given(length_mm=LENGTHS_MM, slot_mm=st.floats(min_value=1.0, max_value=30.0), area_mm2=st.floats(500.0, 50_000.0))
def test_single_vents_give_what_is_asked_for_and_one_fewer_would_not(
    length_mm: float, slot_mm: float, area_mm2: float
) -> None:
    unit = AirUnit(title="vent", area_mm2=area_mm2)
    count = air_units_count(where="ridge", unit=unit, slot_mm=slot_mm, length_mm=length_mm)
    asked = Fraction(slot_mm) * Fraction(length_mm)
    assert count * Fraction(area_mm2) >= asked - Fraction(NOT_MUCH_MM)
    assert (count - 1) * Fraction(area_mm2) < asked


UNIT = LineUnit(length_mm=460.0, cover_mm=450.0, mass_kg=4.0)
HIPS = st.sampled_from([HipMade.UNITS, HipMade.BONNET])


def taken(edge: MadeEdge) -> list[tuple[str, float, float | None]]:
    return [(part.item, part.net, part.mass_kg) for part in edge.parts]


@given(
    length_mm=LENGTHS_MM,
    courses=st.tuples(st.integers(1, 60), st.integers(1, 60)),
    made=st.sampled_from(RidgeMade),
    hips=HIPS,
)
def test_a_line_seen_from_its_other_side_takes_the_same(
    length_mm: float, courses: tuple[int, int], made: RidgeMade, hips: HipMade
) -> None:
    wished = EdgesWished(ridge=RidgeWished(made=made, ridge=UNIT, hip=UNIT, hips=hips))
    for kind, make in ((LineKind.RIDGE, ridge_edge), (LineKind.HIP, hip_edge)):
        one = line(kind, length_mm=length_mm, courses_count=courses)
        other = line(kind, length_mm=length_mm, courses_count=courses[::-1], slopes=("rear", "front"))
        assert taken(make(edges_ask(one, wished=wished), one)) == taken(make(edges_ask(other, wished=wished), other))


@pytest.mark.parametrize("times", [2, 3, 7])
@given(length_mm=st.floats(1000.0, 9000.0))
def test_what_lies_along_a_line_grows_with_it(length_mm: float, times: int) -> None:
    wished = EdgesWished(ridge=RidgeWished(made=RidgeMade.BEDDED))
    short, long = line(LineKind.RIDGE, length_mm=length_mm), line(LineKind.RIDGE, length_mm=length_mm * times)
    for one, many in zip(
        ridge_edge(edges_ask(short, wished=wished), short).parts,
        ridge_edge(edges_ask(long, wished=wished), long).parts,
        strict=True,
    ):
        assert one.net * times == pytest.approx(many.net)
