"""What to do with a cut unit when little of it is left, or nothing holds it."""

from typing import NamedTuple

from gaugerod.basis.citation import Basis, Citation, common_practice, house
from gaugerod.laying.ask import OffcutRule, Unit
from gaugerod.laying.cut_unit import Remedy

LEAST_SHOWN_RATIO = 0.5
"""A unit cut to less than half is a small cut. See ``HALF_CITATION``."""
HALF_CITATION = Citation(
    source="NHBC article on pitched roofs in a trade paper: cuts of at least half a tile; "
    "NHBC Standards 7.2.19 and 7.2.21: no small cuts, a tile-and-a-half instead. Half by the area that shows: house",
    basis=Basis.PUBLISHED,
)
FIXED_CITATION = house("a cut unit with neither nib nor nail hole left is bonded to its neighbour and clipped")

HOLED_CITATION = common_practice("slates are holed on site, at the holing gauge, two to a slate")


class Kept(NamedTuple):
    """What is left of one unit. ``reach_covers_count``: how far it reaches from its neighbour's joint, in covers;
    None when it has no neighbour, or one at both sides (then a wider unit is no help).
    """

    shows_ratio: float
    reach_covers_count: float | None
    nibs_kept_count: int
    holes_kept_count: int


def remedy_for(kept: Kept, unit: Unit) -> tuple[Remedy, str, Citation]:
    """The remedy, why, and its source. Exactly half may stay as cut.

    >>> from gaugerod.laying.ask import LapSide, OffcutRule
    >>> tile = Unit(width_mm=165.0, lap_side=LapSide.LEFT, offcut_rule=OffcutRule.IN_PLACE, unit_and_a_half=True)
    >>> remedy_for(Kept(0.49, 0.4, 0, 0), tile)[0], remedy_for(Kept(0.5, 0.5, 0, 0), tile)[0]
    (<Remedy.UNIT_AND_A_HALF: 'unit-and-a-half'>, <Remedy.AS_CUT: 'as-cut'>)
    """
    if kept.shows_ratio >= LEAST_SHOWN_RATIO - 1e-9:
        return _held(kept, unit)
    if unit.random:
        return Remedy.CHOOSE_WIDTH, "Less than half: choose a slate of this width, or shift the joints.", HALF_CITATION
    if kept.reach_covers_count is not None:
        if unit.unit_and_a_half and kept.reach_covers_count <= 0.5 + 1e-9:
            return (
                Remedy.UNIT_AND_A_HALF,
                "Less than half: cut with its neighbour from a unit-and-a-half.",
                HALF_CITATION,
            )
        if unit.double:
            return Remedy.DOUBLE, "Less than half: cut with its neighbour from a double unit.", HALF_CITATION
    return Remedy.BOND_AND_CLIP, "Less than half: bond to its neighbour and clip.", HALF_CITATION


def _held(kept: Kept, unit: Unit) -> tuple[Remedy, str, Citation]:
    """Half or more is left: is there still a nib or a hole to hold it by?"""
    if unit.offcut_rule is OffcutRule.ALONG:
        remark = (
            "Holed after it is cut: two nails clear of the cut, at the holing gauge where the piece reaches up to it."
        )
        return Remedy.AS_CUT, remark, HOLED_CITATION
    if not (unit.nibs or unit.holes):
        return Remedy.AS_CUT, "Nibs and nail holes of this unit are not known: see that it can be held.", FIXED_CITATION
    if kept.nibs_kept_count or kept.holes_kept_count:
        left = [
            f"{count} of {len(of)} {what}"
            for count, of, what in (
                (kept.nibs_kept_count, unit.nibs, "nibs"),
                (kept.holes_kept_count, unit.holes, "nail holes"),
            )
            if of
        ]
        return Remedy.AS_CUT, f"Keeps {' and '.join(left)}.", FIXED_CITATION
    return Remedy.BOND_AND_CLIP, "No nib and no nail hole is left: bond to its neighbour and clip.", FIXED_CITATION
