"""A job file is in order only when a roof closes over each of its buildings."""

from pathlib import Path

import pytest

from gaugerod.cli.main import DONE, REFUSED, main

JOB = """
[job]
title = "Two pitches in one line"
exposure = "moderate"

[covering]
from = "flat-interlocking-420x330"

[[building]]
name = "house"
outline = [["0 m", "0 m"], ["5 m", "0 m"], ["10 m", "0 m"], ["10 m", "6 m"], ["0 m", "6 m"]]
pitch = ["35°", "{second}", "35°", "35°", "gable"]
"""


@pytest.mark.parametrize(("second", "status"), [("35°", DONE), ("45°", REFUSED)])
def test_a_roof_that_leaves_a_choice_is_told_when_the_file_is_checked(
    second: str, status: int, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job = tmp_path / "job.toml"
    job.write_text(JOB.format(second=second), encoding="utf-8")
    assert status == main(["check-file", str(job)])
    told = capsys.readouterr()
    assert ("is in order" in told.out) == (status == DONE)
    assert ("near (5000, 0) on plan" in told.err) == (status == REFUSED)
