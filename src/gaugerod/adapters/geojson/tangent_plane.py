"""From degrees of longitude and latitude to metres on the ground round one place."""

from collections.abc import Sequence

from gaugerod.basis.citation import Basis, Citation, house
from gaugerod.geometry.pitch import cos_deg, sin_deg
from gaugerod.geometry.polygon import Point

WGS84_RADIUS_MM = 6_378_137_000.0
WGS84_FLATTENING_RATIO = 1 / 298.257223563
WGS84 = Citation(
    source="WGS 84, defining parameters of the ellipsoid: a = 6 378 137 m, 1/f = 298.257223563", basis=Basis.MEMORY
)
FLAT = house(
    "a plane that touches the ellipsoid at the middle of the plan: under 3 mm out in 100 m up to 60° of latitude"
)

FURTHEST_LATITUDE_DEG = 80.0
"""Nearer to a pole the plane is not tried (house limit)."""


def on_tangent_plane_mm(places: Sequence[Point], *, middle: Point) -> list[Point]:
    """Longitude and latitude in degrees as mm east and north of the middle.

    One degree of latitude is M·π/180 long and one of longitude N·cos φ·π/180, with the radii of curvature in the meridian
    M = a(1 − e²)/(1 − e² sin² φ)^(3/2) and across it N = a/√(1 − e² sin² φ). Source: geometry of the ellipsoid.
    Scope: up to 80° of latitude; one building.

    >>> [(round(x), round(y)) for x, y in on_tangent_plane_mm([(0.001, 0.0), (0.0, 0.001)], middle=(0.0, 0.0))]
    [(111319, 0), (0, 110574)]
    """
    longitude_deg, latitude_deg = middle
    e2_ratio = WGS84_FLATTENING_RATIO * (2 - WGS84_FLATTENING_RATIO)
    under = 1 - e2_ratio * sin_deg(latitude_deg) ** 2
    radius_across_mm = WGS84_RADIUS_MM / under**0.5
    radius_along_mm = WGS84_RADIUS_MM * (1 - e2_ratio) / under**1.5
    east_mm = _mm_per_degree(radius_across_mm * cos_deg(latitude_deg))
    north_mm = _mm_per_degree(radius_along_mm)
    return [((x - longitude_deg) * east_mm, (y - latitude_deg) * north_mm) for x, y in places]


def _mm_per_degree(radius_mm: float) -> float:
    return radius_mm * 3.141592653589793 / 180
