"""What a mark on the rod stands for: the top edge of a batten, or the line of the nails."""

from typing import Literal

from gaugerod.job.result import SlopeResult


def mark_word(slope: SlopeResult) -> Literal["batten", "nail line"]:
    """What the marks of this slope are called."""
    if slope.diminishing is not None:
        return "nail line"
    return "nail line" if slope.double_lap is not None and slope.double_lap.marks_are == "nail line" else "batten"


def marks_read(slope: SlopeResult) -> str:
    """What a mark is, as a note beside it says it."""
    return "nail line" if mark_word(slope) == "nail line" else "top edge"
