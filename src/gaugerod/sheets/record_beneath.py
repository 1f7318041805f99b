"""What lies beneath the covering and holds it, in the hand-over record: what each slope was built to, and by which source."""

from collections.abc import Iterator

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.basis.limit import Limit
from gaugerod.fixing.held import WORDS
from gaugerod.fixing.plan import FixingPlan
from gaugerod.job.result import Beneath, Result
from gaugerod.setting_out.said import counted
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.sheets.sheet import Block, Column, Heading, Prose, Table
from gaugerod.substrate.battens.answer import SlopeBattens
from gaugerod.substrate.load.weigh import Load
from gaugerod.substrate.underlay.answer import UnderlayPlan
from gaugerod.substrate.ventilation.openings import Ventilation, VentOpening

Line = tuple[str, str]
"""What it is, and what it is built to with its source on a line of its own."""


def beneath_blocks(result: Result) -> Iterator[Block]:
    """Battens, underlay, fixings, openings and masses; slopes that are alike told together."""
    yield Heading(text="Beneath the covering, and what holds it", level=1, kept_mm=50.0)
    gathered: dict[Line, list[str]] = {}
    for where, line in _lines(result):
        gathered.setdefault(line, []).append(where)
    left_out = tuple(_left_out(result.beneath))
    if left_out:
        yield Prose(text=f"Not worked out for this job, and nothing is recorded of it: {', '.join(left_out)}.")
    if gathered:
        yield Table(
            columns=(
                Column(heading="Slopes", share_ratio=1.0),
                Column(heading="What", share_ratio=0.8),
                Column(heading="Built to, and its source (how sure)", share_ratio=3.4),
            ),
            rows=tuple((", ".join(dict.fromkeys(where)), what, said) for (what, said), where in gathered.items()),
        )


def _left_out(under: Beneath) -> Iterator[str]:
    for name, part in (
        ("battens", under.battens),
        ("underlay", under.underlay),
        ("fixings", under.fixings),
        ("openings for air", under.air),
        ("masses", under.loads),
    ):
        if not part:
            yield name


def _lines(result: Result) -> Iterator[tuple[str, Line]]:
    under, unit = result.beneath, result.job.show_lengths_in
    for battens in () if under.battens is None else under.battens.slopes:
        yield from ((battens.where, line) for line in _batten_lines(battens))
    for plan in under.underlay:
        yield plan.where, _underlay_line(result, plan, unit)
    for fixings in under.fixings:
        yield from ((fixings.where, line) for line in _fixing_lines(fixings))
    for air in under.air:
        yield from ((air.where, line) for line in _air_lines(air, unit))
    for load in under.loads:
        yield load.where, _load_line(load)


def _batten_lines(battens: SlopeBattens) -> Iterator[Line]:
    if battens.section is None:
        yield "battens", f"No section is told: the findings say why. {battens.why}"
    else:
        yield "battens", f"{battens.section} or more. {battens.why}\nSource: {battens.section.citation}"
    if battens.counter_battens is not None:
        counter = battens.counter_battens
        yield (
            "counter-battens",
            f"One up each rafter, {counted(counter.fixings_count, 'fixing')}.\nSource: {counter.citation}",
        )


def _underlay_line(result: Result, plan: UnderlayPlan, unit: LengthUnit) -> Line:
    wished = result.job.beneath.underlay
    title = "" if wished is None else f"{wished.record.title[:1].upper()}{wished.record.title[1:]}. "
    smallest_mm = min((lap.lap_mm for lap in plan.laps), default=None)
    least = "no rule covers it" if plan.least_lap_mm is None else f"least {fine_length(plan.least_lap_mm, unit)}"
    laps = "none" if smallest_mm is None else fine_length(smallest_mm, unit, towards=Sense.AT_LEAST)
    held = "every lap held down" if plan.wind_held else "NOT every lap held down"
    return "underlay", f"{title}{counted(len(plan.runs), 'run')}; smallest lap {laps} ({least}); {held}."


def _fixing_lines(plan: FixingPlan) -> Iterator[Line]:
    field, perimeter = plan.field_rule, plan.perimeter_rule
    yield "fixings, field", _with_sources(f"{field.name[:1].upper()}{field.name[1:]}.", [*map(_cited, field.limits)])
    along = counted(int(perimeter.courses.value), "course")
    said = (
        f"{along} at eaves and top, and the last unit at the sides, each by "
        f"{counted(perimeter.least.in_all_count, 'fixing')} or more."
    )
    yield "fixings, perimeter", _with_sources(said, [*map(_cited, perimeter.limits)])
    total = [
        f"{count} {several if count != 1 else one}"
        for count, (one, several) in zip(plan.total, WORDS, strict=True)
        if count
    ]
    nail = "" if plan.nail is None else f"; {plan.nail}"
    yield "fixings, in all", f"{', '.join(total) or 'none'}{nail}. The least by rule; no wind calculation."


def _cited(limit: Limit) -> str:
    return str(limit.citation)


def _with_sources(said: str, sources: list[str]) -> str:
    return "\n".join([said, *(f"Source: {source}" for source in dict.fromkeys(sources) if source)])


def _air_lines(air: Ventilation, unit: LengthUnit) -> Iterator[Line]:
    for opening in (*air.low, *air.high):
        yield "opening for air", _opening_said(opening, "", unit)
    for opening in air.instead:
        yield "opening for air", _opening_said(opening, "Or, in place of those at the eaves: ", unit)
    if not (air.low or air.high or air.instead):
        yield "opening for air", "None is asked for: the findings say why."


def _opening_said(opening: VentOpening, first: str, unit: LengthUnit) -> str:
    along = opening.edge.name if first else f"{opening.edge.name[:1].upper()}{opening.edge.name[1:]}"
    return (
        f"{first}{along}, into {opening.serves}: {fine_length(opening.slot_mm, unit)} all along, "
        f"{write_length(opening.edge.length_mm, unit)}, net free.\nSource: {opening.citation}"
    )


def _load_line(load: Load) -> Line:
    if load.total is None or load.least_kn_m2 is None or load.greatest_kn_m2 is None:
        return "mass", "The mass of the covering is not known."
    least, greatest = f"{load.total.least_kg_m2:.1f}", f"{load.total.greatest_kg_m2:.1f}"
    on_m2 = least if least == greatest else f"{least} to {greatest}"
    kn_least, kn_greatest = f"{load.least_kn_m2:.2f}", f"{load.greatest_kn_m2:.2f}"
    kn_m2 = kn_least if kn_least == kn_greatest else f"{kn_least} to {kn_greatest}"
    old = "" if load.old is None else f" Before: {load.old.least_kg_m2:.1f} to {load.old.greatest_kg_m2:.1f} kg/m²."
    return "mass", f"{on_m2} kg on each m² of slope, {kn_m2} kN/m².{old}\nSource: {load.total.citation}"
