"""Lead along a run: how many pieces, how long each, and of what code; what is refused."""

from math import inf, nan

import pytest

from gaugerod.basis.citation import house
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.basis.limit import Limit
from gaugerod.edges.answer import LeadPieces, LeadUse
from gaugerod.edges.lead_runs import lead_along, lead_named, lead_of, pieces_count, run_findings, single_pieces
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadFigure, LeadPlace, lead_figure, longest_piece

GB = Edition.GB
NOT_ABOVE_NOTHING = [nan, inf, -inf, 0.0, -1.0]
LAP = lead_figure(GB, LeadFigure.LAP_LEVEL_LEAST)
OURS = house("example")


def along(run_mm: float, *, code: int = 4, lap: Limit = LAP, width_mm: float = 300.0) -> LeadPieces | None:
    return lead_along(
        use=LeadUse.COVER_FLASHING,
        lead=lead_named(GB, code),
        place=LeadPlace.FLASHING,
        run_mm=run_mm,
        width_mm=width_mm,
        lap=lap,
        how="example",
        citations=(OURS,),
        edition=GB,
    )


@pytest.mark.parametrize(
    ("run_mm", "lap_mm", "count"),
    [
        (0.1, 100.0, 1),
        (1499.9, 100.0, 1),
        (1500.0, 100.0, 1),
        (1500.1, 100.0, 2),
        (2899.9, 100.0, 2),
        (2900.0, 100.0, 2),  # 2 × 1500 − 100
        (2900.1, 100.0, 3),
        (4300.0, 100.0, 3),
        (3000.0, 0.0, 2),
        (3000.1, 0.0, 3),
        (1501.0, 1499.0, 2),
        (1502.0, 1499.0, 3),
    ],
)
def test_the_fewest_pieces_that_cover_the_run(run_mm: float, lap_mm: float, count: int) -> None:
    assert count == pieces_count(run_mm=run_mm, longest_mm=1500.0, lap_mm=lap_mm)


@pytest.mark.parametrize("wrong", NOT_ABOVE_NOTHING)
def test_a_run_or_a_piece_that_is_none_is_refused(wrong: float) -> None:
    with pytest.raises(NothingToSetOut, match="lead pieces, run"):
        pieces_count(run_mm=wrong, longest_mm=1500.0, lap_mm=100.0)
    with pytest.raises(NothingToSetOut, match="lead pieces, longest piece"):
        pieces_count(run_mm=9000.0, longest_mm=wrong, lap_mm=100.0)


@pytest.mark.parametrize("lap_mm", [nan, inf, -inf, -0.1, 1500.0, 1500.1])
def test_a_lap_as_long_as_a_piece_or_none_is_refused(lap_mm: float) -> None:
    with pytest.raises(NothingToSetOut, match="leaves nothing of pieces 1500 mm long"):
        pieces_count(run_mm=9000.0, longest_mm=1500.0, lap_mm=lap_mm)


def test_pieces_are_equal_whole_millimetres_and_lap() -> None:
    flashing = along(4000.0)
    assert flashing is not None
    assert (3, 1400.0, 100.0) == (flashing.count, flashing.length_mm, flashing.lap_mm)  # (4000 + 200) ÷ 3
    assert (4000.0, 300.0) == (flashing.run_mm, flashing.width_mm)
    assert 3 * 1400.0 * 300.0 == flashing.area_mm2
    assert 1.26 * 20.41 == pytest.approx(flashing.mass_kg)
    assert (4, 1.80, 20.41) == (flashing.code, flashing.thickness_mm, flashing.kg_m2)
    longest = longest_piece(GB, place=LeadPlace.FLASHING, code=4)
    assert isinstance(longest, Limit)
    assert (lead_named(GB, 4).citation, longest.citation, LAP.citation, OURS) == flashing.citations


def test_a_length_with_a_part_of_a_millimetre_is_cut_longer() -> None:
    flashing = along(4000.1)
    assert flashing is not None
    assert (3, 1401.0) == (flashing.count, flashing.length_mm)


def test_one_piece_laps_nothing_and_cites_no_lap() -> None:
    flashing = along(1500.0)
    assert flashing is not None
    assert (1, 1500.0, 0.0) == (flashing.count, flashing.length_mm, flashing.lap_mm)
    assert LAP.citation not in flashing.citations


@pytest.mark.parametrize("code", [3, 6, 7, 8])
def test_a_code_no_figure_states_a_piece_of_is_not_counted(code: int) -> None:
    assert along(4000.0, code=code) is None


@pytest.mark.parametrize("wrong", NOT_ABOVE_NOTHING)
def test_a_run_or_a_width_of_lead_that_is_none_is_refused(wrong: float) -> None:
    with pytest.raises(NothingToSetOut, match="lead pieces, run"):
        along(wrong)
    with pytest.raises(NothingToSetOut, match="lead pieces, cover-flashing"):
        along(4000.0, width_mm=wrong)


def test_pieces_that_stand_alone_lap_nothing() -> None:
    saddles = single_pieces(
        use=LeadUse.VALLEY_SADDLE,
        lead=lead_named(GB, 4),
        count=3,
        length_mm=450.0,
        width_mm=400.0,
        how="example",
        citations=(OURS,),
    )
    assert (3, 450.0, 400.0, 1350.0, 0.0) == (
        saddles.count,
        saddles.length_mm,
        saddles.width_mm,
        saddles.run_mm,
        saddles.lap_mm,
    )
    assert 0.54 * 20.41 == pytest.approx(saddles.mass_kg)
    assert (lead_named(GB, 4).citation, OURS) == saddles.citations


@pytest.mark.parametrize(
    ("code", "has_lead", "verdict"),
    [
        (2, False, Verdict.NOT_COVERED),
        (3, False, Verdict.OUTSIDE),
        (4, True, Verdict.WITHIN),
        (5, True, Verdict.WITHIN),
        (6, False, Verdict.NOT_COVERED),
    ],
)
def test_lead_comes_back_only_where_it_may_lie(code: int, has_lead: bool, verdict: Verdict) -> None:  # noqa: FBT001
    lead, found = lead_of(where="wall", place=LeadPlace.FLASHING, code=code, edition=GB)
    assert (code if has_lead else None) == (None if lead is None else lead.code)
    assert [verdict] == [each.verdict for each in found]


def test_a_code_the_table_has_lost_is_a_fault_of_the_table() -> None:
    assert 3 == lead_named(GB, 3).code
    with pytest.raises(LookupError, match="no row for code 9"):
        lead_named(GB, 9)


@pytest.mark.parametrize(("run_mm", "count"), [(1500.0, 1), (2900.0, 2), (4300.0, 3)])
def test_float_noise_makes_no_piece_more_and_none_longer_than_its_code_allows(run_mm: float, count: int) -> None:
    """A run that just fits, a half of a millionth of a millimetre too long by its arithmetic."""
    flashing = along(run_mm + 5e-7)
    assert flashing is not None
    assert (count, 1500.0) == (flashing.count, flashing.length_mm)
    found = run_findings("wall", flashing, place=LeadPlace.FLASHING, edition=GB)
    assert [Verdict.WITHIN] == [each.verdict for each in found]
    longer = along(run_mm + 2e-6)
    assert longer is not None
    assert count + 1 == longer.count


def test_a_piece_of_a_code_no_figure_states_is_held_to_nothing() -> None:
    pieces = single_pieces(
        use=LeadUse.APRON,
        lead=lead_named(GB, 6),
        count=1,
        length_mm=1600.0,
        width_mm=300.0,
        how="example",
        citations=(OURS,),
    )
    assert () == run_findings("wall", pieces, place=LeadPlace.FLASHING, edition=GB)
