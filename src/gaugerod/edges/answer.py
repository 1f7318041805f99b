"""How the edges of a roof are made: what comes back. Plain data; the take-off and every sheet read it."""

from dataclasses import dataclass
from enum import StrEnum

from gaugerod.basis.citation import Citation
from gaugerod.basis.finding import Finding
from gaugerod.basis.working import Step
from gaugerod.edges.ask import EdgeLine, EdgeOpening


class PartUnit(StrEnum):
    """What a part is counted in."""

    PIECES = "pieces"
    METRES = "m"
    LITRES = "litres"
    KILOGRAMS = "kg"


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitRun:
    """Units along one line, from one end to the other.

    ``units_count``  units to have; ``whole_count`` of them laid whole
    ``cut_mm``       what each cut unit covers: none under half a unit, so where need be two share what is left over
    ``cover_mm``     what a whole unit covers
    ``lap_mm``       how far each lies under the next: a cut unit is longer by it than what it covers
    """

    units_count: int
    whole_count: int
    cut_mm: tuple[float, ...]
    cover_mm: float
    length_mm: float
    lap_mm: float = 0.0

    @property
    def cut_long_mm(self) -> tuple[float, ...]:
        """How long to cut each of the cut units, its lap included."""
        return tuple(covers_mm + self.lap_mm for covers_mm in self.cut_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgePart:
    """Something an edge takes, counted before any allowance.

    ``item``    a stable name, the same for like parts of every edge: ``ridge-unit``, ``hip-iron``, ``undercloak``
    ``what``    what it is, in words, with its size where it has one
    ``net``     how much of it, in ``unit``: whole pieces, or metres, litres, kilograms
    ``how``     how it was come by, in words
    """

    item: str
    what: str
    net: float
    unit: PartUnit
    how: str
    citation: Citation
    mass_kg: float | None = None


class LeadUse(StrEnum):
    """What a piece of lead is for."""

    SOAKER = "soaker"
    STEP_FLASHING = "step-flashing"
    STEP_AND_COVER = "step-and-cover-flashing"
    APRON = "apron"
    COVER_FLASHING = "cover-flashing"
    VALLEY_LINING = "valley-lining"
    VALLEY_SADDLE = "valley-saddle"
    BACK_GUTTER = "back-gutter"


@dataclass(frozen=True, slots=True, kw_only=True)
class LeadPieces:
    """Pieces of sheet lead, all alike, for one use at one edge.

    ``code``      by BS EN 12588: its thickness in mm and mass in kg/m² stand beside it
    ``length_mm`` of each piece as it is cut, its lap included; ``width_mm`` flat, before it is dressed
    ``run_mm``    what the pieces cover together
    ``lap_mm``    of one piece over the next; nothing for pieces that stand alone
    """

    use: LeadUse
    code: int
    thickness_mm: float
    kg_m2: float
    count: int
    length_mm: float
    width_mm: float
    run_mm: float
    lap_mm: float
    how: str
    citations: tuple[Citation, ...]

    @property
    def area_mm2(self) -> float:
        """Of all pieces together."""
        return self.count * self.length_mm * self.width_mm

    @property
    def mass_kg(self) -> float:
        """Of all pieces together."""
        return self.area_mm2 / 1e6 * self.kg_m2


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeEdge:
    """One edge, or one opening: how it is made, and what it takes.

    ``line``      the line; None for an opening
    ``opening``   the opening; None for a line
    ``made``      how, in a few words; empty: it was not said, so only its length is told
    ``run``       units along it; None where there are none
    ``clear_mm``  clear width of a valley; None elsewhere
    ``says``      how it is made, in steps, with this edge's own figures
    """

    name: str
    line: EdgeLine | None
    opening: EdgeOpening | None
    made: str
    run: UnitRun | None
    clear_mm: float | None
    parts: tuple[EdgePart, ...]
    lead: tuple[LeadPieces, ...]
    says: tuple[str, ...]
    findings: tuple[Finding, ...]
    working: Step


@dataclass(frozen=True, slots=True, kw_only=True)
class RoofEdges:
    """Every edge and opening of the job."""

    edges: tuple[MadeEdge, ...]
    findings: tuple[Finding, ...]
    working: Step

    @property
    def lead(self) -> tuple[LeadPieces, ...]:
        """All pieces of lead, edge by edge."""
        return tuple(pieces for edge in self.edges for pieces in edge.lead)

    @property
    def lead_kg(self) -> float:
        """Of all lead together."""
        return sum(pieces.mass_kg for pieces in self.lead)
