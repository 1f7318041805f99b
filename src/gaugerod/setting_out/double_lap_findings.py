"""What the section of plain tiles or slates keeps or breaks, and how its laps were come by."""

from collections.abc import Iterator

from gaugerod.basis.citation import house
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.basis.working import Step
from gaugerod.coverings.double_lap import PlainTile
from gaugerod.setting_out.courses import Courses
from gaugerod.setting_out.double_lap_ask import DoubleLapAsk, top_room
from gaugerod.setting_out.double_lap_extras import DoubleLapExtras
from gaugerod.setting_out.said import out_by, said
from gaugerod.standards.defaults import ridge_cover_least
from gaugerod.standards.double_lap import DoubleLapFigure, double_lap_figure


def double_lap_findings(*, ask: DoubleLapAsk, courses: Courses, extras: DoubleLapExtras) -> tuple[Finding, ...]:
    """Laps as laid, the ridge over the short course, room for the extra battens, nails clear of heads."""
    return (
        _lap(ask, courses),
        *top_room(ask).findings,
        _heads_below_apex(ask, courses, extras),
        *_ridge_over_heads(ask, courses, extras),
        *_eaves_batten(ask, courses, extras),
        *_tops_batten(ask, extras),
        *_nails(ask, courses, extras),
    )


def _lap(ask: DoubleLapAsk, courses: Courses) -> Finding:
    kept = courses.headlap_mm >= ask.headlap.value - TOUCH
    return Finding(
        rule="headlap as laid",
        where=ask.where,
        proposed=courses.headlap_mm,
        limit=ask.headlap.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=ask.headlap.citation,
        says="The least lap over the second course below, read off the section from the eaves to the ridge."
        if kept
        else f"A lap is {out_by(ask.headlap.value - courses.headlap_mm, ask.division)} short: see the laps of each rod.",
    )


def _heads_below_apex(ask: DoubleLapAsk, courses: Courses, extras: DoubleLapExtras) -> Finding:
    """The heads of the top full course clear of the apex: where the ridge only just reaches, its lap comes first."""
    clear = double_lap_figure(ask.edition, DoubleLapFigure.SLATE_HEADS_BELOW_APEX)
    below_mm = min(
        rod.length_mm - (extra.tails_mm[-1] + ask.unit.length_mm)
        for rod, extra in zip(courses.rods, extras.rods, strict=True)
    )
    return Finding(
        rule="heads below the apex",
        where=ask.where,
        proposed=below_mm,
        limit=clear.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=clear.citation,
        says="The heads of the top full course stay clear of the apex."
        if below_mm >= clear.value - TOUCH
        else f"The heads of the top full course come {out_by(clear.value - below_mm, ask.division)} too near the apex: see that "
        "the two slopes clear one another and the ridge beds, or use a ridge that reaches further down.",
    )


def _ridge_over_heads(ask: DoubleLapAsk, courses: Courses, extras: DoubleLapExtras) -> Iterator[Finding]:
    """The ridge over the head of the uppermost course, whatever that is."""
    if ask.ridge_cover_mm is None:
        return
    covers_mm = []
    for rod, extra in zip(courses.rods, extras.rods, strict=True):
        tail_mm, length_mm = (
            (extra.tails_mm[-1], ask.unit.length_mm)
            if extra.short is None
            else (extra.short.tail_mm, extra.short.length_mm)
        )
        head_mm = min(tail_mm + length_mm - ask.lost_at_head_mm, rod.length_mm)
        covers_mm.append(head_mm - (rod.length_mm - ask.ridge_cover_mm))
    least = ridge_cover_least(ask.edition)
    yield Finding(
        rule="ridge over the top course",
        where=ask.where,
        proposed=min(covers_mm),
        limit=least.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=least.citation,
        says="How far the ridge covers the heads of the uppermost course.",
    )


def _eaves_batten(ask: DoubleLapAsk, courses: Courses, extras: DoubleLapExtras) -> Iterator[Finding]:
    """Eaves tiles: the extra batten lies below the first one with room for its own head."""
    if not isinstance(ask.unit, PlainTile):
        return
    widest = double_lap_figure(ask.edition, DoubleLapFigure.PLAIN_TILE_BATTEN_BELOW_FIRST_WIDEST)
    room_mm = min(
        rod.marks_mm[0] - extra.under_eaves_mark_mm for rod, extra in zip(courses.rods, extras.rods, strict=True)
    )
    yield Finding(
        rule="eaves batten",
        where=ask.where,
        proposed=room_mm,
        limit=widest.value + ask.unit.length_mm - ask.tail_to_mark_mm,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=widest.citation,
        says="From the eaves-tile batten to the first full-tile batten: the batten's width and the head of the eaves tile.",
    )


def _tops_batten(ask: DoubleLapAsk, extras: DoubleLapExtras) -> Iterator[Finding]:
    """The tops tile is short, so its batten comes close above the last one. No source read says how to make room."""
    above_mm = [rod.short.above_mm for rod in extras.rods if rod.short is not None]
    if not isinstance(ask.unit, PlainTile) or not above_mm:
        return
    widest = double_lap_figure(ask.edition, DoubleLapFigure.PLAIN_TILE_BATTEN_BELOW_FIRST_WIDEST)
    if min(above_mm) < widest.value - TOUCH:
        yield not_covered(
            rule="tops batten",
            where=ask.where,
            proposed=min(above_mm),
            unit="mm",
            citation=house("geometry: tail of the tops tile one gauge above the tail of the last full tile"),
            says=f"Top edge to top edge the tops batten lies {said(min(above_mm), ask.division)} above the last full-tile "
            f"batten, less than a {widest.value:g} mm batten is wide. Hang the tops tiles on one wider batten with the "
            "last course, or nail them, as the maker says.",
        )


def _nails(ask: DoubleLapAsk, courses: Courses, extras: DoubleLapExtras) -> Iterator[Finding]:
    """Centre-nailed: one hole for all slates, so where gauges differ the nail stands further above the head below."""
    if not ask.centre_nailed or extras.holing_mm is None:
        return
    shift_mm = ask.unit.length_mm - extras.holing_mm
    gaps_mm = [gap for rod in courses.rods for gap in rod.gaps_mm]
    for limit, clear_mm, sense in (
        (DoubleLapFigure.NAIL_ABOVE_HEAD_LEAST, min(gaps_mm) - shift_mm, Sense.AT_LEAST),
        (DoubleLapFigure.NAIL_ABOVE_HEAD_GREATEST, max(gaps_mm) - shift_mm, Sense.AT_MOST),
    ):
        figure = double_lap_figure(ask.edition, limit)
        yield Finding(
            rule="nail above the head below",
            where=ask.where,
            proposed=clear_mm,
            limit=figure.value,
            unit="mm",
            sense=sense,
            citation=figure.citation,
            says=f"Holed {said(extras.holing_mm, ask.division)} from the tail, the nail stands "
            f"{said(clear_mm, ask.division)} above the head of the slate it passes.",
        )


def double_lap_working(*, ask: DoubleLapAsk, courses: Courses, extras: DoubleLapExtras) -> Step:
    """Gauge from lap, and the least lap of every rod's section, on top of the working of the courses."""
    lap = Step(
        name="greatest gauge",
        formula="(length − (headlap + lost at the head)) / 2",
        inputs={
            "length (mm)": ask.unit.length_mm,
            "headlap (mm)": ask.headlap.value,
            "lost at the head (mm)": ask.lost_at_head_mm,
        },
        value=courses.gauge_max_mm,
        unit="mm",
        citation=ask.headlap.citation,
    )
    sections = [
        Step(
            name=f"least lap of the rod {rod.at_mm:.0f} mm from the left",
            formula="head of the course two below − tail, least of all courses",
            inputs={},
            value=min(rod.laps_mm),
            unit="mm",
        )
        for rod in extras.rods
    ]
    return Step(
        name="headlap, the least on the slope",
        formula="least of the laps as laid, eaves to ridge",
        inputs={},
        value=min(min(rod.laps_mm) for rod in extras.rods),
        unit="mm",
        citation=ask.headlap.citation,
        parts=(lap, *sections, *courses.working.parts),
    )
