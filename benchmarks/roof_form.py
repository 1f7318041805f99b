"""The whole roof over a plan, against a plain mitred offset of the same outline by shapely."""

from timeit import repeat

from shapely import Polygon

from gaugerod.geometry.plan_outline import PitchedWall, PlanOutline
from gaugerod.geometry.polygon import Point
from gaugerod.geometry.roof_form import roof_form

PLANS_M: dict[str, tuple[Point, ...]] = {
    "hipped rectangle": ((0, 0), (10, 0), (10, 8), (0, 8)),
    "L": ((0, 0), (12, 0), (12, 5), (6, 5), (6, 10), (0, 10)),
    "T": ((0, 5), (4.5, 5), (4.5, 0), (9.5, 0), (9.5, 5), (14, 5), (14, 11), (0, 11)),
    "bay": ((0, 0), (3, 0), (4, -1.5), (6, -1.5), (7, 0), (10, 0), (10, 7), (0, 7)),
}
RUNS = 100


def rows() -> list[tuple[str, str, str]]:
    """Roof form over mitred offset, as a ratio, with the roof's own time beside it."""
    return [_row(name, tuple((1000.0 * x, 1000.0 * y) for x, y in corners)) for name, corners in PLANS_M.items()]


def _row(name: str, corners: tuple[Point, ...]) -> tuple[str, str, str]:
    plan = PlanOutline(outer_mm=corners, walls=(PitchedWall(pitch_deg=40.0),) * len(corners))
    roof_s = min(repeat(lambda: roof_form(plan), number=RUNS, repeat=5)) / RUNS
    offset_s = min(repeat(lambda: Polygon(corners).buffer(-1000.0, join_style="mitre"), number=RUNS, repeat=5)) / RUNS
    return f"whole roof / one mitred offset, {name}", f"{roof_s / offset_s:.1f}", f"{roof_s * 1e3:.2f} ms"
