"""What goes onto the roof and what comes off it, all slopes together.

Source: the loads of the slopes, and the masses of lead and edge parts. Scope: None where any slope of the job is not weighed;
edge parts whose mass is not known are named in a finding.
"""

from collections.abc import Iterator

from gaugerod.basis.citation import house
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.edges.answer import MadeEdge
from gaugerod.take_off.answer import Masses
from gaugerod.take_off.ask import TakeOffAsk

RULE = "mass on the roof"
NOTHING_GUESSED = house("a mass that nobody states is not guessed")


def masses(ask: TakeOffAsk) -> Masses:
    """New and old masses, kg."""
    if not ask.loads or _not_weighed(ask):
        return Masses(new_least_kg=None, new_greatest_kg=None, old_least_kg=None, old_greatest_kg=None)
    edges_kg = _edges_kg(ask)
    old = [(load.old, load.area_mm2 / 1e6) for load in ask.loads]
    return Masses(
        new_least_kg=_sum_kg([load.least_kg for load in ask.loads], besides_kg=edges_kg),
        new_greatest_kg=_sum_kg([load.greatest_kg for load in ask.loads], besides_kg=edges_kg),
        old_least_kg=_sum_kg([None if band is None else band.least_kg_m2 * m2 for band, m2 in old]),
        old_greatest_kg=_sum_kg([None if band is None else band.greatest_kg_m2 * m2 for band, m2 in old]),
    )


def mass_findings(ask: TakeOffAsk) -> Iterator[Finding]:
    """What the masses leave out, where masses were asked for at all."""
    if not ask.loads:
        return
    missing = _not_weighed(ask)
    if missing:
        yield _left_out(
            where=", ".join(missing),
            says=f"Not weighed: {', '.join(missing)}. So no mass is told for the roof as a whole.",
        )
        return
    unknown = sorted({part.what for edge in _edges(ask) for part in edge.parts if part.mass_kg is None})
    if unknown:
        yield _left_out(
            where="edges",
            says=f"No mass is known for these, and the mass on the roof leaves them out: {'; '.join(unknown)}.",
        )


def _edges(ask: TakeOffAsk) -> tuple[MadeEdge, ...]:
    return () if ask.edges is None else ask.edges.edges


def _not_weighed(ask: TakeOffAsk) -> list[str]:
    """Slopes of the job that no load is told for."""
    weighed = {load.where for load in ask.loads}
    names = (*(slope.name for slope in ask.slopes), *ask.not_laid, *ask.not_set_out)
    return [name for name in names if name not in weighed]


def _edges_kg(ask: TakeOffAsk) -> float:
    """Lead, and the parts of edges whose mass is known."""
    parts = sum(part.mass_kg or 0.0 for edge in _edges(ask) for part in edge.parts)
    return parts + (0.0 if ask.edges is None else ask.edges.lead_kg)


def _sum_kg(each_kg: list[float | None], *, besides_kg: float = 0.0) -> float | None:
    """All together; None where one is not known."""
    known = [mass for mass in each_kg if mass is not None]
    return sum(known) + besides_kg if len(known) == len(each_kg) else None


def _left_out(*, where: str, says: str) -> Finding:
    return not_covered(rule=RULE, where=where, proposed=None, unit="kg", citation=NOTHING_GUESSED, says=says)
