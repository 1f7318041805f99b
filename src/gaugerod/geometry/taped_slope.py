"""A slope by tape: what was measured, its true shape, and where the measurements contradict each other."""

from dataclasses import dataclass

from gaugerod.basis.finding import Finding


@dataclass(frozen=True, slots=True, kw_only=True)
class TapedSlope:
    """What the tape said. mm along the slope.

    ``eaves_mm``   along the eaves, end to end of the roof structure
    ``rafters``    (distance from the left end along the eaves, fascia face to apex), two or more, left to right
    ``ridge_mm``   along the ridge; None when not measured
    ``diagonal_from_left_mm``   left end of the eaves to right end of the ridge; None when not measured
    ``diagonal_from_right_mm``  right end of the eaves to left end of the ridge
    """

    eaves_mm: float
    rafters: tuple[tuple[float, float], ...]
    ridge_mm: float | None = None
    diagonal_from_left_mm: float | None = None
    diagonal_from_right_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SlopeShape:
    """The true shape. Corners counter-clockwise from the left end of the eaves, x along the eaves, y up the slope.

    ``out_of_square_mm``    how far the left side leans from square over its length (positive: to the right)
    ``out_of_parallel_mm``  right rafter less left rafter
    ``area_mm2``            of the roof structure's outline, without overhangs
    """

    outline_mm: tuple[tuple[float, float], ...]
    out_of_square_mm: float
    out_of_parallel_mm: float
    area_mm2: float
    findings: tuple[Finding, ...]
