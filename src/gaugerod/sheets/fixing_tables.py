"""The fixings of a slope in tables: how each kind of unit is held and how many; nails; courses; pieces to mind."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.fixing.held import WORDS
from gaugerod.fixing.plan import FixingPlan, HeldCourse, KindCount, Region
from gaugerod.laying.cut_unit import Remedy
from gaugerod.sheets.joint_tables import names_said
from gaugerod.sheets.sheet import Block, Bullets, Column, ColumnKind, Heading, Prose, Table

_MANY = tuple(several for _, several in WORDS)


def kind_table(plan: FixingPlan) -> Table:
    """Units by place and by how each is held, with every fixing added up. Only kinds of fixings that are used have a column."""
    used = [at for at, count in enumerate(plan.total) if count]
    figures = ColumnKind.FIGURES
    return Table(
        columns=(
            Column(heading="Where", share_ratio=1.2),
            Column(heading="Each unit held by", share_ratio=1.6),
            Column(heading="units", kind=figures),
            *(Column(heading=_MANY[at], kind=figures) for at in used),
        ),
        rows=(
            *((_where(kind), str(kind.held), str(kind.units_count), *_times(kind, used)) for kind in plan.kinds),
            (
                "All units",
                "",
                str(sum(kind.units_count for kind in plan.kinds)),
                *(str(plan.total[at]) for at in used),
            ),
        ),
    )


def _where(kind: KindCount) -> str:
    if kind.region is Region.FIELD:
        return "field"
    return f"perimeter: {' and '.join(edge.value for edge in kind.why)}"


def _times(kind: KindCount, used: Sequence[int]) -> Iterator[str]:
    for at in used:
        count = kind.held[at] * kind.units_count
        yield str(count) if count else "–"


def course_blocks(plan: FixingPlan) -> Iterator[Block]:
    """Which courses are nailed throughout, and how many fixings each of them takes; then the courses beside the full ones."""
    if plan.field_rule.every_count > 1:
        listed = names_said([str(number) for number in plan.nailed_courses]) or "none on this slope"
        yield Heading(text="Courses nailed throughout", kept_mm=40.0)
        yield Prose(text=f"Counted from the eaves, 1 the lowest full course: {listed}.")
    courses = [course for course in plan.courses if course.nailed and plan.field_rule.every_count > 1]
    rows = [*(course for course in plan.extra), *courses]
    if rows:
        yield Table(
            columns=(
                Column(heading="Course", share_ratio=1.0),
                Column(heading="units", kind=ColumnKind.FIGURES),
                Column(heading="fixings", kind=ColumnKind.FIGURES),
                Column(heading="", kind=ColumnKind.TICK),
            ),
            rows=tuple((course.name, *map(str, _units_and_fixings(course)), "☐") for course in rows),
            beside_count=2 if len(rows) > 1 else 1,
        )


def _units_and_fixings(course: HeldCourse) -> tuple[int, int]:
    units = sum(run.count for run in course.runs) + len(course.pieces)
    fixings = sum(run.count * run.held.in_all_count for run in course.runs)
    return units, fixings + sum(piece.held.in_all_count for piece in course.pieces)


def nail_blocks(plan: FixingPlan, unit: LengthUnit) -> Iterator[Block]:
    """The nail: size, what it passes and how far it goes in, number and mass."""
    nail = plan.nail
    yield Heading(text="Nails", kept_mm=30.0)
    if nail is None:
        yield Prose(text="No nail is counted on this slope.")
        return
    passes, into = nail.passes_mm, nail.penetration_mm
    yield Table(
        columns=(
            Column(heading="Nail", share_ratio=1.4),
            Column(heading="goes through", kind=ColumnKind.FIGURES),
            Column(heading="into the batten", kind=ColumnKind.FIGURES),
            Column(heading="number", kind=ColumnKind.FIGURES),
            Column(heading="1000 weigh, kg", kind=ColumnKind.FIGURES),
            Column(heading="mass, kg", kind=ColumnKind.FIGURES),
        ),
        rows=(
            (
                f"{str(nail)[:1].upper()}{str(nail)[1:]}\nDensity of the metal: {nail.mass_citation}",
                "not known" if passes is None else write_length(passes, unit),
                "not known" if into is None else write_length(into, unit),
                str(nail.count),
                "–" if nail.each_kg is None else f"{1000 * nail.each_kg:.2f}",
                "–" if nail.total_kg is None else f"{nail.total_kg:.1f}",
            ),
        ),
    )


def piece_blocks(plan: FixingPlan) -> Iterator[Block]:
    """Pieces to mind, by their numbers on the cut list."""
    pieces = [piece for course in (*plan.courses, *plan.extra) for piece in course.pieces]
    full = [piece for course in plan.courses for piece in course.pieces]
    drill = [str(piece.number) for piece in sorted(full, key=lambda piece: piece.number) if piece.short_count]
    bond = [
        str(piece.number)
        for piece in sorted(full, key=lambda piece: piece.number)
        if piece.remedy is Remedy.BOND_AND_CLIP
    ]
    lines = []
    if drill:
        lines.append(f"Drill for their nails, clear of the cut, or bond and clip: pieces {names_said(drill)}.")
    if bond:
        lines.append(f"Bond to the neighbour and clip: pieces {names_said(bond)}.")
    elsewhere = len(pieces) - len(full)
    if elsewhere:
        lines.append(
            f"{elsewhere} more pieces are sawn for the course under the eaves and the short course at the top."
        )
    if lines:
        yield Heading(text="Pieces to mind", kept_mm=30.0)
        yield Prose(text="By their numbers on the cut list of the laying sheet.")
        yield Bullets(lines=tuple(lines))
