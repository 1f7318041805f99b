"""The job file as it is written: every table and field, with what it means. The schema and the reference come from here."""

from dataclasses import replace
from typing import Self

from pydantic import ConfigDict, Field, model_validator

from gaugerod.adapters.job_file.allowed import MOST_BUILDINGS_COUNT, MOST_SLOPES_COUNT
from gaugerod.adapters.job_file.building_table import BuildingTable
from gaugerod.adapters.job_file.fields import (
    STATED,
    CatalogueName,
    Count,
    EdgeBand,
    Mass,
    MeasuredFigure,
    Pitch,
    RidgeCover,
    UnitPlace,
    UnitSize,
    Words,
    YesOrNo,
)
from gaugerod.adapters.job_file.part import Part
from gaugerod.adapters.job_file.refusing import refuse
from gaugerod.adapters.job_file.slope_tables import EitherSlope
from gaugerod.basis.errors import InputRefused
from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.catalogue import covering, override
from gaugerod.coverings.single_lap import Bond, Form, Material, SingleLapTile
from gaugerod.coverings.single_lap_fields import single_lap_from
from gaugerod.job.model import OverhangMeasured
from gaugerod.standards.edition import Edition, Exposure

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


class JobTable(Part):
    """What the job is, and which rules answer."""

    title: Words = Field(description="What the job is called; it heads every sheet.")
    edition: Edition = Field(default=Edition.GB, description="Which set of rules answers.")
    exposure: Exposure = Field(description="Driving rain at the site: look the site up on the map of your code.")
    show_lengths_in: LengthUnit = Field(
        default=LengthUnit.MM,
        description="The unit lengths are shown and marked in. "
        "Feet and inches are marked to a sixteenth, all else to a millimetre.",
    )


class CoveringTable(Part):
    """What is to be laid: a catalogue entry with any figure put right, or your own tile as gaugerod measure writes it."""

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

    def record(self) -> SingleLapTile:
        """The covering's record. Raises InputRefused with every fault."""
        stated = self.model_dump(exclude_none=True, exclude={"from_", "measured"}, exclude_unset=True, mode="json")
        values = {RECORD_FIELD.get(key, key): value for key, value in stated.items()}
        measured = frozenset(RECORD_FIELD.get(figure, figure) for figure in self.measured)
        if self.from_ is None:
            named = {"name": "own-tile", "title": "Own tile", "bonds": ["straight"], **values}
            return single_lap_from(named, citation=STATED, measured=measured)
        record = override(covering(self.from_), values)
        return replace(record, measured=record.measured | measured)


class SetOutTable(Part):
    """Bands and wishes of the setting out. What is left out, the edition answers, with its source."""

    eaves_overhang: EdgeBand | None = Field(
        default=None, description="Tail past the outer face of the fascia: [least, greatest], or one length."
    )
    overhang_measured: OverhangMeasured = Field(
        default=OverhangMeasured.ON_SLOPE,
        description="How that overhang is measured: with the tape laid on the slope, or on the level.",
    )
    top_batten_from_apex: EdgeBand | None = Field(
        default=None, description="Top edge of the top batten below the apex."
    )
    ridge_cover: RidgeCover | None = Field(
        default=None,
        description="How far the ridge unit, or the flashing at a wall, reaches down the slope from the apex.",
    )
    verge_overhang: EdgeBand | None = Field(
        default=None, description="Covering past the end of the roof structure at a verge."
    )
    abutment_set_back: EdgeBand | None = Field(default=None, description="Clear gap between the covering and a wall.")
    bond: Bond | None = Field(default=None, description="Straight or broken; left out: the usual one of the covering.")
    perps_every: Count = Field(default=3, description="How many units from one perp line to the next.")


class JobFile(Part):
    """A job: what was measured, what is to be laid, and what is wished."""

    model_config = ConfigDict(json_schema_extra={"anyOf": [{"required": ["slope"]}, {"required": ["building"]}]})

    job: JobTable
    covering: CoveringTable
    slope: list[EitherSlope] = Field(
        default=[], min_length=1, max_length=MOST_SLOPES_COUNT, description="Slopes measured one by one."
    )
    building: list[BuildingTable] = Field(
        default=[], min_length=1, max_length=MOST_BUILDINGS_COUNT, description="Whole buildings, by their plan."
    )
    set_out: SetOutTable = Field(default_factory=SetOutTable)
