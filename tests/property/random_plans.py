"""Random building plans of the kinds roofers meet, and some they do not: for tests only."""

from math import cos, pi, radians, sin
from random import Random

from shapely import Polygon, box
from shapely.geometry.polygon import orient
from shapely.ops import unary_union

from gaugerod.geometry.plan_outline import ChangeOfPitch, GableWall, PitchedWall, PlanOutline, Wall
from gaugerod.geometry.polygon import Point

PITCHES_DEG = (22.5, 30.0, 35.0, 40.0, 45.0, 52.5, 60.0)
Rings = tuple[tuple[Point, ...], ...]


def dice(seed: str) -> Random:
    """Random numbers that are the same on every run."""
    return Random(seed)  # noqa: S311 - plans to try, no secrets


def _rings(polygon: Polygon) -> Rings:
    polygon = orient(polygon, 1.0)
    return tuple(
        tuple((float(x), float(y)) for x, y in list(ring.coords)[:-1])
        for ring in (polygon.exterior, *polygon.interiors)
    )


def rectilinear(rng: Random, *, step_mm: int = 100) -> Rings:
    """A house with up to four wings, and now and then a courtyard, on a grid."""
    while True:
        blocks = []
        for _ in range(rng.randint(1, 5)):
            wide, deep = rng.randint(30, 120), rng.randint(30, 120)
            left, front = rng.randint(-80, 80), rng.randint(-80, 80)
            blocks.append(box(left * step_mm, front * step_mm, (left + wide) * step_mm, (front + deep) * step_mm))
        shape = unary_union(blocks)
        if rng.random() < 0.3 and shape.geom_type == "Polygon":
            x, y = shape.representative_point().coords[0]
            x, y = round(x / step_mm) * step_mm, round(y / step_mm) * step_mm
            court = box(x - 10 * step_mm, y - 12 * step_mm, x + 15 * step_mm, y + 9 * step_mm)
            if shape.contains(court.buffer(step_mm)):
                shape = shape.difference(court)
        plain = shape.simplify(0)
        if isinstance(plain, Polygon):
            return _rings(plain)


def turned(rings: Rings, *, angle_deg: float, to_mm: bool) -> Rings:
    """The plan turned about the origin, and rounded to whole millimetres as a survey would be."""
    c, s = cos(radians(angle_deg)), sin(radians(angle_deg))
    moved = [[(x * c - y * s, x * s + y * c) for x, y in ring] for ring in rings]
    return tuple(tuple((float(round(x)), float(round(y))) if to_mm else (x, y) for x, y in ring) for ring in moved)


def star(rng: Random, *, corners: int) -> Rings:
    """A plan seen whole from its middle, with in and out corners anyhow."""
    while True:
        angles = sorted(rng.uniform(0, 2 * pi) for _ in range(corners))
        ring = [(round(r * cos(a)), round(r * sin(a))) for a, r in ((a, rng.uniform(3000, 12000)) for a in angles)]
        shape = Polygon(ring)
        if shape.is_valid and min(b - a for a, b in zip(angles, [*angles[1:], angles[0] + 2 * pi], strict=True)) < pi:
            return _rings(shape)


def convex(rng: Random, *, corners: int) -> Rings:
    """A plan without inner corners."""
    while True:
        points = [(round(rng.uniform(0, 14000)), round(rng.uniform(0, 9000))) for _ in range(corners)]
        shape = Polygon(points).convex_hull
        if isinstance(shape, Polygon):
            return _rings(shape)


def walls_of(
    rng: Random, rings: Rings, *, gables: float = 0.0, weighted: bool = False, stepped: bool = False
) -> tuple[Wall, ...]:
    """What stands on each wall: one pitch all round or many, some gables, some eaves raised and pitches changed."""
    common_deg = rng.choice(PITCHES_DEG)
    walls: list[Wall] = []
    for _ in range(sum(map(len, rings))):
        if rng.random() < gables:
            walls.append(GableWall())
            continue
        pitch_deg = rng.choice(PITCHES_DEG) if weighted else common_deg
        eaves_mm = rng.choice((0.0, 0.0, 600.0, 1500.0)) if stepped else 0.0
        changes = (
            (ChangeOfPitch(rise_mm=700.0, pitch_deg=rng.choice(PITCHES_DEG)),) if stepped and rng.random() < 0.3 else ()
        )
        walls.append(PitchedWall(pitch_deg=pitch_deg, eaves_height_mm=eaves_mm, changes=changes))
    if all(isinstance(wall, GableWall) for wall in walls):
        walls[0] = PitchedWall(pitch_deg=common_deg)
    return tuple(walls)


def plan_of(rings: Rings, walls: tuple[Wall, ...]) -> PlanOutline:
    """Rings and walls as one plan."""
    return PlanOutline(outer_mm=rings[0], holes_mm=rings[1:], walls=walls)


SHAPES = ("rectilinear", "turned", "survey", "star8", "star14", "star24", "convex")
LOADS = ("uniform", "weighted", "gables", "weighted gables", "stepped")


def random_plan(rng: Random, *, shape: str, load: str) -> PlanOutline:
    """One plan of a kind of shape and a kind of walls."""
    match shape:
        case "rectilinear":
            rings = rectilinear(rng)
        case "turned":
            rings = turned(rectilinear(rng), angle_deg=rng.uniform(0, 360), to_mm=False)
        case "survey":
            rings = turned(rectilinear(rng), angle_deg=rng.uniform(0, 360), to_mm=True)
        case "convex":
            rings = convex(rng, corners=rng.randint(3, 12))
        case _:
            rings = star(rng, corners=int(shape.removeprefix("star")))
    walls = walls_of(
        rng,
        rings,
        gables=0.3 if "gables" in load else 0.0,
        weighted=load not in {"uniform", "gables"},
        stepped=load == "stepped",
    )
    return plan_of(rings, walls)
