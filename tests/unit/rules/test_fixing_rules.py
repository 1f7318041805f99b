from dataclasses import replace
from math import inf, nan

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.coverings.catalogue import covering
from gaugerod.coverings.double_lap_catalogue import plain_tile, sized_slate
from gaugerod.rules.fixings import (
    LeastFixing,
    SlateHeld,
    perimeter_rule,
    plain_tile_field,
    single_lap_field,
    slate_field,
)
from gaugerod.standards.edition import Edition

CLAY = plain_tile("clay-plain-265x165")
TWO_NAILS = LeastFixing(nails_count=2)


@pytest.mark.parametrize(
    ("pitch_deg", "holes", "nails", "clips", "in_all"),
    [
        (20.0, 1, 0, 0, 1), (44.9, 1, 0, 0, 1), (45.0, 1, 1, 0, 1), (45.1, 1, 1, 0, 1), (45.0, 2, 2, 0, 2),
        (45.0, None, 1, 0, 1), (45.0, 0, 1, 0, 1), (54.9, 1, 1, 0, 1), (55.0, 1, 1, 1, 2), (55.1, 2, 2, 1, 3),
        (90.0, None, 1, 1, 2),
    ],
)  # fmt: skip
def test_single_lap_tiles_are_held_by_pitch(
    pitch_deg: float, holes: int | None, nails: int, clips: int, in_all: int
) -> None:
    rule = single_lap_field(pitch_deg=pitch_deg, edition=Edition.GB, nail_holes_count=holes)
    assert (nails, clips, in_all) == (rule.least.nails_count, rule.least.clips_count, rule.least.in_all_count)
    assert (1, rule.least) == (rule.every_count, rule.between)


@pytest.mark.parametrize(("pitch_deg", "every"), [(35.0, 5), (59.9, 5), (60.0, 1), (60.1, 1), (90.0, 1)])
def test_plain_tiles_are_nailed_twice_in_every_fifth_course_and_in_all_from_60(pitch_deg: float, every: int) -> None:
    rule = plain_tile_field(pitch_deg=pitch_deg, tile=CLAY, edition=Edition.GB)
    assert (every, TWO_NAILS) == (rule.every_count, rule.least)
    assert rule.between == (TWO_NAILS if every == 1 else LeastFixing())


def test_tiles_with_no_nibs_are_all_nailed_at_any_pitch() -> None:
    rule = plain_tile_field(pitch_deg=40.0, tile=replace(CLAY, nibs=False), edition=Edition.GB)
    assert (1, TWO_NAILS) == (rule.every_count, rule.between)


@pytest.mark.parametrize(("pitch_deg", "nails"), [(20.0, 2), (74.9, 2), (75.0, 3), (75.1, 3), (90.0, 3)])
def test_slates_take_two_nails_and_three_when_upright(pitch_deg: float, nails: int) -> None:
    rule = slate_field(pitch_deg=pitch_deg, edition=Edition.GB, held_by=SlateHeld.NAILS)
    assert LeastFixing(nails_count=nails) == rule.least


def test_hooked_slates_take_one_hook_each_at_any_pitch() -> None:
    for pitch_deg in (25.0, 80.0):
        rule = slate_field(pitch_deg=pitch_deg, edition=Edition.GB, held_by=SlateHeld.HOOKS)
        assert LeastFixing(hooks_count=1) == rule.least


@pytest.mark.parametrize("bad", [nan, inf, -inf])
def test_a_pitch_that_is_no_measurement_is_refused(bad: float) -> None:
    with pytest.raises(NothingToSetOut, match="is no measurement"):
        single_lap_field(pitch_deg=bad, edition=Edition.GB, nail_holes_count=1)
    with pytest.raises(NothingToSetOut, match="is no measurement"):
        slate_field(pitch_deg=bad, edition=Edition.GB, held_by=SlateHeld.NAILS)
    with pytest.raises(NothingToSetOut, match="is no measurement"):
        plain_tile_field(pitch_deg=bad, tile=CLAY, edition=Edition.GB)


def test_the_perimeter_is_two_courses_of_plain_tiles_and_one_of_others() -> None:
    rules = [
        perimeter_rule(covering=unit, edition=Edition.GB)
        for unit in (CLAY, sized_slate("slate-500x250"), covering("flat-interlocking-420x330"))
    ]
    assert [2.0, 1.0, 1.0] == [rule.courses.value for rule in rules] == [rule.opening_courses.value for rule in rules]
    assert {LeastFixing(nails_count=1, fixings_count=2)} == {rule.least for rule in rules}


def test_what_is_known_of_the_perimeter_from_memory_says_so() -> None:
    plain = perimeter_rule(covering=CLAY, edition=Edition.GB)
    slate = perimeter_rule(covering=sized_slate("slate-500x250"), edition=Edition.GB)
    assert Basis.PUBLISHED is plain.courses.citation.basis
    assert Basis.MEMORY is plain.opening_courses.citation.basis is slate.courses.citation.basis


def test_no_unit_is_held_by_fewer_fixings_than_none() -> None:
    with pytest.raises(ValueError, match="fewer fixings than none"):
        LeastFixing(nails_count=-1)
