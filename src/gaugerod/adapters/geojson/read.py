"""Buildings on plan from GeoJSON: every polygon is one, its inner rings are courtyards."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Literal

from gaugerod.adapters.geojson.tangent_plane import FLAT, FURTHEST_LATITUDE_DEG, WGS84, on_tangent_plane_mm
from gaugerod.adapters.job_draft.draft import printable_name
from gaugerod.adapters.job_draft.json_text import Json, finite_numbers, json_table, listed, tabled
from gaugerod.adapters.job_draft.plan_read import NamedPlan, PlanRead, tidied
from gaugerod.adapters.job_file.allowed import MOST_BUILDINGS_COUNT, MOST_CORNERS_COUNT
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.geometry.polygon import Point, bounding_box_mm

Unit = Literal["degrees", "m"]
DEEPEST_COUNT = 10
"""Collections inside collections: no drawing of a building goes deeper (house limit)."""


@dataclass(slots=True)
class _Found:
    """Polygons with where they stand in the file, and what was met on the way."""

    polygons: list[tuple[str, str, list[list[Point]]]] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    other_kinds: set[str] = field(default_factory=set)
    heights_met: bool = False


def read_geojson(content: bytes, *, unit: Unit | None = None) -> PlanRead:
    """The buildings in the bytes of a GeoJSON file. Raises InputRefused with every fault.

    Source: RFC 7946: coordinates are longitude and latitude, WGS 84. Scope: a file that names another system, has numbers
    no longitude can have, or is said to be so, is taken as metres.
    """
    document = json_table(content, what="GeoJSON: a Polygon, MultiPolygon, Feature or FeatureCollection")
    found = _Found()
    _walk(document, "file", "", found, depth=0)
    if not found.polygons and not found.faults:
        given = ", ".join(sorted(found.other_kinds)) or "nothing drawn"
        found.faults.append(Fault("file", given, "one Polygon or more", "Draw each building as a closed polygon."))
    if len(found.polygons) > MOST_BUILDINGS_COUNT:
        given = f"{len(found.polygons)} polygons"
        found.faults.append(Fault("file", given, f"up to {MOST_BUILDINGS_COUNT}", "Cut the buildings out of it first."))
    if found.faults:
        raise InputRefused(found.faults)
    taken_as, why = _unit_of(document, found, unit)
    remarks = [why]
    if found.heights_met:
        remarks.append("The file gives heights; a plan has none, so they are left out.")
    if found.other_kinds:
        remarks.append(f"Left out, as no polygons: {', '.join(sorted(found.other_kinds))}.")
    return _plans(found, taken_as, remarks)


def _plans(found: _Found, unit: Unit, remarks: list[str]) -> PlanRead:
    plans: list[NamedPlan] = []
    faults: list[Fault] = []
    for path, name, rings in found.polygons:
        in_mm = list(_in_mm(rings, unit, path, faults))
        if len(in_mm) < len(rings):
            continue
        tidy = tidied(name, in_mm, field=path)
        faults.extend(tidy.faults)
        remarks.extend(tidy.remarks)
        if tidy.plan is not None:
            plans.append(tidy.plan)
    if faults:
        raise InputRefused(faults)
    return PlanRead(plans=tuple(plans), remarks=tuple(remarks))


def _in_mm(rings: list[list[Point]], unit: Unit, path: str, faults: list[Fault]) -> Iterator[list[Point]]:
    (least_x, least_y), (most_x, most_y) = bounding_box_mm(rings[0])
    middle = ((least_x + most_x) / 2, (least_y + most_y) / 2)
    for ring in rings:
        if unit == "m":
            # From the middle, so that no digit is lost to a far-off origin.
            yield [((x - middle[0]) * 1000, (y - middle[1]) * 1000) for x, y in ring]
        elif not -FURTHEST_LATITUDE_DEG <= middle[1] <= FURTHEST_LATITUDE_DEG:
            allowed = f"up to {FURTHEST_LATITUDE_DEG:g}° north or south"
            do = "Project it to metres first, and say --unit m."
            faults.append(Fault(path, f"latitude {middle[1]:g}°", allowed, do))
            return
        else:
            yield on_tangent_plane_mm(ring, middle=middle)


def _unit_of(document: Json, found: _Found, unit: Unit | None) -> tuple[Unit, str]:
    """What the coordinates are in, and how it was told."""
    in_range = all(
        -180 <= x <= 180 and -90 <= y <= 90 for _, _, rings in found.polygons for ring in rings for x, y in ring
    )
    system = tabled(tabled(document.get("crs")).get("properties")).get("name")
    degrees = f"Longitude and latitude are laid on {FLAT}. Ellipsoid: {WGS84}. Check one wall with the tape."
    if unit == "m":
        return "m", "Coordinates are taken as metres, as was said."
    if unit == "degrees" or (system is None and in_range) or _is_degrees(system):
        if not in_range:
            given = "numbers no longitude and latitude can have"
            do = "Say --unit m if they are metres."
            raise InputRefused([Fault("file", given, "longitudes within 180°, latitudes within 90°", do)])
        return "degrees", degrees
    if system is not None:
        named = printable_name(system, otherwise="another")
        return "m", f"The file names the system {named}: coordinates are taken as metres. Check one wall with the tape."
    return "m", "The numbers are no longitudes and latitudes: they are taken as metres. Check one wall with the tape."


def _is_degrees(system: object) -> bool:
    return isinstance(system, str) and system.rstrip().endswith(("CRS84", "EPSG::4326", "EPSG:4326"))


def _walk(node: object, path: str, name: str, found: _Found, *, depth: int) -> None:
    """Every polygon below a node."""
    table = tabled(node)
    kind = table.get("type")
    if depth > DEEPEST_COUNT:
        found.faults.append(Fault(path, "collections without end", f"at most {DEEPEST_COUNT} deep", "Draw it plainly."))
    elif kind == "FeatureCollection":
        for at, feature in enumerate(listed(table.get("features"))):
            _walk(feature, f"features[{at}]", "", found, depth=depth + 1)
    elif kind == "Feature":
        own = printable_name(tabled(table.get("properties")).get("name"), otherwise=name)
        if table.get("geometry") is not None:
            _walk(table.get("geometry"), f"{path}.geometry", own, found, depth=depth + 1)
    elif kind == "GeometryCollection":
        for at, part in enumerate(listed(table.get("geometries"))):
            _walk(part, f"{path}.geometries[{at}]", name, found, depth=depth + 1)
    elif kind == "MultiPolygon":
        for at, polygon in enumerate(listed(table.get("coordinates"))):
            _add(polygon, f"{path}.coordinates[{at}]", name, found)
    elif kind == "Polygon":
        _add(table.get("coordinates"), f"{path}.coordinates", name, found)
    elif kind in ("Point", "MultiPoint", "LineString", "MultiLineString"):
        found.other_kinds.add(str(kind))
    else:
        given = printable_name(kind, otherwise="no type")
        found.faults.append(Fault(f"{path}.type", given, "a type of RFC 7946", "Write it again as GeoJSON."))


def _add(coordinates: object, path: str, name: str, found: _Found) -> None:
    rings = [_ring(ring, f"{path}[{at}]", found) for at, ring in enumerate(listed(coordinates))]
    if not rings:
        found.faults.append(Fault(path, "no rings", "an outer ring, then its holes", "Draw the building again."))
    whole = [ring for ring in rings if ring]
    if whole and len(whole) == len(rings):
        used = {each for _, each, _ in found.polygons}
        own = name if name and name not in used else f"{name or 'building'} {len(found.polygons) + 1}"
        found.polygons.append((path, own, whole))


def _ring(value: object, path: str, found: _Found) -> list[Point]:
    """The corners of a ring, the last that closes it left off; empty where something is wrong with it."""
    positions = [finite_numbers(each, least_count=2) for each in listed(value)]
    unread = [at for at, position in enumerate(positions) if position is None]
    if unread:
        do = "Draw this corner again."
        found.faults.append(Fault(f"{path}[{unread[0]}]", "no position", "two finite numbers or three", do))
        return []
    read = [position for position in positions if position is not None]
    found.heights_met = found.heights_met or any(len(position) > 2 for position in read)
    corners = [(position[0], position[1]) for position in read]
    return corners[:-1] if _sound(corners, path, found) else []


def _sound(corners: Sequence[Point], path: str, found: _Found) -> bool:
    if len(corners) < 4 or corners[0] != corners[-1]:
        given = f"{len(corners)} positions" + ("" if len(corners) < 4 else ", the last not the first")
        allowed = "four positions or more, the last the same as the first"
        found.faults.append(Fault(path, given, allowed, "Close the ring."))
        return False
    if len(corners) > 5 * MOST_CORNERS_COUNT:
        given, allowed = f"{len(corners)} positions", f"up to {5 * MOST_CORNERS_COUNT}"
        found.faults.append(Fault(path, given, allowed, "Leave out what is no corner of a wall."))
        return False
    return True
