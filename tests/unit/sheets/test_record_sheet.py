"""The hand-over record: every finding of the job told once, every deviation, every slope with its drawings, and who signs."""

import re
from dataclasses import replace

import pytest

from gaugerod.basis.finding import Finding, Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.job.record_wished import Deviation, RecordWished
from gaugerod.job.result import NotSetOut, Result
from gaugerod.setting_out.stations import NailedRod
from gaugerod.sheets.acceptance import NOT_YET
from gaugerod.sheets.findings_by_part import parted
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.record_care import STANDS_FOR
from gaugerod.sheets.record_sheet import BLANK, record_sheet
from gaugerod.sheets.sheet import Alarm, Block, Bullets, Heading, PaperSize, Pictures, Prose, Table
from tests.scenario.beneath_results import beneath_result
from tests.scenario.taken_off import example, recorded, short, taken_off

RULES = "Rule, what it means here, and its source (how sure)"
EXAMPLES = ("demo", "hipped-house", "plain-tiles", "slates", "random-slates", "feet-and-inches", "narrow-gauge")


def blocks(result: Result) -> tuple[Block, ...]:
    return record_sheet(result, size=PaperSize.A4).blocks


def rows(found: tuple[Block, ...], first_heading: str) -> list[tuple[str, ...]]:
    return [
        row
        for block in found
        if isinstance(block, Table) and block.columns[0].heading == first_heading
        for row in block.rows
    ]


def words(found: tuple[Block, ...]) -> str:
    return "\n".join(
        text
        for block in found
        for text in (
            block.lines
            if isinstance(block, Bullets | Alarm)
            else (block.text,)
            if isinstance(block, Prose | Heading)
            else [cell for row in block.rows for cell in row]
            if isinstance(block, Table)
            else ()
        )
    )


def told_of(found: tuple[Block, ...], finding: Finding) -> list[tuple[str, ...]]:
    """The rows of the record that tell this finding: its rule, with its place among the places, and its source."""
    rule = re.escape(f"{finding.rule[:1].upper()}{finding.rule[1:]}")
    told = []
    for row in rows(found, RULES):
        said = re.match(rf"{rule} \((.*?)\)\. ", row[0], re.DOTALL)
        if said and finding.where in said[1].split("; ") and f"\nSource: {finding.citation}" in row[0]:
            told.append(row)
    return told


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_finding_is_told_at_its_place(name: str) -> None:
    result = recorded(name)
    found = blocks(result)
    for finding in result.findings:
        assert told_of(found, finding), (finding.rule, finding.where)


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_finding_is_told_twice(name: str) -> None:
    result = recorded(name)
    places = [
        place
        for row in rows(blocks(result), RULES)
        for place in row[0].partition(" (")[2].partition("). ")[0].split("; ")
    ]
    read = {
        (finding.rule, finding.where, finding.says, str(finding.citation), finding.sense) for finding in result.findings
    }
    assert len(read) == len(places)


@pytest.mark.parametrize("name", EXAMPLES)
def test_an_unaccepted_finding_keeps_its_sentence_word_for_word(name: str) -> None:
    result = recorded(name)
    found = words(blocks(result))
    for finding in result.findings:
        if finding.verdict is not Verdict.WITHIN:
            assert finding.says in found


def test_findings_are_sorted_into_the_parts_of_the_job_and_none_is_lost() -> None:
    result = recorded("demo")
    parts = parted(result)
    assert sorted(map(repr, result.findings)) == sorted(repr(finding) for _, found in parts for finding in found)
    names = ["Setting out", "Battens", "Underlay", "Nails and clips", "Mass on the slope", "Edges", "Order"]
    assert names == [name for name, _ in parts]


def test_what_is_outside_is_the_first_thing_said_with_who_accepted_it() -> None:
    alarm = next(block for block in blocks(recorded()) if isinstance(block, Alarm))
    assert "▲ 2 things OUTSIDE a rule; 1 of them not accepted" == alarm.title
    assert (
        "Verge overhang (rear, left, upper eaves): 36 mm, limit ≥ 38 mm; accepted by the owner, the last Friday of May",
        f"Ridge fixing (rear): 36 mm, limit ≥ 38 mm; {NOT_YET}",
    ) == alarm.lines


def test_outside_stands_beside_its_limit_and_its_acceptance_in_the_table() -> None:
    outside = [row for row in rows(blocks(recorded()), RULES) if row[0].startswith("Verge overhang (rear, left, upper")]
    assert [("36 mm", "≥ 38 mm", "accepted by the owner, the last Friday of May")] == [row[1:] for row in outside]


def test_nothing_outside_raises_no_alarm() -> None:
    assert not [block for block in blocks(taken_off()) if isinstance(block, Alarm)]


def test_every_deviation_is_shown_with_what_it_is_of() -> None:
    result = recorded()
    stray = Deviation(what="Left open.", accepted_by="", rule="headlap", where="nowhere")
    known = Deviation(what="Perps lean.", accepted_by="the owner", rule="perps square to the eaves")
    record = replace(result.job.record, deviations=(*result.job.record.deviations, stray, known))
    found = rows(blocks(replace(result, job=replace(result.job, record=record))), "What")
    shown = {row[0].partition("\n")[0]: (row[0].partition("\n")[2], row[1]) for row in found if "\n" in row[0]}
    assert ("Of no one rule.", "accepted by the owner") == shown["Old gutter kept."]
    assert "▲ OUTSIDE" in shown["The verge stands 2 mm short at its top, where the wall leans."][0]
    assert "No finding of this job has that rule at that place." in shown["Left open."][0]
    assert NOT_YET == shown["Left open."][1]
    assert "◇ not covered" in shown["Perps lean."][0]


def test_who_where_and_lines_to_sign() -> None:
    found = blocks(recorded())
    shown = {row[0]: row[1] for row in rows(found, "")}
    assert "The yard, behind the old bakehouse" == shown["Site"]
    assert ("the owner", "the night shift", BLANK) == (shown["Handed to"], shown["Laid by"], shown["Measured by"])
    assert ["whoever measured", "whoever laid it", "whoever takes it over"] == [row[0] for row in rows(found, "For")]


def test_an_empty_record_is_lines_to_fill_in() -> None:
    result = replace(taken_off(), job=replace(taken_off().job, record=RecordWished()))
    shown = {row[0]: row[1] for row in rows(blocks(result), "")}
    assert {BLANK} == {shown[name] for name in ("Site", "Handed to", "Laid by", "Measured by")}
    assert "No deviation is written down for this job." in words(blocks(result))


def test_figures_measured_on_the_tiles_are_told_from_those_of_the_record() -> None:
    result = taken_off()
    assert isinstance(result.job.covering, SingleLapTile)
    covering = replace(result.job.covering, measured=frozenset({"hanging_length_mm", "cover_open_mm"}))
    shown = rows(blocks(replace(result, job=replace(result.job, covering=covering))), "Figure")
    assert ["hanging length, nibs to tail", "cover pulled fully open"] == [
        row[0] for row in shown if row[2] == "● measured"
    ]
    assert ("length, head to tail", "420 mm", "by its record") in shown


def test_a_figure_of_the_covering_that_is_not_known_is_said_so() -> None:
    result = taken_off()
    assert isinstance(result.job.covering, SingleLapTile)
    covering = replace(result.job.covering, hanging_length_mm=None, mass_kg=None)
    shown = rows(blocks(replace(result, job=replace(result.job, covering=covering))), "Figure")
    assert ["hanging length, nibs to tail", "mass of one"] == [row[0] for row in shown if row[1] == "not known"]


def test_what_the_tape_said_stands_in_the_record() -> None:
    shown = rows(blocks(taken_off()), "Slope")
    for what, measured in (
        ("along the eaves", "7460 mm"),
        ("rafter at 7460 mm from the left, fascia face to apex", "4918 mm"),
        ("along the ridge", "7462 mm"),
        ("diagonal from the left end of the eaves", "8935 mm"),
        ("rafters, middle to middle", "400 mm"),
    ):
        assert (what, measured) in [row[1:] for row in shown]
    assert ("rear", "pitch", "35°") in shown
    assert ("rear", "rooflight, kit", "2400", "1600", "780", "1180") in shown
    plain = rows(blocks(taken_off("plain-tiles")), "Slope")
    assert "not measured" in [row[2] for row in plain if row[1:2] == ("along the ridge",)]


def test_battens_that_were_already_nailed_are_told_mark_by_mark() -> None:
    result = taken_off()
    nailed = (NailedRod(at_mm=0.0, marks_mm=(348.0, 670.0)),)
    slope = replace(result.slopes[0], slope=replace(result.slopes[0].slope, nailed=nailed))
    shown = rows(blocks(replace(result, slopes=(slope,))), "Slope")
    assert ("rear", "0 mm", "348, 670") in shown


def test_a_building_is_told_wall_by_wall_and_its_slopes_are_not_said_to_be_taped() -> None:
    found = blocks(taken_off("hipped-house"))
    walls = rows(found, "Wall")
    assert 6 == len(walls)
    assert ("1", "0, 0", "12400, 0", "slope of 35°; 300 mm overhang, level") == walls[0]
    assert "gable; 50 mm overhang at the verge, level" == walls[4][3]
    assert not [row for row in rows(found, "Slope") if row[1] == "along the eaves"]
    assert 1 == sum("On plan" in caption for _, caption in captions(found))


def captions(found: tuple[Block, ...]) -> list[tuple[Placed, str]]:
    return [picture for block in found if isinstance(block, Pictures) for picture in block.pictures]


@pytest.mark.parametrize("name", ["demo", "hipped-house"])
def test_each_slope_has_its_drawings(name: str) -> None:
    result = taken_off(name)
    said = [caption for _, caption in captions(blocks(result))]
    count = len(result.slopes)
    assert count == sum(caption.startswith("Square on") for caption in said)
    assert count == sum("Shaded: the perimeter" in caption for caption in said)
    assert count == sum("by their numbers" in caption for caption in said)
    assert 2 * count == sum(caption.startswith(("Eaves of", "Top of")) for caption in said)


def test_the_least_lap_shown_of_every_rod_is_rounded_down() -> None:
    result = taken_off()
    table = next(
        block for block in blocks(result) if isinstance(block, Table) and block.columns[0].heading.startswith("Rod at")
    )
    slope = result.slopes[0]
    assert [f"{rod.marks_mm[0]:.0f}" for rod in slope.courses.rods] == [row[3] for row in table.rows]
    assert {f"{slope.courses.headlap_mm:.0f} mm"} == {row[6] for row in table.rows}


def test_what_lies_beneath_is_told_once_of_slopes_that_are_alike() -> None:
    shown = rows(blocks(taken_off("hipped-house")), "Slopes")
    field = [row for row in shown if row[1] == "fixings, field"]
    assert ["house 1, house 2, house 3, house 4, house 5"] == [row[0] for row in field]
    assert all("Source: " in row[2] for row in field)


def test_what_was_not_worked_out_is_said() -> None:
    found = words(blocks(replace(example("narrow-gauge"), edges=None)))
    assert "Not worked out for this job, and nothing is recorded of it: battens, underlay, fixings" in found
    assert "No edge was worked out" in found


def test_lengths_are_in_the_unit_of_the_job() -> None:
    result = taken_off("feet-and-inches")
    assert LengthUnit.FT_IN is result.job.show_lengths_in
    found = blocks(result)
    assert ("south", "pitch", "33.69°") in rows(found, "Slope")
    assert ("", "along the eaves", "26' 9 1/2\"") in rows(found, "Slope")
    headings = [column.heading for block in found if isinstance(block, Table) for column in block.columns]
    assert not [heading for heading in headings if heading.endswith(", mm")]


def test_a_slope_that_was_not_set_out_is_an_alarm_and_its_findings_are_told() -> None:
    result = beneath_result("demo")
    short_slope = NotSetOut(
        slope=result.slopes[0].slope, why="No gauge fits.", findings=(short("gauge", "rear"),), alternatives=()
    )
    missing = replace(result, slopes=(), not_set_out=(short_slope,), findings=(*result.findings, *short_slope.findings))
    found = blocks(missing)
    assert any(isinstance(block, Alarm) and "is NOT SET OUT" in block.title for block in found)
    assert told_of(found, short("gauge", "rear"))


def test_care_cautions_and_what_the_record_does_not_stand_in_for() -> None:
    result = taken_off()
    found = words(blocks(result))
    assert 2 == found.count(STANDS_FOR)
    for caution in result.cautions:
        assert caution in found
    for word in ("Who may walk on it", "Fragile", "openings for air", "Lead run-off"):
        assert word in found


@pytest.mark.parametrize("size", list(PaperSize))
def test_every_drawing_fits_its_paper(size: PaperSize) -> None:
    for placed, caption in captions(record_sheet(taken_off("hipped-house"), size=size).blocks):
        paper = placed.paper
        assert paper.width_mm <= size.text_width_mm + 0.01, caption
        assert paper.height_mm <= size.text_height_mm, caption
