"""The joints of a slope in tables: which batten starts with which length; plans on offer; nails and counter-battens."""

from collections.abc import Iterator, Sequence
from itertools import groupby

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.in_words import sentence_in_unit
from gaugerod.sheets.lengths_shown import bare_fine_length, bare_length, unit_heading
from gaugerod.sheets.sheet import Block, Column, ColumnKind, Heading, Prose, Table
from gaugerod.substrate.battens.answer import BattenLine, Battens, SlopeBattens, Stretch


def piece_length(piece_mm: float, unit: LengthUnit) -> str:
    r"""The length of a piece as it is sawn: rounded up, to be trimmed in place.

    >>> piece_length(2382, LengthUnit.MM), piece_length(2382, LengthUnit.FT_IN)
    ('2382', '7\' 9 13/16"')
    """
    return bare_fine_length(piece_mm, unit, towards=Sense.AT_MOST)


def batten_table(battens: SlopeBattens, unit: LengthUnit) -> Table:
    """Which batten starts with which length: a row for each course of the pattern, or for each batten that differs."""
    in_pattern = battens.repeats_every is not None
    rows = tuple(
        (lines[0].letter or "–", names_said([line.name for line in lines]), *_pieces_and_joints(lines[0], unit), "☐")
        for lines in _alike(battens)
    )
    widest_count = max((len(line) for row in rows for line in row[2].split("\n")), default=0)
    return Table(
        columns=(
            Column(heading="letter", kind=ColumnKind.MARK),
            Column(
                heading="battens, from the eaves up" if in_pattern else "batten", share_ratio=1.0 if in_pattern else 0.0
            ),
            Column(heading=f"pieces from the left, {unit_heading(unit)}", kind=ColumnKind.FIGURES),
            Column(heading="joints on rafters", kind=ColumnKind.FIGURES),
            Column(heading="", kind=ColumnKind.TICK),
        ),
        rows=rows,
        beside_count=2 if not in_pattern and len(rows) > 1 and widest_count <= _BESIDE_LETTERS_COUNT else 1,
        set_count=0 if in_pattern else 5,
    )


_BESIDE_LETTERS_COUNT = 25
"""Pieces told in no more letters than this leave room for two tables side by side."""


def _alike(battens: SlopeBattens) -> Iterator[Sequence[BattenLine]]:
    """Battens that take one row: all those of a letter where the pattern repeats, else neighbours that are the same."""
    if battens.repeats_every is not None:
        for at in range(battens.repeats_every):
            lines = battens.lines[at :: battens.repeats_every]
            if lines:
                yield lines
        return
    for _, alike in groupby(battens.lines, key=lambda line: [(each.pieces_mm, each.joints) for each in line.stretches]):
        yield tuple(alike)


def _pieces_and_joints(line: BattenLine, unit: LengthUnit) -> tuple[str, str]:
    """Pieces and joints, one line for each stretch between openings."""
    return (
        "\n".join(" + ".join(piece_length(piece_mm, unit) for piece_mm in each.pieces_mm) for each in line.stretches),
        "\n".join(_joints(each) for each in line.stretches),
    )


def _joints(stretch: Stretch) -> str:
    return ", ".join(map(str, stretch.joints)) or "none"


def names_said(names: Sequence[str]) -> str:
    """Battens by name, numbers that follow each other by the first and last.

    >>> names_said(["eaves", "1", "2", "3", "7", "top"]), names_said(["1", "5", "9", "13"])
    ('eaves, 1 to 3, 7, top', '1, 5, 9, 13')
    """
    said: list[str] = []
    numbered = enumerate(names)
    for _, run in groupby(numbered, key=lambda each: int(each[1]) - each[0] if each[1].isdigit() else each[1]):
        these = [name for _, name in run]
        said += [f"{these[0]} to {these[-1]}"] if len(these) > 2 else these
    return ", ".join(said)


def relaxed_blocks(battens: SlopeBattens, unit: LengthUnit) -> list[Block]:
    """The plans on offer where no strict one exists."""
    if not battens.relaxed:
        return []
    return [
        Heading(text="Plans on offer", kept_mm=40.0),
        Prose(
            text="None of these is taken of itself. Where one breaks a rule, whoever is responsible for the roof must choose it, "
            "in writing."
        ),
        Table(
            columns=(
                Column(heading="Change", share_ratio=1.3),
                Column(heading="What it breaks", share_ratio=1.3),
                Column(heading="Rules"),
                Column(heading="Bought, m", kind=ColumnKind.FIGURES),
                Column(heading="Lengths", kind=ColumnKind.FIGURES),
            ),
            rows=tuple(
                (
                    sentence_in_unit(each.change, unit),
                    sentence_in_unit(each.breaks, unit),
                    "● kept" if each.keeps_rules else "▲ BROKEN",
                    f"{each.bought_mm / 1000:.1f}",
                    str(each.lengths_count),
                )
                for each in battens.relaxed
            ),
        ),
    ]


def counter_batten_block(battens: SlopeBattens, unit: LengthUnit) -> list[Block]:
    """Counter-battens, where there are such."""
    counter = battens.counter_battens
    if counter is None:
        return []
    return [
        Prose(
            text=f"Counter-battens, one up each rafter: {counter.length_mm / 1000:.1f} m in all, {counter.fixings_count} "
            f"fixings at {write_length(counter.centres_mm, unit)} centres. Source: {counter.citation}."
        )
    ]


def nail_table(battens: Battens) -> Table:
    """The nails of the whole job. Sizes are named in millimetres, as they are sold."""
    return Table(
        columns=(
            Column(heading="Nails for"),
            Column(heading="length × shank, mm", kind=ColumnKind.FIGURES),
            Column(heading="number", kind=ColumnKind.FIGURES),
            Column(heading="mass, kg", kind=ColumnKind.FIGURES),
            Column(heading="Source (how sure)", share_ratio=1.0),
        ),
        rows=tuple(
            (
                nail.what,
                f"{nail.length_mm:g} × {nail.shank_mm:g}",
                str(nail.count),
                f"{nail.mass_kg:.1f}",
                (
                    f"Galvanised or sherardised; mass of the shanks, heads not counted.\nSource: {nail.length_citation}; mass: "
                    f"{nail.mass_citation}"
                ),
            )
            for nail in battens.nails
        ),
    )


def rafter_table(battens: SlopeBattens, unit: LengthUnit) -> Table:
    """Where each rafter stands along the eaves."""
    return Table(
        columns=(
            Column(heading="rafter", kind=ColumnKind.MARK),
            Column(heading=f"middle from the left end, {unit_heading(unit)}", kind=ColumnKind.FIGURES),
        ),
        rows=tuple((str(number), bare_length(at_mm, unit)) for number, at_mm in enumerate(battens.rafters_mm, start=1)),
        beside_count=4,
        set_count=5,
    )
