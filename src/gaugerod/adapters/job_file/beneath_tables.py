"""What lies beneath the covering, as it is written: a table that is left out is not worked out."""

from typing import Self

from pydantic import Field, model_validator

from gaugerod.adapters.job_file.beneath_fields import (
    AirPassing,
    Altitude,
    BattenStock,
    EavesCarrier,
    HookWire,
    LabelGauge,
    MassOnSlope,
    NailHoles,
    NailLength,
    NailShank,
    Pascals,
    PerCent,
    RafterWidth,
    RidgeHeight,
    RollLength,
    RollWidth,
    SawKerf,
    Span,
    StripWidth,
    TimberSize,
    UnderlayLap,
    UnitThickness,
    VapourResistance,
    WindZone,
)
from gaugerod.adapters.job_file.fields import STATED, Words, YesOrNo
from gaugerod.adapters.job_file.part import Part
from gaugerod.adapters.job_file.refusing import refuse
from gaugerod.basis.errors import Fault
from gaugerod.basis.limit import Limit
from gaugerod.coverings.underlay import LabelRating, Resistance, Support, UnderlayRecord
from gaugerod.fixing.ask import NailWished
from gaugerod.job.beneath_wished import AirWished, BattensWished, FixingsWished, LoadWished, UnderlayWished
from gaugerod.rules.batten_joints import CloseJoints
from gaugerod.rules.fixings import SlateHeld
from gaugerod.rules.nails import NailMetal
from gaugerod.rules.underlay_wind import UpliftSite
from gaugerod.rules.ventilation import BuildingSize, Ceiling, Insulated
from gaugerod.standards.roof_masses import MassBand
from gaugerod.substrate.battens.ask import Nailing
from gaugerod.substrate.load.ask import OldRoof
from gaugerod.substrate.underlay.ask import LapRemedy

MOST_STOCK_COUNT = 12
MOST_RATINGS_COUNT = 20


class CounterBattenTable(Part):
    """Counter-battens up every rafter, under the battens."""

    width: TimberSize = Field(description="Across the rafter.")
    depth: TimberSize = Field(description="How far it lifts the batten.")


class BattensTable(Part):
    """The battens: which lengths can be had, and how they are cut and nailed."""

    stock: list[BattenStock] = Field(
        default=[],
        max_length=MOST_STOCK_COUNT,
        description="Every length that can be had. Left out: the usual ones, a house choice.",
    )
    kerf: SawKerf | None = Field(default=None, description="What one cut of the saw takes.")
    gun_nails: YesOrNo = Field(default=False, description="Nails for a gun, not for the hand.")
    close_joints: CloseJoints = Field(
        default=CloseJoints.APART,
        description="At gauges of 200 mm and less: may joints on one rafter lie on neighbouring battens? Sources differ; "
        "apart is the safer reading.",
    )
    counter_battens: CounterBattenTable | None = Field(default=None, description="Left out: there are none.")

    def wished(self) -> BattensWished:
        """What the job is told."""
        counter = self.counter_battens
        return BattensWished(
            stock=tuple(Limit(value=mm, unit="mm", citation=STATED) for mm in self.stock),
            kerf=None if self.kerf is None else Limit(value=self.kerf, unit="mm", citation=STATED),
            nailing=Nailing(
                gun=self.gun_nails,
                counter_batten_depth_mm=None if counter is None else counter.depth,
                counter_batten_width_mm=None if counter is None else counter.width,
            ),
            close_joints=self.close_joints,
        )


class RatingTable(Part):
    """One line of the underlay's label on wind uplift."""

    resists: Pascals = Field(description="The uplift it resists, Pa.")
    gauge: LabelGauge = Field(description="The batten gauge it was tested at.")
    laps_held: YesOrNo = Field(description="Does the figure hold only with every lap under a batten or taped?")


class UnderlayTable(Part):
    """The underlay, by its label, and where it lies."""

    title: Words = Field(default="underlay", description="What to call it on the sheets.")
    resistance: Resistance = Field(description="To water vapour, as the label says: low or high.")
    lies_on: Support = Field(description="Open rafters (draped), boards, or rigid insulation.")
    roll_width: RollWidth = Field(default=1_000.0, description="Of one roll. Left out: 1 m, a house choice.")
    roll_length: RollLength = Field(default=50_000.0, description="Of one roll. Left out: 50 m, a house choice.")
    ridge_vented: YesOrNo = Field(
        default=False, description="Is the ridge dry and ventilated, so that the underlay stops short of it?"
    )
    lap: UnderlayLap | None = Field(
        default=None, description="The horizontal lap its maker states, where it is greater than the rule's."
    )
    between_battens: LapRemedy = Field(
        default=LapRemedy.WIDEN,
        description="Where a lap falls between battens: widen it to the next batten, add a batten, or tape it.",
    )
    eaves_carrier: EavesCarrier | None = Field(
        default=None, description="How far the tray or strip at the eaves reaches up the slope from the fascia face."
    )
    valley_strip: StripWidth | None = Field(default=None, description="Width of the strip laid first in a valley.")
    rafter_width: RafterWidth | None = Field(default=None, description="Side laps are measured to a rafter's far edge.")
    mass: MassOnSlope | None = Field(default=None, description="Of one layer, kg/m².")
    vapour_resistance: VapourResistance | None = Field(default=None, description="As the label gives it, MN·s/g.")
    air_permeability: AirPassing | None = Field(
        default=None, description="As the label gives it, m³/(m²·h) at 50 Pa. Left out: not air-permeable."
    )
    rating: list[RatingTable] = Field(
        default=[], max_length=MOST_RATINGS_COUNT, description="Wind uplift, one line of the label each."
    )
    wind_zone: WindZone | None = Field(default=None, description="Of the site, 1 to 5, read from the map of zones.")
    altitude: Altitude | None = Field(default=None, description="Of the site above the sea.")
    ridge_height: RidgeHeight | None = Field(default=None, description="Of the ridge above the ground.")
    on_hill_or_cliff: YesOrNo | None = Field(
        default=None, description="Is the site on or near a hill, ridge or cliff that speeds the wind up?"
    )
    ceiling_sealed: YesOrNo | None = Field(default=None, description="Is the ceiling below well sealed?")

    def wished(self) -> UnderlayWished:
        """What the job is told."""
        return UnderlayWished(
            record=UnderlayRecord(
                title=self.title,
                roll_width_mm=self.roll_width,
                roll_length_mm=self.roll_length,
                resistance=self.resistance,
                vapour_resistance=_stated(self.vapour_resistance, "MN·s/g"),
                air_permeability=_stated(self.air_permeability, "m³/(m²·h)"),
                mass_kg_m2=self.mass,
                ratings=tuple(
                    LabelRating(resistance_pa=line.resists, gauge_mm=line.gauge, lap_restrained=line.laps_held)
                    for line in self.rating
                ),
                citation=STATED,
            ),
            support=self.lies_on,
            ridge_vented=self.ridge_vented,
            lap_mm=self.lap,
            between_battens=self.between_battens,
            carrier_reach_mm=self.eaves_carrier,
            valley_strip_width_mm=self.valley_strip,
            rafter_width_mm=self.rafter_width,
            site=UpliftSite(
                zone=self.wind_zone,
                altitude_m=None if self.altitude is None else self.altitude / 1000,
                ridge_height_m=None if self.ridge_height is None else self.ridge_height / 1000,
                on_hill_or_cliff=self.on_hill_or_cliff,
                ceiling_sealed=self.ceiling_sealed,
            ),
        )


class VentilationTable(Part):
    """What the openings for air depend on, besides pitch and underlay."""

    insulated: Insulated = Field(description="Where the insulation lies.")
    ceiling: Ceiling = Field(default=Ceiling.NORMAL, description="Well sealed, or normal.")
    building: BuildingSize = Field(
        default=BuildingSize.DWELLING, description="What the roof is over: a dwelling, or a larger building."
    )
    span: Span | None = Field(default=None, description="Eaves to eaves on plan. Left out: taken as wide.")
    through_flow: YesOrNo = Field(default=False, description="Can air pass from one eaves to the other?")

    def wished(self) -> AirWished:
        """What the job is told."""
        return AirWished(
            insulated=self.insulated,
            ceiling=self.ceiling,
            building=self.building,
            span_mm=self.span,
            through_flow=self.through_flow,
        )


class FixingsTable(Part):
    """The nails, and what is known of the unit's holes. Left out: the least by rule, or not known."""

    nail_metal: NailMetal = Field(description="What the nails are made of.")
    nail_shank: NailShank | None = Field(default=None, description="Thickness of the nail.")
    nail_length: NailLength | None = Field(default=None, description="Length of the nail.")
    nail_holes: NailHoles | None = Field(default=None, description="Nail holes of one tile.")
    thickness: UnitThickness | None = Field(default=None, description="Of the unit where its nail goes through.")
    slates_by: SlateHeld = Field(default=SlateHeld.NAILS, description="Slates are held by nails, or by hooks.")
    hook_wire: HookWire | None = Field(default=None, description="Thickness of the hook's wire.")

    def wished(self) -> FixingsWished:
        """What the job is told."""
        return FixingsWished(
            nail=NailWished(metal=self.nail_metal, shank_mm=self.nail_shank, length_mm=self.nail_length),
            nail_holes_count=self.nail_holes,
            thickness_mm=self.thickness,
            slates_held_by=self.slates_by,
            hook_wire_mm=self.hook_wire,
        )


class OldRoofTable(Part):
    """What is taken off."""

    title: Words = Field(default="old covering", description="What it is.")
    least: MassOnSlope = Field(description="Its mass as it lies, kg/m²; the least it may be.")
    greatest: MassOnSlope | None = Field(default=None, description="The most it may be. Left out: the same.")
    below: MassOnSlope | None = Field(
        default=None, description="Old battens and underlay, kg/m². Left out: as heavy as the new ones."
    )

    @model_validator(mode="after")
    def _least_first(self) -> Self:
        if self.greatest is not None and self.greatest < self.least:
            given = f"{self.greatest:g}"
            raise refuse(Fault("greatest", given, f"at least the least, {self.least:g}", "Swap them."))
        return self

    def roof(self) -> OldRoof:
        """What the job is told."""
        return OldRoof(
            title=self.title,
            covering=_band(self.least, self.least if self.greatest is None else self.greatest),
            below=None if self.below is None else _band(self.below, self.below),
        )


class LoadTable(Part):
    """What is known of the masses, new and old."""

    covering: MassOnSlope | None = Field(
        default=None,
        description="The new covering as laid, kg/m², weighed or as its maker gives it. Left out: reckoned, or typical.",
    )
    old: OldRoofTable | None = Field(default=None, description="What is taken off. Left out: a new roof.")
    warn: PerCent | None = Field(default=None, description="Change in mass to be asked about, per cent.")
    significant: PerCent | None = Field(default=None, description="Gain in mass the frame is checked for, per cent.")

    def wished(self) -> LoadWished:
        """What the job is told."""
        return LoadWished(
            stated=None if self.covering is None else _band(self.covering, self.covering),
            old=None if self.old is None else self.old.roof(),
            warn=_stated(self.warn, "percent"),
            significant=_stated(self.significant, "percent"),
        )


def _stated(value: float | None, unit: str) -> Limit | None:
    return None if value is None else Limit(value=value, unit=unit, citation=STATED)


def _band(least_kg_m2: float, greatest_kg_m2: float) -> MassBand:
    return MassBand(least_kg_m2=least_kg_m2, greatest_kg_m2=greatest_kg_m2, citation=STATED)
