"""Underlay one slope: strips, runs, laps held against the battens, findings, and what the rolls must give."""

from collections.abc import Sequence

from gaugerod.basis.limit import Limit
from gaugerod.basis.working import Step
from gaugerod.geometry.polygon import signed_area_mm2
from gaugerod.standards.table import OffTable
from gaugerod.standards.underlay import underlay_lap_least
from gaugerod.substrate.underlay.answer import LapBetween, RunLap, Strip, StripKind, UnderlayPlan
from gaugerod.substrate.underlay.ask import LapRemedy, UnderlayAsk
from gaugerod.substrate.underlay.batten_lines import greatest_gap_mm
from gaugerod.substrate.underlay.findings import underlay_findings
from gaugerod.substrate.underlay.reach import reach_outline_mm, reaches
from gaugerod.substrate.underlay.remedy_costs import remedy_costs, runs_area_mm2
from gaugerod.substrate.underlay.run_lines import RunLines, run_lines
from gaugerod.substrate.underlay.says import underlay_says
from gaugerod.substrate.underlay.strips import demands, strips


def lay_underlay(ask: UnderlayAsk) -> UnderlayPlan:
    """The underlay of one slope. The rolls of all slopes are then cut together by ``cut_rolls``.

    Below the pitch the table of laps starts at, and with no lap stated, no run is placed: a finding says so.
    Raises NothingToSetOut where the slope, the strip or the roll is too small for its laps.

    >>> from gaugerod.basis.citation import house
    >>> from gaugerod.basis.rounding import Division
    >>> from gaugerod.coverings.underlay import Resistance, Support, UnderlayRecord
    >>> from gaugerod.laying.ask import Edge, EdgeKind, Ring
    >>> from gaugerod.standards.edition import Edition
    >>> from gaugerod.substrate.underlay.ask import RidgeMade
    >>> kinds = (EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.RIDGE, EdgeKind.VERGE)
    >>> outline = Ring(points_mm=((0.0, 0.0), (6000.0, 0.0), (6000.0, 4000.0), (0.0, 4000.0)),
    ...                edges=tuple(Edge(name=f"{kind} {at}", kind=kind) for at, kind in enumerate(kinds)))
    >>> membrane = UnderlayRecord(title="membrane", roll_width_mm=1000.0, roll_length_mm=50000.0,
    ...                           resistance=Resistance.LOW, citation=house("example"))
    >>> plan = lay_underlay(UnderlayAsk(where="rear", outline=outline, pitch_deg=35.0, rods=(), batten_width_mm=50.0,
    ...     rafters_mm=(), record=membrane, support=Support.RAFTERS, counter_battens=False,
    ...     ridge=RidgeMade.DRY_VENTILATED, division=Division.MILLIMETRE, edition=Edition.GB))
    >>> [run.low_mm for run in plan.runs], plan.least_lap_mm
    ([0.0, 900.0, 1800.0, 2700.0, 3600.0], 100.0)
    """
    edges = reaches(ask)
    reach_mm = reach_outline_mm(ask, edges)
    least = underlay_lap_least(ask.edition, pitch_deg=ask.pitch_deg, fully_supported=ask.support.full)
    least_lap_mm = _least_lap_mm(ask, least)
    lines = RunLines(runs=(), laps=()) if least_lap_mm is None else run_lines(ask, reach_mm, least_lap_mm=least_lap_mm)
    laid_first = tuple(strips(ask))
    wind_held = bool(ask.rods) and all(lap.held for lap in lines.laps)
    laid_mm2 = runs_area_mm2(lines.runs, top_mm=max(y for _, y in reach_mm)) + _strips_area_mm2(laid_first)
    remedies = () if least_lap_mm is None else tuple(remedy_costs(ask, lines, reach_mm, least_lap_mm=least_lap_mm))
    return UnderlayPlan(
        where=ask.where,
        least_lap_mm=least_lap_mm,
        edges=edges,
        reach_mm=reach_mm,
        runs=lines.runs,
        laps=lines.laps,
        strips=laid_first,
        demands=tuple(demands(ask, lines.runs, laid_first)),
        slope_area_mm2=signed_area_mm2(ask.outline.points_mm),
        reach_area_mm2=signed_area_mm2(reach_mm),
        laid_area_mm2=laid_mm2,
        remedies=remedies,
        wind_held=wind_held,
        greatest_gap_mm=greatest_gap_mm(ask.rods),
        findings=underlay_findings(ask, lines.laps, wind_held=wind_held),
        says=underlay_says(ask, edges=edges, runs=lines.runs, laps=lines.laps, strips=laid_first, remedies=remedies),
        working=_working(ask, lines, least, laid_mm2=laid_mm2),
    )


def _least_lap_mm(ask: UnderlayAsk, least: Limit | OffTable) -> float | None:
    """The table's lap, or the larger one stated. A stated lap smaller than the table's is not taken."""
    if isinstance(least, OffTable):
        return ask.lap_mm
    return least.value if ask.lap_mm is None else max(least.value, ask.lap_mm)


def _strips_area_mm2(laid_first: Sequence[Strip]) -> float:
    return sum(
        strip.length_mm * (strip.width_mm or 0.0)
        for strip in laid_first
        if strip.kind is StripKind.VALLEY and not strip.elsewhere
    )


def _working(ask: UnderlayAsk, lines: RunLines, least: Limit | OffTable, *, laid_mm2: float) -> Step:
    roll_mm = ask.record.roll_width_mm
    return Step(
        name=f"underlay of {ask.where}",
        formula="length of each run × its width, and the valley strips",
        inputs={"roll width (mm)": roll_mm, "runs": float(len(lines.runs)), "pitch (°)": ask.pitch_deg},
        value=laid_mm2 / 1e6,
        unit="m2",
        citation=least.citation,
        parts=tuple(_lap_step(lap, roll_mm) for lap in lines.laps),
    )


def _lap_step(lap: RunLap, roll_mm: float) -> Step:
    place = lap.place
    wider = isinstance(place, LapBetween) and place.remedy is LapRemedy.WIDEN
    return Step(
        name=f"lower edge of run {lap.upper}",
        formula=(
            "upper edge of the run below − lap, down to a whole division"
            + (", the lap brought down onto the next batten" if wider else "")
        ),
        inputs={
            "upper edge of the run below (mm)": lap.high_mm,
            "roll width (mm)": roll_mm,
            "least lap (mm)": lap.least_mm,
            "lap (mm)": lap.lap_mm,
        },
        value=lap.low_mm,
        unit="mm",
    )
