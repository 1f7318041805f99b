"""The working of the check: how every lap, run-out and rank was come by."""

from collections.abc import Sequence

from gaugerod.as_built.ask import RoofAsk
from gaugerod.as_built.laps import LapAsBuilt
from gaugerod.as_built.leaks import RANKING, Leak
from gaugerod.as_built.needed import Needed
from gaugerod.as_built.roof_check import RodAsBuilt
from gaugerod.basis.working import Step
from gaugerod.setting_out.section_laid import LapOver


def check_working(ask: RoofAsk, *, needed: Needed, rods: Sequence[RodAsBuilt], leaks: Sequence[Leak]) -> Step:
    """Every number of the check, place by place."""
    return Step(
        name=f"check of {ask.where}",
        formula="courses with a short lap, counted at the worst place of each",
        inputs={
            "covering": ask.covering.title,
            "least lap (mm)": needed.least_lap.value,
            "edition's own lap (mm)": "none" if needed.edition_lap is None else needed.edition_lap.value,
        },
        value=float(len(leaks)),
        unit="courses",
        citation=needed.least_lap.citation,
        parts=(*(_rod(rod, needed) for rod in rods), *(_leak(leak) for leak in leaks)),
    )


def _rod(rod: RodAsBuilt, needed: Needed) -> Step:
    worst = rod.even.worst_run_out
    return Step(
        name=f"rod at {rod.at_mm:g} mm",
        formula="smallest lap of this rod",
        inputs={"rafter (mm)": rod.length_mm, "first mark (mm)": rod.marks_mm[0], "last mark (mm)": rod.marks_mm[-1]},
        value=min(lap.lap_mm for lap in rod.laps),
        unit="mm",
        parts=(
            Step(
                name="equal gauge",
                formula="(last mark − first mark) / gaps",
                inputs={"gaps": float(len(rod.even.gaps))},
                value=rod.even.equal_gauge_mm,
                unit="mm",
            ),
            Step(
                name="run-out",
                formula="mark − (first mark + gaps below it × equal gauge), where it is furthest from nothing",
                inputs={"batten": float(worst.upper), "mark (mm)": rod.marks_mm[worst.upper - 1]},
                value=worst.run_out_mm,
                unit="mm",
            ),
            *(_lap(lap, rod, needed) for lap in rod.laps),
        ),
    )


def _lap(lap: LapAsBuilt, rod: RodAsBuilt, needed: Needed) -> Step:
    gaps = rod.even.gaps[lap.over - 1 : lap.course - 1]
    single = needed.lapping is LapOver.NEXT_BELOW
    return Step(
        name=f"lap of course {lap.course} over course {lap.over}",
        formula="length − gap" if single else "length that counts − both gaps between",
        inputs={
            "length (mm)" if single else "length that counts (mm)": needed.usable_mm,
            **{f"gap {gap.lower} to {gap.upper} (mm)": gap.gap_mm for gap in gaps},
        },
        value=lap.lap_mm,
        unit="mm",
    )


def _leak(leak: Leak) -> Step:
    return Step(
        name=f"rank {leak.rank}: course {leak.lap.course}",
        formula="part of the lap missing × part of the slope that drains over it",
        inputs={"part missing": leak.missing_ratio, "part draining": leak.water_ratio},
        value=leak.missing_ratio * leak.water_ratio,
        unit="ratio",
        citation=RANKING,
    )
