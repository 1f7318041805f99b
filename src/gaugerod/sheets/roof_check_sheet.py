"""The record of a roof checked as built: what is wrong and what cures it, the drawing, every lap, and the new marks."""

from gaugerod import __version__
from gaugerod.as_built.laps import LapAsBuilt
from gaugerod.as_built.leaks import RANKING
from gaugerod.as_built.roof_check import RoofCheck
from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.cautions import CAUTIONS
from gaugerod.sheets.finding_table import finding_alarm, finding_table
from gaugerod.sheets.lengths_shown import bare_length, fine_length, unit_heading
from gaugerod.sheets.roof_check_drawing import roof_check_drawing
from gaugerod.sheets.setting_out_sheet import DISCLAIMER
from gaugerod.sheets.sheet import Block, Bullets, Column, ColumnKind, Heading, PaperSize, Pictures, Prose, Sheet, Table
from gaugerod.sheets.working_table import working_table

_DRAWING_HIGH_MM = 120.0


def roof_check_sheet(check: RoofCheck, *, title: str, unit: LengthUnit, size: PaperSize) -> Sheet:
    """The whole record of one slope, in the order it is read."""
    ask = check.ask
    return Sheet(
        title=title,
        subtitle=f"Slope {ask.where} as built: {ask.covering.title}. Rules: edition {ask.edition.value}, "
        f"exposure {ask.exposure.value.replace('-', ' ')}.",
        size=size,
        foot=f"{title[:48]} · slope {ask.where[:40]} · edition {ask.edition.value} · gaugerod {__version__}\n{DISCLAIMER}",
        region=ask.edition.value,
        blocks=(*_front(check, unit=unit, size=size), *_cure(check, unit=unit), *_behind(check, unit=unit)),
    )


def _front(check: RoofCheck, *, unit: LengthUnit, size: PaperSize) -> list[Block]:
    alarm = finding_alarm([finding for finding in check.findings if finding.rule in _LAPS])
    drawn = roof_check_drawing(check, unit=unit, room_width_mm=size.text_width_mm, room_height_mm=_DRAWING_HIGH_MM)
    first: list[Block] = [Prose(text="No lap is short.")] if alarm is None else [alarm]
    caption = f"As measured, {drawn.scale_said}. A triangle on a heavy bar: the lap there is short. Slanting: to strip."
    return [Heading(text=f"Slope {check.ask.where} as built", level=1), *first, Pictures(pictures=((drawn, caption),))]


_LAPS = frozenset({"lap as built", "ridge cover"})
"""What lets water in; the rest of what is outside stands in the table of findings."""


def _cure(check: RoofCheck, *, unit: LengthUnit) -> list[Block]:
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
    tail_mm = check.needed.afresh.hanging_length_mm
    rows = tuple(
        (
            f"{number + 1}",
            "kept" if number < cure.keep_count else "new",
            *(
                words
                for rod in courses.rods
                for words in (
                    bare_length(rod.marks_mm[number], unit),
                    bare_length(rod.marks_mm[number] - tail_mm, unit),
                )
            ),
        )
        for number in range(len(courses.rods[0].marks_mm))
    )
    places = [bare_length(rod.at_mm, unit) for rod in courses.rods]
    columns = (
        Column(heading="Course", kind=ColumnKind.FIGURES),
        Column(heading="Kept or new"),
        *(
            Column(heading=f"{what}, at {place} ({unit_heading(unit)})", kind=ColumnKind.FIGURES)
            for place in places
            for what in (check.needed.marks_are.capitalize(), "Tail")
        ),
    )
    return [*blocks, Heading(text="Marks, up from the fascia face"), Table(columns=columns, rows=rows, set_count=5)]


def _behind(check: RoofCheck, *, unit: LengthUnit) -> list[Block]:
    order = [f"Course {leak.lap.course}: {leak.missing_ratio:.0%} of its lap is missing, "
             f"{leak.water_ratio:.0%} of the slope drains over it." for leak in check.leaks]  # fmt: skip
    leaks: list[Block] = []
    if order:
        leaks = [
            Heading(text="What leaks first"),
            Prose(text=f"{RANKING.source} (house).".capitalize()),
            Bullets(lines=tuple(order)),
        ]
    return [
        *leaks,
        Heading(text="Every lap"),
        _lap_table(check, unit=unit),
        Heading(text="Findings"),
        finding_table(check.findings, unit=unit),
        Heading(text="Cautions"),
        Bullets(lines=CAUTIONS),
        Heading(text="Working"),
        working_table(check.working),
    ]


def _lap_table(check: RoofCheck, *, unit: LengthUnit) -> Table:
    rows = tuple(
        (f"{laps[0].course} over {laps[0].over}", *(_lap_said(lap, unit=unit) for lap in laps))
        for laps in zip(*(rod.laps for rod in check.rods), strict=True)
    )
    columns = (
        Column(heading="Course"),
        *(Column(heading=f"At {bare_length(rod.at_mm, unit)}", kind=ColumnKind.FIGURES) for rod in check.rods),
    )
    return Table(columns=columns, rows=rows, set_count=5)


def _lap_said(lap: LapAsBuilt, *, unit: LengthUnit) -> str:
    shown = fine_length(lap.lap_mm, unit, towards=Sense.AT_LEAST)
    if not lap.is_short:
        return shown
    return f"▲ {shown}, short {fine_length(lap.short_by_mm, unit, towards=Sense.AT_MOST)}"
