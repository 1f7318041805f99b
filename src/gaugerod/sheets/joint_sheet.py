"""The batten joint plan of one slope on paper: what is seen first, the plan, then the pieces of every batten."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.finding import Finding
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.in_words import sentence_in_unit
from gaugerod.job.result import Result, SlopeResult
from gaugerod.sheets.beneath_cautions import BATTEN_CAUTIONS, LAST_CAUTION
from gaugerod.sheets.finding_table import finding_alarm, finding_table, verdicts_counted
from gaugerod.sheets.joint_drawing import joint_drawing
from gaugerod.sheets.joint_pattern import joint_pattern
from gaugerod.sheets.joint_tables import batten_table, counter_batten_block, rafter_table, relaxed_blocks
from gaugerod.sheets.lengths_shown import unit_heading
from gaugerod.sheets.setting_out_sheet import foot
from gaugerod.sheets.sheet import Alarm, Block, Bullets, Figure, Figures, Heading, PaperSize, Pictures, Prose, Sheet
from gaugerod.substrate.battens.answer import Arrangement, Battens, SlopeBattens

_FRONT_MM = 74.0
"""Title, slope line, figures, sentences and caption of a first page, with air."""


def joint_sheet(
    result: Result, slope: SlopeResult, battens: Battens, of_slope: SlopeBattens, *, size: PaperSize
) -> Sheet:
    """The joint plan of one slope."""
    return Sheet(
        title=result.job.title,
        subtitle=f"Batten joint plan of the slope {slope.slope.name}: where every batten is joined, and of which pieces.",
        size=size,
        foot=foot(result, slope),
        region=result.job.edition.value,
        blocks=tuple(_blocks(result, slope, battens, of_slope, size)),
    )


def found_of(findings: Sequence[Finding], name: str) -> list[Finding]:
    """The findings of one slope."""
    return [finding for finding in findings if finding.where == name or finding.where.startswith(f"{name}, ")]


def _blocks(
    result: Result, slope: SlopeResult, battens: Battens, of_slope: SlopeBattens, size: PaperSize
) -> Iterator[Block]:
    name, unit = slope.slope.name, result.job.show_lengths_in
    findings = found_of(battens.findings, name)
    alarm = finding_alarm(findings, name=name, unit=unit)
    yield Heading(text=f"Slope {name}: batten joints", level=1)
    if alarm is not None:
        yield alarm
    if of_slope.arrangement is Arrangement.NONE:
        yield Alarm(title="◇ No joint plan: read before starting", lines=(sentence_in_unit(of_slope.why, unit),))
        yield from relaxed_blocks(of_slope, unit)
    else:
        yield Figures(figures=_figures(of_slope))
        yield Prose(text=f"{sentence_in_unit(of_slope.why, unit)} {_bought(battens, unit)}")
        yield from _pictures(slope, of_slope, size=size, unit=unit, alarmed=alarm is not None)
        yield from _pieces(of_slope, unit)
    yield from counter_batten_block(of_slope, unit)
    yield Heading(text="How to fix them", kept_mm=40.0)
    yield Bullets(lines=_how(battens))
    yield Heading(text="Before you start", kept_mm=40.0)
    yield Bullets(lines=(*BATTEN_CAUTIONS, LAST_CAUTION))
    yield Heading(text="Rafters", kept_mm=40.0)
    yield rafter_table(of_slope, unit)
    yield Heading(text="Findings", kept_mm=50.0)
    yield verdicts_counted(findings, name=name, unit=unit)
    yield finding_table(findings, name=name, unit=unit)


def _figures(of_slope: SlopeBattens) -> tuple[Figure, ...]:
    section = of_slope.section
    every = of_slope.repeats_every
    return (
        Figure(
            label="Battens",
            values=(str(len(of_slope.lines)),),
            note=""
            if section is None
            else f"{section.width_mm:g} × {section.depth_mm:g} mm or larger, graded and marked",
        ),
        Figure(label="Laid", values=(f"{of_slope.net_mm / 1000:.1f} m",), note="ends trimmed in place"),
        Figure(
            label="Joints", values=(str(of_slope.joints_count),), note=f"on {len(of_slope.rafters_mm)} numbered rafters"
        ),
        Figure(
            label="Pattern",
            values=("by course" if every is None else f"{every} courses",),
            note="every batten is its own: follow the table" if every is None else "repeated from the eaves up",
        ),
    )


def _bought(battens: Battens, unit: LengthUnit) -> str:
    buy = ", ".join(f"{each.count} of {write_length(float(each.stock_mm), unit)}" for each in battens.cutting.buy)
    slopes = "all slopes together" if len(battens.slopes) > 1 else "this slope"
    return f"To buy, {slopes}: {buy}. How to saw them: the cutting list."


def _pictures(
    slope: SlopeResult, of_slope: SlopeBattens, *, size: PaperSize, unit: LengthUnit, alarmed: bool
) -> Iterator[Block]:
    pattern = joint_pattern(slope, of_slope, unit=unit, room_width_mm=size.text_width_mm)
    taken_mm = _FRONT_MM + (18.0 if alarmed else 0.0)
    if pattern is not None:
        taken_mm += pattern.paper.height_mm + 10.0
    plan = joint_drawing(
        slope,
        of_slope,
        unit=unit,
        room_width_mm=size.text_width_mm,
        room_height_mm=max(size.text_height_mm - taken_mm, 100.0),
    )
    if pattern is not None:
        yield Pictures(
            pictures=(
                (
                    pattern,
                    (
                        f"The pattern: which course starts with which length, in {unit_heading(unit)}. Across "
                        f"{pattern.scale_said}, up not to scale. ◆ is a joint on its rafter. Begin with the lowest "
                        "batten and carry on upwards."
                    ),
                ),
            )
        )
    yield Pictures(
        pictures=(
            (
                plan,
                (
                    f"Battens on their rafters, square on, {plan.scale_said}. ◆ is a joint. Rafters are numbered from the left; "
                    f"battens at the left, with the letter of their joints. Lengths in {unit_heading(unit)}."
                ),
            ),
        )
    )


def _pieces(of_slope: SlopeBattens, unit: LengthUnit) -> Iterator[Block]:
    yield Heading(text="Which batten starts with which length", kept_mm=50.0)
    yield Prose(
        text="Pieces from the left, first the one to start with. Battens with the same letter are joined on the same rafters."
        + (
            " Where an opening parts a batten, each line is one stretch, left to right."
            if any(len(line.stretches) > 1 for line in of_slope.lines)
            else ""
        )
    )
    yield batten_table(of_slope, unit)


def _how(battens: Battens) -> tuple[str, ...]:
    """The method, without what the drawings and tables tell of each slope, and without buying and sawing."""
    told_elsewhere = ("Buy ", "Cut square", *(f"{each.where}{sign}" for each in battens.slopes for sign in ":,"))
    together = " All slopes together." if len(battens.slopes) > 1 else ""
    return tuple(
        f"{line}{together if line.startswith('Nail the ') else ''}"
        for line in battens.method
        if not line.startswith(told_elsewhere) and not (line.startswith("Nail the ") and not battens.cutting.buy)
    )
