"""What a job file says of edges, order and record is what the job holds."""

import copy
import tomllib
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from gaugerod.adapters.job_file.read import read_job, read_job_document
from gaugerod.basis.citation import Basis
from gaugerod.basis.errors import InputRefused
from gaugerod.edges.wished import (
    AirUnit,
    AirUnitsWished,
    EavesWished,
    EdgesWished,
    HipMade,
    LineUnit,
    OpeningMade,
    RidgeMade,
    RidgeWished,
    SharedLine,
    SideMade,
    ValleyMade,
    ValleyWished,
    VergeMade,
    VergeWished,
    WallWished,
)
from gaugerod.job.record_wished import Deviation, RecordWished
from gaugerod.take_off.wished import MoneySettings, OrderWished, Pack

JOBS = Path(__file__).parents[2] / "faults" / "jobs"


@pytest.fixture
def document() -> dict[str, Any]:
    return tomllib.loads((JOBS / "edges-sound.toml").read_text("utf-8"))


def refused_fields(document: dict[str, Any]) -> list[str]:
    with pytest.raises(InputRefused) as refused:
        read_job_document(document)
    return [fault.field for fault in refused.value.faults]


def test_every_table_of_the_edges_reaches_the_job() -> None:
    assert (
        EdgesWished(
            ridge=RidgeWished(
                made=RidgeMade.DRY,
                ridge=LineUnit(length_mm=450.0, cover_mm=430.0, fixings_count=2, mass_kg=4.2),
                mono_ridge=LineUnit(length_mm=450.0, cover_mm=450.0),
                hip=LineUnit(length_mm=400.0, cover_mm=380.0),
                hips=HipMade.UNITS,
            ),
            verge=VergeWished(made=VergeMade.BEDDED, undercloak_length_mm=1200.0, bed_mm=75.0),
            valley=ValleyWished(
                made=ValleyMade.LINER,
                clear_mm=125.0,
                lead_code=5,
                girth_mm=500.0,
                liner_length_mm=3000.0,
                liner_lap_mm=150.0,
            ),
            wall=WallWished(beside=SideMade.STEP_AND_COVER, splash=False, lead_code=4, side_cover_mm=150.0),
            eaves=EavesWished(gap_mm=18.0, tray_length_mm=1500.0),
            air=AirUnitsWished(
                low=AirUnit(title="eaves strip", area_mm2=10_000.0, length_mm=1000.0),
                high=AirUnit(title="ridge vent", area_mm2=5000.0),
            ),
            shared=(SharedLine(slopes=("front", "rear"), kind="ridge"),),
        )
        == read_job(JOBS / "edges-sound.toml").edges
    )


def test_order_and_record_reach_the_job() -> None:
    job = read_job(JOBS / "edges-sound.toml")
    assert job.order.breakage is not None
    assert job.order.flat_waste is not None
    assert (3.0, "percent", Basis.HOUSE) == (
        job.order.breakage.value, job.order.breakage.unit, job.order.breakage.citation.basis,
    )  # fmt: skip
    assert (10.0, "percent") == (job.order.flat_waste.value, job.order.flat_waste.unit)
    assert (Pack(item="tile", size=6.0, pallet_packs_count=40),) == job.order.packs
    assert (
        MoneySettings(currency="crowns", places=2, tax_name="sales tax", tax_percent=Decimal("17.5")) == job.order.money
    )
    assert (
        RecordWished(
            site="Mill Lane, at the ford",
            laid_by="the two of us",
            measured_by="the elder",
            handed_to="the miller",
            deviations=(
                Deviation(
                    what="The lead of the stack stays as it was.",
                    accepted_by="the miller",
                    rule="lead code",
                    where="front, stack",
                    on="the first Monday of May",
                ),
            ),
        )
        == job.record
    )


def test_what_stands_in_an_opening_goes_with_its_slope_by_name() -> None:
    job = read_job(JOBS / "edges-sound.toml")
    assert [(("stack", OpeningMade.CHIMNEY),), ()] == [slope.openings_made for slope in job.slopes]


def test_what_stands_in_an_opening_of_a_slope_by_its_outline_goes_with_it_too(document: dict[str, Any]) -> None:
    opening = document["slope"][0]["opening"][0]
    document["slope"][0] = {
        "name": "front",
        "pitch": 35,
        "outline": [[0, 0], [7460, 0], [7460, 4905], [0, 4905]],
        "edges": ["eaves", "abutment", "ridge", "verge"],
        "opening": [{**opening, "made": "kit"}, {**opening, "name": "vent", "from_left": 5000}],
    }
    document["slope"][0]["opening"][1].pop("made")
    assert (("stack", OpeningMade.KIT),) == read_job_document(document).slopes[0].openings_made


def test_a_job_that_says_nothing_of_them_has_none() -> None:
    job = read_job(JOBS / "sound.toml")
    assert (EdgesWished(), OrderWished(), RecordWished()) == (job.edges, job.order, job.record)


@pytest.mark.parametrize("cover", ["449.9 mm", "450 mm"])
def test_a_unit_may_gain_up_to_its_length(document: dict[str, Any], cover: str) -> None:
    document["edges"]["ridge"]["unit"]["cover"] = cover
    ridge = read_job_document(document).edges.ridge
    assert ridge is not None
    assert ridge.ridge is not None
    assert float(cover.removesuffix(" mm")) == ridge.ridge.cover_mm


@pytest.mark.parametrize("which", ["unit", "mono_unit", "hip_unit"])
def test_a_unit_that_gains_more_than_its_length_is_refused(document: dict[str, Any], which: str) -> None:
    document["edges"]["ridge"][which] = {"length": "450 mm", "cover": "450.1 mm"}
    assert [f"edges.ridge.{which}.cover"] == refused_fields(document)


@pytest.mark.parametrize(
    ("lap", "fields"), [("499 mm", []), ("500 mm", ["edges.valley.liner_lap"]), ("501 mm", ["edges.valley.liner_lap"])]
)
def test_a_liner_laps_less_than_its_length(document: dict[str, Any], lap: str, fields: list[str]) -> None:
    document["edges"]["valley"] |= {"liner_length": "500 mm", "liner_lap": lap}
    if fields:
        assert fields == refused_fields(document)
    else:
        valley = read_job_document(document).edges.valley
        assert valley is not None
        assert 499.0 == valley.liner_lap_mm


@pytest.mark.parametrize(
    ("clear", "allowed"), [("49 mm", False), ("50 mm", True), ("51 mm", True), ("499 mm", True), ("500 mm", False)]
)
def test_a_valley_is_clear_inside_what_makes_sense_and_inside_its_lining(
    document: dict[str, Any], clear: str, *, allowed: bool
) -> None:
    document["edges"]["valley"]["clear"] = clear
    assert allowed == (not _refused(document))


def _refused(document: dict[str, Any]) -> bool:
    try:
        read_job_document(document)
    except InputRefused:
        return True
    return False


@pytest.mark.parametrize(
    "path",
    [
        ("edges", "ridge", "unit", "length"),
        ("edges", "ridge", "unit", "cover"),
        ("edges", "verge", "undercloak"),
        ("edges", "verge", "bed"),
        ("edges", "valley", "clear"),
        ("edges", "valley", "girth"),
        ("edges", "valley", "liner_length"),
        ("edges", "valley", "liner_lap"),
        ("edges", "wall", "side_cover"),
        ("edges", "eaves", "tray_length"),
        ("edges", "air", "low", "length"),
        ("edges", "air", "low", "area"),
        ("order", "pack", 0, "size"),
    ],
    ids=lambda path: ".".join(str(key) for key in path),
)
@pytest.mark.parametrize("wrong", [float("nan"), float("inf"), -1, 0, True, 10**400, {}])
def test_no_figure_may_be_endless_none_or_nothing(
    document: dict[str, Any], path: tuple[str | int, ...], wrong: object
) -> None:
    holder: Any = document
    for key in path[:-1]:
        holder = holder[key]
    holder[path[-1]] = wrong
    assert len(refused_fields(document)) == 1


@pytest.mark.parametrize(
    ("tax", "exactly"),
    [(0, "0"), (20, "20"), (17.5, "17.5"), ("8.875", "8.875"), ("8,875 %", "8.875"), (100, "100"), (0.1, "0.1")],
)
def test_tax_is_read_exactly_as_it_is_written(document: dict[str, Any], tax: object, exactly: str) -> None:
    document["order"]["money"]["tax"] = tax
    assert Decimal(exactly) == read_job_document(document).order.money.tax_percent


@pytest.mark.parametrize("tax", [-1, 100.5, float("nan"), float("inf"), True, "", "20 of 100", "1e1", 10**400, 1e-9])
def test_tax_that_is_none_is_refused(document: dict[str, Any], tax: object) -> None:
    document["order"]["money"]["tax"] = tax
    assert ["order.money.tax"] == refused_fields(document)


def test_an_item_the_take_off_may_not_know_is_let_in(document: dict[str, Any]) -> None:
    document["order"]["pack"] = [{"item": "batten-nails-65x3.35", "size": 2.5}]
    assert (Pack(item="batten-nails-65x3.35", size=2.5),) == read_job_document(document).order.packs


def test_a_day_may_be_written_as_the_file_writes_days(document: dict[str, Any]) -> None:
    document["record"]["deviation"][0]["on"] = tomllib.loads("on = 2026-05-29")["on"]
    assert "2026-05-29" == read_job_document(document).record.deviations[0].on


def test_one_line_may_be_shared_while_another_slope_cannot_be_read(document: dict[str, Any]) -> None:
    """A side nobody can read has a fault of its own, and hides no shared line."""
    document["slope"][0]["top"] = "rigde"
    assert ["slope[0].top"] == refused_fields(document)


def test_the_slopes_of_a_building_are_joined_by_its_plan(document: dict[str, Any]) -> None:
    square = [[0, 0], [9000, 0], [9000, 6000], [0, 6000]]
    document["building"] = [{"name": "barn", "outline": square, "pitch": [35, 35, 35, 35]}]
    document["edges"]["shared"] = [{"slopes": ["front", "barn 2"], "edge": "ridge"}]
    with pytest.raises(InputRefused) as refused:
        read_job_document(document)
    (fault,) = refused.value.faults
    assert ("edges.shared[0].slopes[1]", "The slopes of barn are joined by its plan already: take this out.") == (
        fault.field, fault.do,
    )  # fmt: skip


def test_a_slope_with_two_valleys_may_share_both(document: dict[str, Any]) -> None:
    ends: dict[str, Any] = {"pitch": 35, "across": 3000, "rafters": [3000], "top": "ridge", "left": "valley"}
    document["slope"] += [
        {**ends, "name": "left wing", "right": "verge"},
        {**ends, "name": "right wing", "right": "verge"},
    ]
    middle = {**copy.deepcopy(document["slope"][1]), "name": "middle", "left": "valley", "right": "valley"}
    document["slope"].append(middle)
    document["edges"]["shared"] = [
        {"slopes": ["middle", f"{side} wing"], "edge": "valley"} for side in ("left", "right")
    ]
    assert 2 == len(read_job_document(document).edges.shared)
