"""The slope as far as the tape has been read: a drawing needs the eaves and one rafter, the rest as it comes."""

from collections.abc import Mapping
from math import isfinite
from typing import Any

from gaugerod.basis.errors import LengthUnclear
from gaugerod.basis.lengths import LengthUnit, read_length_mm, write_length
from gaugerod.geometry.taped_slope import SlopeShape, TapedSlope
from gaugerod.geometry.true_shape import true_shape
from gaugerod.job.in_words import sentence_in_unit
from gaugerod.setting_out.stations import Opening
from gaugerod.sheets.taped_drawing import taped_drawing
from gaugerod.web.drawn import markup
from gaugerod.web.form import list_of, table_of
from gaugerod.web.pages.slope.context import Check, Taped

_ROOM_MM = (120.0, 100.0)
_LEAST_MM, _GREATEST_MM = 100.0, 100_000.0
"""The same as the job file allows: what is outside stays undrawn, and the form says why when it is sent."""


def taped_so_far(table: Mapping[str, Any], *, unit: LengthUnit) -> Taped | None:
    """The drawing and what the figures say of each other; None when there is nothing to draw yet."""
    eaves_mm = _read_mm(table.get("across"))
    rafters = () if eaves_mm is None else _rafters(table, eaves_mm)
    if eaves_mm is None or not rafters:
        return None
    diagonals = table_of(table, "diagonals")
    taped = TapedSlope(
        eaves_mm=eaves_mm,
        rafters=rafters,
        ridge_mm=_read_mm(table.get("ridge")),
        diagonal_from_left_mm=_read_mm(diagonals.get("from_left")),
        diagonal_from_right_mm=_read_mm(diagonals.get("from_right")),
    )
    shape = true_shape(taped, where="the slope")
    if min(y for _, y in shape.outline_mm[2:]) <= 0:
        return None
    placed = taped_drawing(
        taped, shape, openings=_openings(table), unit=unit, room_width_mm=_ROOM_MM[0], room_height_mm=_ROOM_MM[1]
    )
    return Taped(
        drawing=markup(placed),
        says=_says(shape, unit),
        checks=tuple(
            Check(verdict=finding.verdict.value, says=sentence_in_unit(finding.says, unit))
            for finding in shape.findings
        ),
    )


def unread_lengths(table: Mapping[str, Any]) -> tuple[str, ...]:
    """What was typed for the eaves or a rafter and cannot be drawn, a sentence each: why nothing is shown.

    >>> unread_lengths({"across": "8.42", "rafters": ["4.9 m"]})
    ('Eaves: 8.42 could be 8.42 mm or 8.42 m; write the one that is meant.',)
    >>> unread_lengths({"across": "8.42 m", "rafters": ["4.9 m", "5 mm"]})
    ('Rafter: 5 mm is too short to be drawn; a slope is 0.1 to 100 m.',)
    """
    rows = [row.get("length") if isinstance(row, dict) else row for row in list_of(table, "rafters")]
    typed = [("Eaves", table.get("across")), *(("Rafter", row) for row in rows)]
    return tuple(
        _unread(called, text.strip())
        for called, text in typed
        if isinstance(text, str) and text.strip() and _read_mm(text) is None
    )


def _unread(called: str, text: str) -> str:
    try:
        too = "short" if float(read_length_mm(text)) < _LEAST_MM else "long"
    except LengthUnclear as unclear:
        return f"{called}: {unclear.text} {unclear.reason}."
    return f"{called}: {text} is too {too} to be drawn; a slope is 0.1 to 100 m."


def _says(shape: SlopeShape, unit: LengthUnit) -> tuple[str, ...]:
    lean_mm, taper_mm = shape.out_of_square_mm, shape.out_of_parallel_mm
    says = [f"{shape.area_mm2 / 1e6:.2f} m² of roof structure."]
    if taper_mm:
        longer = "right" if taper_mm > 0 else "left"
        size_mm = taper_mm if taper_mm > 0 else -taper_mm
        says.append(
            f"The {longer} rafter is {write_length(size_mm, unit)} longer: the eaves and the ridge are out of parallel."
        )
    if lean_mm <= -1 or lean_mm >= 1:
        way = "right" if lean_mm > 0 else "left"
        says.append(
            f"The left side leans {write_length(lean_mm if lean_mm > 0 else -lean_mm, unit)} to the {way} over its length."
        )
    return tuple(says)


def _rafters(table: Mapping[str, Any], eaves_mm: float) -> tuple[tuple[float, float], ...]:
    """Every rafter that can be read, with its place; evenly spread where none has a place."""
    rows = [row if isinstance(row, dict) else {"length": row} for row in list_of(table, "rafters")]
    lengths = [(row.get("at"), _read_mm(row.get("length"))) for row in rows]
    steps = max(len(lengths) - 1, 1)
    found: list[tuple[float, float]] = []
    for index, (place, length_mm) in enumerate(lengths):
        at_mm = eaves_mm * index / steps if place is None else _read_mm(place, least_mm=0.0)
        if length_mm is not None and at_mm is not None and 0 <= at_mm <= eaves_mm:
            found.append((at_mm, length_mm))
    found.sort()
    return tuple(found) if len({at for at, _ in found}) == len(found) else ()


def _openings(table: Mapping[str, Any]) -> tuple[Opening, ...]:
    openings: list[Opening] = []
    for row in list_of(table, "opening"):
        if not isinstance(row, dict):
            continue
        left_mm, up_mm = (_read_mm(row.get(key), least_mm=0.0) for key in ("from_left", "up_slope"))
        width_mm, height_mm = (_read_mm(row.get(key), least_mm=20.0) for key in ("width", "height"))
        if left_mm is None or up_mm is None or width_mm is None or height_mm is None:
            continue
        openings.append(
            Opening(
                name=str(row.get("name", "opening")),
                from_left_mm=left_mm,
                up_slope_mm=up_mm,
                width_mm=width_mm,
                height_mm=height_mm,
            )
        )
    return tuple(openings)


def _read_mm(value: Any, *, least_mm: float = _LEAST_MM) -> float | None:  # noqa: ANN401 - as typed, or from a file
    """The length, when it can be read and makes sense."""
    try:
        found_mm = float(read_length_mm(value)) if isinstance(value, str) else float(value)
    except (LengthUnclear, TypeError, ValueError, OverflowError):
        return None
    return found_mm if isfinite(found_mm) and least_mm <= found_mm <= _GREATEST_MM else None
