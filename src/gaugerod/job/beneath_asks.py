"""What the stages beneath the covering are asked with, made of the job and of its slopes as set out."""

from statistics import fmean

from gaugerod.coverings.double_lap import PlainTile, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.fixing.ask import FixingAsk, Units
from gaugerod.fixing.extra_courses import extra_units, under_eaves_units
from gaugerod.geometry.polygon import signed_area_mm2
from gaugerod.job.battened import batten_rods, batten_width_mm, rafter_places_mm
from gaugerod.job.beneath_wished import AirWished, FixingsWished, LoadWished, UnderlayWished
from gaugerod.job.laid_out import goes_up, laid_cover_mm, structure_ring
from gaugerod.job.model import Job, TopKind
from gaugerod.job.result import Laid, SlopeResult
from gaugerod.job.wished import division_of
from gaugerod.laying.ask import EdgeKind
from gaugerod.rules.underlay_type import counts_as, is_air_permeable
from gaugerod.rules.ventilation import VentConditions
from gaugerod.standards.underlay import UnderlayFigure
from gaugerod.substrate.battens.answer import SlopeBattens
from gaugerod.substrate.load.ask import LoadAsk, Timber, UnderlayLaid
from gaugerod.substrate.underlay.answer import UnderlayPlan
from gaugerod.substrate.underlay.ask import RidgeMade, UnderlayAsk
from gaugerod.substrate.ventilation.openings import VentedEdge, VentilationAsk

AIR_PERMEABLE = (UnderlayFigure.AIR_PERMEABLE_FROM, UnderlayFigure.AIR_PERMEABLE_FROM_OTHER)
"""The two meanings of air-permeable, by two sources: only what reaches both is taken as such."""


def underlay_ask(
    job: Job, slope: SlopeResult, wished: UnderlayWished, *, counter_battens: bool, of_building: bool
) -> UnderlayAsk:
    """The underlay of one slope. A valley between two slopes of a building has one strip: it is counted on its left."""
    ring = structure_ring(slope.slope, slope.shape)
    elsewhere = frozenset(
        edge.name
        for index, edge in enumerate(ring.edges)
        if of_building and edge.kind is EdgeKind.VALLEY and not goes_up(slope.shape, index)
    )
    if slope.slope.top is TopKind.MONO_RIDGE:
        ridge = RidgeMade.MONO
    else:
        ridge = RidgeMade.DRY_VENTILATED if wished.ridge_vented else RidgeMade.BEDDED
    return UnderlayAsk(
        where=slope.slope.name,
        outline=ring,
        pitch_deg=slope.slope.pitch_deg,
        rods=batten_rods(job, slope),
        batten_width_mm=batten_width_mm(job, slope),
        rafters_mm=rafter_places_mm(job, slope),
        record=wished.record,
        support=wished.support,
        counter_battens=counter_battens,
        ridge=ridge,
        division=division_of(job.show_lengths_in),
        edition=job.edition,
        rafter_width_mm=wished.rafter_width_mm,
        lap_mm=wished.lap_mm,
        between_battens=wished.between_battens,
        carrier_reach_mm=wished.carrier_reach_mm,
        valley_strip_width_mm=wished.valley_strip_width_mm,
        valley_strips_elsewhere=elsewhere,
        site=wished.site,
    )


def air_ask(job: Job, slope: SlopeResult, wished: AirWished, underlay: UnderlayWished) -> VentilationAsk | None:
    """The openings of one slope: along its eaves and its ridge; None for a slope with no eaves of its own."""
    ring = structure_ring(slope.slope, slope.shape)
    lengths = list(zip(ring.edges, _lengths_mm(ring.points_mm), strict=True))
    eaves = tuple(VentedEdge(name=edge.name, length_mm=mm) for edge, mm in lengths if edge.kind is EdgeKind.EAVES)
    if not eaves:
        return None
    at_wall = slope.slope.top is TopKind.ABUTMENT
    tops = tuple(
        VentedEdge(name=edge.name, length_mm=mm)
        for index, (edge, mm) in enumerate(lengths)
        if edge.kind is EdgeKind.RIDGE or (at_wall and edge.kind is EdgeKind.ABUTMENT and _level(ring.points_mm, index))
    )
    return VentilationAsk(
        where=slope.slope.name,
        eaves=eaves,
        tops=tops,
        conditions=VentConditions(
            pitch_deg=slope.slope.pitch_deg,
            underlay=counts_as(record=underlay.record, support=underlay.support),
            air_permeable=all(
                is_air_permeable(record=underlay.record, edition=job.edition, by=meaning) for meaning in AIR_PERMEABLE
            ),
            insulated=wished.insulated,
            ceiling=wished.ceiling,
            building=wished.building,
            covering_air_open=isinstance(job.covering, SingleLapTile | PlainTile),
            span_mm=wished.span_mm,
            mono=slope.slope.top is not TopKind.RIDGE,
            through_flow=wished.through_flow,
        ),
        edition=job.edition,
    )


def _lengths_mm(points_mm: tuple[tuple[float, float], ...]) -> list[float]:
    following = (*points_mm[1:], points_mm[0])
    return [((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5 for (x0, y0), (x1, y1) in zip(points_mm, following, strict=True)]


def _level(points_mm: tuple[tuple[float, float], ...], index: int) -> bool:
    """Does this edge run along the top rather than up a side?"""
    (x0, y0), (x1, y1) = points_mm[index], points_mm[(index + 1) % len(points_mm)]
    return x0 - x1 > abs(y1 - y0)


def fixing_ask(job: Job, slope: SlopeResult, laid: Laid, wished: FixingsWished) -> FixingAsk:
    """The fixing of one slope, the course under the eaves and the short one at the top included."""
    if slope.double_lap is not None:
        extra = tuple(extra_units(laid.ask, extras=slope.double_lap))
    elif slope.diminishing is not None:
        extra = (under_eaves_units(laid.ask, length_mm=slope.diminishing.under_eaves_length_mm),)
    else:
        extra = ()
    thickness_mm = wished.thickness_mm
    if thickness_mm is None and isinstance(job.covering, SizedSlate):
        thickness_mm = job.covering.thickness_mm
    return FixingAsk(
        where=slope.slope.name,
        pitch_deg=slope.slope.pitch_deg,
        covering=job.covering,
        full=Units(name="course", ask=laid.ask, laying=laid.laying, pieces=laid.pieces),
        extra=extra,
        edition=job.edition,
        nail=wished.nail,
        nail_holes_count=wished.nail_holes_count,
        thickness_mm=thickness_mm,
        slates_held_by=wished.slates_held_by,
        hook_wire_mm=wished.hook_wire_mm,
    )


def load_ask(
    job: Job,
    slope: SlopeResult,
    wished: LoadWished,
    *,
    battens: SlopeBattens | None,
    underlay: tuple[UnderlayWished, UnderlayPlan] | None,
) -> LoadAsk:
    """The mass of one slope, on the area its covering takes."""
    area_mm2 = slope.shape.area_mm2 if slope.laid is None else signed_area_mm2(slope.laid.ask.outline.points_mm)
    return LoadAsk(
        where=slope.slope.name,
        covering=job.covering,
        area_mm2=area_mm2 - sum(opening.width_mm * opening.height_mm for opening in slope.slope.openings),
        gauge_mm=fmean(rod.gauge_mm for rod in slope.courses.rods),
        cover_mm=laid_cover_mm(job.covering, slope.across),
        edition=job.edition,
        stated=wished.stated,
        timbers=() if battens is None else tuple(_timbers(battens)),
        underlay=None
        if underlay is None or not underlay[1].runs
        else UnderlayLaid(record=underlay[0].record, laid_area_mm2=underlay[1].laid_area_mm2),
        old=wished.old,
        warn=wished.warn,
        significant=wished.significant,
    )


def _timbers(battens: SlopeBattens) -> list[Timber]:
    if battens.section is None or not battens.net_mm:
        return []
    return [
        Timber(
            name="battens",
            width_mm=battens.section.width_mm,
            depth_mm=battens.section.depth_mm,
            length_mm=float(battens.net_mm),
        )
    ]
