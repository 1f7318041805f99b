"""Walls beside and above a slope: which lead, how wide, how much, what is said and found."""

from dataclasses import replace

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.coverings.double_lap import PlainTile
from gaugerod.coverings.double_lap_catalogue import plain_tile, plain_tiles, sized_slate
from gaugerod.edges.answer import LeadPieces, LeadUse, MadeEdge
from gaugerod.edges.ask import Covering, EdgeLine, EdgeSlope, LineKind
from gaugerod.edges.made_lead import LEAD_CAUTION
from gaugerod.edges.soakers import mitred_hip_soakers, soaker_findings, soaker_length_mm, wall_soakers
from gaugerod.edges.walls import side_abutment_edge, side_made, top_abutment_edge, top_cover
from gaugerod.edges.wished import EdgesWished, SideMade, WallWished
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadFigure, lead_figure
from tests.scenario.edged_roofs import FLAT, PROFILED, edges_ask, finding, line, slope

GB = Edition.GB
SIDE = line(LineKind.SIDE_ABUTMENT, slope_deg=35.0)
TOP = line(LineKind.TOP_ABUTMENT)
SLATE = sized_slate("slate-500x250")
PLAIN = plain_tile(next(iter(plain_tiles())))
UP = lead_figure(GB, LeadFigure.UPSTAND_LEAST)


def side(
    wished: WallWished | None = None,
    *,
    covering: Covering = FLAT,
    over: EdgeLine = SIDE,
    rear: EdgeSlope | None = None,
) -> MadeEdge:
    ask = edges_ask(over, wished=EdgesWished(wall=wished or WallWished()), covering=covering)
    return side_abutment_edge(ask if rear is None else replace(ask, slopes=(slope("front"), rear)), over)


def top(wished: WallWished | None = None, *, covering: Covering = FLAT, over: EdgeLine = TOP) -> MadeEdge:
    return top_abutment_edge(edges_ask(over, wished=EdgesWished(wall=wished or WallWished()), covering=covering), over)


def lead(edge: MadeEdge, use: LeadUse) -> LeadPieces:
    (found,) = [each for each in edge.lead if each.use is use]
    return found


def uses(edge: MadeEdge) -> list[LeadUse]:
    return [each.use for each in edge.lead]


def test_a_wall_of_which_nothing_is_said_has_a_length_only() -> None:
    for over, edge_of in ((SIDE, side_abutment_edge), (TOP, top_abutment_edge)):
        edge = edge_of(edges_ask(over, wished=EdgesWished()), over)
        assert ("", (), (), ()) == (edge.made, edge.parts, edge.lead, edge.findings)
        assert ("9000 mm long. How it is made is not said: give it in [edges.wall].",) == edge.says
        assert 9000.0 == edge.working.value


@pytest.mark.parametrize(
    ("covering", "made"),
    [
        (FLAT, SideMade.STEP_AND_COVER),
        (PROFILED, SideMade.STEP_AND_COVER),
        (PLAIN, SideMade.SOAKERS),
        (SLATE, SideMade.SOAKERS),
    ],
)
def test_a_side_is_made_by_its_covering_unless_it_is_said(covering: Covering, made: SideMade) -> None:
    assert made is side_made(covering, WallWished())
    for wished in SideMade:
        assert wished is side_made(covering, WallWished(beside=wished))


def test_a_flashing_that_steps_and_covers() -> None:
    edge = side()
    assert "step-and-cover flashing" == edge.made
    assert [LeadUse.STEP_AND_COVER] == uses(edge)
    flashing = lead(edge, LeadUse.STEP_AND_COVER)
    # The lap of what lies on the tiles: 75 ÷ sin 35° = 130.8, more than 100. (9000 − 131) ÷ (1500 − 131) = 6.5, so 7;
    # (9000 + 6 × 131) ÷ 7 = 1398
    assert (7, 1398.0, 131.0, 4) == (flashing.count, flashing.length_mm, flashing.lap_mm, flashing.code)
    assert 25 + 75 + 65 + 150 == flashing.width_mm
    assert (
        "9000 mm in equal pieces; width: 25 mm into the joint + 75 mm for one brick course + 65 mm to the water line + 150 mm over "
        "the covering"
    ) == flashing.how
    assert lead_figure(GB, LeadFigure.SIDE_COVER_LEAST).citation in flashing.citations
    assert {Verdict.WITHIN} == {each.verdict for each in edge.findings}
    assert any("clip its free edge at 300 to 500 mm" in said for said in edge.says)
    assert not any("soaker" in said for said in edge.says)
    assert LEAD_CAUTION == edge.says[-1]


def test_the_working_of_a_wall_is_the_mass_of_its_lead() -> None:
    edge = side()
    mass_kg = 7 * 1.398 * 0.315 * 20.41
    assert mass_kg == pytest.approx(edge.working.value)
    length, flashing = edge.working.parts
    assert (9000.0, "mm") == (length.value, length.unit)
    assert mass_kg == pytest.approx(flashing.value)
    assert {"pieces": 7.0, "length (mm)": 1398.0, "width (mm)": 315.0, "mass of one m² (kg)": 20.41} == flashing.inputs
    assert flashing.citation is not None


def test_soakers_under_step_flashing() -> None:
    edge = side(covering=SLATE)
    assert "soakers under step flashing" == edge.made
    assert [LeadUse.SOAKER, LeadUse.STEP_FLASHING] == uses(edge)
    soakers, flashing = lead(edge, LeadUse.SOAKER), lead(edge, LeadUse.STEP_FLASHING)
    assert (14, 445.0, 175.0, 3) == (soakers.count, soakers.length_mm, soakers.width_mm, soakers.code)
    assert (
        "one to each of 14 courses; length: gauge 345 mm + headlap 75 mm + 25 mm; width: 75 mm up the wall + 100 mm under "
        "the covering"
    ) == soakers.how
    assert 14 * 0.445 * 0.175 * 14.97 == pytest.approx(soakers.mass_kg)
    assert 25 + 75 + 65 == flashing.width_mm
    assert flashing.how.endswith("65 mm to the water line")
    assert 100.0 == flashing.lap_mm
    assert "side cover of a flashing" not in {each.rule for each in edge.findings}
    assert any(said.startswith("Lay a soaker with each course") for said in edge.says)
    assert not any("free edge" in said for said in edge.says)


def test_where_rain_splashes_the_upstand_is_150_and_stands_on_common_practice() -> None:
    soakers = lead(side(WallWished(splash=True), covering=SLATE), LeadUse.SOAKER)
    assert 250.0 == soakers.width_mm
    assert "150 mm up the wall" in soakers.how
    assert Basis.COMMON_PRACTICE in {each.basis for each in soakers.citations}
    step = lead(side(WallWished(splash=True), covering=SLATE), LeadUse.STEP_FLASHING)
    assert 25 + 75 + 150 == step.width_mm
    flashing = lead(top(WallWished(splash=True)), LeadUse.COVER_FLASHING)
    assert 25 + 150 + 150 == flashing.width_mm
    assert any("150 mm up it" in said for said in top(WallWished(splash=True)).says)


def test_no_courses_take_no_soakers() -> None:
    edge = side(covering=SLATE, over=replace(SIDE, courses_count=(0,)))
    assert [LeadUse.STEP_FLASHING] == uses(edge)
    found = finding(edge.findings, "side of a wall")
    assert Verdict.NOT_COVERED is found.verdict
    assert "no soaker is counted" in found.says


def test_soakers_under_tiles_that_lap_once_are_not_covered_and_not_counted() -> None:
    edge = side(WallWished(beside=SideMade.SOAKERS))
    assert [LeadUse.STEP_FLASHING] == uses(edge)
    assert "lap twice" in finding(edge.findings, "side of a wall").says


def test_one_flashing_over_slates_is_counted_as_asked_and_said_to_be_unusual() -> None:
    edge = side(WallWished(beside=SideMade.STEP_AND_COVER), covering=SLATE)
    assert [LeadUse.STEP_AND_COVER] == uses(edge)
    assert Verdict.NOT_COVERED is finding(edge.findings, "side of a wall").verdict


@pytest.mark.parametrize(
    ("pitch_deg", "told"),
    [(30.0, "Lap each piece 150 mm over the one below, by the rise of the slope: it lies on the covering."),
     (60.0, "Lap each piece 100 mm over the one below.")],
)  # fmt: skip
def test_how_far_a_flashing_that_covers_laps_is_told_with_its_reason(pitch_deg: float, told: str) -> None:
    edge = side(rear=slope("rear", pitch_deg=pitch_deg))
    assert told in edge.says


def test_where_no_flashing_is_counted_none_is_told() -> None:
    assert not any("steps" in said for said in side(WallWished(lead_code=3)).says)


def test_a_wall_on_a_slope_too_flat_for_laps_says_so() -> None:
    edge = side(rear=slope("rear", pitch_deg=9.0))
    (lap,) = [each for each in edge.findings if each.rule == "lead lap"]
    assert Verdict.NOT_COVERED is lap.verdict
    assert "No pieces are counted" in lap.says
    assert lap.leaves_out
    assert () == edge.lead


@pytest.mark.parametrize(
    ("gauge_mm", "recalled"), [(899.0, Verdict.WITHIN), (900.0, Verdict.WITHIN), (900.1, Verdict.OUTSIDE)]
)
def test_long_soakers_are_held_to_both_figures(gauge_mm: float, recalled: Verdict) -> None:
    """Gauge + 75 + 25 against 1000 mm recalled and 1500 mm printed."""
    edge = side(covering=SLATE, rear=slope("rear", gauge_mm=gauge_mm))
    printed, other, _ = [each for each in edge.findings if each.rule == "lead piece"]
    assert (Verdict.WITHIN, recalled) == (printed.verdict, other.verdict)


@pytest.mark.parametrize(
    ("gauge_mm", "length_mm"), [(345.0, 445.0), (345.0 + 1e-7, 445.0), (345.01, 446.0), (345.9, 446.0)]
)
def test_a_soaker_is_cut_to_whole_millimetres_never_short(gauge_mm: float, length_mm: float) -> None:
    assert length_mm == soaker_length_mm(slope("rear", gauge_mm=gauge_mm), GB)
    soakers = wall_soakers(slope("rear", gauge_mm=gauge_mm), count=2, up=UP, edition=GB)
    assert length_mm == soakers.length_mm
    assert [Verdict.WITHIN] * 2 == [each.verdict for each in soaker_findings("wall", soakers, GB)]


@pytest.mark.parametrize(
    ("code", "verdict"),
    [
        (3, Verdict.OUTSIDE),
        (4, Verdict.WITHIN),
        (5, Verdict.WITHIN),
        (6, Verdict.NOT_COVERED),
        (9, Verdict.NOT_COVERED),
    ],
)
def test_flashings_of_a_code_that_may_not_lie_here_are_not_counted_and_that_is_found(
    code: int, verdict: Verdict
) -> None:
    wished = WallWished(lead_code=code)
    for edge in (side(wished), top(wished), side(wished, covering=SLATE)):
        assert verdict is finding(edge.findings, "lead code").verdict
        flashings = {each.code for each in edge.lead if each.use is not LeadUse.SOAKER}
        assert ({code} if verdict is Verdict.WITHIN else set()) == flashings
    assert LeadUse.SOAKER in uses(side(wished, covering=SLATE))
    assert 3 == lead(side(wished, covering=SLATE), LeadUse.SOAKER).code


@pytest.mark.parametrize(
    ("cover_mm", "verdicts"),
    [
        (149.9, [Verdict.OUTSIDE, Verdict.WITHIN]),
        (150.0, [Verdict.WITHIN, Verdict.WITHIN]),
        (200.0, [Verdict.WITHIN, Verdict.WITHIN]),
        (200.1, [Verdict.WITHIN, Verdict.OUTSIDE]),
    ],
)
def test_a_side_cover_that_is_said_is_counted_with_and_held_to_its_limits(
    cover_mm: float, verdicts: list[Verdict]
) -> None:
    edge = side(WallWished(side_cover_mm=cover_mm))
    assert verdicts == [each.verdict for each in edge.findings if each.rule == "side cover of a flashing"]
    flashing = lead(edge, LeadUse.STEP_AND_COVER)
    assert 165.0 + cover_mm == flashing.width_mm
    assert f"+ {cover_mm:g} mm over the covering" in flashing.how


@pytest.mark.parametrize("cover_mm", [0.0, -1.0, float("nan"), float("inf")])
def test_a_side_cover_that_is_none_is_refused(cover_mm: float) -> None:
    with pytest.raises(NothingToSetOut, match="side cover of a flashing"):
        side(WallWished(side_cover_mm=cover_mm))


@pytest.mark.parametrize(
    ("laid_mm", "steps"),
    [(10.0, 1), (150.0, 1), (150.1, 2), (300.0, 2), (9000.0, 60)],
)
def test_steps_go_by_the_rise_of_the_line(laid_mm: float, steps: int) -> None:
    """At 30 degrees the rise is half the length: 75 mm to a step."""
    edge = side(over=replace(SIDE, length_mm=laid_mm, slope_deg=30.0))
    (said,) = [each for each in edge.says if "steps, one to each brick course" in each]
    assert said.startswith(f"About {steps} steps, one to each brick course of 75 mm, each turned 25 mm into its joint")
    assert "at 450 mm or closer" in said
    assert "the water line 65 mm above" in said


def test_what_runs_past_the_ends_is_flashed_too() -> None:
    edge = side(over=replace(SIDE, past_ends_mm=50.0))
    assert 9050.0 == lead(edge, LeadUse.STEP_AND_COVER).run_mm
    assert 9050.0 == lead(top(over=replace(TOP, past_ends_mm=50.0)), LeadUse.COVER_FLASHING).run_mm


def test_a_cover_flashing_along_the_top() -> None:
    edge = top()
    assert "cover flashing" == edge.made
    flashing = lead(edge, LeadUse.COVER_FLASHING)
    assert (7, 1372.0, 250.0) == (flashing.count, flashing.length_mm, flashing.width_mm)
    assert (
        "9000 mm in equal pieces; width: 25 mm into the joint + 75 mm up the wall + 150 mm down the slope, "
        "150 mm or more of it over the top course" == flashing.how
    )
    assert edge.says[0].startswith("Dress the flashing 150 mm down from the wall, over the top course, and 75 mm up it")
    assert "Laps of 100 mm" in edge.says[0]
    assert Verdict.WITHIN is finding(edge.findings, "lead lap").verdict


def test_over_tops_tiles_the_flashing_may_come_down_less() -> None:
    with_tops = next(tile for tile in map(plain_tile, plain_tiles()) if tile.eaves_length_mm is not None)
    assert 100.0 == top_cover(with_tops, GB).value
    assert 25 + 75 + 100 == lead(top(covering=with_tops), LeadUse.COVER_FLASHING).width_mm
    without: PlainTile = replace(with_tops, eaves_length_mm=None)
    assert [150.0] * 3 == [top_cover(each, GB).value for each in (without, SLATE, FLAT)]


HIP = line(LineKind.HIP, slope_deg=26.3)


def test_a_mitred_hip_goes_under_both_slopes_as_far_as_this_program_chose() -> None:
    over = replace(HIP, courses_count=(20, 21))
    ask = replace(
        edges_ask(over, wished=EdgesWished(), covering=SLATE),
        slopes=(slope("front", gauge_mm=200.0), slope("rear", gauge_mm=210.0)),
    )
    (soakers,) = mitred_hip_soakers(ask, over)
    # 210 + 75 + 25 = 310 up a slope of 35°, laid along a hip of 26.3°: 310 × sin 35° ÷ sin 26.3° = 401.3
    assert (21, 402.0, 200.0) == (soakers.count, soakers.length_mm, soakers.width_mm)
    assert soakers.how.endswith("width: 100 mm under each slope")
    assert "gauge 210 mm + headlap 75 mm + 25 mm" in soakers.how
    under = lead_figure(GB, LeadFigure.HIP_SOAKER_UNDER).citation
    assert Basis.HOUSE is under.basis
    assert under in soakers.citations
    assert lead_figure(GB, LeadFigure.SOAKER_UNDER).citation not in soakers.citations


def test_a_mitred_hip_of_no_courses_has_no_soakers() -> None:
    over = replace(HIP, courses_count=(0, 0))
    assert () == mitred_hip_soakers(edges_ask(over, wished=EdgesWished(), covering=SLATE), over)


@pytest.mark.parametrize(("short_mm", "wider_mm"), [(0.0, 0.0), (15.0, 15.0), (15.2, 16.0)])
def test_lead_reaches_over_the_gap_at_a_wall_before_it_covers_anything(short_mm: float, wider_mm: float) -> None:
    over = replace(SIDE, short_mm=short_mm)
    assert 315.0 + wider_mm == lead(side(over=over), LeadUse.STEP_AND_COVER).width_mm
    slated = side(over=over, covering=SLATE)
    assert 175.0 + wider_mm == lead(slated, LeadUse.SOAKER).width_mm
    assert 165.0 == lead(slated, LeadUse.STEP_FLASHING).width_mm


@pytest.mark.parametrize(
    ("short_mm", "reach_mm", "down_mm"),
    [(0.0, None, 150.0), (3.2, None, 154.0), (3.0, 120.0, 153.0), (3.0, 200.0, 200.0)],
)
def test_a_flashing_along_the_top_covers_the_heads_by_the_least_or_reaches_as_far_as_is_said(
    short_mm: float, reach_mm: float | None, down_mm: float
) -> None:
    edge = top(over=replace(TOP, short_mm=short_mm, reach_mm=reach_mm))
    assert 25 + 75 + down_mm == lead(edge, LeadUse.COVER_FLASHING).width_mm
    assert f"{down_mm:g} mm down from the wall" in edge.says[0]
