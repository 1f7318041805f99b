"""Edges made by hand on the demo: a ridge, a wall in lead, a chimney, and a verge of which nothing was said."""

from dataclasses import replace

from gaugerod.basis.citation import house
from gaugerod.basis.working import Step
from gaugerod.edges.answer import EdgePart, LeadPieces, LeadUse, MadeEdge, PartUnit, RoofEdges, UnitRun
from gaugerod.edges.ask import EdgeLine, EdgeOpening, LineKind
from gaugerod.edges.wished import OpeningMade
from gaugerod.job.result import Result
from tests.scenario.taken_off import short, taken_off

_NOTHING = Step("edge", "", {}, 0.0, "")


def edged() -> Result:
    """The demo with its edges."""
    result, edges = taken_off(), (ridge(), wall(), chimney(), verge())
    found = tuple(finding for edge in edges for finding in edge.findings)
    others = () if result.edges is None else result.edges.findings
    kept = (finding for finding in result.findings if finding not in others)
    return replace(
        result,
        edges=RoofEdges(edges=edges, findings=found, working=_NOTHING),
        findings=(*kept, *found),
    )


def ridge() -> MadeEdge:
    """Units end to end, the last two cut."""
    run = UnitRun(units_count=17, whole_count=15, cut_mm=(300.0, 310.0), cover_mm=440.0, length_mm=7460.0)
    part = EdgePart(
        item="dry-line-roll",
        what="roll that seals a dry ridge",
        net=7.5,
        unit=PartUnit.METRES,
        how="laid length",
        citation=house("example"),
    )
    return replace(_edge("rear, ridge", LineKind.RIDGE), made="dry, two screws to each unit", run=run, parts=(part,))


def wall() -> MadeEdge:
    """A wall at the side, with a lead flashing and something outside a rule."""
    lead = LeadPieces(
        use=LeadUse.STEP_AND_COVER,
        code=4,
        thickness_mm=1.8,
        kg_m2=20.41,
        count=4,
        length_mm=1500.0,
        width_mm=330.0,
        run_mm=4905.0,
        lap_mm=100.0,
        how="laps of 100 mm",
        citations=(house("example of a code"),),
    )
    return replace(
        _edge("rear, right abutment", LineKind.SIDE_ABUTMENT),
        made="one flashing that steps and covers",
        lead=(lead,),
        findings=(short("side cover", "rear, right abutment"),),
    )


def chimney() -> MadeEdge:
    """An opening, dressed in lead."""
    opening = EdgeOpening(
        name="stack", slope="rear", width_mm=780.0, height_mm=1180.0, made=OpeningMade.CHIMNEY, courses_count=4
    )
    return replace(_edge("stack", LineKind.EAVES), line=None, opening=opening, made="chimney")


def verge() -> MadeEdge:
    """A verge of which it was not said how it is made."""
    return _edge("rear, left verge", LineKind.VERGE)


def _edge(name: str, kind: LineKind) -> MadeEdge:
    line = EdgeLine(
        name=name,
        kind=kind,
        slopes=("rear",),
        length_mm=7460.0,
        past_ends_mm=38.0,
        slope_deg=0.0,
        courses_count=(0,),
    )
    return MadeEdge(
        name=name,
        line=line,
        opening=None,
        made="",
        run=None,
        clear_mm=None,
        parts=(),
        lead=(),
        says=(),
        findings=(),
        working=_NOTHING,
    )
