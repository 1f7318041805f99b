"""Slopes as they are written: measured by tape, or given by their outline."""

from collections.abc import Sequence
from itertools import pairwise
from typing import Annotated

from pydantic import BeforeValidator, Discriminator, Field, Tag

from gaugerod.adapters.job_file.allowed import (
    MOST_CORNERS_COUNT,
    MOST_MARKS_COUNT,
    MOST_NAILED_COUNT,
    MOST_OPENINGS_COUNT,
    MOST_RAFTERS_COUNT,
)
from gaugerod.adapters.job_file.fields import OpeningSize, Pitch, RafterSpacing, RoofLength, RoofPlace, Words
from gaugerod.adapters.job_file.part import Part
from gaugerod.adapters.job_file.plan_fields import Corner, NamedEdge
from gaugerod.edges.wished import OpeningMade
from gaugerod.geometry.polygon import Point
from gaugerod.job.model import BottomKind, TopKind
from gaugerod.setting_out.across import SideKind


class RafterTable(Part):
    """A rafter measured at a place along the eaves."""

    at: RoofPlace | None = Field(
        default=None,
        description="From the left end of the roof structure, along the eaves. "
        "Left out of all: they are spread evenly from end to end.",
    )
    length: RoofLength = Field(description="Outer face of the fascia to the apex, up the slope.")


def _bare_length(value: object) -> object:
    """A length alone is a rafter with no place of its own."""
    return value if isinstance(value, dict) else {"length": value}


Rafter = Annotated[RafterTable, BeforeValidator(_bare_length, json_schema_input_type=RoofLength | RafterTable)]


class DiagonalsTable(Part):
    """The diagonals of the slope: they show whether it is square."""

    from_left: RoofLength | None = Field(default=None, description="Left end of the eaves to right end of the ridge.")
    from_right: RoofLength | None = Field(default=None, description="Right end of the eaves to left end of the ridge.")


class OpeningTable(Part):
    """A rooflight, chimney or other opening in the slope."""

    name: Words = Field(description="What it is.")
    from_left: RoofPlace = Field(description="Left end of the roof structure to its left side, along the eaves.")
    up_slope: RoofPlace = Field(description="Outer face of the fascia to its lower edge, up the slope.")
    width: OpeningSize = Field(description="Along the eaves.")
    height: OpeningSize = Field(description="Up the slope.")
    made: OpeningMade | None = Field(
        default=None,
        description="What stands in it: a chimney, dressed in lead, or a window with its own flashing kit. "
        "Left out: its flashing is not counted.",
    )


class NailedTable(Part):
    """Battens already nailed, measured at one place."""

    at: RoofPlace = Field(description="From the left end of the roof structure, along the eaves.")
    marks: list[RoofPlace] = Field(
        min_length=1,
        max_length=MOST_MARKS_COUNT,
        description="Top edge of every batten nailed, from the eaves up, each measured from the outer face of the fascia.",
    )


def widest_mm(rafters_at_mm: Sequence[float], spacing_mm: float | None) -> float | None:
    """The spacing that settles the batten: the widest gap between rafters measured one by one, else the one stated."""
    return max((right - left for left, right in pairwise(rafters_at_mm)), default=spacing_mm)


class SlopeTable(Part):
    """One slope, measured by tape."""

    name: Words = Field(description="What this slope is called: rear, front, porch.")
    pitch: Pitch = Field(description="The pitch of the rafters.")
    across: RoofLength = Field(
        description="Along the eaves, left end to right end of the roof structure, as you look at the slope."
    )
    rafters: list[Rafter] = Field(
        min_length=1,
        max_length=MOST_RAFTERS_COUNT,
        description="Outer face of the fascia to apex, left to right: "
        "lengths evenly spaced from end to end, or each with its place.",
    )
    ridge: RoofLength | None = Field(default=None, description="Along the ridge, end to end.")
    diagonals: DiagonalsTable = Field(default_factory=DiagonalsTable, description="Both diagonals, if you can.")
    left: SideKind = Field(description="What stands at the left side.")
    right: SideKind = Field(description="What stands at the right side.")
    bottom: BottomKind = Field(default=BottomKind.EAVES, description="What stands at the foot.")
    top: TopKind = Field(description="What stands at the head.")
    rafter_spacing: RafterSpacing | None = Field(
        default=None, description="Rafter to rafter, centre to centre: settles the batten section."
    )
    rafters_at: list[RoofPlace] = Field(
        default=[],
        max_length=MOST_RAFTERS_COUNT,
        description="The middle of every rafter along the eaves, left to right, where they are not even.",
    )
    opening: list[OpeningTable] = Field(
        default=[], max_length=MOST_OPENINGS_COUNT, description="Openings in the slope."
    )
    nailed: list[NailedTable] = Field(
        default=[],
        max_length=MOST_NAILED_COUNT,
        description="Battens already nailed: they are kept, and the rest is set out from the last of them.",
    )

    def rafter_spacing_mm(self) -> float | None:
        """Centre to centre: the widest gap where every rafter was measured."""
        return widest_mm(self.rafters_at, self.rafter_spacing)

    def stations_mm(self) -> list[tuple[float, float]]:
        """Every rafter with its place: lengths without one are spread evenly from end to end."""
        steps = max(len(self.rafters) - 1, 1)
        return [
            (self.across * index / steps if rafter.at is None else rafter.at, rafter.length)
            for index, rafter in enumerate(self.rafters)
        ]


class OutlinedSlopeTable(Part):
    """One slope, given by its outline in its own plane."""

    name: Words = Field(description="What this slope is called: rear, front, porch.")
    pitch: Pitch = Field(description="The pitch of the slope.")
    outline: list[Corner] = Field(
        max_length=MOST_CORNERS_COUNT,
        description="Every corner of the roof structure, counter-clockwise: x along the eaves, y up the slope.",
    )
    edges: list[NamedEdge] = Field(
        max_length=MOST_CORNERS_COUNT,
        description="What stands at each side of the outline, from the first corner to the second and so on.",
    )
    rafter_spacing: RafterSpacing | None = Field(
        default=None, description="Rafter to rafter, centre to centre: settles the batten section."
    )
    rafters_at: list[RoofPlace] = Field(
        default=[],
        max_length=MOST_RAFTERS_COUNT,
        description="The middle of every rafter along the eaves, left to right, where they are not even.",
    )
    opening: list[OpeningTable] = Field(
        default=[],
        max_length=MOST_OPENINGS_COUNT,
        description="Openings in the slope, measured from the left end of its lowest eaves.",
    )

    def rafter_spacing_mm(self) -> float | None:
        """Centre to centre: the widest gap where every rafter was measured."""
        return widest_mm(self.rafters_at, self.rafter_spacing)

    def origin_mm(self) -> Point:
        """The left end of the lowest eaves. Scope: a table without faults."""
        count = len(self.outline)
        ends = [(self.outline[at], self.outline[(at + 1) % count]) for at in range(count)]
        eaves = [end for end, edge in zip(ends, self.edges, strict=True) if edge is NamedEdge.EAVES]
        return min(eaves, key=lambda end: end[0][1] + end[1][1])[0]

    def top(self) -> TopKind:
        """What stands at the head: a ridge, unless a mono-ridge is named or only a wall stands up there."""
        if NamedEdge.MONO_RIDGE in self.edges:
            return TopKind.MONO_RIDGE
        highest_mm = max(y for _, y in self.outline)
        count = len(self.outline)
        heads = {
            edge
            for at, edge in enumerate(self.edges)
            if highest_mm == self.outline[at][1] == self.outline[(at + 1) % count][1]
        }
        return TopKind.ABUTMENT if heads == {NamedEdge.ABUTMENT} else TopKind.RIDGE


BY_TAPE, BY_OUTLINE = "by tape", "by outline"
"""The two ways to give a slope."""


def given_how(slope: object) -> str:
    """Which of the two ways a slope is given. With figures of both it is taken as taped, and the outline is one too many."""
    if isinstance(slope, dict) and slope.keys() & {"outline", "edges"} and not slope.keys() & {"across", "rafters"}:
        return BY_OUTLINE
    return BY_TAPE


EitherSlope = Annotated[
    Annotated[SlopeTable, Tag(BY_TAPE)] | Annotated[OutlinedSlopeTable, Tag(BY_OUTLINE)], Discriminator(given_how)
]
