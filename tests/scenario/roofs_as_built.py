"""Roofs to check, made by hand: a tile whose figures divide without remainder, so that every lap can be told by eye."""

from gaugerod.as_built.ask import BattensMeasured, Covering, RodMeasured, RoofAsk
from gaugerod.basis.band import Band
from gaugerod.basis.citation import house
from gaugerod.basis.rounding import Division
from gaugerod.coverings.single_lap import Bond, Form, Material, SingleLapTile
from gaugerod.standards.edition import Edition, Exposure

EXAMPLE = house("an example")
TILE = SingleLapTile(
    name="example-400",
    title="Example tile 400 long",
    form=Form.FLAT,
    material=Material.CONCRETE,
    length_mm=400.0,
    width_mm=330.0,
    hanging_length_mm=380.0,
    cover_closed_mm=296.0,
    cover_open_mm=302.0,
    headlap_min_mm=75.0,
    headlap_max_mm=120.0,
    pitch_min_deg=22.5,
    mass_kg=4.9,
    bonds=(Bond.STRAIGHT,),
    citation=EXAMPLE,
)
"""Gauge 280 to 325, nib 20 below the head, first batten at 330 for an overhang of 50."""


def at_gaps(*gaps_mm: float, first_mm: float = 330.0) -> tuple[float, ...]:
    """Marks from the first batten on."""
    marks_mm = [first_mm]
    for gap_mm in gaps_mm:
        marks_mm.append(marks_mm[-1] + gap_mm)
    return tuple(marks_mm)


def battens(*marks_mm: float, at_mm: float = 0.0, below_apex_mm: float = 35.0) -> BattensMeasured:
    """One place, the top batten so far below the apex."""
    return BattensMeasured(at_mm=at_mm, length_mm=marks_mm[-1] + below_apex_mm, marks_mm=marks_mm)


def roof(
    *rods: RodMeasured,
    covering: Covering = TILE,
    finished: bool = True,
    ridge_cover_mm: float | None = 110.0,
    pitch_deg: float = 35.0,
    exposure: Exposure = Exposure.MODERATE,
) -> RoofAsk:
    """The rear slope, measured at these places."""
    return RoofAsk(
        where="rear",
        covering=covering,
        pitch_deg=pitch_deg,
        exposure=exposure,
        edition=Edition.GB,
        division=Division.MILLIMETRE,
        rods=rods,
        finished=finished,
        ridge_cover_mm=ridge_cover_mm,
        overhang=Band(least_mm=45.0, greatest_mm=55.0, citation=EXAMPLE),
        top=Band(least_mm=25.0, greatest_mm=50.0, citation=EXAMPLE),
    )
