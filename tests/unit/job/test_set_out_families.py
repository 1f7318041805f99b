"""The one call, for every family of covering: laps proven on the section as laid, independent of the formulas."""

from importlib.resources import files

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.basis.finding import Sense, Verdict
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out

EXAMPLES = ("demo", "feet-and-inches", "plain-tiles", "slates", "random-slates", "hipped-house")


def result(name: str, **changed: str) -> Result:
    text = files("gaugerod.adapters.job_file").joinpath("examples", f"{name}.toml").read_text("utf-8")
    for old, new in changed.items():
        assert old in text
        text = text.replace(old, new)
    return set_out(read_job_text(text.encode()))


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_example_keeps_every_rule(name: str) -> None:
    found = result(name)
    assert [] == [
        f"{finding.where}: {finding.rule}" for finding in found.findings if finding.verdict is Verdict.OUTSIDE
    ]
    assert not found.anything_outside


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_course_is_laid_and_covers_the_slope(name: str) -> None:
    for slope in result(name).slopes:
        assert slope.laid is not None
        laying = slope.laid.laying
        assert slope.courses.count == len(laying.courses)
        covered = laying.whole_area_mm2 + laying.cut_area_mm2 + laying.lapped_area_mm2 + laying.slivers.area_mm2
        assert laying.slope_area_mm2 == pytest.approx(covered - laying.nicks.area_mm2 + laying.bare_mm2, abs=1.0)
        # A taped side that leans is a hair longer than it is high: the courses stop that hair below the corner.
        assert 0.0 == pytest.approx(laying.bare_mm2, abs=10.0)


@pytest.mark.parametrize(("name", "least_mm"), [("plain-tiles", 65.0), ("random-slates", 80.0)])
def test_double_lap_keeps_its_lap_over_the_second_course_below(name: str, least_mm: float) -> None:
    """Laid out unit by unit: the head two courses below must lie at least the lap above the tail."""
    slope = result(name).slopes[0]
    assert slope.laid is not None
    courses = slope.laid.ask.courses
    lost_mm = 25.0 if name == "random-slates" else 0.0
    for lower, upper in zip(courses, courses[2:], strict=False):
        head_mm = lower.tail.at_mm + lower.unit_length_mm - lost_mm
        assert head_mm - upper.tail.at_mm >= least_mm - 1e-6


def test_slates_take_the_safer_of_two_tables_and_show_both() -> None:
    found = result("slates")
    laps = [finding for finding in found.findings if "headlap" in finding.rule and finding.sense is Sense.AT_LEAST]
    assert len({finding.citation.source for finding in laps}) >= 2
    assert found.slopes[0].courses.headlap_mm >= max(finding.limit or 0 for finding in laps)


def test_plain_tiles_end_in_a_tile_and_a_half_every_other_course() -> None:
    pieces = result("plain-tiles").slopes[0].verge_pieces
    assert {"whole", "unit-and-a-half"} == {piece.made_of.value for piece in pieces}
    assert {165.0, 247.5} == {piece.width_mm for piece in pieces}


@pytest.mark.parametrize("name", ["plain-tiles", "slates"])
def test_alternatives_across_are_ranked_from_one_and_never_half_slates(name: str) -> None:
    """Half of a slate 250 mm wide is 125 mm, under the 150 mm a verge slate must have."""
    for slope in result(name).slopes:
        assert slope.across is not None
        offers = slope.across.alternatives
        assert list(range(1, len(offers) + 1)) == [offer.rank for offer in offers]
        assert not any(offer.change.startswith("Half units") for offer in offers if name == "slates")


def test_a_verge_overhang_is_read_off_the_last_unit_itself() -> None:
    across = result("plain-tiles").slopes[0].across
    assert across is not None
    assert 38.0 - 1e-6 <= across.right_overhang_mm <= 50.0 + 1e-6


def test_a_stack_too_small_says_what_is_short_and_what_would_mend_it() -> None:
    found = result("random-slates", **{"slates = 260": "slates = 20"})
    assert found.anything_outside
    assert 1 == len(found.not_set_out)
    assert found.not_set_out[0].alternatives
    assert () == found.slopes
    assert "mm of the slope bare" in found.not_set_out[0].why


def test_a_hipped_house_is_coursed_together_and_its_offcuts_used() -> None:
    found = result("hipped-house")
    assert len(found.roofs) == 1
    assert len(found.slopes) == len(found.roofs[0].form.slopes)
    assert found.offcuts is not None
    assert found.offcuts.saved_count > 0
    numbers = [piece.number for slope in found.slopes if slope.laid for piece in slope.laid.pieces]
    assert list(range(1, len(numbers) + 1)) == numbers


def test_the_same_job_gives_the_same_result() -> None:
    assert result("demo") == result("demo")


def test_a_wall_along_the_top_does_not_move_the_covering_past_it() -> None:
    (slope,) = result("narrow-gauge", **{'top = "ridge"': 'top = "abutment"'}).slopes
    assert slope.laid is not None
    assert slope.across is not None
    left_mm = -slope.across.left_overhang_mm
    assert {point[1] for point in slope.laid.ask.outline.points_mm} == {-slope.courses.overhang_mm, 1080.0}
    assert left_mm == min(point[0] for point in slope.laid.ask.outline.points_mm)
    assert slope.laid.laying.bare_mm2 == pytest.approx(0.0, abs=1.0)


@pytest.mark.parametrize("name", ["plain-tiles", "slates"])
def test_the_cut_list_lays_at_the_verges_what_the_perps_ask_for(name: str) -> None:
    """Each verge stands in a unit and a half every second course: none of those may be told as a half or as cut."""
    slope = result(name).slopes[0]
    assert slope.laid is not None
    wide = {(piece.at, piece.bond_row) for piece in slope.verge_pieces if piece.made_of.value == "unit-and-a-half"}
    assert wide
    told = [
        piece
        for piece in slope.laid.pieces
        if any(cut.edge.kind.value == "verge" for cut in piece.cuts) and piece.remedy.value == "unit-and-a-half"
    ]
    expected = sum(1 for course in range(slope.courses.count) for at in ("left", "right") if (at, course % 2) in wide)
    assert expected == len(told)
    verges = [piece for piece in slope.laid.pieces if any(cut.edge.kind.value == "verge" for cut in piece.cuts)]
    assert expected == len(verges)
