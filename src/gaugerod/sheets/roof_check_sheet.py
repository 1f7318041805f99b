"""The record of a roof checked as built: what is wrong and what cures it, the drawing, every lap, and the new marks."""

from collections.abc import Iterator, Sequence
from typing import TypeVar

from gaugerod import __version__
from gaugerod.as_built.laps import LapAsBuilt
from gaugerod.as_built.leaks import RANKING, Leak
from gaugerod.as_built.needed import TOP_EDGE
from gaugerod.as_built.roof_check import RodAsBuilt, RoofCheck
from gaugerod.as_built.strip_back import StripBack
from gaugerod.basis.finding import Sense, Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.cautions import CAUTIONS
from gaugerod.setting_out.courses import Rod
from gaugerod.sheets.finding_table import finding_alarm, finding_table
from gaugerod.sheets.lengths_shown import bare_length, fine_length, unit_heading
from gaugerod.sheets.roof_check_drawing import roof_check_drawing
from gaugerod.sheets.setting_out_sheet import DISCLAIMER
from gaugerod.sheets.sheet import Block, Bullets, Column, ColumnKind, Heading, PaperSize, Pictures, Prose, Sheet, Table
from gaugerod.sheets.working_table import working_table

Place = TypeVar("Place", RodAsBuilt, Rod)

_DRAWING_HIGH_MM = 120.0
_PLACES_COUNT = 4
"""Places side by side in one table."""


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
    alarm = finding_alarm(
        [finding for finding in check.findings if finding.rule in _LAPS], name=check.ask.where, unit=unit
    )
    drawn = roof_check_drawing(check, unit=unit, room_width_mm=size.text_width_mm, room_height_mm=_DRAWING_HIGH_MM)
    first: list[Block] = [Prose(text="No lap is short.")] if alarm is None else [alarm]
    caption = f"As measured, {drawn.scale_said}. A triangle on a heavy bar: the lap there is short. Slanting: to strip."
    other_count = sum(finding.verdict is Verdict.OUTSIDE and finding.rule not in _LAPS for finding in check.findings)
    if other_count:
        first.append(Prose(text=f"{other_count} more outside a rule or tolerance: see the table of findings."))
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
    return [
        *blocks,
        Heading(text="Marks, up from the fascia face"),
        *_mark_tables(check, cure, courses.rods, unit=unit),
    ]


def _mark_tables(check: RoofCheck, cure: StripBack, rods: Sequence[Rod], *, unit: LengthUnit) -> Iterator[Table]:
    """Where every course goes: its mark; of slates its tail, for that is what can be struck."""
    slates = check.needed.marks_are != TOP_EDGE
    down_mm = check.needed.afresh.hanging_length_mm if slates else 0.0
    what = "Tail" if slates else "Top edge of batten"
    for shown in _side_by_side(rods):
        yield Table(
            columns=(
                Column(heading="Course", kind=ColumnKind.FIGURES),
                Column(heading="Kept or new"),
                *(
                    Column(
                        heading=f"{what}, at {bare_length(rod.at_mm, unit)} ({unit_heading(unit)})",
                        kind=ColumnKind.MARK,
                    )
                    for rod in shown
                ),
            ),
            rows=tuple(
                (
                    f"{number}",
                    "kept" if number <= cure.keep_count else "new",
                    *(bare_length(mark_mm - down_mm, unit) for mark_mm in marks_mm),
                )
                for number, marks_mm in enumerate(zip(*(rod.marks_mm for rod in shown), strict=True), 1)
            ),
            set_count=5,
        )


def _side_by_side(rods: Sequence[Place]) -> Iterator[Sequence[Place]]:
    """The places, as many together as a table can hold."""
    for first in range(0, len(rods), _PLACES_COUNT):
        yield rods[first : first + _PLACES_COUNT]


def _behind(check: RoofCheck, *, unit: LengthUnit) -> list[Block]:
    leaks: list[Block] = []
    if check.leaks:
        leaks = [
            Heading(text="What leaks first"),
            Prose(text=f"{RANKING.source} (house).".capitalize()),
            Bullets(lines=tuple(_leak_said(leak) for leak in check.leaks)),
        ]
    return [
        *leaks,
        Heading(text="Every lap"),
        *_lap_tables(check, unit=unit),
        Heading(text="Findings"),
        finding_table(check.findings, name=check.ask.where, unit=unit),
        Heading(text="Cautions"),
        Bullets(lines=CAUTIONS),
        Heading(text="Working"),
        working_table(check.working),
    ]


def _leak_said(leak: Leak) -> str:
    missing = "it lies open" if leak.lap.lap_mm < 0 else f"{leak.missing_ratio:.0%} of its lap is missing"
    return f"Course {leak.lap.course}: {missing}, {leak.water_ratio:.0%} of the slope drains over it."


def _lap_tables(check: RoofCheck, *, unit: LengthUnit) -> Iterator[Table]:
    for shown in _side_by_side(check.rods):
        yield Table(
            columns=(
                Column(heading="Course"),
                *(Column(heading=f"At {bare_length(rod.at_mm, unit)}", kind=ColumnKind.FIGURES) for rod in shown),
            ),
            rows=tuple(
                (f"{laps[0].course} over {laps[0].over}", *(_lap_said(lap, unit=unit) for lap in laps))
                for laps in zip(*(rod.laps for rod in shown), strict=True)
            ),
            set_count=5,
        )


def _lap_said(lap: LapAsBuilt, *, unit: LengthUnit) -> str:
    shown = fine_length(lap.lap_mm, unit, towards=Sense.AT_LEAST)
    if not lap.is_short:
        return shown
    return f"▲ {shown}, short {fine_length(lap.short_by_mm, unit, towards=Sense.AT_MOST)}"
