"""The work of the job, measured."""

from dataclasses import replace

import pytest

from gaugerod.edges.ask import EdgeOpening, LineKind
from gaugerod.laying.cut_unit import Remedy
from gaugerod.take_off.ask import TakeOffAsk
from gaugerod.take_off.tasks import tasks
from tests.scenario.take_off_asks import ask, edge, edges, laid, load, piece
from tests.scenario.taken_off import example
from tests.scenario.taken_off_jobs import ask_of


def quantities(asked: TakeOffAsk) -> dict[str, tuple[float, str]]:
    found = {task.task: (task.quantity, task.unit) for task in tasks(asked)}
    assert len(found) == len(tasks(asked))
    return found


def test_only_what_there_is_work_for() -> None:
    assert {"lay-covering": (20.0, "m2")} == quantities(ask())


def test_pieces_to_saw_and_none_for_random_slates_of_another_width() -> None:
    pieces = (piece(0), piece(1, remedy=Remedy.BOND_AND_CLIP, neighbour=2), piece(2, remedy=Remedy.CHOOSE_WIDTH))
    assert (2.0, "pieces") == quantities(ask(laid(pieces=pieces)))["cut"]


def test_the_old_covering_is_taken_off_where_there_is_one() -> None:
    loads = (load("front"), load("rear", old=(60.0, 70.0)))
    assert (20.0, "m2") == quantities(ask(laid("front"), laid("rear"), loads=loads))["strip-old"]


@pytest.mark.parametrize(
    ("kind", "task"),
    [
        (LineKind.EAVES, "eaves"),
        (LineKind.VERGE, "verge"),
        (LineKind.RIDGE, "ridge"),
        (LineKind.MONO_RIDGE, "ridge"),
        (LineKind.HIP, "hip"),
        (LineKind.VALLEY, "valley"),
        (LineKind.SIDE_ABUTMENT, "side-abutment"),
        (LineKind.TOP_ABUTMENT, "top-abutment"),
    ],
)
def test_every_kind_of_line_is_measured_as_it_is_laid(kind: LineKind, task: str) -> None:
    roof = edges(edge("one", kind=kind), edge("other", kind=kind, length_mm=900.0))
    assert {"lay-covering": (20.0, "m2"), task: (pytest.approx(10.1), "m")} == quantities(ask(edges=roof))


def test_ridges_and_mono_ridges_are_one_task() -> None:
    roof = edges(edge("one", kind=LineKind.RIDGE), edge("other", kind=LineKind.MONO_RIDGE))
    assert 18.2 == pytest.approx(quantities(ask(edges=roof))["ridge"][0])


def test_openings_are_counted() -> None:
    light = EdgeOpening(name="light", slope="rear", width_mm=780.0, height_mm=1180.0, made=None, courses_count=4)
    made = replace(edge("light"), line=None, opening=light)
    assert (1.0, "pieces") == quantities(ask(edges=edges(made)))["opening"]


def test_a_whole_job() -> None:
    asked = ask_of(example("demo"))
    found = quantities(asked)
    assert asked.battens is not None
    assert {
        "strip-old",
        "underlay",
        "battens",
        "lay-covering",
        "cut",
        "eaves",
        "verge",
        "ridge",
        "side-abutment",
        "opening",
    } == {*found}
    assert asked.battens.cutting.net_mm / 1000 == found["battens"][0]
    assert sum(slope.area_mm2 for slope in asked.slopes) / 1e6 == found["lay-covering"][0]
    assert float(sum(len(slope.pieces) for slope in asked.slopes)) == found["cut"][0]
