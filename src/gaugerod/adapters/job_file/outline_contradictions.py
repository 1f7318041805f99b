"""Outlines that cannot be true: sides that cross, edges uncounted, eaves that rise, an opening past the edge."""

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import replace

from pydantic import ValidationError
from pydantic_core import PydanticCustomError

from gaugerod.adapters.job_file.allowed import MOST_CORNERS_COUNT
from gaugerod.adapters.job_file.building_table import BuildingTable
from gaugerod.adapters.job_file.plan_fields import NamedEdge, corner
from gaugerod.adapters.job_file.slope_tables import OutlinedSlopeTable
from gaugerod.basis.errors import Fault
from gaugerod.geometry.outline_faults import outline_faults
from gaugerod.geometry.polygon import Point

Table = dict[str, object]

LEVEL_WITHIN_MM = 10.0
"""Eaves that rise more than this from end to end are not along x (house limit: a fascia is set truer than that)."""


def building_contradictions(table: Table) -> Iterator[Fault]:
    """What cannot be true of a building; as far as it can be read, its outline at least."""
    try:
        yield from BuildingTable.model_validate(table).faults()
    except ValidationError:
        yield from _outline_alone(table)


def outlined_contradictions(table: Table) -> Iterator[Fault]:
    """What cannot be true of a slope given by its outline; as far as it can be read, its outline at least."""
    try:
        slope = OutlinedSlopeTable.model_validate(table)
    except ValidationError:
        yield from _outline_alone(table)
        return
    faults = [*outline_faults(slope.outline), *_edge_faults(slope)]
    yield from faults or _opening_faults(slope)


def _outline_alone(table: Table) -> Iterator[Fault]:
    found = table.get("outline")
    if isinstance(found, list) and len(found) <= MOST_CORNERS_COUNT:
        with suppress(PydanticCustomError):
            yield from outline_faults([corner(each) for each in found])


def _edge_faults(slope: OutlinedSlopeTable) -> Iterator[Fault]:
    count = len(slope.outline)
    if len(slope.edges) != count:
        allowed = f"one for each side: {count}"
        yield Fault(
            "edges", f"{len(slope.edges)} of them", allowed, "Name each side, the last back to the first corner."
        )
        return
    eaves = [at for at, edge in enumerate(slope.edges) if edge is NamedEdge.EAVES]
    if not eaves:
        yield Fault("edges", ", ".join(slope.edges), "eaves at one side or more", "Say which side is the eaves.")
    astray = list(_eaves_astray(slope, eaves))
    yield from astray or _below_the_eaves(slope, eaves)


def _eaves_astray(slope: OutlinedSlopeTable, eaves: list[int]) -> Iterator[Fault]:
    for at in eaves:
        (from_x, from_y), (to_x, to_y) = slope.outline[at], slope.outline[(at + 1) % len(slope.outline)]
        if to_x <= from_x or not -LEVEL_WITHIN_MM <= to_y - from_y <= LEVEL_WITHIN_MM:
            given = f"eaves from ({from_x:g}, {from_y:g}) to ({to_x:g}, {to_y:g}) mm"
            allowed = f"eaves from left to right, level within {LEVEL_WITHIN_MM:g} mm"
            yield Fault(f"edges[{at}]", given, allowed, "Measure with x along the eaves and y up the slope.")


def _below_the_eaves(slope: OutlinedSlopeTable, eaves: list[int]) -> Iterator[Fault]:
    """Courses start at the lowest eaves, so nothing may hang below it."""
    ends = {end for at in eaves for end in (at, (at + 1) % len(slope.outline))}
    lowest_mm = min((slope.outline[end][1] for end in ends), default=None)
    for at, (_, y) in enumerate(slope.outline):
        if lowest_mm is not None and y < lowest_mm - LEVEL_WITHIN_MM:
            do = "The courses start at the eaves: split the slope, or name its lowest side eaves."
            yield Fault(
                f"outline[{at}]", f"{y:g} mm up the slope", f"at or above the lowest eaves, {lowest_mm:g} mm", do
            )


def _opening_faults(slope: OutlinedSlopeTable) -> Iterator[Fault]:
    """Openings that reach past the outline. Those that overlap each other are told elsewhere."""
    left_mm, foot_mm = slope.origin_mm()
    outline = [(x - left_mm, y - foot_mm) for x, y in slope.outline]
    for index, opening in enumerate(slope.opening):
        left, right = opening.from_left, opening.from_left + opening.width
        low, high = opening.up_slope, opening.up_slope + opening.height
        ring: tuple[Point, ...] = ((left, low), (left, high), (right, high), (right, low))
        for fault in outline_faults(outline, holes=[ring]):
            yield replace(fault, field=f"opening[{index}]", do="Check from_left, up_slope, width and height.")
