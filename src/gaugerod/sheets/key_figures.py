"""The numbers a roofer reads first, each with its bounds, and what is outside said beside it."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import assert_never

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit, write_greatest, write_length
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.geometry.pitch import cos_deg
from gaugerod.job.model import Covering
from gaugerod.job.result import SlopeResult
from gaugerod.setting_out.across import Across, Fit, SideKind
from gaugerod.setting_out.courses import Courses, Rod
from gaugerod.setting_out.said import counted
from gaugerod.sheets.double_lap_figures import double_lap_figures, length_figures
from gaugerod.sheets.figure_rules import least_lap_note, wrong
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.sheets.mark_words import mark_word, marks_read
from gaugerod.sheets.sheet import Figure

CUT_FITS = frozenset({Fit.CUT, Fit.HIGH_POINT})
"""How pieces fit that are cut from a unit."""

ENDS_SQUARE = frozenset({SideKind.VERGE, SideKind.ABUTMENT})
"""Sides where courses end at a reach of their own; at a hip or valley they are cut to its line."""


def key_figures(slope: SlopeResult, *, covering: Covering, unit: LengthUnit) -> tuple[Figure, ...]:
    """Up the slope first, then across."""
    figures = _up_figures(slope, unit=unit) + double_lap_figures(slope, unit=unit)
    if slope.across is not None:
        figures += _across_figures(slope, slope.across, covering=covering, unit=unit)
    return figures


def _up_figures(slope: SlopeResult, *, unit: LengthUnit) -> tuple[Figure, ...]:
    courses = slope.courses
    level_mm = courses.overhang_mm * cos_deg(slope.slope.pitch_deg)
    mark, read = mark_word(slope), marks_read(slope)
    return (
        Figure(label="Courses", values=(f"{courses.count}",), note=_course_note(courses, mark, unit)),
        *_gauge_figures(slope, unit),
        Figure(
            label="Headlap kept",
            values=(fine_length(courses.headlap_mm, unit, towards=Sense.AT_LEAST),),
            note=least_lap_note(slope.findings, unit),
            wrong=wrong(slope.findings, "headlap"),
        ),
        Figure(
            label="Eaves overhang",
            values=(write_length(courses.overhang_mm, unit),),
            note=f"on the slope; {write_length(level_mm, unit)} on the level",
            wrong=wrong(slope.findings, "overhang"),
        ),
        Figure(
            label=f"First {mark}",
            values=_each_rod(courses.rods, lambda rod: write_length(rod.marks_mm[0], unit)),
            note="up the slope from the outer face of the fascia"
            if mark == "nail line"
            else "top edge, up the slope from the outer face of the fascia",
        ),
        Figure(
            label=f"Top {mark}",
            values=_each_rod(courses.rods, lambda rod: write_length(rod.marks_mm[-1], unit)),
            note=f"{read}; {_below_apex(courses.rods, unit)} below the apex",
            wrong=wrong(slope.findings, "top"),
        ),
    )


def _gauge_figures(slope: SlopeResult, unit: LengthUnit) -> tuple[Figure, ...]:
    """The gauge of every rod; of random slates, the lengths and the gauge of each."""
    outside = wrong(slope.findings, "gauge")
    if slope.diminishing is not None:
        lengths, gauge = length_figures(slope.diminishing, unit=unit)
        return (lengths, replace(gauge, wrong=outside))
    return (
        Figure(
            label="Gauge",
            values=_each_rod(slope.courses.rods, lambda rod: fine_length(rod.gauge_mm, unit)),
            note=_gauge_note(slope.courses, unit),
            wrong=outside,
        ),
    )


def _across_figures(slope: SlopeResult, across: Across, *, covering: Covering, unit: LengthUnit) -> tuple[Figure, ...]:
    figures = [
        Figure(label="Units in a course", values=(f"{across.units_count}",), note=f"{across.bond.value} bond"),
        Figure(
            label="Cover of one unit",
            values=(fine_length(across.cover_mm, unit),),
            note=_shunt_note(covering, across, unit),
            wrong=wrong(slope.findings, "cover"),
        ),
        *_side_figures(slope, across, unit),
    ]
    least_mm = _least_piece_mm(slope, across)
    if least_mm is not None:
        figures.append(
            Figure(
                label="Least cut piece",
                values=(write_length(least_mm, unit),),
                note="of its cover width",
                wrong=wrong(slope.findings, "piece"),
            )
        )
    return tuple(figures)


def _least_piece_mm(slope: SlopeResult, across: Across) -> float | None:
    """Pieces at the verges of double lap are not cut from one unit: their widths stand with the verges."""
    verges = {piece.at for piece in slope.verge_pieces}
    if not verges:
        return across.least_piece_mm
    cut_mm = [piece.cover_mm for piece in across.pieces if piece.at not in verges and piece.fit in CUT_FITS]
    return min(cut_mm, default=None)


def _side_figures(slope: SlopeResult, across: Across, unit: LengthUnit) -> tuple[Figure, ...]:
    """Both sides at once where they are alike."""
    sides = [
        (hand, kind, reach_mm)
        for hand, kind, reach_mm in (
            ("Left", slope.slope.left, across.left_overhang_mm),
            ("Right", slope.slope.right, across.right_overhang_mm),
        )
        if kind in ENDS_SQUARE
    ]
    alike = {(kind, write_length(reach_mm, unit)) for _, kind, reach_mm in sides}
    if len(sides) > 1 and len(alike) == 1:
        _, kind, reach_mm = sides[0]
        label = "Both verges" if kind is SideKind.VERGE else f"Both {kind.value}s"
        return (_side_figure(slope, label, kind, reach_mm, unit=unit, wrong=_wrong_at(slope, "left", "right")),)
    return tuple(
        _side_figure(slope, f"{hand} {kind.value}", kind, reach_mm, unit=unit, wrong=_wrong_at(slope, hand.lower()))
        for hand, kind, reach_mm in sides
    )


def _wrong_at(slope: SlopeResult, *hands: str) -> str:
    """What is outside at these sides, and not at another."""
    places = tuple(f"{slope.slope.name}, {hand}" for hand in hands)
    return wrong([finding for finding in slope.findings if finding.where.startswith(places)], "side")


def _side_figure(
    slope: SlopeResult, label: str, kind: SideKind, reach_mm: float, *, unit: LengthUnit, wrong: str
) -> Figure:
    note = "past the roof structure" if reach_mm >= 0 else "clear of the wall"
    if kind is SideKind.VERGE and slope.verge_pieces:
        least_mm = min(piece.width_mm for piece in slope.verge_pieces)
        note += f"; narrowest unit {write_length(least_mm, unit)}"
    return Figure(
        label=label,
        values=(write_length(reach_mm if reach_mm >= 0 else -reach_mm, unit),),
        note=note,
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


def _course_note(courses: Courses, mark: str, unit: LengthUnit) -> str:
    note = f"{counted(courses.count, mark)}, {counted(courses.count - 1, 'gauge')}"
    if courses.top_course_cut_mm is not None:
        cut = dict.fromkeys(write_length(cut_mm, unit) for cut_mm in courses.top_course_cut_mm)
        note += f"; top course cut {' to '.join(cut)}"
    return note


def _gauge_note(courses: Courses, unit: LengthUnit) -> str:
    most = f"at most {write_greatest(courses.gauge_max_mm, unit)}"
    if courses.gauge_min_mm is None:
        return most
    return f"at least {fine_length(courses.gauge_min_mm, unit, towards=Sense.AT_MOST)}, {most}"


def _shunt_note(covering: Covering, across: Across, unit: LengthUnit) -> str:
    match covering:
        case PlainTile() | SizedSlate():
            return f"with a joint of {fine_length(across.cover_mm - covering.width_mm, unit)}"
        case RandomSlates():
            return ""
        case SingleLapTile():
            if covering.cover_closed_mm is None or covering.cover_open_mm is None:
                return "shunt not known"
            return (
                f"closed {fine_length(covering.cover_closed_mm, unit, towards=Sense.AT_MOST)}, "
                f"open {fine_length(covering.cover_open_mm, unit, towards=Sense.AT_LEAST)}"
            )
        case _ as unreachable:
            assert_never(unreachable)


def _below_apex(rods: Sequence[Rod], unit: LengthUnit) -> str:
    return " / ".join(dict.fromkeys(write_length(rod.below_apex_mm, unit) for rod in rods))
