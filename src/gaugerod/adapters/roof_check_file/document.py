"""The roof file as it is written: every table and field, with what it means."""

from typing import Annotated, Any, Self

from pydantic import ConfigDict, Field, model_validator

from gaugerod.adapters.job_file.allowed import MOST_MARKS_COUNT, MOST_NAILED_COUNT
from gaugerod.adapters.job_file.covering_table import CoveringTable
from gaugerod.adapters.job_file.fields import (
    EdgeBand,
    Pitch,
    RidgeCover,
    RoofLength,
    RoofPlace,
    UnitSize,
    Words,
    YesOrNo,
    length_of,
)
from gaugerod.adapters.job_file.part import Part
from gaugerod.adapters.job_file.refusing import refuse
from gaugerod.adapters.roof_check_file.allowed import MARGIN, OVERHANG
from gaugerod.as_built.ask import Covering, RoofTop
from gaugerod.basis.errors import Fault
from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.double_lap import RandomSlates
from gaugerod.standards.edition import Edition, Exposure

Margin = Annotated[float, *length_of(MARGIN)]
Overhang = Annotated[float, *length_of(OVERHANG)]


class RoofTable(Part):
    """Which slope is checked, and by which rules."""

    title: Words = Field(description="What the check is called; it heads the record.")
    name: Words = Field(description="What the slope is called: rear, front, porch.")
    edition: Edition = Field(default=Edition.GB, description="Which set of rules answers.")
    exposure: Exposure = Field(description="Driving rain at the site: look the site up on the map of your code.")
    show_lengths_in: LengthUnit = Field(
        default=LengthUnit.MM,
        description="The unit lengths are shown and marked in. "
        "Feet and inches are marked to a sixteenth, all else to a millimetre.",
    )
    pitch: Pitch = Field(description="The pitch of the rafters.")
    top: RoofTop = Field(default=RoofTop.RIDGE, description="What covers the heads of the top course.")
    finished: YesOrNo = Field(default=True, description="Is the slope covered to the top? false: the courses go on.")
    ridge_cover: RidgeCover | None = Field(
        default=None,
        description="How far the ridge unit, or the flashing at a wall, reaches down the slope from the apex.",
    )
    headlap: UnitSize | None = Field(
        default=None, description="The least lap of plain tiles or slates, where the maker or the job states it."
    )
    eaves_overhang: EdgeBand | None = Field(
        default=None,
        description="Tail past the outer face of the fascia, on the slope: [least, greatest], or one length.",
    )
    top_batten_from_apex: EdgeBand | None = Field(
        default=None, description="Top edge of the top batten below the apex."
    )


_BY_BATTENS: dict[str, Any] = {
    "required": ["marks"],
    "not": {"anyOf": [{"required": ["overhang"]}, {"required": ["margins"]}]},
}
_BY_MARGINS: dict[str, Any] = {"required": ["overhang", "margins"], "not": {"required": ["marks"]}}


class RodTable(Part):
    """One place measured: the battens, or the visible margins with the overhang they start from."""

    model_config = ConfigDict(json_schema_extra={"oneOf": [_BY_BATTENS, _BY_MARGINS]})

    at: RoofPlace = Field(description="From the left end of the roof structure, along the eaves.")
    rafter: RoofLength = Field(description="Outer face of the fascia to the apex, up the slope, at this place.")
    marks: list[RoofPlace] | None = Field(
        default=None,
        max_length=MOST_MARKS_COUNT,
        description="Top edge of every batten from the eaves up, each measured from the outer face of the fascia.",
    )
    overhang: Overhang | None = Field(
        default=None, description="Tail of the first course past the outer face of the fascia, tape on the slope."
    )
    margins: list[Margin] | None = Field(
        default=None,
        max_length=MOST_MARKS_COUNT,
        description="Tail of each course to the tail of the next, from the first course up.",
    )

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        if self.marks is not None and self.margins is None and self.overhang is None:
            return self
        if self.marks is None and self.margins is not None and self.overhang is not None:
            return self
        given = [name for name in ("marks", "overhang", "margins") if getattr(self, name) is not None]
        raise refuse(
            Fault(
                field="",
                given=" and ".join(given) or "neither",
                allowed="marks; or overhang and margins",
                do="Measure the battens from the fascia, or the overhang and then tail to tail: one way at one place.",
            )
        )


def _without_heaps(schema: dict[str, Any]) -> None:
    for key in ("heap", "broken", "joint"):
        del schema["properties"][key]


class OneLengthTable(CoveringTable):
    """What is laid: a catalogue entry with any figure put right, or your own tile. Every unit is of one length."""

    model_config = ConfigDict(json_schema_extra=_without_heaps)

    @model_validator(mode="after")
    def _of_one_length(self) -> Self:
        if isinstance(self.record(), RandomSlates):
            raise refuse(
                Fault(
                    field="from",
                    given=self.from_ or "random slates",
                    allowed="units of one length",
                    do="Random slates change length up the slope, so no margin shows their lap: measure each at the head.",
                )
            )
        return self

    def one_length(self) -> Covering:
        """The covering's record."""
        record = self.record()
        if isinstance(record, RandomSlates):
            raise AssertionError("random slates were refused")  # noqa: TRY004 - a fault of the program, not of its caller
        return record


class RoofFile(Part):
    """A roof to check: what was measured, and what covers it."""

    roof: RoofTable
    covering: OneLengthTable
    rod: list[RodTable] = Field(
        min_length=1, max_length=MOST_NAILED_COUNT, description="Every place measured, left to right."
    )
