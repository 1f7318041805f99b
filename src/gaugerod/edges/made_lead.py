"""An edge made with lead: its answer with the working behind every mass, and the cautions that go with the sheet."""

from collections.abc import Sequence

from gaugerod.basis.finding import Finding
from gaugerod.basis.working import Step
from gaugerod.edges.answer import EdgePart, LeadPieces, MadeEdge
from gaugerod.edges.ask import EdgeLine, EdgeOpening
from gaugerod.edges.untold import laid_length

LEAD_CAUTION = (
    "Lead is poisonous: gloves on, wash before you eat or smoke, no food on the roof. No torch near underlay or battens. Carry "
    "rolls in short lengths."
)


def made_with_lead(
    at: EdgeLine | EdgeOpening,
    *,
    made: str,
    lead: Sequence[LeadPieces],
    says: Sequence[str],
    findings: Sequence[Finding],
    parts: Sequence[EdgePart] = (),
    clear_mm: float | None = None,
) -> MadeEdge:
    """The line or the opening with what it takes."""
    line = at if isinstance(at, EdgeLine) else None
    opening = at if isinstance(at, EdgeOpening) else None
    name = at.name if isinstance(at, EdgeLine) else f"{at.slope}, {at.name}"
    length = laid_length(at) if isinstance(at, EdgeLine) else _opening_length(at, name)
    return MadeEdge(
        name=name,
        line=line,
        opening=opening,
        made=made,
        run=None,
        clear_mm=clear_mm,
        parts=tuple(parts),
        lead=tuple(lead),
        says=(*says, *((LEAD_CAUTION,) if lead else ())),
        findings=tuple(dict.fromkeys(findings)),
        working=Step(
            name=name,
            formula="mass of all its lead",
            inputs={"pieces": float(sum(pieces.count for pieces in lead))},
            value=sum(pieces.mass_kg for pieces in lead),
            unit="kg",
            parts=(length, *(_mass(pieces) for pieces in lead)),
        ),
    )


def _opening_length(opening: EdgeOpening, name: str) -> Step:
    return Step(
        name=f"{name}: all round",
        formula="2 × (width + height up the slope)",
        inputs={"width (mm)": opening.width_mm, "height (mm)": opening.height_mm},
        value=2 * (opening.width_mm + opening.height_mm),
        unit="mm",
    )


def _mass(pieces: LeadPieces) -> Step:
    return Step(
        name=f"{pieces.use.value.replace('-', ' ')}, code {pieces.code}",
        formula="pieces × length × width × mass of one m²",
        inputs={
            "pieces": float(pieces.count),
            "length (mm)": pieces.length_mm,
            "width (mm)": pieces.width_mm,
            "mass of one m² (kg)": pieces.kg_m2,
        },
        value=pieces.mass_kg,
        unit="kg",
        citation=pieces.citations[0] if pieces.citations else None,
    )
