"""Single figures for battens, each with its source, and the lengths they are bought in, by edition."""

from enum import StrEnum
from typing import assert_never

from gaugerod.basis.band import Band
from gaugerod.basis.limit import Limit
from gaugerod.standards.edition import Edition
from gaugerod.standards.loader import load_table


class BattenFigure(StrEnum):
    """What a figure says of battens. ``run-apart`` and ``run-together`` are two readings of one rule."""

    LENGTH_LEAST = "length-least"
    SUPPORTS_LEAST = "supports-least"
    WIDE_GAUGE_OVER = "wide-gauge-over"
    WIDE_GAUGE_WINDOW = "wide-gauge-window"
    WIDE_GAUGE_JOINTS = "wide-gauge-joints"
    CLOSE_GAUGE_WINDOW = "close-gauge-window"
    CLOSE_GAUGE_JOINTS = "close-gauge-joints"
    CLOSE_GAUGE_RUN_APART = "close-gauge-run-apart"
    CLOSE_GAUGE_RUN_TOGETHER = "close-gauge-run-together"
    VERGE_STOP_LEAST = "verge-stop-least"
    VERGE_STOP_GREATEST = "verge-stop-greatest"
    VALLEY_STOP_FROM_WELT = "valley-stop-from-welt"
    VALLEY_WELT_FROM_LINE = "valley-welt-from-line"
    ABUTMENT_STOP = "abutment-stop"
    ABUTMENT_GUTTER_STOP_LEAST = "abutment-gutter-stop-least"
    ABUTMENT_GUTTER_STOP_GREATEST = "abutment-gutter-stop-greatest"
    HAND_NAIL_LENGTH = "hand-nail-length"
    HAND_NAIL_SHANK = "hand-nail-shank"
    GUN_NAIL_LENGTH = "gun-nail-length"
    GUN_NAIL_SHANK = "gun-nail-shank"
    NAILED_BATTEN_DEPTH = "nailed-batten-depth"
    NAIL_PENETRATION_LEAST = "nail-penetration-least"
    NAILS_EACH_CROSSING = "nails-each-crossing"
    NAILS_EACH_JOINT = "nails-each-joint"
    NAIL_LENGTH_STEP = "nail-length-step"
    STEEL_DENSITY = "steel-density"
    COUNTER_BATTEN_CENTRES_GREATEST = "counter-batten-centres-greatest"
    SAW_KERF = "saw-kerf"
    SAME_SUPPORT = "same-support"
    MOISTURE_GREATEST = "moisture-greatest"


def batten_figure(edition: Edition, which: BattenFigure) -> Limit:
    """One figure, in its own unit, with where it comes from.

    >>> print(batten_figure(Edition.GB, BattenFigure.LENGTH_LEAST))
    1200 mm (NHBC Standards 2021 7.2.17: battens 1.2 m long or more (published))
    """
    match edition:
        case Edition.GB:
            row = load_table("gb/trade_practice_2026/batten_figures").own_row(name=which.value)
        case _ as unreachable:
            assert_never(unreachable)
    return Limit(value=row.number("figure"), unit=row.word("unit"), citation=row.citation)


def verge_stop_band(edition: Edition) -> Band:
    """How far short of the face of the undercloak or mortar a batten ends at a verge.

    >>> verge_stop_band(Edition.GB).aim_mm
    37.5
    """
    return _band(edition, BattenFigure.VERGE_STOP_LEAST, BattenFigure.VERGE_STOP_GREATEST)


def abutment_gutter_stop_band(edition: Edition) -> Band:
    """How far short of the wall a batten ends beside a secret gutter.

    >>> abutment_gutter_stop_band(Edition.GB).least_mm
    38.0
    """
    return _band(edition, BattenFigure.ABUTMENT_GUTTER_STOP_LEAST, BattenFigure.ABUTMENT_GUTTER_STOP_GREATEST)


def batten_stock(edition: Edition) -> tuple[Limit, ...]:
    """The lengths battens are bought in where the job says nothing, shortest first.

    >>> [length.value for length in batten_stock(Edition.GB)]
    [3600.0, 4200.0, 4800.0, 5100.0]
    """
    match edition:
        case Edition.GB:
            rows = load_table("gb/house_2026/batten_stock").rows
        case _ as unreachable:
            assert_never(unreachable)
    return tuple(Limit(value=row.number("length_mm"), unit="mm", citation=row.citation) for row in rows)


def _band(edition: Edition, least: BattenFigure, greatest: BattenFigure) -> Band:
    low, high = batten_figure(edition, least), batten_figure(edition, greatest)
    return Band(least_mm=low.value, greatest_mm=high.value, citation=low.citation)
