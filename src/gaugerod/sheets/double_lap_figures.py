"""The numbers read first that only plain tiles and slates have."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import SlopeResult
from gaugerod.setting_out.diminishing.answer import DiminishingPlan
from gaugerod.setting_out.double_lap_extras import DoubleLapExtras
from gaugerod.sheets.figure_rules import wrong
from gaugerod.sheets.sheet import Figure


def double_lap_figures(slope: SlopeResult, *, unit: LengthUnit) -> tuple[Figure, ...]:
    """Under-eaves course, short course, nail holes, and what stays of the stack; nothing for single lap."""
    figures: list[Figure] = []
    if slope.double_lap is not None:
        figures += _extra_courses(slope, slope.double_lap, unit)
    if slope.diminishing is not None:
        figures += _of_the_stack(slope.diminishing, unit)
    return tuple(figures)


def length_figures(plan: DiminishingPlan, *, unit: LengthUnit) -> tuple[Figure, Figure]:
    """The lengths laid and the margin each of them shows, longest first."""
    lengths = [write_length(group.length_mm, unit) for group in plan.groups]
    gauges = [write_length(group.gauge_mm, unit) for group in plan.groups]
    kinds = "1 length" if len(lengths) == 1 else f"{len(lengths)} lengths, longest at the eaves"
    return (
        Figure(label="Lengths", values=_first_to_last(lengths), note=kinds),
        Figure(label="Gauge", values=_first_to_last(gauges), note="at most, by length: see its table"),
    )


def _first_to_last(values: list[str]) -> tuple[str, ...]:
    return (values[0],) if values[0] == values[-1] else (values[0], f"to {values[-1]}")


def _extra_courses(slope: SlopeResult, extras: DoubleLapExtras, unit: LengthUnit) -> Iterator[Figure]:
    rods = extras.rods
    under = " / ".join(dict.fromkeys(write_length(rod.under_eaves_mark_mm, unit) for rod in rods))
    yield Figure(
        label="Under-eaves unit",
        values=(write_length(extras.under_eaves_length_mm, unit),),
        note=f"long; its mark at {under}",
        wrong=wrong(slope.findings, "under-eaves"),
    )
    shorts = [rod.short for rod in rods if rod.short is not None]
    if shorts:
        marks = " / ".join(dict.fromkeys(write_length(short.mark_mm, unit) for short in shorts))
        yield Figure(
            label="Short course at the top",
            values=tuple(dict.fromkeys(write_length(short.length_mm, unit) for short in shorts)),
            note=f"long; its mark at {marks}",
        )
    if extras.holing_mm is not None:
        yield Figure(
            label="Nail holes",
            values=(write_length(extras.holing_mm, unit),),
            note="up from the tail, two to a slate",
            wrong=wrong(slope.findings, "holes"),
        )


def _of_the_stack(plan: DiminishingPlan, unit: LengthUnit) -> Iterator[Figure]:
    marks = " / ".join(dict.fromkeys(write_length(rod.under_eaves_mark_mm, unit) for rod in plan.rods))
    yield Figure(
        label="Under-eaves slate",
        values=(write_length(plan.under_eaves_length_mm, unit),),
        note=f"cut to; its mark at {marks}",
    )
    yield Figure(
        label="Stays of the stack",
        values=(f"{plan.left_run_mm / 1000:.1f} m",),
        note="sound slates, laid edge to edge",
    )
