"""A take-off asked by hand: one slope of single-lap tiles, no cuts, nothing beneath; a test changes what it is about."""

from dataclasses import replace
from typing import Any

from gaugerod.basis.citation import house
from gaugerod.basis.working import Step
from gaugerod.coverings.catalogue import covering as generic
from gaugerod.edges.answer import EdgePart, LeadPieces, LeadUse, MadeEdge, PartUnit, RoofEdges
from gaugerod.edges.ask import EdgeLine, EdgeOpening, LineKind
from gaugerod.laying.ask import Edge, EdgeKind
from gaugerod.laying.cut_unit import Cut, CutUnit, Remedy
from gaugerod.standards.edition import Edition
from gaugerod.standards.roof_masses import MassBand
from gaugerod.substrate.load.weigh import Load, Part
from gaugerod.take_off.answer import Measured, OrderLine, TakeOff, Trade
from gaugerod.take_off.ask import LaidSlope, TakeOffAsk
from gaugerod.take_off.wished import OrderWished

EXAMPLE = house("example")
NO_STEP = Step("example", "given", {}, 0.0, "")
FLAT = generic("flat-interlocking-420x330")


def laid(name: str = "rear", **changes: Any) -> LaidSlope:  # noqa: ANN401  any field of the slope
    """A slope of 20 m² with 200 whole tiles, each showing 333⅓ × 300 mm."""
    made = LaidSlope(
        name=name,
        area_mm2=20e6,
        whole_count=200,
        half_count=0,
        pieces=(),
        unit=None,
        gauge_mm=1000.0 / 3.0,
        cover_mm=300.0,
    )
    return replace(made, **changes)


def ask(*slopes: LaidSlope, **changes: Any) -> TakeOffAsk:  # noqa: ANN401  any field of the ask
    """These slopes, or the one above; nothing wished, nothing beneath, no edges."""
    made = TakeOffAsk(
        slopes=slopes or (laid(),),
        not_laid=(),
        covering=FLAT,
        offcuts=None,
        edition=Edition.GB,
        wished=OrderWished(),
    )
    return replace(made, **changes)


def piece(
    index: int,
    *,
    course: int = 0,
    remedy: Remedy = Remedy.AS_CUT,
    neighbour: int | None = None,
    kind: EdgeKind = EdgeKind.VERGE,
) -> CutUnit:
    """One piece to saw, half a tile square, cut along an edge of this kind."""
    ring = ((0.0, 0.0), (150.0, 0.0), (150.0, 420.0), (0.0, 420.0))
    cut = Cut(
        edge=Edge(name="edge", kind=kind), edge_number=0, start_mm=(150.0, 0.0), end_mm=(150.0, 420.0), angle_deg=90.0
    )
    return CutUnit(
        number=1,
        course=course,
        index=index,
        rings_mm=(ring,),
        own_rings_mm=(ring,),
        length_mm=420.0,
        area_mm2=150.0 * 420.0,
        shows_mm2=150.0 * 345.0,
        whole_shows_mm2=300.0 * 345.0,
        cuts=(cut,),
        nibs_kept_count=1,
        holes_kept_count=1,
        remedy=remedy,
        neighbour=index if neighbour is None else neighbour,
        remark="",
        citation=EXAMPLE,
    )


def part(
    item: str, net: float, unit: PartUnit = PartUnit.PIECES, *, what: str = "", mass_kg: float | None = None
) -> EdgePart:
    """What an edge takes. ``mass_kg`` of all of it."""
    return EdgePart(
        item=item,
        what=what or item.replace("-", " "),
        net=net,
        unit=unit,
        how="counted",
        citation=EXAMPLE,
        mass_kg=mass_kg,
    )


def lead(use: LeadUse = LeadUse.APRON, **changes: Any) -> LeadPieces:  # noqa: ANN401  any field of the pieces
    """Two pieces of code 4, 1500 × 300 mm."""
    made = LeadPieces(
        use=use,
        code=4,
        thickness_mm=1.8,
        kg_m2=20.41,
        count=2,
        length_mm=1500.0,
        width_mm=300.0,
        run_mm=2900.0,
        lap_mm=100.0,
        how="two pieces",
        citations=(EXAMPLE,),
    )
    return replace(made, **changes)


def edge(
    name: str,
    *parts: EdgePart,
    kind: LineKind = LineKind.RIDGE,
    made: str = "dry",
    lead_pieces: tuple[LeadPieces, ...] = (),
    length_mm: float = 9000.0,
) -> MadeEdge:
    """One edge 9000 mm long that takes these."""
    line = EdgeLine(
        name=name,
        kind=kind,
        slopes=("rear",),
        length_mm=length_mm,
        past_ends_mm=100.0,
        slope_deg=0.0,
        courses_count=(0,),
    )
    return MadeEdge(
        name=name,
        line=line,
        opening=None,
        made=made,
        run=None,
        clear_mm=None,
        parts=parts,
        lead=lead_pieces,
        says=(),
        findings=(),
        working=NO_STEP,
    )


def opening(name: str) -> MadeEdge:
    """An opening of which nothing was said."""
    stands = EdgeOpening(name=name, slope="rear", width_mm=780.0, height_mm=980.0, made=None, courses_count=4)
    return replace(edge(name, made=""), line=None, opening=stands)


def edges(*each: MadeEdge) -> RoofEdges:
    """The edges of a roof."""
    return RoofEdges(edges=each, findings=(), working=NO_STEP)


def load(
    where: str = "rear", *, total: tuple[float, float] | None = (45.0, 50.0), old: tuple[float, float] | None = None
) -> Load:
    """What 20 m² weigh, kg on each m², least and greatest."""
    return Load(
        where=where,
        area_mm2=20e6,
        parts=() if total is None else (Part(name="covering", mass=band(*total), formula="given"),),
        total=None if total is None else band(*total),
        old=None if old is None else band(*old),
        findings=(),
        says=(),
        working=NO_STEP,
    )


def band(least_kg_m2: float, greatest_kg_m2: float) -> MassBand:
    """A mass between two figures."""
    return MassBand(least_kg_m2=least_kg_m2, greatest_kg_m2=greatest_kg_m2, citation=EXAMPLE)


def measured(item: str, net: float, *, unit: str = "pieces", trade: Trade = Trade.COVERING) -> Measured:
    """A quantity of this item."""
    return Measured(
        item=item, what=item, trade=trade, unit=unit, net=net, by_slope=(("rear", net),), how="counted", each_kg=None
    )


def line(answer: TakeOff, item: str) -> OrderLine:
    """The line of this item. Fails when there is none."""
    found = answer.line(item)
    assert found is not None, item
    return found
