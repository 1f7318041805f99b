"""Edges, take-off, order and record in the result document: their names, and their agreement with the result."""

import json
from dataclasses import replace
from importlib.resources import files
from math import isclose
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from gaugerod.adapters.job_file.read import read_job
from gaugerod.adapters.result_document.document import result_document
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out

EXAMPLES = Path(str(files("gaugerod.adapters.job_file").joinpath("examples")))
SOUND = Path(__file__).parents[2] / "faults" / "jobs" / "edges-sound.toml"
SCHEMA: dict[str, Any] = json.loads(
    files("gaugerod.adapters.result_document").joinpath("result.schema.json").read_text("utf-8")
)
EVERY = (*sorted(path.stem for path in EXAMPLES.glob("*.toml")), "edges-sound")


def document_of(result: Result) -> dict[str, Any]:
    read_back: dict[str, Any] = json.loads(json.dumps(result_document(result), allow_nan=False))
    return read_back


@pytest.fixture(scope="module", params=EVERY)
def result(request: pytest.FixtureRequest) -> Result:
    path = SOUND if request.param == "edges-sound" else EXAMPLES / f"{request.param}.toml"
    return set_out(read_job(path))


@pytest.fixture(scope="module")
def document(result: Result) -> dict[str, Any]:
    return document_of(result)


def test_it_keeps_to_the_schema(document: dict[str, Any]) -> None:
    jsonschema.validate(document, SCHEMA)


def test_every_edge_is_told_with_its_lead(result: Result, document: dict[str, Any]) -> None:
    assert result.edges is not None
    told = document["edges"]["edges"]
    assert [edge.name for edge in result.edges.edges] == [each["name"] for each in told]
    lead_kg = sum(pieces["mass_kg"] for each in told for pieces in each["lead"])
    assert isclose(document["edges"]["lead_kg"], lead_kg, abs_tol=1e-3 * (1 + len(told)))
    for each in told:
        assert (each["kind"] is None) == (each["width_mm"] is not None)
        if each["run"] is not None:
            run = each["run"]
            assert run["units"] == run["whole"] + len(run["cut_mm"])


def test_every_line_of_the_order_is_told(result: Result, document: dict[str, Any]) -> None:
    assert result.take_off is not None
    lines = document["take_off"]
    assert [line.measured.item for line in result.take_off.lines] == [each["item"] for each in lines]
    for line, each in zip(result.take_off.lines, lines, strict=True):
        assert each["bought"] >= each["order"] >= each["net"]
        added = sum(allowance["amount"] for allowance in each["allowances"])
        assert each["order"] >= each["net"] + added - 1e-3
        assert len(line.measured.by_slope) == len(each["by_slope"])
        if each["packed"] is not None:
            packed = each["packed"]
            assert isclose(each["bought"], packed["packs"] * packed["pack_size"])
            assert isclose(packed["over"], each["bought"] - each["order"], abs_tol=1e-3)
    assert list(result.take_off.not_counted) == document["order"]["not_counted"]
    for compared in document["order"]["compared"]:
        assert compared["difference"] == compared["flat"] - compared["counted"]


def test_what_was_not_worked_out_is_null_or_empty(result: Result) -> None:
    document = document_of(replace(result, edges=None, take_off=None))
    jsonschema.validate(document, SCHEMA)
    assert (None, [], None) == (document["edges"], document["take_off"], document["order"])


def test_the_record_is_told_as_the_job_has_it() -> None:
    record = document_of(set_out(read_job(SOUND)))["record"]
    assert "Mill Lane, at the ford" == record["site"]
    assert [
        {
            "what": "The lead of the stack stays as it was.",
            "accepted_by": "the miller",
            "rule": "lead code",
            "where": "front, stack",
            "on": "the first Monday of May",
        }
    ] == record["deviations"]


def test_a_line_two_slopes_share_is_told_once_with_both() -> None:
    edges = document_of(set_out(read_job(SOUND)))["edges"]["edges"]
    ridges = [edge for edge in edges if edge["kind"] == "ridge"]
    assert [["front", "rear"]] == [sorted(edge["slopes"]) for edge in ridges]
