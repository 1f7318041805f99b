"""The fixing of one slope in words, and the working of its numbers."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.working import Step
from gaugerod.fixing.ask import FixingAsk
from gaugerod.fixing.held import Held
from gaugerod.fixing.nails import PASSES_CITATION, NailChosen
from gaugerod.fixing.plan import KindCount
from gaugerod.laying.ask import EdgeKind
from gaugerod.rules.fixings import FieldRule, PerimeterRule, SlateHeld
from gaugerod.rules.nails import slate_hole_from_side_mm


def method_of(
    ask: FixingAsk,
    *,
    field: FieldRule,
    perimeter: PerimeterRule,
    nailed_courses: Sequence[int],
    nail: NailChosen | None,
) -> Iterator[str]:
    """The job in steps."""
    kinds = {edge.kind for edge in ask.full.ask.edges}
    courses = int(perimeter.courses.value)
    rows = "the first and the last course" if courses == 1 else f"the first {courses} and the last {courses} courses"
    ends = [kind.value for kind in (EdgeKind.VERGE, EdgeKind.HIP, EdgeKind.VALLEY, EdgeKind.ABUTMENT) if kind in kinds]
    at_ends = f", and at each {_or(ends)} the last unit of every course" if ends else ""
    yield f"Chalk the perimeter: along eaves and top {rows}{at_ends}, with every unit an edge cuts."
    if EdgeKind.OPENING in kinds:
        above = int(perimeter.opening_courses.value)
        yield f"Round each opening: {above} course{'s' if above > 1 else ''} above and below it, and one unit each side."
    if ask.extra:
        yield "Fix every unit of the course under the eaves and of the short course at the top like the perimeter."
    yield f"Perimeter units: {perimeter.least.in_all_count} fixings each, or more where the pitch asks for it."
    if field.every_count > 1:
        listed = ", ".join(map(str, nailed_courses))
        yield f"Field: {field.name}: courses {listed} from the eaves." if listed else f"Field: {field.name}; none here."
    else:
        yield f"Field: {field.name}."
    if nail is not None:
        yield f"{nail}, in the middle third of the batten's width, driven home but not tight."
    if ask.is_slate and ask.slates_held_by is SlateHeld.NAILS:
        yield f"Hole the slates {slate_hole_from_side_mm(ask.edition):g} mm from their side edges, from the bed side."


def _or(words: Sequence[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} or {words[-1]}"


def working_of(
    ask: FixingAsk,
    *,
    field: FieldRule,
    perimeter: PerimeterRule,
    kinds: Sequence[KindCount],
    total: Held,
    nail: NailChosen | None,
) -> Step:
    """Every count, and how it was come by."""
    return Step(
        name=f"fixings of {ask.where}",
        formula="fixings of every unit, added up",
        inputs={
            "pitch (deg)": ask.pitch_deg,
            "field": field.name,
            "perimeter": f"{perimeter.least.in_all_count} fixings each",
        },
        value=float(total.in_all_count),
        unit="fixings",
        citation=perimeter.limits[0].citation,
        parts=(*map(_kind, kinds), *_nail(nail)),
    )


def _kind(kind: KindCount) -> Step:
    edges = ", ".join(edge.value for edge in kind.why)
    return Step(
        name=kind.region.value + (f", {edges}" if edges else ""),
        formula="units × fixings each",
        inputs={"units (count)": float(kind.units_count), "each": str(kind.held)},
        value=float(kind.units_count * kind.held.in_all_count),
        unit="fixings",
    )


def _nail(nail: NailChosen | None) -> Iterator[Step]:
    if nail is None:
        return
    if nail.passes_mm is not None and nail.length_mm is not None:
        yield Step(
            name="nail length",
            formula="what it passes + into the batten, up to the next 5 mm, or as wished",
            inputs={"passes (mm)": nail.passes_mm},
            value=nail.length_mm,
            unit="mm",
            citation=PASSES_CITATION,
        )
    if nail.each_kg is not None and nail.total_kg is not None:
        yield Step(
            name="mass of the nails",
            formula="nails × (shank + head) × density",
            inputs={"nails (count)": float(nail.count), "each (g)": 1000 * nail.each_kg},
            value=nail.total_kg,
            unit="kg",
            citation=nail.mass_citation,
        )
