"""The job file as it is written: every table and field, with what it means. The schema and the reference come from here."""

from pydantic import ConfigDict, Field

from gaugerod.adapters.job_file.allowed import MOST_BUILDINGS_COUNT, MOST_SLOPES_COUNT
from gaugerod.adapters.job_file.beneath_tables import (
    BattensTable,
    FixingsTable,
    LoadTable,
    UnderlayTable,
    VentilationTable,
)
from gaugerod.adapters.job_file.building_table import BuildingTable
from gaugerod.adapters.job_file.covering_table import CoveringTable
from gaugerod.adapters.job_file.edges_tables import EdgesTable
from gaugerod.adapters.job_file.fields import Count, EdgeBand, RidgeCover, UnitSize, Words
from gaugerod.adapters.job_file.order_tables import OrderTable
from gaugerod.adapters.job_file.part import Part
from gaugerod.adapters.job_file.record_tables import RecordTable
from gaugerod.adapters.job_file.slope_tables import EitherSlope
from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.single_lap import Bond
from gaugerod.job.model import OverhangMeasured
from gaugerod.setting_out.diminishing.ask import Aim
from gaugerod.standards.edition import Edition, Exposure
from gaugerod.standards.slate_headlap import BetweenPitches, Reading


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
    headlap: UnitSize | None = Field(
        default=None, description="The lap to keep, for plain tiles and slates; random slates need it stated."
    )
    joint: EdgeBand | None = Field(default=None, description="Gap between plain tiles or slates of a course.")
    slate_laps: Reading = Field(
        default=Reading.SAFER,
        description="Which reproduction of the slate headlap table answers: first, second, or the safer of the two.",
    )
    slate_laps_between_pitches: BetweenPitches = Field(
        default=BetweenPitches.NEXT_LOWER,
        description="How that table is read between its pitches: at the next lower (safer), or interpolated.",
    )
    random_slates: Aim = Field(
        default=Aim.LEAST_LEFT,
        description="Which plan of random slates is wished: least left on the ground, or fewest courses.",
    )


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
    battens: BattensTable | None = Field(default=None, description="Battens, their joints and what to buy.")
    underlay: UnderlayTable | None = Field(default=None, description="Underlay, its runs and rolls.")
    ventilation: VentilationTable | None = Field(
        default=None, description="Openings for air; it goes with the underlay."
    )
    fixings: FixingsTable | None = Field(default=None, description="The least fixing of every unit.")
    load: LoadTable | None = Field(default=None, description="What the roof weighs, and weighed before.")
    edges: EdgesTable = Field(default_factory=EdgesTable, description="How the edges are made.")
    order: OrderTable = Field(default_factory=OrderTable, description="Allowances, packs and money of the order.")
    record: RecordTable = Field(default_factory=RecordTable, description="What the hand-over record says besides.")
