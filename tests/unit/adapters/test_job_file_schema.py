"""The shipped schema takes what the door takes in shape, refuses what is wrong in shape, and describes every field."""

import json
import tomllib
from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from gaugerod.adapters.job_file.reference import reference_page

JOBS = Path(__file__).parents[2] / "faults" / "jobs"
SCHEMA: dict[str, Any] = json.loads(files("gaugerod.adapters.job_file").joinpath("job.schema.json").read_text("utf-8"))
WRONG_IN_SHAPE = [
    "band-of-three", "bond-unknown", "covering-yes-in-words", "edition-unknown", "exposure-misspelt", "length-is-a-table",
    "length-is-true", "nailed-none", "no-covering", "no-exposure", "no-job", "no-pitch", "no-rafters",
    "one-slope-in-single-brackets", "opening-without-height", "outline-and-across", "perps-every-nothing",
    "pitch-three-sides", "rafter-without-length", "rafters-none", "rafters-not-a-list", "side-unknown",
    "title-is-a-number", "title-too-long", "top-is-a-side", "unknown-key", "unknown-key-in-opening", "unknown-table",
]  # fmt: skip


def document(name: str) -> dict[str, Any]:
    return tomllib.loads((JOBS / f"{name}.toml").read_text("utf-8"))


def test_a_sound_job_is_taken() -> None:
    jsonschema.validate(document("sound"), SCHEMA)


@pytest.mark.parametrize("name", WRONG_IN_SHAPE)
def test_a_job_wrong_in_shape_is_refused(name: str) -> None:
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(document(name), SCHEMA)


def fields() -> Iterator[tuple[str, str, dict[str, Any]]]:
    for table, definition in SCHEMA["$defs"].items():
        for key, field in definition.get("properties", {}).items():
            yield table, key, field


def test_every_field_is_described_in_the_schema_and_stands_in_the_reference() -> None:
    page = reference_page()
    for table, key, field in fields():
        assert field.get("description"), f"{table}.{key}"
        assert f"| `{key}` | {field['description']}" in page, f"{table}.{key}"
