"""The fixing plan of one slope on paper: areas to chalk, how every unit is held, nails and clips counted."""

from collections.abc import Iterator

from gaugerod.fixing.plan import FixingPlan, Region
from gaugerod.job.result import Laid, Result, SlopeResult
from gaugerod.sheets.beneath_cautions import FIXING_CAUTIONS, LAST_CAUTION
from gaugerod.sheets.finding_table import finding_alarm, finding_table, verdicts_counted
from gaugerod.sheets.fixing_drawing import fixing_drawing
from gaugerod.sheets.fixing_tables import course_blocks, kind_table, nail_blocks, piece_blocks
from gaugerod.sheets.lengths_shown import unit_heading
from gaugerod.sheets.setting_out_sheet import foot
from gaugerod.sheets.sheet import Block, Bullets, Figure, Figures, Heading, PaperSize, Pictures, Prose, Sheet, Steps

_FRONT_MM = 84.0
"""Title, slope line, figures, sentences and caption of a first page, with air."""
LEAST_ONLY = (
    "The least by rule, and no wind calculation. The maker's fixing specification for this site, or a wind calculation, may ask "
    "for more and goes before it."
)


def fixing_sheet(result: Result, slope: SlopeResult, laid: Laid, plan: FixingPlan, *, size: PaperSize) -> Sheet:
    """The fixings of one slope."""
    return Sheet(
        title=result.job.title,
        subtitle=f"Fixing plan of the slope {slope.slope.name}: perimeter and field, nails and clips.",
        size=size,
        foot=foot(result, slope),
        region=result.job.edition.value,
        blocks=tuple(_blocks(result, slope, laid, plan, size)),
    )


def _blocks(result: Result, slope: SlopeResult, laid: Laid, plan: FixingPlan, size: PaperSize) -> Iterator[Block]:
    name, unit = slope.slope.name, result.job.show_lengths_in
    alarm = finding_alarm(plan.findings, name=name, unit=unit)
    yield Heading(text=f"Slope {name}: fixings", level=1)
    taken_mm = _FRONT_MM
    if alarm is not None:
        taken_mm += 9.0 + sum(5.0 * -(-len(line) // 95) for line in alarm.lines)
        yield alarm
    yield Figures(figures=_figures(plan))
    yield Prose(text=f"Field: {plan.field_rule.name}. Perimeter: {_perimeter(plan)}. {LEAST_ONLY}")
    placed = fixing_drawing(
        slope,
        laid,
        plan,
        unit=unit,
        room_width_mm=size.text_width_mm,
        room_height_mm=max(size.text_height_mm - taken_mm, 110.0),
    )
    hatched = " Hatched, with heavy numbers: courses nailed throughout." if plan.field_rule.every_count > 1 else ""
    caption = (
        f"Square on, {placed.scale_said}, lengths in {unit_heading(unit)} up the slope from the fascia face. Shaded: the "
        f"perimeter. White: the field.{hatched} Courses numbered at the left."
    )
    yield Pictures(pictures=((placed, caption),))
    yield Heading(text="How every unit is held", kept_mm=50.0)
    yield kind_table(plan)
    yield from nail_blocks(plan, unit)
    yield from course_blocks(plan)
    yield from piece_blocks(plan)
    yield Heading(text="Before you start", kept_mm=40.0)
    yield Bullets(lines=(*FIXING_CAUTIONS, LAST_CAUTION))
    yield Heading(text="Method", kept_mm=50.0)
    yield Steps(lines=plan.method)
    yield Heading(text="Findings", kept_mm=50.0)
    yield verdicts_counted(plan.findings, name=name, unit=unit)
    yield finding_table(plan.findings, name=name, unit=unit)


def _perimeter(plan: FixingPlan) -> str:
    rule = plan.perimeter_rule
    courses = int(rule.courses.value)
    rows = "the first and last course" if courses == 1 else f"the first {courses} and last {courses} courses"
    return f"{rows}, and the last unit of every course at its ends, {rule.least.in_all_count} fixings each"


def _figures(plan: FixingPlan) -> tuple[Figure, ...]:
    total, nail = plan.total, plan.nail
    mass = "" if nail is None or nail.total_kg is None else f", {nail.total_kg:.1f} kg"
    figures = [Figure(label="Nails", values=(str(total.nails_count),), note="" if nail is None else f"{nail}{mass}")]
    if total.either_count:
        figures.append(Figure(label="Nails or clips", values=(str(total.either_count),), note="as the maker says"))
    if total.hooks_count:
        figures.append(Figure(label="Hooks", values=(str(total.hooks_count),)))
    if total.clips_count:
        note = f"tail {total.tail_clips_count}, eaves {total.eaves_clips_count}, verge {total.verge_clips_count}"
        figures.append(Figure(label="Clips", values=(str(total.clips_count),), note=note))
    field = f"shaded; the field has {plan.units_count(Region.FIELD)}"
    figures.append(
        Figure(label="Units at the perimeter", values=(str(plan.units_count(Region.PERIMETER)),), note=field)
    )
    return tuple(figures)
