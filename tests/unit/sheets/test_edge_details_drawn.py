"""Sections of the edges against what was counted: lead drawn as wide as it is cut, courses where they were set out."""

from dataclasses import replace
from itertools import combinations
from math import cos, dist, radians

import pytest

from gaugerod.edges.answer import LeadUse
from gaugerod.edges.wished import (
    HipMade,
    RidgeMade,
    SideMade,
    ValleyMade,
    ValleyWished,
    VergeMade,
    VergeWished,
    WallWished,
)
from gaugerod.job.model import TopKind
from gaugerod.job.result import Result
from gaugerod.setting_out.across import SideKind
from gaugerod.sheets.beside_the_covering import past_edge_mm
from gaugerod.sheets.drawing import Pen
from gaugerod.sheets.edge_detail import Detail, Leaf, Measure, closed, detail_placed, pointing
from gaugerod.sheets.edges_sheet import details, edges_sheet
from gaugerod.sheets.lettering import words_box
from gaugerod.sheets.sheet import PaperSize, Pictures, Prose, Table
from tests.scenario.edges_made import (
    detail_of,
    drawn,
    edge_named,
    edges_made,
    lead_width_mm,
    long_mm,
    made_where,
    measured_mm,
    said_of,
    wished,
)

STEP_AND_COVER = wished(wall=WallWished(side_cover_mm=180.0))
SOAKERS = wished(wall=WallWished())
BEDDED = wished(ridge=RidgeMade.BEDDED, verge=VergeWished(made=VergeMade.BEDDED))


def test_a_step_and_cover_flashing_is_drawn_as_wide_as_it_is_cut() -> None:
    result = edges_made("demo", STEP_AND_COVER)
    (run,) = drawn(detail_of(result, "abutment in section"), Pen.CUT)
    cut_mm = lead_width_mm(edge_named(result, "rear, abutment"), LeadUse.STEP_AND_COVER)
    assert cut_mm == pytest.approx(long_mm(run), abs=5.0)  # the drawn thickness of the lead


def test_what_of_a_flashing_lies_on_the_covering_is_what_the_gap_at_the_wall_leaves() -> None:
    detail = detail_of(edges_made("demo", STEP_AND_COVER), "abutment in section")
    gap_mm = measured_mm(detail, "covering clear of wall")
    assert 15.0 == pytest.approx(gap_mm)
    # Cut for 180 mm on the covering, so 15 mm wider than that from the wall.
    assert 180.0 == pytest.approx(measured_mm(detail, "of it on the covering"))
    assert "180 mm" == said_of(detail, "of it on the covering")


def test_a_flashing_that_lies_too_little_on_the_covering_says_so_beside_it() -> None:
    def said(cover_mm: float) -> str:
        detail = detail_of(edges_made("demo", wished(wall=WallWished(side_cover_mm=cover_mm))), "abutment in section")
        return said_of(detail, "of it on the covering")

    assert ["149 mm, least 150 mm", "150 mm", "151 mm"] == [said(mm) for mm in (149.0, 150.0, 151.0)]


@pytest.mark.parametrize("splash", [False, True])
def test_soakers_and_the_flashing_over_them_are_drawn_as_wide_as_they_are_cut(splash: bool) -> None:  # noqa: FBT001
    edges = wished(wall=WallWished(splash=splash))
    result = edges_made("plain-tiles", edges, right=SideKind.ABUTMENT)
    edge = edge_named(result, "front, abutment")
    flashing, soaker = drawn(detail_of(result, "abutment in section"), Pen.CUT)
    assert lead_width_mm(edge, LeadUse.STEP_FLASHING) == pytest.approx(long_mm(flashing), abs=5.0)
    assert lead_width_mm(edge, LeadUse.SOAKER) == pytest.approx(long_mm(soaker))
    assert max(y for _, y in soaker) <= max(y for _, y in flashing)
    assert min(y for _, y in flashing) < max(y for _, y in soaker)


def test_no_soaker_is_drawn_where_none_was_counted() -> None:
    result = edges_made("demo", wished(wall=WallWished(beside=SideMade.SOAKERS)))
    assert 1 == len(drawn(detail_of(result, "abutment in section"), Pen.CUT))


@pytest.mark.parametrize("name", ["demo", "plain-tiles", "slates"])
def test_a_top_flashing_is_drawn_as_wide_as_it_is_cut_and_clear_of_the_courses(name: str) -> None:
    result = edges_made(name, SOAKERS, top=TopKind.ABUTMENT)
    detail = detail_of(result, "up the slope" if name != "demo" else "top abutment in section, up the slope")
    edge = made_where(
        result, lambda edge: edge.line is not None and any(each.use is LeadUse.COVER_FLASHING for each in edge.lead)
    )
    run = max(drawn(detail, Pen.CUT), key=long_mm)
    assert lead_width_mm(edge, LeadUse.COVER_FLASHING) == pytest.approx(long_mm(run))
    start, end = run[-2:]
    for ring in drawn(detail, Pen.UNIT):
        for x, y in ring:
            if start[0] <= x <= end[0]:
                on_line_mm = start[1] + (x - start[0]) / (end[0] - start[0]) * (end[1] - start[1])
                assert y <= on_line_mm


@pytest.mark.parametrize("girth_mm", [None, 500.0])
def test_a_valley_lining_is_drawn_from_welt_to_welt_as_wide_as_it_is_cut(girth_mm: float | None) -> None:
    edges = wished(valley=ValleyWished(made=ValleyMade.LEAD, girth_mm=girth_mm))
    result = edges_made("hipped-house", edges)
    detail = detail_of(result, " valley in section")
    (run,) = drawn(detail, Pen.CUT)
    valley = made_where(result, lambda edge: edge.clear_mm is not None)
    welts_mm = 2 * 25.0
    assert lead_width_mm(valley, LeadUse.VALLEY_LINING) - welts_mm == pytest.approx(long_mm(run[2:-2]))
    assert measured_mm(detail, "line to welt") == pytest.approx(long_mm(run[2:-2]) / 2)


def test_the_covering_at_a_valley_ends_plumb_under_its_measure_and_boards_reach_under_the_battens() -> None:
    detail = detail_of(edges_made("hipped-house", wished()), " valley in section")
    (measure,) = [each for each in detail.measures if each.name.startswith("line to cut edge")]
    edge_x_mm = min(min(x for x, _ in ring) for ring in drawn(detail, Pen.UNIT) if min(x for x, _ in ring) > 0)
    lowest = min(
        (ring for ring in drawn(detail, Pen.UNIT) if min(x for x, _ in ring) > 0), key=lambda ring: ring[0][0]
    )[0]
    assert measure.to_mm[0] == pytest.approx(lowest[0])
    assert edge_x_mm > 0
    assert 50.0 == pytest.approx(measured_mm(detail, "board under batten ends"))


def test_a_liner_and_valley_tiles_have_no_boards_and_no_lead_lining() -> None:
    for made, words in ((ValleyMade.LINER, "preformed liner"), (ValleyMade.VALLEY_TILES, "valley tile")):
        detail = detail_of(edges_made("hipped-house", wished(valley=ValleyWished(made=made))), " valley in section")
        names = {each.name for each in detail.measures}
        assert words in names
        assert not names & {"boards", "lead lining, flat", "board under batten ends"}


def test_the_top_batten_stands_as_far_below_the_apex_as_it_was_set_out() -> None:
    result = edges_made("demo", BEDDED)
    detail = detail_of(result, "ridge in section")
    below_mm = result.slopes[0].courses.rods[0].below_apex_mm
    battens = drawn(detail, Pen.SECTION_BATTEN)
    leaf = Leaf(rise_deg=-35.0, left=True)
    nearest = min(dist(corner, leaf.at(below_mm, 0.0)) for ring in battens for corner in ring)
    assert 0.0 == pytest.approx(nearest, abs=1e-6)
    assert below_mm == pytest.approx(measured_mm(detail, "top batten below apex"))


def test_the_cover_over_the_top_course_is_that_of_the_finding() -> None:
    result = edges_made("demo", BEDDED)
    (finding,) = [each for each in result.findings if each.rule == "ridge cover"]
    detail = detail_of(result, "ridge in section")
    assert finding.proposed == pytest.approx(measured_mm(detail, "over the top course"))


def test_a_bed_is_drawn_under_a_bedded_ridge_and_a_roll_under_a_dry_one() -> None:
    bedded, dry = (detail_of(edges_made("demo", edges), "ridge in section") for edges in (BEDDED, wished()))
    assert (2, 0) == (len(drawn(bedded, Pen.CUT_UNIT)), len(drawn(bedded, Pen.STRIP)))
    assert (0, 2) == (len(drawn(dry, Pen.CUT_UNIT)), len(drawn(dry, Pen.STRIP)))
    for ring in drawn(bedded, Pen.CUT_UNIT):
        assert 50.0 == pytest.approx(dist(ring[0], ring[1]))


def test_a_mono_ridge_has_one_slope_and_an_upright_leg() -> None:
    mono = detail_of(edges_made("demo", BEDDED, top=TopKind.MONO_RIDGE), "ridge in section")
    ridge = detail_of(edges_made("demo", BEDDED), "ridge in section")
    assert (1, 2) == tuple(len(drawn(each, Pen.CUT_UNIT)) for each in (mono, ridge))
    assert "what lies beyond the ridge" in ridge.only_drawn


def test_a_mitred_hip_has_its_soaker_and_no_unit_over_it() -> None:
    result = edges_made("hipped-house", wished(hips=HipMade.MITRED))
    detail = detail_of(result, " hip in section")
    (soaker,) = drawn(detail, Pen.CUT)
    edge = made_where(result, lambda edge: edge.made.startswith("mitred"))
    assert lead_width_mm(edge, LeadUse.SOAKER) == pytest.approx(long_mm(soaker))
    assert 2 == len(drawn(detail, Pen.UNIT))
    assert not [each for each in detail.measures if "unit" in each.name]


def test_bonnets_have_no_batten_and_no_roll_under_them() -> None:
    detail = detail_of(edges_made("hipped-house", wished(hips=HipMade.BONNET)), " hip in section")
    assert "one to a course" == said_of(detail, "bonnet")
    assert [] == drawn(detail, Pen.STRIP)
    assert 2 == len(drawn(detail, Pen.SECTION_BATTEN))


def test_each_slope_of_a_hip_leans_as_the_roof_form_says() -> None:
    result = edges_made("hipped-house", wished())
    detail = detail_of(result, " hip in section")
    for ring in drawn(detail, Pen.UNIT)[:2]:
        (x0, y0), (x1, y1) = ring[0], ring[1]
        assert cos(radians(23.9)) == pytest.approx(abs(x1 - x0) / dist((x0, y0), (x1, y1)), abs=1e-3)


@pytest.mark.parametrize("bed_mm", [None, 60.0, 130.0])
def test_the_batten_at_a_bedded_verge_clears_the_bed_and_is_not_too_far_over_the_undercloak(
    bed_mm: float | None,
) -> None:
    result = edges_made("demo", wished(verge=VergeWished(made=VergeMade.BEDDED, bed_mm=bed_mm)))
    detail = detail_of(result, "verge in section")
    (batten,) = drawn(detail, Pen.SECTION_BATTEN)
    (bed,) = drawn(detail, Pen.CUT_UNIT)
    cloak = min(drawn(detail, Pen.UNIT), key=lambda ring: ring[0][1])
    end_mm = min(x for x, _ in batten)
    assert (bed_mm or 100.0) == pytest.approx(max(x for x, _ in bed) - min(x for x, _ in bed))
    assert end_mm >= max(x for x, _ in bed) - 1e-9
    assert max(x for x, _ in cloak) - end_mm <= 50.0 + 1e-9


def test_a_cloaked_tile_is_drawn_as_a_tile_and_a_dry_unit_as_its_own_piece() -> None:
    cloaked, dry = (
        detail_of(edges_made("demo", wished(verge=VergeWished(made=made))), "verge in section")
        for made in (VergeMade.CLOAKED, VergeMade.DRY)
    )
    assert (2, 0) == (len(drawn(cloaked, Pen.UNIT)), len(drawn(cloaked, Pen.CUT_UNIT)))
    assert (1, 1) == (len(drawn(dry, Pen.UNIT)), len(drawn(dry, Pen.CUT_UNIT)))


def test_the_covering_is_past_the_verge_by_its_overhang_and_short_of_the_wall_by_its_gap() -> None:
    result = edges_made("demo", wished())
    across = result.slopes[0].across
    assert across is not None
    assert across.left_overhang_mm == pytest.approx(past_edge_mm(result, edge_named(result, "rear, verge")), abs=0.5)
    assert across.right_overhang_mm == pytest.approx(
        past_edge_mm(result, edge_named(result, "rear, abutment")), abs=0.5
    )


def test_lead_of_a_chimney_is_drawn_as_wide_as_it_is_cut() -> None:
    result = edges_made("demo", wished())
    edge = made_where(result, lambda edge: edge.opening is not None)
    apron, gutter, flashing = drawn(detail_of(result, "rooflight in section"), Pen.CUT)
    assert lead_width_mm(edge, LeadUse.APRON) == pytest.approx(long_mm(apron))
    assert lead_width_mm(edge, LeadUse.BACK_GUTTER) == pytest.approx(long_mm(gutter))
    assert lead_width_mm(edge, LeadUse.COVER_FLASHING) == pytest.approx(long_mm(flashing), abs=5.0 + 1e-9)
    assert min(y for _, y in flashing) < max(y for _, y in gutter)


@pytest.mark.parametrize("edges", [BEDDED, wished()])
@pytest.mark.parametrize("name", ["demo", "hipped-house", "plain-tiles"])
def test_on_narrow_paper_every_measure_has_its_number_and_its_words_beneath(name: str, edges: object) -> None:
    for detail, _ in details(edges_made(name, edges)):
        placed = detail_placed(detail, width_mm=112.0, height_mm=90.0)
        texts = [words.text for words in placed.drawing.words]
        for at, each in enumerate(detail.measures, 1):
            assert str(at) in texts
            assert (f"{at}  {each.name}: {each.value}" if each.value else f"{at}  {each.name}") in texts
        boxes = [words_box(words, placed.paper) for words in placed.drawing.words]
        for one, other in combinations(boxes, 2):
            assert not one.overlaps(other), detail.title
        for box in boxes:
            assert 0.0 <= box.left_mm
            assert box.right_mm <= 112.0
            assert 0.0 <= box.bottom_mm
            assert box.top_mm <= placed.paper.height_mm


def test_told_elsewhere_the_numbers_stand_in_the_drawing_alone() -> None:
    for detail, _ in details(edges_made("demo", BEDDED)):
        placed = detail_placed(detail, width_mm=112.0, height_mm=90.0, listed=False)
        numbers = [str(at) for at, _ in enumerate(detail.measures, 1)]
        assert numbers == sorted((words.text for words in placed.drawing.words), key=int)
        assert all(each.name in placed.drawing.says for each in detail.measures)


def test_a_detail_without_words_on_one_side_still_fits() -> None:
    detail = Detail(
        title="plain",
        paths=(closed(Pen.UNIT, ((0.0, 0.0), (100.0, 0.0), (100.0, 10.0))),),
        measures=(
            Measure(from_mm=(0.0, 12.0), to_mm=(100.0, 12.0), name="long", value="100 mm"),
            pointing((50.0, 5.0), "unit"),
        ),
        only_drawn="nothing",
    )
    placed = detail_placed(detail)
    assert 1 == placed.paper.scale_ratio
    assert "plain: long: 100 mm; unit. Only drawn: nothing." == placed.drawing.says


def test_edges_share_a_picture_only_where_theirs_would_show_the_same() -> None:
    house = edges_made("hipped-house", BEDDED)
    for detail, names in details(house):
        values = sorted(each.value for each in detail.measures)
        for name in names:
            alone = replace(house, edges=replace(house.edges, edges=(edge_named(house, name),)))  # type: ignore[type-var]
            ((own, _),) = details(alone)
            assert values == sorted(each.value for each in own.measures), name


def sources_on(result: Result) -> str:
    tables = [block for block in edges_sheet(result, size=PaperSize.A4).blocks if isinstance(block, Table)]
    return "\n".join(" | ".join(row) for table in tables for row in table.rows if "etails" in table.columns[0].heading)


@pytest.mark.parametrize("name", ["demo", "hipped-house"])
def test_every_figure_of_every_detail_has_its_source_on_the_sheet(name: str) -> None:
    result = edges_made(name, BEDDED)
    said = sources_on(result)
    for detail, _ in details(result):
        for each in detail.measures:
            if any(letter.isdigit() for letter in each.value):
                assert each.source, (detail.title, each.name)
                assert f"{each.name} {each.value}" in said
                assert each.source in said


def test_an_edge_that_is_made_and_cannot_be_drawn_is_named() -> None:
    house = edges_made("hipped-house", BEDDED)
    alone = replace(house, roofs=())
    prose = [block.text for block in edges_sheet(alone, size=PaperSize.A4).blocks if isinstance(block, Prose)]
    assert any(text.startswith("No section of house 1 and house 2, hip; ") for text in prose)


@pytest.mark.parametrize("name", ["demo", "hipped-house"])
def test_every_run_of_units_is_on_the_sheet(name: str) -> None:
    result = edges_made(name, BEDDED)
    assert result.edges is not None
    captions = [
        caption
        for block in edges_sheet(result, size=PaperSize.A4).blocks
        if isinstance(block, Pictures)
        for _, caption in block.pictures
    ] + [block.text for block in edges_sheet(result, size=PaperSize.A4).blocks if isinstance(block, Prose)]
    for edge in result.edges.edges:
        if edge.run is not None:
            assert any(edge.name in caption and "Joints" in caption for caption in captions)
