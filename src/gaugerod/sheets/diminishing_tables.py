"""What diminishing courses add to a sheet: sorting, the lengths, cut lengths at the top, and the heaps."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit
from gaugerod.setting_out.diminishing.answer import DiminishingPlan
from gaugerod.sheets.lengths_shown import bare_length, unit_heading
from gaugerod.sheets.sheet import Block, Bullets, Column, ColumnKind, Heading, Table


def diminishing_blocks(plan: DiminishingPlan, *, unit: LengthUnit) -> Iterator[Block]:
    """The heaps sorted, the courses of each length, what is cut at the top, and what stays of the stack."""
    yield from _lengths(plan, unit)
    yield from _heaps(plan, unit)


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
            Column(heading=f"Drop, {heading} from the line below", kind=figures),
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
