"""The numbers a roofer reads first, each with its bounds, and what is outside said beside it."""

from collections.abc import Callable, Sequence

from gaugerod.basis.finding import Finding, Sense, Verdict
from gaugerod.basis.lengths import LengthUnit, write_greatest, write_length
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.geometry.pitch import cos_deg
from gaugerod.job.model import Covering
from gaugerod.job.result import SlopeResult
from gaugerod.setting_out.across import Across, SideKind
from gaugerod.setting_out.courses import Courses, Rod
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.sheets.sheet import Figure

_RULES_OF = {
    "headlap": frozenset({"headlap", "greatest headlap", "low pitch lap"}),
    "gauge": frozenset({"greatest gauge", "least gauge", "batten gauge"}),
    "top": frozenset({"top batten", "ridge cover"}),
    "overhang": frozenset({"eaves overhang", "eaves overhang, published"}),
    "cover": frozenset({"cover width"}),
    "side": frozenset({"verge overhang", "abutment set-back", "high point at the verge"}),
    "piece": frozenset({"least piece"}),
}
"""Which rules speak of which figure."""


ENDS_SQUARE = frozenset({SideKind.VERGE, SideKind.ABUTMENT})
"""Sides where courses end at a reach of their own; at a hip or valley they are cut to its line."""


def key_figures(slope: SlopeResult, *, covering: Covering, unit: LengthUnit) -> tuple[Figure, ...]:
    """Up the slope first, then across."""
    figures = _up_figures(slope, unit=unit)
    if slope.across is not None:
        figures += _across_figures(slope, slope.across, covering=covering, unit=unit)
    return figures


def _up_figures(slope: SlopeResult, *, unit: LengthUnit) -> tuple[Figure, ...]:
    courses = slope.courses
    level_mm = courses.overhang_mm * cos_deg(slope.slope.pitch_deg)
    return (
        Figure(label="Courses", values=(f"{courses.count}",), note=_course_note(courses, unit)),
        Figure(
            label="Gauge" if slope.diminishing is None else "Greatest gauge",
            values=_each_rod(courses.rods, lambda rod: fine_length(rod.gauge_mm, unit)),
            note=_gauge_note(courses, unit) if slope.diminishing is None else "each length has its own: see its table",
            wrong=_wrong(slope.findings, "gauge"),
        ),
        Figure(
            label="Headlap kept",
            values=(fine_length(courses.headlap_mm, unit, towards=Sense.AT_LEAST),),
            note=_least_lap_note(slope.findings, unit),
            wrong=_wrong(slope.findings, "headlap"),
        ),
        Figure(
            label="Eaves overhang",
            values=(write_length(courses.overhang_mm, unit),),
            note=f"on the slope; {write_length(level_mm, unit)} on the level",
            wrong=_wrong(slope.findings, "overhang"),
        ),
        Figure(
            label="First batten",
            values=_each_rod(courses.rods, lambda rod: write_length(rod.marks_mm[0], unit)),
            note="top edge, up the slope from the outer face of the fascia",
        ),
        Figure(
            label="Top batten",
            values=_each_rod(courses.rods, lambda rod: write_length(rod.marks_mm[-1], unit)),
            note=f"top edge; {_below_apex(courses.rods, unit)} below the apex",
            wrong=_wrong(slope.findings, "top"),
        ),
    )


def _across_figures(slope: SlopeResult, across: Across, *, covering: Covering, unit: LengthUnit) -> tuple[Figure, ...]:
    side_wrong = _wrong(slope.findings, "side")
    figures = [
        Figure(label="Units in a course", values=(f"{across.units_count}",), note=f"{across.bond.value} bond"),
        Figure(
            label="Cover of one unit",
            values=(fine_length(across.cover_mm, unit),),
            note=_shunt_note(covering, unit),
            wrong=_wrong(slope.findings, "cover"),
        ),
    ]
    for hand, kind, reach_mm in (
        ("Left", slope.slope.left, across.left_overhang_mm),
        ("Right", slope.slope.right, across.right_overhang_mm),
    ):
        if kind in ENDS_SQUARE:
            figures.append(_side_figure(hand, kind, reach_mm, unit=unit, wrong=side_wrong))
    if across.least_piece_mm is not None:
        figures.append(
            Figure(
                label="Least cut piece",
                values=(write_length(across.least_piece_mm, unit),),
                note="of its cover width",
                wrong=_wrong(slope.findings, "piece"),
            )
        )
    return tuple(figures)


def _side_figure(hand: str, kind: SideKind, reach_mm: float, *, unit: LengthUnit, wrong: str) -> Figure:
    if reach_mm < 0:
        return Figure(
            label=f"{hand} {kind.value}", values=(write_length(-reach_mm, unit),), note="clear of the wall", wrong=wrong
        )
    return Figure(
        label=f"{hand} {kind.value}",
        values=(write_length(reach_mm, unit),),
        note="past the roof structure",
        wrong=wrong,
    )


def _each_rod(rods: Sequence[Rod], said: Callable[[Rod], str]) -> tuple[str, ...]:
    """One value when every rod says the same; left and right where two rods differ; least and most of more."""
    values = [said(rod) for rod in rods]
    if len(set(values)) == 1:
        return (values[0],)
    if len(rods) == 2:
        return (f"left {values[0]}", f"right {values[1]}")
    shortest, longest = min(rods, key=lambda rod: rod.length_mm), max(rods, key=lambda rod: rod.length_mm)
    if said(shortest) == said(longest):
        return (values[0], "differs: see rods")
    return (f"least {said(shortest)}", f"most {said(longest)}")


def _course_note(courses: Courses, unit: LengthUnit) -> str:
    gauges = len(courses.rods[0].marks_mm) - 1
    note = f"{courses.count} battens, {gauges} gauges"
    if courses.top_course_cut_mm is not None:
        least_mm, most_mm = courses.top_course_cut_mm
        note += f"; top course cut {write_length(least_mm, unit)} to {write_length(most_mm, unit)}"
    return note


def _gauge_note(courses: Courses, unit: LengthUnit) -> str:
    most = f"at most {write_greatest(courses.gauge_max_mm, unit)}"
    if courses.gauge_min_mm is None:
        return most
    return f"at least {fine_length(courses.gauge_min_mm, unit, towards=Sense.AT_MOST)}, {most}"


def _least_lap_note(findings: Sequence[Finding], unit: LengthUnit) -> str:
    """The greatest of the least laps that rules ask for here."""
    least_mm = [
        finding.limit
        for finding in findings
        if finding.rule in _RULES_OF["headlap"] and finding.sense is Sense.AT_LEAST and finding.limit is not None
    ]
    return f"at least {fine_length(max(least_mm), unit, towards=Sense.AT_MOST)}" if least_mm else "no least known"


def _shunt_note(covering: Covering, unit: LengthUnit) -> str:
    if not isinstance(covering, SingleLapTile):
        return ""
    if covering.cover_closed_mm is None or covering.cover_open_mm is None:
        return "shunt not known"
    return (
        f"closed {fine_length(covering.cover_closed_mm, unit, towards=Sense.AT_MOST)}, "
        f"open {fine_length(covering.cover_open_mm, unit, towards=Sense.AT_LEAST)}"
    )


def _below_apex(rods: Sequence[Rod], unit: LengthUnit) -> str:
    return " / ".join(dict.fromkeys(write_length(rod.below_apex_mm, unit) for rod in rods))


def _wrong(findings: Sequence[Finding], figure: str) -> str:
    rules = [
        finding.rule for finding in findings if finding.verdict is Verdict.OUTSIDE and finding.rule in _RULES_OF[figure]
    ]
    return f"OUTSIDE: {', '.join(dict.fromkeys(rules))}" if rules else ""
