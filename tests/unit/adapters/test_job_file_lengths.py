"""Which lengths the door lets in, just inside, at and just outside each limit."""

from math import nextafter

import pytest
from pydantic_core import PydanticCustomError

from gaugerod.adapters.job_file import allowed
from gaugerod.adapters.job_file.allowed import Allowed
from gaugerod.adapters.job_file.fields import band, count, length_mm, mass_kg, words
from gaugerod.basis.errors import Fault

EVERY = [value for value in vars(allowed).values() if isinstance(value, Allowed)]
NAN, INF = float("nan"), float("inf")


def fault_of(refused: pytest.ExceptionInfo[PydanticCustomError]) -> Fault:
    assert refused.value.context is not None
    fault = refused.value.context["faults"][0]
    assert isinstance(fault, Fault)
    return fault


@pytest.mark.parametrize("limits", EVERY, ids=str)
def test_a_length_at_its_limits_is_let_in_and_just_outside_is_not(limits: Allowed) -> None:
    for at_limit_mm in (limits.least_mm, limits.greatest_mm):
        assert at_limit_mm == length_mm(at_limit_mm, limits)
    for outside_mm in (nextafter(limits.least_mm, -INF), nextafter(limits.greatest_mm, INF)):
        with pytest.raises(PydanticCustomError):
            length_mm(outside_mm, limits)


@pytest.mark.parametrize("limits", [limits for limits in EVERY if limits is not allowed.PLACE_ON_PLAN], ids=str)
@pytest.mark.parametrize("value", [-1, "-1 mm", -5e-324])
def test_only_a_place_on_plan_may_lie_on_either_side_of_nothing(value: object, limits: Allowed) -> None:
    assert -1.0 == length_mm(-1, allowed.PLACE_ON_PLAN)
    with pytest.raises(PydanticCustomError):
        length_mm(value, limits)


@pytest.mark.parametrize("limits", EVERY, ids=str)
@pytest.mark.parametrize("value", [NAN, INF, -INF, 10**400, None, True, [], {}, ""])
def test_what_is_no_length_is_let_in_nowhere(value: object, limits: Allowed) -> None:
    with pytest.raises(PydanticCustomError) as refused:
        length_mm(value, limits)
    assert str(limits) == fault_of(refused).allowed
    assert fault_of(refused).do.endswith(".")


def test_a_band_may_start_at_nothing_and_its_ends_may_meet() -> None:
    found = band([0, "0 mm"], allowed.EDGE_ALLOWANCE)
    assert (0.0, 0.0) == (found.least_mm, found.greatest_mm)


@pytest.mark.parametrize("value", [0, -4.7, 100.1, NAN, INF, True, "4.7", "4.7 lb", None, []])
def test_a_mass_is_in_kilograms_above_nothing(value: object) -> None:
    with pytest.raises(PydanticCustomError):
        mass_kg(value)


@pytest.mark.parametrize(("value", "expected_kg"), [(4.7, 4.7), ("4.7 kg", 4.7), ("4,7kg", 4.7), (100, 100.0)])
def test_a_mass_is_read_with_or_without_its_unit(value: object, expected_kg: float) -> None:
    assert expected_kg == mass_kg(value)


@pytest.mark.parametrize("value", [0, 101, -1, 3.0, "3", True, None, 10**400])
def test_a_count_is_a_whole_number_from_one_to_a_hundred(value: object) -> None:
    with pytest.raises(PydanticCustomError):
        count(value)


@pytest.mark.parametrize("value", ["", " ", "two\nlines", "bell\x07", "\ud800", "x" * 121, 7, None])
def test_a_name_is_one_line_that_can_be_printed(value: object) -> None:
    with pytest.raises(PydanticCustomError):
        words(value)


def test_a_name_of_the_greatest_length_in_any_script_is_let_in() -> None:
    assert "é" * 120 == words(" " + "é" * 120)
