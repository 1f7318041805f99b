"""Findings that read the same are told once, with every place; those whose figures differ are all told."""

from dataclasses import replace

from gaugerod.basis.citation import house
from gaugerod.basis.finding import Finding, Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.finding_table import finding_alarm, finding_table, verdicts_counted
from gaugerod.sheets.told_once import told_once

EAVES = Finding(
    rule="verge overhang",
    where="rear, left, eaves",
    proposed=45.02,
    limit=38.0,
    unit="mm",
    sense=Sense.AT_LEAST,
    citation=house("example"),
    says="At least 38 mm.",
)
TOP = replace(EAVES, where="rear, left, top", proposed=45.04)


def test_the_same_at_eaves_and_top_is_one_row_with_both_places() -> None:
    (row,) = finding_table([EAVES, TOP], name="rear", unit=LengthUnit.MM).rows
    assert row[1].startswith("Verge overhang (left, eaves; left, top). At least 38 mm.")


def test_figures_that_read_otherwise_keep_their_own_rows() -> None:
    other = replace(TOP, proposed=44.0)
    assert 2 == len(told_once([EAVES, other], name="rear", unit=LengthUnit.MM))
    assert 2 == len(told_once([EAVES, replace(TOP, limit=39.0)], name="rear", unit=LengthUnit.MM))


def test_a_verdict_is_never_lost_among_the_same_figures() -> None:
    # Both read 38 mm to a tenth, but one is short of the limit.
    within, outside = replace(EAVES, proposed=38.0), replace(TOP, proposed=37.99)
    told = told_once([within, outside], name="rear", unit=LengthUnit.MM)
    assert 2 == len(told)
    alarm = finding_alarm([within, outside], name="rear", unit=LengthUnit.MM)
    assert alarm is not None
    assert ("Verge overhang (left, top). At least 38 mm.",) == alarm.lines


def test_the_count_above_the_table_is_that_of_its_rows() -> None:
    findings = [EAVES, TOP, replace(EAVES, where="rear", limit=None)]
    assert 2 == len(finding_table(findings, name="rear", unit=LengthUnit.MM).rows)
    said = verdicts_counted(findings, name="rear", unit=LengthUnit.MM).text
    assert said.startswith("0 outside, 1 not covered by any rule here, 1 within.")
