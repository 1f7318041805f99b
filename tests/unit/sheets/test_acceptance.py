"""What was accepted is matched to the finding it is of, by rule and place; nothing else is taken for accepted."""

from dataclasses import replace

import pytest

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.record_wished import Deviation
from gaugerod.sheets.acceptance import NOT_YET, accepted_said, answered, answers
from tests.scenario.taken_off import short

KEPT = Deviation(what="Kept as it is.", accepted_by="the owner", rule="verge overhang", where="rear, left")


@pytest.mark.parametrize(
    ("rule", "where", "expected"),
    [
        ("verge overhang", "rear, left", True),
        ("Verge  Overhang ", "Rear, left", True),
        ("verge overhang", "", True),
        ("verge overhang", "rear, right", False),
        ("verge overhang", "rear", False),
        ("verge", "rear, left", False),
        ("", "rear, left", False),
        ("", "", False),
    ],
)
def test_a_deviation_is_of_a_finding_of_its_rule_and_place(rule: str, where: str, *, expected: bool) -> None:
    deviation = replace(KEPT, rule=rule, where=where)
    assert expected is answers(deviation, short("verge overhang", "rear, left"))


def test_the_same_fault_at_two_places_is_told_apart_where_one_is_accepted() -> None:
    findings = (short("verge overhang", "rear, left"), short("verge overhang", "rear, right"))
    found = answered(findings, (KEPT,), unit=LengthUnit.MM)
    assert [(("rear, left",), "accepted by the owner"), (("rear, right",), NOT_YET)] == [
        (each.told.places, each.said) for each in found
    ]


def test_the_same_fault_at_two_places_is_told_once_where_none_is_accepted() -> None:
    findings = (short("verge overhang", "rear, left"), short("verge overhang", "rear, right"))
    found = answered(findings, (), unit=LengthUnit.MM)
    assert [("rear, left", "rear, right")] == [each.told.places for each in found]


def test_nobody_has_accepted_what_has_no_name_to_it() -> None:
    assert NOT_YET == accepted_said(replace(KEPT, accepted_by="  ", on="1 May"))
    assert "accepted by the owner, 1 May" == accepted_said(replace(KEPT, on=" 1 May "))
