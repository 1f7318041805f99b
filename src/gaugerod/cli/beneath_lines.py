"""What lies beneath the covering, for the terminal: what to buy and what to mind."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.cli.lines import wrapped
from gaugerod.job.result import Beneath
from gaugerod.setting_out.said import counted
from gaugerod.substrate.battens.answer import Battens
from gaugerod.substrate.load.weigh import Load
from gaugerod.substrate.ventilation.openings import VentOpening

_INDENT = "                 "


def beneath_lines(under: Beneath, unit: LengthUnit) -> Iterator[str]:
    """The main numbers of every part that was asked for."""
    lines = [*_battens(under.battens, unit), *_underlay(under), *_air(under), *_fixings(under), *_loads(under.loads)]
    if lines:
        yield from ("", "Beneath the covering")
        yield from lines


def _battens(battens: Battens | None, unit: LengthUnit) -> Iterator[str]:
    if battens is None:
        return
    cutting = battens.cutting
    buy = ", ".join(f"{each.count} of {write_length(float(each.stock_mm), unit)}" for each in cutting.buy)
    yield f"  battens        {buy}: {cutting.bought_mm / 1000:.1f} m bought, {cutting.net_mm / 1000:.1f} m laid"
    gathered: dict[str, list[str]] = {}
    for slope in battens.slopes:
        gathered.setdefault(slope.why, []).append(slope.where)
    for why, places in gathered.items():
        yield from wrapped(f"{'; '.join(places)}: {why}", first=_INDENT)
    for nails in battens.nails:
        kind = f"{nails.length_mm:g} × {nails.shank_mm:g} mm"
        yield f"{_INDENT}{nails.count} nails {kind} for {nails.what}, {nails.mass_kg:.1f} kg"


def _underlay(under: Beneath) -> Iterator[str]:
    for plan in under.underlay:
        runs = f"{len(plan.runs)} runs, {plan.laid_area_mm2 / 1e6:.1f} m² of sheet"
        yield f"  underlay       {plan.where}: {runs}, laps {_laps(plan.least_lap_mm)}"
    if under.rolls is not None:
        yield f"{_INDENT}{counted(under.rolls.rolls_count, 'roll')} of {under.rolls.roll_length_mm / 1000:g} m"


def _laps(least_mm: float | None) -> str:
    return "not covered by a rule" if least_mm is None else f"{least_mm:g} mm at least"


def _air(under: Beneath) -> Iterator[str]:
    for air in under.air:
        openings = [*(_opening(each) for each in air.low), *(_opening(each) for each in air.high)]
        yield from wrapped(f"{air.where}: {'; '.join(openings) or 'no opening asked for'}", first="  air            ")


def _opening(opening: VentOpening) -> str:
    return f"{opening.slot_mm:g} mm along the {opening.edge.name}, {opening.total_mm2:.0f} mm²"


def _fixings(under: Beneath) -> Iterator[str]:
    for plan in under.fixings:
        total = plan.total
        said = [f"{total.nails_count} nails"] if total.nails_count else []
        said += [f"{total.clips_count} clips"] if total.clips_count else []
        said += [f"{total.hooks_count} hooks"] if total.hooks_count else []
        said += [f"{total.either_count} nails or clips"] if total.either_count else []
        nail = "" if plan.nail is None else f" ({plan.nail})"
        yield from wrapped(f"{plan.where}: {', '.join(said) or 'none'}{nail}; least by rule", first="  fixings        ")


def _loads(loads: tuple[Load, ...]) -> Iterator[str]:
    for load in loads:
        if load.total is None or load.least_kg is None or load.greatest_kg is None:
            yield f"  load           {load.where}: the mass of the covering is not known"
        else:
            each = _span(load.total.least_kg_m2, load.total.greatest_kg_m2, places=1)
            yield f"  load           {load.where}: {each} kg/m², {_span(load.least_kg, load.greatest_kg, places=0)} kg in all"


def _span(least: float, greatest: float, *, places: int) -> str:
    low, high = f"{least:.{places}f}", f"{greatest:.{places}f}"
    return low if low == high else f"{low} to {high}"
