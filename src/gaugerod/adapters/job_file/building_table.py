"""A whole building as it is written: its plan, and what stands on each wall."""

from collections.abc import Iterator
from dataclasses import replace
from enum import StrEnum
from typing import Annotated

from pydantic import BeforeValidator, Field

from gaugerod.adapters.job_file.allowed import MOST_CORNERS_COUNT, MOST_HOLES_COUNT
from gaugerod.adapters.job_file.fields import RafterSpacing, Words
from gaugerod.adapters.job_file.part import Part
from gaugerod.adapters.job_file.plan_fields import GABLE, Corner, EavesHeights, OneOverhang, Overhangs, WallPitch
from gaugerod.adapters.job_file.refusing import refuse
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.geometry.eaves_line import eaves_line_mm
from gaugerod.geometry.outline_faults import outline_faults
from gaugerod.geometry.plan_outline import GableWall, PitchedWall, PlanOutline, Wall
from gaugerod.geometry.polygon import Point

Hole = Annotated[list[Corner], Field(max_length=MOST_CORNERS_COUNT)]


class Cheeks(StrEnum):
    """Where eaves in one line part: ask, or put in an upright cheek and say so."""

    ASK = "ask"
    ALLOW = "allow"


def _refused(value: object) -> None:
    raise refuse(
        Fault(
            field="",
            given=str(value)[:60],
            allowed="nothing: a slope that changes pitch part-way up is not covered for a building on plan",
            do="Take the key out and write the slope as two [[slope]] tables, below and above the change, each measured by tape.",
        )
    )


NotYet = Annotated[None, BeforeValidator(_refused)]
"""A key that is known and not covered: it is refused with what to do instead."""


class BuildingTable(Part):
    """A whole building: every slope, hip, valley and ridge follows from its plan."""

    name: Words = Field(description="What the building is called; its slopes are numbered after it.")
    outline: list[Corner] = Field(
        max_length=MOST_CORNERS_COUNT,
        description="Every corner of the wall line on plan, counter-clockwise, from a place of your choosing.",
    )
    holes: list[Hole] = Field(
        default=[], max_length=MOST_HOLES_COUNT, description="The corners of each courtyard, clockwise."
    )
    pitch: list[WallPitch] = Field(
        description="What stands on each wall, from the first corner to the second and so on, "
        "the outline first and then each hole: the pitch of its slope, or gable."
    )
    overhang: Overhangs = Field(
        default=0.0,
        description="Wall line out to the outer face of the fascia, on the level: one for all eaves, or one for each wall, "
        "at a gable that of the verge.",
    )
    verge_overhang: OneOverhang | None = Field(
        default=None, description="Wall line out to the end of the roof structure at a gable. Left out: nothing."
    )
    eaves_height: EavesHeights = Field(
        default=0.0,
        description="Height of the eaves over any one level: one for all, or one for each wall with gable at a gable.",
    )
    cheeks: Cheeks = Field(
        default=Cheeks.ASK,
        description="Where eaves in one line part because pitch or height differ: ask, "
        "or allow an upright cheek and say where it stands.",
    )
    rafter_spacing: RafterSpacing | None = Field(
        default=None, description="Rafter to rafter, centre to centre: settles the batten section."
    )
    change_of_pitch: NotYet = Field(
        default=None,
        description="Not covered: a sprocket or a mansard is written as two slopes, each measured by tape.",
    )

    def plan(self) -> PlanOutline:
        """The building on plan. Scope: a table without faults."""
        return PlanOutline(outer_mm=tuple(self.outline), walls=tuple(self._walls()), holes_mm=self._holes_mm())

    def _walls(self) -> Iterator[Wall]:
        for at, pitch in enumerate(self.pitch):
            each_mm = self.overhang[at] if isinstance(self.overhang, list) else None
            height_mm = self.eaves_height[at] if isinstance(self.eaves_height, list) else self.eaves_height
            if pitch == GABLE:
                yield GableWall(overhang_mm=(self.verge_overhang or 0.0) if each_mm is None else each_mm)
            else:
                yield PitchedWall(
                    pitch_deg=pitch,
                    eaves_height_mm=height_mm or 0.0,
                    overhang_mm=self._one_overhang_mm() if each_mm is None else each_mm,
                )

    def _one_overhang_mm(self) -> float:
        return 0.0 if isinstance(self.overhang, list) else self.overhang

    def _holes_mm(self) -> tuple[tuple[Point, ...], ...]:
        return tuple(tuple(hole) for hole in self.holes)

    def faults(self) -> Iterator[Fault]:
        """What cannot be true of this plan; fields counted from the building."""
        counts = list(self._count_faults())
        yield from counts
        if counts:
            yield from _at_the_door(outline_faults(self.outline, holes=self.holes), self)
            return
        try:
            eaves_line_mm(self.plan())
        except InputRefused as refused:
            yield from _at_the_door(refused.faults, self)

    def _count_faults(self) -> Iterator[Fault]:
        """Lists that should have one entry for each wall, and what is said twice."""
        sides = sum(map(len, (self.outline, *self.holes)))
        allowed = f"one for each wall: {sides}"
        for field, each in (("pitch", self.pitch), ("overhang", self.overhang), ("eaves_height", self.eaves_height)):
            if isinstance(each, list) and len(each) != sides:
                yield Fault(field, f"{len(each)} of them", allowed, "Count the sides: each goes with one.")
        if isinstance(self.overhang, list) and self.verge_overhang is not None:
            do = "Take out verge_overhang: the list says the overhang at each gable."
            yield Fault("verge_overhang", f"{self.verge_overhang:g} mm", "overhang as one length beside it", do)
        if isinstance(self.eaves_height, list):
            for at, (pitch, height_mm) in enumerate(zip(self.pitch, self.eaves_height, strict=False)):
                if (pitch == GABLE) != (height_mm is None):
                    given, allowed = ("gable", "a height") if height_mm is None else (f"{height_mm:g} mm", "gable")
                    yield Fault(f"eaves_height[{at}]", given, allowed, f"Make it agree with pitch[{at}].")


def _at_the_door(faults: tuple[Fault, ...], building: BuildingTable) -> Iterator[Fault]:
    """The faults of a plan under the names that the file gives its fields."""
    for fault in faults:
        yield replace(fault, field=_field_at_the_door(fault.field, each=isinstance(building.overhang, list)))


def _field_at_the_door(field: str, *, each: bool) -> str:
    """The field of a plan as the file writes it.

    >>> _field_at_the_door("walls[2].overhang", each=True), _field_at_the_door("outline.hole[0][1]", each=False)
    ('overhang[2]', 'holes[0][1]')
    """
    if field.startswith("outline.hole"):
        return field.replace("outline.hole", "holes")
    if field.startswith("eaves line"):
        return "overhang"
    if field.startswith("walls["):
        number, _, what = field.removeprefix("walls[").partition("].")
        return what if what != "pitch" and not each else f"{what}[{number}]"
    return "pitch" if field == "walls" else field
