"""What double lap and diminishing courses add to a sheet: the extra courses, the lengths, the heaps, the verge pieces."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import SlopeResult
from gaugerod.setting_out.diminishing.answer import DiminishingPlan
from gaugerod.setting_out.double_lap_across import MadeOf
from gaugerod.setting_out.double_lap_extras import DoubleLapExtras
from gaugerod.sheets.lengths_shown import bare_length, unit_heading
from gaugerod.sheets.rod_tables import TICK
from gaugerod.sheets.sheet import Block, Bullets, Column, ColumnKind, Heading, Prose, Table

_MADE_OF = {MadeOf.WHOLE: "one unit", MadeOf.UNIT_AND_A_HALF: "a unit-and-a-half", MadeOf.HALF: "a half unit"}


def double_lap_blocks(slope: SlopeResult, *, unit: LengthUnit) -> Iterator[Block]:
    """Everything that double lap adds behind the rod tables; nothing for single lap."""
    if slope.double_lap is not None:
        yield from _extra_courses(slope.double_lap, unit)
    if slope.diminishing is not None:
        yield from _lengths(slope.diminishing, unit)
        yield from _course_by_course(slope.diminishing, unit)
        yield from _heaps(slope.diminishing, unit)
    if slope.verge_pieces:
        yield from _verges(slope, unit)


def _extra_courses(extras: DoubleLapExtras, unit: LengthUnit) -> Iterator[Block]:
    heading = unit_heading(unit)
    yield Heading(text="Under-eaves course and short course", kept_mm=40.0)
    holing = "" if extras.holing_mm is None else f" Holes {write_length(extras.holing_mm, unit)} up from the tail."
    yield Prose(
        text=f"Marks are the {extras.marks_are}, up from the outer face of the fascia. Units under the first course are "
        f"{write_length(extras.under_eaves_length_mm, unit)} long.{holing}"
    )
    mark, figures = ColumnKind.MARK, ColumnKind.FIGURES
    yield Table(
        columns=(
            Column(heading="Rod", kind=figures),
            Column(heading=f"Under-eaves mark, {heading}", kind=mark, share_ratio=1.0),
            Column(heading="Done", kind=ColumnKind.TICK),
            Column(heading=f"Short course mark, {heading}", kind=mark, share_ratio=1.0),
            Column(heading=f"Its length, {heading}", kind=figures),
            Column(heading="Done", kind=ColumnKind.TICK),
            Column(heading=f"Least lap, {heading}", kind=figures),
        ),
        rows=tuple(
            (
                str(number),
                bare_length(rod.under_eaves_mark_mm, unit),
                TICK,
                "none" if rod.short is None else bare_length(rod.short.mark_mm, unit),
                "" if rod.short is None else bare_length(rod.short.length_mm, unit),
                "" if rod.short is None else TICK,
                bare_length(min(rod.laps_mm), unit),
            )
            for number, rod in enumerate(extras.rods, 1)
        ),
    )


def _lengths(plan: DiminishingPlan, unit: LengthUnit) -> Iterator[Block]:
    heading, figures = unit_heading(unit), ColumnKind.FIGURES
    yield Heading(text="Courses by length", kept_mm=50.0)
    yield Bullets(lines=plan.sorting)
    yield Table(
        columns=(
            Column(heading=f"Length, {heading}", kind=ColumnKind.MARK),
            Column(heading="Courses", kind=figures),
            Column(heading="From", kind=figures),
            Column(heading="To", kind=figures),
            Column(heading=f"Margin at most, {heading}", kind=figures),
            Column(heading=f"Drop course, {heading} from the line below", kind=figures),
        ),
        rows=tuple(
            (
                bare_length(group.length_mm, unit),
                str(group.courses_count),
                str(group.first_course),
                str(group.last_course),
                bare_length(group.gauge_mm, unit),
                "" if group.drop_gauge_mm is None else bare_length(group.drop_gauge_mm, unit),
            )
            for group in plan.groups
        ),
    )
    if plan.top_notes:
        yield Bullets(lines=plan.top_notes)


def _course_by_course(plan: DiminishingPlan, unit: LengthUnit) -> Iterator[Block]:
    """The left rod with the slate, margin and lap of every course."""
    rod = plan.rods[0]
    lengths = [group.length_mm for group in plan.groups for _ in range(group.courses_count)]
    cut = dict(rod.cut_lengths_mm)
    heading, figures = unit_heading(unit), ColumnKind.FIGURES
    yield Heading(text="Course by course, left rod", kept_mm=60.0)
    yield Prose(
        text=f"Under-eaves line at {write_length(rod.under_eaves_mark_mm, unit)}, slates cut to "
        f"{write_length(plan.under_eaves_length_mm, unit)}. The lap is over the slate two below."
    )
    yield Table(
        columns=(
            Column(heading="Course", kind=figures),
            Column(heading=f"Slate, {heading}", kind=figures),
            Column(heading=f"Mark, {heading}", kind=ColumnKind.MARK, share_ratio=1.0),
            Column(heading="Margin", kind=figures),
            Column(heading="Lap", kind=figures),
            Column(heading="Done", kind=ColumnKind.TICK),
        ),
        rows=tuple(
            (
                str(course),
                bare_length(length_mm, unit) + ("" if course not in cut else f" cut {bare_length(cut[course], unit)}"),
                bare_length(mark_mm, unit),
                bare_length(margin_mm, unit),
                bare_length(lap_mm, unit),
                TICK,
            )
            for course, (length_mm, mark_mm, margin_mm, lap_mm) in enumerate(
                zip(lengths, rod.marks_mm, rod.margins_mm, rod.laps_mm, strict=False), 1
            )
        ),
        beside_count=2 if len(lengths) > 24 and unit is not LengthUnit.FT_IN else 1,
        set_count=5,
    )


def _heaps(plan: DiminishingPlan, unit: LengthUnit) -> Iterator[Block]:
    figures = ColumnKind.FIGURES
    yield Heading(text="The stack: used and left", kept_mm=40.0)
    yield Table(
        columns=(
            Column(heading=f"Length, {unit_heading(unit)}", kind=ColumnKind.MARK),
            Column(heading="Courses there", kind=figures),
            Column(heading="Courses laid", kind=figures),
            Column(heading="Under the eaves, m", kind=figures),
            Column(heading="Left over, m", kind=figures),
            Column(heading="Slates left", kind=figures),
        ),
        rows=tuple(
            (
                bare_length(heap.length_mm, unit),
                str(heap.courses_there_count),
                str(heap.courses_laid_count),
                f"{heap.under_eaves_run_mm / 1000:.1f}",
                f"{heap.left_run_mm / 1000:.1f}",
                "" if heap.left_slates_count is None else str(heap.left_slates_count),
            )
            for heap in plan.heaps
        ),
    )


def _verges(slope: SlopeResult, unit: LengthUnit) -> Iterator[Block]:
    yield Heading(text="At the verges", kept_mm=40.0)
    yield Table(
        columns=(
            Column(heading="Verge"),
            Column(heading="Courses"),
            Column(heading="Laid with"),
            Column(heading=f"Width, {unit_heading(unit)}", kind=ColumnKind.MARK),
        ),
        rows=tuple(
            (
                piece.at,
                "1, 3, 5 …" if piece.bond_row == 0 else "2, 4, 6 …",
                _MADE_OF[piece.made_of],
                bare_length(piece.width_mm, unit),
            )
            for piece in slope.verge_pieces
        ),
    )
