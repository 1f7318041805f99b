"""What lies beneath the covering and holds it, for the whole job: openings for air, masses, and what could not be told."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.finding import Finding
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import Beneath, Result
from gaugerod.sheets.beneath_cautions import LAST_CAUTION, LOAD_CAUTIONS
from gaugerod.sheets.finding_table import finding_alarm, finding_table, verdicts_counted
from gaugerod.sheets.job_sheet_foot import job_foot
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.sheets.sheet import Block, Bullets, Column, ColumnKind, Heading, PaperSize, Prose, Sheet, Table
from gaugerod.standards.roof_masses import MassBand
from gaugerod.substrate.load.weigh import Load
from gaugerod.substrate.ventilation.openings import Ventilation, VentOpening


def beneath_sheet(result: Result, *, size: PaperSize) -> Sheet:
    """The sheet of the whole job: what to order, air, load."""
    return Sheet(
        title=result.job.title,
        subtitle="Beneath the covering: what to order, openings for air, masses, for every slope of the job.",
        size=size,
        foot=job_foot(result),
        region=result.job.edition.value,
        blocks=tuple(_blocks(result)),
    )


def _blocks(result: Result) -> Iterator[Block]:
    under, unit = result.beneath, result.job.show_lengths_in
    findings = found_here(under)
    alarm = finding_alarm(findings, name="", unit=unit)
    yield Heading(text="Beneath the covering", level=1)
    if alarm is not None:
        yield alarm
    orders = tuple(_orders(under, unit))
    if orders:
        yield Heading(text="To order", kept_mm=40.0)
        yield Table(
            columns=(
                Column(heading="What", share_ratio=0.8),
                Column(heading="How much", share_ratio=2.4),
                Column(heading="More on", share_ratio=0.9),
                Column(heading="", kind=ColumnKind.TICK),
            ),
            rows=tuple((*row, "☐") for row in orders),
        )
    yield from _air(under.air, unit)
    yield from _loads(under.loads)
    yield Heading(text="Before you start", kept_mm=30.0)
    yield Bullets(lines=(*LOAD_CAUTIONS, LAST_CAUTION))
    if findings:
        yield Heading(text="Findings", kept_mm=50.0)
        yield Prose(
            text="Of air, of masses, and of what could not be planned. Those of each plan stand on its own sheet."
        )
        yield verdicts_counted(findings, name="", unit=unit)
        yield finding_table(findings, name="", unit=unit)


def found_here(under: Beneath) -> list[Finding]:
    """The findings that stand on no plan of a slope."""
    battened = () if under.battens is None else tuple(slope.where for slope in under.battens.slopes)
    on_plans = {finding for part in (under.underlay, under.fixings) for plan in part for finding in plan.findings}
    if under.battens is not None:
        on_plans |= {
            finding
            for finding in under.battens.findings
            if any(finding.where == where or finding.where.startswith(f"{where}, ") for where in battened)
        }
    return [finding for finding in under.findings if finding not in on_plans]


def _orders(under: Beneath, unit: LengthUnit) -> Iterator[tuple[str, str, str]]:
    if under.battens is not None:
        buy = ", ".join(
            f"{each.count} of {write_length(float(each.stock_mm), unit)}" for each in under.battens.cutting.buy
        )
        yield "Battens", f"{buy}: {under.battens.cutting.bought_mm / 1000:.1f} m", "cutting list of the battens"
        for nails in under.battens.nails:
            said = f"{nails.count} of {nails.length_mm:g} × {nails.shank_mm:g} mm, {nails.mass_kg:.1f} kg without their heads"
            yield f"Nails of the {nails.what}", said, "cutting list of the battens"
    if under.rolls is not None:
        rolls = "1 roll" if under.rolls.rolls_count == 1 else f"{under.rolls.rolls_count} rolls"
        yield "Underlay", f"{rolls} of {write_length(under.rolls.roll_length_mm, unit)}", "cutting list of the underlay"
    tape_mm = sum(plan.remedies[0].tape_length_mm for plan in under.underlay if plan.remedies)
    if tape_mm:
        yield "Tape for laps", f"{tape_mm / 1000:.1f} m", "underlay plans"
    extra_mm = sum(plan.remedies[0].extra_batten_length_mm for plan in under.underlay if plan.remedies)
    if extra_mm:
        yield "Battens on laps", f"{extra_mm / 1000:.1f} m, besides those of the courses", "underlay plans"
    for plan in under.fixings:
        total = plan.total
        counts = (
            ("nails", total.nails_count),
            ("tail clips", total.tail_clips_count),
            ("eaves clips", total.eaves_clips_count),
            ("verge clips", total.verge_clips_count),
            ("hooks", total.hooks_count),
            ("bonds", total.bonds_count),
            ("nails or clips, as the maker says", total.either_count),
        )
        said = ", ".join(f"{count} {what}" for what, count in counts if count) or "none"
        nail = "" if plan.nail is None else f"; {plan.nail}"
        mass = "" if plan.nail is None or plan.nail.total_kg is None else f", {plan.nail.total_kg:.1f} kg"
        yield f"Fixings, {plan.where}", f"{said}{nail}{mass}", "fixing plan of the slope"


def _air(air: Sequence[Ventilation], unit: LengthUnit) -> Iterator[Block]:
    if not air:
        return
    yield Heading(text="Openings for air", kept_mm=50.0)
    yield Prose(text="Continuous, or the same net free area in pieces.")
    figures = ColumnKind.FIGURES
    yield Table(
        columns=(
            Column(heading="Slope", share_ratio=0.8),
            Column(heading="Along, into, and source (how sure)", share_ratio=2.6),
            Column(heading="slot", kind=figures),
            Column(heading="length", kind=figures),
            Column(heading="mm² in a metre", kind=figures),
            Column(heading="mm² in all", kind=figures),
        ),
        rows=tuple(row for each in air for row in _openings(each, unit)),
    )
    yield Bullets(lines=tuple(_air_notes(air)))


def _openings(air: Ventilation, unit: LengthUnit) -> Iterator[tuple[str, ...]]:
    if not (air.low or air.high or air.instead):
        yield air.where, "No opening is asked for; see the findings.", "–", "–", "–", "–"
    for opening in air.low:
        yield _opening(air.where, opening, "", unit)
    for opening in air.high:
        yield _opening(air.where, opening, "", unit)
    for opening in air.instead:
        yield _opening(air.where, opening, "OR, in place of those at the eaves: ", unit)


def _opening(where: str, opening: VentOpening, first: str, unit: LengthUnit) -> tuple[str, ...]:
    return (
        where,
        f"{first}{opening.edge.name}, into {opening.serves}\nSource: {opening.citation}",
        fine_length(opening.slot_mm, unit),
        write_length(opening.edge.length_mm, unit),
        f"{opening.per_metre_mm2_per_m:.0f}",
        f"{opening.total_mm2:.0f}",
    )


def _air_notes(air: Sequence[Ventilation]) -> Iterator[str]:
    """What is said beside the openings, each sentence once."""
    told = ("Along the ", "Or, in place")
    yield from dict.fromkeys(line for each in air for line in each.says if not line.startswith(told))


def _loads(loads: Sequence[Load]) -> Iterator[Block]:
    if not loads:
        return
    yield Heading(text="Mass on the slope", kept_mm=50.0)
    figures = ColumnKind.FIGURES
    yield Table(
        columns=(
            Column(heading="Slope", share_ratio=0.8),
            Column(heading="Layer, how it was come by, and source (how sure)", share_ratio=2.8),
            Column(heading="kg/m²", kind=figures),
            Column(heading="kg in all", kind=figures),
            Column(heading="kN/m²", kind=figures),
        ),
        rows=tuple(row for load in loads for row in _load_rows(load)),
    )
    yield Bullets(lines=tuple(dict.fromkeys(load.says[-1] for load in loads if load.says)))


def _load_rows(load: Load) -> Iterator[tuple[str, ...]]:
    for part in load.parts:
        layer = f"{part.name}: {part.formula}\nSource: {part.mass.citation}"
        yield load.where, layer, _span(part.mass, places=1), _whole(part.mass, load.area_mm2), ""
    if load.total is None:
        yield load.where, "TOGETHER: the mass of the covering is not known", "–", "–", "–"
    elif load.least_kn_m2 is not None and load.greatest_kn_m2 is not None:
        kn_m2 = _between(f"{load.least_kn_m2:.2f}", f"{load.greatest_kn_m2:.2f}")
        area = f"TOGETHER, on {load.area_mm2 / 1e6:.2f} m² of slope"
        yield load.where, area, _span(load.total, places=1), _whole(load.total, load.area_mm2), kn_m2
    if load.old is not None:
        was = f"what was there before\nSource: {load.old.citation}"
        yield load.where, was, _span(load.old, places=1), _whole(load.old, load.area_mm2), ""


def _span(mass: MassBand, *, places: int) -> str:
    return _between(f"{mass.least_kg_m2:.{places}f}", f"{mass.greatest_kg_m2:.{places}f}")


def _whole(mass: MassBand, area_mm2: float) -> str:
    area_m2 = area_mm2 / 1e6
    return _between(f"{mass.least_kg_m2 * area_m2:.0f}", f"{mass.greatest_kg_m2 * area_m2:.0f}")


def _between(low: str, high: str) -> str:
    return low if low == high else f"{low} to {high}"
