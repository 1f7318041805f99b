"""The verdict in one sentence: laps before all else, rules before tolerances."""

from dataclasses import replace

import pytest

from gaugerod.as_built.check_roof import check_roof
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.roof_check_words import advice_sentence, leak_sentences, verdict_sentence
from tests.scenario.roofs_as_built import TILE, at_gaps, battens, roof

# By hand: a tile of 400 with a least lap of 75 has a greatest gauge of 325; an overhang of 45 to 55 is right.


@pytest.mark.parametrize(
    ("gaps", "first_mm", "says"),
    [
        ((320, 320, 320), 330.0, "No lap is short and nothing is outside a rule."),
        ((320, 325, 320), 330.0, "No lap is short and nothing is outside a rule."),
        ((320, 326, 320), 330.0, "1 of 3 laps is short; course 3 over 2 leaks first, short by 1 mm."),
        ((326, 320, 405), 330.0, "2 of 3 laps are short; course 4 over 3 leaks first, open by 5 mm."),
        ((320, 320, 320), 360.0, "No lap is short; outside a rule: eaves overhang."),
        (
            (320, 326, 320),
            360.0,
            "1 of 3 laps is short; course 3 over 2 leaks first, short by 1 mm; outside a rule besides: eaves overhang.",
        ),
        (
            (285, 285, 322, 322),
            330.0,
            "No lap is short and nothing is outside a rule; 1 thing uneven by house tolerances.",
        ),
    ],
)
def test_the_verdict_is_one_sentence(gaps: tuple[float, ...], first_mm: float, says: str) -> None:
    check = check_roof(roof(battens(*at_gaps(*gaps, first_mm=first_mm))))
    assert says == verdict_sentence(check, unit=LengthUnit.MM)


def test_a_lap_that_only_the_edition_finds_short_is_never_said_to_be_in_order() -> None:
    # A record that states 60 where the edition asks 75 (NHBC Standards 7.2.19): 400 - 330 = 70 keeps the one only.
    tile = replace(TILE, headlap_min_mm=60.0)
    check = check_roof(roof(battens(*at_gaps(320, 330, 320)), covering=tile))
    assert () == check.leaks
    said = verdict_sentence(check, unit=LengthUnit.MM)
    assert "No lap is under the 60 mm of this unit, but 1 of 3 laps is under the edition's 75 mm." == said
    assert () == check.outside


def test_every_short_lap_is_said_in_the_order_it_leaks() -> None:
    check = check_roof(roof(battens(*at_gaps(340, 320, 405, 320))))
    first, second = leak_sentences(check, unit=LengthUnit.MM)
    assert first.startswith("Course 4 over 3: open by 5 mm, 0 mm from the left; ")
    assert second.startswith("Course 2 over 1: short by 15 mm, 0 mm from the left; 20% of its lap is missing; ")


def test_advice_names_its_place_and_says_that_it_is_no_standard() -> None:
    check = check_roof(roof(battens(*at_gaps(285, 285, 322, 322))))
    said = [advice_sentence(finding, name="rear") for finding in check.advice]
    assert said
    assert all("A house tolerance, not a standard" in line and "rear" not in line for line in said)
