"""The job in money on paper: every line and total, and first of all what no total holds."""

from dataclasses import replace
from decimal import Decimal

import pytest

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.record_wished import RecordWished
from gaugerod.sheets.money_said import THIN_SPACE, money_said
from gaugerod.sheets.order_cautions import QUOTATION_CAUTIONS
from gaugerod.sheets.quotation_sheet import NOT_PRICED, TO_FILL_IN, quotation_sheet
from gaugerod.sheets.sheet import Alarm, Block, Bullets, Figures, PaperSize, Table
from gaugerod.take_off.money import Quotation
from gaugerod.take_off.wished import MoneySettings
from tests.scenario.taken_off import POUNDS, quoted


def blocks(quotation: Quotation | None = None) -> tuple[Block, ...]:
    result, made = quoted()
    return quotation_sheet(result, quotation or made, size=PaperSize.A4).blocks


def rows(found: tuple[Block, ...]) -> list[tuple[str, ...]]:
    return [row for block in found if isinstance(block, Table) for row in block.rows]


def test_what_has_no_price_is_said_before_any_figure_and_beside_its_line_and_the_total() -> None:
    _, made = quoted()
    found = blocks()
    alarm = next(block for block in found if isinstance(block, Alarm))
    assert made.not_priced == alarm.lines
    assert found.index(alarm) < next(at for at, block in enumerate(found) if isinstance(block, Figures))
    assert [NOT_PRICED, NOT_PRICED] == [row[3] for row in rows(found) if len(row) == 4 and row[3] == NOT_PRICED]
    figures = next(block for block in found if isinstance(block, Figures)).figures
    assert "2 not in it" == figures[-1].wrong
    assert any(row[0].startswith("TOTAL (some things have no price") for row in rows(found))


def test_what_the_order_did_not_count_is_in_no_total() -> None:
    result, _ = quoted()
    assert result.take_off is not None
    assert any(isinstance(block, Alarm) and result.take_off.not_counted == block.lines for block in blocks())


def test_nothing_is_said_to_be_missing_where_all_is_priced() -> None:
    _, made = quoted()
    found = blocks(replace(made, not_priced=()))
    assert not [block for block in found if isinstance(block, Alarm) and "no price" in block.title]
    assert "TOTAL" in [row[0] for row in rows(found)]


def test_every_material_and_task_is_a_line() -> None:
    _, made = quoted()
    shown = [row[0].partition("\n")[0].casefold() for row in rows(blocks())]
    for cost in made.materials:
        assert cost.line.measured.what.casefold() in shown
    for labour in made.labour:
        assert labour.task.what.casefold() in shown


def test_a_line_has_what_comes_to_the_site_its_price_and_amount() -> None:
    tile = next(row for row in rows(blocks()) if row[0].startswith("Flat interlocking"))
    assert ("390", f"£1{THIN_SPACE}340.50 for 1000", "£522.80") == tile[1:]


def test_the_totals_stand_one_under_another() -> None:
    _, made = quoted()
    shown = dict(row for row in rows(blocks()) if len(row) == 2)
    assert money_said(made.materials_total, POUNDS) == shown["Materials"]
    assert f"£1{THIN_SPACE}390.80" == shown["Labour"]
    assert money_said(made.net_total, POUNDS) == shown["Together, before tax"]
    assert made.tax is not None
    assert money_said(made.tax, POUNDS) == shown["VAT, 20 %"]


def test_no_tax_is_said_and_not_shown_as_nothing() -> None:
    _, made = quoted()
    bare = replace(made, tax=None, money=MoneySettings(currency="£"), total=made.net_total)
    assert ("Tax: none is counted", "–") in rows(blocks(bare))


def test_dates_and_conditions_are_lines_to_fill_in() -> None:
    shown = dict(row for row in rows(blocks()) if len(row) == 2)
    for name in ("For", "Of the roof at", "Date", "Holds until", "Payment", "Not included", "Signed"):
        assert shown[name].endswith(TO_FILL_IN)


def test_the_cautions_stand_on_it() -> None:
    assert any(isinstance(block, Bullets) and QUOTATION_CAUTIONS == block.lines for block in blocks())


def test_whom_it_is_for_and_the_site_are_taken_from_the_job() -> None:
    result, made = quoted()
    named = replace(result, job=replace(result.job, record=RecordWished(site="The yard", handed_to="the owner")))
    shown = dict(row for row in rows(quotation_sheet(named, made, size=PaperSize.A4).blocks) if len(row) == 2)
    assert ("the owner", "The yard") == (shown["For"], shown["Of the roof at"])


def test_metres_are_in_feet_and_inches_as_well_where_the_job_is() -> None:
    result, made = quoted()
    feet = replace(result, job=replace(result.job, show_lengths_in=LengthUnit.FT_IN))
    found = rows(quotation_sheet(feet, made, size=PaperSize.A4).blocks)
    assert "24' 7 1/4\"\n(7.5 m)" == next(row for row in found if row[0] == "Ridge")[1]


@pytest.mark.parametrize(
    ("amount", "money", "said"),
    [
        ("999.99", MoneySettings(), "999.99"),
        ("1000", MoneySettings(), "1_000.00"),
        ("1234567.8", MoneySettings(currency="£"), "£1_234_567.80"),
        ("0", MoneySettings(currency="crowns", places=0), "0_crowns"),
        ("-0.5", MoneySettings(currency="€"), "−€0.50"),
        ("0.0325", MoneySettings(currency="£"), "£0.0325"),
        ("1E+3", MoneySettings(currency="£"), "£1_000.00"),
    ],
)
def test_money_has_its_currency_its_places_and_thin_spaces(amount: str, money: MoneySettings, said: str) -> None:
    assert said == money_said(Decimal(amount), money).replace(THIN_SPACE, "_")
