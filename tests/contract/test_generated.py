"""What is generated is current, and the shipped schema agrees with what the door does."""

import json
import tomllib
from pathlib import Path

import jsonschema
import pytest

from gaugerod.adapters.job_file.read import read_job_document
from gaugerod.adapters.roof_check_file.read import read_roof_document
from gaugerod.basis.errors import InputRefused
from tools.generate import ROOF_SCHEMA, SCHEMA, generated

EXAMPLES = sorted((SCHEMA.parent / "examples").glob("*.toml"))
ROOF_EXAMPLES = sorted((ROOF_SCHEMA.parent / "examples").glob("*.toml"))


@pytest.mark.parametrize("path", list(generated()), ids=lambda path: path.name)
def test_it_is_current(path: Path) -> None:
    assert generated()[path] == path.read_text("utf-8"), "run make docs"


@pytest.mark.parametrize("schema", [SCHEMA, ROOF_SCHEMA], ids=lambda path: path.name)
def test_the_schema_is_a_schema(schema: Path) -> None:
    jsonschema.Draft202012Validator.check_schema(json.loads(schema.read_text("utf-8")))


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_the_schema_takes_every_example(path: Path) -> None:
    jsonschema.validate(tomllib.loads(path.read_text("utf-8")), json.loads(SCHEMA.read_text("utf-8")))


@pytest.mark.parametrize("path", ROOF_EXAMPLES, ids=lambda path: path.stem)
def test_the_schema_of_the_roof_file_takes_every_example(path: Path) -> None:
    jsonschema.validate(tomllib.loads(path.read_text("utf-8")), json.loads(ROOF_SCHEMA.read_text("utf-8")))


@pytest.mark.parametrize(
    "change",
    [
        {"job": {"title": "no exposure"}},
        {"slope": []},
        {"covering": {"from": 7}},
        {"set_out": {"bond": "diagonal"}},
        {"roof": {}},
        {"edges": {"ridge": {"unit": {"length": "450 mm"}}}},
        {"edges": {"wall": {"lead_code": 9}}},
        {"edges": {"shared": [{"slopes": ["rear"], "edge": "ridge"}]}},
        {"order": {"breakage": 51}},
        {"order": {"pack": [{"item": "tile", "size": 0}]}},
        {"order": {"money": {"places": 5}}},
        {"record": {"deviation": [{"what": "The old gutter stays."}]}},
    ],
    ids=str,
)
def test_the_schema_refuses_what_the_door_refuses(change: dict[str, object]) -> None:
    document = {**tomllib.loads(EXAMPLES[0].read_text("utf-8")), **change}
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(document, json.loads(SCHEMA.read_text("utf-8")))
    with pytest.raises(InputRefused):
        read_job_document(document)


ROD = {"at": "0 m", "rafter": "4.905 m"}


@pytest.mark.parametrize(
    "change",
    [
        {"roof": {"title": "no pitch", "name": "rear", "exposure": "moderate"}},
        {"rod": []},
        {"rod": [ROD]},
        {"rod": [{**ROD, "margins": [340, 341]}]},
        {"rod": [{**ROD, "overhang": "45 mm", "marks": [340, 680]}]},
        {"rod": [{**ROD, "overhang": "45 mm", "margins": [340], "marks": [340, 680]}]},
        {"rod": [{**ROD, "marks": [[340]]}]},
        {"covering": {"from": "random-slates", "heap": [{"length": "400 mm", "run": "60 m"}]}},
        {"job": {}},
    ],
    ids=str,
)
def test_the_schema_of_the_roof_file_refuses_what_its_door_refuses(change: dict[str, object]) -> None:
    document = {**tomllib.loads(ROOF_EXAMPLES[0].read_text("utf-8")), **change}
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(document, json.loads(ROOF_SCHEMA.read_text("utf-8")))
    with pytest.raises(InputRefused):
        read_roof_document(document)
