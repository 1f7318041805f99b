"""Pieces of lead along a run: they cover it, none is too long, and one fewer would not do."""

from hypothesis import given
from hypothesis import strategies as st

from gaugerod.basis.citation import house
from gaugerod.basis.limit import Limit
from gaugerod.edges.answer import LeadUse
from gaugerod.edges.lead_runs import lead_along, lead_named, pieces_count
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadPlace

runs_mm = st.one_of(st.integers(1, 60_000).map(float), st.floats(0.5, 60_000.0))
laps_mm = st.integers(0, 600).map(float)


@given(runs_mm, st.integers(700, 3_000).map(float), laps_mm)
def test_the_fewest_that_cover(run_mm: float, longest_mm: float, lap_mm: float) -> None:
    count = pieces_count(run_mm=run_mm, longest_mm=longest_mm, lap_mm=lap_mm)

    def covers(pieces: int) -> float:
        return pieces * longest_mm - (pieces - 1) * lap_mm

    assert covers(count) >= run_mm - 1e-5
    assert count == 1 or covers(count - 1) < run_mm


@given(runs_mm, st.sampled_from((4, 5)), st.integers(75, 500).map(float), st.integers(100, 700).map(float))
def test_equal_pieces_cover_the_run_and_little_more(run_mm: float, code: int, lap_mm: float, width_mm: float) -> None:
    pieces = lead_along(
        use=LeadUse.APRON,
        lead=lead_named(Edition.GB, code),
        place=LeadPlace.FLASHING,
        run_mm=run_mm,
        width_mm=width_mm,
        lap=Limit(value=lap_mm, unit="mm", citation=house("example")),
        how="",
        citations=(),
        edition=Edition.GB,
    )
    assert pieces is not None
    covered_mm = pieces.count * pieces.length_mm - (pieces.count - 1) * pieces.lap_mm
    assert run_mm <= covered_mm + 1e-5
    assert covered_mm < run_mm + pieces.count + 1e-5
    assert pieces.length_mm <= 1500.0
    assert pieces.mass_kg == pieces.count * pieces.length_mm * width_mm / 1e6 * pieces.kg_m2


@given(runs_mm, runs_mm)
def test_a_longer_run_takes_no_fewer(one_mm: float, other_mm: float) -> None:
    short_mm, long_mm = sorted((one_mm, other_mm))
    assert pieces_count(run_mm=short_mm, longest_mm=1500.0, lap_mm=100.0) <= pieces_count(
        run_mm=long_mm, longest_mm=1500.0, lap_mm=100.0
    )
