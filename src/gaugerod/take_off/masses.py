"""What goes onto the roof and what comes off it, all slopes together.

Source: the loads of the slopes, and the masses of lead and edge parts. Scope: None where any slope's mass is not known.
"""

from gaugerod.take_off.answer import Masses
from gaugerod.take_off.ask import TakeOffAsk


def masses(ask: TakeOffAsk) -> Masses:
    """New and old masses, kg."""
    if not ask.loads or len(ask.loads) < len(ask.slopes):
        return Masses(new_least_kg=None, new_greatest_kg=None, old_least_kg=None, old_greatest_kg=None)
    edges_kg = _edges_kg(ask)
    least = [load.least_kg for load in ask.loads]
    greatest = [load.greatest_kg for load in ask.loads]
    known = all(each is not None for each in (*least, *greatest))
    old = [(load.old, load.area_mm2 / 1e6) for load in ask.loads]
    return Masses(
        new_least_kg=sum(each or 0.0 for each in least) + edges_kg if known else None,
        new_greatest_kg=sum(each or 0.0 for each in greatest) + edges_kg if known else None,
        old_least_kg=_old_kg([None if band is None else band.least_kg_m2 * m2 for band, m2 in old]),
        old_greatest_kg=_old_kg([None if band is None else band.greatest_kg_m2 * m2 for band, m2 in old]),
    )


def _edges_kg(ask: TakeOffAsk) -> float:
    """Lead, and the parts of edges whose mass is known."""
    if ask.edges is None:
        return 0.0
    parts = sum(part.mass_kg or 0.0 for edge in ask.edges.edges for part in edge.parts)
    return ask.edges.lead_kg + parts


def _old_kg(each_kg: list[float | None]) -> float | None:
    known = [mass for mass in each_kg if mass is not None]
    return sum(known) if known and len(known) == len(each_kg) else None
