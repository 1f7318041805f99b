"""The lists of the whole job: every piece once, every finding on some sheet, masses and openings told."""

import pytest

from gaugerod.job.result import Result
from gaugerod.sheets.beneath_sheet import beneath_sheet, found_here
from gaugerod.sheets.cutting_list_sheet import buy_table, cutting_list_sheet, sawing_table
from gaugerod.sheets.joint_sheet import found_of
from gaugerod.sheets.roll_sheet import roll_sheet
from gaugerod.sheets.sheet import PaperSize, Table
from tests.scenario.beneath_results import NAMES, beneath_result

EVERY = pytest.mark.parametrize("name", NAMES)


def rows_of(blocks: tuple[object, ...], heading: str) -> tuple[tuple[str, ...], ...]:
    (table,) = [block for block in blocks if isinstance(block, Table) and block.columns[0].heading == heading]
    return table.rows


@EVERY
def test_every_length_bought_is_sawn_and_every_piece_has_its_place(name: str) -> None:
    result = beneath_result(name)
    battens = result.beneath.battens
    assert battens is not None
    unit = result.job.show_lengths_in
    bought = sum(int(row[1]) for row in buy_table(battens, unit).rows)
    rows = sawing_table(battens, unit).rows
    assert battens.cutting.lengths_count == bought == sum(int(row[0]) for row in rows)
    pieces = sum(len(each.pieces_mm) for slope in battens.slopes for line in slope.lines for each in line.stretches)
    assert pieces == sum(int(row[0]) * len(row[2].split(" + ")) for row in rows)
    assert all(row[3] for row in rows)


def test_places_of_battens_that_differ_are_told_one_by_one() -> None:
    result = beneath_result("hipped-house")
    battens = result.beneath.battens
    assert battens is not None
    told = [
        f"{where}: {place}"
        for row in sawing_table(battens, result.job.show_lengths_in).rows
        for part in row[3].split("; ")
        for where, _, places in (part.partition(": "),)
        for place in places.split(", ")
    ]
    wanted = [
        f"{slope.where}: {line.name}/{piece}"
        for slope in battens.slopes
        for line in slope.lines
        for piece in range(1, sum(len(each.pieces_mm) for each in line.stretches) + 1)
    ]
    assert sorted(wanted) == sorted(told)


@EVERY
def test_every_piece_of_every_roll_is_told_in_the_order_it_is_cut(name: str) -> None:
    result = beneath_result(name)
    rolls = result.beneath.rolls
    assert rolls is not None
    rows = rows_of(roll_sheet(result, rolls, size=PaperSize.A4).blocks, "roll")
    assert [piece.name for roll in rolls.rolls for piece in roll.pieces] == [row[1] for row in rows]
    assert [str(roll.number) for roll in rolls.rolls] == [row[0] for row in rows if row[0]]


def findings_on_sheets(result: Result) -> set[object]:
    under = result.beneath
    on_plans = {finding for part in (under.underlay, under.fixings) for plan in part for finding in plan.findings}
    if under.battens is not None:
        for slope in under.battens.slopes:
            on_plans |= set(found_of(under.battens.findings, slope.where))
    return on_plans | set(found_here(under))


@EVERY
def test_no_finding_is_left_off_every_sheet(name: str) -> None:
    result = beneath_result(name)
    assert set() == set(result.beneath.findings) - findings_on_sheets(result)


@EVERY
def test_openings_and_masses_of_every_slope_are_told(name: str) -> None:
    result = beneath_result(name)
    blocks = beneath_sheet(result, size=PaperSize.A3).blocks
    tables = [block for block in blocks if isinstance(block, Table) and block.columns[0].heading == "Slope"]
    air, mass = tables
    openings = sum(len(each.low) + len(each.high) + len(each.instead) for each in result.beneath.air)
    assert openings <= len(air.rows)
    assert {load.where for load in result.beneath.loads} == {row[0] for row in mass.rows}
    assert len(result.beneath.loads) == sum(row[1].startswith("TOGETHER") for row in mass.rows)


def test_a_job_that_asks_for_one_part_has_no_tables_of_the_others() -> None:
    result = beneath_result("demo")
    battens = result.beneath.battens
    assert battens is not None
    sheet = cutting_list_sheet(result, battens, size=PaperSize.LETTER)
    assert "Underlay" not in {block.columns[0].heading for block in sheet.blocks if isinstance(block, Table)}
