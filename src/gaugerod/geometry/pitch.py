"""Pitch: the only place where degrees meet trigonometry."""

from math import atan2, cos, degrees, hypot, isfinite, radians, sin, sqrt, tan

from gaugerod.basis.errors import NothingToSetOut


def sin_deg(angle_deg: float) -> float:
    """Sine of an angle in degrees."""
    return sin(radians(angle_deg))


def cos_deg(angle_deg: float) -> float:
    """Cosine of an angle in degrees."""
    return cos(radians(angle_deg))


def tan_deg(angle_deg: float) -> float:
    """Tangent of an angle in degrees."""
    return tan(radians(angle_deg))


def atan2_deg(rise: float, run: float) -> float:
    """The angle, in degrees, whose tangent is rise over run (any one unit for both)."""
    return degrees(atan2(rise, run))


def pitch_from_rise_and_run_deg(*, rise_mm: float, run_mm: float) -> float:
    """Pitch from rise over run, both measured on the level and the plumb.

    >>> round(pitch_from_rise_and_run_deg(rise_mm=8.0, run_mm=12.0), 4)
    33.6901
    """
    if not (rise_mm > 0 and run_mm > 0 and isfinite(rise_mm) and isfinite(run_mm)):
        raise NothingToSetOut("a pitch needs a rise and a run above nothing")
    return atan2_deg(rise_mm, run_mm)


def pitch_from_rafter_and_run_deg(*, rafter_mm: float, run_mm: float) -> float:
    """Pitch from the length up the rafter and the run below it.

    >>> round(pitch_from_rafter_and_run_deg(rafter_mm=1000.0, run_mm=500.0), 6)
    60.0
    """
    if not (0 < run_mm < rafter_mm and isfinite(rafter_mm)):
        raise NothingToSetOut("the rafter must be longer than its run on plan")
    # Factored: near a flat roof r² − a² would lose its last figures.
    return atan2_deg(sqrt(rafter_mm - run_mm) * sqrt(rafter_mm + run_mm), run_mm)


def rafter_mm(*, run_mm: float, pitch_deg: float) -> float:
    """Length up the slope over a run on plan: run / cos(pitch).

    >>> round(rafter_mm(run_mm=4000.0, pitch_deg=60.0), 6)
    8000.0
    """
    if not (run_mm >= 0 and isfinite(run_mm) and 0 <= pitch_deg < 90):
        raise NothingToSetOut("a rafter needs a run on plan and a pitch from level to less than plumb")
    return run_mm / cos_deg(pitch_deg)


def length_mm(dx_mm: float, dy_mm: float) -> float:
    """Straight length of a step in a plane."""
    return hypot(dx_mm, dy_mm)
