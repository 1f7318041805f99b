"""The laying sheet of one slope: every unit drawn, the pieces to saw edge by edge, and what their offcuts serve."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import Laid, Result, SlopeResult
from gaugerod.job.slope_called import slope_called, slope_heading
from gaugerod.laying.cells import LINE_PLAY_CITATION, LINE_PLAY_MM
from gaugerod.sheets.cut_list import cut_table, edges_cut, offcut_sentence
from gaugerod.sheets.laying_drawing import laying_drawing
from gaugerod.sheets.setting_out_sheet import foot
from gaugerod.sheets.sheet import Block, Bullets, Column, ColumnKind, Heading, PaperSize, Pictures, Prose, Sheet, Table

_FRONT_MM = 62.0
"""Title, sentences and table of a first page."""


def laying_sheet(result: Result, slope: SlopeResult, laid: Laid, *, size: PaperSize) -> Sheet:
    """Every unit of the slope, on paper."""
    return Sheet(
        title=result.job.title,
        subtitle=f"Laying sheet of {slope_called(slope.slope.name)}: every unit, and every piece to saw.",
        size=size,
        foot=foot(result, slope),
        region=result.job.edition.value,
        blocks=tuple(_blocks(result, slope, laid, size)),
    )


def _blocks(result: Result, slope: SlopeResult, laid: Laid, size: PaperSize) -> Iterator[Block]:
    unit = result.job.show_lengths_in
    yield Heading(text=slope_heading(slope.slope.name), level=1)
    yield _counts(laid)
    placed = laying_drawing(
        slope,
        laid,
        unit=unit,
        room_width_mm=size.text_width_mm,
        room_height_mm=size.text_height_mm - _FRONT_MM,
    )
    caption = (
        f"Every unit, {placed.scale_said}. Shaded units are cut; numbers are those of the cut list, where there is room: larger "
        f"paper has more. Courses on the left."
    )
    yield Pictures(pictures=((placed, caption),))
    yield Heading(text="Pieces to saw")
    yield Prose(text=offcut_sentence(result))
    yield Bullets(
        lines=(
            "Angles are measured from the course line, counter-clockwise up to the cut, as the unit lies on the roof.",
            "The cut is marked from the tail's left corner: where it starts and where it ends, along the tail.",
            _not_sawn(unit),
            "Saw wet or with extraction, masked, on the ground or the platform, never on the slope.",
        )
    )
    for edge in edges_cut(slope):
        yield Heading(text=f"Cut to the {edge}", level=2)
        yield cut_table(result, slope, edge)
    yield from _small(laid)


def _not_sawn(unit: LengthUnit) -> str:
    play = write_length(LINE_PLAY_MM, unit)
    return f"A unit is set to the line of a side, not sawn, where the saw would take off {play} or less: {LINE_PLAY_CITATION}."


def _counts(laid: Laid) -> Table:
    laying = laid.laying
    figures = ColumnKind.FIGURES
    return Table(
        columns=(
            Column(heading="courses", kind=figures),
            Column(heading="whole units", kind=figures),
            Column(heading="half units", kind=figures),
            Column(heading="pieces to saw", kind=figures),
            Column(heading="covered, m²", kind=figures),
            Column(heading="of it whole, m²", kind=figures),
            Column(heading="of it cut, m²", kind=figures),
        ),
        rows=(
            (
                str(len(laying.courses)),
                str(laid.whole_units_count),
                str(laid.half_units_count),
                str(len(laid.pieces)),
                f"{laying.slope_area_mm2 / 1e6:.2f}",
                f"{laying.whole_area_mm2 / 1e6:.2f}",
                f"{(laying.cut_area_mm2 + laying.lapped_area_mm2) / 1e6:.2f}",
            ),
        ),
    )


def _small(laid: Laid) -> Iterator[Block]:
    laying = laid.laying
    said = []
    if laying.slivers.count:
        said.append(
            f"{laying.slivers.count} slivers under 1 mm² are not laid ({laying.slivers.area_mm2:.2f} mm² in all): the units "
            f"beside them cover them."
        )
    if laying.nicks.count:
        said.append(f"{laying.nicks.count} units would lose less than 1 mm² and are laid whole.")
    if laying.lapped:
        said.append(
            f"{len(laying.lapped)} strips no wider than a side lap are covered by the last unit of their course."
        )
    if said:
        yield Heading(text="Too small to cut", level=2)
        yield Bullets(lines=tuple(said))
