"""Whatever stands in a job file, the door answers with a job or with faults in words, and never with anything else."""

import copy
import json
import tomllib
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugerod.adapters.job_file.read import read_job_document, read_job_text
from gaugerod.basis.errors import InputRefused
from gaugerod.job.model import Job

JOBS = Path(__file__).parents[1] / "faults" / "jobs"
SOUND: dict[str, Any] = tomllib.loads((JOBS / "sound.toml").read_text("utf-8"))
WITH_EDGES: dict[str, Any] = tomllib.loads((JOBS / "edges-sound.toml").read_text("utf-8"))
PLAIN = (
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.text(max_size=12)
    | st.sampled_from(["4.905 m", "75 mm", "35°", "8 in 12", "verge", "rear", 0, -1, 4905, 1e308, 10**400])
)
KEYS = st.sampled_from(
    [
        "job",
        "slope",
        "at",
        "length",
        "pitch",
        "opening",
        "rise",
        "run",
        "from",
        "edges",
        "unit",
        "slopes",
        "pack",
        "tax",
    ]
) | st.text(max_size=6)
ANYTHING = st.recursive(
    PLAIN, lambda part: st.lists(part, max_size=3) | st.dictionaries(KEYS, part, max_size=3), max_leaves=8
)


def places(whole: object, path: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    """Every place in the document where something could stand instead."""
    steps: list[tuple[str | int, object]] = []
    if isinstance(whole, dict):
        steps = list(whole.items())
    elif isinstance(whole, list):
        steps = list(enumerate(whole))
    for step, part in steps:
        yield (*path, step)
        yield from places(part, (*path, step))


PLACES = list(places(SOUND))
EDGE_PLACES = list(places(WITH_EDGES))


@st.composite
def spoilt_jobs(draw: st.DrawFn) -> dict[str, Any]:
    """A sound job with up to three of its values replaced, removed or joined by another."""
    sound, where = draw(st.sampled_from([(SOUND, PLACES), (WITH_EDGES, EDGE_PLACES)]))
    document: dict[str, Any] = copy.deepcopy(sound)
    for *way, last in draw(st.lists(st.sampled_from(where), min_size=1, max_size=3, unique=True)):
        holder: Any = document
        with suppress(KeyError, IndexError, TypeError):
            for step in way:
                holder = holder[step]
            if draw(st.booleans()):
                holder[last] = draw(ANYTHING)
            elif isinstance(holder, dict):
                del holder[last]
                holder[draw(KEYS)] = draw(ANYTHING)
    return document


def is_a_job_or_refused_in_words(document: dict[str, Any]) -> None:
    try:
        job = read_job_document(document)
    except InputRefused as refused:
        faults = refused.faults
    else:
        assert isinstance(job, Job)
        return
    assert faults
    for fault in faults:
        assert all((fault.field, fault.allowed, fault.do))
        assert str(fault).encode("utf-8")


@given(document=spoilt_jobs())
@settings(max_examples=150, deadline=None)
def test_a_spoilt_job_is_read_or_refused_in_words(document: dict[str, Any]) -> None:
    is_a_job_or_refused_in_words(document)


@given(document=st.dictionaries(KEYS, ANYTHING, max_size=4))
@settings(max_examples=100, deadline=None)
def test_any_tables_at_all_are_refused_in_words(document: dict[str, Any]) -> None:
    is_a_job_or_refused_in_words(document)


@given(content=st.binary(max_size=80) | st.text(max_size=80).map(lambda text: text.encode("utf-8", "surrogatepass")))
@settings(max_examples=100, deadline=None)
def test_any_bytes_at_all_are_refused_in_words(content: bytes) -> None:
    with pytest.raises(InputRefused):
        read_job_text(content)


@given(document=spoilt_jobs())
@settings(max_examples=100, deadline=None)
def test_a_spoilt_job_written_as_json_is_answered_the_same_way(document: dict[str, Any]) -> None:
    with suppress(InputRefused, ValueError):
        # Digits without end cannot be written; everything else can, and is read back as it was.
        assert isinstance(read_job_text(json.dumps(document).encode("utf-8")), Job)


@pytest.mark.slow
@given(document=spoilt_jobs())
@settings(max_examples=5_000, deadline=None)
def test_thousands_of_spoilt_jobs_are_read_or_refused_in_words(document: dict[str, Any]) -> None:
    is_a_job_or_refused_in_words(document)
