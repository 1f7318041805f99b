"""The ventilation of one roof: openings in mm, in mm² in each metre, and in total along every eaves and ridge.

Axes do not matter here: lengths are those of the edges the openings run along, mm.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import isfinite

from gaugerod.basis.citation import Citation
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.basis.working import Step
from gaugerod.rules.ventilation import OpeningsNeeded, VentConditions, openings_needed
from gaugerod.setting_out.said import counted
from gaugerod.standards.edition import Edition
from gaugerod.standards.ventilation import VentFigure, vent_figure


@dataclass(frozen=True, slots=True, kw_only=True)
class VentedEdge:
    """An edge an opening runs along: its name, and its length."""

    name: str
    length_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class VentilationAsk:
    """One roof: every eaves, every ridge or top edge, and what the openings depend on.

    ``tops`` is empty where all hips meet in one point.
    """

    where: str
    eaves: tuple[VentedEdge, ...]
    tops: tuple[VentedEdge, ...]
    conditions: VentConditions
    edition: Edition

    def __post_init__(self) -> None:
        faults = [*_faults(self)]
        if faults:
            raise InputRefused(faults)


@dataclass(frozen=True, slots=True, kw_only=True)
class VentOpening:
    """An opening along one edge, as a continuous slot. Areas are net: of the vent, not of its face.

    ``serves`` says what it lets air into.

    >>> from gaugerod.basis.citation import house
    >>> slot = VentOpening(edge=VentedEdge(name="eaves", length_mm=10000.0), slot_mm=10.0, serves="the roof space",
    ...                    citation=house("example"))
    >>> slot.per_metre_mm2_per_m, slot.total_mm2
    (10000.0, 100000.0)
    """

    edge: VentedEdge
    slot_mm: float
    serves: str
    citation: Citation

    @property
    def per_metre_mm2_per_m(self) -> float:
        """Net free area in each metre of the edge."""
        return self.slot_mm * 1000.0

    @property
    def total_mm2(self) -> float:
        """Net free area along the whole edge."""
        return self.slot_mm * self.edge.length_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class Ventilation:
    """The answer. ``low`` at each eaves, ``high`` at each ridge or top edge; empty where none is asked for.

    ``instead``  openings at high level that may stand in place of all of ``low``
    """

    where: str
    needed: OpeningsNeeded
    low: tuple[VentOpening, ...]
    high: tuple[VentOpening, ...]
    instead: tuple[VentOpening, ...]
    findings: tuple[Finding, ...]
    says: tuple[str, ...]
    working: Step

    @property
    def low_total_mm2(self) -> float:
        """Net free area at all eaves together."""
        return sum(opening.total_mm2 for opening in self.low)

    @property
    def high_total_mm2(self) -> float:
        """Net free area at high level together."""
        return sum(opening.total_mm2 for opening in self.high)


def ventilate(ask: VentilationAsk) -> Ventilation:
    """Every opening of one roof.

    Source and scope: those of ``rules.ventilation``; 1 mm of continuous slot is 1000 mm² in each metre (arithmetic).

    >>> from gaugerod.coverings.underlay import Resistance
    >>> from gaugerod.rules.ventilation import BuildingSize, Ceiling, Insulated
    >>> felt = VentConditions(pitch_deg=30.0, underlay=Resistance.HIGH, air_permeable=False, mono=False,
    ...     insulated=Insulated.AT_CEILING, ceiling=Ceiling.NORMAL, building=BuildingSize.DWELLING,
    ...     covering_air_open=True, span_mm=8000.0, through_flow=True)
    >>> eaves = (VentedEdge(name="front", length_mm=10000.0), VentedEdge(name="rear", length_mm=10000.0))
    >>> roof = ventilate(VentilationAsk(where="house", eaves=eaves, tops=(VentedEdge(name="ridge", length_mm=10000.0),),
    ...                                 conditions=felt, edition=Edition.GB))
    >>> [opening.total_mm2 for opening in roof.low], roof.high
    ([100000.0, 100000.0], ())
    """
    needed = openings_needed(where=ask.where, conditions=ask.conditions, edition=ask.edition)
    space, battens = "the roof space", "the space between counter-battens"
    low = (*_along(ask.eaves, needed.eaves, space), *_along(ask.eaves, needed.batten_low, battens))
    high = (*_along(ask.tops, needed.high, space), *_along(ask.tops, needed.batten_high, battens))
    instead = tuple(_along(ask.tops, needed.instead_high, space))
    return Ventilation(
        where=ask.where,
        needed=needed,
        low=low,
        high=high,
        instead=instead,
        findings=(*needed.findings, *_nowhere_high(ask, needed)),
        says=tuple(_says(ask, needed, low=low, high=high, instead=instead)),
        working=_working(ask, (*low, *high)),
    )


def _along(edges: tuple[VentedEdge, ...], slot: Limit | None, serves: str) -> Iterator[VentOpening]:
    if slot is not None:
        for edge in edges:
            yield VentOpening(edge=edge, slot_mm=slot.value, serves=serves, citation=slot.citation)


def _nowhere_high(ask: VentilationAsk, needed: OpeningsNeeded) -> Iterator[Finding]:
    if needed.high is not None and not ask.tops:
        yield not_covered(
            rule="ventilation at high level",
            where=ask.where,
            proposed=None,
            unit="mm",
            citation=needed.high.citation,
            says=(
                f"A continuous {needed.high.value:g} mm is asked for at high level, and there is no ridge to put it along. "
                "Vents among the units near the top take its place: how many depends on the net free area of each."
            ),
        )


def _says(
    ask: VentilationAsk,
    needed: OpeningsNeeded,
    *,
    low: tuple[VentOpening, ...],
    high: tuple[VentOpening, ...],
    instead: tuple[VentOpening, ...],
) -> Iterator[str]:
    for opening in (*low, *high):
        yield f"Along the {opening.edge.name}, into {opening.serves}: {_figures(opening)}."
    for opening in instead:
        yield f"Or, in place of the openings at the eaves, along the {opening.edge.name}: {_figures(opening)}."
    if needed.high is None and not instead:
        yield "No opening at high level is asked for."
    if needed.clear_void is not None:
        yield f"Keep {needed.clear_void.value:g} mm clear above the insulation from the eaves to the top."
    least, greatest = (vent_figure(ask.edition, which) for which in (VentFigure.MESH_LEAST, VentFigure.MESH_GREATEST))
    yield (
        f"Mesh of {least.value:g} to {greatest.value:g} mm keeps birds and large insects out ({least.citation.basis.value}). "
        "The areas are the net free area of the vent as its maker states it, not the size of its face."
    )


def _figures(opening: VentOpening) -> str:
    return (
        f"a continuous {opening.slot_mm:g} mm, which is {opening.per_metre_mm2_per_m:.0f} mm² in each metre and "
        f"{opening.total_mm2:.0f} mm² in all"
    )


def _working(ask: VentilationAsk, openings: tuple[VentOpening, ...]) -> Step:
    return Step(
        name=f"ventilation of {ask.where}",
        formula="net free area of every opening together",
        inputs={"openings": counted(len(openings), "opening"), "pitch (°)": ask.conditions.pitch_deg},
        value=sum(opening.total_mm2 for opening in openings),
        unit="mm2",
        parts=tuple(
            Step(
                name=f"{opening.edge.name}, into {opening.serves}",
                formula="slot × length",
                inputs={"slot (mm)": opening.slot_mm, "length (mm)": opening.edge.length_mm},
                value=opening.total_mm2,
                unit="mm2",
                citation=opening.citation,
            )
            for opening in openings
        ),
    )


def _faults(ask: VentilationAsk) -> Iterator[Fault]:
    if not ask.eaves:
        yield Fault(f"{ask.where}.eaves", "none", "one or more", "Name every eaves of this roof with its length.")
    for edge in (*ask.eaves, *ask.tops):
        if not (isfinite(edge.length_mm) and edge.length_mm > 0):
            yield Fault(f"{ask.where}.{edge.name}", f"{edge.length_mm:g} mm", "above nothing", "Measure it again.")
