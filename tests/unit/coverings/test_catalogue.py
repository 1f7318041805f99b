"""The catalogue: sound records, names that help, and overrides that are checked as a whole."""

from math import inf, nan
from pathlib import Path

import pytest

import gaugerod.coverings
from gaugerod.basis.citation import Basis
from gaugerod.basis.errors import InputRefused, TableDamaged
from gaugerod.coverings.catalogue import catalogue, covering, override, read_record
from gaugerod.coverings.single_lap import Bond, Form, SingleLapTile

FLAT = "flat-interlocking-420x330"
SINGLE_LAP = catalogue()
SOUND = """
family = "single-lap"
title = "A tile"
form = "flat"
material = "clay"
length_mm = 300
width_mm = 230
headlap_min_mm = 75
"""


def faults_of(changes: dict[str, object]) -> dict[str, str]:
    """Field and remedy of every fault of these changes to the flat tile."""
    with pytest.raises(InputRefused) as refused:
        override(flat(), changes)  # type: ignore[arg-type] # wrong kinds on purpose
    return {fault.field: fault.do for fault in refused.value.faults}


def flat() -> SingleLapTile:
    return covering(FLAT)


def test_the_catalogue_holds_the_kinds_a_first_job_needs() -> None:
    assert {Form.FLAT, Form.PROFILED, Form.PANTILE} == {record.form for record in SINGLE_LAP}
    ranges_mm = [record.gauge_max_mm - (record.gauge_min_mm or 0.0) for record in SINGLE_LAP]
    assert min(ranges_mm) <= 10.0
    assert max(ranges_mm) >= 50.0


@pytest.mark.parametrize("record", SINGLE_LAP, ids=lambda record: record.name)
def test_a_generic_record_is_whole_and_says_it_is_no_makers(record: SingleLapTile) -> None:
    assert Basis.HOUSE is record.citation.basis
    assert "not a maker's" in record.citation.source
    assert None not in (record.hanging_length_mm, record.cover_closed_mm, record.cover_open_mm, record.headlap_max_mm)
    assert None not in (record.pitch_min_deg, record.mass_kg)
    assert (record.form is Form.FLAT) == (not record.high_points_mm)


def test_a_name_not_in_the_catalogue_is_answered_with_the_nearest_and_all_names() -> None:
    with pytest.raises(InputRefused) as refused:
        covering("flat-interlock-420x330")
    (fault,) = refused.value.faults
    assert f"Did you mean {FLAT}?" == fault.do
    assert ", ".join(record.name for record in catalogue()) == fault.allowed


def test_an_override_changes_the_field_and_says_so_in_the_source() -> None:
    changed = override(flat(), {"headlap_min_mm": 100.0, "half_unit": False, "bonds": ["straight"]})
    assert (320.0, False, (Bond.STRAIGHT,)) == (changed.gauge_max_mm, changed.half_unit, changed.bonds)
    assert changed.citation.source.endswith("; given in the job: headlap_min, half_unit, bonds")
    assert Basis.HOUSE is changed.citation.basis


def test_nothing_overridden_is_the_same_record() -> None:
    assert flat() is override(flat(), {})


def test_a_field_can_be_made_unknown_again() -> None:
    assert override(flat(), {"headlap_max_mm": None}).gauge_min_mm is None


def test_an_unknown_field_is_named_with_the_nearest_known_one() -> None:
    assert {"covering.headlap_minimum_mm": "Did you mean headlap_min_mm?"} == faults_of({"headlap_minimum_mm": 75.0})


def test_all_faults_are_told_together() -> None:
    faults = faults_of(
        {"lenght_mm": 400.0, "width_mm": -1.0, "form": "round", "bonds": ["english"], "half_unit": "yes"}
    )
    assert {
        "covering.lenght_mm",
        "covering.width",
        "covering.form",
        "covering.bonds",
        "covering.half_unit",
    } == faults.keys()


@pytest.mark.parametrize("length_mm", [nan, inf, -420.0, 0.0, "long", True, None])
def test_a_length_that_is_no_length_is_refused(length_mm: object) -> None:
    assert {"covering.length"} == faults_of({"length_mm": length_mm}).keys()


@pytest.mark.parametrize(
    ("changes", "field", "misfit"),
    [
        ({"hanging_length_mm": 421.0}, "covering.hanging_length", "1 mm too much"),
        ({"cover_closed_mm": 302.5, "cover_open_mm": 300.0}, "covering.cover_closed", "2.5 mm too much"),
        ({"cover_open_mm": 335.0}, "covering.cover_open", "5 mm too much"),
        ({"headlap_max_mm": 70.0}, "covering.headlap_min", "5 mm too much"),
        ({"headlap_min_mm": 420.0, "headlap_max_mm": None}, "covering.headlap_min", "No gauge is left"),
        ({"pitch_min_deg": 90.0}, "covering.pitch_min", "Check the pitch"),
        ({"high_points_mm": [10.0, 331.0]}, "covering.high_points", "Measure from the left"),
        ({"high_points_mm": [200.0, 100.0]}, "covering.high_points", "Put them in order"),
        ({"high_points_mm": [nan]}, "covering.high_points", "Write them between"),
    ],
)
def test_figures_that_contradict_each_other_are_refused_with_the_misfit(
    changes: dict[str, object], field: str, misfit: str
) -> None:
    faults = faults_of(changes)
    assert field in faults
    assert misfit in faults[field]


@pytest.mark.parametrize(
    "changes",
    [
        {"hanging_length_mm": 420.0},
        {"cover_closed_mm": 300.0, "cover_open_mm": 300.0},
        {"cover_open_mm": 330.0},
        {"headlap_max_mm": 75.0},
        {"high_points_mm": [0.0, 330.0]},
    ],
)
def test_figures_that_just_agree_are_taken(changes: dict[str, object]) -> None:
    changed = override(flat(), changes)  # type: ignore[arg-type]
    assert {field: list(value) if isinstance(value, list) else value for field, value in changes.items()} == {
        field: list(found) if isinstance(found := getattr(changed, field), tuple) else found for field in changes
    }


def test_a_record_file_needs_only_what_is_known() -> None:
    record = read_record("a-tile", SOUND)
    assert ("a-tile", None, (Bond.STRAIGHT,)) == (record.name, record.hanging_length_mm, record.bonds)


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        (SOUND + "length_mm = 301", "the record cannot be read: "),
        (SOUND.replace("single-lap", "thatch"), "unknown family 'thatch'"),
        (SOUND + "colour = 'red'", "unknown fields: colour"),
        (SOUND.replace("length_mm = 300\n", ""), "covering.length: not given; wanted:"),
        (SOUND.replace("clay", "cheese"), "covering.material: 'cheese' will not do"),
    ],
)
def test_a_damaged_record_file_is_refused(text: str, sentence: str) -> None:
    with pytest.raises(TableDamaged) as damaged:
        read_record("a-tile", text)
    assert damaged.value.wrong.startswith(sentence)


def test_no_record_file_is_left_out_of_the_catalogue() -> None:
    records = Path(str(gaugerod.coverings.__file__)).parent / "records"
    assert sorted(path.stem for path in records.glob("*.toml")) == [record.name for record in catalogue()]
