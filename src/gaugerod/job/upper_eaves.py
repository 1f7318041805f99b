"""Eaves of a slope by outline that the courses do not start from: where the tails fall there, against the overhang's band."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.band import Band
from gaugerod.basis.finding import Finding
from gaugerod.geometry.polygon import Point
from gaugerod.job.model import SlopeOutline
from gaugerod.job.upper_edges import edge_names
from gaugerod.laying.ask import EdgeKind
from gaugerod.rules.band_findings import within_band
from gaugerod.setting_out.courses import Rod

_REMEDY = (
    "No unit is cut at its tail: set the part above these eaves out as a slope of its own, or move their fascia by as much, "
    "so that a whole course starts there."
)
_LEVEL_MM = 1.0


def upper_eaves_findings(
    outline: SlopeOutline, rods: Sequence[Rod], tails_mm: Sequence[Sequence[float]], *, band: Band, where: str
) -> Iterator[Finding]:
    """Two for each of the higher eaves: how far the tails of the course nearest its wish reach past the fascia. mm.

    ``tails_mm``  of each course at every rod; ``band`` of the overhang, on the slope
    """
    names = edge_names(outline.points_mm, outline.kinds)
    for index, kind in enumerate(outline.kinds):
        start, stop = outline.points_mm[index], outline.points_mm[(index + 1) % len(outline.points_mm)]
        if kind is not EdgeKind.EAVES or max(start[1], stop[1]) <= _LEVEL_MM:
            continue
        past_mm = _past_fascia_mm(rods, tails_mm, start, stop, wished_mm=band.aim_mm)
        yield from within_band(
            rule="upper eaves overhang",
            where=f"{where}, {names[index]}",
            length_mm=past_mm,
            band=band,
            too_little=_REMEDY,
            too_much=_REMEDY,
        )


def _past_fascia_mm(
    rods: Sequence[Rod], tails_mm: Sequence[Sequence[float]], start: Point, stop: Point, *, wished_mm: float
) -> float:
    """How far down past these eaves the tails of one course come, at their middle: the course that comes nearest the wish."""
    at_mm, eaves_mm = (start[0] + stop[0]) / 2, (start[1] + stop[1]) / 2
    past_mm = [eaves_mm - _height_mm(rods, heights_mm, at_mm) for heights_mm in tails_mm]
    return min(past_mm, key=lambda past: max(past - wished_mm, wished_mm - past))


def _height_mm(rods: Sequence[Rod], heights_mm: Sequence[float], at_mm: float) -> float:
    """The height of a line at a place, on the straight line through the outermost rods."""
    first, last = rods[0], rods[-1]
    if first.at_mm == last.at_mm:
        return heights_mm[0]
    share = (at_mm - first.at_mm) / (last.at_mm - first.at_mm)
    return heights_mm[0] + (heights_mm[-1] - heights_mm[0]) * share
