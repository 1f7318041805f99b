"""The figures open valleys are made by, by edition: clear width, boards, welt, saddle."""

from enum import StrEnum
from typing import assert_never

from gaugerod.basis.limit import Limit
from gaugerod.standards.edition import Edition
from gaugerod.standards.loader import load_table


class ValleyFigure(StrEnum):
    """What a figure says of valleys."""

    CLEAR_LEAST = "clear-least"
    CLEAR_LEAST_LOW_PITCH = "clear-least-low-pitch"
    LOW_PITCH_BELOW = "low-pitch-below"
    CLEAR_USUAL = "clear-usual"
    LINER_CLEAR_GREATEST = "liner-clear-greatest"
    LEAD_CODE = "lead-code"
    WELT = "welt"
    BOARD_THICKNESS = "board-thickness"
    BOARD_UNDER_BATTENS = "board-under-battens"
    MORTAR_CLEAR_OF_WELT = "mortar-clear-of-welt"
    SADDLE_CODE = "saddle-code"
    SADDLE_LENGTH = "saddle-length"
    SADDLE_WIDTH = "saddle-width"
    MADE_BY_TILES_PITCH_LEAST = "made-by-tiles-pitch-least"


def valley_figure(edition: Edition, which: ValleyFigure) -> Limit:
    """One figure, in its own unit, with where it comes from.

    >>> print(valley_figure(Edition.GB, ValleyFigure.CLEAR_LEAST))
    100 mm (NHBC Standards 2020 7.2.21: valleys 100 mm clear or more (published))
    """
    match edition:
        case Edition.GB:
            row = load_table("gb/trade_practice_2026/valley_figures").own_row(name=which.value)
        case _ as unreachable:
            assert_never(unreachable)
    return Limit(value=row.number("figure"), unit=row.word("unit"), citation=row.citation)
