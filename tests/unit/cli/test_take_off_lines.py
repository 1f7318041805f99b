"""What the take-off, the order and the money read like in the terminal."""

from dataclasses import replace
from decimal import Decimal

import pytest

from gaugerod.basis.lengths import LengthUnit
from gaugerod.cli.edge_lines import edge_lines
from gaugerod.cli.take_off_lines import order_lines, quotation_lines, take_off_lines
from gaugerod.job.quoted import quoted
from gaugerod.job.result import Result
from gaugerod.take_off.money import Price, PriceList
from tests.scenario.taken_off import example, short


@pytest.fixture
def result() -> Result:
    return example("demo")


def test_every_line_of_the_order_is_in_both(result: Result) -> None:
    assert result.take_off is not None
    measured, to_buy = "\n".join(take_off_lines(result)), "\n".join(order_lines(result))
    for line in result.take_off.lines:
        assert f"  {line.measured.item}: " in measured
        assert line.measured.what.split(",")[0] in to_buy


def test_no_take_off_is_said_and_never_an_empty_order(result: Result) -> None:
    bare = replace(result, take_off=None)
    for lines in (take_off_lines(bare), order_lines(bare)):
        assert "NOT in this order: 1 thing" in lines
        assert "  ·  No slope was laid, so nothing is counted." in lines


def test_what_is_left_out_stands_before_what_is_to_buy(result: Result) -> None:
    assert result.take_off is not None
    left_out = replace(result, take_off=replace(result.take_off, not_counted=("The dormer is left out.",)))
    lines = order_lines(left_out)
    assert lines.index("  ·  The dormer is left out.") < lines.index("Covering")


def test_what_is_outside_anywhere_is_told_with_the_take_off(result: Result) -> None:
    assert not any("  OUT  " in line for line in take_off_lines(result))
    outside = replace(result, findings=(*result.findings, short("verge overhang", "rear, left")))
    assert any("  OUT  rear, left: verge overhang." in line for line in take_off_lines(outside))


def test_the_money_says_its_tax_or_that_none_is_counted(result: Result) -> None:
    prices = PriceList(prices=(Price(item="tile", unit="pieces", amount=Decimal(1)),), rates=())
    quotation = quoted(result, prices)
    assert quotation is not None
    lines = quotation_lines(quotation)
    assert ["  materials        £378.00", "  labour           £0.00", "  before tax       £378.00"] == lines[2:5]
    assert ["  VAT              £75.60", "  TOTAL            £453.60"] == lines[5:7]
    bare = replace(quotation, tax=None, money=replace(quotation.money, tax_name="", tax_percent=None))
    assert "  tax              no tax is counted" in quotation_lines(bare)


def test_a_total_that_leaves_nothing_out_names_nothing(result: Result) -> None:
    quotation = quoted(result, PriceList(prices=(), rates=()))
    assert quotation is not None
    assert any("NOT in the total" in line for line in quotation_lines(quotation))
    whole = replace(quotation, not_priced=(), not_used=())
    assert not any("NOT" in line or "not needed" in line for line in quotation_lines(whole))


def test_edges_alike_are_told_together() -> None:
    lines = list(edge_lines(example("hipped-house")))
    assert 1 == sum(line.startswith("  hip ") for line in lines)
    assert "  valley         5903 mm, lined with lead; 79.4 kg of lead" in lines


def test_edges_are_told_in_the_unit_of_the_job(result: Result) -> None:
    metres = replace(result, job=replace(result.job, show_lengths_in=LengthUnit.M))
    assert "  ridge          7.485 m, ridge units, dry; 18 units" in list(edge_lines(metres))


def test_no_edges_and_no_take_off_are_no_lines(result: Result) -> None:
    assert [] == list(edge_lines(replace(result, edges=None, take_off=None)))
