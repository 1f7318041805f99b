"""A slope to underlay, sound as it stands; a test changes what it is about."""

from dataclasses import replace
from typing import Any

from gaugerod.basis.citation import house
from gaugerod.basis.rounding import Division
from gaugerod.coverings.underlay import Resistance, Support, UnderlayRecord
from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import Edge, EdgeKind, Ring
from gaugerod.setting_out.courses import Rod
from gaugerod.standards.edition import Edition
from gaugerod.substrate.underlay.ask import RidgeMade, UnderlayAsk

MEMBRANE = UnderlayRecord(
    title="membrane",
    roll_width_mm=1000.0,
    roll_length_mm=50000.0,
    resistance=Resistance.LOW,
    citation=house("no maker's"),
)
GABLE = (EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.RIDGE, EdgeKind.VERGE)


def ring(points: tuple[Point, ...], kinds: tuple[EdgeKind, ...]) -> Ring:
    """The outline, each edge called by its kind and number."""
    return Ring(
        points_mm=points, edges=tuple(Edge(name=f"{kind.value} {at}", kind=kind) for at, kind in enumerate(kinds, 1))
    )


def rectangle(*, width_mm: float = 9000.0, length_mm: float = 5000.0, kinds: tuple[EdgeKind, ...] = GABLE) -> Ring:
    """A square slope, its kinds from the foot counter-clockwise."""
    return ring(((0.0, 0.0), (width_mm, 0.0), (width_mm, length_mm), (0.0, length_mm)), kinds)


def rod(marks_mm: tuple[float, ...], *, at_mm: float = 0.0, length_mm: float = 5000.0) -> Rod:
    """A rod with these marks."""
    return Rod(
        at_mm=at_mm,
        length_mm=length_mm,
        gauge_mm=marks_mm[1] - marks_mm[0] if len(marks_mm) > 1 else 300.0,
        marks_mm=marks_mm,
        exact_mm=marks_mm,
        overhang_mm=50.0,
        below_apex_mm=length_mm - marks_mm[-1],
    )


def level_rods(*, first_mm: float = 345.0, gauge_mm: float = 345.0, count: int = 14) -> tuple[Rod, ...]:
    """Battens at one gauge, level."""
    return (rod(tuple(first_mm + gauge_mm * batten for batten in range(count))),)


def underlay_ask(**changes: Any) -> UnderlayAsk:  # noqa: ANN401  any field of the ask
    """Nine metres by five at 35 degrees, battens 345 mm apart, rafters 600 mm apart, draped, a dry ridge."""
    ask = UnderlayAsk(
        where="rear",
        outline=rectangle(),
        pitch_deg=35.0,
        rods=level_rods(),
        batten_width_mm=50.0,
        rafters_mm=tuple(600.0 * at for at in range(16)),
        record=MEMBRANE,
        support=Support.RAFTERS,
        counter_battens=False,
        ridge=RidgeMade.DRY_VENTILATED,
        division=Division.MILLIMETRE,
        edition=Edition.GB,
    )
    return replace(ask, **changes)
