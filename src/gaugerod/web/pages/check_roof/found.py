"""The answer of a roof check as the page shows it, made from the same sentences, tables and drawing as its record."""

from gaugerod.as_built.leaks import RANKING
from gaugerod.as_built.roof_check import RoofCheck
from gaugerod.basis.finding import Finding, Sense, Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.roof_checked import RoofToCheck
from gaugerod.setting_out.said import counted
from gaugerod.sheets.lengths_shown import bare_length, fine_length, unit_heading
from gaugerod.sheets.roof_check_drawing import roof_check_drawing
from gaugerod.sheets.roof_check_sheet import course_blocks, cure_blocks
from gaugerod.sheets.roof_check_words import advice_sentence, leak_sentences, verdict_sentence
from gaugerod.sheets.sheet import Figure
from gaugerod.web.blocks import parts_shown
from gaugerod.web.drawn import POCKET_MM, WIDE_MM, markup
from gaugerod.web.pages.check_roof.context import Found
from gaugerod.web.pages.findings.context import FindingRow
from gaugerod.web.pages.findings.rows import finding_row
from gaugerod.web.pages.sheets.context import Download
from gaugerod.wiring import roof_check_file_names

FILE = "file:"
"""What the form is sent with for one of the files: this, and its name."""
_POCKET_HIGH_MM = 110.0


def found_of(roof: RoofToCheck, check: RoofCheck) -> Found:
    """The whole answer."""
    unit = roof.show_lengths_in
    wide = roof_check_drawing(check, unit=unit, room_width_mm=WIDE_MM[0], room_height_mm=WIDE_MM[1])
    pocket = roof_check_drawing(
        check, unit=unit, room_width_mm=POCKET_MM, room_height_mm=_POCKET_HIGH_MM, numbers_only=True
    )
    return Found(
        verdict=_verdict(check),
        says=verdict_sentence(check, unit=unit),
        covering=f"{check.ask.covering.title}: {check.ask.covering.citation}",
        leaks=tuple(leak_sentences(check, unit=unit)),
        ranked_by=str(RANKING),
        figures=_figures(check, unit),
        wide=markup(wide),
        pocket=markup(pocket),
        cure=parts_shown(cure_blocks(check, unit=unit)),
        courses=parts_shown(course_blocks(check, unit=unit)),
        advice=tuple(advice_sentence(finding, name=check.ask.where) for finding in check.advice),
        outside=_rows(check.outside, unit),
        not_covered=_rows(_of(check, Verdict.NOT_COVERED), unit),
        within=_rows(_of(check, Verdict.WITHIN), unit),
        downloads=_downloads(roof, check),
    )


def _verdict(check: RoofCheck) -> str:
    if check.outside:
        return "outside"
    return "open" if check.advice or _of(check, Verdict.NOT_COVERED) else "within"


def _of(check: RoofCheck, verdict: Verdict) -> tuple[Finding, ...]:
    return tuple(finding for finding in check.by_rule if finding.verdict is verdict)


def _rows(findings: tuple[Finding, ...], unit: LengthUnit) -> tuple[FindingRow, ...]:
    return tuple(finding_row(finding, unit) for finding in findings)


def _figures(check: RoofCheck, unit: LengthUnit) -> tuple[Figure, ...]:
    """The numbers read first."""
    least, needed, cure = check.least_lap, check.needed, check.strip_back
    short = counted(len(check.leaks), "short lap")
    figures = [
        Figure(
            label="Smallest lap",
            values=(fine_length(least.lap_mm, unit, towards=Sense.AT_LEAST),),
            note=f"course {least.course} over {least.over}, {bare_length(least.at_mm, unit)} {unit_heading(unit)} from the left",
            wrong=f"{short} of {len(check.rods[0].laps)}" if check.leaks else "",
        ),
        Figure(
            label="Least lap", values=(fine_length(needed.least_lap.value, unit),), note=str(needed.least_lap.citation)
        ),
    ]
    if needed.edition_lap is not None and needed.edition_lap != needed.least_lap:
        asked = fine_length(needed.edition_lap.value, unit)
        figures.append(Figure(label="The edition's", values=(asked,), note=str(needed.edition_lap.citation)))
    gauges = dict.fromkeys(fine_length(rod.even.equal_gauge_mm, unit) for rod in check.rods)
    figures.append(
        Figure(
            label="Equal gauge would be",
            values=tuple(gauges),
            note=counted(check.courses_count, "course") + " measured",
        )
    )
    if cure is not None:
        kept = f"{cure.keep_count} of {check.courses_count}"
        figures.append(Figure(label="Courses to keep", values=(kept,), note=f"{cure.strip_count} to strip"))
    return tuple(figures)


def _downloads(roof: RoofToCheck, check: RoofCheck) -> tuple[Download, ...]:
    names = roof_check_file_names(check, title=roof.title, unit=roof.show_lengths_in)
    return tuple(
        Download(says=f"{says[:1].upper()}{says[1:]}", kind=name.rpartition(".")[2].upper(), href=f"{FILE}{name}")
        for name, says in names
    )
