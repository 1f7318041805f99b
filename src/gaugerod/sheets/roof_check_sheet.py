"""The record of a roof checked as built: what is wrong and what cures it, the drawing, every lap, and the new marks."""

from gaugerod import __version__
from gaugerod.as_built.leaks import RANKING
from gaugerod.as_built.roof_check import RoofCheck
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.cautions import CAUTIONS
from gaugerod.job.slope_called import slope_heading
from gaugerod.setting_out.said import counted
from gaugerod.sheets.finding_table import finding_alarm, finding_table
from gaugerod.sheets.lengths_shown import unit_heading
from gaugerod.sheets.roof_check_drawing import roof_check_drawing
from gaugerod.sheets.roof_check_tables import gap_tables, lap_tables, line_tables, new_mark_tables
from gaugerod.sheets.roof_check_words import (
    LAPS_AND_COVER,
    NOT_LOOKED_AT,
    advice_sentence,
    leak_sentences,
    verdict_sentence,
)
from gaugerod.sheets.setting_out_sheet import DISCLAIMER
from gaugerod.sheets.sheet import Block, Bullets, Heading, PaperSize, Pictures, Prose, Sheet
from gaugerod.sheets.working_table import working_table

_DRAWING_HIGH_MM = 120.0


def roof_check_sheet(check: RoofCheck, *, title: str, unit: LengthUnit, size: PaperSize) -> Sheet:
    """The whole record of one slope, in the order it is read."""
    ask = check.ask
    return Sheet(
        title=title,
        subtitle=f"{slope_heading(ask.where)} as built: {ask.covering.title}. Rules: edition {ask.edition.value}, "
        f"exposure {ask.exposure.value.replace('-', ' ')}.",
        size=size,
        foot=f"{title[:48]} · slope {ask.where[:40]} · edition {ask.edition.value} · gaugerod {__version__}\n{DISCLAIMER}",
        region=ask.edition.value,
        blocks=(
            *_front(check, unit=unit, size=size),
            *cure_blocks(check, unit=unit),
            *leak_blocks(check, unit=unit),
            *course_blocks(check, unit=unit),
            *_behind(check, unit=unit),
        ),
    )


def _front(check: RoofCheck, *, unit: LengthUnit, size: PaperSize) -> list[Block]:
    alarm = finding_alarm(
        [finding for finding in check.findings if finding.rule in LAPS_AND_COVER], name=check.ask.where, unit=unit
    )
    drawn = roof_check_drawing(check, unit=unit, room_width_mm=size.text_width_mm, room_height_mm=_DRAWING_HIGH_MM)
    first: list[Block] = [Prose(text=verdict_sentence(check, unit=unit))]
    if alarm is not None:
        first.append(alarm)
    caption = f"As measured, {drawn.scale_said}. A triangle on a heavy bar: the lap there is short. Slanting: to strip."
    others = [finding for finding in check.outside if finding.rule not in LAPS_AND_COVER]
    if others:
        first.append(Prose(text=f"{len(others)} more outside a rule: see the table of findings."))
    return [
        Heading(text=f"{slope_heading(check.ask.where)} as built", level=1),
        *first,
        Pictures(pictures=((drawn, caption),)),
    ]


def cure_blocks(check: RoofCheck, *, unit: LengthUnit) -> list[Block]:
    """The least strip-back with the new marks; where nothing cures it, what could change."""
    cure = check.strip_back
    if cure is None:
        return []
    blocks: list[Block] = [Heading(text="What cures it"), Prose(text=cure.says)]
    courses = cure.courses
    if courses is None:
        return blocks
    if not cure.cures:
        changes = tuple(f"{each.change} {each.costs}" for each in courses.alternatives)
        return [*blocks, Bullets(lines=changes)] if changes else blocks
    return [*blocks, Heading(text="Marks, up from the fascia face"), *new_mark_tables(check, unit=unit)]


def leak_blocks(check: RoofCheck, *, unit: LengthUnit) -> list[Block]:
    """The short laps in the order they leak, and how that order was found."""
    if not check.leaks:
        return []
    return [
        Heading(text="What leaks first"),
        Bullets(lines=tuple(leak_sentences(check, unit=unit))),
        Prose(text=f"Ranked by: {RANKING}."),
    ]


def course_blocks(check: RoofCheck, *, unit: LengthUnit) -> list[Block]:
    """Every lap, and how even the courses are."""
    blocks: list[Block] = [Heading(text="Every lap"), *lap_tables(check, unit=unit)]
    blocks += [
        Heading(text=f"How even the courses are ({unit_heading(unit)})"),
        Prose(text="Run out: how far the upper course lies above (+) or below (−) its place in equal gauges."),
        *gap_tables(check, unit=unit),
    ]
    if check.lines:
        blocks += [Heading(text=f"How parallel the courses are ({unit_heading(unit)})"), *line_tables(check, unit=unit)]
    return blocks


def _behind(check: RoofCheck, *, unit: LengthUnit) -> list[Block]:
    name = check.ask.where
    advice: list[Block] = []
    if check.advice:
        advice = [
            Heading(text=f"Advice: {counted(len(check.advice), 'thing')} uneven by house tolerances"),
            Bullets(lines=tuple(advice_sentence(finding, name=name) for finding in check.advice)),
        ]
    return [
        Heading(text="Findings"),
        finding_table(check.by_rule, name=name, unit=unit),
        *advice,
        Heading(text="Not covered by this check"),
        Bullets(lines=NOT_LOOKED_AT),
        Heading(text="Cautions"),
        Bullets(lines=CAUTIONS),
        Heading(text="Working"),
        working_table(check.working),
    ]
