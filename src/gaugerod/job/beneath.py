"""What lies beneath the covering and what holds it, worked out for the slopes as they were set out.

Battens and rolls are cut for all slopes together, so that what is left of one serves another. A part that was not asked for
is left out; one that cannot be worked out says why.
"""

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import TypeVar

from gaugerod.basis.citation import house
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.basis.working import Step
from gaugerod.fixing.least_fixing import least_fixing
from gaugerod.fixing.plan import FixingPlan
from gaugerod.job.battened import batten_ask, rafters_not_known
from gaugerod.job.beneath_asks import air_ask, fixing_ask, load_ask, underlay_ask
from gaugerod.job.model import Job
from gaugerod.job.result import Beneath, RoofResult, SlopeResult
from gaugerod.substrate.battens.answer import Battens
from gaugerod.substrate.battens.plan import plan_battens
from gaugerod.substrate.load.weigh import Load, weigh
from gaugerod.substrate.underlay.answer import UnderlayPlan
from gaugerod.substrate.underlay.cut_rolls import RollCuts, cut_rolls
from gaugerod.substrate.underlay.lay_underlay import lay_underlay
from gaugerod.substrate.ventilation.openings import Ventilation, ventilate

Answer = TypeVar("Answer")
CANNOT = house("nothing is guessed")


def beneath(job: Job, slopes: Sequence[SlopeResult], roofs: Sequence[RoofResult]) -> Beneath:
    """Every part that is asked for. Scope: slopes that were set out."""
    found: list[Finding] = []
    battens = _battens(job, slopes, found)
    underlay = tuple(_underlay(job, slopes, roofs, found))
    rolls = _rolls(job, underlay, found)
    air = tuple(_air(job, slopes))
    fixings = tuple(_fixings(job, slopes, found))
    loads = tuple(_loads(job, slopes, battens, underlay))
    return Beneath(
        battens=battens,
        underlay=underlay,
        rolls=rolls,
        air=air,
        fixings=fixings,
        loads=loads,
        findings=(
            *found,
            *(() if battens is None else battens.findings),
            *(finding for part in (underlay, air, fixings, loads) for each in part for finding in each.findings),
        ),
    )


def beneath_working(under: Beneath) -> tuple[Step, ...]:
    """The steps behind every part."""
    parts = (under.underlay, under.air, under.fixings, under.loads)
    return (
        *(() if under.battens is None else (under.battens.working,)),
        *(() if under.rolls is None else (under.rolls.working,)),
        *(each.working for part in parts for each in part),
    )


def _battens(job: Job, slopes: Sequence[SlopeResult], found: list[Finding]) -> Battens | None:
    if job.beneath.battens is None:
        return None
    found.extend(rafters_not_known(job, slopes))
    ask = batten_ask(job, slopes, job.beneath.battens)
    if ask is None:
        return None
    return _or_said(found, rule="batten joints", where="battens", work=partial(plan_battens, ask))


def _underlay(
    job: Job, slopes: Sequence[SlopeResult], roofs: Sequence[RoofResult], found: list[Finding]
) -> Iterator[UnderlayPlan]:
    wished = job.beneath.underlay
    if wished is None:
        return
    nailing = None if job.beneath.battens is None else job.beneath.battens.nailing
    counter_battens = nailing is not None and nailing.counter_batten_depth_mm is not None
    of_buildings = {name for roof in roofs for name in roof.slope_names}
    for slope in slopes:
        name = slope.slope.name
        ask = underlay_ask(job, slope, wished, counter_battens=counter_battens, of_building=name in of_buildings)
        plan = _or_said(found, rule="underlay", where=name, work=partial(lay_underlay, ask))
        if plan is not None:
            yield plan


def _rolls(job: Job, underlay: Sequence[UnderlayPlan], found: list[Finding]) -> RollCuts | None:
    demands = [demand for plan in underlay for demand in plan.demands]
    if job.beneath.underlay is None or not demands:
        return None
    roll_mm = job.beneath.underlay.record.roll_length_mm
    return _or_said(
        found,
        rule="underlay rolls",
        where="underlay",
        work=partial(cut_rolls, demands, roll_length_mm=roll_mm, edition=job.edition),
    )


def _air(job: Job, slopes: Sequence[SlopeResult]) -> Iterator[Ventilation]:
    if job.beneath.air is None or job.beneath.underlay is None:
        return
    for slope in slopes:
        ask = air_ask(job, slope, job.beneath.air, job.beneath.underlay)
        if ask is not None:
            yield ventilate(ask)


def _fixings(job: Job, slopes: Sequence[SlopeResult], found: list[Finding]) -> Iterator[FixingPlan]:
    if job.beneath.fixings is None:
        return
    for slope in slopes:
        if slope.laid is None:
            says = "How wide the units lie is not known, so they cannot be counted one by one, and no fixing is told."
            found.append(_said("fixings", slope.slope.name, says))
            continue
        yield least_fixing(fixing_ask(job, slope, slope.laid, job.beneath.fixings))


def _loads(
    job: Job, slopes: Sequence[SlopeResult], battens: Battens | None, underlay: Sequence[UnderlayPlan]
) -> Iterator[Load]:
    wished, roll = job.beneath.load, job.beneath.underlay
    if wished is None:
        return
    battened = {each.where: each for each in (() if battens is None else battens.slopes)}
    underlaid = {plan.where: (roll, plan) for plan in underlay if roll is not None}
    for slope in slopes:
        name = slope.slope.name
        yield weigh(load_ask(job, slope, wished, battens=battened.get(name), underlay=underlaid.get(name)))


def _or_said(found: list[Finding], *, rule: str, where: str, work: Callable[[], Answer]) -> Answer | None:
    """The answer; or nothing, and a finding with the reason: one part that cannot be done holds no other up."""
    try:
        return work()
    except NothingToSetOut as nothing:
        found.append(_said(rule, where, f"{nothing.reason[0].upper()}{nothing.reason[1:]}."))
        return None


def _said(rule: str, where: str, says: str) -> Finding:
    return not_covered(rule=rule, where=where, proposed=None, unit="mm", citation=CANNOT, says=says)
