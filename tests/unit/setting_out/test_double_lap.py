from dataclasses import replace
from itertools import pairwise

import pytest

from gaugerod.basis.band import Band
from gaugerod.basis.citation import house
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division
from gaugerod.coverings.double_lap import Nailing, PlainTile, SizedSlate
from gaugerod.coverings.double_lap_catalogue import plain_tile, sized_slate
from gaugerod.rules.plain_tile import Hung
from gaugerod.setting_out.across import Across, Side, SideKind
from gaugerod.setting_out.double_lap import set_out_double_lap
from gaugerod.setting_out.double_lap_across import (
    DoubleLapAcross,
    MadeOf,
    across_ask,
    verge_pieces,
    verge_slate_findings,
)
from gaugerod.setting_out.double_lap_ask import DoubleLapAsk, courses_ask, gauge_range, top_room
from gaugerod.setting_out.set_across import set_out_across
from gaugerod.setting_out.stations import NailedRod, Station
from gaugerod.standards.defaults import minimum_cut
from gaugerod.standards.edition import Edition

EXAMPLE = house("example")


def mm(value: float) -> Limit:
    return Limit(value=value, unit="mm", citation=EXAMPLE)


TILES = DoubleLapAsk(
    where="rear",
    unit=plain_tile("clay-plain-265x165"),
    hung=Hung.ROOF,
    stations=(Station(at_mm=0.0, length_mm=4905.0),),
    headlap=mm(65.0),
    overhang=Band(least_mm=45.0, greatest_mm=55.0, citation=EXAMPLE),
    ridge_cover_mm=150.0,
    edition=Edition.GB,
    division=Division.MILLIMETRE,
)
SLATES = replace(TILES, unit=sized_slate("slate-500x250"), headlap=mm(100.0), ridge_cover_mm=180.0)
HEAD_NAILED = replace(SLATES, unit=replace(sized_slate("slate-500x250"), nailing=Nailing.HEAD))


def test_the_first_full_tile_hangs_its_overhang_past_the_fascia() -> None:
    # Hanging length 254, overhang 50: batten 1 at 204 (common practice: hanging length − overhang).
    answer = set_out_double_lap(TILES)
    assert (204.0, -50.0) == (answer.courses.rods[0].marks_mm[0], answer.extras.rods[0].tails_mm[0])


def test_the_eaves_tile_hangs_with_its_tail_in_line_with_the_first_course() -> None:
    # Eaves tile 190 long, nib face 11 below its head: 179 up from the tail at −50.
    answer = set_out_double_lap(TILES)
    assert answer.extras.rods[0].under_eaves_mark_mm == 129.0


@pytest.mark.parametrize("division", Division)
@pytest.mark.parametrize("over_mm", [0.0, 0.1, 0.7, 1.0, 1.5])
def test_where_the_ridge_just_reaches_the_marks_keep_its_lap_and_what_the_apex_loses_is_told(
    division: Division, over_mm: float
) -> None:
    # Ridge: 65 mm of lap + 25 mm of clearance. Whatever the rafter, the mark is rounded up where no mark keeps both.
    told = set()
    for tenths in range(17):
        rafters = (Station(at_mm=0.0, length_mm=4905.0 + tenths / 10), Station(at_mm=6000.0, length_mm=4905.7))
        ask = replace(TILES, division=division, ridge_cover_mm=90.0 + over_mm, stations=rafters)
        answer = set_out_double_lap(ask)
        assert answer.courses.headlap_mm >= 65.0 - 1e-6
        (clear,) = [finding for finding in answer.courses.findings if finding.rule == "heads below the apex"]
        assert clear.proposed is not None
        assert clear.proposed >= 25.0 - 2 * float(division.step_mm)
        told.add(clear.verdict)
    assert over_mm > 0 or Verdict.OUTSIDE in told


def test_a_ridge_that_does_not_reach_leaves_the_heads_where_they_are_wished() -> None:
    answer = set_out_double_lap(replace(TILES, ridge_cover_mm=80.0))
    (clear,) = [finding for finding in answer.courses.findings if finding.rule == "heads below the apex"]
    assert (25.0, Verdict.WITHIN) == (clear.proposed, clear.verdict)


def test_plain_tile_gauges_keep_the_range_of_the_trade_and_of_the_lap() -> None:
    # Least: a third of 265 leaves 88.33, above 88. Greatest: (265 − lap) / 2, at most 100 on a roof and 114 on a wall.
    for lap_mm, hung, greatest_mm in (
        (60.0, Hung.ROOF, 100.0),
        (65.0, Hung.ROOF, 100.0),
        (75.0, Hung.ROOF, 95.0),
        (36.0, Hung.WALL, 114.0),
        (39.0, Hung.WALL, 113.0),
    ):
        least, greatest = gauge_range(replace(TILES, headlap=mm(lap_mm), hung=hung))
        assert greatest_mm == greatest.value
        assert pytest.approx(265 / 3) == least.value


def test_a_lap_over_a_third_of_the_length_leaves_no_gauge() -> None:
    gauge_range(replace(TILES, headlap=mm(88.3)))
    with pytest.raises(NothingToSetOut, match="Choose a longer unit"):
        gauge_range(replace(TILES, headlap=mm(88.4)))


def test_the_tops_course_keeps_double_cover_and_its_tight_batten_is_said() -> None:
    answer = set_out_double_lap(TILES)
    short = answer.extras.rods[0].short
    assert short is not None
    assert 190.0 == short.length_mm
    assert short.tail_mm == answer.extras.rods[0].tails_mm[-1] + answer.courses.rods[0].gaps_mm[-1]
    # One gauge up, less what the tile is shorter: 75.
    assert short.above_mm == answer.courses.rods[0].gaps_mm[-1] - 75.0
    tops = next(finding for finding in answer.courses.findings if finding.rule == "tops batten")
    assert Verdict.NOT_COVERED is tops.verdict


def test_a_wide_ridge_needs_no_short_course() -> None:
    # A ridge that reaches one gauge further down laps the course below the top one by itself.
    answer = set_out_double_lap(replace(TILES, ridge_cover_mm=300.0, overhang=Band(50.0, 50.0, EXAMPLE)))
    assert answer.extras.rods[0].short is None or answer.extras.rods[0].laps_mm[-1] >= 65.0
    assert answer.courses.headlap_mm >= 65.0


def test_a_ridge_too_narrow_is_outside_and_says_how_wide() -> None:
    # Lap 65 and heads 25 below the apex: 90.
    for cover_mm, verdict in ((89.9, Verdict.OUTSIDE), (90.0, Verdict.WITHIN), (90.1, Verdict.WITHIN)):
        found = top_room(replace(TILES, ridge_cover_mm=cover_mm)).findings[0]
        assert (verdict, 90.0) == (found.verdict, found.limit)


def test_a_ridge_not_measured_is_not_covered() -> None:
    answer = set_out_double_lap(replace(TILES, ridge_cover_mm=None))
    ridge = next(finding for finding in answer.courses.findings if finding.rule == "ridge lap")
    assert Verdict.NOT_COVERED is ridge.verdict


def test_centre_nails_stand_clear_of_the_head_below_all_the_way_up() -> None:
    answer = set_out_double_lap(SLATES)
    assert answer.extras.holing_mm is not None
    for rod, extra in zip(answer.courses.rods, answer.extras.rods, strict=True):
        assert rod.marks_mm == tuple(tail + answer.extras.holing_mm for tail in extra.tails_mm)
        for (below, _), (_, mark) in pairwise(zip(extra.tails_mm, rod.marks_mm, strict=True)):
            assert 10.0 <= mark - (below + 500.0) <= 15.0


def test_under_eaves_slates_are_as_long_as_gauge_and_lap_and_nailed_a_batten_below() -> None:
    answer = set_out_double_lap(SLATES)
    assert answer.extras.under_eaves_length_mm == 300.0
    assert answer.courses.rods[0].marks_mm[0] - answer.extras.rods[0].under_eaves_mark_mm >= 50.0


def test_head_nailed_slates_lose_25_mm_to_the_hole() -> None:
    answer = set_out_double_lap(HEAD_NAILED)
    assert 187.5 == answer.courses.gauge_max_mm
    assert 475.0 == answer.extras.holing_mm
    assert answer.extras.rods[0].tails_mm[0] + 475.0 == answer.courses.rods[0].marks_mm[0]


def test_centre_nailed_slates_are_not_carried_on_from_battens() -> None:
    nailed = (NailedRod(at_mm=0.0, marks_mm=(270.0, 460.0)),)
    with pytest.raises(NothingToSetOut, match="heads"):
        courses_ask(replace(SLATES, nailed=nailed))
    assert courses_ask(replace(HEAD_NAILED, nailed=nailed)).nailed == nailed


def test_a_short_lap_between_kept_battens_is_said_as_laid() -> None:
    marks_mm = (204.0, 304.0, 410.0, 510.0)
    answer = set_out_double_lap(replace(TILES, nailed=(NailedRod(at_mm=0.0, marks_mm=marks_mm),)))
    # 304 to 510 is 206: lap 59.
    assert answer.courses.headlap_mm == 59.0
    laid = next(finding for finding in answer.courses.findings if finding.rule == "headlap as laid")
    assert Verdict.OUTSIDE is laid.verdict


def test_no_hanging_length_is_asked_for_by_name() -> None:
    with pytest.raises(NothingToSetOut, match="measure the hanging length"):
        set_out_double_lap(replace(TILES, unit=replace(plain_tile("clay-plain-265x165"), hanging_length_mm=None)))


def test_the_working_carries_the_gauge_and_the_laps_of_the_section() -> None:
    names = [step.name for _, step in set_out_double_lap(TILES).courses.working.walk()]
    assert "greatest gauge" in names
    assert "least lap of the rod 0 mm from the left" in names


def asked_across(unit: PlainTile | SizedSlate, eaves_width_mm: float = 7000.0) -> tuple[DoubleLapAcross, Across]:
    verge = Side(kind=SideKind.VERGE, reach=Band(38.0, 50.0, EXAMPLE))
    asked = DoubleLapAcross(
        where="rear",
        eaves_width_mm=eaves_width_mm,
        top_left_mm=0.0,
        top_right_mm=eaves_width_mm,
        left=verge,
        right=verge,
        joint=Band(1.0, 5.0, EXAMPLE),
        minimum_cut=minimum_cut(Edition.GB),
        division=Division.MILLIMETRE,
    )
    return asked, set_out_across(across_ask(asked, unit=unit))


def test_slates_across_end_inside_the_overhang_without_their_last_joint() -> None:
    _, across = asked_across(sized_slate("slate-500x250"))
    assert 251.0 - 1e-6 <= across.cover_mm <= 255.0 + 1e-6
    # The engine's right overhang holds one joint too many: the slate itself stays inside 38 to 50.
    assert 38.0 - 1e-6 <= across.right_overhang_mm - 5.0 <= 50.0 + 1e-6


def test_half_a_slate_at_a_verge_is_laid_as_a_slate_and_a_half() -> None:
    slate = sized_slate("slate-500x250")
    asked, across = asked_across(slate)
    pieces = verge_pieces(asked=asked, across=across, unit=slate, edition=Edition.GB)
    assert {MadeOf.WHOLE, MadeOf.UNIT_AND_A_HALF} == {piece.made_of for piece in pieces}
    found = list(verge_slate_findings(where="rear", pieces=pieces, edition=Edition.GB))
    assert [Verdict.WITHIN] * 4 == [finding.verdict for finding in found]


def test_without_a_slate_and_a_half_the_narrow_verge_slate_is_said() -> None:
    slate = replace(sized_slate("slate-500x250"), slate_and_a_half=False)
    asked, across = asked_across(slate)
    pieces = verge_pieces(asked=asked, across=across, unit=slate, edition=Edition.GB)
    found = list(verge_slate_findings(where="rear", pieces=pieces, edition=Edition.GB))
    assert Verdict.OUTSIDE in {finding.verdict for finding in found}


def test_plain_tiles_use_halves_only_where_no_tile_and_a_half_is_made() -> None:
    for wide, made_of in ((True, MadeOf.UNIT_AND_A_HALF), (False, MadeOf.HALF)):
        tile = replace(plain_tile("clay-plain-265x165"), unit_and_a_half=wide)
        asked, across = asked_across(tile)
        pieces = verge_pieces(asked=asked, across=across, unit=tile, edition=Edition.GB)
        assert made_of in {piece.made_of for piece in pieces}


def test_where_gauges_differ_the_hole_comes_nearer_the_head_below_so_that_no_nail_is_too_far_above_it() -> None:
    # In sixteenths, gauges of 8 and 8 1/16 in: 10 mm at the one would be over 15 mm at the other.
    inches = Division.SIXTEENTH
    rafters = (Station(at_mm=0.0, length_mm=7400.0), Station(at_mm=9000.0, length_mm=7480.0))
    ask = replace(SLATES, unit=sized_slate("countess"), division=inches, stations=rafters, ridge_cover_mm=190.0)
    nails = [
        finding for finding in set_out_double_lap(ask).courses.findings if finding.rule == "nail above the head below"
    ]
    assert 2 == len(nails)
    assert {Verdict.WITHIN} == {finding.verdict for finding in nails}
