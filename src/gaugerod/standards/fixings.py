"""Single figures for fixing tiles and slates, each with its source, by edition."""

from enum import StrEnum
from typing import assert_never

from gaugerod.basis.limit import Limit
from gaugerod.standards.edition import Edition
from gaugerod.standards.loader import load_table


class FixingFigure(StrEnum):
    """What a figure says of fixing. Two that name the same thing are two sources that disagree."""

    SINGLE_LAP_FIXINGS_EACH = "single-lap-fixings-each"
    SINGLE_LAP_NAILED_FROM = "single-lap-nailed-from"
    SINGLE_LAP_NAILS_EACH = "single-lap-nails-each"
    SINGLE_LAP_CLIPPED_FROM = "single-lap-clipped-from"
    SINGLE_LAP_CLIPS_EACH = "single-lap-clips-each"
    PERIMETER_FIXINGS_EACH = "perimeter-fixings-each"
    PERIMETER_NAILS_EACH = "perimeter-nails-each"
    PLAIN_TILE_PERIMETER_COURSES = "plain-tile-perimeter-courses"
    OPENING_PERIMETER_COURSES = "opening-perimeter-courses"
    OTHER_PERIMETER_COURSES = "other-perimeter-courses"
    PLAIN_TILE_NAIL_HOLES = "plain-tile-nail-holes"
    SLATE_NAILS_EACH = "slate-nails-each"
    SLATE_NAILS_EACH_VERTICAL = "slate-nails-each-vertical"
    SLATE_VERTICAL_FROM = "slate-vertical-from"
    SLATE_NAILED_TWICE_COURSE_EVERY = "slate-nailed-twice-course-every"
    SLATE_HOLE_FROM_SIDE_FIRST_LEAST = "slate-hole-from-side-first-least"
    SLATE_HOLE_FROM_SIDE_FIRST_GREATEST = "slate-hole-from-side-first-greatest"
    SLATE_HOLE_FROM_SIDE_SECOND_LEAST = "slate-hole-from-side-second-least"
    SLATE_HOLE_FROM_SIDE_SECOND_GREATEST = "slate-hole-from-side-second-greatest"
    SLATE_HOOKS_EACH = "slate-hooks-each"
    SLATE_HOOK_PITCH_LEAST = "slate-hook-pitch-least"
    SLATE_HOOK_WIRE_LEAST = "slate-hook-wire-least"
    NAIL_PENETRATION_TRADE_BODY = "nail-penetration-trade-body"
    NAIL_PENETRATION_SUPPLIER = "nail-penetration-supplier"
    TILE_NAIL_SHANK_LEAST = "tile-nail-shank-least"
    SLATE_NAIL_SHANK_COMMON = "slate-nail-shank-common"
    SLATE_NAIL_SHANK_SOLD = "slate-nail-shank-sold"
    SLATE_NAIL_HEAD_LEAST = "slate-nail-head-least"
    NAIL_HEAD_THICKNESS = "nail-head-thickness"
    NAIL_LENGTH_STEP = "nail-length-step"
    ALUMINIUM_DENSITY = "aluminium-density"
    COPPER_DENSITY = "copper-density"
    SILICON_BRONZE_DENSITY = "silicon-bronze-density"
    STAINLESS_STEEL_DENSITY = "stainless-steel-density"


def fixing_figure(edition: Edition, which: FixingFigure) -> Limit:
    """One figure, in its own unit, with where it comes from.

    >>> fixing_figure(Edition.GB, FixingFigure.SINGLE_LAP_NAILED_FROM).value
    45.0
    >>> fixing_figure(Edition.GB, FixingFigure.OPENING_PERIMETER_COURSES).citation.basis.value
    'memory'
    """
    match edition:
        case Edition.GB:
            row = load_table("gb/trade_practice_2026/fixing_figures").own_row(name=which.value)
        case _ as unreachable:
            assert_never(unreachable)
    return Limit(value=row.number("figure"), unit=row.word("unit"), citation=row.citation)
