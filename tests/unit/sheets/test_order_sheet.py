"""The order on paper: every line with what is added, what is left out first, and nothing ordered short of what is shown."""

from dataclasses import replace

import pytest

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import NotSetOut, Result
from gaugerod.sheets.order_cautions import ORDER_CAUTIONS
from gaugerod.sheets.order_left_out import EDGES_LEFT_OUT, left_out
from gaugerod.sheets.order_sheet import order_sheet
from gaugerod.sheets.quantity_said import masses_between, quantity_said
from gaugerod.sheets.sheet import Alarm, Block, Bullets, Figures, Heading, PaperSize, Prose, Table
from gaugerod.take_off.answer import Masses, Trade
from tests.scenario.taken_off import example, short, taken_off


def blocks(result: Result) -> tuple[Block, ...]:
    return order_sheet(result, size=PaperSize.A4).blocks


def tables(result: Result, first_heading: str) -> list[Table]:
    return [
        block
        for block in blocks(result)
        if isinstance(block, Table) and block.columns[0].heading.startswith(first_heading)
    ]


def in_feet(result: Result) -> Result:
    return replace(result, job=replace(result.job, show_lengths_in=LengthUnit.FT_IN))


def test_every_line_of_the_order_is_shown_once_under_its_trade() -> None:
    result = taken_off()
    assert result.take_off is not None
    shown = [row[0].partition("\n")[0] for table in tables(result, "What, how") for row in table.rows]
    assert [line.measured.what.casefold() for line in result.take_off.lines] == [what.casefold() for what in shown]
    headings = [block.text for block in blocks(result) if isinstance(block, Heading)]
    assert ["Covering", "Battens", "Edges", "Lead"] == [text for text in headings if text.casefold() in list(Trade)]


def test_a_line_shows_what_was_measured_what_is_added_the_order_packs_and_mass() -> None:
    result = taken_off()
    assert result.take_off is not None
    line = result.take_off.lines[0]
    row = tables(result, "What, how")[0].rows[0]
    assert (
        f"{line.measured.what}\nWhole units, and one for each piece to saw.\n+ {line.allowances[0].amount:.0f} breakage",
        "363",
        "371",
        "13 packs of 30\non 2 pallets\n19 over",
        "1818 kg",
        "☐",
    ) == row


def test_metres_are_ordered_up_to_the_next_tenth_and_an_unknown_mass_is_said() -> None:
    row = tables(taken_off(), "What, how")[1].rows[0]
    assert ("93.2 m", "98.0 m", "–", "not known") == row[1:5]


def test_metres_are_in_feet_and_inches_as_well_where_the_job_is() -> None:
    row = tables(in_feet(taken_off()), "What, how")[1].rows[0]
    assert ("305' 11 1/4\"\n(93.2 m)", "98.0 m") == row[1:3]


def test_what_is_left_out_comes_before_anything_that_is_ordered() -> None:
    result = taken_off()
    found = blocks(result)
    alarm = next(block for block in found if isinstance(block, Alarm))
    assert result.take_off is not None
    assert result.take_off.not_counted == alarm.lines
    assert found.index(alarm) < min(at for at, block in enumerate(found) if isinstance(block, Table | Figures))


def test_edges_that_were_not_worked_out_are_said_to_be_left_out() -> None:
    result = taken_off()
    assert result.take_off is not None
    bare = tuple(line for line in result.take_off.lines if line.measured.trade not in {Trade.EDGES, Trade.LEAD})
    without = replace(result, edges=None, take_off=replace(result.take_off, lines=bare, not_counted=()))
    assert [(EDGES_LEFT_OUT,)] == [block.lines for block in blocks(without) if isinstance(block, Alarm)]


def test_a_slope_that_was_not_set_out_is_left_out_by_name_once() -> None:
    result = taken_off()
    missing = NotSetOut(slope=result.slopes[0].slope, why="No gauge fits.", findings=(), alternatives=())
    assert "rear is not set out: No gauge fits." in left_out(replace(result, not_set_out=(missing,)))
    assert result.take_off is not None
    said = replace(result.take_off, not_counted=("rear: the covering of this slope.",))
    assert ("rear: the covering of this slope.",) == left_out(replace(result, take_off=said, not_set_out=(missing,)))


def test_without_a_take_off_the_sheet_says_that_nothing_is_counted() -> None:
    result = replace(example("demo"), take_off=None)
    assert any(isinstance(block, Alarm) and "Nothing to order" in block.title for block in blocks(result))
    assert not [block for block in blocks(result) if isinstance(block, Table)]


def test_what_is_outside_is_said_first_and_in_the_table_of_findings() -> None:
    result = taken_off()
    assert result.take_off is not None
    wrong = replace(result, take_off=replace(result.take_off, findings=(short("pack size", "tile"),)))
    assert any(isinstance(block, Alarm) and "1 thing OUTSIDE" in block.title for block in blocks(wrong))
    assert "▲ OUTSIDE" == tables(wrong, "Verdict")[0].rows[0][0]


def test_the_two_ways_of_counting_stand_side_by_side() -> None:
    result = taken_off()
    assert result.take_off is not None
    compared = result.take_off.compared[0]
    row = tables(result, "What, and the source of the percentage")[0].rows[0]
    assert (f"{compared.flat_count}", f"{compared.counted_count}", f"+{compared.difference_count}") == row[3:6]
    assert any(isinstance(block, Prose) and block.text.startswith(compared.says) for block in blocks(result))


def test_a_flat_percentage_that_orders_too_few_has_a_minus() -> None:
    result = taken_off()
    assert result.take_off is not None
    few = replace(result.take_off.compared[0], flat_count=360, counted_count=371)
    shown = tables(replace(result, take_off=replace(result.take_off, compared=(few,))), "What, and the source of")
    assert "−11" == shown[0].rows[0][5]


def test_the_parts_of_the_slopes_sum_to_what_was_measured() -> None:
    result = taken_off("hipped-house")
    assert result.take_off is not None
    rows = tables(result, "What, and its name")[0].rows
    counts = [int(row[2]) for row in rows[:5]]
    assert ["house 1", "house 2", "house 3", "house 4", "house 5", "together"] == [row[1] for row in rows[:6]]
    assert sum(counts) == int(rows[5][2]) == result.take_off.lines[0].measured.net


def test_every_allowance_has_its_source() -> None:
    result = taken_off()
    assert result.take_off is not None
    shown = " ".join(row[1] for row in tables(result, "For")[0].rows)
    for line in result.take_off.lines:
        for allowance in line.allowances:
            assert f"Source: {allowance.citation}" in shown


def test_masses_onto_and_off_the_roof_and_the_cautions() -> None:
    result = taken_off()
    rows = [row for table in tables(result, "What") for row in table.rows]
    assert ("New: what goes onto the roof", "1830 to 1913 kg") in rows
    assert ("Old: what comes off it", "1790 to 1960 kg") in rows
    cautions = " ".join(line for block in blocks(result) if isinstance(block, Bullets) for line in block.lines)
    assert all(caution in cautions for caution in ORDER_CAUTIONS)
    for word in ("Lifting", "Loading out", "Lead", "silica", "Asbestos", "Height", "Live cables", "licensed designer"):
        assert word in cautions
    assert result.take_off is not None
    unknown = Masses(new_least_kg=None, new_greatest_kg=None, old_least_kg=None, old_greatest_kg=None)
    bare = replace(result, take_off=replace(result.take_off, masses=unknown))
    assert ("Old: what comes off it", "not known") in [row for table in tables(bare, "What") for row in table.rows]


@pytest.mark.parametrize(
    ("quantity", "unit", "said"),
    [
        (12.0, "m", "12.0 m"),
        (12.0000000001, "m", "12.0 m"),
        (12.01, "m", "12.1 m"),
        (0.0, "litres", "0.0 litres"),
        (512.0, "pieces", "512"),
        (2.0, "rolls", "2 rolls"),
        (1.0, "rolls", "1 roll"),
        (36.64, "m2", "36.7 m²"),
    ],
)
def test_an_order_is_never_shown_less_than_it_is(quantity: float, unit: str, said: str) -> None:
    assert said == quantity_said(quantity, unit, LengthUnit.MM, up=True)


def test_masses_of_which_one_is_known_are_that_one() -> None:
    assert ("12.0 kg", "not known") == (masses_between(12.0, None), masses_between(None, None))
