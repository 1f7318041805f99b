"""What cannot be in the figures of edges: every fault of the ask, found together."""

from collections.abc import Iterator
from math import isfinite

from gaugerod.basis.errors import Fault
from gaugerod.edges.ask import EdgeOpening, EdgesAsk
from gaugerod.edges.wished import AirUnit, EavesWished, LineUnit, RidgeWished, ValleyWished, VergeWished
from gaugerod.standards.edges import EdgeFigure, edge_figure

_ABOVE_NOTHING = "above nothing"
_MEASURE = "Measure it again."


def ask_faults(ask: EdgesAsk) -> Iterator[Fault]:
    """Faults of the lines, and of what was said of ridges, verges, valleys, walls, eaves and air units, and of openings."""
    for line in ask.lines:
        yield from _length(f"{line.name}.length", line.length_mm)
        if not isfinite(line.past_ends_mm):
            yield Fault(f"{line.name}.past_ends", f"{line.past_ends_mm:g} mm", "a length", _MEASURE)
        if any(count < 0 for count in line.courses_count):
            yield Fault(f"{line.name}.courses", str(min(line.courses_count)), "none or more", "Count them again.")
    yield from _ridge(ask.wished.ridge)
    yield from _verge(ask.wished.verge)
    yield from _valley(ask.wished.valley)
    if ask.wished.wall is not None:
        yield from _length("edges.wall.side_cover", ask.wished.wall.side_cover_mm)
    yield from _eaves(ask, ask.wished.eaves)
    for level, unit in (("low", ask.wished.air.low), ("high", ask.wished.air.high)):
        yield from _air(f"edges.air.{level}", unit)
    for opening in ask.openings:
        yield from _opening(opening)


def _ridge(wished: RidgeWished | None) -> Iterator[Fault]:
    if wished is None:
        return
    for name, unit in (("unit", wished.ridge), ("mono_unit", wished.mono_ridge), ("hip_unit", wished.hip)):
        if unit is not None:
            yield from _line_unit(f"edges.ridge.{name}", unit)


def _line_unit(field: str, unit: LineUnit) -> Iterator[Fault]:
    yield from _length(f"{field}.length", unit.length_mm)
    yield from _length(f"{field}.cover", unit.cover_mm)
    if unit.cover_mm > unit.length_mm:
        yield Fault(
            f"{field}.cover",
            f"{unit.cover_mm:g} mm",
            f"no more than its length, {unit.length_mm:g} mm",
            "A unit gains no more along the line than it is long.",
        )
    if unit.fixings_count < 0:
        yield Fault(f"{field}.fixings", str(unit.fixings_count), "none or more", "Count them again.")
    if unit.mass_kg is not None and not (isfinite(unit.mass_kg) and unit.mass_kg > 0):
        yield Fault(f"{field}.mass", f"{unit.mass_kg:g} kg", _ABOVE_NOTHING, "Weigh it again.")


def _verge(wished: VergeWished | None) -> Iterator[Fault]:
    if wished is not None:
        yield from _length("edges.verge.undercloak", wished.undercloak_length_mm)
        yield from _length("edges.verge.bed", wished.bed_mm)


def _valley(wished: ValleyWished | None) -> Iterator[Fault]:
    if wished is None:
        return
    yield from _length("edges.valley.clear", wished.clear_mm)
    yield from _length("edges.valley.girth", wished.girth_mm)
    yield from _length("edges.valley.liner_length", wished.liner_length_mm)
    lap_mm, long_mm = wished.liner_lap_mm, wished.liner_length_mm
    if lap_mm is None:
        return
    if not (isfinite(lap_mm) and lap_mm >= 0):
        yield Fault("edges.valley.liner_lap", f"{lap_mm:g} mm", "nothing or more", _MEASURE)
    elif long_mm is not None and 0 < long_mm <= lap_mm:
        yield Fault(
            "edges.valley.liner_lap",
            f"{lap_mm:g} mm",
            f"less than the liner's length, {long_mm:g} mm",
            "Such a liner would never get up the valley.",
        )


def _opening(opening: EdgeOpening) -> Iterator[Fault]:
    name = f"{opening.slope}, {opening.name}"
    yield from _length(f"{name}.width", opening.width_mm)
    yield from _length(f"{name}.height", opening.height_mm)
    if opening.courses_count < 0:
        yield Fault(f"{name}.courses", str(opening.courses_count), "none or more", "Count them again.")


def _eaves(ask: EdgesAsk, wished: EavesWished | None) -> Iterator[Fault]:
    if wished is None:
        return
    if wished.gap_mm is not None and not (isfinite(wished.gap_mm) and wished.gap_mm >= 0):
        yield Fault("edges.eaves.gap", f"{wished.gap_mm:g} mm", "nothing or more", _MEASURE)
    yield from _length("edges.eaves.tray_length", wished.tray_length_mm)
    lap = edge_figure(ask.edition, EdgeFigure.EAVES_TRAY_LAP)
    if wished.tray_length_mm is not None and 0 < wished.tray_length_mm <= lap.value:
        yield Fault(
            "edges.eaves.tray_length",
            f"{wished.tray_length_mm:g} mm",
            f"more than its lap, {lap.value:g} mm",
            "Give the length of one whole tray.",
        )


def _air(field: str, unit: AirUnit | None) -> Iterator[Fault]:
    if unit is None:
        return
    if not (isfinite(unit.area_mm2) and unit.area_mm2 > 0):
        yield Fault(f"{field}.area", f"{unit.area_mm2:g} mm²", _ABOVE_NOTHING, "Read its net free area again.")
    yield from _length(f"{field}.length", unit.length_mm)


def _length(field: str, length_mm: float | None) -> Iterator[Fault]:
    if length_mm is not None and not (isfinite(length_mm) and length_mm > 0):
        yield Fault(field, f"{length_mm:g} mm", _ABOVE_NOTHING, _MEASURE)
