"""What is generated is current, and the shipped schema agrees with what the door does."""

import json
import tomllib
from pathlib import Path

import jsonschema
import pytest

from tools.generate import SCHEMA, generated

EXAMPLES = sorted((SCHEMA.parent / "examples").glob("*.toml"))


@pytest.mark.parametrize("path", list(generated()), ids=lambda path: path.name)
def test_it_is_current(path: Path) -> None:
    assert generated()[path] == path.read_text("utf-8"), "run make docs"


def test_the_schema_is_a_schema() -> None:
    jsonschema.Draft202012Validator.check_schema(json.loads(SCHEMA.read_text("utf-8")))


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_the_schema_takes_every_example(path: Path) -> None:
    jsonschema.validate(tomllib.loads(path.read_text("utf-8")), json.loads(SCHEMA.read_text("utf-8")))


@pytest.mark.parametrize(
    "change",
    [
        {"job": {"title": "no exposure"}},
        {"slope": []},
        {"covering": {"from": 7}},
        {"set_out": {"bond": "diagonal"}},
        {"roof": {}},
    ],
    ids=str,
)
def test_the_schema_refuses_what_the_door_refuses(change: dict[str, object]) -> None:
    document = {**tomllib.loads(EXAMPLES[0].read_text("utf-8")), **change}
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(document, json.loads(SCHEMA.read_text("utf-8")))
