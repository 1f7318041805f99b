"""The least fixing of tiles and slates, as printed.

Sources beside each group, read as extracts on public pages; the standards themselves were not read. Counts of nails to
the pound: Colliery Engineer reference works, vol. 4 (printed).
"""

import pytest

from gaugerod.coverings.double_lap_catalogue import plain_tile
from gaugerod.rules.fixings import (
    LeastFixing,
    SlateHeld,
    perimeter_rule,
    plain_tile_field,
    single_lap_field,
    slate_field,
)
from gaugerod.rules.nails import (
    Nailed,
    hook_findings,
    least_shank,
    penetration_findings,
    shank_findings,
    slate_hole_findings,
)
from gaugerod.standards.edition import Edition

TILE = plain_tile("clay-plain-265x165")

# A merchant page on BS 5534 fixing. (pitch in degrees, nails, tail clips, fixings in all)
SINGLE_LAP = ((22.5, 0, 0, 1), (44.0, 0, 0, 1), (45.0, 1, 0, 1), (54.0, 1, 0, 1), (55.0, 1, 1, 2), (90.0, 1, 1, 2))
# The same page, and a trade body page on wind uplift calculations with the text of the 2003 edition.
# (pitch in degrees, two nails in each tile of every so many-th course)
PLAIN = ((35.0, 5), (59.0, 5), (60.0, 1), (90.0, 1))
# Colliery vol. 4, one square of slating: slates to the square, lb of nails. 8 × 12 in: 5 lb 9 oz; 6 × 12 in: 7 lb 6 oz.
NAILS_TO_THE_SQUARE = ((400, 5 + 9 / 16), (533, 7 + 6 / 16))
NAILS_TO_THE_POUND = 144


@pytest.mark.parametrize(("pitch_deg", "nails", "clips", "in_all"), SINGLE_LAP)
def test_single_lap_tiles(pitch_deg: float, nails: int, clips: int, in_all: int) -> None:
    least = single_lap_field(pitch_deg=pitch_deg, edition=Edition.GB, nail_holes_count=1).least
    assert (nails, clips, in_all) == (least.nails_count, least.clips_count, least.in_all_count)


@pytest.mark.parametrize(("pitch_deg", "every"), PLAIN)
def test_plain_tiles(pitch_deg: float, every: int) -> None:
    rule = plain_tile_field(pitch_deg=pitch_deg, tile=TILE, edition=Edition.GB)
    assert (every, LeastFixing(nails_count=2)) == (rule.every_count, rule.least)


def test_two_fixings_at_the_perimeter_one_of_them_may_be_no_nail_and_two_courses_of_plain_tiles() -> None:
    """The merchant page; the courses: the trade body page."""
    rule = perimeter_rule(covering=TILE, edition=Edition.GB)
    assert (2, 1) == (rule.least.in_all_count, rule.least.nails_count)
    assert (2.0, "published") == (rule.courses.value, rule.courses.citation.basis.value)


def test_slates_take_two_nails_and_three_in_vertical_scottish_work() -> None:
    """A trade magazine article on Scottish slating."""
    counts = [slate_field(pitch_deg=pitch_deg, edition=Edition.GB, held_by=SlateHeld.NAILS).least.nails_count
              for pitch_deg in (40.0, 90.0)]  # fmt: skip
    assert [2, 3] == counts


@pytest.mark.parametrize(("slates", "pounds"), NAILS_TO_THE_SQUARE)
def test_two_nails_a_slate_weigh_what_is_printed(slates: int, pounds: float) -> None:
    each = slate_field(pitch_deg=40.0, edition=Edition.GB, held_by=SlateHeld.NAILS).least.nails_count
    assert pytest.approx(NAILS_TO_THE_POUND, abs=1.0) == slates * each / pounds


def test_nails_reach_15_mm_by_one_page_and_20_mm_by_another() -> None:
    """The trade body page; a supplier-hosted natural slate guide."""
    found = penetration_findings(where="rear", penetration_mm=17.0, edition=Edition.GB)
    assert [(15.0, "within"), (20.0, "outside")] == [(finding.limit, finding.verdict.value) for finding in found]


def test_shanks_of_tile_and_slate_nails() -> None:
    """Tiles 2.65 mm: the trade body page. Slates 3.35 mm common, 3.0 mm sold: two supplier-hosted pages."""
    assert [2.65, 3.35] == [least_shank(nailed=nailed, edition=Edition.GB).value for nailed in Nailed]
    found = shank_findings(where="rear", shank_mm=3.35, nailed=Nailed.SLATE, edition=Edition.GB)
    assert [3.35, 3.0] == [finding.limit for finding in found]


def test_holes_stand_20_to_25_or_25_to_30_mm_from_the_side() -> None:
    """A terminology sheet and a supplier-hosted manual; an independent consultant's trade article."""
    found = slate_hole_findings(where="rear", from_side_mm=25.0, edition=Edition.GB)
    assert [20.0, 25.0, 25.0, 30.0] == [finding.limit for finding in found]


def test_hooks_from_25_degrees_with_wire_of_2_7_mm_not_thicker_than_the_slate() -> None:
    """Two supplier-hosted pages."""
    found = hook_findings(where="rear", pitch_deg=25.0, wire_mm=2.7, thickness_mm=5.0, edition=Edition.GB)
    assert [25.0, 2.7, 5.0] == [finding.limit for finding in found]
