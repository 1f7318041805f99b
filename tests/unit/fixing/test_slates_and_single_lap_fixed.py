"""Single-lap tiles and slates counted by hand on a slope of 10 courses of 12 units between verges."""

from dataclasses import replace

import pytest

from gaugerod.basis.finding import Verdict
from gaugerod.coverings.catalogue import covering
from gaugerod.coverings.double_lap import Heap, Nailing, RandomSlates
from gaugerod.coverings.double_lap_catalogue import random_slates, sized_slate
from gaugerod.coverings.single_lap import Material
from gaugerod.fixing.ask import FixingAsk, HeldCovering, NailWished
from gaugerod.fixing.held import Held
from gaugerod.fixing.least_fixing import least_fixing
from gaugerod.fixing.plan import FixingPlan
from gaugerod.laying.ask import EdgeKind, LapSide, OffcutRule, Spot, Unit
from gaugerod.laying.cut_unit import Remedy
from gaugerod.rules.fixings import SlateHeld
from gaugerod.rules.nails import NailMetal
from tests.scenario.fixed_slopes import fixing_ask
from tests.scenario.laid_slopes import HIPPED, ring, slope

EAVES, VERGE, RIDGE = EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.RIDGE
FLAT, ROLLED = covering("flat-interlocking-420x330"), covering("profiled-two-roll-420x330")
SLATE = replace(sized_slate("slate-500x250"), thickness_mm=5.0)
STACK = random_slates(
    name="stack",
    heaps=(Heap(length_mm=400.0, slates_count=900, average_width_mm=250.0),),
    nailing=Nailing.HEAD,
    broken_ratio=0.05,
    joint_mm=5.0,
)
COPPER = NailWished(metal=NailMetal.COPPER)


def between_verges(unit: HeldCovering, *, pitch_deg: float = 40.0, holes: int | None = None) -> FixingAsk:
    """No unit is cut, not even under the ridge."""
    points = [(0.0, 0.0), (3000.0, 0.0), (3000.0, 2000.0), (0.0, 2000.0)]
    outline = ring(points, ["eaves", "right verge", "ridge", "left verge"], [EAVES, VERGE, RIDGE, VERGE])
    slates = not hasattr(unit, "bonds")
    laid = Unit(width_mm=250.0, lap_side=LapSide.LEFT, offcut_rule=OffcutRule.ALONG if slates else OffcutRule.IN_PLACE)
    asked = slope(outline, unit=laid, cover_mm=250.0, gauge_mm=200.0, unit_length_mm=420.0, bond_mm=0.0)
    ask = fixing_ask(asked, covering=unit, pitch_deg=pitch_deg, nail=COPPER)
    return replace(ask, full=replace(ask.full, pieces=()), nail_holes_count=holes)


def findings(plan: FixingPlan) -> dict[str, Verdict]:
    return {finding.rule: finding.verdict for finding in plan.findings}


# Of 120 units, 12 lie along the eaves, 12 along the ridge and 16 more at the verges; 80 are field.


@pytest.mark.parametrize(
    ("pitch_deg", "holes", "total"),
    [
        (44.9, None, Held(nails_count=40, either_count=40 + 80)),
        (44.9, 1, Held(nails_count=120, eaves_clips_count=12, verge_clips_count=8 * 2 + 2, tail_clips_count=10)),
        (44.9, 2, Held(nails_count=40 * 2 + 80)),
        (45.0, None, Held(nails_count=120, either_count=40)),
        (45.0, 2, Held(nails_count=240)),
        (54.9, 1, Held(nails_count=120, eaves_clips_count=12, verge_clips_count=18, tail_clips_count=10)),
        (55.0, 1, Held(nails_count=120, tail_clips_count=120)),
        (55.0, 2, Held(nails_count=240, tail_clips_count=120)),
        (90.0, None, Held(nails_count=120, tail_clips_count=120)),
    ],
)
def test_single_lap_tiles_by_pitch_and_holes(pitch_deg: float, holes: int | None, total: Held) -> None:
    assert total == least_fixing(between_verges(FLAT, pitch_deg=pitch_deg, holes=holes)).total


def test_nail_holes_that_are_not_known_are_not_guessed() -> None:
    plan = least_fixing(between_verges(ROLLED))
    assert Verdict.NOT_COVERED is findings(plan)["nail holes"]
    says = next(finding.says for finding in plan.findings if finding.rule == "nail holes")
    assert "of this profiled tile are not known" in says


@pytest.mark.parametrize(
    ("holes", "pitch_deg", "verdict"),
    [(0, 45.0, Verdict.OUTSIDE), (1, 45.0, Verdict.WITHIN), (2, 45.0, Verdict.WITHIN)],
)
def test_a_tile_with_fewer_holes_than_nails_is_told(holes: int, pitch_deg: float, verdict: Verdict) -> None:
    assert verdict is findings(least_fixing(between_verges(FLAT, pitch_deg=pitch_deg, holes=holes)))["nail holes"]


def test_clips_are_counted_and_left_to_the_maker() -> None:
    plan = least_fixing(between_verges(FLAT, holes=1))
    clips = next(finding for finding in plan.findings if finding.rule == "clips")
    assert (40.0, Verdict.NOT_COVERED) == (clips.proposed, clips.verdict)


@pytest.mark.parametrize(("pitch_deg", "nails"), [(25.0, 240), (74.9, 240), (75.0, 360)])
def test_slates_are_nailed_twice_and_upright_three_times(pitch_deg: float, nails: int) -> None:
    plan = least_fixing(between_verges(SLATE, pitch_deg=pitch_deg))
    assert Held(nails_count=nails) == plan.total


def test_the_nail_of_a_centre_nailed_slate_passes_two_thicknesses() -> None:
    centre = least_fixing(between_verges(SLATE)).nail
    head = least_fixing(between_verges(replace(SLATE, nailing=Nailing.HEAD))).nail
    assert centre is not None
    assert head is not None
    assert (10.0, 30.0, 20.0, 3.35) == (centre.passes_mm, centre.length_mm, centre.penetration_mm, centre.shank_mm)
    assert (5.0, 25.0) == (head.passes_mm, head.length_mm)


def test_a_nail_as_wished_is_held_against_both_sources() -> None:
    wished = NailWished(metal=NailMetal.STAINLESS_STEEL, shank_mm=3.0, length_mm=28.0)
    plan = least_fixing(replace(between_verges(SLATE), nail=wished))
    assert ["within", "outside"] == [f.verdict.value for f in plan.findings if f.rule == "nail penetration"]
    assert ["outside", "within"] == [f.verdict.value for f in plan.findings if f.rule == "nail shank"]
    assert plan.nail is not None
    assert "stainless steel clout nail, 28 × 3 mm" == str(plan.nail)


def test_hooked_slates_take_a_nail_as_well_at_the_perimeter() -> None:
    plan = least_fixing(replace(between_verges(SLATE, pitch_deg=24.9), slates_held_by=SlateHeld.HOOKS))
    assert Held(hooks_count=120, nails_count=40) == plan.total
    assert (Verdict.OUTSIDE, Verdict.WITHIN) == (findings(plan)["hook pitch"], findings(plan)["hook wire"])


def test_slates_show_the_other_custom_and_both_ranges_of_the_hole() -> None:
    plan = least_fixing(between_verges(SLATE))
    assert Verdict.NOT_COVERED is findings(plan)["single head nails on boards"]
    assert 4 == sum(finding.rule == "slate hole from side" for finding in plan.findings)
    assert any("25 mm from their side edges" in step for step in plan.method)


def test_of_fibre_cement_slates_only_the_nails_are_counted_and_said_so() -> None:
    plan = least_fixing(between_verges(replace(SLATE, material=Material.FIBRE_CEMENT)))
    assert Verdict.NOT_COVERED is findings(plan)["fibre-cement slates"]


def test_random_slates_are_counted_by_their_average_width_and_said_so() -> None:
    assert isinstance(STACK, RandomSlates)
    plan = least_fixing(between_verges(STACK))
    assert Held(nails_count=240) == plan.total
    assert Verdict.NOT_COVERED is findings(plan)["count of random slates"]
    assert Verdict.NOT_COVERED is findings(plan)["nail penetration"]


@pytest.mark.parametrize(("kept", "held", "short"), [(2, "two nails", 0), (1, "one nail, one tail clip", 0)])
def test_a_cut_tile_takes_the_nails_it_keeps_holes_for(kept: int, held: str, short: int) -> None:
    ask = fixing_ask(slope(HIPPED))
    pieces = tuple(replace(piece, holes_kept_count=kept, remedy=Remedy.AS_CUT) for piece in ask.full.pieces)
    plan = least_fixing(replace(ask, full=replace(ask.full, pieces=pieces)))
    inside = [
        piece
        for course in plan.courses
        for piece in course.pieces
        if not {EAVES, VERGE} & {*piece.why} and not course.nailed
    ]
    assert inside
    assert {(held, short)} == {(str(piece.held), piece.short_count) for piece in inside}


def test_a_cut_tile_with_no_hole_left_is_drilled_and_said_so() -> None:
    ask = fixing_ask(slope(HIPPED))
    pieces = tuple(replace(piece, holes_kept_count=0, remedy=Remedy.AS_CUT) for piece in ask.full.pieces)
    plan = least_fixing(replace(ask, full=replace(ask.full, pieces=pieces)))
    held = [piece for course in plan.courses for piece in course.pieces]
    assert {1, 2} == {piece.short_count for piece in held}
    assert all(piece.held.nails_count == piece.least.nails_count for piece in held)
    lost = next(finding for finding in plan.findings if finding.rule == "holes lost to the cut")
    assert (float(len(held)), Verdict.NOT_COVERED) == (lost.proposed, lost.verdict)


def test_small_pieces_are_bonded_and_clipped_and_at_a_steep_pitch_said_to_lack_their_nail() -> None:
    bare = replace(slope(HIPPED).unit, unit_and_a_half=False, holes=(Spot(from_head_mm=25.0, from_left_mm=80.0),))
    for pitch_deg, lacks in ((40.0, False), (60.0, True)):
        plan = least_fixing(fixing_ask(slope(HIPPED, unit=bare), pitch_deg=pitch_deg))
        small = next(finding for finding in plan.findings if finding.rule == "small pieces")
        assert plan.total.bonds_count == small.proposed
        assert lacks == ("to be nailed, and these are not" in small.says)
