"""The closed polylines of a DXF drawing. This page alone needs the optional part that reads DXF."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from ezdxf import recover
from ezdxf.document import Drawing
from ezdxf.entities.lwpolyline import LWPolyline
from ezdxf.entities.polyline import Polyline

from gaugerod.adapters.job_file.allowed import MOST_CORNERS_COUNT
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.geometry.polygon import Point

FLAT_WITHIN = 0.001
"""A polyline whose heights differ by more than this share of its size is no plan (house limit)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Closed:
    """A closed polyline: where it stands in the drawing, and its corners in the drawing's own unit."""

    field: str
    corners: tuple[Point, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PolylinesRead:
    """What a drawing holds. ``unit_code`` is its $INSUNITS, 0 where it says nothing; ``faults`` what cannot be used."""

    unit_code: int
    closed: tuple[Closed, ...]
    open_count: int
    faults: tuple[Fault, ...]


def polylines_in(path: Path, *, layer: str | None) -> PolylinesRead:
    """Every polyline of model space, of one layer if one is named. Raises InputRefused where this is no drawing."""
    try:
        drawing, _ = recover.readfile(path)
        return _read(drawing, layer)
    except Exception:  # noqa: BLE001 - whatever the reader stumbles over, it is the file that is broken
        do = "Write it again from the program it is from, as DXF."
        raise InputRefused([Fault("file", str(path), "a DXF drawing", do)]) from None


def _read(drawing: Drawing, layer: str | None) -> PolylinesRead:
    closed: list[Closed] = []
    faults: list[Fault] = []
    open_count = 0
    for polyline in _polylines(drawing, layer):
        places = _places(polyline)
        if not _is_closed(polyline, places):
            open_count += 1
            continue
        name = f"{polyline.dxftype()} {polyline.dxf.handle} on layer {polyline.dxf.layer}"
        own = list(_faults_of(places, field=name, curved=polyline.has_arc))
        faults += own
        if not own:
            closed.append(Closed(field=name, corners=tuple((x, y) for x, y, _ in places)))
    code = drawing.header.get("$INSUNITS", 0)
    return PolylinesRead(
        unit_code=code if isinstance(code, int) else 0,
        closed=tuple(closed),
        open_count=open_count,
        faults=tuple(faults),
    )


def _polylines(drawing: Drawing, layer: str | None) -> Iterator[LWPolyline | Polyline]:
    for entity in drawing.modelspace():
        if layer is not None and entity.dxf.layer.casefold() != layer.casefold():
            continue
        if isinstance(entity, LWPolyline) or (
            isinstance(entity, Polyline) and (entity.is_2d_polyline or entity.is_3d_polyline)
        ):
            yield entity


def _places(polyline: LWPolyline | Polyline) -> list[tuple[float, float, float]]:
    """The corners in the drawing's own axes, whichever way the polyline was drawn."""
    in_world = polyline.vertices_in_wcs() if isinstance(polyline, LWPolyline) else polyline.points_in_wcs()
    return [(place.x, place.y, place.z) for place in in_world]


def _is_closed(polyline: LWPolyline | Polyline, places: list[tuple[float, float, float]]) -> bool:
    return polyline.is_closed or (len(places) > 3 and places[0] == places[-1])


def _faults_of(places: list[tuple[float, float, float]], *, field: str, curved: bool) -> Iterator[Fault]:
    if curved:
        yield Fault(field, "a curved side", "straight sides", "Draw the wall line with straight sides.")
    if len(places) > 5 * MOST_CORNERS_COUNT:
        given, allowed = f"{len(places)} corners", f"up to {5 * MOST_CORNERS_COUNT}"
        yield Fault(field, given, allowed, "Leave out what is no corner of a wall.")
    if not all(-1e12 < part < 1e12 for place in places for part in place):
        yield Fault(field, "a corner nowhere", "finite lengths", "Draw this corner again.")
        return
    spans = [max(parts) - min(parts) for parts in zip(*places, strict=True)]
    if spans and spans[2] > FLAT_WITHIN * max(spans[:2]):
        yield Fault(field, "corners at different heights", "a plan, all at one height", "Draw the plan flat.")
