"""Sheet lead, and valleys, against what was read in print. Each case names its source; none was computed here."""

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.finding import Finding
from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap_catalogue import sized_slate
from gaugerod.edges.answer import LeadUse
from gaugerod.edges.ask import LineKind
from gaugerod.edges.soakers import soaker_length_mm, wall_soakers
from gaugerod.edges.walls import side_abutment_edge
from gaugerod.edges.wished import EdgesWished, WallWished
from gaugerod.rules.lead import lap_on_slope, lead_allowed, lead_lap, piece_length
from gaugerod.rules.side_cover import side_cover
from gaugerod.rules.valley_width import valley_clear_least, valley_width
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadCode, LeadFigure, LeadPlace, lead_code, lead_figure, longest_piece
from gaugerod.standards.valleys import ValleyFigure, valley_figure
from tests.scenario.edged_roofs import edges_ask, line, slope

GB = Edition.GB
LEAD_KG_M2_PER_MM = 11.34
"""Density of lead, as printed beside the table of codes: 11.34 kg/m² for each mm of thickness."""


def published(finding: Finding) -> str:
    assert Basis.PUBLISHED is finding.citation.basis
    return finding.verdict.value


def code(number: int) -> LeadCode:
    found = lead_code(GB, number)
    assert isinstance(found, LeadCode)
    return found


@pytest.mark.parametrize(
    ("number", "colour", "printed_mm", "printed_kg_m2"),
    [
        # BS EN 12588 table as reproduced on a public page
        (3, "green", 1.32, 14.97),
        (4, "blue", 1.80, 20.41),
        (5, "red", 2.24, 25.40),
        (6, "black", 2.65, 30.10),
    ],
)
def test_codes_of_sheet_lead(number: int, colour: str, printed_mm: float, printed_kg_m2: float) -> None:
    lead = code(number)
    assert (colour, printed_mm, printed_kg_m2) == (lead.colour, lead.thickness_mm, lead.mass_kg_m2)
    assert Basis.PUBLISHED is lead.citation.basis


@pytest.mark.parametrize("number", [3, 4, 5])
def test_the_printed_mass_is_the_printed_thickness_by_the_density(number: int) -> None:
    """To half the last printed place, 0.005 kg/m²."""
    lead = code(number)
    assert lead.thickness_mm * LEAD_KG_M2_PER_MM == pytest.approx(lead.mass_kg_m2, abs=0.005)


def test_code_6_is_printed_heavier_than_its_thickness_makes_it() -> None:
    """The same table prints 30.10 beside 2.65 mm, and 2.65 × 11.34 is 30.05: the heavier is kept, and its row says so."""
    lead = code(6)
    assert lead.thickness_mm * LEAD_KG_M2_PER_MM == pytest.approx(30.05, abs=0.005)
    assert lead.mass_kg_m2 - lead.thickness_mm * LEAD_KG_M2_PER_MM == pytest.approx(0.05, abs=0.005)
    assert "30.05" in str(lead.citation)


def test_lead_laps_290_mm_at_15_degrees() -> None:
    """Source: consultant's case study on valleys, October 2020. Whole millimetres, up."""
    lap = lap_on_slope(where="valley", rise_deg=15.0, edition=GB)
    assert isinstance(lap, Limit)
    assert lap.value == pytest.approx(290.0, abs=0.5)
    # That the same rise holds at every other slope is this program's reading, and shown as one.
    assert Basis.HOUSE is lap.citation.basis


@pytest.mark.parametrize(("lap_mm", "verdict"), [(100.0, "within"), (99.0, "outside")])
def test_flashings_lap_100_mm(lap_mm: float, verdict: str) -> None:
    """Source: leadwork detail sheets, and general guidance on sheet lead: lap of 100 mm or more."""
    least = lead_figure(GB, LeadFigure.LAP_LEVEL_LEAST)
    assert verdict == published(lead_lap(where="wall", lap_mm=lap_mm, least=least))


@pytest.mark.parametrize(
    ("number", "place"),
    [
        # NHBC Standards 7.2.20 table 22: flashings, aprons and saddles of code 4 and 5 in pieces of 1.5 m; code 3 soakers 1.5 m
        (3, LeadPlace.SOAKER),
        (4, LeadPlace.FLASHING),
        (5, LeadPlace.FLASHING),
        # NHBC Standards 2020 7.2.21: valleys of code 4 or 5 in strips of 1.5 m
        (4, LeadPlace.VALLEY),
        (5, LeadPlace.VALLEY),
    ],
)
def test_pieces_are_1_5_m_or_less(number: int, place: LeadPlace) -> None:
    longest = longest_piece(GB, place=place, code=number)
    assert isinstance(longest, Limit)
    at, over = (piece_length(where="lead", length_mm=length_mm, longest=longest) for length_mm in (1500.0, 1501.0))
    assert ("within", "outside") == (published(at), published(over))


@pytest.mark.parametrize(("number", "verdict"), [(3, "outside"), (4, "within")])
def test_code_3_is_for_soakers_only(number: int, verdict: str) -> None:
    """Source: NHBC Standards 7.2.20 table 22."""
    (found,) = lead_allowed(where="wall", place=LeadPlace.FLASHING, code=number, edition=GB)
    assert verdict == published(found)
    assert 3.0 == lead_figure(GB, LeadFigure.SOAKER_CODE).value


@pytest.mark.parametrize(
    ("gauge_mm", "headlap_mm", "length_mm"),
    [(100.0, 65.0, 190.0), (212.5, 75.0, 313.0), (345.0, 75.0, 445.0)],
)
def test_a_soaker_is_as_long_as_gauge_and_headlap_and_25(gauge_mm: float, headlap_mm: float, length_mm: float) -> None:
    """Source: leadwork detail sheets: gauge + lap + 25 mm. Cut to whole millimetres, never short."""
    assert length_mm == soaker_length_mm(slope("rear", gauge_mm=gauge_mm, headlap_mm=headlap_mm), GB)


def test_a_soaker_is_175_mm_wide() -> None:
    """Source: leadwork detail sheets: 175 mm, of it 75 mm up the wall and 100 mm under the covering."""
    up, under = (lead_figure(GB, which) for which in (LeadFigure.SOAKER_UP, LeadFigure.SOAKER_UNDER))
    assert (75.0, 100.0) == (up.value, under.value)
    assert 175.0 == wall_soakers(slope("rear"), count=14, up=up, edition=GB).width_mm
    beside = line(LineKind.SIDE_ABUTMENT, slope_deg=35.0)
    ask = edges_ask(beside, wished=EdgesWished(wall=WallWished()), covering=sized_slate("slate-500x250"))
    (soakers,) = [each for each in side_abutment_edge(ask, beside).lead if each.use is LeadUse.SOAKER]
    assert 175.0 == soakers.width_mm


@pytest.mark.parametrize(
    ("cover_mm", "verdicts"),
    [
        (149.0, ("outside", "within")),
        (150.0, ("within", "within")),
        (200.0, ("within", "within")),
        (201.0, ("within", "outside")),
    ],
)
def test_a_flashing_that_steps_and_covers_lies_150_to_200_mm_on_the_tiles(
    cover_mm: float, verdicts: tuple[str, str]
) -> None:
    """Source: leadwork detail sheets."""
    least, greatest = side_cover(where="wall", cover_mm=cover_mm, edition=GB)
    assert verdicts == (published(least), published(greatest))


@pytest.mark.parametrize(
    ("which", "printed"),
    [
        # leadwork detail sheets
        (LeadFigure.WATER_LINE, 65.0),
        (LeadFigure.CLIP_CENTRES_LEAST, 300.0),
        (LeadFigure.CLIP_CENTRES_GREATEST, 500.0),
        # general guidance on sheet lead
        (LeadFigure.INTO_JOINT_LEAST, 25.0),
        (LeadFigure.WEDGE_CENTRES_GREATEST, 450.0),
        # a supplier-hosted page on top-edge abutments
        (LeadFigure.TOPS_COVER_LEAST, 100.0),
    ],
)
def test_figures_of_flashings(which: LeadFigure, printed: float) -> None:
    figure = lead_figure(GB, which)
    assert (printed, "mm", Basis.PUBLISHED) == (figure.value, figure.unit, figure.citation.basis)


@pytest.mark.parametrize(
    ("pitch_deg", "printed_mm"), [(45.0, 100.0), (30.0, 100.0), (29.0, 125.0), (22.5, 125.0), (15.0, 125.0)]
)
def test_valleys_are_100_mm_clear_and_125_below_30_degrees(pitch_deg: float, printed_mm: float) -> None:
    """Source: NHBC Standards 2020 7.2.21."""
    least = valley_clear_least(where="valley", pitch_deg=pitch_deg, edition=GB)
    assert (printed_mm, Basis.PUBLISHED) == (least.value, least.citation.basis)
    at, under = (
        valley_width(where="valley", clear_mm=clear_mm, pitch_deg=pitch_deg, preformed=False, edition=GB)
        for clear_mm in (printed_mm, printed_mm - 1.0)
    )
    assert (["within"], ["outside"]) == ([published(each) for each in at], [published(each) for each in under])


@pytest.mark.parametrize(
    ("clear_mm", "verdicts"),
    [(99.0, ["outside", "within"]), (100.0, ["within", "within"]), (150.0, ["within", "within"]),
     (151.0, ["within", "outside"])],
)  # fmt: skip
def test_preformed_liners_are_100_to_150_mm_clear(clear_mm: float, verdicts: list[str]) -> None:
    """Source: consultant's case study on valleys, October 2020."""
    found = valley_width(where="valley", clear_mm=clear_mm, pitch_deg=35.0, preformed=True, edition=GB)
    assert verdicts == [published(each) for each in found]


@pytest.mark.parametrize(
    ("which", "printed", "unit"),
    [
        # NHBC Standards 2020 7.2.21
        (ValleyFigure.BOARD_THICKNESS, 19.0, "mm"),
        (ValleyFigure.SADDLE_CODE, 4.0, "count"),
        # consultant's case study on valleys, October 2020
        (ValleyFigure.CLEAR_USUAL, 125.0, "mm"),
        (ValleyFigure.MORTAR_CLEAR_OF_WELT, 25.0, "mm"),
        # independent consultant's trade article on open valleys
        (ValleyFigure.BOARD_UNDER_BATTENS, 50.0, "mm"),
        # roof tile trade association, technical library, valleys
        (ValleyFigure.MADE_BY_TILES_PITCH_LEAST, 45.0, "deg"),
    ],
)
def test_figures_of_valleys(which: ValleyFigure, printed: float, unit: str) -> None:
    figure = valley_figure(GB, which)
    assert (printed, unit, Basis.PUBLISHED) == (figure.value, figure.unit, figure.citation.basis)
