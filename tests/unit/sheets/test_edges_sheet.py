from gaugerod.basis.finding import Verdict
from gaugerod.sheets.edges_sheet import edges_sheet
from gaugerod.sheets.sheet import Alarm, Bullets, Heading, PaperSize, Pictures, Sheet, Table
from tests.unit.sheets.test_edge_details import made


def tables(sheet: Sheet, first: str) -> list[Table]:
    return [block for block in sheet.blocks if isinstance(block, Table) and block.columns[0].heading == first]


def test_every_edge_and_opening_has_a_row_with_its_length_and_units() -> None:
    result = made("hipped-house", "bedded")
    assert result.edges is not None
    rows = tables(edges_sheet(result, size=PaperSize.A4), "Edge")[0].rows
    assert [edge.name for edge in result.edges.edges] == [row[0] for row in rows]
    for edge, row in zip(result.edges.edges, rows, strict=True):
        if edge.run is not None:
            assert str(edge.run.units_count) == row[3]
        if edge.clear_mm is not None:
            assert f"{edge.clear_mm:.0f} mm" == row[5]


def test_every_piece_of_lead_and_every_part_stands_on_the_sheet() -> None:
    result = made("demo", "bedded")
    assert result.edges is not None
    _, parts, lead = tables(edges_sheet(result, size=PaperSize.A4), "Edge")
    assert sum(len(edge.parts) for edge in result.edges.edges) == len(parts.rows)
    assert sum(len(edge.lead) for edge in result.edges.edges) == len(lead.rows)
    said = sum(float(row[-1]) for row in lead.rows)
    assert abs(said - result.edges.lead_kg) < 0.06 * len(lead.rows)


def test_totals_of_lead_by_code_and_width_come_to_all_of_it() -> None:
    result = made("demo", "bedded")
    assert result.edges is not None
    lines = [
        line
        for block in edges_sheet(result, size=PaperSize.A4).blocks
        if isinstance(block, Bullets)
        for line in block.lines
        if line.startswith("Code ")
    ]
    assert {(pieces.code, pieces.width_mm) for pieces in result.edges.lead} == {
        (int(line.split()[1].rstrip(",")), float(line.split()[2])) for line in lines
    }


def test_what_is_outside_stands_first() -> None:
    result = made("mono-ridge", "dry")
    assert result.edges is not None
    outside = [finding for finding in result.edges.findings if finding.verdict is Verdict.OUTSIDE]
    alarms = [block for block in edges_sheet(result, size=PaperSize.A4).blocks if isinstance(block, Alarm)]
    assert bool(outside) == bool(alarms)


def test_sections_and_cautions_are_there_on_every_paper() -> None:
    for size in PaperSize:
        sheet = edges_sheet(made("demo", "dry"), size=size)
        pictures = [placed for block in sheet.blocks if isinstance(block, Pictures) for placed, _ in block.pictures]
        assert pictures
        assert all(placed.paper.width_mm <= size.text_width_mm for placed in pictures)
        assert "Before you start" in [block.text for block in sheet.blocks if isinstance(block, Heading)]
