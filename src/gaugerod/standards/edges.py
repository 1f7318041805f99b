"""The figures ridges, hips, verges and eaves are made by, by edition."""

from enum import StrEnum
from typing import assert_never

from gaugerod.basis.limit import Limit
from gaugerod.standards.defaults import Statement
from gaugerod.standards.edition import Edition
from gaugerod.standards.loader import load_table


class EdgeFigure(StrEnum):
    """What a figure says of an edge."""

    LINE_UNIT_CUT_LEAST = "line-unit-cut-least"
    LINE_UNIT_FIXINGS_LEAST = "line-unit-fixings-least"
    RIDGE_BATTENS = "ridge-battens"
    HIP_BATTENS = "hip-battens"
    DRY_LINE_ROLLS = "dry-line-rolls"
    HIP_IRONS = "hip-irons"
    HIP_IRON_FIXINGS = "hip-iron-fixings"
    BONNETS_EACH_COURSE = "bonnets-each-course"
    BONNET_FIXINGS = "bonnet-fixings"
    MITRED_HIP_PITCH_LEAST = "mitred-hip-pitch-least"
    MORTAR_SAND_PARTS = "mortar-sand-parts"
    LINE_BEDS = "line-beds"
    LINE_BED_WIDTH = "line-bed-width"
    LINE_BED_THICKNESS = "line-bed-thickness"
    UNDERCLOAK_WIDTH = "undercloak-width"
    UNDERCLOAK_UNDER_BATTEN_GREATEST = "undercloak-under-batten-greatest"
    UNDERCLOAK_LENGTH = "undercloak-length"
    PLAIN_TILE_UNDERCLOAK_GAUGE_GREATEST = "plain-tile-undercloak-gauge-greatest"
    PLAIN_TILE_UNDERCLOAK_PITCH_LEAST = "plain-tile-undercloak-pitch-least"
    VERGE_BED_THICKNESS = "verge-bed-thickness"
    DRY_VERGE_UNITS_EACH_COURSE = "dry-verge-units-each-course"
    CLOAKED_VERGE_TILES_EACH_COURSE = "cloaked-verge-tiles-each-course"
    COMB_FILLER_FROM_FIRST = "comb-filler-from-first"
    COMB_FILLER_FROM_SECOND = "comb-filler-from-second"
    EAVES_TRAY_LAP = "eaves-tray-lap"


def edge_figure(edition: Edition, which: EdgeFigure) -> Limit:
    """One figure, in its own unit, with where it comes from.

    >>> figure = edge_figure(Edition.GB, EdgeFigure.LINE_UNIT_CUT_LEAST)
    >>> figure.value, figure.unit, figure.citation.basis.value
    (0.5, 'ratio', 'published')
    """
    match edition:
        case Edition.GB:
            row = load_table("gb/trade_practice_2026/edge_figures").own_row(name=which.value)
        case _ as unreachable:
            assert_never(unreachable)
    return Limit(value=row.number("figure"), unit=row.word("unit"), citation=row.citation)


def verge_bed_statements(edition: Edition) -> tuple[Statement, ...]:
    """What published sources say of the width of a verge's mortar bed. They disagree; each is shown.

    >>> [(statement.least_mm, statement.greatest_mm) for statement in verge_bed_statements(Edition.GB)]
    [(50.0, 75.0), (100.0, None)]
    """
    match edition:
        case Edition.GB:
            table = load_table("gb/trade_practice_2026/verge_bed_statements")
        case _ as unreachable:
            assert_never(unreachable)
    return tuple(
        Statement(
            least_mm=row.number_or_none("least_mm"),
            greatest_mm=row.number_or_none("greatest_mm"),
            says=row.word("says"),
            citation=row.citation,
        )
        for row in table.rows
    )
