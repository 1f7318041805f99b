"""The edges in the hand-over record: units, parts and lead with its code; an edge nobody spoke of says so."""

from dataclasses import replace

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import Result
from gaugerod.sheets.findings_by_part import parted_edges
from gaugerod.sheets.record_edges import NOT_SAID, edge_blocks
from gaugerod.sheets.record_sheet import record_sheet
from gaugerod.sheets.sheet import Alarm, PaperSize, Prose, Table
from tests.scenario.edged import edged
from tests.scenario.taken_off import taken_off


def rows(result: Result, first_heading: str) -> list[tuple[str, ...]]:
    return [
        row
        for block in edge_blocks(result)
        if isinstance(block, Table) and block.columns[0].heading.startswith(first_heading)
        for row in block.rows
    ]


def test_every_edge_has_its_length_and_how_it_is_made() -> None:
    shown = {row[0]: row[1:] for row in rows(edged(), "Edge")}
    assert ["rear, ridge", "rear, right abutment", "stack", "rear, left verge"] == list(shown)
    assert (
        (
            "Dry, two screws to each unit\n17 units of 440 mm cover, 15 laid whole, 2 cut 300 mm and 310 mm long\n"
            "roll that seals a dry ridge: 7.5 m. Source: example (house)"
        ),
        "7498 mm",
    ) == shown["rear, ridge"]
    assert ("Chimney", "780 mm\n× 1180 mm") == shown["stack"]
    assert NOT_SAID == shown["rear, left verge"][0]


def test_lead_has_its_code_pieces_sizes_lap_mass_and_source() -> None:
    assert [
        (
            "rear, right abutment: step and cover flashing\nSource: example of a code (house)",
            "4, 1.8 mm",
            "4",
            "1500 mm\n× 330 mm",
            "100 mm",
            "40 kg",
        )
    ] == rows(edged(), "Where, what for")


def test_lengths_of_edges_are_in_the_unit_of_the_job() -> None:
    result = edged()
    feet = replace(result, job=replace(result.job, show_lengths_in=LengthUnit.FT_IN))
    assert "24' 7 3/16\"" == rows(feet, "Edge")[0][2]
    assert "roll that seals a dry ridge: 24' 7 1/4\" (7.5 m)" in rows(feet, "Edge")[0][1]


def test_what_is_outside_at_an_edge_is_in_the_alarm_and_under_edges() -> None:
    result = edged()
    alarm = next(block for block in record_sheet(result, size=PaperSize.A4).blocks if isinstance(block, Alarm))
    assert alarm.lines[0].startswith("Side cover (rear, right abutment): 36 mm, limit ≥ 38 mm; accepted by: ___")
    assert ["side cover"] == [finding.rule for finding in dict(parted_edges(result))["Edges"]]


def test_no_edges_is_said() -> None:
    said = [block.text for block in edge_blocks(replace(taken_off(), edges=None)) if isinstance(block, Prose)]
    assert ["No edge was worked out: nothing is recorded of ridge, hips, verges, valleys or walls."] == said
