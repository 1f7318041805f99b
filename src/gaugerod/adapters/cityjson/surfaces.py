"""The surfaces of the buildings in a CityJSON file: corners in mm from one place, roof and other kept apart."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import chain

from gaugerod.adapters.job_draft.draft import printable_name
from gaugerod.adapters.job_draft.json_text import Json, finite_numbers, json_table, listed, tabled
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.geometry.slope_plane import SpacePoint

VERSIONS = ("1.1", "2.0")
MOST_SURFACES_COUNT = 1_000
MOST_CORNERS_COUNT = 10_000
"""More than these is a district, not a building (house limits)."""

Corner = tuple[int, int, int]
"""A corner to the millimetre, so that surfaces that share it share it truly."""

_DEPTHS = {"MultiSurface": 1, "CompositeSurface": 1, "Solid": 2, "MultiSolid": 3, "CompositeSolid": 3}
"""How many lists lie round a surface. Source: CityJSON 2.0.1, geometry objects."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Surface:
    """One surface: its outer ring counter-clockwise from outside, then its holes. ``roof``: is it a RoofSurface?"""

    rings: tuple[tuple[Corner, ...], ...]
    roof: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildingSurfaces:
    """The surfaces of one city object, at its finest level of detail."""

    name: str
    level: str
    surfaces: tuple[Surface, ...]


@dataclass(slots=True)
class _Reading:
    """The file, its vertices, and what was met on the way."""

    vertices: list[Corner]
    faults: list[Fault] = field(default_factory=list)


def surfaces_in(content: bytes) -> tuple[list[BuildingSurfaces], list[str]]:
    """Every object with roof surfaces, and remarks. Raises InputRefused with every fault.

    Source: CityJSON 1.1 and 2.0: transform, vertices, boundaries, semantics. Scope: LoD 2; coordinates in metres.
    """
    document = json_table(content, what="CityJSON")
    head = list(_head_faults(document))
    if head:
        raise InputRefused(head)
    reading = _Reading(vertices=_vertices(document))
    found = [
        building
        for name, city_object in tabled(document.get("CityObjects")).items()
        for building in _building(name, tabled(city_object), reading)
    ]
    if reading.faults:
        raise InputRefused(reading.faults)
    if not found:
        allowed = "a building at LoD 2 with surfaces of type RoofSurface"
        raise InputRefused(
            [Fault("CityObjects", "no roof surfaces", allowed, "Take a file of a finer level of detail.")]
        )
    system = tabled(document.get("metadata")).get("referenceSystem")
    named = printable_name(system, otherwise="no reference system")
    return found, [f"The file names {named}: coordinates are taken as metres. Check one length with the tape."]


def _head_faults(document: Json) -> Iterator[Fault]:
    if document.get("type") != "CityJSON":
        yield Fault("type", printable_name(document.get("type"), otherwise="no type"), "CityJSON", "Read another file.")
        return
    if document.get("version") not in VERSIONS:
        given = printable_name(document.get("version"), otherwise="no version")
        yield Fault("version", given, " or ".join(VERSIONS), "Bring the file up to one of these versions first.")
    transform = tabled(document.get("transform"))
    for key in ("scale", "translate"):
        numbers = finite_numbers(transform.get(key), least_count=3)
        if numbers is None or (key == "scale" and min(numbers) <= 0):
            yield Fault(f"transform.{key}", "no such numbers", "three finite numbers", "Write the file again.")
    vertices = listed(document.get("vertices"))
    if len(vertices) > MOST_CORNERS_COUNT:
        given, allowed = f"{len(vertices)} of them", f"up to {MOST_CORNERS_COUNT}"
        yield Fault("vertices", given, allowed, "Cut the building out of the file first.")
        return
    for at, vertex in enumerate(vertices):
        if finite_numbers(vertex, least_count=3) is None:
            yield Fault(f"vertices[{at}]", "no corner", "three whole numbers", "Write the file again.")


def _vertices(document: Json) -> list[Corner]:
    """Every vertex in mm from the first one, so that no digit is lost to a far-off origin."""
    scale = finite_numbers(tabled(document.get("transform")).get("scale"), least_count=3) or ()
    vertices = [finite_numbers(each, least_count=3) or () for each in listed(document.get("vertices"))]
    corners: list[Corner] = []
    for vertex in vertices:
        x, y, z = (
            _whole_mm((part - first) * step * 1000)
            for part, first, step in zip(vertex, vertices[0], scale, strict=False)
        )
        corners.append((x, y, z))
    return corners


def _whole_mm(length_mm: float) -> int:
    """Far beyond any place on earth it is nowhere; the size of the roof then says so."""
    return round(min(max(length_mm, -1e12), 1e12))


def _building(name: str, city_object: Json, reading: _Reading) -> Iterator[BuildingSurfaces]:
    """The object's geometry at its finest LoD 2, where that has a roof."""
    geometries = [
        (level, at, geometry)
        for at, geometry in enumerate(map(tabled, listed(city_object.get("geometry"))))
        if (level := str(geometry.get("lod"))).startswith("2")
    ]
    if not geometries:
        return
    level, at, geometry = max(geometries, key=lambda each: each[0])
    own = printable_name(name, otherwise="building")
    path = f"CityObjects.{own}.geometry[{at}]"
    surfaces = tuple(_surfaces(geometry, path, reading))
    if any(surface.roof for surface in surfaces):
        yield BuildingSurfaces(name=own, level=level, surfaces=surfaces)


def _surfaces(geometry: Json, path: str, reading: _Reading) -> Iterator[Surface]:
    depth = _DEPTHS.get(str(geometry.get("type")))
    if depth is None:
        given = printable_name(geometry.get("type"), otherwise="no type")
        reading.faults.append(Fault(f"{path}.type", given, ", ".join(_DEPTHS), "Write the roof as one of these."))
        return
    semantics = tabled(geometry.get("semantics"))
    kinds = [tabled(each).get("type") for each in listed(semantics.get("surfaces"))]
    boundaries: list[object] = listed(geometry.get("boundaries"))
    values: list[object] = listed(semantics.get("values"))
    for _ in range(depth - 1):
        values = _one_level_in(values, boundaries)
        boundaries = list(chain.from_iterable(map(listed, boundaries)))
    if len(boundaries) > MOST_SURFACES_COUNT:
        given, allowed = f"{len(boundaries)} surfaces", f"up to {MOST_SURFACES_COUNT}"
        reading.faults.append(Fault(f"{path}.boundaries", given, allowed, "Cut the building out of the file first."))
        return
    for at, boundary in enumerate(boundaries):
        value = values[at] if at < len(values) else None
        known = isinstance(value, int) and not isinstance(value, bool) and 0 <= value < len(kinds)
        rings = _rings(boundary, f"{path}, surface {at}", reading)
        if rings:
            yield Surface(rings=rings, roof=known and kinds[int(str(value))] == "RoofSurface")


def _one_level_in(values: list[object], boundaries: list[object]) -> list[object]:
    """The values one list further in; a null stands for all that lie below it."""
    found: list[object] = []
    for at, boundary in enumerate(boundaries):
        own = values[at] if at < len(values) else None
        count = len(listed(boundary))
        found.extend((listed(own) + [None] * count)[:count])
    return found


def _rings(boundary: object, path: str, reading: _Reading) -> tuple[tuple[Corner, ...], ...]:
    rings = []
    for ring in listed(boundary):
        numbers = listed(ring)
        known = [
            reading.vertices[number]
            for number in numbers
            if isinstance(number, int) and not isinstance(number, bool) and 0 <= number < len(reading.vertices)
        ]
        if len(known) != len(numbers) or len(known) < 3:
            allowed = "three or more numbers of vertices that there are"
            reading.faults.append(Fault(path, "a ring that leads nowhere", allowed, "Write the file again."))
            return ()
        apart = [corner for at, corner in enumerate(known) if corner != known[at - 1]]
        if len(apart) > 2:
            rings.append(tuple(apart))
    return tuple(rings)


def in_space(corner: Corner) -> SpacePoint:
    """The corner as plain lengths."""
    return float(corner[0]), float(corner[1]), float(corner[2])
