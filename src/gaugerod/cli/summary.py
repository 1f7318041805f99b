"""The main numbers of a result, for the terminal: what a roofer reads first."""

from collections.abc import Iterator

from gaugerod.basis.finding import Verdict
from gaugerod.basis.fine_lengths import fine_length
from gaugerod.basis.lengths import LengthUnit, write_greatest, write_length
from gaugerod.cli.beneath_lines import beneath_lines
from gaugerod.cli.edge_lines import edge_lines
from gaugerod.cli.lines import finding_lines, wrapped
from gaugerod.job.result import Result, SlopeResult
from gaugerod.job.slope_called import slope_heading
from gaugerod.setting_out.across import Across, SideKind
from gaugerod.setting_out.courses import Alternative


def summary_lines(result: Result) -> list[str]:
    """The result in plain lines."""
    unit = result.job.show_lengths_in
    lines = [f"{result.job.title}: {result.job.covering.title}", f"rules: edition {result.job.edition.value}"]
    for slope in result.slopes:
        lines.extend(
            [
                "",
                f"{slope_heading(slope.slope.name)}, {slope.slope.pitch_deg:.1f}°, {slope.shape.area_mm2 / 1e6:.2f} m²",
            ]
        )
        lines.extend(_courses(slope, unit))
        if slope.across is not None:
            lines.extend(_across(slope.across, slope, unit))
    for short in result.not_set_out:
        lines.extend(["", *wrapped(f"{slope_heading(short.slope.name)} could not be set out. {short.why}")])
    lines.extend(beneath_lines(result.beneath, unit))
    lines.extend(edge_lines(result))
    lines.extend(finding_lines(result.findings))
    lines.extend(_alternatives(result.alternatives))
    lines.extend(["", *wrapped(result.cautions[-1])])
    return lines


def _courses(slope: SlopeResult, unit: LengthUnit) -> Iterator[str]:
    courses = slope.courses
    lap = f"headlap {write_greatest(courses.headlap_mm, unit)}{_short(slope)}"
    if slope.diminishing is None:
        gauges = {fine_length(rod.gauge_mm, unit): None for rod in courses.rods}
        yield f"  courses up     {courses.count} at {', '.join(gauges)} gauge; {lap}"
    else:
        yield f"  courses up     {courses.count} in diminishing courses; {lap}"
        for group in slope.diminishing.groups:
            yield (
                f"                 {write_length(group.length_mm, unit)} slates: courses {group.first_course} to "
                f"{group.last_course}, gauge {fine_length(group.gauge_mm, unit)} at most"
            )
    yield from wrapped(courses.why, first="                 ")
    for rod in courses.rods:
        marks = f"first {write_length(rod.marks_mm[0], unit)}, top {write_length(rod.marks_mm[-1], unit)}"
        stands = "one rod" if len(courses.rods) == 1 else f"rod at {write_length(rod.at_mm, unit)}"
        yield f"  {stands:16} {marks}, {write_length(rod.below_apex_mm, unit)} below the apex"


def _across(across: Across, slope: SlopeResult, unit: LengthUnit) -> Iterator[str]:
    yield (
        f"  units across   {across.units_count} at {fine_length(across.cover_mm, unit)} cover, {across.bond.value} bond; "
        f"{_side(slope.slope.left, across.left_overhang_mm, unit)}, "
        f"{_side(slope.slope.right, across.right_overhang_mm, unit)}"
    )
    yield from wrapped(across.why, first="                 ")


def _short(slope: SlopeResult) -> str:
    """A lap outside a rule never stands there without a word."""
    outside = (finding for finding in slope.findings if finding.verdict is Verdict.OUTSIDE)
    return " (OUTSIDE: see the findings)" if any(finding.rule.startswith("headlap") for finding in outside) else ""


def _side(kind: SideKind, past_mm: float, unit: LengthUnit) -> str:
    """What stands there, and how far the covering reaches past it; at a hip or valley it is cut to the line."""
    return kind.value if kind in {SideKind.HIP, SideKind.VALLEY} else f"{kind.value} {_reach(past_mm, unit)}"


def _reach(past_mm: float, unit: LengthUnit) -> str:
    return f"{write_length(-past_mm, unit)} clear" if past_mm < 0 else write_length(past_mm, unit)


def _alternatives(alternatives: tuple[tuple[str, Alternative], ...]) -> Iterator[str]:
    if not alternatives:
        return
    yield ""
    yield "What could change:"
    for where, alternative in alternatives:
        limits = "keeps every limit" if alternative.keeps_limits else "does not keep every limit"
        yield from wrapped(
            f"{where}: {_sentence(alternative.change)} {alternative.costs} ({limits})",
            first=f"  {alternative.rank}.   ",
        )


def _sentence(text: str) -> str:
    return text if text.endswith((".", ":")) else f"{text}."
