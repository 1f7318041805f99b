"""The covering as it is written in a job file."""

from dataclasses import replace
from typing import Self

from pydantic import Field, model_validator

from gaugerod.adapters.job_file.double_lap_record import double_lap_names, double_lap_record, refuse_double_lap_keys
from gaugerod.adapters.job_file.fields import (
    STATED,
    CatalogueName,
    Mass,
    MeasuredFigure,
    Pitch,
    Share,
    SlateCount,
    SlateRun,
    UnitPlace,
    UnitSize,
    Words,
    YesOrNo,
)
from gaugerod.adapters.job_file.part import Part
from gaugerod.adapters.job_file.refusing import refuse
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.coverings.catalogue import covering, override
from gaugerod.coverings.double_lap import Heap, MadeTo, Nailing
from gaugerod.coverings.single_lap import Bond, Form, Material
from gaugerod.coverings.single_lap_fields import single_lap_from
from gaugerod.job.model import Covering

RECORD_FIELD = {
    "length": "length_mm",
    "width": "width_mm",
    "hanging_length": "hanging_length_mm",
    "cover_closed": "cover_closed_mm",
    "cover_open": "cover_open_mm",
    "headlap_min": "headlap_min_mm",
    "headlap_max": "headlap_max_mm",
    "pitch_min": "pitch_min_deg",
    "mass": "mass_kg",
    "high_points": "high_points_mm",
}
"""Where the file's key and the record's field differ: the field says its unit."""


class HeapTable(Part):
    """One heap of random slates: all of one length. Counted with their average width, or measured by the run."""

    length: UnitSize = Field(description="Of the shortest slate of the heap, head to tail.")
    slates: SlateCount | None = Field(default=None, description="How many slates.")
    average_width: UnitSize | None = Field(default=None, description="Their average width.")
    run: SlateRun | None = Field(default=None, description="Or: the length of a row of them laid edge to edge.")

    @model_validator(mode="after")
    def _counted_or_measured(self) -> Self:
        counted = self.slates is not None and self.average_width is not None
        if counted == (self.run is not None):
            given = "both" if counted else "neither"
            raise refuse(
                Fault(
                    field="",
                    given=given,
                    allowed="slates with average_width, or run",
                    do="Count the slates and measure their average width, or lay them in a row and measure that.",
                )
            )
        return self

    def heap(self) -> Heap:
        """The heap."""
        return Heap(
            length_mm=self.length,
            slates_count=self.slates,
            average_width_mm=self.average_width,
            run_mm=self.run,
        )


class CoveringTable(Part):
    """What is to be laid: a catalogue entry with any figure put right, your own tile as gaugerod measure writes it, or
    random slates as they lie on the ground.
    """

    from_: CatalogueName | None = Field(
        default=None,
        alias="from",
        description="The catalogue entry to start from: see gaugerod coverings. Left out: every figure is given here.",
    )
    title: Words | None = Field(default=None, description="What the unit is called on the sheets.")
    form: Form | None = Field(default=None, description="The shape of the face.")
    material: Material | None = Field(default=None, description="What it is made of.")
    length: UnitSize | None = Field(default=None, description="Overall length, head to tail.")
    width: UnitSize | None = Field(default=None, description="Overall width, side to side: more than it covers.")
    hanging_length: UnitSize | None = Field(default=None, description="Bearing face of the nibs to the tail.")
    cover_closed: UnitSize | None = Field(default=None, description="Width one unit gains when pushed up tight.")
    cover_open: UnitSize | None = Field(default=None, description="Width one unit gains when pulled fully open.")
    headlap_min: UnitSize | None = Field(default=None, description="Least lap over the course below.")
    headlap_max: UnitSize | None = Field(default=None, description="Greatest lap, where heads foul or nail holes show.")
    pitch_min: Pitch | None = Field(default=None, description="Least pitch.")
    mass: Mass | None = Field(default=None, description="Mass of one unit in kg.")
    high_points: list[UnitPlace] | None = Field(
        default=None, description="Where the crowns of the profile are, from the left edge of the unit."
    )
    half_unit: YesOrNo | None = Field(default=None, description="Is there a half-width companion?")
    unit_and_a_half: YesOrNo | None = Field(default=None, description="Is there a companion one and a half units wide?")
    bonds: list[Bond] | None = Field(default=None, description="The bonds it may be laid in, the usual one first.")
    eaves_length: UnitSize | None = Field(
        default=None, description="Length of the short eaves and tops tile of plain tiles."
    )
    made_to: MadeTo | None = Field(
        default=None,
        description="Clay plain tiles: the standard their maker declares their sizes to. Left out: not known, so they need "
        "the steeper least pitch.",
    )
    nailing: Nailing | None = Field(default=None, description="Slates: nailed near the middle or near the head.")
    heap: list[HeapTable] | None = Field(
        default=None, min_length=1, max_length=40, description="Random slates: one heap for each length."
    )
    broken: Share | None = Field(default=None, description="Random slates: the part that will not come to be laid.")
    joint: UnitPlace | None = Field(default=None, description="Random slates: gap between neighbours of a course.")
    measured: list[MeasuredFigure] = Field(
        default=[], description="Which of these figures were measured on the tiles themselves."
    )

    @model_validator(mode="after")
    def _hangs_together(self) -> Self:
        try:
            self.record()
        except InputRefused as refused:
            raise refuse(
                *(replace(fault, field=fault.field.removeprefix("covering.")) for fault in refused.faults)
            ) from None
        return self

    def record(self) -> Covering:
        """The covering's record. Raises InputRefused with every fault."""
        stated = self.model_dump(
            exclude_none=True, exclude={"from_", "measured", "heap"}, exclude_unset=True, mode="json"
        )
        values = {RECORD_FIELD.get(key, key): value for key, value in stated.items()}
        measured = frozenset(RECORD_FIELD.get(figure, figure) for figure in self.measured)
        if self.from_ in double_lap_names():
            heaps = tuple(heap.heap() for heap in self.heap or ())
            return double_lap_record(self.from_, values, heaps=heaps, measured=measured)
        refuse_double_lap_keys(stated, heaps=self.heap is not None)
        if self.from_ is None:
            named = {"name": "own-tile", "title": "Own tile", "bonds": ["straight"], **values}
            return single_lap_from(named, citation=STATED, measured=measured)
        record = override(covering(self.from_), values)
        return replace(record, measured=record.measured | measured)
