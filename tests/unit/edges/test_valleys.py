"""Open valleys: clear width, lining, saddle, boards, liners and tiles; what is said and found."""

from dataclasses import replace

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.errors import InputRefused, NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.coverings.double_lap_catalogue import plain_tile, sized_slate
from gaugerod.edges.answer import LeadPieces, LeadUse, MadeEdge, PartUnit
from gaugerod.edges.ask import Covering, EdgeLine, EdgeSlope, LineKind
from gaugerod.edges.made_lead import LEAD_CAUTION
from gaugerod.edges.make_edges import make_edges
from gaugerod.edges.valleys import lining_girth, valley_edge
from gaugerod.edges.wished import EdgesWished, ValleyMade, ValleyWished
from gaugerod.standards.edition import Edition
from gaugerod.standards.valleys import ValleyFigure, valley_figure
from tests.scenario.edged_roofs import FLAT, edges_ask, finding, items, line, part, slope

GB = Edition.GB
PLAIN = plain_tile("clay-plain-265x165")
VALLEY = line(LineKind.VALLEY, slope_deg=26.3)
LEAD = ValleyWished(made=ValleyMade.LEAD)
LINER = ValleyWished(made=ValleyMade.LINER, liner_length_mm=3000.0, liner_lap_mm=150.0)
TILES = ValleyWished(made=ValleyMade.VALLEY_TILES)


def valley(
    wished: ValleyWished | None,
    *,
    over: EdgeLine = VALLEY,
    slopes: tuple[EdgeSlope, ...] | None = None,
    covering: Covering = FLAT,
) -> MadeEdge:
    ask = edges_ask(over, wished=EdgesWished(valley=wished), covering=covering)
    return valley_edge(ask if slopes is None else replace(ask, slopes=slopes), over)


def lead(edge: MadeEdge, use: LeadUse) -> LeadPieces:
    (found,) = [each for each in edge.lead if each.use is use]
    return found


def uses(edge: MadeEdge) -> list[LeadUse]:
    return [each.use for each in edge.lead]


def test_a_valley_of_which_nothing_is_said_has_a_length_only() -> None:
    edge = valley(None)
    assert ("", (), (), (), None) == (edge.made, edge.parts, edge.lead, edge.findings, edge.clear_mm)
    assert ("9000 mm long. How it is made is not said: give it in [edges.valley].",) == edge.says


def test_a_valley_lined_with_lead() -> None:
    edge = valley(LEAD)
    assert ("lined with lead", 125.0) == (edge.made, edge.clear_mm)
    assert [LeadUse.VALLEY_LINING, LeadUse.VALLEY_SADDLE] == uses(edge)
    lining = lead(edge, LeadUse.VALLEY_LINING)
    # 75 ÷ sin 26.3° = 169.3, so 170; (9000 − 170) ÷ (1500 − 170) = 6.6, so 7; (9000 + 6 × 170) ÷ 7 = 1431.4
    assert (170.0, 7, 1432.0, 450.0, 5) == (
        lining.lap_mm,
        lining.count,
        lining.length_mm,
        lining.width_mm,
        lining.code,
    )
    assert (
        "9000 mm in equal pieces, laps by the valley's own rise of 26.3°; width: twice 200 mm from the line to the welt and "
        "25 mm of welt, 450 mm"
    ) == lining.how
    assert 7 * 1.432 * 0.45 * 25.40 == pytest.approx(lining.mass_kg)
    assert {Verdict.WITHIN} == {each.verdict for each in edge.findings}
    assert any("Lap each over the one below by 170 mm." in said for said in edge.says)
    assert any("50 mm or more under the batten ends" in said for said in edge.says)
    assert LEAD_CAUTION == edge.says[-1]


def test_the_lead_of_a_valley_cites_the_choices_it_stands_on() -> None:
    chosen, welt = (valley_figure(GB, which).citation for which in (ValleyFigure.LEAD_CODE, ValleyFigure.WELT))
    assert Basis.HOUSE is chosen.basis
    assert Basis.HOUSE is welt.basis
    assert {chosen, welt} <= set(lead(valley(LEAD), LeadUse.VALLEY_LINING).citations)
    said = replace(LEAD, lead_code=4, girth_mm=500.0)
    assert set() == {chosen, welt} & set(lead(valley(said), LeadUse.VALLEY_LINING).citations)


def test_boards_lie_along_both_sides() -> None:
    edge = valley(LEAD)
    assert ["valley-board"] == items(edge)
    board = part(edge, "valley-board")
    assert (18.0, PartUnit.METRES, "along 18000 mm") == (board.net, board.unit, board.how)
    assert "19 mm, 260 mm wide" in board.what  # 200 to the welt, the batten 10 short of it, 50 under the batten
    assert Basis.PUBLISHED is board.citation.basis
    # They lie on the rafters, and end with them: the covering past the ends has none under it.
    longer = valley(LEAD, over=replace(VALLEY, past_ends_mm=60.0))
    assert 18.0 == part(longer, "valley-board").net


def test_a_saddle_lies_at_the_head_however_the_valley_is_made() -> None:
    for wished in (LEAD, LINER, TILES):
        saddle = lead(valley(wished), LeadUse.VALLEY_SADDLE)
        assert saddle.how == "one at the head of the valley, no narrower than the lining"
        assert (1, 450.0, 450.0, 4) == (saddle.count, saddle.length_mm, saddle.width_mm, saddle.code)
        assert Basis.HOUSE in {each.basis for each in saddle.citations}
        assert "Dress the saddle over the head of the valley before the ridge goes on." in valley(wished).says


def test_a_girth_that_is_said_is_the_width_of_the_lining() -> None:
    lining = lead(valley(replace(LEAD, girth_mm=500.0)), LeadUse.VALLEY_LINING)
    assert 500.0 == lining.width_mm
    assert lining.how.endswith("500 mm wide as stated")
    assert (500.0, "500 mm wide as stated", ()) == lining_girth(replace(LEAD, girth_mm=500.0), GB)


@pytest.mark.parametrize("girth_mm", [float("nan"), float("inf"), 0.0, -1.0])
def test_a_girth_that_is_none_is_refused(girth_mm: float) -> None:
    with pytest.raises(NothingToSetOut, match="lead pieces, valley-lining"):
        valley(replace(LEAD, girth_mm=girth_mm))


@pytest.mark.parametrize(
    ("code", "verdict"),
    [
        (2, Verdict.NOT_COVERED),
        (3, Verdict.OUTSIDE),
        (4, Verdict.WITHIN),
        (5, Verdict.WITHIN),
        (6, Verdict.NOT_COVERED),
    ],
)
def test_lead_of_a_code_that_may_not_line_a_valley_is_not_counted(code: int, verdict: Verdict) -> None:
    edge = valley(replace(LEAD, lead_code=code))
    assert verdict is finding(edge.findings, "lead code").verdict
    assert ([LeadUse.VALLEY_LINING] if verdict is Verdict.WITHIN else []) + [LeadUse.VALLEY_SADDLE] == uses(edge)


@pytest.mark.parametrize(("rise_deg", "lined"), [(9.0, False), (9.99, False), (10.0, True), (10.1, True)])
def test_lead_flatter_than_10_degrees_is_not_lapped_and_not_counted(rise_deg: float, lined: bool) -> None:  # noqa: FBT001
    edge = valley(LEAD, over=replace(VALLEY, slope_deg=rise_deg))
    assert lined is (LeadUse.VALLEY_LINING in uses(edge))
    assert lined is any("Lap each over the one below" in said for said in edge.says)
    laps = [each.verdict for each in edge.findings if each.rule == "lead lap"]
    assert [Verdict.WITHIN if lined else Verdict.NOT_COVERED] == laps


def test_the_clear_width_goes_by_the_flatter_slope() -> None:
    slopes = (slope("front", pitch_deg=45.0), slope("rear", pitch_deg=29.9))
    narrow = replace(LEAD, clear_mm=124.0)
    found = finding(valley(narrow, slopes=slopes).findings, "valley width")
    assert (Verdict.OUTSIDE, 125.0) == (found.verdict, found.limit)
    steeper = (slope("front", pitch_deg=45.0), slope("rear", pitch_deg=30.0))
    found = finding(valley(narrow, slopes=steeper).findings, "valley width")
    assert (Verdict.WITHIN, 100.0) == (found.verdict, found.limit)


@pytest.mark.parametrize("pitch_deg", [20.0, 29.9, 30.0, 45.0])
def test_a_clear_width_that_is_not_said_is_the_usual_and_never_under_the_least(pitch_deg: float) -> None:
    slopes = (slope("front", pitch_deg=pitch_deg), slope("rear", pitch_deg=45.0))
    edge = valley(LEAD, slopes=slopes)
    assert 125.0 == edge.clear_mm
    assert Verdict.WITHIN is finding(edge.findings, "valley width").verdict


@pytest.mark.parametrize(
    ("clear_mm", "verdict"), [(99.9, Verdict.OUTSIDE), (100.0, Verdict.WITHIN), (100.1, Verdict.WITHIN)]
)
@pytest.mark.parametrize("wished", [LEAD, LINER, TILES])
def test_a_valley_too_narrow_is_outside_however_it_is_made(
    wished: ValleyWished, clear_mm: float, verdict: Verdict
) -> None:
    edge = valley(replace(wished, clear_mm=clear_mm))
    assert clear_mm == edge.clear_mm
    assert verdict is finding(edge.findings, "valley width").verdict


@pytest.mark.parametrize("clear_mm", [float("nan"), float("inf"), 0.0, -1.0])
def test_a_clear_width_that_is_none_is_refused(clear_mm: float) -> None:
    with pytest.raises(NothingToSetOut, match="valley width"):
        valley(replace(LEAD, clear_mm=clear_mm))


def test_units_are_cut_half_the_clear_width_from_the_line() -> None:
    for wished in (LEAD, LINER):
        (said,) = [each for each in valley(replace(wished, clear_mm=130.0)).says if each.startswith("Cut the units")]
        assert said.startswith("Cut the units 65 mm from the line on each side, so that the valley is 130 mm clear")
        assert "25 mm clear of the welt" in said
    assert not any(said.startswith("Cut the units") for said in valley(TILES).says)


def test_only_a_liner_has_a_greatest_width() -> None:
    wide = 150.1
    assert (
        Verdict.OUTSIDE
        is finding(valley(replace(LINER, clear_mm=wide)).findings, "valley width, preformed liner").verdict
    )
    for wished in (LEAD, TILES):
        rules = {each.rule for each in valley(replace(wished, clear_mm=wide)).findings}
        assert "valley width, preformed liner" not in rules


@pytest.mark.parametrize(
    ("laid_mm", "count"),
    [(2999.9, 1), (3000.0, 1), (3000.1, 2), (5850.0, 2), (5850.1, 3), (9000.0, 4)],
)
def test_liners_lap_as_it_was_said(laid_mm: float, count: int) -> None:
    edge = valley(LINER, over=replace(VALLEY, length_mm=laid_mm))
    assert ["valley-liner"] == items(edge)
    assert ("preformed liner", float(count)) == (edge.made, part(edge, "valley-liner").net)
    assert "with laps of 150 mm" in part(edge, "valley-liner").how
    assert "3000 mm long" in part(edge, "valley-liner").what
    assert [LeadUse.VALLEY_SADDLE] == uses(edge)


@pytest.mark.parametrize(
    ("wished", "missing"),
    [
        (replace(LINER, liner_length_mm=None), "How long a liner is was not given"),
        (replace(LINER, liner_length_mm=None, liner_lap_mm=None), "How long a liner is was not given"),
        (replace(LINER, liner_lap_mm=None), "How far liners lap was not given"),
    ],
)
def test_liners_of_which_too_little_is_known_are_not_counted(wished: ValleyWished, missing: str) -> None:
    edge = valley(wished)
    assert () == edge.parts
    found = finding(edge.findings, "valley liner")
    assert Verdict.NOT_COVERED is found.verdict
    assert found.says.startswith(missing)
    assert "Give liner_length and liner_lap in [edges.valley]" in found.says


def test_one_liner_as_long_as_the_valley_needs_no_lap() -> None:
    edge = valley(replace(LINER, liner_length_mm=9000.0, liner_lap_mm=None))
    assert 1.0 == part(edge, "valley-liner").net
    assert "valley liner" not in {each.rule for each in edge.findings}
    short = valley(replace(LINER, liner_length_mm=8999.9, liner_lap_mm=None))
    assert () == short.parts


def test_valley_tiles_go_by_the_slope_with_more_courses_of_plain_tiles() -> None:
    edge = valley(TILES, over=replace(VALLEY, courses_count=(40, 42)), covering=PLAIN)
    assert ("valley tiles", ["valley-tile"]) == (edge.made, items(edge))
    tiles = part(edge, "valley-tile")
    assert (42.0, "one to each of 42 courses", Basis.COMMON_PRACTICE) == (tiles.net, tiles.how, tiles.citation.basis)
    assert [LeadUse.VALLEY_SADDLE] == uses(edge)
    assert 1 == len([each for each in edge.findings if each.rule.startswith("valley width")])
    assert "valley tiles" not in {each.rule for each in edge.findings}


@pytest.mark.parametrize(
    ("covering", "courses_count"), [(FLAT, (14, 14)), (sized_slate("slate-500x250"), (14, 14)), (PLAIN, (0, 0))]
)
def test_valley_tiles_with_other_coverings_or_no_courses_are_not_covered(
    covering: Covering, courses_count: tuple[int, int]
) -> None:
    edge = valley(TILES, over=replace(VALLEY, courses_count=courses_count), covering=covering)
    assert () == edge.parts
    assert Verdict.NOT_COVERED is finding(edge.findings, "valley tiles").verdict
    assert "none are counted" in finding(edge.findings, "valley tiles").says


@pytest.mark.parametrize(
    ("wished", "field"),
    [
        (replace(LEAD, clear_mm=0.0), "edges.valley.clear"),
        (replace(LEAD, girth_mm=-1.0), "edges.valley.girth"),
        (replace(LINER, liner_length_mm=float("nan")), "edges.valley.liner_length"),
        (replace(LINER, liner_length_mm=-500.0), "edges.valley.liner_length"),
        (replace(LINER, liner_lap_mm=-0.1), "edges.valley.liner_lap"),
        (replace(LINER, liner_lap_mm=float("inf")), "edges.valley.liner_lap"),
        (replace(LINER, liner_lap_mm=3000.0), "edges.valley.liner_lap"),
        (replace(LINER, liner_lap_mm=3000.1), "edges.valley.liner_lap"),
    ],
)
def test_a_valley_that_cannot_be_is_refused(wished: ValleyWished, field: str) -> None:
    with pytest.raises(InputRefused) as refused:
        make_edges(edges_ask(VALLEY, wished=EdgesWished(valley=wished)))
    assert [field] == [fault.field for fault in refused.value.faults]


@pytest.mark.parametrize("lap_mm", [0.0, 2999.9])
def test_a_lap_of_nothing_or_just_short_of_the_liner_is_taken(lap_mm: float) -> None:
    made = make_edges(edges_ask(VALLEY, wished=EdgesWished(valley=replace(LINER, liner_lap_mm=lap_mm))))
    (edge,) = made.edges
    assert ["valley-liner"] == items(edge)
