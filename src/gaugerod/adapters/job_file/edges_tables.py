"""The edges as they are written: how each is made, and what its units measure. A table that is left out is not counted."""

from pydantic import Field

from gaugerod.adapters.job_file.edges_fields import (
    AirUnitLength,
    EavesGap,
    EavesTray,
    FreeArea,
    LeadCode,
    LinerLap,
    LinerLength,
    LineUnitCover,
    LineUnitLength,
    SharedEdge,
    SideCover,
    TwoSlopes,
    UndercloakLength,
    UnitFixings,
    ValleyClear,
    ValleyGirth,
    VergeBed,
)
from gaugerod.adapters.job_file.fields import Mass, Words, YesOrNo
from gaugerod.adapters.job_file.part import Part
from gaugerod.edges.wished import (
    AirUnit,
    AirUnitsWished,
    EavesWished,
    EdgesWished,
    HipMade,
    LineUnit,
    RidgeMade,
    RidgeWished,
    SharedLine,
    SideMade,
    ValleyMade,
    ValleyWished,
    VergeMade,
    VergeWished,
    WallWished,
)

MOST_SHARED_COUNT = 120


class LineUnitTable(Part):
    """A ridge, hip or mono-ridge unit."""

    length: LineUnitLength = Field(description="Of one unit, end to end.")
    cover: LineUnitCover | None = Field(
        default=None, description="What one unit gains along the line. Left out: its length; less where units overlap."
    )
    fixings: UnitFixings = Field(default=2, description="Screws, nails or clips that hold one unit.")
    mass: Mass | None = Field(default=None, description="Of one unit, kg. Left out: not known.")

    def unit(self) -> LineUnit:
        """What the job is told."""
        return LineUnit(
            length_mm=self.length,
            cover_mm=self.length if self.cover is None else self.cover,
            fixings_count=self.fixings,
            mass_kg=self.mass,
        )


class RidgeTable(Part):
    """Ridges and hips. A unit that is left out is not counted: its line is told by length."""

    made: RidgeMade = Field(description="Dry with a fixing kit, or bedded in mortar and fixed as well.")
    unit: LineUnitTable | None = Field(default=None, description="The ridge unit.")
    mono_unit: LineUnitTable | None = Field(default=None, description="The unit of a mono-ridge.")
    hip_unit: LineUnitTable | None = Field(default=None, description="The hip unit.")
    hips: HipMade = Field(
        default=HipMade.UNITS,
        description="What lies over a hip: units end to end, a bonnet to each course, or mitred over soakers.",
    )

    def wished(self) -> RidgeWished:
        """What the job is told."""
        return RidgeWished(
            made=self.made,
            ridge=_unit(self.unit),
            mono_ridge=_unit(self.mono_unit),
            hip=_unit(self.hip_unit),
            hips=self.hips,
        )


class VergeTable(Part):
    """Verges."""

    made: VergeMade = Field(
        description="Dry with a unit to each course, bedded on an undercloak, or with cloaked verge tiles."
    )
    undercloak: UndercloakLength | None = Field(
        default=None, description="Length of one undercloak strip. Left out: the usual one."
    )
    bed: VergeBed | None = Field(default=None, description="Width of the mortar bed. Left out: the rule's.")

    def wished(self) -> VergeWished:
        """What the job is told."""
        return VergeWished(made=self.made, undercloak_length_mm=self.undercloak, bed_mm=self.bed)


class ValleyTable(Part):
    """Valleys."""

    made: ValleyMade = Field(description="Sheet lead on boards, a preformed liner, or one valley tile to each course.")
    clear: ValleyClear | None = Field(
        default=None, description="Clear width between the cut edges. Left out: the usual one."
    )
    lead_code: LeadCode | None = Field(default=None, description="Code of the lead. Left out: the usual one.")
    girth: ValleyGirth | None = Field(
        default=None, description="Width of lead or liner before it is dressed. Left out: reckoned for lead."
    )
    liner_length: LinerLength | None = Field(
        default=None, description="Of one liner. Left out: liners are not counted."
    )
    liner_lap: LinerLap | None = Field(default=None, description="Of one liner over the next, as its maker states it.")

    def wished(self) -> ValleyWished:
        """What the job is told."""
        return ValleyWished(
            made=self.made,
            clear_mm=self.clear,
            lead_code=self.lead_code,
            girth_mm=self.girth,
            liner_length_mm=self.liner_length,
            liner_lap_mm=self.liner_lap,
        )


class WallTable(Part):
    """Where the covering meets a wall, at its side or along its top."""

    beside: SideMade | None = Field(
        default=None,
        description="One flashing that steps and covers, or soakers under a step flashing. "
        "Left out: as is usual for the covering.",
    )
    splash: YesOrNo = Field(default=False, description="Does rain splash up the wall, as over a flat or a balcony?")
    lead_code: LeadCode | None = Field(default=None, description="Code of flashings. Left out: the usual one.")
    side_cover: SideCover | None = Field(
        default=None, description="How far a flashing that steps and covers reaches over the covering."
    )

    def wished(self) -> WallWished:
        """What the job is told."""
        return WallWished(
            beside=self.beside, splash=self.splash, lead_code=self.lead_code, side_cover_mm=self.side_cover
        )


class EavesTable(Part):
    """Eaves."""

    gap: EavesGap | None = Field(
        default=None, description="Open height under a profiled tile at its tail. Left out: not measured."
    )
    tray_length: EavesTray | None = Field(
        default=None, description="Of one rigid tray under the underlay. Left out: no trays are counted."
    )

    def wished(self) -> EavesWished:
        """What the job is told."""
        return EavesWished(gap_mm=self.gap, tray_length_mm=self.tray_length)


class AirUnitTable(Part):
    """A ventilation unit."""

    title: Words = Field(description="What to call it on the sheets.")
    area: FreeArea = Field(description="Its net free area, mm²: of one vent, or of one strip.")
    length: AirUnitLength | None = Field(
        default=None, description="Of one strip along the edge. Left out: a single vent."
    )

    def unit(self) -> AirUnit:
        """What the job is told."""
        return AirUnit(title=self.title, area_mm2=self.area, length_mm=self.length)


class AirTable(Part):
    """Units for the openings that [ventilation] asks for."""

    low: AirUnitTable | None = Field(default=None, description="At low level. Left out: not counted.")
    high: AirUnitTable | None = Field(default=None, description="At high level. Left out: not counted.")

    def wished(self) -> AirUnitsWished:
        """What the job is told."""
        return AirUnitsWished(
            low=None if self.low is None else self.low.unit(), high=None if self.high is None else self.high.unit()
        )


class SharedTable(Part):
    """Two slopes measured one by one that meet in one line: it is counted once."""

    slopes: TwoSlopes = Field(description="The names of the two.")
    edge: SharedEdge = Field(description="The line in which they meet.")

    def line(self) -> SharedLine:
        """What the job is told. Scope: a table without faults."""
        return SharedLine(slopes=self.slopes, kind=self.edge.value)


class EdgesTable(Part):
    """How the edges are made. An edge that is left out is told by its length only."""

    ridge: RidgeTable | None = Field(default=None, description="Ridges and hips.")
    verge: VergeTable | None = Field(default=None, description="Verges.")
    valley: ValleyTable | None = Field(default=None, description="Valleys.")
    wall: WallTable | None = Field(default=None, description="Walls at the side or along the top.")
    eaves: EavesTable | None = Field(default=None, description="Eaves.")
    air: AirTable = Field(default_factory=AirTable, description="Units for the openings for air.")
    shared: list[SharedTable] = Field(
        default=[],
        max_length=MOST_SHARED_COUNT,
        description="Lines in which two slopes measured one by one meet.",
    )

    def wished(self) -> EdgesWished:
        """What the job is told."""
        return EdgesWished(
            ridge=None if self.ridge is None else self.ridge.wished(),
            verge=None if self.verge is None else self.verge.wished(),
            valley=None if self.valley is None else self.valley.wished(),
            wall=None if self.wall is None else self.wall.wished(),
            eaves=None if self.eaves is None else self.eaves.wished(),
            air=self.air.wished(),
            shared=tuple(shared.line() for shared in self.shared),
        )


def _unit(table: LineUnitTable | None) -> LineUnit | None:
    return None if table is None else table.unit()
