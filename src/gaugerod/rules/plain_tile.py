"""Pitch, lap, gauge and sidelap of plain tiles, and which of them are nailed.

Source: each figure's own, from the edition's table; the headlap in severe exposure has two sources that disagree.
Scope: plain tiles in half bond, roofs and walls.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import assert_never

from gaugerod.basis.band import Band
from gaugerod.basis.finding import TOUCH, Finding, Sense
from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap import MadeTo, PlainTile
from gaugerod.coverings.single_lap import Material
from gaugerod.rules.band_findings import within_band
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unreal
from gaugerod.standards.double_lap import DoubleLapFigure, double_lap_figure, headlap_greatest_mm
from gaugerod.standards.edition import Edition, Exposure

SEVERE = (Exposure.SEVERE, Exposure.VERY_SEVERE)


class Hung(StrEnum):
    """Where plain tiles hang: on a roof slope or on a wall."""

    ROOF = "roof"
    WALL = "wall"


class SevereLap(StrEnum):
    """Which source gives the lap of plain tiles in severe exposure: the published one, or the one recalled."""

    PUBLISHED = "published"
    RECALLED = "recalled"


def plain_tile_headlap(
    *, tile: PlainTile, exposure: Exposure, edition: Edition, severe: SevereLap = SevereLap.PUBLISHED
) -> Limit:
    """The least headlap on a roof: the tile's own, or the edition's for this exposure where that is more. mm.

    ``severe`` says which of the two sources answers in severe exposure: the larger figure is published, the smaller
    one rests on memory.
    Scope: roofs; the least lap on walls follows from the greatest gauge there.

    >>> from gaugerod.coverings.double_lap_catalogue import plain_tile
    >>> tile = plain_tile("clay-plain-265x165")
    >>> [plain_tile_headlap(tile=tile, exposure=each, edition=Edition.GB).value for each in Exposure]
    [65.0, 65.0, 75.0, 75.0]
    """
    if exposure not in SEVERE:
        figure = DoubleLapFigure.PLAIN_TILE_HEADLAP_LEAST
    else:
        match severe:
            case SevereLap.PUBLISHED:
                figure = DoubleLapFigure.PLAIN_TILE_HEADLAP_LEAST_SEVERE
            case SevereLap.RECALLED:
                figure = DoubleLapFigure.PLAIN_TILE_HEADLAP_LEAST_SEVERE_RECALLED
            case _ as unreachable:
                assert_never(unreachable)
    limit = double_lap_figure(edition, figure)
    return (
        limit
        if limit.value >= tile.headlap_min_mm
        else Limit(value=tile.headlap_min_mm, unit="mm", citation=tile.citation)
    )


def plain_tile_gauge_band(*, hung: Hung, edition: Edition) -> Band:
    """The gauge range by custom of the trade, before the tile's own lap narrows it. mm.

    >>> [plain_tile_gauge_band(hung=hung, edition=Edition.GB).greatest_mm for hung in Hung]
    [100.0, 114.0]
    """
    least = double_lap_figure(edition, DoubleLapFigure.PLAIN_TILE_GAUGE_LEAST)
    match hung:
        case Hung.ROOF:
            greatest = double_lap_figure(edition, DoubleLapFigure.PLAIN_TILE_GAUGE_GREATEST_ROOF)
        case Hung.WALL:
            greatest = double_lap_figure(edition, DoubleLapFigure.PLAIN_TILE_GAUGE_GREATEST_VERTICAL)
        case _ as unreachable:
            assert_never(unreachable)
    return Band(least_mm=least.value, greatest_mm=greatest.value, citation=greatest.citation)


def plain_tile_pitch(*, where: str, pitch_deg: float, tile: PlainTile, edition: Edition) -> Finding:
    """The slope's pitch against the least for plain tiles. Degrees.

    Clay tiles not known to be made to the sizes of BS EN 1304 need the steeper figure. Raises NothingToSetOut for a
    pitch that is no measurement.

    >>> from dataclasses import replace
    >>> from gaugerod.coverings.double_lap_catalogue import plain_tile
    >>> clay = plain_tile("clay-plain-265x165")
    >>> [plain_tile_pitch(where="rear", pitch_deg=37.0, tile=replace(clay, made_to=made), edition=Edition.GB).verdict.value
    ...  for made in (None, MadeTo.BS_EN_1304)]
    ['outside', 'within']
    """
    refuse_unreal(rule="pitch", where=where, value=pitch_deg, unit="degrees")
    clay = tile.material is Material.CLAY
    uneven = clay and tile.made_to is None
    even = double_lap_figure(edition, DoubleLapFigure.PLAIN_TILE_PITCH_LEAST)
    limit = double_lap_figure(edition, DoubleLapFigure.PLAIN_TILE_PITCH_LEAST_UNEVEN_CLAY) if uneven else even
    if tile.pitch_min_deg is not None and tile.pitch_min_deg > limit.value:
        limit = Limit(value=tile.pitch_min_deg, unit="deg", citation=tile.citation)
    sort = "these plain tiles"
    if clay:
        known = "not known to be made" if uneven else "declared in the job to be made"
        sort = f"clay plain tiles {known} to the sizes of {MadeTo.BS_EN_1304.value}"
    steep_enough = pitch_deg >= limit.value - TOUCH
    too_flat = f"{misfit(limit.value - pitch_deg, unit='°')} too flat for {sort}."
    if uneven and pitch_deg >= max(even.value, tile.pitch_min_deg or 0.0) - TOUCH:
        too_flat += (
            f' Where their maker declares that they are, write made_to = "{MadeTo.BS_EN_1304.value}" in covering.'
        )
    return Finding(
        rule="pitch",
        where=where,
        proposed=pitch_deg,
        limit=limit.value,
        unit="deg",
        sense=Sense.AT_LEAST,
        citation=limit.citation,
        says=(f"At or above {limit.value:g}°, the least for {sort}." if steep_enough else too_flat),
    )


def plain_tile_laps(
    *, where: str, least_lap_mm: float, greatest_lap_mm: float, tile: PlainTile, exposure: Exposure, edition: Edition
) -> tuple[Finding, ...]:
    """The laps as laid on a roof: least against every source that gives one, greatest against a third of the length.

    Raises NothingToSetOut for a lap that is no measurement.

    >>> from gaugerod.coverings.double_lap_catalogue import plain_tile
    >>> found = plain_tile_laps(where="rear", least_lap_mm=65.0, greatest_lap_mm=67.0, edition=Edition.GB,
    ...                         tile=plain_tile("clay-plain-265x165"), exposure=Exposure.SEVERE)
    >>> [(f.limit, f.verdict.value, f.citation.basis.value) for f in found[:2]]
    [(75.0, 'outside', 'published'), (65.0, 'within', 'memory')]
    """
    refuse_unreal(rule="headlap", where=where, value=least_lap_mm, unit="mm")
    refuse_unreal(rule="headlap", where=where, value=greatest_lap_mm, unit="mm")
    limits = [plain_tile_headlap(tile=tile, exposure=exposure, edition=edition)]
    if exposure in SEVERE:
        limits.append(double_lap_figure(edition, DoubleLapFigure.PLAIN_TILE_HEADLAP_LEAST_SEVERE_RECALLED))
    least = tuple(
        Finding(
            rule="headlap",
            where=where,
            proposed=least_lap_mm,
            limit=limit.value,
            unit="mm",
            sense=Sense.AT_LEAST,
            citation=limit.citation,
            says=(
                f"Every tile laps the one two courses below by {limit.value:g} mm or more."
                if least_lap_mm >= limit.value - TOUCH
                else f"The lap is {misfit(limit.value - least_lap_mm)} short. Close the gauge up."
            ),
        )
        for limit in limits
    )
    return (
        *least,
        greatest_headlap(where=where, headlap_mm=greatest_lap_mm, length_mm=tile.length_mm, edition=edition),
    )


def greatest_headlap(*, where: str, headlap_mm: float, length_mm: float, edition: Edition) -> Finding:
    """The greatest lap on the slope against a third of the unit's length. mm.

    >>> [greatest_headlap(where="rear", headlap_mm=lap, length_mm=300.0, edition=Edition.GB).verdict.value
    ...  for lap in (99.9, 100.0, 100.1)]
    ['within', 'within', 'outside']
    """
    refuse_unreal(rule="greatest headlap", where=where, value=headlap_mm, unit="mm")
    limit = headlap_greatest_mm(edition, length_mm=length_mm)
    return Finding(
        rule="greatest headlap",
        where=where,
        proposed=headlap_mm,
        limit=limit.value,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=limit.citation,
        says="More than a third of the length and the units ride on one another: open the gauge, or choose a longer unit."
        if headlap_mm > limit.value + TOUCH
        else "Not more than a third of the length.",
    )


def plain_tile_sidelap(*, where: str, sidelap_mm: float, tile: PlainTile, edition: Edition) -> Finding:
    """The sidelap of the bond against the least. mm.

    >>> from gaugerod.coverings.double_lap_catalogue import plain_tile
    >>> tile = plain_tile("clay-plain-265x165")
    >>> [plain_tile_sidelap(where="rear", sidelap_mm=lap, tile=tile, edition=Edition.GB).verdict.value
    ...  for lap in (54.9, 55.0, 81.0)]
    ['outside', 'within', 'within']
    """
    refuse_unreal(rule="sidelap", where=where, value=sidelap_mm, unit="mm")
    limit = double_lap_figure(edition, DoubleLapFigure.PLAIN_TILE_SIDELAP_LEAST)
    if tile.sidelap_min_mm > limit.value:
        limit = Limit(value=tile.sidelap_min_mm, unit="mm", citation=tile.citation)
    return Finding(
        rule="sidelap",
        where=where,
        proposed=sidelap_mm,
        limit=limit.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=limit.citation,
        says="Joints of one course stand far enough from those of the next."
        if sidelap_mm >= limit.value - TOUCH
        else f"Joints come {misfit(limit.value - sidelap_mm)} too near those of the next course: keep half bond.",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class NailedCourses:
    """The least that is nailed. ``every_count``: all tiles of every so many-th course; 1 is every tile.

    ``perimeter_courses_count``  courses at eaves and top with every tile nailed; ``basis`` of that stands with it
    """

    every_count: int
    nails_each_count: int
    every_limit: Limit
    perimeter_courses_count: int
    perimeter_limit: Limit


def plain_tile_nailing(*, pitch_deg: float, tile: PlainTile, edition: Edition) -> NailedCourses:
    """Which plain tiles are nailed at the least; the wind may ask for more.

    Source: merchant page on BS 5534 fixing (published); the perimeter courses from memory.
    Scope: roofs and walls. At the end of every course at verges and abutments, too, one tile is nailed twice.

    >>> from gaugerod.coverings.double_lap_catalogue import plain_tile
    >>> tile = plain_tile("clay-plain-265x165")
    >>> [plain_tile_nailing(pitch_deg=pitch, tile=tile, edition=Edition.GB).every_count for pitch in (59.9, 60.0)]
    [5, 1]
    """
    refuse_unreal(rule="nailing", where="slope", value=pitch_deg, unit="degrees")
    steep = double_lap_figure(edition, DoubleLapFigure.PLAIN_TILE_NAILED_ALL_FROM)
    every = double_lap_figure(edition, DoubleLapFigure.PLAIN_TILE_NAILED_COURSE_EVERY)
    all_nailed = pitch_deg >= steep.value - TOUCH or not tile.nibs
    perimeter = double_lap_figure(edition, DoubleLapFigure.PLAIN_TILE_PERIMETER_COURSES)
    return NailedCourses(
        every_count=1 if all_nailed else int(every.value),
        nails_each_count=int(double_lap_figure(edition, DoubleLapFigure.PLAIN_TILE_NAILS_EACH).value),
        every_limit=steep if all_nailed else every,
        perimeter_courses_count=int(perimeter.value),
        perimeter_limit=perimeter,
    )


def plain_tile_gauge(*, where: str, gauge_mm: float, hung: Hung, edition: Edition) -> tuple[Finding, Finding]:
    """A gauge against both ends of the trade's range. mm.

    >>> [f.verdict.value for f in plain_tile_gauge(where="rear", gauge_mm=100.1, hung=Hung.ROOF, edition=Edition.GB)]
    ['within', 'outside']
    """
    return within_band(
        rule="plain tile gauge",
        where=where,
        length_mm=gauge_mm,
        band=plain_tile_gauge_band(hung=hung, edition=edition),
        too_little="The tiles ride on one another.",
        too_much="The lap is short.",
    )
