"""The underlay plan of one slope on paper: order of laying, laps, edges, and the remedies for laps between battens."""

from collections.abc import Iterator

from gaugerod.basis.finding import Sense, Verdict
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import Result, SlopeResult
from gaugerod.sheets.beneath_cautions import LAST_CAUTION, UNDERLAY_CAUTIONS
from gaugerod.sheets.finding_table import finding_alarm, finding_table, verdicts_counted
from gaugerod.sheets.lengths_shown import bare_fine_length, bare_length, fine_length, unit_heading
from gaugerod.sheets.setting_out_sheet import foot
from gaugerod.sheets.sheet import (
    Alarm,
    Block,
    Bullets,
    Column,
    ColumnKind,
    Figure,
    Figures,
    Heading,
    PaperSize,
    Pictures,
    Prose,
    Sheet,
    Steps,
    Table,
)
from gaugerod.sheets.underlay_drawing import underlay_drawing
from gaugerod.sheets.underlay_words import REMEDIES_SAID, edge_does, lap_place_said, strip_names, strip_said
from gaugerod.substrate.underlay.answer import UnderlayPlan
from gaugerod.substrate.underlay.cut_rolls import Piece, RollCuts

_FRONT_MM = 70.0
"""Title, slope line, figures and caption of a first page, with air."""


def underlay_sheet(result: Result, slope: SlopeResult, plan: UnderlayPlan, *, size: PaperSize) -> Sheet:
    """The underlay of one slope."""
    return Sheet(
        title=result.job.title,
        subtitle=f"Underlay plan of the slope {slope.slope.name}: strips, runs, laps and edges, in the order of laying.",
        size=size,
        foot=foot(result, slope),
        region=result.job.edition.value,
        blocks=tuple(_blocks(result, slope, plan, size)),
    )


def _blocks(result: Result, slope: SlopeResult, plan: UnderlayPlan, size: PaperSize) -> Iterator[Block]:
    name, unit = slope.slope.name, result.job.show_lengths_in
    alarm = finding_alarm(plan.findings, name=name, unit=unit)
    yield Heading(text=f"Slope {name}: underlay", level=1)
    if alarm is not None:
        yield alarm
    if not plan.runs:
        yield Alarm(title="◇ No run is placed: read before starting", lines=tuple(_why_none(plan)))
    yield Figures(figures=_figures(result, plan, unit))
    taken_mm = _FRONT_MM if alarm is None else _FRONT_MM + 9.0 + sum(5.0 * -(-len(line) // 95) for line in alarm.lines)
    placed = underlay_drawing(
        slope,
        plan,
        side_laps=side_laps(result.beneath.rolls, plan),
        unit=unit,
        room_width_mm=size.text_width_mm,
        room_height_mm=max(size.text_height_mm - taken_mm, 110.0),
    )
    caption = (
        f"Square on, {placed.scale_said}, lengths in {unit_heading(unit)}. Heavy: the lower edge of each run, measured up the "
        "slope from the fascia face. Hatched: laps. Dashed: the hidden upper edge, and where the underlay ends past the slope. "
        "Dotted: strips laid first. Thin: battens."
    )
    yield Pictures(pictures=((placed, caption),))
    yield Heading(text="Order of laying", kept_mm=50.0)
    yield _order_table(plan, unit)
    yield Heading(text="At the edges", kept_mm=40.0)
    yield _edge_table(plan, unit)
    yield from _openings(slope)
    yield from _remedies(plan, unit)
    yield Heading(text="Before you start", kept_mm=40.0)
    yield Bullets(lines=(*UNDERLAY_CAUTIONS, LAST_CAUTION))
    yield Heading(text="Method", kept_mm=50.0)
    yield Steps(lines=plan.says)
    yield Heading(text="Findings", kept_mm=50.0)
    yield verdicts_counted(plan.findings, name=name, unit=unit)
    yield finding_table(plan.findings, name=name, unit=unit)


def _why_none(plan: UnderlayPlan) -> Iterator[str]:
    """What the findings on laps that no rule covers say."""
    for finding in plan.findings:
        if finding.rule.startswith("underlay lap") and finding.verdict is Verdict.NOT_COVERED:
            yield finding.says


def side_laps(rolls: RollCuts | None, plan: UnderlayPlan) -> tuple[tuple[int, Piece], ...]:
    """The pieces of this slope that lap the piece on their left, each with the number of its run."""
    if rolls is None:
        return ()
    pieces = [piece for roll in rolls.rolls for piece in roll.pieces if piece.side_lap_mm > 0]
    return tuple(
        (run.number, piece) for run in plan.runs for piece in pieces if _is_of(piece, f"{plan.where}, run {run.number}")
    )


def _is_of(piece: Piece, run: str) -> bool:
    return piece.name == run or piece.name.startswith(f"{run}, ")


def _figures(result: Result, plan: UnderlayPlan, unit: LengthUnit) -> tuple[Figure, ...]:
    wished = result.job.beneath.underlay
    least = (
        "no rule covers it"
        if plan.least_lap_mm is None
        else f"at least {_with_mm(plan.least_lap_mm, unit, towards=Sense.AT_MOST)}"
    )
    smallest_mm = min((lap.lap_mm for lap in plan.laps), default=None)
    exact = ""
    if smallest_mm is not None and unit is LengthUnit.FT_IN:
        exact = f"{fine_length(smallest_mm, LengthUnit.MM, towards=Sense.AT_LEAST)}; "
    figures = [
        Figure(label="Runs", values=(str(len(plan.runs)),), note="numbered from the eaves up"),
        Figure(
            label="Smallest lap",
            values=("none" if smallest_mm is None else fine_length(smallest_mm, unit, towards=Sense.AT_LEAST),),
            note=f"{exact}{least}",
        ),
        Figure(
            label="Sheet as laid", values=(f"{plan.laid_area_mm2 / 1e6:.1f} m²",), note="laps counted, off-cuts not"
        ),
    ]
    if wished is not None:
        record = wished.record
        note = f"{record.resistance.value} resistance; {write_length(record.roll_length_mm, unit)} long"
        figures.append(Figure(label="Roll width", values=(write_length(record.roll_width_mm, unit),), note=note))
    return tuple(figures)


def _with_mm(length_mm: float, unit: LengthUnit, *, towards: Sense) -> str:
    """A length that a sixteenth cannot tell exactly has its millimetres beside it."""
    said = fine_length(length_mm, unit, towards=towards)
    return f"{said} ({fine_length(length_mm, LengthUnit.MM)})" if unit is LengthUnit.FT_IN else said


def _order_table(plan: UnderlayPlan, unit: LengthUnit) -> Table:
    """Strips, then runs from the eaves up, with each lap."""
    laps = {lap.upper: lap for lap in plan.laps}
    strips = [
        (
            name,
            f"{strip_said(strip)}, {bare_length(strip.length_mm, unit)} long"
            + ("" if strip.width_mm is None else f", {bare_length(strip.width_mm, unit)} wide"),
            "",
            "",
            "before the runs",
            "☐",
        )
        for strip, name in strip_names(plan)
    ]
    runs = [
        (
            str(run.number),
            " and ".join(bare_length(right - left, unit) for left, right in run.spans_mm) + " end to end",
            bare_length(run.low_mm, unit),
            "" if lap is None else bare_fine_length(lap.lap_mm, unit, towards=Sense.AT_LEAST),
            "" if lap is None else lap_place_said(lap, unit),
            "☐",
        )
        for run in plan.runs
        for lap in (laps.get(run.number),)
    ]
    return Table(
        columns=(
            Column(heading="order", kind=ColumnKind.MARK),
            Column(heading=f"what, {unit_heading(unit)}", share_ratio=1.6),
            Column(heading="lower edge", kind=ColumnKind.MARK),
            Column(heading="lap on the run below", kind=ColumnKind.FIGURES, share_ratio=0.6),
            Column(heading="where the lap lies", share_ratio=1.6),
            Column(heading="", kind=ColumnKind.TICK),
        ),
        rows=(*strips, *runs),
    )


def _edge_table(plan: UnderlayPlan, unit: LengthUnit) -> Table:
    return Table(
        columns=(
            Column(heading="Edge", share_ratio=0.6),
            Column(heading="What the underlay does there, and its source (how sure)", share_ratio=3.0),
            Column(heading="past the edge", kind=ColumnKind.FIGURES, share_ratio=0.6),
        ),
        rows=tuple(
            (
                reach.edge.name,
                f"{edge_does(reach, unit)}\nSource: {reach.citation}",
                bare_fine_length(reach.past_mm, unit, towards=Sense.AT_MOST)
                if reach.past_mm >= 0
                else f"{bare_length(-reach.past_mm, unit)} short of it",
            )
            for reach in plan.edges
        ),
    )


def _openings(slope: SlopeResult) -> Iterator[Block]:
    if slope.slope.openings:
        yield Prose(
            text="Openings are not taken out of the runs here. Cut each run round them, turn it up on all four sides, and lead "
            "water above them round to the sides, as the maker of the opening says (common practice)."
        )


def _remedies(plan: UnderlayPlan, unit: LengthUnit) -> Iterator[Block]:
    """What each remedy for laps between battens takes on the whole slope."""
    if not plan.remedies:
        return
    yield Heading(text="Laps between battens: what each remedy takes", kept_mm=40.0)
    yield Table(
        columns=(
            Column(heading="Remedy", share_ratio=2.0),
            Column(heading="runs", kind=ColumnKind.FIGURES, share_ratio=0.6),
            Column(heading="sheet, m²", kind=ColumnKind.FIGURES, share_ratio=0.8),
            Column(heading="extra batten", kind=ColumnKind.FIGURES, share_ratio=1.0),
            Column(heading="tape", kind=ColumnKind.FIGURES, share_ratio=1.0),
        ),
        rows=tuple(
            (
                f"{'● taken: ' if number == 0 else ''}{REMEDIES_SAID[each.remedy]}",
                str(each.runs_count),
                f"{each.laid_area_mm2 / 1e6:.1f}",
                _or_none(each.extra_batten_length_mm, unit),
                _or_none(each.tape_length_mm, unit),
            )
            for number, each in enumerate(plan.remedies)
        ),
    )


def _or_none(length_mm: float, unit: LengthUnit) -> str:
    return write_length(length_mm, unit) if length_mm else "none"
