"""Lead: laps, lengths, codes; how wide a valley and how far a flashing lies. Just below, at and just above each limit."""

from math import inf, nan

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Finding, Sense, Verdict
from gaugerod.basis.limit import Limit
from gaugerod.rules.lead import lap_on_slope, lead_allowed, lead_lap, piece_length, soaker_length
from gaugerod.rules.side_cover import side_cover
from gaugerod.rules.valley_width import valley_clear_least, valley_width
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadCode, LeadFigure, LeadPlace, lead_code, lead_figure, longest_piece
from gaugerod.standards.table import OffTable
from gaugerod.standards.valleys import ValleyFigure, valley_figure

GB = Edition.GB
UNREAL = [nan, inf, -inf]
NOT_ABOVE_NOTHING = [*UNREAL, 0.0, -1.0]
LAP = lead_figure(GB, LeadFigure.LAP_LEVEL_LEAST)


def longest_of(place: LeadPlace, code: int) -> Limit:
    found = longest_piece(GB, place=place, code=code)
    assert isinstance(found, Limit)
    return found


@pytest.mark.parametrize(
    ("rise_deg", "lap_mm"),
    [
        (10.0, 432.0),  # 75 / sin = 431.91
        (15.0, 290.0),  # 289.78
        (30.0, 150.0),  # 150 exactly: float noise makes no 151
        (45.0, 107.0),  # 106.07, up
        (89.9, 76.0),  # 75.0001, up
    ],
)
def test_the_lap_is_75_mm_of_rise_in_whole_millimetres_up(rise_deg: float, lap_mm: float) -> None:
    lap = lap_on_slope(where="valley", rise_deg=rise_deg, edition=GB)
    assert isinstance(lap, Limit)
    assert (lap_mm, "mm", Basis.HOUSE) == (lap.value, lap.unit, lap.citation.basis)


@pytest.mark.parametrize("rise_deg", [0.001, 9.0, 9.99, 10.0 - 2e-6])
def test_lead_flatter_than_10_degrees_is_not_covered(rise_deg: float) -> None:
    found = lap_on_slope(where="valley", rise_deg=rise_deg, edition=GB)
    assert isinstance(found, Finding)
    assert (Verdict.NOT_COVERED, rise_deg, None) == (found.verdict, found.proposed, found.limit)
    assert (Basis.MEMORY, "deg", "valley") == (found.citation.basis, found.unit, found.where)
    assert "flatter than 10° is not lapped" in found.says
    assert "No pieces are counted" in found.says


def test_a_rise_of_10_degrees_but_for_float_noise_is_lapped() -> None:
    assert isinstance(lap_on_slope(where="valley", rise_deg=10.0 - 5e-7, edition=GB), Limit)


@pytest.mark.parametrize("rise_deg", [*NOT_ABOVE_NOTHING, 90.0, 90.1, 135.0])
def test_a_rise_that_is_none_is_refused(rise_deg: float) -> None:
    with pytest.raises(NothingToSetOut, match="lead lap, valley"):
        lap_on_slope(where="valley", rise_deg=rise_deg, edition=GB)


@pytest.mark.parametrize(
    ("lap_mm", "verdict"),
    [
        (99.9, Verdict.OUTSIDE),
        (100.0 - 2e-6, Verdict.OUTSIDE),
        (100.0 - 5e-7, Verdict.WITHIN),
        (100.0, Verdict.WITHIN),
        (100.1, Verdict.WITHIN),
    ],
)
def test_a_lap_against_the_least(lap_mm: float, verdict: Verdict) -> None:
    found = lead_lap(where="apron", lap_mm=lap_mm, least=LAP)
    assert (verdict, 100.0, Sense.AT_LEAST, "lead lap") == (found.verdict, found.limit, found.sense, found.rule)
    assert ("short" in found.says) is (verdict is Verdict.OUTSIDE)


def test_a_short_lap_says_by_how_much() -> None:
    assert lead_lap(where="apron", lap_mm=87.5, least=LAP).says.startswith("The lap is 12.5 mm short:")
    assert "Pieces lap by 120 mm." == lead_lap(where="apron", lap_mm=120.0, least=LAP).says


@pytest.mark.parametrize("lap_mm", NOT_ABOVE_NOTHING)
def test_a_lap_that_is_none_is_refused(lap_mm: float) -> None:
    with pytest.raises(NothingToSetOut, match="lead lap, apron"):
        lead_lap(where="apron", lap_mm=lap_mm, least=LAP)


@pytest.mark.parametrize(
    ("length_mm", "verdict"),
    [(1499.9, Verdict.WITHIN), (1500.0, Verdict.WITHIN), (1500.0 + 5e-7, Verdict.WITHIN), (1500.1, Verdict.OUTSIDE)],
)
@pytest.mark.parametrize(
    ("place", "code"),
    [
        (LeadPlace.SOAKER, 3),
        (LeadPlace.FLASHING, 4),
        (LeadPlace.FLASHING, 5),
        (LeadPlace.VALLEY, 4),
        (LeadPlace.VALLEY, 5),
    ],
)
def test_a_piece_against_the_longest_of_its_code(
    place: LeadPlace, code: int, length_mm: float, verdict: Verdict
) -> None:
    found = piece_length(where="apron", length_mm=length_mm, longest=longest_of(place, code))
    assert (verdict, 1500.0, Sense.AT_MOST, "lead piece") == (found.verdict, found.limit, found.sense, found.rule)
    assert ("too long" in found.says) is (verdict is Verdict.OUTSIDE)


def test_a_long_piece_says_by_how_much() -> None:
    longest = longest_of(LeadPlace.FLASHING, 4)
    assert piece_length(where="apron", length_mm=1702.0, longest=longest).says.startswith(
        "The piece is 202.0 mm too long:"
    )
    assert "The longest piece is 1200 mm." == piece_length(where="apron", length_mm=1200.0, longest=longest).says


@pytest.mark.parametrize("length_mm", NOT_ABOVE_NOTHING)
def test_a_piece_of_no_length_is_refused(length_mm: float) -> None:
    with pytest.raises(NothingToSetOut, match="lead piece, wall"):
        soaker_length(where="wall", length_mm=length_mm, edition=GB)


@pytest.mark.parametrize(
    ("length_mm", "printed", "recalled"),
    [
        (999.9, Verdict.WITHIN, Verdict.WITHIN),
        (1000.0, Verdict.WITHIN, Verdict.WITHIN),
        (1000.1, Verdict.WITHIN, Verdict.OUTSIDE),
        (1500.0, Verdict.WITHIN, Verdict.OUTSIDE),
        (1500.1, Verdict.OUTSIDE, Verdict.OUTSIDE),
    ],
)
def test_soakers_are_held_to_the_printed_length_and_the_recalled_one(
    length_mm: float, printed: Verdict, recalled: Verdict
) -> None:
    first, second = soaker_length(where="wall", length_mm=length_mm, edition=GB)
    assert (printed, Basis.PUBLISHED) == (first.verdict, first.citation.basis)
    assert (recalled, Basis.MEMORY) == (second.verdict, second.citation.basis)


@pytest.mark.parametrize("place", [LeadPlace.FLASHING, LeadPlace.VALLEY])
@pytest.mark.parametrize(
    ("code", "verdict", "words"),
    [
        (-4, Verdict.NOT_COVERED, "no sheet lead of code -4"),
        (0, Verdict.NOT_COVERED, "no sheet lead of code 0"),
        (2, Verdict.NOT_COVERED, "no sheet lead of code 2"),
        (3, Verdict.OUTSIDE, "Use code 4 or heavier"),
        (4, Verdict.WITHIN, "Code 4 lead will do here"),
        (5, Verdict.WITHIN, "Code 5 lead will do here"),
        (6, Verdict.NOT_COVERED, "No pieces are counted"),
        (7, Verdict.NOT_COVERED, "No pieces are counted"),
        (8, Verdict.NOT_COVERED, "No pieces are counted"),
        (9, Verdict.NOT_COVERED, "no sheet lead of code 9"),
    ],
)
def test_which_codes_may_lie_in_the_open(place: LeadPlace, code: int, verdict: Verdict, words: str) -> None:
    (found,) = lead_allowed(where="wall", place=place, code=code, edition=GB)
    assert (verdict, float(code), "lead code", "wall") == (found.verdict, found.proposed, found.rule, found.where)
    assert words in found.says


def test_soakers_are_not_asked_for_by_code() -> None:
    with pytest.raises(NothingToSetOut, match="soakers have the edition's own code"):
        lead_allowed(where="wall", place=LeadPlace.SOAKER, code=3, edition=GB)


def test_a_code_or_a_piece_no_figure_states_says_what_the_table_covers() -> None:
    assert isinstance(lead_code(GB, 9), OffTable)
    assert isinstance(lead_code(GB, 8), LeadCode)
    for place, code in ((LeadPlace.SOAKER, 4), (LeadPlace.FLASHING, 3), (LeadPlace.VALLEY, 6)):
        found = longest_piece(GB, place=place, code=code)
        assert isinstance(found, OffTable)
        assert "the table covers: soakers of code 3" in found.says


@pytest.mark.parametrize("which", LeadFigure)
def test_every_figure_of_lead_is_in_the_table(which: LeadFigure) -> None:
    figure = lead_figure(GB, which)
    assert figure.value > 0
    assert figure.unit in {"mm", "deg", "count"}
    assert figure.citation.source


@pytest.mark.parametrize("which", ValleyFigure)
def test_every_figure_of_valleys_is_in_the_table(which: ValleyFigure) -> None:
    figure = valley_figure(GB, which)
    assert figure.value > 0
    assert figure.unit in {"mm", "deg", "count"}
    assert figure.citation.source


@pytest.mark.parametrize(
    ("pitch_deg", "least_mm"),
    [(0.1, 125.0), (29.9, 125.0), (30.0 - 2e-6, 125.0), (30.0 - 5e-7, 100.0), (30.0, 100.0), (30.1, 100.0)],
)
def test_below_30_degrees_a_valley_is_wider(pitch_deg: float, least_mm: float) -> None:
    assert least_mm == valley_clear_least(where="valley", pitch_deg=pitch_deg, edition=GB).value


@pytest.mark.parametrize(
    ("pitch_deg", "clear_mm", "verdict"),
    [
        (30.0, 99.9, Verdict.OUTSIDE),
        (30.0, 100.0 - 5e-7, Verdict.WITHIN),
        (30.0, 100.0, Verdict.WITHIN),
        (30.0, 100.1, Verdict.WITHIN),
        (29.9, 124.9, Verdict.OUTSIDE),
        (29.9, 125.0, Verdict.WITHIN),
        (29.9, 500.0, Verdict.WITHIN),
    ],
)
def test_the_clear_width_against_the_least(pitch_deg: float, clear_mm: float, verdict: Verdict) -> None:
    (found,) = valley_width(where="valley", clear_mm=clear_mm, pitch_deg=pitch_deg, preformed=False, edition=GB)
    assert (verdict, Sense.AT_LEAST, "valley width") == (found.verdict, found.sense, found.rule)
    assert ("too narrow" in found.says) is (verdict is Verdict.OUTSIDE)


@pytest.mark.parametrize(
    ("clear_mm", "verdict"),
    [(149.9, Verdict.WITHIN), (150.0, Verdict.WITHIN), (150.0 + 5e-7, Verdict.WITHIN), (150.1, Verdict.OUTSIDE)],
)
def test_a_preformed_liner_has_a_greatest_width_as_well(clear_mm: float, verdict: Verdict) -> None:
    least, greatest = valley_width(where="valley", clear_mm=clear_mm, pitch_deg=35.0, preformed=True, edition=GB)
    assert Verdict.WITHIN is least.verdict
    assert (verdict, 150.0, "valley width, preformed liner") == (greatest.verdict, greatest.limit, greatest.rule)
    assert ("wider than preformed liners are made for" in greatest.says) is (verdict is Verdict.OUTSIDE)


def test_a_valley_says_how_much_too_narrow_or_wide_it_is() -> None:
    narrow, _ = valley_width(where="valley", clear_mm=88.0, pitch_deg=35.0, preformed=True, edition=GB)
    _, wide = valley_width(where="valley", clear_mm=162.5, pitch_deg=35.0, preformed=True, edition=GB)
    assert narrow.says.startswith("The valley is 12.0 mm too narrow:")
    assert wide.says.startswith("The valley is 12.5 mm wider than")


@pytest.mark.parametrize("wrong", NOT_ABOVE_NOTHING)
def test_widths_and_pitches_that_are_none_are_refused(wrong: float) -> None:
    with pytest.raises(NothingToSetOut, match=r"valley width, valley: .* mm"):
        valley_width(where="valley", clear_mm=wrong, pitch_deg=35.0, preformed=False, edition=GB)
    with pytest.raises(NothingToSetOut, match=r"valley width, valley: .* degrees"):
        valley_width(where="valley", clear_mm=125.0, pitch_deg=wrong, preformed=False, edition=GB)
    with pytest.raises(NothingToSetOut, match="side cover of a flashing, wall"):
        side_cover(where="wall", cover_mm=wrong, edition=GB)


@pytest.mark.parametrize(
    ("cover_mm", "least", "greatest"),
    [
        (149.9, Verdict.OUTSIDE, Verdict.WITHIN),
        (150.0 - 5e-7, Verdict.WITHIN, Verdict.WITHIN),
        (150.0, Verdict.WITHIN, Verdict.WITHIN),
        (200.0, Verdict.WITHIN, Verdict.WITHIN),
        (200.0 + 5e-7, Verdict.WITHIN, Verdict.WITHIN),
        (200.1, Verdict.WITHIN, Verdict.OUTSIDE),
    ],
)
def test_the_side_cover_against_least_and_greatest(cover_mm: float, least: Verdict, greatest: Verdict) -> None:
    low, high = side_cover(where="wall", cover_mm=cover_mm, edition=GB)
    assert ((least, 150.0), (greatest, 200.0)) == ((low.verdict, low.limit), (high.verdict, high.limit))
    assert ("too little" in low.says) is (least is Verdict.OUTSIDE)
    assert ("the wind lifts its edge" in high.says) is (greatest is Verdict.OUTSIDE)


def test_the_side_cover_says_by_how_much() -> None:
    assert side_cover(where="wall", cover_mm=120.0, edition=GB)[0].says.startswith(
        "The flashing lies 30.0 mm too little"
    )
    assert side_cover(where="wall", cover_mm=230.0, edition=GB)[1].says.startswith("The flashing lies 30.0 mm more")


def test_with_no_printed_length_for_soakers_the_recalled_one_still_holds(monkeypatch: pytest.MonkeyPatch) -> None:
    off = longest_piece(GB, place=LeadPlace.SOAKER, code=9)
    monkeypatch.setattr("gaugerod.rules.lead.longest_piece", lambda *_, **__: off)
    (found,) = soaker_length(where="wall", length_mm=1000.1, edition=GB)
    assert (Verdict.OUTSIDE, Basis.MEMORY) == (found.verdict, found.citation.basis)
