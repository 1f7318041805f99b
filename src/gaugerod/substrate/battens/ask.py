"""Battens: all that the plan of one roof depends on.

Axes: x along the eaves from the left end of the roof structure, y up the slope from the fascia face, mm. A batten's
height is that of its top edge.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from gaugerod.basis.limit import Limit
from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import Ring
from gaugerod.rules.batten_joints import CloseJoints
from gaugerod.rules.battens import BattenedCovering
from gaugerod.setting_out.courses import Rod
from gaugerod.standards.battens import BattenFigure, batten_figure, batten_stock, verge_stop_band
from gaugerod.standards.edition import Edition


@dataclass(frozen=True, slots=True, kw_only=True)
class EvenRafters:
    """Rafters at even centres: the middle of the first, then one every ``spacing_mm``.

    ``last_mm``  the middle of the last rafter where it stands out of step, as it does at most gables; None: in step
    """

    first_mm: float
    spacing_mm: float
    last_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredRafters:
    """The middle of every rafter, measured along the eaves, left to right."""

    at_mm: tuple[float, ...]


Rafters = EvenRafters | MeasuredRafters


@dataclass(frozen=True, slots=True, kw_only=True)
class BattenMark:
    """The top edge of one batten: its name on the sheet, and (x, y) at one station or more, left to right."""

    name: str
    at_mm: tuple[Point, ...]


def marks_of_rods(rods: Sequence[Rod]) -> tuple[BattenMark, ...]:
    """The battens of the courses, numbered from the eaves, from the marks of the rods.

    >>> rods = [Rod(at_mm=x, length_mm=1000.0, gauge_mm=300.0, marks_mm=(300.0, 600.0), exact_mm=(300.0, 600.0),
    ...             overhang_mm=50.0, below_apex_mm=400.0) for x in (0.0, 6000.0)]
    >>> [mark.name for mark in marks_of_rods(rods)], marks_of_rods(rods)[1].at_mm
    (['1', '2'], ((0.0, 600.0), (6000.0, 600.0)))
    """
    return tuple(
        BattenMark(name=str(number + 1), at_mm=tuple((rod.at_mm, rod.marks_mm[number]) for rod in rods))
        for number in range(len(rods[0].marks_mm))
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class EndStops:
    """How far short of each kind of edge a batten ends, square to the edge. At a hip it runs to the hip line.

    ``verge``       from the face of the undercloak or mortar
    ``valley``      from the lead welt, and ``valley_welt`` from the valley line to that welt
    ``abutment``    from the wall; ``secret_gutter``: there is one, which has its own band
    """

    verge: Limit
    valley: Limit
    valley_welt: Limit
    abutment: Limit
    secret_gutter: bool = False


def usual_stops(edition: Edition) -> EndStops:
    """The stops where the job says nothing: the middle of the band at a verge.

    >>> usual_stops(Edition.GB).verge.value, usual_stops(Edition.GB).valley.value
    (37.5, 10.0)
    """
    band = verge_stop_band(edition)
    return EndStops(
        verge=Limit(value=band.aim_mm, unit="mm", citation=band.citation),
        valley=batten_figure(edition, BattenFigure.VALLEY_STOP_FROM_WELT),
        valley_welt=batten_figure(edition, BattenFigure.VALLEY_WELT_FROM_LINE),
        abutment=batten_figure(edition, BattenFigure.ABUTMENT_STOP),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class BattenedSlope:
    """One slope to batten.

    ``outline``   of the roof structure, not out to the overhangs of the covering; each edge named and of its kind
    ``openings``  with trimmers at both sides, which hold up the batten ends
    ``marks``     every batten from the eaves up
    """

    where: str
    outline: Ring
    openings: tuple[Ring, ...]
    marks: tuple[BattenMark, ...]
    rafters: Rafters


@dataclass(frozen=True, slots=True, kw_only=True)
class Nailing:
    """``gun``: nails for a gun, not for the hand. ``counter_batten_depth_mm`` and its width: None when there are none."""

    gun: bool = False
    counter_batten_depth_mm: float | None = None
    counter_batten_width_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BattensAsk:
    """The slopes of one roof, battened out of one delivery, so that offcuts go from slope to slope.

    ``stock``         the lengths that can be had
    ``kerf``          what one cut of the saw takes
    ``close_joints``  how the rule on joints is read at gauges of 200 mm and less
    """

    slopes: tuple[BattenedSlope, ...]
    covering: BattenedCovering
    edition: Edition
    stock: tuple[Limit, ...]
    kerf: Limit
    stops: EndStops
    close_joints: CloseJoints = CloseJoints.APART
    nailing: Nailing = Nailing()


def usual_battens(*, slopes: tuple[BattenedSlope, ...], covering: BattenedCovering, edition: Edition) -> BattensAsk:
    """The ask where the job says nothing more: usual stock, saw and stops, each with its source."""
    return BattensAsk(
        slopes=slopes,
        covering=covering,
        edition=edition,
        stock=batten_stock(edition),
        kerf=batten_figure(edition, BattenFigure.SAW_KERF),
        stops=usual_stops(edition),
    )
