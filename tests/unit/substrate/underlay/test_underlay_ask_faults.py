"""An ask that cannot be: every fault at once, each with its field."""

from typing import Any

import pytest

from gaugerod.basis.errors import InputRefused
from gaugerod.standards.edition import Edition
from gaugerod.substrate.underlay.answer import Demand
from gaugerod.substrate.underlay.ask import UnderlayAsk
from gaugerod.substrate.underlay.cut_rolls import cut_rolls
from tests.scenario.underlaid_slopes import GABLE, MEMBRANE, ring, rod, underlay_ask

NO_LENGTHS = [float("nan"), float("inf"), -1.0, 0.0]


def fields(**changes: Any) -> list[str]:  # noqa: ANN401  any field of the ask
    with pytest.raises(InputRefused) as refused:
        underlay_ask(**changes)
    return [fault.field for fault in refused.value.faults]


@pytest.mark.parametrize("length", NO_LENGTHS)
@pytest.mark.parametrize(
    "field", ["batten_width_mm", "rafter_width_mm", "lap_mm", "carrier_reach_mm", "valley_strip_width_mm"]
)
def test_a_length_is_above_nothing_and_has_an_end(field: str, length: float) -> None:
    assert [f"rear.{field.removesuffix('_mm')}"] == fields(**{field: length})


@pytest.mark.parametrize("length", NO_LENGTHS)
@pytest.mark.parametrize("field", ["roll_width_mm", "roll_length_mm"])
def test_a_roll_has_a_width_and_a_length(field: str, length: float) -> None:
    record = {name: getattr(MEMBRANE, name) for name in MEMBRANE.__dataclass_fields__} | {field: length}
    assert [f"rear.{field.removesuffix('_mm')}"] == fields(record=type(MEMBRANE)(**record))


@pytest.mark.parametrize("pitch_deg", [0.0, -5.0, 90.0, float("nan"), float("inf")])
def test_a_pitch_is_that_of_a_slope(pitch_deg: float) -> None:
    assert ["rear.pitch"] == fields(pitch_deg=pitch_deg)


def test_a_lap_over_half_the_roll_is_refused() -> None:
    assert 500.0 == underlay_ask(lap_mm=500.0).lap_mm
    assert ["rear.lap"] == fields(lap_mm=501.0)


def test_rafters_and_stations_go_from_left_to_right() -> None:
    assert ["rear.rafters[1]"] == fields(rafters_mm=(600.0, 600.0))
    assert ["rear.rafters[0]"] == fields(rafters_mm=(float("nan"),))
    assert ["rear.rods[1]"] == fields(rods=(rod((300.0, 600.0)), rod((300.0, 600.0))))


def test_rods_carry_the_same_battens_going_up() -> None:
    assert ["rear.rods[1]"] == fields(rods=(rod((300.0, 600.0)), rod((300.0,), at_mm=9000.0)))
    assert ["rear.rods[0]"] == fields(rods=(rod((600.0, 300.0)),))
    assert ["rear.rods[0]"] == fields(rods=(rod((300.0, float("nan"))),))


def test_an_outline_that_crosses_itself_and_a_bad_pitch_are_told_together() -> None:
    crossed = ring(((0.0, 0.0), (4000.0, 3000.0), (4000.0, 0.0), (0.0, 3000.0)), GABLE)
    assert ["rear.outline[0]", "rear.pitch"] == fields(outline=crossed, pitch_deg=0.0)


def test_edges_have_names_of_their_own() -> None:
    outline = underlay_ask().outline
    assert ["rear.edges"] == fields(outline=type(outline)(points_mm=outline.points_mm, edges=outline.edges[:1] * 4))
    assert ["rear.edges"] == fields(outline=type(outline)(points_mm=outline.points_mm, edges=outline.edges[:3]))


def test_a_sound_ask_is_taken() -> None:
    assert isinstance(underlay_ask(), UnderlayAsk)


@pytest.mark.parametrize("roll_mm", NO_LENGTHS)
def test_a_roll_to_cut_has_a_length(roll_mm: float) -> None:
    run = Demand(name="run", from_mm=0.0, to_mm=1000.0, breaks_mm=())
    with pytest.raises(InputRefused, match="roll_length"):
        cut_rolls([run], roll_length_mm=roll_mm, edition=Edition.GB)


@pytest.mark.parametrize("to_mm", [float("nan"), float("inf"), 0.0, -1.0])
def test_a_run_to_cut_has_a_length(to_mm: float) -> None:
    run = Demand(name="run", from_mm=0.0, to_mm=to_mm, breaks_mm=())
    with pytest.raises(InputRefused, match="demands"):
        cut_rolls([run], roll_length_mm=50000.0, edition=Edition.GB)
