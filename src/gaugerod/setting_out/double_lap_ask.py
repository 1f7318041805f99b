"""Plain tiles and sized slates as courses to set out: what the courses of any covering are asked with.

The mark of a course is where it hangs: the top edge of a plain tile's batten, the nail line of a head-nailed slate. A
centre-nailed slate is first set out by its head, for its nails stand just clear of the head of the slate below: the
head lines go up in equal gauges, and the nail lines lie one clearance above them, one course up.
"""

from dataclasses import dataclass

from gaugerod.basis.band import Band
from gaugerod.basis.citation import Citation
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division
from gaugerod.coverings.double_lap import Nailing, PlainTile, SizedSlate
from gaugerod.rules.double_lap_gauge import greatest_gauge_mm
from gaugerod.rules.plain_tile import Hung, plain_tile_gauge_band
from gaugerod.setting_out.courses import CoursesAsk
from gaugerod.setting_out.stations import NailedRod, Opening, Station
from gaugerod.standards.double_lap import DoubleLapFigure, double_lap_figure, headlap_greatest_mm
from gaugerod.standards.edition import Edition

DoubleLapUnit = PlainTile | SizedSlate
"""A covering whose courses are all of one length and lap the second course below."""

RIDGE_UNKNOWN_MM = 25.0
"""Width of the top band when nobody knows how far the ridge reaches down (house: as for single-lap tiles)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DoubleLapAsk:
    """One slope of plain tiles or sized slates. Lengths in mm along the slope, y up from the fascia face.

    ``headlap``         the lap to keep, over the course two below (a head-nailed slate's hole)
    ``overhang``        band for the tail past the fascia face, measured on the slope
    ``ridge_cover_mm``  apex down to the lower edge of the ridge; None: not known
    ``nailed``          battens or nail lines already there; not for centre-nailed slates
    """

    where: str
    unit: DoubleLapUnit
    hung: Hung
    stations: tuple[Station, ...]
    headlap: Limit
    overhang: Band
    ridge_cover_mm: float | None
    edition: Edition
    division: Division
    openings: tuple[Opening, ...] = ()
    nailed: tuple[NailedRod, ...] = ()

    @property
    def lost_at_head_mm(self) -> float:
        """Length that does not count for the lap."""
        return self.unit.lost_at_head_mm if isinstance(self.unit, SizedSlate) else 0.0

    @property
    def tail_to_mark_mm(self) -> float:
        """From the tail up to the line the courses are first set out by. Raises NothingToSetOut when it is not known."""
        if isinstance(self.unit, SizedSlate):
            return self.unit.length_mm - self.lost_at_head_mm
        if self.unit.hanging_length_mm is None:
            raise NothingToSetOut(f"{self.where}: measure the hanging length of {self.unit.title}, nib face to tail")
        return self.unit.hanging_length_mm

    @property
    def centre_nailed(self) -> bool:
        """Is it a slate nailed near its middle?"""
        return isinstance(self.unit, SizedSlate) and self.unit.nailing is Nailing.CENTRE


@dataclass(frozen=True, slots=True, kw_only=True)
class TopRoom:
    """Where the mark of the top full course may lie below the apex, and what that says of the ridge.

    ``ridge_laps``  is there a ridge that laps the top full course by the headlap, if the mark is in the band?
    """

    band: Band
    ridge_laps: bool
    findings: tuple[Finding, ...]


def courses_ask(ask: DoubleLapAsk) -> CoursesAsk:
    """The same slope as any covering's courses are asked: marks, greatest and least gauge, bands at both ends.

    The gauge limits follow from the lap and a third of the length; plain tiles also keep the custom of the trade.
    """
    if ask.centre_nailed and ask.nailed:
        raise NothingToSetOut(
            f"{ask.where}: slates nailed in the middle are set out by their heads, which battens already nailed do not "
            "show. Measure the heads of the slates that are laid, and set out from there"
        )
    least, greatest = gauge_range(ask)
    top = top_room(ask)
    return CoursesAsk(
        where=ask.where,
        stations=ask.stations,
        unit_length_mm=ask.unit.length_mm,
        hanging_length_mm=ask.tail_to_mark_mm,
        gauge_min_mm=least.value,
        gauge_max_mm=greatest.value,
        gauge_citation=greatest.citation,
        overhang=ask.overhang,
        top=top.band,
        division=ask.division,
        openings=ask.openings,
        nailed=ask.nailed,
        ridge_lap_first=top.ridge_laps,
    )


def gauge_range(ask: DoubleLapAsk) -> tuple[Limit, Limit]:
    """The least gauge (greatest lap) and the greatest gauge (least lap), mm.

    Raises NothingToSetOut when nothing lies between them: the lap is more than a third of the length.

    >>> from gaugerod.basis.citation import house
    >>> from gaugerod.coverings.double_lap_catalogue import plain_tile
    >>> ask = DoubleLapAsk(where="rear", unit=plain_tile("clay-plain-265x165"), hung=Hung.ROOF, stations=(),
    ...     headlap=Limit(value=65.0, unit="mm", citation=house("example")), overhang=Band(45.0, 55.0, house("example")),
    ...     ridge_cover_mm=150.0, edition=Edition.GB, division=Division.MILLIMETRE)
    >>> [round(limit.value, 2) for limit in gauge_range(ask)]
    [88.33, 100.0]
    """
    length_mm, lost_mm = ask.unit.length_mm, ask.lost_at_head_mm
    most = headlap_greatest_mm(ask.edition, length_mm=length_mm)
    greatest = _limit(
        greatest_gauge_mm(length_mm=length_mm, headlap_mm=ask.headlap.value, lost_at_head_mm=lost_mm),
        ask.headlap.citation,
    )
    least = _limit(
        greatest_gauge_mm(length_mm=length_mm, headlap_mm=most.value, lost_at_head_mm=lost_mm), most.citation
    )
    if isinstance(ask.unit, PlainTile):
        custom = plain_tile_gauge_band(hung=ask.hung, edition=ask.edition)
        greatest = min(greatest, _limit(custom.greatest_mm, custom.citation), key=lambda limit: limit.value)
        least = max(least, _limit(custom.least_mm, custom.citation), key=lambda limit: limit.value)
    if least.value > greatest.value:
        raise NothingToSetOut(
            f"{ask.where}: a lap of {ask.headlap.value:g} mm is more than {ask.unit.title} can be laid with; "
            f"a third of its length, {most.value:.0f} mm, is the most. Choose a longer unit"
        )
    return least, greatest


def top_room(ask: DoubleLapAsk) -> TopRoom:
    """Room for the mark of the top full course: its head stays clear of the apex, and the ridge laps it by the headlap.

    One short course stands between it and the ridge. Source: geometry; the clearance is common practice.
    """
    clear = double_lap_figure(ask.edition, DoubleLapFigure.SLATE_HEADS_BELOW_APEX)
    least_mm = clear.value + ask.unit.length_mm - ask.tail_to_mark_mm
    if ask.ridge_cover_mm is None:
        unknown = not_covered(
            rule="ridge lap",
            where=ask.where,
            proposed=None,
            unit="mm",
            citation=clear.citation,
            says="How far the ridge reaches down the slope is not known: measure it, so that its lap can be checked.",
        )
        return TopRoom(
            band=Band(least_mm=least_mm, greatest_mm=least_mm + RIDGE_UNKNOWN_MM, citation=clear.citation),
            ridge_laps=False,
            findings=(unknown,),
        )
    usable_mm = ask.unit.length_mm - ask.lost_at_head_mm - ask.tail_to_mark_mm
    lowest_mm = ask.ridge_cover_mm - ask.headlap.value + usable_mm
    needed_mm = ask.headlap.value + clear.value + ask.lost_at_head_mm
    reaches = lowest_mm >= least_mm - TOUCH
    finding = Finding(
        rule="ridge cover",
        where=ask.where,
        proposed=ask.ridge_cover_mm,
        limit=needed_mm,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=ask.headlap.citation,
        says="The ridge reaches far enough down to lap the top full course by the headlap."
        if reaches
        else "The ridge is too narrow to lap the top full course by the headlap: use a wider one, or a flashing below it.",
    )
    band = Band(least_mm=least_mm, greatest_mm=max(lowest_mm, least_mm), citation=ask.headlap.citation)
    return TopRoom(band=band, ridge_laps=reaches, findings=(finding,))


def _limit(value: float, citation: Citation) -> Limit:
    return Limit(value=value, unit="mm", citation=citation)
