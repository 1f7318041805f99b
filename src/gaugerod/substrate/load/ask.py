"""What the load of one slope depends on."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import isfinite

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.basis.limit import Limit
from gaugerod.coverings.underlay import UnderlayRecord
from gaugerod.standards.edition import Edition
from gaugerod.standards.roof_masses import MassBand
from gaugerod.substrate.load.covering_mass import Covering


@dataclass(frozen=True, slots=True, kw_only=True)
class Timber:
    """Battens, or counter-battens, of one section: all of them on the slope, end to end."""

    name: str
    width_mm: float
    depth_mm: float
    length_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class UnderlayLaid:
    """The underlay, and its area as laid, laps and all."""

    record: UnderlayRecord
    laid_area_mm2: float


@dataclass(frozen=True, slots=True, kw_only=True)
class OldRoof:
    """What is taken off. ``below`` None: its battens and underlay weigh as much as the new ones (house)."""

    title: str
    covering: MassBand
    below: MassBand | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadAsk:
    """One slope to weigh.

    ``area_mm2``   of the covering on the slope
    ``gauge_mm``   mean gauge
    ``cover_mm``   what one unit adds to a course; None: not known
    ``stated``     the covering's mass as weighed or as its maker gives it; None: reckoned, or typical
    ``timbers``    empty: not known, then battens and underlay together are typical
    ``underlay``   None: not known, likewise
    ``old``        what is taken off; None: a new roof
    ``warn``, ``significant``  thresholds of the change in mass, per cent; None: the edition's
    """

    where: str
    covering: Covering
    area_mm2: float
    gauge_mm: float
    cover_mm: float | None
    edition: Edition
    stated: MassBand | None = None
    timbers: tuple[Timber, ...] = ()
    underlay: UnderlayLaid | None = None
    old: OldRoof | None = None
    warn: Limit | None = None
    significant: Limit | None = None

    def __post_init__(self) -> None:
        faults = [*_faults(self)]
        if faults:
            raise InputRefused(faults)


def _faults(ask: LoadAsk) -> Iterator[Fault]:
    figures = [
        ("area", ask.area_mm2, "mm²"),
        ("gauge", ask.gauge_mm, "mm"),
        ("cover", ask.cover_mm, "mm"),
        ("warn", None if ask.warn is None else ask.warn.value, "per cent"),
        ("significant", None if ask.significant is None else ask.significant.value, "per cent"),
        ("underlay.laid_area", None if ask.underlay is None else ask.underlay.laid_area_mm2, "mm²"),
    ]
    if ask.underlay is not None:
        figures.append(("underlay.mass", ask.underlay.record.mass_kg_m2, "kg/m²"))
    bands = [("stated", ask.stated)]
    if ask.old is not None:
        bands += [("old.covering", ask.old.covering), ("old.below", ask.old.below)]
    for name, band in bands:
        if band is not None:
            figures += [(name, band.least_kg_m2, "kg/m²"), (name, band.greatest_kg_m2, "kg/m²")]
    for timber in ask.timbers:
        figures += [
            (f"{timber.name}.width", timber.width_mm, "mm"),
            (f"{timber.name}.depth", timber.depth_mm, "mm"),
            (f"{timber.name}.length", timber.length_mm, "mm"),
        ]
    for name, value, unit in figures:
        if value is not None and not (isfinite(value) and value > 0):
            yield Fault(f"{ask.where}.{name}", f"{value:g} {unit}", "above nothing", "Measure it again.")
