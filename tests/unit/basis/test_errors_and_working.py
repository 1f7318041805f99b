"""Errors carry their data; the working reads from the top down; every value says where it comes from."""

import pytest

from gaugerod.basis import errors
from gaugerod.basis.citation import Basis, Citation, common_practice, house
from gaugerod.basis.errors import Fault, GaugerodError, InputRefused, LengthUnclear, PitchUnclear, TableDamaged
from gaugerod.basis.limit import Limit
from gaugerod.basis.working import Step


def test_every_error_is_one_of_ours_and_stands_in_the_tree_at_the_head() -> None:
    raised = [kind for kind in vars(errors).values() if isinstance(kind, type) and issubclass(kind, Exception)]
    assert errors.__doc__ is not None
    assert raised
    for kind in raised:
        assert issubclass(kind, GaugerodError)
        assert kind.__name__ in errors.__doc__, f"{kind.__name__} is missing from the tree"


def test_a_refused_input_carries_and_says_every_fault() -> None:
    faults = [
        Fault("slope[0].pitch", "95°", "under 90°", "Measure it again."),
        Fault("job", "nothing", "a job", "Add it."),
    ]
    refused = InputRefused(faults)
    assert tuple(faults) == refused.faults
    assert (
        "slope[0].pitch: '95°' will not do; allowed: under 90°. Measure it again.\n"
        "job: not given; wanted: a job. Add it."
    ) == str(refused)


@pytest.mark.parametrize("kind", [LengthUnclear, PitchUnclear])
def test_an_unclear_text_is_quoted_with_its_reason(kind: type[LengthUnclear] | type[PitchUnclear]) -> None:
    unclear = kind("1,234", "could be two things")
    assert ("1,234", "could be two things") == (unclear.text, unclear.reason)
    assert str(unclear) == "'1,234' could be two things"


def test_a_damaged_table_is_named() -> None:
    assert str(TableDamaged("headlaps", "a row is missing")) == "table headlaps: a row is missing"


def test_the_working_is_read_from_the_top_down_each_step_with_its_depth() -> None:
    def step(name: str, *parts: Step) -> Step:
        return Step(name=name, formula="", inputs={}, value=1.0, unit="mm", parts=parts)

    tree = step("gauge", step("rafter", step("tape")), step("count"))
    assert [(0, "gauge"), (1, "rafter"), (2, "tape"), (1, "count")] == [
        (depth, each.name) for depth, each in tree.walk()
    ]


def test_every_value_says_where_it_comes_from_and_how_sure_that_is() -> None:
    assert Citation(source="own choice", basis=Basis.HOUSE) == house("own choice")
    assert str(common_practice("as roofers do")) == "as roofers do (common-practice)"
    assert str(Limit(value=74.5, unit="mm", citation=house("own choice"))) == "74.5 mm (own choice (house))"
