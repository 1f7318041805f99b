"""Slopes to fix: those of the laying, and whole jobs as they are set out."""

from dataclasses import replace

from gaugerod.coverings.double_lap import RandomSlates
from gaugerod.coverings.double_lap_catalogue import plain_tile
from gaugerod.fixing.ask import FixingAsk, HeldCovering, NailWished, Units
from gaugerod.fixing.extra_courses import extra_units, under_eaves_units
from gaugerod.job.model import Job
from gaugerod.job.result import SlopeResult
from gaugerod.laying.ask import LayingAsk
from gaugerod.laying.cutting import cut_units
from gaugerod.laying.lay import lay
from gaugerod.rules.nails import NailMetal
from gaugerod.standards.edition import Edition

CLAY = plain_tile("clay-plain-265x165")
ALUMINIUM = NailWished(metal=NailMetal.ALUMINIUM)


def fixing_ask(
    asked: LayingAsk, *, covering: HeldCovering = CLAY, pitch_deg: float = 40.0, nail: NailWished = ALUMINIUM
) -> FixingAsk:
    """A slope laid and to be fixed, without courses under the eaves or short ones at the top."""
    laying = lay(asked)
    full = Units(name="course", ask=asked, laying=laying, pieces=cut_units(asked, laying))
    return FixingAsk(
        where=asked.where,
        pitch_deg=pitch_deg,
        covering=covering,
        full=full,
        extra=(),
        edition=Edition.GB,
        nail=nail,
    )


def of_result(job: Job, slope: SlopeResult, *, nail: NailWished = ALUMINIUM) -> FixingAsk:
    """The fixing of one slope of a job as it is set out."""
    assert slope.laid is not None
    laid = slope.laid
    extra: tuple[Units, ...] = ()
    if slope.double_lap is not None:
        extra = tuple(extra_units(laid.ask, extras=slope.double_lap))
    elif isinstance(job.covering, RandomSlates) and slope.diminishing is not None:
        extra = (under_eaves_units(laid.ask, length_mm=slope.diminishing.under_eaves_length_mm),)
    base = fixing_ask(laid.ask, covering=job.covering, pitch_deg=slope.slope.pitch_deg, nail=nail)
    return replace(base, full=replace(base.full, laying=laid.laying, pieces=laid.pieces), extra=extra)
