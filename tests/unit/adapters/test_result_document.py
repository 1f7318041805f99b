"""The result document: its names, its types, and its agreement with the result it was made from."""

import json
import subprocess
import sys
import tomllib
from dataclasses import replace
from importlib.resources import files
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from gaugerod.adapters.job_file.read import read_job, read_job_document
from gaugerod.adapters.result_document.document import result_document
from gaugerod.basis.finding import Verdict
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out

EXAMPLES = Path(str(files("gaugerod.adapters.job_file").joinpath("examples")))
SOUND = Path(__file__).parents[2] / "faults" / "jobs" / "sound.toml"
SCHEMA: dict[str, Any] = json.loads(
    files("gaugerod.adapters.result_document").joinpath("result.schema.json").read_text("utf-8")
)


def document_of(result: Result) -> dict[str, Any]:
    """As another program gets it: through the text, which refuses what is no number."""
    read_back: dict[str, Any] = json.loads(json.dumps(result_document(result), allow_nan=False))
    return read_back


@pytest.fixture(scope="module")
def result() -> Result:
    return set_out(read_job(EXAMPLES / "demo.toml"))


@pytest.fixture(scope="module")
def document(result: Result) -> dict[str, Any]:
    return document_of(result)


def test_the_schema_is_a_schema() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize("path", sorted(EXAMPLES.glob("*.toml")), ids=lambda path: path.stem)
def test_the_document_of_every_example_keeps_to_the_schema(path: Path) -> None:
    jsonschema.validate(document_of(set_out(read_job(path))), SCHEMA)


def test_a_covering_of_unknown_cover_width_has_no_perps_and_keeps_to_the_schema() -> None:
    job = tomllib.loads(SOUND.read_text("utf-8"))
    job["covering"] = {
        "form": "flat", "material": "clay", "length": 342, "width": 230, "headlap_min": 75, "hanging_length": 324,
    }  # fmt: skip
    document = document_of(set_out(read_job_document(job)))
    jsonschema.validate(document, SCHEMA)
    assert document["slopes"][0]["across"] is None


def test_battens_already_nailed_are_told_apart() -> None:
    job = tomllib.loads(SOUND.read_text("utf-8"))
    job["slope"][0]["nailed"] = [{"at": 0, "marks": [348, 690, 1030]}, {"at": "7.460 m", "marks": [348, 690, 1030]}]
    document = document_of(set_out(read_job_document(job)))
    jsonschema.validate(document, SCHEMA)
    assert [3, 3] == [rod["kept_count"] for rod in document["slopes"][0]["courses"]["rods"]]


def test_the_stable_names_are_there(document: dict[str, Any]) -> None:
    (slope,) = document["slopes"]
    assert {"name", "area_m2", "pitch_deg", "outline_mm", "edges", "courses", "across"} <= slope.keys()
    assert {"count", "gauge_mm", "headlap_mm", "limit", "strategy", "why", "rods"} <= slope["courses"].keys()
    assert {"gauge_max_mm", "gauge_min_mm"} == slope["courses"]["limit"].keys()
    assert {"at_mm", "length_mm", "marks_mm"} <= slope["courses"]["rods"][0].keys()
    assert {"units", "cover_mm", "left_overhang_mm", "right_overhang_mm", "bond", "perps_mm", "cuts"} <= (
        slope["across"].keys()
    )
    assert {"rule", "where", "verdict", "proposed", "limit", "unit", "source", "basis", "says"} <= (
        document["findings"][0].keys()
    )
    assert {"alternatives", "edition", "version", "cautions", "working"} <= document.keys()


def test_the_courses_of_the_document_are_those_of_the_result(result: Result, document: dict[str, Any]) -> None:
    courses, said = result.slopes[0].courses, document["slopes"][0]["courses"]
    assert courses.count == said["count"] == len(said["rods"][0]["marks_mm"])
    for rod, rod_said in zip(courses.rods, said["rods"], strict=True):
        assert list(rod.marks_mm) == pytest.approx(rod_said["marks_mm"], abs=5e-5)
    assert len(said["rods"]) == len(said["gauge_mm"])


def test_no_gap_in_the_document_is_over_the_greatest_gauge(document: dict[str, Any]) -> None:
    courses = document["slopes"][0]["courses"]
    for rod in courses["rods"]:
        gaps = [upper - lower for lower, upper in zip(rod["marks_mm"], rod["marks_mm"][1:], strict=False)]
        assert max(gaps) <= courses["limit"]["gauge_max_mm"]


def test_every_finding_and_step_is_told(result: Result, document: dict[str, Any]) -> None:
    assert [finding.verdict.value for finding in result.findings] == [each["verdict"] for each in document["findings"]]

    def steps_count(step: dict[str, Any]) -> int:
        return 1 + sum(steps_count(part) for part in step["parts"])

    assert sum(1 for _ in result.working.walk()) == steps_count(document["working"])


def test_what_could_change_is_told_where_something_is_outside() -> None:
    result = set_out(read_job(EXAMPLES / "narrow-gauge.toml"))
    document = document_of(result)
    assert result.anything_outside
    assert any(each["verdict"] == Verdict.OUTSIDE.value for each in document["findings"])
    assert [1, 2] == [each["rank"] for each in document["alternatives"][:2]]


def test_the_same_job_always_gives_the_same_text(document: dict[str, Any]) -> None:
    again = document_of(set_out(read_job(EXAMPLES / "demo.toml")))
    assert json.dumps(document) == json.dumps(again)


def test_a_number_that_is_none_never_gets_out(result: Result) -> None:
    broken = replace(
        result, slopes=(replace(result.slopes[0], slope=replace(result.slopes[0].slope, pitch_deg=float("nan"))),)
    )
    with pytest.raises(ValueError, match="Out of range float values"):
        document_of(broken)


def test_a_result_is_told_without_the_checker_of_the_door() -> None:
    """On a phone the engine and its document run alone."""
    alone = (
        "import sys, gaugerod.job.set_out, gaugerod.adapters.result_document.document; print('pydantic' in sys.modules)"
    )
    assert "False\n" == subprocess.run([sys.executable, "-c", alone], capture_output=True, text=True, check=True).stdout


@pytest.fixture(scope="module")
def house() -> Result:
    return set_out(read_job(EXAMPLES / "hipped-house.toml"))


@pytest.fixture(scope="module")
def house_document(house: Result) -> dict[str, Any]:
    return document_of(house)


def test_the_stable_names_of_whole_roofs_are_there(house_document: dict[str, Any]) -> None:
    slope, (roof,) = house_document["slopes"][0], house_document["roofs"]
    assert {"whole", "cut", "runs", "cuts"} <= slope["laying"].keys()
    assert {"course", "outline_mm", "area_mm2", "angle_deg", "remark"} <= slope["laying"]["cuts"][0].keys()
    assert "house" == roof["name"]
    assert [each["name"] for each in house_document["slopes"]] == [each["name"] for each in roof["slopes"]]
    assert ["hip", "hip", "hip", "hip", "ridge", "ridge", "valley"] == sorted(line["kind"] for line in roof["lines"])
    assert ["gable"] == [face["kind"] for face in roof["uprights"]]


def test_every_unit_of_the_laying_is_told(house: Result, house_document: dict[str, Any]) -> None:
    for slope, said in zip(house.slopes, house_document["slopes"], strict=True):
        assert slope.laid is not None
        assert slope.laid.whole_units_count == said["laying"]["whole"]
        assert said["laying"]["whole"] <= sum(run["count"] for run in said["laying"]["runs"])
        assert said["laying"]["cut"] == len(said["laying"]["cuts"]) == len(slope.laid.pieces)
        courses = [each["course"] for each in (*said["laying"]["runs"], *said["laying"]["cuts"])]
        assert (1, slope.courses.count) == (min(courses), max(courses))


def test_the_numbers_of_the_offcut_plan_are_those_of_the_pieces(house_document: dict[str, Any]) -> None:
    numbers = [piece["number"] for slope in house_document["slopes"] for piece in slope["laying"]["cuts"]]
    assert list(range(1, len(numbers) + 1)) == numbers
    plan = house_document["offcuts"]
    used = [use[which] for use in plan["uses"] for which in ("first", "second")]
    assert len(set(used)) == len(used)
    assert set(used) <= set(numbers)
    assert plan["pieces"] - plan["saved"] == plan["units"]
    assert plan["saved"] == sum(each["pairs"] for each in plan["by_edges"])


def test_the_roof_of_the_document_closes(house_document: dict[str, Any]) -> None:
    (roof,) = house_document["roofs"]
    names = {slope["name"] for slope in roof["slopes"]}
    assert roof["area_m2"] == pytest.approx(sum(slope["area_m2"] for slope in roof["slopes"]), abs=5e-4)
    assert {line[side] for line in roof["lines"] for side in ("left", "right")} <= names
    for slope in roof["slopes"]:
        assert len(slope["edges"]) == len(slope["corners_mm"])


def test_a_slope_by_outline_tells_its_own_edges() -> None:
    job = tomllib.loads((SOUND.parent / "outline-sound.toml").read_text("utf-8"))
    job["slope"][0]["edges"] = ["eaves", "hip", "mono-ridge", "hip"]
    (slope,) = document_of(set_out(read_job_document(job)))["slopes"]
    assert ["eaves", "hip", "mono-ridge", "hip"] == slope["edges"]


def test_a_slope_that_could_not_be_set_out_is_told_with_the_reason() -> None:
    job = tomllib.loads((EXAMPLES / "random-slates.toml").read_text("utf-8"))
    for heap in job["covering"]["heap"]:
        heap.pop("slates", None)
        heap["run"] = "3 m"
    document = document_of(set_out(read_job_document(job)))
    jsonschema.validate(document, SCHEMA)
    assert [] == document["slopes"]
    (short,) = document["not_set_out"]
    assert "west" == short["name"]
    assert short["why"]


@pytest.mark.parametrize("name", ["plain-tiles", "slates"])
def test_double_lap_is_told_with_every_lap_and_tail(name: str) -> None:
    (slope,) = document_of(set_out(read_job(EXAMPLES / f"{name}.toml")))["slopes"]
    extras = slope["double_lap"]
    assert slope["diminishing"] is None
    assert len(extras["rods"]) == len(slope["courses"]["rods"])
    for rod in extras["rods"]:
        assert min(rod["laps_mm"]) >= slope["courses"]["headlap_mm"] - 1e-3
        assert rod["tails_mm"] == sorted(rod["tails_mm"])
    assert {piece["at"] for piece in slope["verge_pieces"]} <= {"left", "right"}


def test_diminishing_courses_are_told_with_what_stays_on_the_ground() -> None:
    (slope,) = document_of(set_out(read_job(EXAMPLES / "random-slates.toml")))["slopes"]
    plan = slope["diminishing"]
    assert [group["first_course"] for group in plan["groups"][1:]] == [
        group["last_course"] + 1 for group in plan["groups"][:-1]
    ]
    assert min(lap for rod in plan["rods"] for lap in rod["laps_mm"]) == pytest.approx(plan["least_lap_mm"], abs=1e-3)
    laid = sum(heap["courses_laid"] for heap in plan["heaps"])
    assert laid == slope["courses"]["count"]
    assert all(heap["left_run_mm"] >= 0 for heap in plan["heaps"])
