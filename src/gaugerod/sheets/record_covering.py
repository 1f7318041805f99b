"""The record of the covering in the hand-over record: every figure, and which of them were measured on the units themselves."""

from collections.abc import Iterator
from typing import assert_never

from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.job.model import Covering
from gaugerod.sheets.lengths_shown import bare_length, fine_length, unit_heading
from gaugerod.sheets.sheet import Block, Column, ColumnKind, Heading, Prose, Table

_LENGTHS = {
    "length_mm": "length, head to tail",
    "width_mm": "width, side to side",
    "hanging_length_mm": "hanging length, nibs to tail",
    "cover_closed_mm": "cover pushed up tight",
    "cover_open_mm": "cover pulled fully open",
    "headlap_min_mm": "least headlap",
    "headlap_max_mm": "greatest headlap",
    "sidelap_min_mm": "least sidelap",
    "eaves_length_mm": "eaves and top tile, length",
    "hole_below_mm": "nail hole below the head",
    "thickness_mm": "thickness",
    "joint_mm": "gap between neighbours",
}
"""The lengths of every kind of record, in the order they are read."""
_COMPANIONS = {"half_unit": "half unit", "unit_and_a_half": "unit and a half", "slate_and_a_half": "slate and a half"}


def covering_blocks(covering: Covering, *, unit: LengthUnit) -> Iterator[Block]:
    """The covering's figures in a table; of random slates, the heaps as they were counted."""
    measured = covering_measured(covering)
    yield Heading(text="The covering, and what was measured of it", kept_mm=50.0)
    yield Prose(text=_said(covering, measured))
    yield Table(
        columns=(
            Column(heading="Figure", share_ratio=2.4),
            Column(heading="Value", kind=ColumnKind.FIGURES, share_ratio=1.2),
            Column(heading="Come by", share_ratio=1.4),
        ),
        rows=tuple(
            (label, value, "● measured" if field in measured else "by its record")
            for field, label, value in _figures(covering, unit)
        ),
        beside_count=2,
    )
    if isinstance(covering, RandomSlates):
        yield _heaps(covering, unit)


def covering_measured(covering: Covering) -> frozenset[str]:
    """The fields that were measured on the user's own units. Heaps of random slates are counted where they lie."""
    match covering:
        case SingleLapTile() | PlainTile() | SizedSlate():
            return covering.measured
        case RandomSlates():
            return frozenset()
        case _ as unreachable:
            assert_never(unreachable)


def _said(covering: Covering, measured: frozenset[str]) -> str:
    what = f"{covering.title}, {covering.material.value.replace('-', ' ')}. Source of the record: {covering.citation}."
    if isinstance(covering, RandomSlates):
        return f"{what} Heaps as they were counted: hold them against the slates."
    if not measured:
        return f"{what} No figure was measured on the units themselves: check them against those delivered."
    return f"{what} Measured on the units themselves: the figures marked so."


def _figures(covering: Covering, unit: LengthUnit) -> Iterator[tuple[str, str, str]]:
    """Field, what it is, and its value."""
    for field, label in _LENGTHS.items():
        if hasattr(covering, field):
            length_mm = getattr(covering, field)
            yield field, label, "not known" if length_mm is None else fine_length(length_mm, unit)
    if not isinstance(covering, RandomSlates):
        mass_kg = covering.mass_kg
        yield "mass_kg", "mass of one", "not known" if mass_kg is None else f"{mass_kg:g} kg"
    if isinstance(covering, SingleLapTile | PlainTile):
        pitch_deg = covering.pitch_min_deg
        yield "pitch_min_deg", "least pitch", "not known" if pitch_deg is None else f"{pitch_deg:g}°"
    if isinstance(covering, SingleLapTile) and covering.high_points_mm:
        points = ", ".join(bare_length(point_mm, unit) for point_mm in covering.high_points_mm)
        yield "high_points_mm", f"high points from the left, {unit_heading(unit)}", points
    for field, label in _COMPANIONS.items():
        if hasattr(covering, field):
            yield field, label, "made" if getattr(covering, field) else "not made"
    if isinstance(covering, RandomSlates):
        yield "broken_ratio", "taken as broken or soft", f"{covering.broken_ratio * 100:g} %"


def _heaps(covering: RandomSlates, unit: LengthUnit) -> Table:
    figures = ColumnKind.FIGURES
    return Table(
        columns=(
            Column(heading="Heap: length", kind=figures),
            Column(heading="slates", kind=figures),
            Column(heading="average width", kind=figures),
            Column(heading="or, laid edge to edge", kind=figures),
        ),
        rows=tuple(
            (
                fine_length(heap.length_mm, unit),
                "–" if heap.slates_count is None else str(heap.slates_count),
                "–" if heap.average_width_mm is None else fine_length(heap.average_width_mm, unit),
                "–" if heap.run_mm is None else fine_length(heap.run_mm, unit),
            )
            for heap in covering.heaps
        ),
    )
