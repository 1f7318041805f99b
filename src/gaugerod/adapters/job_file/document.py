"""The job file as it is written: every table and field, with what it means. The schema and the reference come from here."""

from dataclasses import replace
from typing import Annotated, Self

from pydantic import BaseModel, ConfigDict, Field, model_validator

from gaugerod.adapters.job_file.fields import (
    STATED,
    CatalogueName,
    Count,
    EdgeBand,
    Mass,
    OpeningSize,
    Pitch,
    RafterSpacing,
    RidgeCover,
    RoofLength,
    RoofPlace,
    UnitPlace,
    UnitSize,
    Words,
    YesOrNo,
)
from gaugerod.adapters.job_file.refusing import refuse
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.catalogue import covering, override
from gaugerod.coverings.single_lap import Bond, Form, Material, SingleLapTile
from gaugerod.coverings.single_lap_fields import single_lap_from
from gaugerod.job.model import BottomKind, OverhangMeasured, TopKind
from gaugerod.setting_out.across import SideKind
from gaugerod.standards.edition import Edition, Exposure

RECORD_FIELDS = {
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


class Part(BaseModel):
    """A table of the job file. Unknown keys are refused."""

    model_config = ConfigDict(extra="forbid", arbitrary_types_allowed=True, use_attribute_docstrings=True)


class JobTable(Part):
    """What the job is, and which rules answer."""

    title: Words
    """What the job is called; it heads every sheet."""
    edition: Edition = Edition.GB
    """Which set of rules answers."""
    exposure: Exposure
    """Driving rain at the site: look the site up on the map of your code."""
    show_lengths_in: LengthUnit = LengthUnit.MM
    """The unit lengths are shown and marked in. Feet and inches are marked to a sixteenth, all else to a millimetre."""


class CoveringTable(Part):
    """What is to be laid: a catalogue entry with any figure put right, or your own tile as gaugerod measure writes it."""

    from_: Annotated[CatalogueName | None, Field(alias="from")] = None
    """The catalogue entry to start from: see gaugerod coverings. Left out: every figure is given here."""
    title: Words | None = None
    """What the unit is called on the sheets."""
    form: Form | None = None
    """The shape of the face."""
    material: Material | None = None
    """What it is made of."""
    length: UnitSize | None = None
    """Overall length, head to tail."""
    width: UnitSize | None = None
    """Overall width, side to side: more than it covers."""
    hanging_length: UnitSize | None = None
    """Bearing face of the nibs to the tail."""
    cover_closed: UnitSize | None = None
    """Width one unit gains when pushed up tight."""
    cover_open: UnitSize | None = None
    """Width one unit gains when pulled fully open."""
    headlap_min: UnitSize | None = None
    """Least lap over the course below."""
    headlap_max: UnitSize | None = None
    """Greatest lap, where heads foul or nail holes show."""
    pitch_min: Pitch | None = None
    """Least pitch."""
    mass: Mass | None = None
    """Mass of one unit in kg."""
    high_points: list[UnitPlace] | None = None
    """Where the crowns of the profile are, from the left edge of the unit."""
    half_unit: YesOrNo | None = None
    """Is there a half-width companion?"""
    unit_and_a_half: YesOrNo | None = None
    """Is there a companion one and a half units wide?"""
    bonds: list[Bond] | None = None
    """The bonds it may be laid in, the usual one first."""
    measured: list[Words] = []
    """Which of these figures were measured on the tiles themselves."""

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
        values = {RECORD_FIELDS.get(key, key): value for key, value in stated.items()}
        if self.from_ is not None:
            return override(covering(self.from_), values)
        named = {"name": "own-tile", "title": "Own tile", "bonds": ["straight"], **values}
        return single_lap_from(named, citation=STATED, measured=frozenset(self.measured))


class RafterTable(Part):
    """A rafter measured at a place along the eaves."""

    at: RoofPlace
    """From the left end of the roof structure, along the eaves."""
    length: RoofLength
    """Outer face of the fascia to the apex, up the slope."""


class DiagonalsTable(Part):
    """The diagonals of the slope: they show whether it is square."""

    from_left: RoofLength | None = None
    """Left end of the eaves to right end of the ridge."""
    from_right: RoofLength | None = None
    """Right end of the eaves to left end of the ridge."""


class OpeningTable(Part):
    """A rooflight, chimney or other opening in the slope."""

    name: Words
    """What it is."""
    from_left: RoofPlace
    """Left end of the roof structure to its left side, along the eaves."""
    up_slope: RoofPlace
    """Outer face of the fascia to its lower edge, up the slope."""
    width: OpeningSize
    """Along the eaves."""
    height: OpeningSize
    """Up the slope."""


class NailedTable(Part):
    """Battens already nailed, measured at one place."""

    at: RoofPlace
    """From the left end of the roof structure, along the eaves."""
    marks: Annotated[list[RoofPlace], Field(min_length=1)]
    """Top edge of every batten nailed, from the eaves up, each measured from the outer face of the fascia."""


class SlopeTable(Part):
    """One slope, measured by tape."""

    name: Words
    """What this slope is called: rear, front, porch."""
    pitch: Pitch
    """The pitch of the rafters."""
    across: RoofLength
    """Along the eaves, left end to right end of the roof structure, as you look at the slope."""
    rafters: Annotated[list[RoofLength | RafterTable], Field(min_length=1)]
    """Outer face of the fascia to apex, left to right: lengths evenly spaced from end to end, or each with its place."""
    ridge: RoofLength | None = None
    """Along the ridge, end to end."""
    diagonals: DiagonalsTable = DiagonalsTable()
    """Both diagonals, if you can."""
    left: SideKind
    """What stands at the left side."""
    right: SideKind
    """What stands at the right side."""
    bottom: BottomKind = BottomKind.EAVES
    """What stands at the foot."""
    top: TopKind
    """What stands at the head."""
    rafter_spacing: RafterSpacing | None = None
    """Rafter to rafter, centre to centre: settles the batten section."""
    opening: list[OpeningTable] = []
    """Openings in the slope."""
    nailed: list[NailedTable] = []
    """Battens already nailed: they are kept, and the rest is set out from the last of them."""

    @model_validator(mode="after")
    def _hangs_together(self) -> Self:
        faults = [*self._stations_in_order(), *self._openings_inside(), *self._nailed_inside()]
        if faults:
            raise refuse(*faults)
        return self

    def stations_mm(self) -> list[tuple[float, float]]:
        """Every rafter with its place: lengths without one are spread evenly from end to end."""
        placed: list[tuple[float, float]] = []
        steps = max(len(self.rafters) - 1, 1)
        for index, rafter in enumerate(self.rafters):
            if isinstance(rafter, RafterTable):
                placed.append((rafter.at, rafter.length))
            else:
                placed.append((self.across * index / steps, rafter))
        return placed

    def _stations_in_order(self) -> list[Fault]:
        stations = self.stations_mm()
        mixed = "some with a place, some without"
        with_place = [isinstance(rafter, RafterTable) for rafter in self.rafters]
        if any(with_place) and not all(with_place):
            return [_fault("rafters", mixed, "all lengths, or all { at, length }", "Give the place of each.")]
        faults = []
        for index, (at_mm, _) in enumerate(stations):
            field, given = f"rafters[{index}].at", f"{at_mm:g} mm"
            if at_mm > self.across:
                faults.append(_fault(field, given, f"0 to {self.across:g} mm", "It lies beyond the eaves."))
            if index and at_mm <= stations[index - 1][0]:
                before_mm = stations[index - 1][0]
                faults.append(_fault(field, given, f"more than {before_mm:g} mm", "Give them left to right."))
        return faults

    def _openings_inside(self) -> list[Fault]:
        shortest_mm = min(length_mm for _, length_mm in self.stations_mm())
        faults = []
        for index, opening in enumerate(self.opening):
            field = f"opening[{index}]"
            right_mm, head_mm = opening.from_left + opening.width, opening.up_slope + opening.height
            if right_mm > self.across:
                allowed = f"up to {self.across:g} mm"
                faults.append(_fault(field, f"right side at {right_mm:g} mm", allowed, "It reaches past the eaves."))
            if head_mm >= shortest_mm:
                allowed = f"below {shortest_mm:g} mm"
                faults.append(_fault(field, f"head at {head_mm:g} mm", allowed, "It reaches past the apex."))
        return faults

    def _nailed_inside(self) -> list[Fault]:
        return [
            _fault(f"nailed[{index}].at", f"{nailed.at:g} mm", f"0 to {self.across:g} mm", "It lies beyond the eaves.")
            for index, nailed in enumerate(self.nailed)
            if nailed.at > self.across
        ]


def _fault(field: str, given: str, allowed: str, do: str) -> Fault:
    return Fault(field=field, given=given, allowed=allowed, do=do)


class SetOutTable(Part):
    """Bands and wishes of the setting out. What is left out, the edition answers, with its source."""

    eaves_overhang: EdgeBand | None = None
    """Tail past the outer face of the fascia: [least, greatest], or one length."""
    overhang_measured: OverhangMeasured = OverhangMeasured.ON_SLOPE
    """How that overhang is measured: with the tape laid on the slope, or on the level."""
    top_batten_from_apex: EdgeBand | None = None
    """Top edge of the top batten below the apex."""
    ridge_cover: RidgeCover | None = None
    """How far the ridge unit, or the flashing at a wall, reaches down the slope from the apex."""
    verge_overhang: EdgeBand | None = None
    """Covering past the end of the roof structure at a verge."""
    abutment_set_back: EdgeBand | None = None
    """Clear gap between the covering and a wall."""
    bond: Bond | None = None
    """Straight or broken; left out: the usual one of the covering."""
    perps_every: Count = 3
    """How many units from one perp line to the next."""


class JobFile(Part):
    """A job: what was measured, what is to be laid, and what is wished."""

    job: JobTable
    covering: CoveringTable
    slope: Annotated[list[SlopeTable], Field(min_length=1, max_length=60)]
    """Every slope, measured by tape."""
    set_out: SetOutTable = SetOutTable()

    @model_validator(mode="after")
    def _slopes_by_one_name_each(self) -> Self:
        names = [slope.name for slope in self.slope]
        faults = [
            _fault(
                f"slope[{index}].name",
                name,
                "a name of its own",
                "Two slopes have this name: the sheets would be mixed up.",
            )
            for index, name in enumerate(names)
            if name in names[:index]
        ]
        if faults:
            raise refuse(*faults)
        return self
