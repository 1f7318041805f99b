"""Pieces of lead cover their run exactly, none too long, none too many; mass adds up and never falls with the run."""

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from gaugerod.basis.finding import Finding
from gaugerod.basis.limit import Limit
from gaugerod.edges.answer import LeadPieces, LeadUse, MadeEdge
from gaugerod.edges.ask import EdgeOpening, LineKind
from gaugerod.edges.lead_runs import lead_along, lead_named, pieces_count
from gaugerod.edges.openings import opening_edge
from gaugerod.edges.valleys import valley_edge
from gaugerod.edges.walls import side_abutment_edge
from gaugerod.edges.wished import EdgesWished, OpeningMade, ValleyMade, ValleyWished, WallWished
from gaugerod.rules.lead import lap_on_slope
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadFigure, LeadPlace, lead_figure
from tests.scenario.edged_roofs import edges_ask, line

GB = Edition.GB
RUNS_MM = st.one_of(st.integers(1, 60_000).map(float), st.floats(min_value=0.5, max_value=60_000.0))
CODES = st.sampled_from([4, 5])
LONGEST_MM = 1500.0
NOISE_MM = Fraction(1, 10**6)
"""Less than this too long is float noise, and no reason for another piece."""
LEVEL = lead_figure(GB, LeadFigure.LAP_LEVEL_LEAST)


def lap_at(rise_deg: float) -> Limit:
    lap = lap_on_slope(where="valley", rise_deg=rise_deg, edition=GB)
    assert not isinstance(lap, Finding)
    return lap


LAPS = st.one_of(st.just(LEVEL), st.floats(min_value=10.0, max_value=80.0).map(lap_at))


def along(run_mm: float, *, lap: Limit = LEVEL, code: int = 4, width_mm: float = 300.0) -> LeadPieces:
    pieces = lead_along(
        use=LeadUse.COVER_FLASHING,
        lead=lead_named(GB, code),
        place=LeadPlace.FLASHING,
        run_mm=run_mm,
        width_mm=width_mm,
        lap=lap,
        how="",
        citations=(),
        edition=GB,
    )
    assert pieces is not None
    return pieces


def covered(pieces: LeadPieces) -> Fraction:
    return pieces.count * Fraction(pieces.length_mm) - (pieces.count - 1) * Fraction(pieces.lap_mm)


@given(run_mm=RUNS_MM, lap=LAPS, code=CODES)
def test_the_pieces_cover_the_run_and_under_a_millimetre_each_too_much(run_mm: float, lap: Limit, code: int) -> None:
    pieces = along(run_mm, lap=lap, code=code)
    assert -NOISE_MM <= covered(pieces) - Fraction(run_mm) < pieces.count


@given(run_mm=RUNS_MM, lap=LAPS, code=CODES)
def test_no_piece_is_longer_than_allowed_nor_any_lap_shorter(run_mm: float, lap: Limit, code: int) -> None:
    pieces = along(run_mm, lap=lap, code=code)
    assert pieces.length_mm <= LONGEST_MM
    assert pieces.lap_mm == (lap.value if pieces.count > 1 else 0.0)
    assert pieces.length_mm > pieces.lap_mm


@given(run_mm=RUNS_MM, lap=LAPS)
def test_one_piece_fewer_would_not_do(run_mm: float, lap: Limit) -> None:
    fewer = along(run_mm, lap=lap).count - 1
    reach = fewer * Fraction(LONGEST_MM) - max(0, fewer - 1) * Fraction(lap.value)
    assert reach < Fraction(run_mm)


@given(count=st.integers(1, 60), longest_mm=st.integers(200, 3000), lap_share=st.floats(min_value=0.0, max_value=0.9))
def test_a_run_that_just_fits_takes_no_more_and_one_just_longer_does(
    count: int, longest_mm: int, lap_share: float
) -> None:
    lap_mm = int(longest_mm * lap_share)
    run_mm = float(count * longest_mm - (count - 1) * lap_mm)
    assert count == pieces_count(run_mm=run_mm, longest_mm=float(longest_mm), lap_mm=float(lap_mm))
    assert count + 1 == pieces_count(run_mm=run_mm + 0.5, longest_mm=float(longest_mm), lap_mm=float(lap_mm))


@given(one_mm=RUNS_MM, other_mm=RUNS_MM, lap=LAPS)
def test_a_longer_run_takes_no_fewer_pieces(one_mm: float, other_mm: float, lap: Limit) -> None:
    shorter, longer = (along(run_mm, lap=lap) for run_mm in sorted((one_mm, other_mm)))
    assert shorter.count <= longer.count


@given(one_mm=RUNS_MM, other_mm=RUNS_MM, lap=LAPS)
def test_a_longer_run_takes_no_less_lead_but_for_the_whole_millimetres(
    one_mm: float, other_mm: float, lap: Limit
) -> None:
    """Each piece is cut up to a millimetre too long, so that much a shorter run may take more."""
    shorter, longer = (along(run_mm, lap=lap) for run_mm in sorted((one_mm, other_mm)))
    slack_kg = shorter.count * shorter.width_mm / 1e6 * shorter.kg_m2
    assert shorter.mass_kg < longer.mass_kg + slack_kg
    assume(Fraction(longer.run_mm) - Fraction(shorter.run_mm) >= shorter.count)
    assert shorter.mass_kg <= longer.mass_kg + 1e-9


@given(run_mm=RUNS_MM, width_mm=st.floats(50.0, 900.0), share=st.floats(0.1, 0.9), code=CODES)
def test_mass_is_additive_over_the_width(run_mm: float, width_mm: float, share: float, code: int) -> None:
    whole = along(run_mm, width_mm=width_mm, code=code)
    one = along(run_mm, width_mm=width_mm * share, code=code)
    other = along(run_mm, width_mm=width_mm - width_mm * share, code=code)
    assert one.mass_kg + other.mass_kg == pytest.approx(whole.mass_kg)


@given(run_mm=RUNS_MM, width_mm=st.floats(50.0, 900.0))
def test_code_5_is_heavier_than_code_4_by_their_masses(run_mm: float, width_mm: float) -> None:
    four, five = (along(run_mm, width_mm=width_mm, code=code) for code in (4, 5))
    assert four.mass_kg * 25.40 / 20.41 == pytest.approx(five.mass_kg)


PRINTED_KG_M2 = {3: 14.97, 4: 20.41, 5: 25.40}
"""BS EN 12588, a table of it reproduced on a public page."""


def adds_up(edge: MadeEdge) -> bool:
    by_hand_kg = sum(each.count * each.length_mm * each.width_mm / 1e6 * PRINTED_KG_M2[each.code] for each in edge.lead)
    return edge.working.value == pytest.approx(by_hand_kg)


@given(run_mm=st.floats(100.0, 20_000.0), rise_deg=st.floats(10.0, 60.0))
def test_the_mass_of_an_edge_is_that_of_its_pieces(run_mm: float, rise_deg: float) -> None:
    wished = EdgesWished(valley=ValleyWished(made=ValleyMade.LEAD), wall=WallWished())
    for kind, make in ((LineKind.VALLEY, valley_edge), (LineKind.SIDE_ABUTMENT, side_abutment_edge)):
        over = line(kind, length_mm=run_mm, slope_deg=rise_deg)
        edge = make(edges_ask(over, wished=wished), over)
        assert edge.lead
        assert adds_up(edge)


@given(width_mm=st.floats(200.0, 4000.0), height_mm=st.floats(200.0, 4000.0), courses_count=st.integers(0, 12))
def test_a_chimney_s_sides_are_twice_a_wall_as_high_and_a_lap_over_the_apron(
    width_mm: float, height_mm: float, courses_count: int
) -> None:
    wished = EdgesWished(wall=WallWished())
    stack = EdgeOpening(
        name="stack",
        slope="rear",
        width_mm=width_mm,
        height_mm=height_mm,
        made=OpeningMade.CHIMNEY,
        courses_count=courses_count,
    )
    chimney = opening_edge(edges_ask(wished=wished), stack)
    over = line(
        LineKind.SIDE_ABUTMENT, length_mm=height_mm + LEVEL.value, slope_deg=35.0, courses_count=(courses_count,)
    )
    wall = side_abutment_edge(edges_ask(over, wished=wished), over)
    sides = [each for each in chimney.lead if each.use is LeadUse.STEP_AND_COVER]
    assert 2 * sum(each.mass_kg for each in wall.lead) == pytest.approx(sum(each.mass_kg for each in sides))
    assert [2 * each.count for each in wall.lead] == [each.count for each in sides]
    assert adds_up(chimney)
