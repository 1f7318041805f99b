"""A sheet as plain data for the typesetter: text made printable, drawings as SVG."""

from typing import Any, assert_never

from gaugerod.adapters.pdf.printable import printable
from gaugerod.adapters.svg.writer import write_svg
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.sheet import (
    BOTTOM_MARGIN_MM,
    SIDE_MARGIN_MM,
    TOP_MARGIN_MM,
    Alarm,
    Block,
    Bullets,
    Figures,
    Heading,
    NewPage,
    Pictures,
    Prose,
    Sheet,
    Steps,
    Table,
)

Data = dict[str, Any]


def sheet_data(sheet: Sheet) -> Data:
    """The whole sheet."""
    return {
        "title": printable(sheet.title) or "Setting out",
        "subtitle": printable(sheet.subtitle),
        "foot": [printable(line) for line in sheet.foot.splitlines()],
        "region": sheet.region,
        "width_mm": sheet.size.width_mm,
        "height_mm": sheet.size.height_mm,
        "side_margin_mm": SIDE_MARGIN_MM,
        "top_margin_mm": TOP_MARGIN_MM,
        "bottom_margin_mm": BOTTOM_MARGIN_MM,
        "blocks": [_block(block) for block in sheet.blocks],
    }


def _block(block: Block) -> Data:  # noqa: PLR0911 -- one answer for each kind of block
    match block:
        case Heading():
            return {
                "block": "heading",
                "text": printable(block.text),
                "level": block.level,
                "kept_mm": block.kept_mm,
            }
        case Figures():
            return {
                "block": "figures",
                "figures": [
                    {
                        "label": printable(figure.label),
                        "values": _lines(figure.values),
                        "note": printable(figure.note),
                        "wrong": printable(figure.wrong),
                    }
                    for figure in block.figures
                ],
            }
        case Alarm():
            return {"block": "alarm", "title": printable(block.title), "lines": _lines(block.lines)}
        case Prose():
            return {"block": "prose", "text": printable(block.text)}
        case Pictures():
            return {"block": "pictures", "pictures": [_picture(*each) for each in block.pictures]}
        case Table():
            return {
                "block": "table",
                "columns": [
                    {"heading": printable(column.heading), "kind": column.kind.value, "share": column.share_ratio}
                    for column in block.columns
                ],
                "rows": [[_lines(tuple(cell.split("\n"))) for cell in row] for row in block.rows],
                "beside_count": block.beside_count,
                "set_count": block.set_count,
                "before_sets_count": block.before_sets_count,
            }
        case Steps():
            return {"block": "steps", "lines": _lines(block.lines)}
        case Bullets():
            return {"block": "bullets", "lines": _lines(block.lines)}
        case NewPage():
            return {"block": "new-page"}
        case _ as unreachable:
            assert_never(unreachable)


def _lines(lines: tuple[str, ...]) -> list[str]:
    return [printable(line) for line in lines]


def _picture(placed: Placed, caption: str) -> Data:
    return {
        "svg": printable(write_svg(placed.drawing, paper=placed.paper)),
        "says": printable(placed.drawing.says),
        "width_mm": placed.paper.width_mm,
        "height_mm": placed.paper.height_mm,
        "caption": printable(caption),
    }
