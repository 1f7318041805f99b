"""Buildings on plan from a DXF drawing: every closed polyline is one, a closed polyline inside another is its courtyard."""

from collections.abc import Sequence
from pathlib import Path
from typing import Literal

from gaugerod.adapters.job_draft.json_text import bytes_of_file
from gaugerod.adapters.job_draft.plan_read import NamedPlan, PlanRead, tidied
from gaugerod.adapters.job_file.allowed import MOST_BUILDINGS_COUNT
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.geometry.polygon import Point, holds_point, signed_area_mm2

Unit = Literal["mm", "cm", "m", "in", "ft"]

MM_IN_UNIT: dict[Unit, float] = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, "ft": 304.8}
INSUNITS: dict[int, Unit] = {1: "in", 2: "ft", 4: "mm", 5: "cm", 6: "m"}
"""Header variable $INSUNITS: the unit of the drawing. Source: the DXF reference, header variables (memory); 0 says nothing."""

Ring = tuple[str, tuple[Point, ...]]
"""Where a closed polyline stands in the drawing, and its corners in mm."""


def read_dxf(path: Path, *, unit: Unit | None = None, layer: str | None = None) -> PlanRead:
    """The buildings in a DXF drawing. Raises InputRefused with every fault, and when the optional part is missing.

    ``unit`` answers for a drawing that does not say its own, and overrides one that does.
    Scope: straight sides; model space; LWPOLYLINE and POLYLINE.
    """
    bytes_of_file(path)  # says in words what is wrong with the path or the size
    try:
        from gaugerod.adapters.dxf.polylines import polylines_in  # noqa: PLC0415 - needs the optional part
    except ImportError:
        do = "Install it: pip install gaugerod[dxf]. GeoJSON needs no extra part."
        raise InputRefused([Fault("file", str(path), "DXF, with the optional part that reads it", do)]) from None
    read = polylines_in(path, layer=layer)
    faults = list(read.faults)
    if not read.closed and not faults:
        given = f"{read.open_count} open polylines" if read.open_count else "no polylines"
        where = "" if layer is None else f" on layer {layer}"
        do = "Draw each building as a closed polyline."
        faults.append(Fault("file", given + where, "one closed polyline or more", do))
    taken_as, remarks = _unit_of(read.unit_code, unit, faults)
    if faults:
        raise InputRefused(faults)
    if read.open_count:
        remarks.append(f"Open polylines left out: {read.open_count}.")
    mm = MM_IN_UNIT[taken_as]
    return _plans([(each.field, tuple((x * mm, y * mm) for x, y in each.corners)) for each in read.closed], remarks)


def _unit_of(code: int, unit: Unit | None, faults: list[Fault]) -> tuple[Unit, list[str]]:
    named = INSUNITS.get(code)
    if unit is not None:
        other = f" (the drawing itself says {named})" if named not in (None, unit) else ""
        return unit, [f"Lengths are taken as {unit}, as was said{other}. Check one wall with the tape."]
    if named is None:
        given = "$INSUNITS says nothing" if code == 0 else f"$INSUNITS is {code}"
        faults.append(Fault("file", given, ", ".join(MM_IN_UNIT), "Say the unit of the drawing, like --unit mm."))
        return "mm", []
    return named, [f"The drawing says its lengths are in {named}. Check one wall with the tape."]


def _plans(rings: Sequence[Ring], remarks: list[str]) -> PlanRead:
    """Outlines with their courtyards: a ring inside another belongs to it, one inside a courtyard is a building again."""
    plans: list[NamedPlan] = []
    faults: list[Fault] = []
    nested = _nested(sorted(rings, key=lambda ring: -_size_mm2(ring[1])))
    if len(nested) > MOST_BUILDINGS_COUNT:
        do = "Put the buildings on a layer of their own, and say --layer."
        raise InputRefused([Fault("file", f"{len(nested)} closed polylines", f"up to {MOST_BUILDINGS_COUNT}", do)])
    for number, ((field, outer), holes) in enumerate(nested, 1):
        tidy = tidied(f"building {number}", [outer, *holes], field=field)
        faults.extend(tidy.faults)
        remarks.extend(tidy.remarks)
        if tidy.plan is not None:
            plans.append(tidy.plan)
    if faults:
        raise InputRefused(faults)
    return PlanRead(plans=tuple(plans), remarks=tuple(remarks))


def _nested(by_size: Sequence[Ring]) -> list[tuple[Ring, list[tuple[Point, ...]]]]:
    """Each outline with the rings of its courtyards; the rings given largest first."""
    found: dict[int, tuple[Ring, list[tuple[Point, ...]]]] = {}
    for at, ring in enumerate(by_size):
        around = [other for other in range(at) if _inside(ring[1], by_size[other][1])]
        outlines = [other for other in around if other in found]
        if len(around) % 2 and outlines:
            found[outlines[-1]][1].append(ring[1])
        else:
            found[at] = (ring, [])
    return list(found.values())


def _inside(ring: Sequence[Point], other: Sequence[Point]) -> bool:
    return len(ring) > 0 and len(other) > 2 and holds_point(other, ring[0])


def _size_mm2(ring: Sequence[Point]) -> float:
    if len(ring) < 3:
        return 0.0
    area_mm2 = signed_area_mm2(ring)
    return area_mm2 if area_mm2 > 0 else -area_mm2
