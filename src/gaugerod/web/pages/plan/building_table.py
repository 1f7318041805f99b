"""Between a building's table in the document and what is typed of it."""

import json
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from gaugerod.basis.errors import LengthUnclear
from gaugerod.basis.lengths import LengthUnit, read_length_mm
from gaugerod.geometry.polygon import Point
from gaugerod.web.form import list_of, shown_length, with_keys
from gaugerod.web.pages.plan.outline_typed import OutlineTyped, Stands, WallTyped, number_written
from gaugerod.web.pages.plan.walked import Walk, with_corners
from gaugerod.web.pitch_ways import pitch_said

GABLE = "gable"


def outline_of_table(table: Mapping[str, Any], *, unit: LengthUnit) -> OutlineTyped:
    """The building of a document as the form shows it: what most walls share stands once, the rest at its wall."""
    corners = _corners(table)
    pitches = list_of(table, "pitch")
    common = _most_common(pitch for pitch in pitches if pitch != GABLE)
    overhangs = table.get("overhang")
    each = overhangs if isinstance(overhangs, list) else []
    shared = _most_common(length for length, pitch in zip(each, pitches, strict=False) if pitch != GABLE)
    verge = _most_common(length for length, pitch in zip(each, pitches, strict=False) if pitch == GABLE)
    heights = list_of(table, "eaves_height")

    def wall(at: int) -> WallTyped:
        pitch, over, height = _at(pitches, at, common), _at(each, at, None), _at(heights, at, GABLE)
        gable = pitch == GABLE
        own = not gable and pitch != common
        return WallTyped(
            stands=Stands.GABLE if gable else Stands.OWN if own else Stands.SLOPE,
            pitch=pitch_said(pitch) if own else "",
            overhang="" if over is None or over == (verge if gable else shared) else shown_length(over),
            height="" if height == GABLE else shown_length(height),
        )

    name = table.get("name")
    typed = OutlineTyped(
        name=name if isinstance(name, str) else None,
        pitch=common,
        overhang=shown_length(shared if each else overhangs) or None,
        verge_overhang=shown_length(verge if each else table.get("verge_overhang")) or None,
        rafter_spacing=shown_length(table.get("rafter_spacing")) or None,
        cheeks=table.get("cheeks") == "allow",
    )
    if len(corners) < 3:
        return typed
    return with_corners(replace(typed, walls=tuple(map(wall, range(len(corners))))), corners, unit=unit)


def table_of_outline(typed: OutlineTyped, walk: Walk, *, base: Mapping[str, Any], unit: LengthUnit) -> dict[str, Any]:
    """The table with what was typed. What was not changed stays as it was written; courtyards always do."""
    before = outline_of_table(base, unit=unit)
    same_walls = [(wall.length, wall.turn, wall.angle) for wall in typed.walls] == [
        (wall.length, wall.turn, wall.angle) for wall in before.walls
    ]
    order = range(len(typed.walls))
    outline = base.get("outline")
    if walk.outline is not None and (walk.turned_round or not (same_walls and outline)):
        order = order[::-1] if walk.turned_round else order
        outline = [_corner(walk.outline.corners_mm[at]) for at in corner_order(len(order), turned=walk.turned_round)]
    return with_keys(
        base,
        {
            "name": typed.name,
            "outline": outline,
            "rafter_spacing": typed.rafter_spacing,
            "cheeks": "allow" if typed.cheeks else None if base.get("cheeks") == "allow" else base.get("cheeks"),
            "pitch": _pitches(typed, before, order, base),
            "eaves_height": _heights(typed, before, order, base),
            **_overhangs(typed, before, order, base),
        },
    )


def corner_order(count: int, *, turned: bool) -> tuple[int, ...]:
    """Which typed corner stands where in the table: the first stays first when the outline is turned round.

    >>> corner_order(4, turned=True)
    (0, 3, 2, 1)
    """
    return (0, *range(count - 1, 0, -1)) if turned else tuple(range(count))


def _pitches(typed: OutlineTyped, before: OutlineTyped, order: Sequence[int], base: Mapping[str, Any]) -> list[Any]:
    was = list_of(base, "pitch")

    def pitch(at: int) -> Any:  # noqa: ANN401 - a text, or a table of two lengths
        wall = typed.walls[at]
        match wall.stands:
            case Stands.GABLE:
                return GABLE
            case Stands.SLOPE:
                return _as_it_was(typed.pitch, before.pitch)
            case Stands.OWN:
                return _as_it_was(wall.pitch, was[at] if at < len(was) else None)

    courtyards = [
        _as_it_was(typed.pitch, before.pitch) if each == before.pitch else each for each in was[len(before.walls) :]
    ]
    return [*map(pitch, order), *courtyards]


def _overhangs(
    typed: OutlineTyped, before: OutlineTyped, order: Sequence[int], base: Mapping[str, Any]
) -> dict[str, Any]:
    """One overhang for all and one for verges; or one for each wall where any has its own."""
    was = base.get("overhang")
    rest = was[len(before.walls) :] if isinstance(was, list) else []
    if not rest and not any(wall.overhang for wall in typed.walls):
        return {"overhang": typed.overhang, "verge_overhang": typed.verge_overhang}

    def over(at: int) -> str:
        wall = typed.walls[at]
        return wall.overhang or (typed.verge_overhang if wall.stands is Stands.GABLE else typed.overhang) or "0 mm"

    holes = sum(len(ring) for ring in list_of(base, "holes") if isinstance(ring, list))
    courtyards = rest or [typed.overhang or "0 mm"] * holes
    return {"overhang": [*map(over, order), *courtyards], "verge_overhang": None}


def _heights(typed: OutlineTyped, before: OutlineTyped, order: Sequence[int], base: Mapping[str, Any]) -> Any:  # noqa: ANN401
    was = base.get("eaves_height")
    rest = was[len(before.walls) :] if isinstance(was, list) else []
    if not rest and not any(wall.height for wall in typed.walls):
        return None if isinstance(was, list) else was
    pitches = list_of(base, "pitch")[len(before.walls) :]
    courtyards = rest or [GABLE if pitch == GABLE else "0 mm" for pitch in pitches]
    return [
        *(GABLE if (wall := typed.walls[at]).stands is Stands.GABLE else wall.height or "0 mm" for at in order),
        *courtyards,
    ]


def _as_it_was(typed: Any, was: Any) -> Any:  # noqa: ANN401
    """The value as the document wrote it, when what is typed says the same."""
    return was if was is not None and pitch_said(was) == pitch_said(typed) else typed


def _corner(corner: Point) -> list[str]:
    """A corner as a job file writes it, to a tenth of a millimetre."""
    return [f"{number_written(round(part, 1))} mm" for part in corner]


def _corners(table: Mapping[str, Any]) -> tuple[Point, ...]:
    """The corners; none when one of them cannot be read."""
    corners: list[Point] = []
    for corner in list_of(table, "outline"):
        if not isinstance(corner, list) or len(corner) != 2:
            return ()
        try:
            x_mm, y_mm = (float(read_length_mm(shown_length(part))) for part in corner)
        except (LengthUnclear, OverflowError):
            return ()
        corners.append((x_mm, y_mm))
    return tuple(corners)


def _at(values: Sequence[Any], at: int, otherwise: Any) -> Any:  # noqa: ANN401
    return values[at] if at < len(values) else otherwise


def _most_common(values: Iterable[Any]) -> Any:  # noqa: ANN401
    """The value that most have; of equals the first. None of none."""
    written = [json.dumps(value, sort_keys=True, default=str) for value in values]
    return json.loads(Counter(written).most_common(1)[0][0]) if written else None
