"""The cutting list of the battens: what to buy, and how to saw every length, for all the slopes together."""

from collections import defaultdict
from collections.abc import Iterator, Sequence

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.in_words import sentence_in_unit
from gaugerod.job.result import Result
from gaugerod.sheets.beneath_cautions import BATTEN_CAUTIONS, LAST_CAUTION
from gaugerod.sheets.job_sheet_foot import job_foot
from gaugerod.sheets.joint_tables import nail_table, piece_length
from gaugerod.sheets.lengths_shown import bare_length, unit_heading
from gaugerod.sheets.sheet import (
    Block,
    Bullets,
    Column,
    ColumnKind,
    Figure,
    Figures,
    Heading,
    PaperSize,
    Prose,
    Sheet,
    Table,
)
from gaugerod.substrate.battens.answer import Battens, SawnLength, SlopeBattens


def cutting_list_sheet(result: Result, battens: Battens, *, size: PaperSize) -> Sheet:
    """The cutting list."""
    return Sheet(
        title=result.job.title,
        subtitle="Cutting list of the battens, all slopes together: what to buy, how to saw it, where each piece goes.",
        size=size,
        foot=job_foot(result),
        region=result.job.edition.value,
        blocks=tuple(_blocks(battens, result.job.show_lengths_in)),
    )


def _blocks(battens: Battens, unit: LengthUnit) -> Iterator[Block]:
    cutting = battens.cutting
    yield Heading(text="Battens to buy and to saw", level=1)
    yield Figures(figures=_figures(battens))
    yield Prose(text=sentence_in_unit(cutting.proof_says, unit))
    yield Heading(text="To buy", kept_mm=30.0)
    yield buy_table(battens, unit)
    yield Heading(text="Nails to buy", kept_mm=25.0)
    yield nail_table(battens)
    yield Heading(text="How to saw each length", kept_mm=50.0)
    yield Prose(
        text="Square cuts, in the order told. Write its place on every piece as it is sawn: the batten, a stroke, and which piece "
        "of it from the left (5/2: batten 5, second piece). Where a pattern repeats, its letter stands for the batten."
    )
    yield sawing_table(battens, unit)
    yield Heading(text="Before you start", kept_mm=40.0)
    yield Bullets(lines=(*BATTEN_CAUTIONS, LAST_CAUTION))


def _figures(battens: Battens) -> tuple[Figure, ...]:
    cutting = battens.cutting
    return (
        Figure(label="Lengths", values=(str(cutting.lengths_count),), note="to buy"),
        Figure(label="Bought", values=(f"{cutting.bought_mm / 1000:.1f} m",)),
        Figure(label="Laid", values=(f"{cutting.net_mm / 1000:.1f} m",), note="before ends are trimmed in place"),
        Figure(
            label="Not laid",
            values=(f"{100 * cutting.waste_ratio:.1f} %",),
            note=f"of what is laid; {cutting.offcuts_used_count} pieces come from offcuts",
        ),
    )


def buy_table(battens: Battens, unit: LengthUnit) -> Table:
    """How many of each stock length."""
    sections = {
        f"{slope.section.width_mm:g} × {slope.section.depth_mm:g} mm"
        for slope in battens.slopes
        if slope.section is not None
    }
    return Table(
        columns=(
            Column(heading="stock length", kind=ColumnKind.MARK),
            Column(heading="number", kind=ColumnKind.MARK),
            Column(heading="in all, m", kind=ColumnKind.FIGURES),
            Column(heading="least section"),
            Column(heading="", kind=ColumnKind.TICK),
        ),
        rows=tuple(
            (
                write_length(float(each.stock_mm), unit),
                str(each.count),
                f"{each.count * each.stock_mm / 1000:.1f}",
                ", ".join(sorted(sections)) or "see the findings of each slope",
                "☐",
            )
            for each in battens.cutting.buy
        ),
    )


def sawing_table(battens: Battens, unit: LengthUnit) -> Table:
    """Lengths sawn alike in one row, with where their pieces go."""
    return Table(
        columns=(
            Column(heading="lengths", kind=ColumnKind.MARK),
            Column(heading=f"of, {unit_heading(unit)}", kind=ColumnKind.FIGURES),
            Column(heading=f"saw, {unit_heading(unit)}", kind=ColumnKind.FIGURES),
            Column(heading="where they go", share_ratio=1.0),
            Column(heading="left of each", kind=ColumnKind.FIGURES),
            Column(heading="", kind=ColumnKind.TICK),
        ),
        rows=tuple(
            (
                str(len(alike)),
                bare_length(float(alike[0].stock_mm), unit),
                " + ".join(piece_length(piece.length_mm, unit) for piece in alike[0].pieces),
                _places(alike, battens),
                bare_length(alike[0].left_mm, unit),
                "☐",
            )
            for alike in _alike(battens.cutting.sawn)
        ),
        set_count=5,
    )


def _alike(sawn: Sequence[SawnLength]) -> list[list[SawnLength]]:
    """Lengths that give the same pieces, in the order they are told."""
    found: dict[tuple[object, ...], list[SawnLength]] = {}
    for each in sawn:
        key = (each.stock_mm, *(piece.length_mm for piece in each.pieces))
        found.setdefault(key, []).append(each)
    return list(found.values())


def _places(alike: Sequence[SawnLength], battens: Battens) -> str:
    """Where the pieces go, slope by slope; a pattern's letter told once for all its battens."""
    slopes = {slope.where: slope for slope in battens.slopes}
    by_slope: dict[str, dict[int, list[str]]] = defaultdict(lambda: defaultdict(list))
    for sawn in alike:
        for piece in sawn.pieces:
            name = _batten_or_letter(slopes[piece.where], piece.batten)
            if name not in by_slope[piece.where][piece.piece]:
                by_slope[piece.where][piece.piece].append(name)
    several = len(slopes) > 1
    said = []
    for where, by_piece in by_slope.items():
        places = ", ".join(f"{name}/{piece}" for piece, names in sorted(by_piece.items()) for name in names)
        said.append(f"{where}: {places}" if several else places)
    return "; ".join(said)


def _batten_or_letter(slope: SlopeBattens, batten: str) -> str:
    if slope.repeats_every is None:
        return batten
    return next((line.letter or batten for line in slope.lines if line.name == batten), batten)
