"""Single figures for plain tiles and slates, each with its source, by edition."""

from enum import StrEnum
from typing import assert_never

from gaugerod.basis.limit import Limit
from gaugerod.standards.edition import Edition
from gaugerod.standards.loader import load_table


class DoubleLapFigure(StrEnum):
    """What a figure says of a double-lap covering. Two that name the same thing are two sources that disagree."""

    SLATE_JOINT_GREATEST = "slate-joint-greatest"
    SLATE_JOINT_COUNTED = "slate-joint-counted"
    VERGE_SLATE_LEAST_WIDTH = "verge-slate-least-width"
    NAIL_ABOVE_HEAD = "nail-above-head"
    NAIL_ABOVE_HEAD_LEAST = "nail-above-head-least"
    NAIL_ABOVE_HEAD_GREATEST = "nail-above-head-greatest"
    HEAD_NAIL_BELOW_HEAD = "head-nail-below-head"
    HEADLAP_GREATEST_ONE_PART_IN = "headlap-greatest-one-part-in"
    SLATE_PITCH_LEAST = "slate-pitch-least"
    SLATE_HEADLAP_FLOOR = "slate-headlap-floor"
    SLATE_RAFTER_LONGEST_MODERATE = "slate-rafter-longest-moderate"
    SLATE_RAFTER_LONGEST_SEVERE = "slate-rafter-longest-severe"
    SLATE_RAFTER_PITCH = "slate-rafter-pitch"
    PLAIN_TILE_PITCH_LEAST = "plain-tile-pitch-least"
    PLAIN_TILE_PITCH_LEAST_UNEVEN_CLAY = "plain-tile-pitch-least-uneven-clay"
    PLAIN_TILE_HEADLAP_LEAST = "plain-tile-headlap-least"
    PLAIN_TILE_HEADLAP_LEAST_SEVERE = "plain-tile-headlap-least-severe"
    PLAIN_TILE_HEADLAP_LEAST_SEVERE_RECALLED = "plain-tile-headlap-least-severe-recalled"
    PLAIN_TILE_GAUGE_LEAST = "plain-tile-gauge-least"
    PLAIN_TILE_GAUGE_GREATEST_ROOF = "plain-tile-gauge-greatest-roof"
    PLAIN_TILE_GAUGE_GREATEST_VERTICAL = "plain-tile-gauge-greatest-vertical"
    PLAIN_TILE_SIDELAP_LEAST = "plain-tile-sidelap-least"
    PLAIN_TILE_BATTEN_BELOW_FIRST_WIDEST = "plain-tile-batten-below-first-widest"
    PLAIN_TILE_JOINT_GREATEST = "plain-tile-joint-greatest"
    PLAIN_TILE_NAILED_COURSE_EVERY = "plain-tile-nailed-course-every"
    PLAIN_TILE_NAILED_ALL_FROM = "plain-tile-nailed-all-from"
    PLAIN_TILE_NAILS_EACH = "plain-tile-nails-each"
    PLAIN_TILE_PERIMETER_COURSES = "plain-tile-perimeter-courses"
    RANDOM_SLATE_BROKEN = "random-slate-broken"
    SIZED_SLATE_BROKEN = "sized-slate-broken"
    RANDOM_SLATE_SIDE_WASTE = "random-slate-side-waste"
    SLATE_BATTEN_GAUGE_LEAST = "slate-batten-gauge-least"
    SLATE_HEADS_BELOW_APEX = "slate-heads-below-apex"


def double_lap_figure(edition: Edition, which: DoubleLapFigure) -> Limit:
    """One figure, in its own unit, with where it comes from.

    >>> print(double_lap_figure(Edition.GB, DoubleLapFigure.PLAIN_TILE_HEADLAP_LEAST))
    65 mm (NHBC Standards 7.2.19 Table 21 (published))
    >>> double_lap_figure(Edition.GB, DoubleLapFigure.PLAIN_TILE_HEADLAP_LEAST_SEVERE_RECALLED).citation.basis.value
    'memory'
    """
    match edition:
        case Edition.GB:
            row = load_table("gb/trade_practice_2026/double_lap_figures").own_row(name=which.value)
        case _ as unreachable:
            assert_never(unreachable)
    return Limit(value=row.number("figure"), unit=row.word("unit"), citation=row.citation)


def headlap_greatest_mm(edition: Edition, *, length_mm: float) -> Limit:
    """The greatest headlap of a unit of this length: one part of it in three. mm.

    >>> round(headlap_greatest_mm(Edition.GB, length_mm=500.0).value, 2)
    166.67
    """
    parts = double_lap_figure(edition, DoubleLapFigure.HEADLAP_GREATEST_ONE_PART_IN)
    return Limit(value=length_mm / parts.value, unit="mm", citation=parts.citation)
