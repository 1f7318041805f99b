"""What the roof needs: its least lap with the edition's beside it, and the courses it would be set out with afresh."""

from dataclasses import dataclass, replace
from typing import assert_never

from gaugerod.as_built.ask import RodMeasured, RoofAsk, RoofTop, marks_of_mm, tail_to_mark_mm
from gaugerod.as_built.ask_faults import refuse_faults
from gaugerod.basis.band import Band
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap import Nailing, PlainTile, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.rules.gauge import gauge_citation
from gaugerod.rules.plain_tile import SEVERE, Hung, plain_tile_headlap
from gaugerod.rules.ridge_cover import top_band_narrowed
from gaugerod.rules.slates import slate_headlap_least
from gaugerod.setting_out.courses import CoursesAsk
from gaugerod.setting_out.double_lap_ask import DoubleLapAsk, courses_ask
from gaugerod.setting_out.section_laid import LapOver
from gaugerod.setting_out.stations import NailedRod, Station
from gaugerod.standards.defaults import (
    eaves_overhang_band,
    ridge_cover_least,
    single_lap_headlap_least,
    top_batten_band,
    top_flashing_cover_least,
)
from gaugerod.standards.double_lap import DoubleLapFigure, double_lap_figure

TOP_EDGE = "top edge of batten"


@dataclass(frozen=True, slots=True, kw_only=True)
class Needed:
    """What the laps of this roof are held against.

    ``lapping``      the next course below (single lap) or the second below (double lap)
    ``usable_mm``    length of a unit that counts for its lap: from its tail to its head, or to the nail hole that loses some
    ``least_lap``    governs: the record's, or the edition's where that is more (double lap)
    ``edition_lap``  the edition's own figure, shown beside it; None: no table of it answers for this unit
    ``cover_least``  how far the ridge or flashing must cover the heads of the top course
    ``marks_are``    what a mark is: ``top edge of batten``, ``head of slate`` or ``nail line``
    ``afresh``       the courses as they would be asked, no batten nailed
    """

    lapping: LapOver
    usable_mm: float
    least_lap: Limit
    edition_lap: Limit | None
    cover_least: Limit
    marks_are: str
    afresh: CoursesAsk

    @property
    def head_to_mark_mm(self) -> float:
        """How far the head, as far as it keeps water out, stands above the mark of its course."""
        return self.usable_mm - self.afresh.hanging_length_mm


def needed_by(ask: RoofAsk) -> Needed:
    """What this roof needs. Raises InputRefused with every fault of the ask, NothingToSetOut where a size is not known."""
    refuse_faults(ask)
    covering = ask.covering
    match covering:
        case SingleLapTile():
            return _single_lap(ask, covering)
        case PlainTile() | SizedSlate():
            return _double_lap(ask, covering)
        case _ as unreachable:
            assert_never(unreachable)


def measured_rods(ask: RoofAsk) -> tuple[NailedRod, ...]:
    """Every place with the marks of its courses, whichever way they were measured."""
    tail_mm = tail_to_mark_mm(ask.covering)

    def nailed(rod: RodMeasured) -> NailedRod:
        return NailedRod(at_mm=rod.at_mm, marks_mm=marks_of_mm(rod, tail_to_mark_mm=tail_mm))

    return tuple(nailed(rod) for rod in ask.rods)


def _stations(ask: RoofAsk) -> tuple[Station, ...]:
    return tuple(Station(at_mm=rod.at_mm, length_mm=rod.length_mm) for rod in ask.rods)


def _single_lap(ask: RoofAsk, tile: SingleLapTile) -> Needed:
    hanging_mm = tail_to_mark_mm(tile)
    cover_least = _single_lap_cover_least(ask)
    least_lap = Limit(value=tile.headlap_min_mm, unit="mm", citation=tile.citation)
    return Needed(
        lapping=LapOver.NEXT_BELOW,
        usable_mm=tile.length_mm,
        least_lap=least_lap,
        edition_lap=single_lap_headlap_least(ask.edition),
        cover_least=cover_least,
        marks_are=TOP_EDGE,
        afresh=CoursesAsk(
            where=ask.where,
            stations=_stations(ask),
            unit_length_mm=tile.length_mm,
            hanging_length_mm=hanging_mm,
            gauge_min_mm=tile.gauge_min_mm,
            gauge_max_mm=tile.gauge_max_mm,
            gauge_citation=gauge_citation(tile),
            overhang=ask.overhang or eaves_overhang_band(ask.edition),
            top=_top_band(ask, head_to_nib_mm=tile.length_mm - hanging_mm, cover_least=cover_least),
            division=ask.division,
        ),
    )


def _single_lap_cover_least(ask: RoofAsk) -> Limit:
    match ask.top_is:
        case RoofTop.RIDGE:
            return ridge_cover_least(ask.edition)
        case RoofTop.ABUTMENT:
            return top_flashing_cover_least(ask.edition)
        case _ as unreachable:
            assert_never(unreachable)


def _top_band(ask: RoofAsk, *, head_to_nib_mm: float, cover_least: Limit) -> Band:
    """The band for a new top batten, narrowed so that the ridge covers the top course; its highest place where none will."""
    band = ask.top or top_batten_band(ask.edition)
    narrowed = top_band_narrowed(
        where=ask.where,
        band=band,
        ridge_cover_mm=ask.ridge_cover_mm,
        head_to_nib_mm=head_to_nib_mm,
        least=cover_least,
    )
    return narrowed.band or Band(least_mm=band.least_mm, greatest_mm=band.least_mm, citation=band.citation)


def _double_lap(ask: RoofAsk, unit: PlainTile | SizedSlate) -> Needed:
    least_lap = ask.headlap or _least_double_lap(ask, unit)
    double = DoubleLapAsk(
        where=ask.where,
        unit=unit,
        hung=Hung.ROOF,
        stations=_stations(ask),
        headlap=least_lap,
        overhang=ask.overhang or eaves_overhang_band(ask.edition),
        ridge_cover_mm=ask.ridge_cover_mm,
        edition=ask.edition,
        division=ask.division,
    )
    afresh = courses_ask(double)
    return Needed(
        lapping=LapOver.SECOND_BELOW,
        usable_mm=unit.length_mm - double.lost_at_head_mm,
        least_lap=least_lap,
        edition_lap=_edition_double_lap(ask, unit),
        cover_least=least_lap,
        marks_are=_double_lap_marks(unit),
        afresh=afresh if ask.top is None else replace(afresh, top=ask.top),
    )


def _double_lap_marks(unit: PlainTile | SizedSlate) -> str:
    if isinstance(unit, PlainTile):
        return TOP_EDGE
    return "head of slate" if unit.nailing is Nailing.CENTRE else "nail line"


def _least_double_lap(ask: RoofAsk, unit: PlainTile | SizedSlate) -> Limit:
    if isinstance(unit, PlainTile):
        return plain_tile_headlap(tile=unit, exposure=ask.exposure, edition=ask.edition)
    if (least := _edition_double_lap(ask, unit)) is not None:
        return least
    raise InputRefused(
        [
            Fault(
                "roof.headlap",
                "nothing",
                f"the least lap of {unit.title} at {ask.pitch_deg:g}°, {ask.exposure.value} exposure, as its maker gives it",
                "No table here answers for this size at this pitch. Ask the maker, and give the lap.",
            )
        ]
    )


def _edition_double_lap(ask: RoofAsk, unit: PlainTile | SizedSlate) -> Limit | None:
    if isinstance(unit, SizedSlate):
        return slate_headlap_least(slate=unit, pitch_deg=ask.pitch_deg, exposure=ask.exposure, edition=ask.edition)
    figure = (
        DoubleLapFigure.PLAIN_TILE_HEADLAP_LEAST_SEVERE
        if ask.exposure in SEVERE
        else DoubleLapFigure.PLAIN_TILE_HEADLAP_LEAST
    )
    return double_lap_figure(ask.edition, figure)
