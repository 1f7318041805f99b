"""Drawings at the command line: a job file comes out, and it can be checked and set out as it is."""

import json
import tomllib
from pathlib import Path

import pytest

from gaugerod.cli.main import main

RING = [[500.0, 500.0], [510.0, 500.0], [510.0, 508.0], [500.0, 508.0], [500.0, 500.0]]
PLAN = {"type": "Polygon", "coordinates": [RING]}


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    path = tmp_path / "yard.geojson"
    path.write_text(json.dumps(PLAN), encoding="utf-8")
    return path


def test_a_plan_becomes_a_job_file_that_is_in_order(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    job = plan.with_suffix(".toml")
    assert 0 == main(["read-plan", str(plan), "--pitch", "40", "--out", str(job)])
    assert "Read the remarks at its head first" in capsys.readouterr().out
    assert 0 == main(["check-file", str(job)])
    assert "buildings: building 1" in capsys.readouterr().out
    assert 0 == main(["set-out", str(job), "--json", "-"])
    document = json.loads(capsys.readouterr().out)
    assert ["building 1"] == [roof["name"] for roof in document["roofs"]]
    assert 4 == len(document["slopes"])


def test_a_plan_goes_to_standard_output_as_nothing_but_the_job(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert 0 == main(["read-plan", str(plan)])
    assert "yard" == tomllib.loads(capsys.readouterr().out)["job"]["title"]


@pytest.mark.parametrize("command", ["read-plan", "read-roof"])
def test_a_file_that_cannot_be_used_is_refused(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    broken = tmp_path / "broken.json"
    broken.write_text("{", encoding="utf-8")
    for path in (broken, tmp_path / "none.json"):
        assert 2 == main([command, str(path)])
        assert "The input cannot be used: 1 fault." in capsys.readouterr().err


def test_a_place_that_cannot_be_written_is_refused(
    plan: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert 2 == main(["read-plan", str(plan), "--out", str(tmp_path / "none" / "job.toml")])
    assert "cannot be written" in capsys.readouterr().err
