"""Figures of one job that cannot all be true: an opening past the apex, rafters out of order, a name used twice.

They are sought in the document as it was written, so that a value nobody can read does not hide the rest: only
what can be read is compared, and what cannot be read has a fault of its own.
"""

import re
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, replace
from itertools import combinations, pairwise, product

from pydantic_core import PydanticCustomError

from gaugerod.adapters.job_file.allowed import (
    ALONG_THE_ROOF,
    MOST_BUILDINGS_COUNT,
    MOST_MARKS_COUNT,
    MOST_NAILED_COUNT,
    MOST_OPENINGS_COUNT,
    MOST_RAFTERS_COUNT,
    MOST_SLOPES_COUNT,
    OPENING_SIZE,
    PLACE_ON_THE_ROOF,
)
from gaugerod.adapters.job_file.as_written import Table, length_in_mm, listed, tables_in
from gaugerod.adapters.job_file.edges_contradictions import edges_contradictions
from gaugerod.adapters.job_file.fields import length_mm, words
from gaugerod.adapters.job_file.order_contradictions import order_contradictions
from gaugerod.adapters.job_file.outline_contradictions import building_contradictions, outlined_contradictions
from gaugerod.adapters.job_file.slope_tables import BY_OUTLINE, given_how
from gaugerod.basis.errors import Fault


def contradictions(document: Table) -> Iterator[Fault]:
    """Every contradiction, each with the path of the later of the two figures."""
    if not document.keys() & {"slope", "building"}:
        yield Fault("slope", "nothing", "a [[slope]] or a [[building]], or more", "This is needed. Add it.")
    slopes = tables_in(document, "slope", most=MOST_SLOPES_COUNT)
    buildings = tables_in(document, "building", most=MOST_BUILDINGS_COUNT)
    yield from _each_name_once(slopes, "Two slopes have this name: the sheets would be mixed up.")
    yield from _each_name_once(buildings, "Two buildings have this name: their slopes would be mixed up.")
    yield from _apart_by_name(slopes, buildings)
    if document.get("ventilation") is not None and document.get("underlay") is None:
        yield Fault("underlay", "nothing", "an [underlay] beside [ventilation]", "Openings depend on it. Add it.")
    yield from edges_contradictions(document)
    yield from order_contradictions(document)
    for path, building in buildings:
        yield from _under(path, building_contradictions(building))
    for path, slope in slopes:
        if given_how(slope) == BY_OUTLINE:
            yield from _under(path, outlined_contradictions(slope))
        across_mm = length_in_mm(slope, "across", ALONG_THE_ROOF)
        yield from _left_to_right(_rafter_middles(slope, path), across_mm)
        rafters = _rafters(slope, path)
        nailed = tables_in(slope, "nailed", most=MOST_NAILED_COUNT, inside=f"{path}.")
        named = tables_in(slope, "opening", most=MOST_OPENINGS_COUNT, inside=f"{path}.")
        openings = [_opening(where, table) for where, table in named]
        yield from _each_name_once(named, "Two openings have this name.")
        yield from _placed_all_or_none(rafters, f"{path}.rafters")
        yield from _left_to_right([(f"{rafter.path}.at", rafter.at_mm) for rafter in rafters], across_mm)
        yield from _inside(openings, across_mm, [rafter.length_mm for rafter in rafters])
        yield from _apart(openings)
        yield from _left_to_right(
            [(f"{where}.at", length_in_mm(table, "at", PLACE_ON_THE_ROOF)) for where, table in nailed], across_mm
        )
        for where, table in nailed:
            yield from _marks_upwards(table, where, [rafter.length_mm for rafter in rafters])


@dataclass(frozen=True, slots=True)
class _Rafter:
    """A rafter as far as it can be read."""

    path: str
    placed: bool
    at_mm: float | None
    length_mm: float | None


@dataclass(frozen=True, slots=True)
class _Opening:
    """An opening as far as it can be read."""

    path: str
    left_mm: float | None
    right_mm: float | None
    sill_mm: float | None
    head_mm: float | None


def _rafter_middles(slope: Table, path: str) -> list[tuple[str, float | None]]:
    """The middles of the rafters as far as they can be read."""
    found: list[tuple[str, float | None]] = []
    for index, each in enumerate(listed(slope, "rafters_at", most=MOST_RAFTERS_COUNT)):
        with suppress(PydanticCustomError):
            found.append((f"{path}.rafters_at[{index}]", length_mm(each, PLACE_ON_THE_ROOF)))
    return found


def _rafters(slope: Table, path: str) -> list[_Rafter]:
    rafters = []
    for index, each in enumerate(listed(slope, "rafters", most=MOST_RAFTERS_COUNT)):
        table = each if isinstance(each, dict) else {"length": each}
        rafters.append(
            _Rafter(
                path=f"{path}.rafters[{index}]",
                placed="at" in table,
                at_mm=length_in_mm(table, "at", PLACE_ON_THE_ROOF),
                length_mm=length_in_mm(table, "length", ALONG_THE_ROOF),
            )
        )
    return rafters


def _opening(path: str, table: Table) -> _Opening:
    left_mm, sill_mm = (
        length_in_mm(table, "from_left", PLACE_ON_THE_ROOF),
        length_in_mm(table, "up_slope", PLACE_ON_THE_ROOF),
    )
    width_mm, height_mm = length_in_mm(table, "width", OPENING_SIZE), length_in_mm(table, "height", OPENING_SIZE)
    return _Opening(
        path=path,
        left_mm=left_mm,
        right_mm=None if left_mm is None or width_mm is None else left_mm + width_mm,
        sill_mm=sill_mm,
        head_mm=None if sill_mm is None or height_mm is None else sill_mm + height_mm,
    )


def _each_name_once(tables: list[tuple[str, Table]], why: str) -> Iterator[Fault]:
    met = set()
    for path, table in tables:
        with suppress(PydanticCustomError):
            name = words(table.get("name"))
            if name in met:
                yield Fault(f"{path}.name", name, "a name of its own", why)
            met.add(name)


def _apart_by_name(slopes: list[tuple[str, Table]], buildings: list[tuple[str, Table]]) -> Iterator[Fault]:
    """The slopes of a building are called by its name and a number: no other slope may be."""
    for (path, slope), (other, building) in product(slopes, buildings):
        with suppress(PydanticCustomError):
            name, building_name = words(slope.get("name")), words(building.get("name"))
            if re.fullmatch(rf"{re.escape(building_name)} [0-9]+", name):
                yield Fault(f"{path}.name", name, "a name of its own", f"The slopes of {other} are called so.")


def _under(path: str, faults: Iterator[Fault]) -> Iterator[Fault]:
    """The faults of a table, their fields counted from the file."""
    for fault in faults:
        yield replace(fault, field=f"{path}.{fault.field}")


def _placed_all_or_none(rafters: list[_Rafter], path: str) -> Iterator[Fault]:
    if len({rafter.placed for rafter in rafters}) == 2:
        allowed = "all lengths, or all { at, length }"
        yield Fault(path, "some with a place, some without", allowed, "Give the place of each.")


def _left_to_right(places: list[tuple[str, float | None]], across_mm: float | None) -> Iterator[Fault]:
    known = [(path, at_mm) for path, at_mm in places if at_mm is not None]
    for path, at_mm in known:
        if across_mm is not None and at_mm > across_mm:
            yield Fault(path, f"{at_mm:g} mm", f"0 to {across_mm:g} mm", "It lies beyond the eaves.")
    for (_, before_mm), (path, at_mm) in pairwise(known):
        if at_mm <= before_mm:
            yield Fault(path, f"{at_mm:g} mm", f"more than {before_mm:g} mm", "Give them left to right.")


def _inside(openings: list[_Opening], across_mm: float | None, rafters_mm: list[float | None]) -> Iterator[Fault]:
    shortest_mm = min((each_mm for each_mm in rafters_mm if each_mm is not None), default=None)
    for opening in openings:
        if across_mm is not None and opening.right_mm is not None and opening.right_mm > across_mm:
            given, allowed = f"right side at {opening.right_mm:g} mm", f"up to {across_mm:g} mm"
            yield Fault(opening.path, given, allowed, "It reaches past the right end. Check from_left and width.")
        if shortest_mm is not None and opening.head_mm is not None and opening.head_mm >= shortest_mm:
            given, allowed = f"head at {opening.head_mm:g} mm", f"below {shortest_mm:g} mm, the shortest rafter"
            yield Fault(opening.path, given, allowed, "It reaches past the apex. Check up_slope and height.")


def _apart(openings: list[_Opening]) -> Iterator[Fault]:
    for one, other in combinations(openings, 2):
        beside = _overlap(one.left_mm, one.right_mm, other.left_mm, other.right_mm)
        if beside and _overlap(one.sill_mm, one.head_mm, other.sill_mm, other.head_mm):
            yield Fault(other.path, f"it overlaps {one.path}", "openings apart", "Measure both again from the left.")


def _overlap(
    low_mm: float | None, high_mm: float | None, other_low_mm: float | None, other_high_mm: float | None
) -> bool:
    """Do two stretches share more than an end? Not when one of the ends cannot be read."""
    if low_mm is None or high_mm is None or other_low_mm is None or other_high_mm is None:
        return False
    return low_mm < other_high_mm and other_low_mm < high_mm


def _marks_upwards(nailed: Table, path: str, rafters_mm: list[float | None]) -> Iterator[Fault]:
    found = listed(nailed, "marks", most=MOST_MARKS_COUNT)
    marks = [length_in_mm({"mark": each}, "mark", PLACE_ON_THE_ROOF) for each in found]
    longest_mm = max((each_mm for each_mm in rafters_mm if each_mm is not None), default=None)
    known = [(f"{path}.marks[{index}]", mark_mm) for index, mark_mm in enumerate(marks) if mark_mm is not None]
    for (_, below_mm), (where, mark_mm) in pairwise(known):
        if mark_mm <= below_mm:
            yield Fault(where, f"{mark_mm:g} mm", f"more than {below_mm:g} mm", "Give them from the eaves up.")
    for where, mark_mm in known:
        if longest_mm is not None and mark_mm >= longest_mm:
            yield Fault(
                where, f"{mark_mm:g} mm", f"below {longest_mm:g} mm, the longest rafter", "It lies past the apex."
            )
