"""A slope on which no source gives these slates a lap, and the job states none: why, and which slates would do."""

from collections.abc import Iterator
from dataclasses import replace

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.coverings.double_lap import SizedSlate
from gaugerod.coverings.double_lap_catalogue import sized_slates
from gaugerod.coverings.single_lap import Material
from gaugerod.job.double_lap_wished import double_lap_ask, least_headlap
from gaugerod.job.model import Covering, Job, Slope
from gaugerod.job.result import NotSetOut
from gaugerod.rules.slate_lap_missing import slate_lap_missing
from gaugerod.rules.slates import slate_pitch
from gaugerod.setting_out.courses import Alternative
from gaugerod.setting_out.double_lap import set_out_double_lap
from gaugerod.standards.slate_headlap import PrintedLap, printed_laps

OFFERS_COUNT = 2
"""The two least slates that would do are enough to choose from (house)."""


def lap_is_missing(job: Job, slope: Slope, covering: Covering) -> bool:
    """Are these slates, for which neither a table nor the job gives a lap at this slope's pitch?"""
    return (
        isinstance(covering, SizedSlate)
        and job.wishes.headlap_mm is None
        and least_headlap(job, slope, covering) is None
    )


def without_a_lap(job: Job, slope: Slope, slate: SizedSlate) -> NotSetOut:
    """The slope as it stands without a lap to set out with."""
    offers = tuple(_slates_that_would_do(job, slope, slate))
    return NotSetOut(
        slope=slope,
        why=_why(job, slope, slate, choose="a larger slate or another covering" if offers else "another covering"),
        findings=(
            slate_pitch(where=slope.name, pitch_deg=slope.pitch_deg, edition=job.edition),
            *slate_lap_missing(
                where=slope.name,
                slate=slate,
                pitch_deg=slope.pitch_deg,
                exposure=job.exposure,
                edition=job.edition,
                between=job.wishes.slate_between,
            ),
        ),
        alternatives=offers,
    )


def _why(job: Job, slope: Slope, slate: SizedSlate, *, choose: str) -> str:
    """Why there is no lap to set out with, what each table prints, and what can be done."""
    told = f"{slate.title} at {slope.pitch_deg:.1f}° in {job.exposure.value.replace('-', ' ')} exposure"
    ask_maker = "ask the maker, and state his lap as headlap in set_out"
    if len(job.slopes) + len(job.buildings) > 1:
        ask_maker += (
            " (that lap then holds for every slope of the job: to keep it to this one, write it as a job of its own)"
        )
    printed = printed_laps(
        length_mm=slate.length_mm,
        width_mm=slate.width_mm,
        pitch_deg=slope.pitch_deg,
        exposure=job.exposure,
        edition=job.edition,
        between=job.wishes.slate_between,
    )
    if slate.material is not Material.NATURAL_SLATE or not printed:
        return f"No table held here gives a headlap for {told}: {ask_maker}."
    names = ("first", "second") if len(printed) > 1 else ("only",)
    tables = "; ".join(_says(name, lap) for name, lap in zip(names, printed, strict=True))
    why = f"No lap is taken for {told}: {tables}. Choose {choose}; or {ask_maker}."
    if any(lap.headlap_mm is not None for lap in printed):
        why += " To go by one reproduction alone, say which as slate_laps."
    return why


def _says(name: str, lap: PrintedLap) -> str:
    if lap.headlap_mm is None:
        return f"the {name} reproduction of the table does not recommend that size below {lap.recommended_from_deg:g}°"
    return f"the {name} reproduction of the table gives {lap.headlap_mm:g} mm"


def _slates_that_would_do(job: Job, slope: Slope, slate: SizedSlate) -> Iterator[Alternative]:
    """The least catalogue sizes that have a lap at this pitch; each is set out before it is offered."""
    if slate.material is not Material.NATURAL_SLATE:
        return
    rank = 0
    for size in sorted(sized_slates().values(), key=lambda each: (each.length_mm, each.width_mm)):
        other = replace(slate, title=size.title, length_mm=size.length_mm, width_mm=size.width_mm)
        least = least_headlap(job, slope, other)
        if least is None or rank == OFFERS_COUNT:
            continue
        try:
            courses = set_out_double_lap(double_lap_ask(job, slope, other)).courses
        except NothingToSetOut:
            continue
        rank += 1
        yield Alternative(
            rank=rank,
            change=f"Slates of {size.length_mm:g} × {size.width_mm:g} mm on this slope, lapped {least.value:g} mm",
            by_mm=size.length_mm - slate.length_mm,
            costs="Another size of slate to order for this slope.",
            keeps_limits=True,
            gauges=courses.count - 1,
            gauge_mm=max(rod.gauge_mm for rod in courses.rods),
        )
