"""Which lengths make sense where. House limits: they catch slips of unit and of the pen, not unusual roofs."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Allowed:
    """Lengths from ``least_mm`` to ``greatest_mm``, both allowed, and what kind of length it is."""

    least_mm: float
    greatest_mm: float
    what: str

    def __str__(self) -> str:
        return f"{self.what}, {_short(self.least_mm)} to {_short(self.greatest_mm)}"


def _short(length_mm: float) -> str:
    return f"{length_mm / 1000:g} m" if not -1000 < length_mm < 1000 else f"{length_mm:g} mm"


ALONG_THE_ROOF = Allowed(least_mm=100, greatest_mm=100_000, what="a length measured on a roof")
RUN_OF_SLATES = Allowed(least_mm=100, greatest_mm=20_000_000, what="slates of one heap laid edge to edge")
PLACE_ON_THE_ROOF = Allowed(least_mm=0, greatest_mm=100_000, what="a distance on a roof")
PLACE_ON_PLAN = Allowed(least_mm=-100_000, greatest_mm=100_000, what="a place, left or right, up or down")
OPENING_SIZE = Allowed(least_mm=20, greatest_mm=50_000, what="the size of an opening")
RAFTER_SPACING = Allowed(least_mm=100, greatest_mm=3_000, what="rafter to rafter, centre to centre")
EDGE_ALLOWANCE = Allowed(least_mm=0, greatest_mm=500, what="an allowance at an edge")
OVERHANG_ON_PLAN = Allowed(least_mm=0, greatest_mm=3_000, what="an overhang, measured on the level")
EAVES_HEIGHT = Allowed(least_mm=0, greatest_mm=100_000, what="a height over one level of your choosing")
RIDGE_COVER = Allowed(least_mm=20, greatest_mm=1_000, what="the reach of a ridge unit or flashing down the slope")
UNIT_SIZE = Allowed(least_mm=20, greatest_mm=2_000, what="a size of one tile or slate")
PLACE_ON_THE_UNIT = Allowed(least_mm=0, greatest_mm=2_000, what="a distance on one tile")
RISE_OR_RUN = Allowed(least_mm=1, greatest_mm=100_000, what="a rise, run or rafter length")

MOST_SLOPES_COUNT = 60
MOST_BUILDINGS_COUNT = 20
MOST_CORNERS_COUNT = 200
MOST_HOLES_COUNT = 20
MOST_RAFTERS_COUNT = 200
MOST_OPENINGS_COUNT = 50
MOST_NAILED_COUNT = 50
MOST_MARKS_COUNT = 500
"""More than these in one job, slope, outline or rod is no survey of a roof (house limits)."""
